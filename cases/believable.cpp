#include "cases/believable.hpp"

#include <cmath>
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
      wall(key, tube->wall);
    } else if (const auto* bar = std::get_if<sections::RoundBar>(&stick.shape)) {
      length(key, bar->diameter, 0.008, 0.150);
    }
  }

  void wall(const char* key, double value) {
    constexpr double kLeast = 0.0005;  // [m]
    if (!(value < kLeast)) return;
    problems_.emplace_back(
        key, fmt::format("a wall of {} is not believable for a tube (from {}); is the unit right?",
                         shown_quantity(value, Dimension::length, inches_),
                         shown_quantity(kLeast, Dimension::length, inches_)));
  }

  /// A hub stands lower than half of its tire, and not on the rim.
  void hub_under_tire(const parts::VehicleEntry& v) {
    constexpr double kLeast = 0.75;
    const double half = 0.5 * v.tire;
    if (!(v.hub_height > half) && !(v.hub_height < kLeast * half)) return;
    const auto text = [&](double si) { return shown_quantity(si, Dimension::length, inches_); };
    problems_.emplace_back(
        "vehicle.hub_height",
        fmt::format("{} does not go with a tire of {}: from {} to {}, half of the tire, loaded; is "
                    "one of them a radius or a diameter?",
                    text(v.hub_height), text(v.tire), text(kLeast * half), text(half)));
  }

  [[nodiscard]] std::vector<base::InputError> take() { return std::move(problems_); }

 private:
  bool inches_;
  std::vector<base::InputError> problems_;
};

void add_vehicle(Bounds& out, const parts::VehicleEntry& v) {
  const auto force = [&](const char* key, double value, double low, double high) {
    out.between(key, value, low * base::kPoundForce, high * base::kPoundForce, Dimension::force);
  };
  // From the front axle of the smallest trucks to a heavy truck's.
  force("vehicle.axle_weight", v.axle_weight, 400.0, 25000.0);
  force("vehicle.total_weight", v.total_weight, 400.0, 120000.0);
  force("vehicle.unsprung_weight", v.unsprung_weight, 30.0, 8000.0);
  out.length("vehicle.tire", v.tire, 0.350, 1.800);
  out.length("vehicle.hub_height", v.hub_height, 0.120, 0.900);
  out.length("vehicle.track", v.track, 0.700, 3.000);
  out.hub_under_tire(v);
  out.length("vehicle.mass_center_height", v.mass_center_height, 0.250, 2.500);
  out.length("vehicle.wheelbase", v.wheelbase, 1.200, 8.000);
  out.between("vehicle.engine_torque", v.engine_torque, 10.0, 6000.0, Dimension::moment);
  out.between("vehicle.gear", v.gear, 0.5, 25.0, Dimension::ratio);
  out.between("vehicle.transfer", v.transfer, 0.5, 25.0, Dimension::ratio);
  out.between("vehicle.final_drive", v.final_drive, 1.0, 20.0, Dimension::ratio);
  out.between("vehicle.droop_speed", v.droop_speed, 0.05, 10.0, Dimension::speed);
  out.between("vehicle.slam_speed", v.slam_speed, 0.05, 10.0, Dimension::speed);
  out.between("vehicle.articulation", v.articulation, 0.0, 30.0 * base::kDegree, Dimension::angle);
  out.length("vehicle.stop_crush", v.stop_crush, 0.003, 0.300);
  out.length("vehicle.tire_width", v.tire_width, 0.050, 0.800);
  out.length("vehicle.patch_length", v.patch_length, 0.030, 0.800);
  out.between("vehicle.tire_pressure", v.tire_pressure, 0.01e6, 1.2e6, Dimension::stress);
  out.length("vehicle.kingpin_offset", v.kingpin_offset, 0.0, 0.400);
  out.length("vehicle.steering_arm", v.steering_arm, 0.050, 0.400);
  out.between("vehicle.gear_torque", v.gear_torque, 300.0, 20000.0, Dimension::moment);
  out.length("vehicle.pitman_arm", v.pitman_arm, 0.050, 0.400);
}

void add_axle(Bounds& out, const parts::Axle& axle) {
  out.length("axle.coil_spacing", axle.coil_spacing, 0.150, 2.500);
  out.between("axle.coil_rate", axle.coil_rate, 1.0e3, 3.0e7, Dimension::stiffness);
  out.between("axle.stop_rate", axle.stop_rate, 1.0e3, 1.0e9, Dimension::stiffness);
  out.length("axle.seat_height", axle.seat_height, 0.050, 2.000);
  out.length("axle.bump_travel", axle.bump_travel, 0.0, 0.800);
  out.length("axle.stop_spacer", axle.stop_spacer, 0.0, 0.500);
  out.length("axle.damper_bump_travel", axle.damper_bump_travel, 0.005, 1.000);
  out.length("axle.coil_bump_travel", axle.coil_bump_travel, 0.005, 1.000);
  out.length("axle.joint_bump_travel", axle.joint_bump_travel, 0.005, 1.000);
}

void add_limit_strap(Bounds& out, const parts::LimitStrap& strap) {
  out.length("limit_strap.slack", strap.slack, 0.005, 1.000);
  out.between("limit_strap.rate", strap.rate, 1.0e3, 1.0e8, Dimension::stiffness);
  out.between("limit_strap.breaking_load", strap.breaking_load, 1.0e3, 5.0e5, Dimension::force);
  out.length("limit_strap.free_travel", strap.free_travel, 0.005, 1.000);
  out.length("limit_strap.damper_travel", strap.damper_travel, 0.005, 1.500);
  out.length("limit_strap.spring_travel", strap.spring_travel, 0.005, 1.500);
  out.length("limit_strap.joint_travel", strap.joint_travel, 0.005, 1.500);
  out.length("limit_strap.brake_hose_travel", strap.brake_hose_travel, 0.005, 1.500);
}

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
  out.length("bracket.rail", bracket.rail.frame_plate, 0.0, 0.050);
  out.length("bracket.holes_in_bottom", bracket.holes_in_bottom, 0.0, 0.200);
  out.length("bracket.holes_in_side", bracket.holes_in_side, 0.0, 0.400);
  out.length("bracket.cross_member_ahead", bracket.cross_member_ahead, 0.020, 3.000);
  out.length("bracket.cross_member_behind", bracket.cross_member_behind, 0.020, 3.000);
  out.length("bracket.cross_member_length", bracket.cross_member_length, 0.300, 2.000);
}

}  // namespace

std::vector<base::InputError> unbelievable_values(const parts::Design& design) {
  Bounds out(design.inches);
  if (design.vehicle) {
    add_vehicle(out, *design.vehicle);
  }
  if (design.axle) add_axle(out, *design.axle);
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
  if (design.limit_strap) add_limit_strap(out, *design.limit_strap);
  if (design.steering) {
    out.outside("steering.drag_link", design.steering->drag_link);
    out.outside("steering.tie_rod", design.steering->tie_rod);
    out.outside("steering.pitman_arm", design.steering->pitman_arm);
    out.length("steering.pitman_drop", design.steering->pitman_drop, 0.0, 0.250);
  }
  return out.take();
}

}  // namespace cases
