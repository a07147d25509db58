#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "loads/axle_formulas.hpp"
#include "loads/case_builder.hpp"

namespace loads {
namespace {

constexpr double kOuterShare = 1.8;  // of the static wheel load, in a hard corner
constexpr double kInnerShare = 0.2;
constexpr double kReverseDeceleration = 0.6;  // [g]
constexpr double kReverseFriction = 0.8;

}  // namespace

std::vector<LoadCase> hard_stop(const Vehicle& v) {
  LoadCase c = case_of("hard_stop");
  const double mu = friction(v, c.id);
  const double weight = wheel_weight(v, c.id);
  need_transfer(v, c.id);
  const double deceleration = stop_deceleration(v);
  const double transfer = braking_transfer(v, deceleration);
  if (transfer > v.total_weight - v.axle_weight) {
    throw base::InputError("vehicle.mass_center_height",
                           "with this height, wheelbase and friction a hard stop lifts the rear "
                           "axle; check the three");
  }
  const double fz = weight + 0.5 * transfer;
  c.pushes = {{Role::left_contact, {-mu * fz, 0.0, fz}},
              {Role::right_contact, {-mu * fz, 0.0, fz}}};
  c.basis = fmt::format("stop at {:.2f} g, {}; {}", deceleration,
                        std::isnan(v.brake_share)
                            ? "the friction of the tires"
                            : "where the front tires are at their limit with this brake share",
                        c.basis);
  add_inertia(c, v, {-deceleration, 0.0, 0.0});
  return {c};
}

std::vector<LoadCase> hard_stop_in_reverse(const Vehicle& v) {
  LoadCase c = case_of("hard_stop_in_reverse");
  const double mu = std::min(kReverseFriction, friction(v, c.id));
  const double weight = wheel_weight(v, c.id);
  need_transfer(v, c.id);
  const double deceleration = std::min(kReverseDeceleration, friction(v, c.id));
  const double fz = weight - 0.5 * braking_transfer(v, deceleration);
  if (!(fz > 0.0)) {
    throw base::InputError("vehicle.mass_center_height",
                           "with this height and wheelbase a stop in reverse lifts the front axle; "
                           "check the two");
  }
  c.pushes = {{Role::left_contact, {mu * fz, 0.0, fz}}, {Role::right_contact, {mu * fz, 0.0, fz}}};
  c.basis = fmt::format("rolling backward, stop at {:.2f} g, {:.2f} x the wheel load forward; {}",
                        deceleration, mu, c.basis);
  add_inertia(c, v, {deceleration, 0.0, 0.0});
  return {c};
}

std::vector<LoadCase> hard_corner(const Vehicle& v) {
  LoadCase c = case_of("hard_corner");
  const double mu = friction(v, c.id);
  const double weight = wheel_weight(v, c.id);
  const double outer = kOuterShare * weight;
  const double inner = kInnerShare * weight;
  // Turning left, the ground pushes to the left.
  c.id += "_left";
  c.name += ", turning left";
  c.side = Side::left;
  c.pushes = {{Role::right_contact, {0.0, mu * outer, outer}},
              {Role::left_contact, {0.0, mu * inner, inner}}};
  c.basis = fmt::format("side force {:.2f} x wheel load; {}", mu, c.basis);
  add_inertia(c, v, {0.0, mu, 0.0});
  return both_sides(c);
}

}  // namespace loads
