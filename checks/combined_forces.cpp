#include "checks/combined_forces.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <utility>
#include <variant>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

/// Of first yield: what counts as no moment where a nominal one is not known.
constexpr double kSlightMoment = 1e-3;
constexpr double kMuchAxial = 0.2;    // H1.1
constexpr double kMuchTorsion = 0.2;  // H3.2

double share(double acting, double nominal, double first_yield) {
  if (!std::isnan(nominal)) return acting / nominal;
  return acting == 0.0 || acting <= kSlightMoment * first_yield ? 0.0 : base::kUnset;
}

double resultant_moment(const sections::Resultants& r) {
  return std::hypot(r.my, r.mz);
}

/// Moments over their nominal ones.
double moment_sum(const SectionStrength& s, const sections::Resultants& r) {
  if (s.round) return share(resultant_moment(r), s.bending.y.value, s.first_yield_y);
  return share(std::abs(r.my), s.bending.y.value, s.first_yield_y) +
         share(std::abs(r.mz), s.bending.z.value, s.first_yield_z);
}

double shear_share(const SectionStrength& s, const sections::Resultants& r) {
  if (s.round) return std::hypot(r.vy, r.vz) / s.tube->shear_y;
  return std::max(std::abs(r.vy) / s.tube->shear_y, std::abs(r.vz) / s.tube->shear_z);
}

double torque_share(const SectionStrength& s, const sections::Resultants& r) {
  if (!s.tube) return 0.0;
  return share(std::abs(r.t), s.tube->torsion, s.first_yield_y);
}

double axial_share(const CombinedDemand& d) {
  return d.axial > 0.0 ? d.axial / d.axial_capacity : 0.0;
}

/// What an axial force adds by H1-1, and how much of the moments counts beside it.
double axial_part(bool much) {
  return much ? 1.0 : 0.5;
}
double moment_part(bool much) {
  return much ? 8.0 / 9.0 : 1.0;
}

void add_axial_line(Finding& f, const CombinedDemand& d, const SectionStrength& s) {
  const double part = axial_share(d);
  if (d.compressed) {
    f.lines.push_back({"Pr/Pc, Pr its largest compression, Pc = Pn of its column check",
                       "{0} / {1} = {2}",
                       {force(d.axial), force(d.axial_capacity), ratio(part)}});
    return;
  }
  f.lines.push_back({"Pr/Pc, Pr its largest tension, Pc = Fy A (D2)",
                     "{0} / {1} = {2}",
                     {force(d.axial), force(s.tension), ratio(part)}});
}

void add_moment_line(Finding& f, const NominalMoment& nominal, double acting, const char* symbols) {
  if (std::isnan(nominal.value)) return;
  f.lines.insert(f.lines.end(), nominal.lines.begin(), nominal.lines.end());
  f.lines.push_back({symbols,
                     "{0} / {1} = {2}",
                     {moment(acting), moment(nominal.value), ratio(acting / nominal.value)}});
}

void add_moment_lines(Finding& f, const SectionStrength& s, const sections::Resultants& r) {
  if (s.round) {
    add_moment_line(f, s.bending.y, resultant_moment(r),
                    "Mr/Mc, Mr = sqrt(My^2 + Mz^2) in second order, Mc = Mn");
    return;
  }
  add_moment_line(f, s.bending.y, std::abs(r.my), "Mry/Mcy, Mry in second order, Mcy = Mn");
  add_moment_line(f, s.bending.z, std::abs(r.mz), "Mrz/Mcz, Mrz in second order, Mcz = Mn");
}

/// Shear and torsion, where the torque is more than may be left out.
void add_torsion_lines(Finding& f, const SectionStrength& s, const sections::Resultants& r,
                       const Interaction& terms) {
  if (!s.tube || !(std::abs(r.t) > 0.0) || std::isnan(s.tube->torsion)) return;
  f.lines.insert(f.lines.end(), s.tube->lines.begin(), s.tube->lines.end());
  const double part = torque_share(s, r);
  f.lines.push_back({part > kMuchTorsion ? "Tr/Tc" : "Tr/Tc, up to 0.2 left out (H3.2)",
                     "{0} / {1} = {2}",
                     {moment(std::abs(r.t)), moment(s.tube->torsion), ratio(part)}});
  if (!(part > kMuchTorsion)) return;
  f.lines.push_back({"(Vr/Vc + Tr/Tc)^2, Vc by G4 or G5",
                     "({0} + {1})^2 = {2}",
                     {ratio(shear_share(s, r)), ratio(part), ratio(terms.twisting)}});
}

/// The sum, by the equation that rules it.
WorkedLine sum_line(const SectionStrength& s, const CombinedDemand& d, const Interaction& terms) {
  const Value axial = ratio(axial_share(d));
  const Value moments = ratio(moment_sum(s, d.at));
  const Value sum = ratio(terms.sum());
  if (terms.twisting > 0.0) {
    return {"(Pr/Pc + Mr/Mc) + (Vr/Vc + Tr/Tc)^2, as Tr > 0.2 Tc (H3-6)",
            "{0} + {1} + {2} = {3}",
            {axial, moments, ratio(terms.twisting), sum}};
  }
  if (!s.symmetric) {
    return {"Pr/Pc + Mry/Mcy + Mrz/Mcz (H2)", "{0} + {1} = {2}", {axial, moments, sum}};
  }
  if (axial.si >= kMuchAxial) {
    return {"Pr/Pc + 8/9 Mr/Mc, moments about two axes added, as Pr/Pc >= 0.2 (H1-1a)",
            "{0} + 8/9 * {1} = {2}",
            {axial, moments, sum}};
  }
  return {"Pr/(2 Pc) + Mr/Mc, moments about two axes added, as Pr/Pc < 0.2 (H1-1b)",
          "{0} / 2 + {1} = {2}",
          {axial, moments, sum}};
}

/// Why an interaction is not known.
std::string reason_of(const SectionStrength& s, const CombinedDemand& d) {
  if (std::isnan(moment_sum(s, d.at))) {
    return s.bending.y.reason.empty() ? s.bending.z.reason : s.bending.y.reason;
  }
  if (s.tube && !s.tube->reason.empty()) return s.tube->reason;
  return "its axial strength is not known";
}

void add_asked_line(Finding& f, const CombinedInput& in, const Interaction& terms) {
  if (!terms.compressed) return;
  const double rest = terms.bending + terms.twisting;
  const double asked = combined_required(terms, in.buckling_factor, in.yield_factor);
  if (std::abs(asked - in.required) > 1e-6 * asked) return;
  f.lines.push_back(
      {"asked: the factor of buckling for the part of compression, that of yield for the rest",
       "({0} * {1} + {2} * {3}) / ({1} + {3}) = {4}",
       {ratio(in.buckling_factor), ratio(terms.axial), ratio(in.yield_factor), ratio(rest),
        ratio(asked)}});
}

void add_notes_beside(Finding& f, const CombinedInput& in, const SectionStrength& s) {
  if (!in.strength_basis.empty()) f.notes.push_back("yield strength: " + in.strength_basis);
  if (!in.place.empty()) {
    f.notes.push_back("moments, shear and torque are those " + in.place +
                      ", where the sum is largest");
  }
  if (!s.tube && std::abs(in.demand.at.t) > 0.0) {
    f.notes.emplace_back(
        sections::is_open(in.member.shape)
            ? "torque in an open section: in the stress of its yield check (H3.3), warping left out"
            : "torque in a section that is no tube: in the stress of its yield check (H3.3)");
  }
  if (std::holds_alternative<sections::ByNumbers>(in.member.shape)) {
    f.notes.emplace_back(
        "the section is given by its numbers: first yield is its moment, and neither walls nor "
        "its giving sideways are checked");
  }
  if (!std::isnan(in.safety_factor)) {
    f.notes.emplace_back(
        "the safety factor is the largest multiple of the load, solved again at each, at which "
        "the sum stays under 1");
  }
}

}  // namespace

SectionStrength section_strength(const BendingInput& member) {
  const sections::AreaProps props = sections::area_props(member.shape);
  SectionStrength s;
  s.tension = member.yield * props.area;
  s.bending = bending_strength(member);
  s.first_yield_y = member.yield * props.modulus_y;
  s.first_yield_z = member.yield * props.modulus_z;
  s.tube = tube_torsion(member.shape, member.elastic, member.yield, member.length);
  s.round = std::holds_alternative<sections::RoundBar>(member.shape) ||
            std::holds_alternative<sections::RoundTube>(member.shape);
  s.symmetric = !std::holds_alternative<sections::ThinWalled>(member.shape) &&
                !std::holds_alternative<sections::Angle>(member.shape) &&
                !std::holds_alternative<sections::ByNumbers>(member.shape);
  return s;
}

bool Interaction::counts() const {
  if (std::isnan(sum())) return true;
  const double little = 0.005 * sum();
  const std::initializer_list<double> parts = {axial, bending, twisting};
  return std::count_if(parts.begin(), parts.end(), [&](double part) { return part > little; }) > 1;
}

Interaction interaction(const SectionStrength& strength, const CombinedDemand& demand) {
  const double axial = axial_share(demand);
  const double moments = moment_sum(strength, demand.at);
  const double torque = torque_share(strength, demand.at);
  if (std::isnan(torque)) return {axial, moments, base::kUnset, demand.compressed};
  if (torque > kMuchTorsion) {
    const double twisting = shear_share(strength, demand.at) + torque;
    return {axial, moments, twisting * twisting, demand.compressed};
  }
  if (!strength.symmetric) return {axial, moments, 0.0, demand.compressed};
  const bool much = axial >= kMuchAxial;
  return {axial * axial_part(much), moments * moment_part(much), 0.0, demand.compressed};
}

double combined_required(const Interaction& terms, double buckling, double yield) {
  if (!terms.compressed || !(terms.sum() > 0.0)) return yield;
  return yield + (buckling - yield) * terms.axial / terms.sum();
}

Finding combined_forces(const CombinedInput& in) {
  INVARIANT(in.member.elastic > 0.0 && in.member.yield > 0.0 && in.member.length > 0.0);
  const SectionStrength s = section_strength(in.member);
  const Interaction terms = interaction(s, in.demand);
  Finding f{.check = "combined forces", .measure = Measure::ratio};
  f.demand = terms.sum();
  f.capacity = 1.0;
  f.required = in.required;
  f.source =
      "AISC 360-22 H1 to H3 with F2, F6 to F8 and F10 to F12, from memory (H3-6 read in a handbook "
      "on the 2005 "
      "edition); factor asked by parts: proposal, no source";
  f.range = "straight members with a column check";
  if (std::isnan(f.demand)) {
    leave_undecided(f, reason_of(s, in.demand));
    return f;
  }
  if (in.demand.axial > 0.0) add_axial_line(f, in.demand, s);
  add_moment_lines(f, s, in.demand.at);
  add_torsion_lines(f, s, in.demand.at, terms);
  f.lines.push_back(sum_line(s, in.demand, terms));
  add_asked_line(f, in, terms);
  add_notes_beside(f, in, s);
  decide(f, std::isnan(in.safety_factor) ? 1.0 / f.demand : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
