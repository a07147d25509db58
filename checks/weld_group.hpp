#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include <Eigen/Core>

#include "base/units.hpp"

namespace checks {

/// A straight weld as a line: an equal-leg fillet along its root, or a groove of a throat.
struct WeldLine {
  Eigen::Vector3d from = Eigen::Vector3d::Constant(base::kUnset);  ///< [m]
  Eigen::Vector3d to = Eigen::Vector3d::Constant(base::kUnset);    ///< [m]
  double leg = base::kUnset;     ///< of a fillet; unset for a groove  [m]
  double groove = base::kUnset;  ///< effective throat of a groove; unset for a fillet  [m]
  [[nodiscard]] double length() const { return (to - from).norm(); }
  [[nodiscard]] bool is_groove() const { return groove > 0.0; }
  /// Of a fillet leg / sqrt(2), AISC 360-22 J2.2a; of a groove as given, J2.1a; from memory  [m]
  [[nodiscard]] double throat() const;
};

/// Weld lines that together hold one part; all points in the same axes.
struct WeldGroup {
  std::vector<WeldLine> lines;
  double filler_tensile = base::kUnset;  ///< F_EXX, classification strength of the filler  [Pa]
};

/// The fillet all round a tube or bung square to a plate, as a polygon of chords inside the circle:
/// on the conservative side by under 0.2 % with 72 chords.
/// @param radius  of the tube outside  [m]
[[nodiscard]] std::vector<WeldLine> ring_weld(const Eigen::Vector3d& center,
                                              const Eigen::Vector3d& axis, double radius,
                                              double leg);

/// Makes grooves of them, all of one effective throat.  [m]
void make_grooves(std::vector<WeldLine>& lines, double throat);

/// A force and a moment that the group carries, at a point.
struct Wrench {
  Eigen::Vector3d force = Eigen::Vector3d::Zero();   ///< [N]
  Eigen::Vector3d moment = Eigen::Vector3d::Zero();  ///< about `at`  [N m]
  Eigen::Vector3d at = Eigen::Vector3d::Zero();      ///< [m]
};

/// The group as an elastic bed of lines, each as wide as its throat.
struct WeldProperties {
  double area = base::kUnset;  ///< sum of throat x length  [m^2]
  Eigen::Vector3d centroid;    ///< [m]
  /// Integral of throat x (r^2 1 - r r') about the centroid: trace(S) 1 - S  [m^4]
  Eigen::Matrix3d inertia;
  Eigen::Matrix3d axes;     ///< columns: principal axes; the given ones where they are principal
  Eigen::Vector3d moments;  ///< inertia about each of `axes`; 0 = all lines on that axis  [m^4]
  bool given_axes = true;   ///< `axes` are the axes the points came in
};

/// @param lines  not empty; each of some length and with a leg > 0
[[nodiscard]] WeldProperties weld_properties(const std::vector<WeldLine>& lines);

/// Force per throat area at the worst end of a weld line.
struct ThroatStress {
  std::size_t line = 0;             ///< in the group
  Eigen::Vector3d point;            ///< [m]
  Eigen::Vector3d stress;           ///< components along WeldProperties::axes  [Pa]
  double resultant = base::kUnset;  ///< [Pa]
  double increase = 1.0;            ///< kds, where it is asked for
};

/// kds of AISC 360-22 J2.4, from memory: 1 + 0.50 sin^1.5 of the angle between a stress of some
/// length and the line it acts on.
[[nodiscard]] double directional_increase(const Eigen::Vector3d& line,
                                          const Eigen::Vector3d& stress);

/// F/A + (K^-1 M) x (r - g) where its length is largest, all of it taken as shear on the throat.
/// @return nothing when all lines lie on one axis and the moment turns about it: a line cannot
///         carry it, since the root would open
/// Limits: rigid parts on an elastic weld; a thin wall beside the weld makes the bed uneven.
/// Source: Blodgett, Design of Welded Structures, sec. 7.4, and Shigley, Mechanical Engineering
/// Design, 9th ed., ch. 9; in tensor form.
/// @param directional  the worst is where the stress over `directional_increase` is largest
[[nodiscard]] std::optional<ThroatStress> worst_throat_stress(const WeldGroup& group,
                                                              const Wrench& wrench,
                                                              bool directional = false);

}  // namespace checks
