#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "loads/vehicle.hpp"

namespace loads {
namespace {

constexpr double kOuterShare = 1.8;  // of the static wheel load, in a hard corner
constexpr double kInnerShare = 0.2;
constexpr double kCurbFactor = 1.75;  // Garrett's side curb factor

/// @throws base::InputError when a number that a case needs is unset or not over zero
double needed(double value, const char* key, const std::string& case_name, const char* what) {
  if (std::isfinite(value) && value > 0.0) return value;
  throw base::InputError(
      std::string("vehicle.") + key,
      fmt::format("the load case {} needs {}; give it, or leave the case out", case_name, what));
}

double wheel_weight(const Vehicle& v, const std::string& case_name) {
  return 0.5 * needed(v.axle_weight, "axle_weight", case_name,
                      "the weight under both front tires, over 0");
}

double friction(const Vehicle& v, const std::string& case_name) {
  return needed(v.friction, "friction", case_name, "the friction of the tires, such as 0.9");
}

double bump_factor(const Vehicle& v) {
  return v.off_road ? 4.0 : 3.0;
}

std::string bump_basis(const Vehicle& v) {
  return v.off_road
             ? "4 x the static wheel load: vertical factor of off-road vehicles, lecture slides "
               "Loads Acting on Frame (read)"
             : "3 x the static wheel load: upper end of 2 to 3 for an axle on a bump, Ibrahim, "
               "Loads "
               "on Vehicle Structures (read)";
}

Role contact(Side side) {
  return side == Side::left ? Role::left_contact : Role::right_contact;
}
Side other(Side side) {
  return side == Side::left ? Side::right : Side::left;
}
const char* word(Side side) {
  return side == Side::left ? "left" : "right";
}

std::vector<LoadCase> hard_stop(const Vehicle& v) {
  const std::string name = "hard stop";
  const double mu = friction(v, name);
  const double weight = wheel_weight(v, name);
  const double total =
      needed(v.total_weight, "total_weight", name, "the weight of the whole truck");
  const double wheelbase = needed(v.wheelbase, "wheelbase", name, "the wheelbase");
  const double height = needed(v.mass_center_height, "mass_center_height", name,
                               "the height of the truck's mass center");
  if (total <= v.axle_weight) {
    throw base::InputError("vehicle.total_weight",
                           "the whole truck must weigh more than its front axle carries");
  }
  const double transfer = height / wheelbase * total * mu;
  if (transfer > total - v.axle_weight) {
    throw base::InputError("vehicle.mass_center_height",
                           "with this height, wheelbase and friction a hard stop lifts the rear "
                           "axle; check the three");
  }
  const double fz = weight + 0.5 * transfer;
  LoadCase c{.id = "hard_stop", .name = name, .severity = Severity::routine};
  c.pushes = {{Role::left_contact, {-mu * fz, 0.0, fz}},
              {Role::right_contact, {-mu * fz, 0.0, fz}}};
  c.basis = fmt::format(
      "stop at {:.2f} g, the friction of the tires; load transfer height / wheelbase x total "
      "weight "
      "x g: Gillespie, Fundamentals of Vehicle Dynamics, ch. 1 (from memory)",
      mu);
  return {c};
}

std::vector<LoadCase> hard_corner(const Vehicle& v) {
  const std::string name = "hard corner";
  const double mu = friction(v, name);
  const double weight = wheel_weight(v, name);
  std::vector<LoadCase> cases;
  for (const Side turn : {Side::left, Side::right}) {
    const double toward = turn == Side::left ? 1.0 : -1.0;  // the ground pushes into the turn
    const double outer = kOuterShare * weight;
    const double inner = kInnerShare * weight;
    LoadCase c{.id = fmt::format("hard_corner_{}", word(turn)),
               .name = fmt::format("hard corner, turning {}", word(turn)),
               .severity = Severity::routine,
               .side = turn};
    c.pushes = {{contact(other(turn)), {0.0, toward * mu * outer, outer}},
                {contact(turn), {0.0, toward * mu * inner, inner}}};
    c.basis = fmt::format(
        "side force {:.2f} x wheel load, as the tires limit it to about 1 g: Ibrahim, Loads on "
        "Vehicle Structures (read); 1.8 and 0.2 x the static load outside and inside: proposal, no "
        "source",
        mu);
    cases.push_back(c);
  }
  return cases;
}

std::vector<LoadCase> both_wheels_hit_hard(const Vehicle& v) {
  const std::string name = "both wheels hit hard";
  const double fz = bump_factor(v) * wheel_weight(v, name);
  LoadCase c{.id = "both_wheels_hit_hard", .name = name, .severity = Severity::abuse};
  c.pushes = {{Role::left_contact, {0.0, 0.0, fz}}, {Role::right_contact, {0.0, 0.0, fz}}};
  c.basis = bump_basis(v);
  return {c};
}

std::vector<LoadCase> one_wheel_hits_hard(const Vehicle& v) {
  const std::string name = "one wheel hits hard";
  const double weight = wheel_weight(v, name);
  std::vector<LoadCase> cases;
  for (const Side side : {Side::left, Side::right}) {
    LoadCase c{.id = fmt::format("one_wheel_hits_hard_{}", word(side)),
               .name = fmt::format("{}, {}", name, word(side)),
               .severity = Severity::abuse,
               .side = side};
    c.pushes = {{contact(side), {0.0, 0.0, bump_factor(v) * weight}},
                {contact(other(side)), {0.0, 0.0, weight}}};
    c.basis =
        bump_basis(v) + "; on one wheel while the other stays at rest load: proposal, no source";
    cases.push_back(c);
  }
  return cases;
}

std::vector<LoadCase> slid_into_a_curb(const Vehicle& v) {
  const std::string name = "slid into a curb";
  const double fz = 2.0 * wheel_weight(v, name);
  double tip_share = 1.0;
  std::string height = "height of the mass center unknown, so not reduced";
  if (!std::isnan(v.mass_center_height)) {
    const double track = needed(v.track, "track", name, "the track");
    const double h = needed(v.mass_center_height, "mass_center_height", name,
                            "a height of the mass center over 0");
    tip_share = std::min(1.0, track / (2.0 * h));
    height = fmt::format("x the lesser of 1 and track / (2 x height of the mass center) = {:.3f}",
                         tip_share);
  }
  const double side_force = kCurbFactor * fz * tip_share;
  std::vector<LoadCase> cases;
  for (const Side side : {Side::left, Side::right}) {
    const double away = side == Side::left ? -1.0 : 1.0;  // the curb pushes back across the truck
    LoadCase c{.id = fmt::format("slid_into_a_curb_{}", word(side)),
               .name = fmt::format("{}, {} wheel", name, word(side)),
               .severity = Severity::abuse,
               .side = side};
    c.pushes = {{contact(side), {0.0, away * side_force, fz}}};
    c.basis =
        "1.75 x axle weight, all of it on the struck wheel: side curb factor by Garrett, in Brown, "
        "Robertson, Serpento, Motor Vehicle Structures, p. 24 (read); " +
        height;
    cases.push_back(c);
  }
  return cases;
}

std::vector<LoadCase> dragged_over_a_rock(const Vehicle& v) {
  const std::string name = "dragged over a rock";
  const double weight = wheel_weight(v, name);
  const double mu = friction(v, name);
  LoadCase c{.id = "dragged_over_a_rock", .name = name, .severity = Severity::abuse};
  c.pushes = static_pushes(v);
  c.pushes.push_back({Role::link_midspan, {-mu * weight, 0.0, weight}});
  c.basis = fmt::format(
      "the static load of one wheel up at the middle of the link, and {:.2f} of it rearward as "
      "friction: proposal, no source",
      mu);
  return {c};
}

using Builder = std::vector<LoadCase> (*)(const Vehicle&);

/// In the order of case_names().
constexpr std::array<Builder, 6> kBuilders = {
    hard_stop,           hard_corner,      both_wheels_hit_hard,
    one_wheel_hits_hard, slid_into_a_curb, dragged_over_a_rock};

}  // namespace

const std::vector<std::string>& case_names() {
  static const std::vector<std::string> names = {
      "hard_stop",           "hard_corner",      "both_wheels_hit_hard",
      "one_wheel_hits_hard", "slid_into_a_curb", "dragged_over_a_rock"};
  return names;
}

std::vector<LoadCase> built_in_cases(const Vehicle& vehicle,
                                     const std::vector<std::string>& names) {
  std::vector<LoadCase> cases;
  for (const std::string& name : names) {
    const auto found = std::find(case_names().begin(), case_names().end(), name);
    if (found == case_names().end()) {
      throw base::InputError("load_cases",
                             fmt::format("`{}` is not a built-in load case; known are {}", name,
                                         fmt::join(case_names(), ", ")));
    }
    const auto index = static_cast<std::size_t>(found - case_names().begin());
    const std::vector<LoadCase> built = kBuilders[index](vehicle);
    cases.insert(cases.end(), built.begin(), built.end());
  }
  return cases;
}

}  // namespace loads
