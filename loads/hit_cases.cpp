#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "loads/axle_formulas.hpp"
#include "loads/case_builder.hpp"

namespace loads {
namespace {

constexpr double kCurbFactor = 1.75;  // Garrett's side curb factor
constexpr double kStepFactor = 4.5;   // Garrett's factor on the static step

double bump_factor(const Vehicle& v) {
  return v.off_road ? 4.0 : 3.0;
}

std::string bump_basis(const Vehicle& v) {
  return v.off_road ? "4 x the static wheel load: vertical factor of off-road vehicles, lecture "
                      "slides Loads Acting on Frame (read)"
                    : "3 x the static wheel load: upper end of 2 to 3 for an axle on a bump, "
                      "Ibrahim, Loads on Vehicle Structures (read)";
}

/// The left one of a pair, named by the wheel that is struck.
LoadCase left_of(std::string_view kind, const char* words) {
  LoadCase c = case_of(kind);
  c.id += "_left";
  c.name += words;
  c.side = Side::left;
  return c;
}

}  // namespace

std::vector<LoadCase> both_wheels_hit_hard(const Vehicle& v) {
  LoadCase c = case_of("both_wheels_hit_hard");
  const double fz = bump_factor(v) * wheel_weight(v, c.id);
  c.pushes = {{Role::left_contact, {0.0, 0.0, fz}}, {Role::right_contact, {0.0, 0.0, fz}}};
  c.basis = bump_basis(v);
  return {c};
}

std::vector<LoadCase> one_wheel_hits_hard(const Vehicle& v) {
  const double weight = wheel_weight(v, "one_wheel_hits_hard");
  LoadCase c = left_of("one_wheel_hits_hard", ", left");
  c.pushes = {{Role::left_contact, {0.0, 0.0, bump_factor(v) * weight}},
              {Role::right_contact, {0.0, 0.0, weight}}};
  c.basis =
      bump_basis(v) + "; on one wheel while the other stays at rest load: proposal, no source";
  return both_sides(c);
}

std::vector<LoadCase> hole_with_brakes_on(const Vehicle& v) {
  const double weight = wheel_weight(v, "hole_with_brakes_on");
  LoadCase c = left_of("hole_with_brakes_on", ", left wheel");
  c.pushes = {{Role::left_contact, {-2.0 * weight, 0.0, (v.off_road ? 3.0 : 2.5) * weight}},
              {Role::right_contact, {0.0, 0.0, weight}}};
  return both_sides(c);
}

std::vector<LoadCase> square_edge_head_on(const Vehicle& v) {
  const double weight = wheel_weight(v, "square_edge_head_on");
  LoadCase c = left_of("square_edge_head_on", ", left wheel");
  const double height = v.off_road ? 0.2 : 0.1;
  const double push = kStepFactor * step_ratio(height) * weight;
  c.pushes = {{Role::left_hub, {-push, 0.0, weight}}, {Role::right_contact, {0.0, 0.0, weight}}};
  c.basis = fmt::format("edge {:.1f} of the tire radius high: {:.2f} x W; {}", height,
                        push / weight, c.basis);
  return both_sides(c);
}

std::vector<LoadCase> slid_into_a_curb(const Vehicle& v) {
  const double fz = 2.0 * wheel_weight(v, "slid_into_a_curb");
  double tip_share = 1.0;
  std::string height = "height of the mass center unknown, so not reduced";
  if (!std::isnan(v.mass_center_height)) {
    const double track = needed(v.track, "track", "slid_into_a_curb", "the track");
    const double h = needed(v.mass_center_height, "mass_center_height", "slid_into_a_curb",
                            "a height of the mass center over 0");
    tip_share = std::min(1.0, track / (2.0 * h));
    height = fmt::format("x the lesser of 1 and track / (2 x height of the mass center) = {:.3f}",
                         tip_share);
  }
  LoadCase c = left_of("slid_into_a_curb", ", left wheel");
  // The curb pushes back across the truck.
  c.pushes = {{Role::left_contact, {0.0, -kCurbFactor * fz * tip_share, fz}}};
  c.basis += "; " + height;
  return both_sides(c);
}

std::vector<LoadCase> corner_plus_hole(const Vehicle& v) {
  const double weight = wheel_weight(v, "corner_plus_hole");
  constexpr double kOuter = 2.5;
  constexpr double kInner = 0.2;
  const double side = 2.0 * weight / (kOuter + kInner);  // 1.0 x 2 W, shared as the wheel loads
  LoadCase c = left_of("corner_plus_hole", ", turning left");
  c.pushes = {{Role::right_contact, {-weight, kOuter * side, kOuter * weight}},
              {Role::left_contact, {0.0, kInner * side, kInner * weight}}};
  return both_sides(c);
}

}  // namespace loads
