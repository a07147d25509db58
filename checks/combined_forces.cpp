#include "checks/combined_forces.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <utility>
#include <variant>

#include <fmt/format.h>

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

/// The equations of an interaction.
enum class Rule {
  much_axial,    ///< H1-1a
  little_axial,  ///< H1-1b
  unsymmetric,   ///< H2
  twisted,       ///< H3-6
  torque_comes,  ///< where the torque comes to 0.2 Tc, from which on H3-6 rules
};

/// What shares use of the limit, by one of the equations: by each in proportion to them.
struct Use {
  Rule rule = Rule::much_axial;
  double part = 0.0;
};

/// H1-1a and H1-1b meet at the limit, so that the larger of the two has the same one.
Use use_untwisted(const Interaction& s) {
  if (!s.symmetric) return {Rule::unsymmetric, s.axial + s.bending};
  const double much = s.axial + 8.0 / 9.0 * s.bending;
  const double little = 0.5 * s.axial + s.bending;
  return much >= little ? Use{Rule::much_axial, much} : Use{Rule::little_axial, little};
}

/// 1 over the multiple at which the sum comes to 1. With torque that is the root of
/// m (Pr/Pc + Mr/Mc) + m^2 (Vr/Vc + Tr/Tc)^2 = 1, but not before it comes to count.
Use use_of(const Interaction& s) {
  const Use untwisted = use_untwisted(s);
  const double straight = s.axial + s.bending;
  const double twisting = s.shear + s.torque;
  const Use twisted = {
      Rule::twisted, 0.5 * (straight + std::sqrt(straight * straight + 4.0 * twisting * twisting))};
  const Use comes = {Rule::torque_comes, s.torque / kMuchTorsion};
  const Use with_torque = comes.part < twisted.part ? comes : twisted;
  return with_torque.part > untwisted.part ? with_torque : untwisted;
}

Interaction with_factors(const Interaction& s, double buckling, double yield) {
  Interaction out = s;
  out.axial *= s.compressed ? buckling : yield;
  out.bending *= yield;
  out.shear *= yield;
  out.torque *= yield;
  return out;
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
                       const Interaction& shares) {
  if (!s.tube || !(std::abs(r.t) > 0.0) || std::isnan(s.tube->torsion)) return;
  f.lines.insert(f.lines.end(), s.tube->lines.begin(), s.tube->lines.end());
  const bool much = shares.torque > kMuchTorsion;
  f.lines.push_back({much ? "Tr/Tc" : "Tr/Tc, up to 0.2 left out (H3.2)",
                     "{0} / {1} = {2}",
                     {moment(std::abs(r.t)), moment(s.tube->torsion), ratio(shares.torque)}});
  if (!much) return;
  const double twisting = shares.shear + shares.torque;
  f.lines.push_back({"(Vr/Vc + Tr/Tc)^2, Vc by G4 or G5",
                     "({0} + {1})^2 = {2}",
                     {ratio(shares.shear), ratio(shares.torque), ratio(twisting * twisting)}});
}

/// The sum, by the equation that rules it.
WorkedLine sum_line(const Interaction& shares) {
  const Value axial = ratio(shares.axial);
  const Value moments = ratio(shares.bending);
  const Value sum = ratio(shares.sum());
  if (shares.torque > kMuchTorsion) {
    const double twisting = shares.shear + shares.torque;
    return {"(Pr/Pc + Mr/Mc) + (Vr/Vc + Tr/Tc)^2, as Tr > 0.2 Tc (H3-6)",
            "{0} + {1} + {2} = {3}",
            {axial, moments, ratio(twisting * twisting), sum}};
  }
  if (!shares.symmetric) {
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

/// How much of the limit shares use: `axial`, `rest` are what stands before each in the numbers,
/// whose values follow those of the shares.
WorkedLine used_line(std::string whose, const Interaction& shares, const Use& use,
                     const std::string& axial, const std::string& rest) {
  WorkedLine line{std::move(whose), {}, {}};
  const std::string p = axial + "{0}";
  const std::string m = rest + "{1}";
  switch (use.rule) {
    case Rule::much_axial:
      line.symbols +=
          ": Pr/Pc + 8/9 Mr/Mc (H1-1a, which is more than H1-1b here; both meet at the limit)";
      line.numbers = p + " + 8/9 * " + m;
      break;
    case Rule::little_axial:
      line.symbols +=
          ": Pr/(2 Pc) + Mr/Mc (H1-1b, which is more than H1-1a here; both meet at the limit)";
      line.numbers = p + " / 2 + " + m;
      break;
    case Rule::unsymmetric:
      line.symbols += ": Pr/Pc + Mr/Mc (H2)";
      line.numbers = p + " + " + m;
      break;
    case Rule::twisted:
      line.symbols +=
          ": (s + sqrt(s^2 + 4 t^2)) / 2, s = Pr/Pc + Mr/Mc, t = Vr/Vc + Tr/Tc (H3-6 "
          "solved for it)";
      line.numbers = "(" + p + " + " + m + " + sqrt((" + p + " + " + m + ")^2 + 4 * (" + rest +
                     "({2} + {3}))^2)) / 2";
      break;
    case Rule::torque_comes:
      line.symbols += ": Tr/Tc / 0.2, from which on it counts (H3.2)";
      line.numbers = rest + "{3} / 0.2";
      break;
  }
  line.values = {ratio(shares.axial), ratio(shares.bending), ratio(shares.shear),
                 ratio(shares.torque)};
  return line;
}

void add_asked_lines(Finding& f, const CombinedAsked& asked) {
  const Interaction& s = asked.shares;
  if (!s.compressed || !(asked.used > 0.0)) return;
  const std::string at =
      asked.multiple == 1.0 ? "" : fmt::format(" at {:.3g} times the load", asked.multiple);
  const Interaction more = with_factors(s, asked.of_compression, asked.of_rest);
  WorkedLine with = used_line("of the limit" + at +
                                  ", compression times the factor asked of buckling, the rest "
                                  "times that of yield",
                              s, use_of(more), "{4} * ", "{5} * ");
  with.numbers += " = {6}";
  with.values.insert(with.values.end(), {ratio(asked.of_compression), ratio(asked.of_rest),
                                         ratio(asked.with_factors)});
  f.lines.push_back(std::move(with));
  const Use alone = use_of(s);
  if (std::abs(alone.part - asked.used) <= 1e-9 * asked.used) {
    WorkedLine plain = used_line("of the limit" + at + ", without factors", s, alone, "", "");
    plain.numbers += " = {4}";
    plain.values.push_back(ratio(asked.used));
    f.lines.push_back(std::move(plain));
  }
  f.lines.push_back({"asked: the one over the other, the most that is used anywhere of each",
                     "{0} / {1} = {2}",
                     {ratio(asked.with_factors), ratio(asked.used), ratio(asked.value)}});
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

double Interaction::sum() const {
  if (std::isnan(torque)) return base::kUnset;
  const double twisting = shear + torque;
  if (torque > kMuchTorsion) return axial + bending + twisting * twisting;
  if (!symmetric) return axial + bending;
  return axial >= kMuchAxial ? axial + 8.0 / 9.0 * bending : 0.5 * axial + bending;
}

double Interaction::used() const {
  return std::isnan(sum()) ? base::kUnset : use_of(*this).part;
}

bool Interaction::counts() const {
  if (std::isnan(sum())) return true;
  constexpr double kRounding = 1e-6;  // forces that a solution leaves where nothing acts
  if (sum() < kRounding) return false;
  const double twisting = torque > kMuchTorsion ? shear + torque : 0.0;
  const double little = 0.01 * sum();
  const std::initializer_list<double> parts = {axial, 8.0 / 9.0 * bending, twisting * twisting};
  return std::count_if(parts.begin(), parts.end(), [&](double part) { return part > little; }) > 1;
}

Interaction interaction(const SectionStrength& strength, const CombinedDemand& demand) {
  return {.axial = axial_share(demand),
          .bending = moment_sum(strength, demand.at),
          .shear = strength.tube ? shear_share(strength, demand.at) : 0.0,
          .torque = torque_share(strength, demand.at),
          .compressed = demand.compressed,
          .symmetric = strength.symmetric};
}

double used_with_factors(const Interaction& shares, double buckling, double yield) {
  return with_factors(shares, buckling, yield).used();
}

CombinedAsked combined_asked(const std::vector<Interaction>& of_all, double buckling,
                             double yield) {
  INVARIANT(!of_all.empty());
  CombinedAsked asked{.value = yield,
                      .of_compression = buckling,
                      .of_rest = yield,
                      .shares = of_all.front(),
                      .with_factors = 0.0,
                      .used = 0.0};
  for (const Interaction& shares : of_all) {
    const double with = used_with_factors(shares, buckling, yield);
    if (std::isnan(with)) return CombinedAsked{.value = yield, .shares = {}};
    asked.used = std::max(asked.used, shares.used());
    if (!(with > asked.with_factors)) continue;
    asked.with_factors = with;
    asked.shares = shares;
  }
  if (asked.used > 0.0) asked.value = asked.with_factors / asked.used;
  return asked;
}

Finding combined_forces(const CombinedInput& in) {
  INVARIANT(in.member.elastic > 0.0 && in.member.yield > 0.0 && in.member.length > 0.0);
  const SectionStrength s = section_strength(in.member);
  const Interaction shares = interaction(s, in.demand);
  Finding f{.check = "combined forces", .measure = Measure::ratio};
  f.demand = shares.sum();
  f.capacity = 1.0;
  f.required = in.asked.value;
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
  add_torsion_lines(f, s, in.demand.at, shares);
  f.lines.push_back(sum_line(shares));
  add_asked_lines(f, in.asked);
  add_notes_beside(f, in, s);
  decide(f, std::isnan(in.safety_factor) ? 1.0 / shares.used() : in.safety_factor, in.asked.value);
  return f;
}

}  // namespace checks
