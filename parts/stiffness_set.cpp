#include "parts/stiffness_set.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "parts/rail_root.hpp"

namespace parts {
namespace {

constexpr double kSoftFlatFace = 15.0e3;  // [N m/rad], proposal, no source

bool cross_members_known(const Bracket& bracket) {
  return !std::isnan(bracket.cross_member_ahead) && !std::isnan(bracket.cross_member_behind);
}

/// What the twist of a rail between its cross members rests on.
std::string span_words(const Bracket& bracket) {
  const bool section = !std::isinf(cross_member_stiffness(bracket));
  std::string words =
      bracket.rail.boxed
          ? "boxed rail between its cross members, G J (1/a + 1/b)"
          : "open rail between its cross members, mean of warping free and warping held there";
  if (section) {
    words += ", with their bending 3 E I / L";
  } else if (bracket.rail.boxed) {
    words += ", 0.8 of it for their own give (proposal)";
  }
  return words + "; a third and three times of it";
}

/// From the rail's section and its cross members; of a bracket on one wall of an open rail alone,
/// which gives as well, the soft end is no stiffer than where they are not known.
RootStiffness root_between_cross_members(const Bracket& bracket, Bound bound) {
  double k = base::kUnset;
  if (bracket.rail.boxed) {
    k = closed_rail_root(bracket);
    if (!reaches_both_corners(bracket)) k = 1.0 / (1.0 / k + 1.0 / wall_root(bracket));
  } else {
    k = std::sqrt(open_rail_root(bracket, false) * open_rail_root(bracket, true));
  }
  std::string words = span_words(bracket);
  if (bound == Bound::high) return {3.0 * k, std::move(words)};
  const bool on_one_wall = !bracket.rail.boxed && bracket.welded_to.one_flat_face();
  if (!on_one_wall || k / 3.0 <= kSoftFlatFace) return {k / 3.0, std::move(words)};
  return {kSoftFlatFace, words + "; soft end: that one wall gives (proposal, no source)"};
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
    add_bushing_group(groups, axle_end_of(*design.lateral_link).joint, "link bushings");
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
  const bool bounded = design.bracket && (design.frame ? frame_root_is_bounded(design)
                                                       : root_is_bounded(*design.bracket));
  if (bounded) rails = {Bound::low, Bound::high};
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

int n_different(const StiffnessSet& a, const StiffnessSet& b) {
  const auto bound_in = [](const StiffnessSet& set, const std::string& group) {
    const auto found = set.bushings.find(group);
    return found == set.bushings.end() ? Bound::given : found->second;
  };
  std::set<std::string> groups;
  for (const StiffnessSet* set : {&a, &b}) {
    for (const auto& [group, bound] : set->bushings) groups.insert(group);
  }
  int count = (a.rail != b.rail ? 1 : 0) + (a.brace_end != b.brace_end ? 1 : 0);
  for (const std::string& group : groups) {
    if (bound_in(a, group) != bound_in(b, group)) ++count;
  }
  return count;
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
  if (cross_members_known(bracket)) return root_between_cross_members(bracket, bound);
  if (bound == Bound::high) return {2000.0e3, "stiff end: proposal, no source"};
  if (bracket.welded_to.wraps_both_corners()) {
    return {100.0e3, "soft end: plates wrap both corners (proposal, no source)"};
  }
  return {kSoftFlatFace, "soft end: the rail's wall gives (proposal, no source)"};
}

}  // namespace parts
