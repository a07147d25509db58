#include "checks/warped_channel.hpp"

#include <algorithm>
#include <cmath>

#include "base/invariant.hpp"
#include "checks/bending_strength.hpp"
#include "checks/value.hpp"
#include "checks/wall_slenderness.hpp"
#include "sections/area_props.hpp"

namespace checks {

namespace {

// Shear is largest in the middle of a rectangle: 1.5 times its mean.
constexpr double kFlangePeak = 1.5;

double warping_shear(const WarpedChannel::Numbers& n, const WarpedCut& cut) {
  return kFlangePeak * std::abs(cut.resultants.t - cut.st_venant) / (n.between * n.flange);
}

void add_warped_lines(Finding& finding, const WarpedChannel& section, const WarpedCut& cut) {
  const WarpedChannel::Numbers& n = section.numbers();
  const sections::Resultants& r = cut.resultants;
  const Value area = {n.area, Measure::area};
  const Value s_y = {n.modulus_y, Measure::section_modulus};
  const Value s_z = {n.modulus_z, Measure::section_modulus};
  const Value twist = {n.torsion_modulus, Measure::section_modulus};
  const double bent = std::abs(r.my) / n.modulus_y + std::abs(r.mz) / n.modulus_z;
  const double warped = std::abs(cut.bimoment) / n.sector_modulus;
  finding.lines.push_back({"sigma_N = |N| / A",
                           "{0} / {1} = {2}",
                           {force(std::abs(r.n)), area, stress(std::abs(r.n) / n.area)}});
  finding.lines.push_back(
      {"sigma_M = |My| / Sy + |Mz| / Sz",
       "{0} / {1} + {2} / {3} = {4}",
       {moment(std::abs(r.my)), s_y, moment(std::abs(r.mz)), s_z, stress(bent)}});
  // A bimoment is shown as the couple of its two flanges, a moment in each.
  finding.lines.push_back({"sigma_w = B / (Cw / w), B / h the moment in each flange",
                           "{0} * {1} / {2} = {3}",
                           {moment(std::abs(cut.bimoment) / n.between), length(n.between),
                            second_moment(n.sector_modulus), stress(warped)}});
  finding.lines.push_back({"tau_T = Tsv t / J, Tsv what of the torque does not warp",
                           "{0} / {1} = {2}",
                           {moment(std::abs(cut.st_venant)), twist,
                            stress(std::abs(cut.st_venant) / n.torsion_modulus)}});
  finding.lines.push_back({"tau_w = 1.5 (T - Tsv) / (h b t), shear of the flanges as it warps",
                           "1.5 * {0} / ({1} * {2}) = {3}",
                           {moment(std::abs(r.t - cut.st_venant)),
                            length(n.between),
                            {n.flange, Measure::area},
                            stress(warping_shear(n, cut))}});
  finding.lines.push_back(
      {"tau_V = |Vz| / web + 1.5 |Vy| / both flanges",
       "{0} / {1} + 1.5 * {2} / (2 * {3}) = {4}",
       {force(std::abs(r.vz)),
        {n.web, Measure::area},
        force(std::abs(r.vy)),
        {n.flange, Measure::area},
        stress(std::abs(r.vz) / n.web + kFlangePeak * std::abs(r.vy) / (2.0 * n.flange))}});
  finding.lines.push_back(
      {"von Mises = sqrt(sigma^2 + 3 tau^2), the largest of each taken at one place",
       "sqrt({0}^2 + 3 * {1}^2) = {2}",
       {stress(section.along(cut)), stress(section.shear(cut)), stress(section.von_mises(cut))}});
}

}  // namespace

ChannelSectors channel_sectors(const sections::Channel& c) {
  const double h = c.depth - c.flange;
  const double b = c.width - 0.5 * c.web;
  const double e = 3.0 * b * b * c.flange / (h * c.web + 6.0 * b * c.flange);
  return {channel_warping(c), e, 0.5 * h * std::max(e, b - e)};
}

WarpedChannel::WarpedChannel(const sections::Channel& c) {
  const sections::AreaProps props = sections::area_props(c);
  const ChannelSectors sectors = channel_sectors(c);
  numbers_ = {.area = props.area,
              .modulus_y = props.modulus_y,
              .modulus_z = props.modulus_z,
              .torsion_modulus = props.torsion / std::max(c.web, c.flange),
              .sector_modulus = sectors.constant / sectors.most,
              .web = (c.depth - c.flange) * c.web,
              .flange = (c.width - 0.5 * c.web) * c.flange,
              .between = c.depth - c.flange};
}

double WarpedChannel::along(const WarpedCut& cut) const {
  const sections::Resultants& r = cut.resultants;
  return std::abs(r.n) / numbers_.area + std::abs(r.my) / numbers_.modulus_y +
         std::abs(r.mz) / numbers_.modulus_z + std::abs(cut.bimoment) / numbers_.sector_modulus;
}

double WarpedChannel::shear(const WarpedCut& cut) const {
  const sections::Resultants& r = cut.resultants;
  return std::abs(cut.st_venant) / numbers_.torsion_modulus + warping_shear(numbers_, cut) +
         std::abs(r.vz) / numbers_.web + kFlangePeak * std::abs(r.vy) / (2.0 * numbers_.flange);
}

double WarpedChannel::von_mises(const WarpedCut& cut) const {
  return std::hypot(along(cut), std::sqrt(3.0) * shear(cut));
}

Finding warped_channel(const WarpedChannelInput& input) {
  INVARIANT(input.strength > 0.0);
  const WarpedChannel section(input.shape);
  Finding finding;
  finding.check = "yield";
  finding.measure = Measure::stress;
  finding.demand = section.von_mises(input.cut);
  finding.capacity = input.strength;
  finding.required = input.required;
  finding.source =
      "stresses of bending, warping and torsion added: AISC Design Guide 9, ch. 4; sectors of a "
      "channel: Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., ch. 5 (both from "
      "memory); bimoment: closed forms of Vlasov's bar, derived";
  finding.range =
      "a straight channel of one section between places that hold its twist, no wall that buckles "
      "before it yields; elsewhere it is not decided";
  if (!input.strength_basis.empty()) {
    finding.notes.push_back("yield strength: " + input.strength_basis);
  }
  if (!input.ends.empty()) finding.notes.push_back(input.ends);
  add_warped_lines(finding, section, input.cut);
  if (has_slender_wall(input.shape, input.elastic, input.strength)) {
    leave_undecided(finding,
                    "an open section that warps, with a wall that may buckle before it yields: "
                    "outside the method; a thicker wall mends it");
    return finding;
  }
  if (std::isnan(input.safety_factor)) {
    leave_undecided(finding, "no multiple of the load was found at which the section yields");
    return finding;
  }
  if (finding.demand > 0.0) {
    const double quotient = input.strength / finding.demand;
    finding.lines.push_back(
        {"strength / von Mises, at the load itself",
         "{0} / {1} = {2}",
         {stress(input.strength), stress(finding.demand), {quotient, Measure::ratio}}});
    if (std::abs(quotient - input.safety_factor) > 5e-4 * quotient) {
      finding.lines.push_back(
          {"safety factor = largest multiple of the load, solved again at each, at which von Mises "
           "stays under the strength",
           "{0}",
           {{input.safety_factor, Measure::ratio}}});
    }
  }
  decide(finding, input.safety_factor, input.required);
  return finding;
}

}  // namespace checks
