#include "cases/believable.hpp"

#include <variant>

#include <fmt/format.h>

#include "base/units.hpp"
#include "cases/quantity.hpp"

namespace cases {
namespace {

using parts::Dimension;

class Bounds {
 public:
  explicit Bounds(bool inches) : inches_(inches) {}

  /// Unset values pass.
  void between(const char* key, double value, double low, double high, Dimension dimension) {
    if (!(value < low) && !(value > high)) return;
    const auto text = [&](double si) { return shown_quantity(si, dimension, inches_); };
    problems_.emplace_back(
        key, fmt::format("{} is not believable here (from {} to {}); is the unit right?",
                         text(value), text(low), text(high)));
  }

  void length(const char* key, double value, double low, double high) {
    between(key, value, low, high, Dimension::length);
  }

  /// The outside of a bar or tube.
  void outside(const char* key, const parts::Stick& stick) {
    if (const auto* tube = std::get_if<sections::RoundTube>(&stick.shape)) {
      length(key, tube->outside, 0.010, 0.200);
    } else if (const auto* bar = std::get_if<sections::RoundBar>(&stick.shape)) {
      length(key, bar->diameter, 0.008, 0.150);
    }
  }

  [[nodiscard]] std::vector<base::InputError> take() { return std::move(problems_); }

 private:
  bool inches_;
  std::vector<base::InputError> problems_;
};

void add_bracket(Bounds& out, const parts::Bracket& bracket) {
  out.length("bracket.drop", bracket.drop, 0.010, 0.700);
  out.length("bracket.depth_at_rail", bracket.depth_at_rail, 0.020, 0.500);
  out.length("bracket.depth_at_bolt", bracket.depth_at_bolt, 0.020, 0.500);
  out.length("bracket.edge_distance", bracket.edge_distance, 0.008, 0.250);
  out.length("bracket.plates", bracket.plates.thickness, 0.001, 0.050);
  out.length("bracket.gap", bracket.gap, 0.005, 0.250);
  out.length("bracket.weld", bracket.weld.leg, 0.001, 0.030);
  out.length("bracket.weld", bracket.weld.groove, 0.001, 0.030);
  out.length("bracket.rail", bracket.rail.width, 0.020, 0.300);
  out.length("bracket.rail", bracket.rail.height, 0.030, 0.500);
  out.length("bracket.rail", bracket.rail.wall, 0.001, 0.030);
  out.length("bracket.cross_member_length", bracket.cross_member_length, 0.300, 2.000);
}

}  // namespace

std::vector<base::InputError> unbelievable_values(const parts::Design& design) {
  Bounds out(design.inches);
  if (design.vehicle) {
    // A very light and a very heavy front axle.
    out.between("vehicle.axle_weight", design.vehicle->axle_weight, 900.0 * base::kPoundForce,
                25000.0 * base::kPoundForce, Dimension::force);
    out.length("vehicle.mass_center_height", design.vehicle->mass_center_height, 0.250, 2.500);
    out.length("vehicle.wheelbase", design.vehicle->wheelbase, 1.200, 8.000);
  }
  if (design.lateral_link) {
    out.length("lateral_link.bolt_to_bolt", design.lateral_link->bolt_to_bolt, 0.100, 2.000);
    out.length("lateral_link.bolt_to_weld", design.lateral_link->bolt_to_weld, 0.005, 0.250);
    out.outside("lateral_link.tube", design.lateral_link->stick);
  }
  if (design.bracket) add_bracket(out, *design.bracket);
  if (design.brace) {
    out.length("brace.length", design.brace->length, 0.050, 2.500);
    out.length("brace.bolt_to_weld", design.brace->bolt_to_weld, 0.005, 0.250);
    out.outside("brace.tube", design.brace->stick);
  }
  if (design.arm) {
    out.length("arm.bolt_to_weld", design.arm->bolt_to_weld, 0.005, 0.250);
    out.outside("arm.lower", design.arm->lower);
    if (parts::has_upper_arm(*design.arm)) out.outside("arm.upper", design.arm->upper);
  }
  if (design.limit_strap) {
    const parts::LimitStrap& strap = *design.limit_strap;
    out.length("limit_strap.slack", strap.slack, 0.005, 1.000);
    out.length("limit_strap.free_travel", strap.free_travel, 0.005, 1.000);
    out.between("limit_strap.breaking_load", strap.breaking_load, 1.0e3, 5.0e5, Dimension::force);
  }
  if (design.steering) {
    out.outside("steering.drag_link", design.steering->drag_link);
    out.outside("steering.tie_rod", design.steering->tie_rod);
    out.outside("steering.pitman_arm", design.steering->pitman_arm);
    out.length("steering.pitman_drop", design.steering->pitman_drop, 0.0, 0.250);
  }
  return out.take();
}

}  // namespace cases
