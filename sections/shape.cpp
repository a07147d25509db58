#include "sections/shape.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "sections/size_text.hpp"

namespace sections {
namespace {

using base::InputError;

/// Room for the rounding of a unit conversion, when two sizes may be equal.
constexpr double kRounding = 1e-9;

/// @param power  1 for a length, 2 for an area, 3 for a modulus, 4 for a second moment
void require_positive(const char* key, double value, int power = 1) {
  if (std::isnan(value)) throw InputError(key, "no value is given; give one over 0");
  if (std::isinf(value)) throw InputError(key, "the value is not finite; give one over 0");
  if (value <= 0.0) {
    throw InputError(key, both_units(value, power) + " is not over 0; give a value over 0");
  }
}

void require_unset_or_positive(const char* key, double value, int power) {
  if (!std::isnan(value)) require_positive(key, value, power);
}

/// @param of     "the outside diameter"
/// @param solid  what to ask for when no hole is left
void require_hollow(double wall, double outside, const char* of, const char* solid) {
  require_positive("wall", wall);
  if (wall < 0.5 * outside) return;
  throw InputError("wall", fmt::format("{} is half of {} ({}) or more; give a wall under {}, or {}",
                                       both_units(wall), of, both_units(outside),
                                       both_units(0.5 * outside), solid));
}

struct Validity {
  void operator()(const RoundBar& s) const { require_positive("diameter", s.diameter); }
  void operator()(const RoundTube& s) const {
    require_positive("outside", s.outside);
    require_hollow(s.wall, s.outside, "the outside diameter", "a round bar");
  }
  void operator()(const RectangularTube& s) const {
    require_positive("depth", s.depth);
    require_positive("width", s.width);
    const double smaller = std::min(s.depth, s.width);
    require_hollow(s.wall, smaller, "the smaller side", "a flat bar");
    require_positive("corner", s.corner);
    if (s.corner < s.wall * (1.0 - kRounding) || s.corner > 0.5 * smaller * (1.0 + kRounding)) {
      throw InputError(
          "corner",
          fmt::format("{} is not between the wall, {}, and half of the smaller side, "
                      "{}; give the outside radius of the corner, often twice the "
                      "wall",
                      both_units(s.corner), both_units(s.wall), both_units(0.5 * smaller)));
    }
  }
  void operator()(const FlatBar& s) const {
    require_positive("depth", s.depth);
    require_positive("width", s.width);
  }
  void operator()(const TwinPlate& s) const {
    require_positive("depth", s.depth);
    require_positive("thickness", s.thickness);
    require_positive("gap", s.gap);
  }
  void operator()(const ByNumbers& s) const {
    require_positive("area", s.area, 2);
    require_positive("iyy", s.iyy, 4);
    require_positive("izz", s.izz, 4);
    require_positive("torsion", s.torsion, 4);
    require_unset_or_positive("shear_y", s.shear_y, 2);
    require_unset_or_positive("shear_z", s.shear_z, 2);
    require_positive("modulus_y", s.modulus_y, 3);
    require_positive("modulus_z", s.modulus_z, 3);
    require_unset_or_positive("modulus_t", s.modulus_t, 3);
  }
};

struct Description {
  bool inches;

  [[nodiscard]] std::string size(double length) const {
    return inches ? inch_fraction(length) : millimeters(length);
  }
  // A wall is sold by decimals even where it is a common fraction.
  [[nodiscard]] std::string wall(double length) const {
    return inches ? inch_decimal(length) : millimeters(length);
  }
  [[nodiscard]] const char* unit() const { return inches ? "in" : "mm"; }

  std::string operator()(const RoundBar& s) const {
    return fmt::format("{} {} round bar", size(s.diameter), unit());
  }
  std::string operator()(const RoundTube& s) const {
    return fmt::format("{} x {} {} round tube", size(s.outside), wall(s.wall), unit());
  }
  std::string operator()(const RectangularTube& s) const {
    return fmt::format("{} x {} x {} {} {} tube", size(s.depth), size(s.width), wall(s.wall),
                       unit(), s.depth == s.width ? "square" : "rectangular");
  }
  std::string operator()(const FlatBar& s) const {
    return fmt::format("{} x {} {} flat bar", size(s.depth), size(s.width), unit());
  }
  std::string operator()(const TwinPlate& s) const {
    return fmt::format("two {} x {} {} plates, {} {} apart", size(s.depth), size(s.thickness),
                       unit(), size(s.gap), unit());
  }
  std::string operator()(const ByNumbers&) const { return "section given by its numbers"; }
};

}  // namespace

void require_valid(const Shape& shape) {
  std::visit(Validity{}, shape);
}

std::string describe(const Shape& shape, bool inches) {
  return std::visit(Description{inches}, shape);
}

}  // namespace sections
