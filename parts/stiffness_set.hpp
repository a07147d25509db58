#pragma once

#include <map>
#include <string>
#include <vector>

#include "parts/design.hpp"

namespace parts {

/// What is not known well is solved at both ends of its range: one set is one choice of ends.
struct StiffnessSet {
  std::string name;  ///< "soft rail, brace end rigid, soft link bushings"
  Bound rail = Bound::given;
  Bound brace_end = Bound::given;
  std::map<std::string, Bound> bushings;  ///< by group; a group not named is `given`
};

/// In how many of rail, brace end and groups of bushings two sets differ.
[[nodiscard]] int n_different(const StiffnessSet& a, const StiffnessSet& b);

/// Groups of bushings that share a rate: "link bushings", "arm axle bushings", ...
[[nodiscard]] std::vector<std::string> bushing_groups(const Design& design);

/// Every combination of the ends of rail and brace mount with the bushings as given; about the
/// combinations that are worst for brace and bracket, one group of bushings at a time at half or
/// double (or the ends of its grade's range).
[[nodiscard]] std::vector<StiffnessSet> stiffness_sets(const Design& design);

/// The six rates of a bushing in a set, bolt along the joint's x axis for graded ones, along the
/// axes of the case for given ones.
[[nodiscard]] std::array<double, 6> rates_in(const JointSpec& joint, Bound bound);

/// Stiffness of the bracket's root about the rail.
struct RootStiffness {
  double value = base::kUnset;  ///< [N m/rad]
  std::string basis;
};

/// The bracket's root stiffness at one end of its range. A stiffness that was entered is used as it
/// is; a rail with known cross members gives a third and three times its twist between them
/// (proposal): of a boxed one with the wall's give in series where the plates do not reach both
/// corners, of an open one the geometric mean of warping free and held at the cross members; else
/// soft 15 kN m/rad (100 when the plates wrap both corners) and stiff 2000 (proposal, no source).
[[nodiscard]] RootStiffness root_stiffness(const Bracket& bracket, Bound bound);

/// Whether the root stiffness has two ends.
[[nodiscard]] bool root_is_bounded(const Bracket& bracket);

}  // namespace parts
