#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "sections/shape.hpp"
#include "sections/stress.hpp"

/// What a drawing of an answer needs beside its numbers. Lengths in m, in the axes of the case; a
/// line has the same points in every load case, so that what moved can be laid beside it.
namespace studies {

using Place3 = std::array<double, 3>;

/// The center line of a piece in its reference place.
struct DrawnPiece {
  std::string part;
  std::string name;                          ///< empty when the part is one piece
  std::vector<Place3> line = {};             ///< [m]
  std::vector<double> along = {};            ///< of each point  [m]
  std::vector<sections::Shape> shapes = {};  ///< at each point
  std::vector<Place3> y_axes = {};  ///< of the sections as drawn, at each point; unit vectors
  std::vector<Place3> z_axes = {};
};

/// A force drawn where it acts.
struct DrawnForce {
  std::string what;
  Place3 at = {};
  Place3 force = {};   ///< [N]
  bool holds = false;  ///< it holds the parts; else it acts on them
};

/// A shape in which the frame buckles.
struct DrawnMode {
  double factor = base::kUnset;
  std::string what;
  std::vector<std::vector<Place3>> shape = {};  ///< by piece and point; the largest is 1
};

/// A load case with the stiffness set in which something comes nearest to its limit.
struct DrawnCase {
  std::string load_case;
  std::string set;
  std::vector<std::vector<Place3>> moved = {};  ///< by piece and point  [m]; empty = not solved
  std::vector<std::vector<sections::Resultants>> forces =
      {};  ///< the same; on the cut at each point
  std::vector<DrawnForce> loads = {};
  std::vector<DrawnMode> modes = {};  ///< ascending factor
};

/// How near a part comes to its limit in one load case, over all its checks and stiffness sets.
struct PartInCase {
  std::string part;
  std::string load_case;
  double utilization = base::kUnset;  ///< unset = not decided
  /// It is the finding's; else the demand over capacity at the load itself times the factor asked
  /// for, which falls short of it where the frame softens under more load.
  bool found = false;
};

struct Drawing {
  std::vector<DrawnPiece> pieces = {};
  std::vector<DrawnCase> cases = {};
  std::vector<PartInCase> utilization =
      {};  ///< of every part in every load case that asks it anything
  std::optional<std::array<Place3, 2>> wheels = {};  ///< centers, left and right
  double tire_radius = base::kUnset;                 ///< loaded  [m]
};

}  // namespace studies
