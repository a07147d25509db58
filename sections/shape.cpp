#include "sections/shape.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "sections/size_text.hpp"
#include "sections/wall_line.hpp"

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

/// @param of  "the depth"
void require_under(const char* key, double value, double limit, const char* of) {
  if (value < limit) return;
  throw InputError(key, fmt::format("{} leaves nothing of {}; give a thickness under {}",
                                    both_units(value), of, both_units(limit)));
}

void require_channel(double depth, double width, double web, double flange) {
  require_positive("depth", depth);
  require_positive("width", width);
  require_positive("web", web);
  require_positive("flange", flange);
  require_under("web", web, width, "the flanges");
  require_under("flange", flange, 0.5 * depth, "the web");
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
  void operator()(const Channel& s) const { require_channel(s.depth, s.width, s.web, s.flange); }
  void operator()(const Angle& s) const {
    require_positive("depth", s.depth);
    require_positive("width", s.width);
    require_positive("wall", s.wall);
    require_under("wall", s.wall, std::min(s.depth, s.width), "a leg");
  }
  void operator()(const BoxedChannel& s) const {
    require_channel(s.depth, s.width, s.web, s.flange);
    require_positive("plate", s.plate);
  }
  void operator()(const ThinWalled& s) const {
    for (const double wall : s.walls) require_positive("walls", wall);
    require_sound(s);
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
  [[nodiscard]] std::string channel(double depth, double width, double web, double flange) const {
    if (web == flange) {
      return fmt::format("{} x {} x {} {} channel", size(depth), size(width), wall(web), unit());
    }
    return fmt::format("{} x {} {} channel, web {}, flanges {} {}", size(depth), size(width),
                       unit(), wall(web), wall(flange), unit());
  }
  std::string operator()(const Channel& s) const {
    return channel(s.depth, s.width, s.web, s.flange);
  }
  std::string operator()(const Angle& s) const {
    return fmt::format("{} x {} x {} {} angle", size(s.depth), size(s.width), wall(s.wall), unit());
  }
  std::string operator()(const BoxedChannel& s) const {
    return fmt::format("{}, boxed with {} {} plate", channel(s.depth, s.width, s.web, s.flange),
                       wall(s.plate), unit());
  }
  std::string operator()(const ThinWalled& s) const {
    return fmt::format("{} section of {} thin walls", s.closed ? "closed" : "open", s.walls.size());
  }
};

struct Thickness {
  double operator()(const RoundBar& s) const { return s.diameter; }
  double operator()(const RoundTube& s) const { return s.wall; }
  double operator()(const RectangularTube& s) const { return s.wall; }
  double operator()(const FlatBar& s) const { return std::min(s.depth, s.width); }
  double operator()(const TwinPlate& s) const { return s.thickness; }
  double operator()(const ByNumbers&) const { return base::kUnset; }
  double operator()(const Channel& s) const { return std::max(s.web, s.flange); }
  double operator()(const Angle& s) const { return s.wall; }
  double operator()(const BoxedChannel& s) const { return std::max({s.web, s.flange, s.plate}); }
  double operator()(const ThinWalled& s) const {
    return s.walls.empty() ? base::kUnset : *std::max_element(s.walls.begin(), s.walls.end());
  }
};

}  // namespace

void require_valid(const Shape& shape) {
  std::visit(Validity{}, shape);
}

std::string describe(const Shape& shape, bool inches) {
  return std::visit(Description{inches}, shape);
}

bool is_open(const Shape& shape) {
  const auto* line = std::get_if<ThinWalled>(&shape);
  return std::holds_alternative<Channel>(shape) || std::holds_alternative<Angle>(shape) ||
         (line != nullptr && !line->closed);
}

double governing_thickness(const Shape& shape) {
  return std::visit(Thickness{}, shape);
}

}  // namespace sections
