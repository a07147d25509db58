#include "parts/design.hpp"

#include <cmath>

#include "loads/case_library.hpp"

namespace parts {

Design::Design() = default;
Design::Design(const Design& other) = default;
Design::Design(Design&& other) noexcept = default;
Design& Design::operator=(const Design& other) = default;
Design& Design::operator=(Design&& other) noexcept = default;
Design::~Design() = default;

std::vector<GivenCase> given_cases(const Design& design) {
  std::vector<GivenCase> all;
  const auto add = [&](const auto& list) {
    for (const auto& one : list) all.push_back(one.value.given);
  };
  add(design.forces);
  add(design.line_loads);
  add(design.strains);
  add(design.settlements);
  add(design.self_weight);
  return all;
}

bool has_given_loads(const Design& design) {
  return !design.custom_cases.empty() || !given_cases(design).empty();
}

bool on_one_bolt(const Design& design) {
  return design.lateral_link && design.brace && design.brace->meets_bracket.at_bolt();
}

std::vector<std::string> default_load_cases(const Design& design) {
  if (!design.vehicle || !design.lateral_link) return {};
  if (!design.axle) return {"hard_corner", "slid_into_a_curb"};
  return loads::case_names();
}

std::array<double, 3> point_of(const Design& design, const std::string& name) {
  for (const auto& point : design.points) {
    if (point.name == name) return point.value;
  }
  return {base::kUnset, base::kUnset, base::kUnset};
}

loads::Vehicle vehicle_of(const Design& design) {
  loads::Vehicle vehicle = to_vehicle(*design.vehicle);
  vehicle.inches = design.inches;
  if (design.axle) {
    vehicle.coil_rate = design.axle->coil_rate;
    if (std::isnan(vehicle.unsprung_weight) && !std::isnan(design.axle->coil_preload)) {
      vehicle.unsprung_weight = vehicle.axle_weight - 2.0 * design.axle->coil_preload;
    }
  }
  if (design.limit_strap) {
    vehicle.strap_rate = design.limit_strap->rate;
    vehicle.droop_travel = slack_of(design);
  }
  if (design.steering && std::isnan(vehicle.steering_arm) && !std::isnan(vehicle.kingpin_offset)) {
    vehicle.steering_arm = steering_arm_of(design);
  }
  return vehicle;
}

}  // namespace parts
