#include "loads/parking_moment.hpp"

#include <cmath>

namespace loads {

ParkingMoment shop_parking_moment(const Vehicle& v, double weight) {
  const double arm =
      std::sqrt(v.tire_width * v.tire_width / 8.0 + v.kingpin_offset * v.kingpin_offset);
  return {v.friction * weight * arm,
          "mu W sqrt(B^2/8 + E^2), SAE steering design literature (from memory)"};
}

ParkingMoment patch_parking_moment(const Vehicle& v, double weight) {
  constexpr double kEffectiveFriction = 0.58;  // at d / a = 0.1, from one example
  const double third = v.patch_length / 3.0;
  return {
      kEffectiveFriction * weight * std::sqrt(v.kingpin_offset * v.kingpin_offset + third * third),
      "0.58 W sqrt(d^2 + (a/3)^2), Automotive Chassis Engineering, p. 82 (read)"};
}

ParkingMoment pressure_parking_moment(const Vehicle& v, double weight) {
  return {v.friction / 3.0 * std::sqrt(weight * weight * weight / v.tire_pressure),
          "mu/3 sqrt(W^3/p), after Gough (from memory)"};
}

ParkingMoment parking_moment(const Vehicle& vehicle, double weight) {
  ParkingMoment highest;
  for (ParkingMoment (*formula)(const Vehicle&, double) :
       {shop_parking_moment, patch_parking_moment, pressure_parking_moment}) {
    const ParkingMoment moment = formula(vehicle, weight);
    if (std::isnan(moment.value)) continue;
    if (std::isnan(highest.value) || moment.value > highest.value) highest = moment;
  }
  return highest;
}

}  // namespace loads
