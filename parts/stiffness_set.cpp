#include "parts/stiffness_set.hpp"

#include <algorithm>
#include <cmath>

namespace parts {
namespace {

constexpr double kYoung = 200.0e9;  // AISC 360-22, 29 000 ksi
constexpr double kPoisson = 0.3;

bool cross_members_known(const Bracket& bracket) {
  return bracket.rail.boxed && !std::isnan(bracket.cross_member_ahead) &&
         !std::isnan(bracket.cross_member_behind);
}

/// Twist of a closed rail between cross members that hold it, G J (1/a + 1/b), with Bredt's J.
double rail_twist_stiffness(const Bracket& bracket) {
  const Rail& rail = bracket.rail;
  const double b = rail.width - rail.wall;
  const double h = rail.height - rail.wall;
  const double torsion = 2.0 * b * b * h * h * rail.wall / (b + h);
  const double shear = kYoung / (2.0 * (1.0 + kPoisson));
  return shear * torsion * (1.0 / bracket.cross_member_ahead + 1.0 / bracket.cross_member_behind);
}

/// Give of a flat wall under plates that end within it: a strip with clamped edges,
/// k = 16 D le / b per radian, le the length of the bracket along the rail.
double wall_stiffness(const Bracket& bracket) {
  const Rail& rail = bracket.rail;
  const double clear = rail.width - 2.0 * rail.wall;
  const double cubed = std::pow(rail.wall, 3) + std::pow(rail.frame_plate, 3);
  const double along = bracket.plates.count * bracket.plates.thickness +
                       (bracket.plates.count > 1 ? bracket.gap : 0.0);
  const double plate_rigidity = kYoung * cubed / (12.0 * (1.0 - kPoisson * kPoisson));
  return 16.0 * plate_rigidity * along / clear;
}

bool reaches_both_corners(const Bracket& bracket) {
  return bracket.welded_to.bottom &&
         bracket.depth_at_rail >= bracket.rail.width - 2.0 * bracket.rail.wall;
}

void add_bushing_group(std::vector<std::string>& groups, const JointSpec& joint,
                       const std::string& name) {
  if (joint.kind != JointKind::bushing) return;
  if (std::find(groups.begin(), groups.end(), name) == groups.end()) groups.push_back(name);
}

std::string bound_word(Bound bound) {
  return bound == Bound::low ? "soft " : bound == Bound::high ? "stiff " : "";
}

}  // namespace

std::vector<std::string> bushing_groups(const Design& design) {
  std::vector<std::string> groups;
  if (design.lateral_link) {
    add_bushing_group(groups, design.lateral_link->ends.joint, "link bushings");
  }
  if (design.arm) {
    add_bushing_group(groups, design.arm->axle_joint, "arm axle bushings");
    add_bushing_group(groups, design.arm->frame_joint, "arm frame bushings");
  }
  if (design.steering) {
    add_bushing_group(groups, design.steering->ends.joint, "steering bushings");
  }
  for (const Named<Member>& member : design.members) {
    add_bushing_group(groups, member.value.from_joint, "member bushings");
    add_bushing_group(groups, member.value.to_joint, "member bushings");
  }
  return groups;
}

std::vector<StiffnessSet> stiffness_sets(const Design& design) {
  std::vector<Bound> rails = {Bound::given};
  if (design.bracket && root_is_bounded(*design.bracket)) rails = {Bound::low, Bound::high};
  std::vector<Bound> mounts = {Bound::given};
  if (design.brace && std::isnan(design.brace->end_mount)) mounts = {Bound::low, Bound::high};

  std::vector<StiffnessSet> sets;
  for (const Bound rail : rails) {
    for (const Bound mount : mounts) {
      std::string name;
      if (rail != Bound::given) name += bound_word(rail) + "rail";
      if (mount != Bound::given) {
        name += name.empty() ? "" : ", ";
        name += mount == Bound::low ? "brace end gives" : "brace end rigid";
      }
      sets.push_back({name.empty() ? "as given" : name, rail, mount, {}});
      // Soft rail with a rigid brace end is the worst for the brace, stiff rail with one that gives
      // for the bracket: the bushings vary about those two.
      const bool extreme = rails.size() == 1 || mounts.size() == 1 || rail != mount;
      if (!extreme) continue;
      for (const std::string& group : bushing_groups(design)) {
        for (const Bound bushing : {Bound::low, Bound::high}) {
          const std::string prefix = name.empty() ? "" : name + ", ";
          sets.push_back({prefix + bound_word(bushing) + group, rail, mount, {{group, bushing}}});
        }
      }
    }
  }
  return sets;
}

std::array<double, 6> rates_in(const JointSpec& joint, Bound bound) {
  if (joint.grade != BushingGrade::given) return bushing_rates(joint.grade, bound);
  const double factor = bound == Bound::low ? 0.5 : bound == Bound::high ? 2.0 : 1.0;
  std::array<double, 6> rates = joint.rates;
  for (double& rate : rates) rate *= factor;
  return rates;
}

bool root_is_bounded(const Bracket& bracket) {
  return std::isnan(bracket.rail_stiffness);
}

RootStiffness root_stiffness(const Bracket& bracket, Bound bound) {
  if (!root_is_bounded(bracket)) return {bracket.rail_stiffness, "root stiffness as entered"};
  if (cross_members_known(bracket)) {
    double k = rail_twist_stiffness(bracket);
    if (!reaches_both_corners(bracket)) k = 1.0 / (1.0 / k + 1.0 / wall_stiffness(bracket));
    return {bound == Bound::low ? k / 3.0 : 3.0 * k,
            "boxed rail between its cross members, G J (1/a + 1/b), a third and three times of it"};
  }
  if (bound == Bound::high) return {2000.0e3, "stiff end 2000 kN m/rad (proposal, no source)"};
  if (bracket.welded_to.wraps_both_corners()) {
    return {100.0e3, "soft end 100 kN m/rad, plates wrap both corners (proposal, no source)"};
  }
  return {15.0e3, "soft end 15 kN m/rad, the rail's wall gives (proposal, no source)"};
}

}  // namespace parts
