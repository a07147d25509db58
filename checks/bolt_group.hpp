#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include <Eigen/Core>

#include "checks/bolt_shear.hpp"
#include "checks/finding.hpp"
#include "checks/weld_group.hpp"

namespace checks {

/// Equal bolts that together hold one part, all along one direction.
struct BoltGroup {
  std::vector<Eigen::Vector3d> at;  ///< where each crosses the faces, any axes  [m]
  Eigen::Vector3d along = Eigen::Vector3d::UnitX();  ///< of length 1
};

/// What one bolt of a group carries.
struct BoltShare {
  double shear = 0.0;    ///< across it  [N]
  double tension = 0.0;  ///< along it, pull or push  [N]
};

/// What each bolt carries, in the order of the group; by the elastic method: shares of the force
/// alike, of the moment about the bolts' direction by the distance from the centroid and square to
/// it, of the moment across it as pull by the distance from the centroid.
/// @return empty when a moment turns about a line that all bolts lie on: they cannot hold it
/// Limits: equal bolts, parts stiff beside them; prying of thin parts is not in it (`bolt_shear`).
/// Source: AISC Manual, part 7, elastic method (from memory); Shigley, Mechanical Engineering
/// Design, 9th ed., sec. 8-12 and example 8-7 (read).
[[nodiscard]] std::vector<BoltShare> bolt_shares(const BoltGroup& group, const Wrench& wrench);

/// How the shares of one bolt, and those of the others beside it, follow from the whole group, as
/// worked lines; nothing when the bolts cannot hold the moment.
/// @param which  bolt of the group
/// Source: as `bolt_shares`.
[[nodiscard]] std::vector<WorkedLine> share_lines(const BoltGroup& group, const Wrench& wrench,
                                                  std::size_t which);

/// What the check of a group of bolts needs.
struct BoltGroupInput {
  BoltGroup group;
  Wrench wrench;   ///< in the axes of the group
  BoltInput bolt;  ///< of each; its forces and factors are not looked at
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = 1 / demand
};

/// The bolt of a group that uses most of its strength, and how much, as in `bolt_shear`; bolts
/// nearer than 2-2/3 d (AISC 360-22 J3.4, from memory) are warned of.
/// @return undecided when the bolts cannot hold the moment
[[nodiscard]] Finding bolt_group(const BoltGroupInput& input);

/// The bolt of a group that is nearest to slip, as in `bolt_slip`.
/// @return undecided when the bolts cannot hold the moment
[[nodiscard]] Finding bolt_group_slip(const BoltGroupInput& input);

}  // namespace checks
