#include "checks/tube_torsion.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

#include <fmt/format.h>

#include "checks/value.hpp"
#include "sections/area_props.hpp"

namespace checks {
namespace {

constexpr double kShearYield = 0.6;  // of Fy

Value volume(double si) {
  return {si, Measure::section_modulus};
}

/// Tn = Fcr C, with the words of what sets Fcr.
void set_torsion(TubeTorsion& out, double critical, double constant, const std::string& symbols) {
  out.torsion = critical * constant;
  out.lines.push_back(
      {symbols, "{0} * {1} = {2}", {stress(critical), volume(constant), moment(out.torsion)}});
}

/// The larger of the two elastic buckling stresses of a round wall in shear, 0.6 Fy at most.
double round_stress(double elastic, double yield, double length_ratio, double wall,
                    double over_root, double over_wall) {
  const double buckles =
      std::max(over_root * elastic / (std::sqrt(length_ratio) * std::pow(wall, 1.25)),
               over_wall * elastic / std::pow(wall, 1.5));
  return std::min(buckles, kShearYield * yield);
}

TubeTorsion round_tube_torsion(const sections::RoundTube& tube, double elastic, double yield,
                               double length) {
  const double wall = tube.outside / tube.wall;
  const double ratio = length / tube.outside;
  TubeTorsion out;
  const double critical = round_stress(elastic, yield, ratio, wall, 1.23, 0.60);
  const sections::AreaProps props = sections::area_props(tube);
  set_torsion(out, critical, 2.0 * props.torsion / tube.outside,
              critical < kShearYield * yield
                  ? "Tn = Fcr C, C = J / (D/2), Fcr the larger of 1.23 E / (sqrt(L/D) "
                    "(D/t)^1.25) and 0.60 E / (D/t)^1.5"
                  : "Tn = Fcr C, C = J / (D/2), Fcr = 0.6 Fy");
  out.shear_y = 0.5 * props.area * round_stress(elastic, yield, ratio, wall, 1.60, 0.78);
  out.shear_z = out.shear_y;
  return out;
}

/// Vn of two webs of a rectangular tube (G4), kv = 5.
double web_shear(double flat, double thickness, double elastic, double yield) {
  const double wall = flat / thickness;
  const double root = std::sqrt(5.0 * elastic / yield);
  double counts = 1.0;
  if (wall > 1.37 * root) {
    counts = 1.51 * root * root / (wall * wall);
  } else if (wall > 1.10 * root) {
    counts = 1.10 * root / wall;
  }
  return kShearYield * yield * 2.0 * flat * thickness * counts;
}

TubeTorsion box_tube_torsion(const sections::RectangularTube& tube, double elastic, double yield) {
  constexpr double kMost = 260.0;
  const double upright = tube.depth - 3.0 * tube.wall;
  const double level = tube.width - 3.0 * tube.wall;
  TubeTorsion out;
  out.shear_z = web_shear(upright, tube.wall, elastic, yield);
  out.shear_y = web_shear(level, tube.wall, elastic, yield);
  const double wall = std::max(upright, level) / tube.wall;
  if (wall > kMost) {
    out.reason = fmt::format(
        "outside the method: h/t of {:.0f} is over 260 (AISC 360-22 H3.1, from memory)", wall);
    return out;
  }
  const double root = std::sqrt(elastic / yield);
  const double constant = 2.0 * (tube.width - tube.wall) * (tube.depth - tube.wall) * tube.wall -
                          4.5 * (4.0 - base::kPi) * std::pow(tube.wall, 3);
  constexpr const char* kConstant =
      "Tn = Fcr C, C = 2 (B - t) (H - t) t - 4.5 (4 - pi) t^3, Fcr = ";
  if (wall <= 2.45 * root) {
    set_torsion(out, kShearYield * yield, constant, std::string(kConstant) + "0.6 Fy");
  } else if (wall <= 3.07 * root) {
    set_torsion(out, kShearYield * yield * 2.45 * root / wall, constant,
                std::string(kConstant) + "0.6 Fy 2.45 sqrt(E/Fy) / (h/t)");
  } else {
    set_torsion(out, 0.458 * base::kPi * base::kPi * elastic / (wall * wall), constant,
                std::string(kConstant) + "0.458 pi^2 E / (h/t)^2");
  }
  return out;
}

}  // namespace

std::optional<TubeTorsion> tube_torsion(const sections::Shape& shape, double elastic, double yield,
                                        double length) {
  if (const auto* tube = std::get_if<sections::RoundTube>(&shape)) {
    return round_tube_torsion(*tube, elastic, yield, length);
  }
  if (const auto* tube = std::get_if<sections::RectangularTube>(&shape)) {
    return box_tube_torsion(*tube, elastic, yield);
  }
  return std::nullopt;
}

}  // namespace checks
