#include "parts/design.hpp"

#include <cmath>

#include "loads/vehicle.hpp"

namespace parts {

bool has_given_loads(const Design& design) {
  return !design.forces.empty() || !design.line_loads.empty() || !design.strains.empty() ||
         !design.settlements.empty() || !design.self_weight.empty();
}

std::vector<std::string> default_load_cases(const Design& design) {
  if (!design.vehicle || !design.lateral_link) return {};
  if (!design.axle) return {"hard_corner", "slid_into_a_curb"};
  const VehicleEntry& vehicle = *design.vehicle;
  const bool can_brake = !std::isnan(vehicle.total_weight) && !std::isnan(vehicle.wheelbase) &&
                         !std::isnan(vehicle.mass_center_height);
  std::vector<std::string> names;
  for (const std::string& name : loads::case_names()) {
    if (name != "hard_stop" || can_brake) names.push_back(name);
  }
  return names;
}

}  // namespace parts
