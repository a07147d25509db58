#include "parts/bracket_section.hpp"

#include <cmath>
#include <utility>

#include "base/units.hpp"
#include "parts/bracket_weld.hpp"

namespace parts {
namespace {

using sections::ThinWalled;

/// Points of the walls' middle line; the plates stand toward +z.
class Outline {
 public:
  explicit Outline(double wall) : wall_(wall) {}

  void to(double y, double z) { to(y, z, wall_); }
  /// @param wall  thickness of the wall that ends there
  void to(double y, double z, double wall) {
    if (!line_.points.empty()) line_.walls.push_back(wall);
    line_.points.push_back({y, z});
  }

  /// A quarter circle about (y, z), from one angle on, counter-clockwise.
  void fold(double y, double z, double radius, double from) {
    constexpr int kChords = 6;
    for (int i = 0; i <= kChords; ++i) {
      const double angle = from + 0.5 * base::kPi * i / kChords;
      to(y + radius * std::cos(angle), z + radius * std::sin(angle));
    }
  }

  [[nodiscard]] ThinWalled take() { return std::move(line_); }

 private:
  double wall_;
  ThinWalled line_;
};

/// The outer corners of a channel folded from one plate are its folds.
ThinWalled folded(const Bracket& bracket, double depth) {
  const double t = bracket.plates.thickness;
  const double half = 0.5 * (bracket.gap + t);
  const double radius = bracket.plates.fold_radius + 0.5 * t;
  Outline outline(t);
  const bool face = bracket.face_plate > 0.0;
  // z is counted from the back's middle line, half a wall inside its outer face.
  const double open_end = depth - 0.5 * t - (face ? 0.5 * bracket.face_plate : 0.0);
  outline.to(-half, open_end);
  outline.fold(-half + radius, radius, radius, base::kPi);
  outline.fold(half - radius, radius, radius, 1.5 * base::kPi);
  outline.to(half, open_end);
  ThinWalled line = outline.take();
  for (auto& point : line.points) point[1] += 0.5 * t;
  if (face) {
    line.walls.push_back(bracket.face_plate);
    line.closed = true;
  }
  return line;
}

/// Flat plates, with a back or a face or both between their edges.
ThinWalled tied(const Bracket& bracket, double depth) {
  const double t = bracket.plates.thickness;
  const double half = 0.5 * (bracket.gap + t);
  const bool back = bracket.back_plate > 0.0;
  const bool face = bracket.face_plate > 0.0;
  const double far = face ? depth - 0.5 * bracket.face_plate : depth;
  const double near = back ? 0.5 * bracket.back_plate : 0.0;
  Outline outline(t);
  if (back) {
    outline.to(-half, far);
    outline.to(-half, near);
    outline.to(half, near, bracket.back_plate);
    outline.to(half, far);
  } else {
    outline.to(half, near);
    outline.to(half, far);
    outline.to(-half, far, bracket.face_plate);
    outline.to(-half, near);
  }
  ThinWalled line = outline.take();
  if (back && face) {
    line.walls.push_back(bracket.face_plate);
    line.closed = true;
  }
  return line;
}

}  // namespace

double plate_depth(const Bracket& bracket, double up) {
  return depth_at_bolt(bracket) +
         up / bracket.drop * (bracket.depth_at_rail - depth_at_bolt(bracket));
}

sections::Shape bracket_section(const Bracket& bracket, double up, double inward_y) {
  const double depth = plate_depth(bracket, up);
  if (bracket.plates.count == 1) {
    return sections::FlatBar{.depth = depth, .width = bracket.plates.thickness};
  }
  if (!is_tied(bracket)) {
    return sections::TwinPlate{
        .depth = depth, .thickness = bracket.plates.thickness, .gap = bracket.gap};
  }
  ThinWalled line = bracket.plates.folded() ? folded(bracket, depth) : tied(bracket, depth);
  for (auto& point : line.points) point[1] = inward_y * (point[1] - 0.5 * depth);
  return line;
}

}  // namespace parts
