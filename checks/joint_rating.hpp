#pragma once

#include "checks/finding.hpp"

namespace checks {

/// What the check of a ball joint or rod end needs.
struct JointRatingInput {
  double force = base::kUnset;            ///< resultant force through the joint  [N]
  double along = 0.0;                     ///< of it, along the joint's bolt  [N]
  double static_rating = base::kUnset;    ///< unset = not given  [N]
  double ultimate_rating = base::kUnset;  ///< unset = not given  [N]
  double axial_rating = base::kUnset;     ///< static, along the bolt; unset = not given  [N]
  double required = base::kUnset;         ///< on the static rating
  double safety_factor = base::kUnset;    ///< largest multiple of the load, multiplied before the
                                          ///< solve; unset = capacity / force
};

/// An ultimate rating is asked for this much more than a static one (proposal, no source).
inline constexpr double kUltimateOverStatic = 1.5;

/// Force through a ball joint or rod end against its rating. With both ratings the lower of static
/// and ultimate / 1.5 decides. With an axial rating the force along the bolt counts by how much
/// less the joint carries there: Fr + C / Ca Fa.
/// @return undecided when no rating is given: a rating is never assumed
/// Limits: without an axial rating all force counts as across the bolt; bending of a threaded shank
/// is another check. Source: ratings are the maker's; required factors from a bearing maker's
/// selection page (read, maker withheld: common practice, no source); combined force: bearing
/// makers' pages (read, makers withheld: common practice, no source).
[[nodiscard]] Finding joint_rating(const JointRatingInput& input);

}  // namespace checks
