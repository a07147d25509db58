#include "parts/vehicle_entry.hpp"

#include <cmath>

namespace parts {

loads::Vehicle to_vehicle(const VehicleEntry& entry) {
  constexpr double kLoadedOverFree = 0.965;
  return {.axle_weight = entry.axle_weight,
          .tire_radius =
              std::isnan(entry.hub_height) ? kLoadedOverFree * 0.5 * entry.tire : entry.hub_height,
          .track = entry.track,
          .total_weight = entry.total_weight,
          .wheelbase = entry.wheelbase,
          .mass_center_height = entry.mass_center_height,
          .friction = entry.friction,
          .unsprung_weight = entry.unsprung_weight,
          .off_road = entry.off_road};
}

}  // namespace parts
