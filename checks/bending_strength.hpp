#pragma once

#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "sections/area_props.hpp"
#include "sections/shape.hpp"

namespace checks {

/// A straight stretch of a member in bending.
struct BendingInput {
  sections::Shape shape;
  double elastic = base::kUnset;  ///< E  [Pa]
  double yield = base::kUnset;    ///< Fy  [Pa]
  double length = base::kUnset;   ///< between what holds it sideways and against twist, Lb  [m]

  bool operator==(const BendingInput&) const = default;
};

/// Largest moment about one principal axis.
struct NominalMoment {
  double value = base::kUnset;         ///< Mn; unset = outside the method  [N m]
  std::string reason = {};             ///< why it is outside
  std::vector<WorkedLine> lines = {};  ///< how Mn comes about
};

struct BendingStrength {
  NominalMoment y;  ///< about the principal y axis
  NominalMoment z;
};

/// Nominal moments about the principal axes, the moment taken as even all along (Cb = 1):
/// - round tubes, F8: plastic, or less for a thin wall; D/t under 0.45 E/Fy
/// - rectangular tubes, F7: plastic, or less for thin walls or long spans; webs up to
///   5.70 sqrt(E/Fy)
/// - round bars, flat bars and twin plates (each plate by itself), F11
/// - angles, F10.3: first yield at most, or less for thin legs; twisting sideways is left out
/// - boxed channels and other closed walls: first yield where no wall is slender
/// - channels, F2 and F6: plastic with compact flanges, first yield with others that yield before
///   they buckle when compressed; along the flanges by F6
/// - other open lines of walls, F12: first yield where no wall is slender, or less over a long span
///   by the curve of F10.2
/// - sections given by their numbers: first yield
/// An open section over a long span gives sideways; of channels by F2, of others and of angles at
/// `sideways_moment`.
/// Source: AISC 360-22 F2, F6, F7, F8, F10, F11 and F12, from memory.
[[nodiscard]] BendingStrength bending_strength(const BendingInput& input);

/// A channel's walls as F2 takes them.
struct ChannelSpan {
  double elastic = base::kUnset;       ///< E  [Pa]
  double yield = base::kUnset;         ///< Fy  [Pa]
  double other_radius = base::kUnset;  ///< of gyration about its upright axis  [m]
  double other_inertia = base::kUnset;
  double torsion = base::kUnset;  ///< J  [m^4]
  double warping = base::kUnset;  ///< Cw  [m^6]
  double modulus = base::kUnset;  ///< S about its level axis  [m^3]
  double between = base::kUnset;  ///< middle to middle of the flanges, ho  [m]
};

/// Lp = 1.76 ry sqrt(E/Fy), up to which a channel reaches its plastic moment, and Lr, from which on
/// it gives sideways elastically.  Source: AISC 360-22 F2-5 and F2-6, from memory.
struct ChannelLimits {
  double plastic_to;    ///< [m]
  double inelastic_to;  ///< [m]
};
[[nodiscard]] ChannelLimits channel_limits(const ChannelSpan& span);

/// Warping constant of a channel with sharp corners, by its middle lines.  [m^6]
/// Source: Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., appendix A, from memory.
[[nodiscard]] double channel_warping(const sections::Channel& channel);

/// Even moment about an axis at which a member gives sideways elastically, its warping left out:
/// pi^2 E I / L^2 (sqrt(b^2 / 4 + G J L^2 / (pi^2 E I)) - b / 2), I about the other axis, b how
/// unevenly the section stands, always on the weaker side. Of an angle it is F10-4 of AISC 360-22.
/// Source: Timoshenko and Gere, ch. 6, and AISC 360-22 F10.2, from memory.  [N m]
/// @param asymmetry  as of AreaProps  [m]
[[nodiscard]] double sideways_moment(double elastic, double other_inertia, double torsion,
                                     double length, double asymmetry);

}  // namespace checks
