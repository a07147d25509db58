#pragma once

#include <string>

#include "loads/vehicle.hpp"

namespace loads {

/// What turns one standing wheel about its kingpin, by one of three formulas.
struct ParkingMoment {
  double value = base::kUnset;  ///< [N m]; unset = a number it needs is not given
  std::string formula;          ///< with its source
};

/// The three formulas, in N m for one wheel with load `weight` and friction mu:
/// - mu weight sqrt(B^2 / 8 + E^2): the shop's form; SAE steering design literature (from memory);
/// - mu_e weight sqrt(d^2 + (a / 3)^2), mu_e = 0.58: Automotive Chassis Engineering, p. 82 (read);
/// - mu / 3 sqrt(weight^3 / p), without offset: after Gough (from memory).
/// B tire width, E = d kingpin offset on the ground, a patch length, p pressure.
[[nodiscard]] ParkingMoment shop_parking_moment(const Vehicle& vehicle, double weight);
[[nodiscard]] ParkingMoment patch_parking_moment(const Vehicle& vehicle, double weight);
[[nodiscard]] ParkingMoment pressure_parking_moment(const Vehicle& vehicle, double weight);

/// The highest of those that can be formed.
[[nodiscard]] ParkingMoment parking_moment(const Vehicle& vehicle, double weight);

}  // namespace loads
