#include "checks/tab.hpp"

#include <algorithm>
#include <cmath>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kHighestTabYield = 690.0e6;

/// The terms of BTH-1's formulas.
struct Bth {
  double be;
  double cr;
  double turn;  // phi  [rad]
  double av;
};

double clear_beside(const EyePlate& p) {
  return p.beside - 0.5 * p.hole;
}
double clear_ahead(const EyePlate& p) {
  return p.ahead - 0.5 * p.hole;
}

Bth bth_terms(const EyePlate& p) {
  const double be = clear_beside(p);
  const double fit = std::min(1.0, p.bolt / p.hole);
  Bth out{};
  out.be =
      std::min({be, 4.0 * p.thickness, 0.6 * be * p.tensile / p.yield * std::sqrt(p.hole / be)});
  out.cr = 1.0 - 0.275 * std::sqrt(1.0 - fit * fit);
  out.turn = 55.0 * base::kDegree * fit;
  out.av = 2.0 * (clear_ahead(p) + 0.5 * p.bolt * (1.0 - std::cos(out.turn))) * p.thickness;
  return out;
}

void add_d5(Finding& f, const EyePlate& p, const EyeStrengths& s) {
  const double be = std::min(clear_beside(p), 2.0 * p.thickness + 0.016);
  const double width = 2.0 * p.beside;
  f.lines.push_back({"be = clear beside the hole, at most 2 t + 16 mm", "{0}", {length(be)}});
  f.lines.push_back({"one plate, net section: Fu 2 t be",
                     "{0} * 2 * {1} * {2} = {3}",
                     {stress(p.tensile), length(p.thickness), length(be), force(s.tension)}});
  f.lines.push_back({"shear beyond the hole: 0.60 Fu 2 t (a + d / 2)",
                     "0.60 * {0} * 2 * {1} * ({2} + {3} / 2) = {4}",
                     {stress(p.tensile), length(p.thickness), length(clear_ahead(p)),
                      length(p.bolt), force(s.shear)}});
  f.lines.push_back({"bearing: 1.8 Fy d t",
                     "1.8 * {0} * {1} * {2} = {3}",
                     {stress(p.yield), length(p.bolt), length(p.thickness), force(s.bearing)}});
  f.lines.push_back({"whole section: Fy w t",
                     "{0} * {1} * {2} = {3}",
                     {stress(p.yield), length(width), length(p.thickness), force(s.gross)}});
  f.lines.push_back({"net section: Fu (w - hole - 1/16 in) t",
                     "{0} * ({1} - {2} - {3}) * {4} = {5}",
                     {stress(p.tensile), length(width), length(p.hole), length(base::kInch / 16.0),
                      length(p.thickness), force(s.net)}});
}

void add_bth(Finding& f, const EyePlate& p, const EyeStrengths& s) {
  const Bth b = bth_terms(p);
  const double be = clear_beside(p);
  f.lines.push_back({"BTH-1, N_d = 1: Cr = 1 - 0.275 sqrt(1 - (d / hole)^2)",
                     "1 - 0.275 * sqrt(1 - ({0} / {1})^2) = {2}",
                     {length(std::min(p.bolt, p.hole)), length(p.hole), ratio(b.cr)}});
  f.lines.push_back(
      {"b_eff = least of be, 4 t, 0.6 be (Fu / Fy) sqrt(hole / be)", "{0}", {length(b.be)}});
  f.lines.push_back(
      {"Pt = Cr Fu / 1.20 * 2 t b_eff",
       "{0} * {1} / 1.20 * 2 * {2} * {3} = {4}",
       {ratio(b.cr), stress(p.tensile), length(p.thickness), length(b.be), force(s.bth_tension)}});
  f.lines.push_back(
      {"Pb = Cr Fu / 1.20 * (1.13 (R - hole / 2) + 0.92 be / (1 + be / hole)) t",
       "{0} * {1} / 1.20 * (1.13 * ({2} - {3} / 2) + 0.92 * {4} / (1 + {4} / {3})) * {5} = {6}",
       {ratio(b.cr), stress(p.tensile), length(p.ahead), length(p.hole), length(be),
        length(p.thickness), force(s.bth_splitting)}});
  f.lines.push_back(
      {"Av = 2 (a + (d / 2) (1 - cos(55 deg d / hole))) t", "{0}", {{b.av, Measure::area}}});
  f.lines.push_back({"Pv = 0.70 Fu / 1.20 * Av",
                     "0.70 * {0} / 1.20 * {1} = {2}",
                     {stress(p.tensile), {b.av, Measure::area}, force(s.bth_shear)}});
  f.lines.push_back({"Pp = 1.25 Fy d t",
                     "1.25 * {0} * {1} * {2} = {3}",
                     {stress(p.yield), length(p.bolt), length(p.thickness), force(s.bth_bearing)}});
}

/// What a force off the plate's middle leaves of its strength.
double left_by_offset(const TabInput& in, Finding& f) {
  if (!(in.off > 0.0)) return 1.0;
  const double twice = 2.0 * in.off / in.plate.thickness;
  const double left = std::sqrt(twice * twice + 1.0) - twice;
  f.lines.push_back({"off the plate's middle by e, left: sqrt((2 e / t)^2 + 1) - 2 e / t",
                     "sqrt((2 * {0} / {1})^2 + 1) - 2 * {0} / {1} = {2}",
                     {length(in.off), length(in.plate.thickness), ratio(left)}});
  return left;
}

}  // namespace

double EyeStrengths::least() const {
  return std::min(
      {tension, shear, bearing, gross, net, bth_tension, bth_splitting, bth_shear, bth_bearing});
}

EyeStrengths eye_strengths(const EyePlate& p) {
  INVARIANT(p.thickness > 0.0 && p.bolt > 0.0 && p.yield > 0.0 && p.tensile > 0.0);
  const double be = clear_beside(p);
  const double a = clear_ahead(p);
  INVARIANT(be > 0.0 && a > 0.0);
  const double width = 2.0 * p.beside;
  const Bth b = bth_terms(p);
  const double fracture = p.tensile / 1.20;
  EyeStrengths s;
  s.tension = p.tensile * 2.0 * p.thickness * std::min(be, 2.0 * p.thickness + 0.016);
  s.shear = 0.60 * p.tensile * 2.0 * p.thickness * (a + 0.5 * p.bolt);
  s.bearing = 1.8 * p.yield * p.bolt * p.thickness;
  s.gross = p.yield * width * p.thickness;
  s.net = p.tensile * (width - p.hole - base::kInch / 16.0) * p.thickness;
  s.bth_tension = b.cr * fracture * 2.0 * p.thickness * b.be;
  s.bth_splitting = b.cr * fracture *
                    (1.13 * (p.ahead - 0.5 * p.hole) + 0.92 * be / (1.0 + be / p.hole)) *
                    p.thickness;
  s.bth_shear = 0.70 * fracture * b.av;
  s.bth_bearing = 1.25 * p.yield * p.bolt * p.thickness;
  return s;
}

Finding tab(const TabInput& in) {
  INVARIANT(in.plates > 0);
  Finding f{.check = "tab", .demand = in.force, .measure = Measure::force};
  f.required = in.required;
  f.source =
      "AISC 360-22 D5 and J7 (read in AISC LRFD 1999, D3), J4.1 from memory; ASME BTH-1 3-3.3 "
      "(read in a page of the 2008 edition, bearing from memory), N_d = 1; the lowest counts";
  if (!in.strength_basis.empty()) f.notes.push_back("strengths: " + in.strength_basis);
  if (in.plate.yield > kHighestTabYield) {
    leave_undecided(f, "outside the method: Fy over 690 MPa (ASME BTH-1, from memory)");
    return f;
  }
  if (std::isnan(in.off)) {
    leave_undecided(f,
                    "one tab beside the force is bent by it: say how far off its middle the force "
                    "is, e.g. off 1 in");
    return f;
  }
  const EyeStrengths strengths = eye_strengths(in.plate);
  add_d5(f, in.plate, strengths);
  add_bth(f, in.plate, strengths);
  const double left = left_by_offset(in, f);
  const double least = strengths.least();
  if (!(least > 0.0)) {
    leave_undecided(f, "outside the method: the hole leaves nothing of the plate beside it");
    return f;
  }
  f.capacity = in.plates * least * left;
  f.lines.push_back({"capacity = plates * the least of these",
                     "{0} * {1} * {2} = {3}",
                     {ratio(in.plates), force(least), ratio(left), force(f.capacity)}});
  f.lines.push_back({"over the force",
                     "{0} / {1} = {2}",
                     {force(f.capacity), force(in.force), ratio(f.capacity / in.force)}});
  decide(f, std::isnan(in.safety_factor) ? f.capacity / in.force : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
