#pragma once

#include <vector>

#include "fea/system.hpp"

namespace fea {

/// Loads between the ends of one beam, in its own axes.
struct LoadsBetween {
  struct Point {
    double at;         ///< from end a  [m]
    Vector3 force_l;   ///< [N]
    Vector3 moment_l;  ///< [N m]
  };
  struct Line {
    double from;        ///< from end a  [m]
    double to;          ///< from end a  [m]
    Vector3 at_from_l;  ///< [N/m]
    Vector3 at_to_l;    ///< [N/m]
  };
  std::vector<Point> points;
  std::vector<Line> lines;

  [[nodiscard]] bool empty() const { return points.empty() && lines.empty(); }
  /// The same loads in axes turned by the small rotation `turn_l`.
  [[nodiscard]] LoadsBetween seen_from(const Vector3& turn_l) const;

  /// Their force and moment about the station `x`, of what acts between end a and x (a point load
  /// at x included).
  [[nodiscard]] Vector6 wrench_up_to(double x) const;
};

/// What a beam is loaded and strained by.
struct MemberLoads {
  LoadsBetween between;
  Vector12 equivalent_l = Vector12::Zero();  ///< the end forces that do the same work
  Vector12 strained_l = Vector12::Zero();    ///< those that make the strains of an unheld beam
};

/// A load case, ready to be solved. `full` vectors as in System.
struct LoadCase {
  Loads loads;
  std::vector<MemberLoads> members;  ///< one a beam
  Eigen::VectorXd vector;            ///< full, the equivalents of the member loads included
  Eigen::VectorXd imposed;           ///< full: how supports are moved, 0 elsewhere
};

/// Loads at carried nodes become loads at the roots of their rigid bodies, at arms.
/// @throws base::InputError as require_valid
[[nodiscard]] LoadCase prepare(const System& system, const Loads& loads);

}  // namespace fea
