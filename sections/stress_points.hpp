#pragma once

#include <cmath>
#include <string>
#include <utility>

#include "sections/stress.hpp"
#include "sections/thin_wall.hpp"

/// What the shapes share when they look for their worst point; not for use outside this folder.
namespace sections {

/// Stress at one point. Torsion and shear act along one line there and carry a sign. [Pa]
struct StressParts {
  double axial = 0.0;
  double bending = 0.0;
  double torsion = 0.0;
  double shear = 0.0;

  /// sigma^2 + 3 tau^2 of a bar: von Mises with one normal stress  [Pa^2]
  [[nodiscard]] double squared() const {
    const double sigma = axial + bending;
    const double tau = torsion + shear;
    return sigma * sigma + 3.0 * tau * tau;
  }
};

/// Keeps the worst of the points offered; of equals the first, so that named points come first.
/// A NaN stays once it is in. `Place` says where, without text until the search is over.
template <typename Place>
class Worst {
 public:
  void offer(const StressParts& parts, const Place& place) {
    constexpr double kTie = 1e-9;  // rounding must not prefer a nameless neighbor
    if (std::isnan(squared_)) return;
    const double squared = parts.squared();
    if (squared <= squared_ * (1.0 + kTie)) return;
    squared_ = squared;
    parts_ = parts;
    place_ = place;
  }
  [[nodiscard]] const Place& place() const { return place_; }
  [[nodiscard]] double squared() const { return squared_; }
  [[nodiscard]] PointStress stress(std::string point) const {
    return {.point = std::move(point),
            .axial = parts_.axial,
            .bending = parts_.bending,
            .torsion = std::abs(parts_.torsion),
            .shear = std::abs(parts_.shear),
            .von_mises = std::sqrt(squared_)};
  }

 private:
  double squared_ = -1.0;
  StressParts parts_;
  Place place_{};
};

/// A place on the outline of a rectangle. Sides `across_y` are those at y = +-width / 2.
struct OutlinePlace {
  enum class Kind { corner, on_side, center };
  Kind kind = Kind::corner;
  bool across_y = false;
  double at = 0.0;  ///< 0 the middle of the side, 1 its corner
};

/// "corner", "middle of the long side", "long side, 67 % of the way from its middle to the corner".
/// @param noun  "side" of a solid rectangle, "wall" of a hollow one
[[nodiscard]] std::string place_name(const OutlinePlace& place, double depth, double width,
                                     const char* noun);

/// Round tube, or bar with `inside` 0. @param within  null = all of its outside
[[nodiscard]] PointStress worst_of_round(double outside, double inside, const Resultants& r,
                                         const OutlinePart* within = nullptr);
/// As largest_von_mises.
[[nodiscard]] double largest_of_round(double outside, double inside, const Resultants& r,
                                      double from);
[[nodiscard]] PointStress worst_of_rectangle(double depth, double width, const Resultants& r);
[[nodiscard]] PointStress worst_of_box(const RectangularTube& tube, const Resultants& r);
[[nodiscard]] PointStress worst_of_walls(const WalledSection& walled, const Resultants& r);
[[nodiscard]] double largest_of_walls(const WalledSection& walled, const Resultants& r);

}  // namespace sections
