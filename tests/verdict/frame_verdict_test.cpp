// A frame's rail, its cross member and a stepped axle housing at 0.98 and 1.02 of their limits:
// beams by hand (Shigley, table A-9, from memory). Required on routine loads: 1.5.
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace frame_verdict_test {
using verdict_tests::check_flips;

namespace {

constexpr double kRequired = 1.5;
constexpr double kSpan = 6.0;  // of the rail, clamped at both ends

/// A bracket in the middle of a rail, pushed up at its bolt.
std::string pushed_up(double push) {
  return fmt::format(
      "title: rail\n"
      "lateral_link: {{bolt_to_bolt: 900 mm, rise: 0 mm, tube: 50 x 10 mm S355H, ends: weld-on "
      "pin}}\n"
      "bracket: {{drop: 250 mm, plates: 2 of 12 mm S355, depth_at_rail: 100 mm,\n"
      "  depth_at_bolt: 100 mm, weld: '10 mm fillet, both sides', side_force: 0 %,\n"
      "  rail: 'boxed, 100 x 150 x 8 mm', rail_steel: S355, rail_stress: 0 MPa,\n"
      "  welded_to: bottom and both sides}}\n"
      "frame: {{rails_apart: 800 mm, cross_member: 80 x 8 mm S355H, cross_members_at: [3, -3 m],\n"
      "  held_at: [3, -3 m], held: clamped}}\n"
      "forces: {{push: {{at: frame bolt, force_z: {} N}}}}\n",
      push);
}

/// The same bracket on an open rail between clamped ends 1.2 m apart, twisted at its bolt.
std::string twisted(double moment) {
  std::string text = pushed_up(0.0);
  const auto put = [&](const std::string& piece, const std::string& instead) {
    text.replace(text.find(piece), piece.size(), instead);
  };
  put("boxed, 100 x 150 x 8 mm", "open, 100 x 150 x 8 mm, 12 mm frame plate");
  put("bottom and both sides", "bottom and inner side, up_the_side: 140 mm");
  put("[3, -3 m]", "[0.6, -0.6 m]");
  put("[3, -3 m]", "[0.6, -0.6 m]");
  put("force_z: 0 N", fmt::format("moment_x: {} N m", moment));
  return text;
}

/// Arms 0.4 m apart on a cross member between rails 0.8 m apart that are held there.
std::string pushed_forward(double wheel) {
  return fmt::format(
      "title: cross member\n"
      "vehicle: {{axle_weight: 16 kN, tire: 830 mm, hub_height: 400 mm, track: 1.6 m}}\n"
      "points:\n"
      "  link at frame: [0, 0.4, 0.2 m]\n"
      "  link at axle: [0, -0.45, 0.2 m]\n"
      "  rear bolt: [-0.1, 0.2, 0.4 m]\n"
      "  front bolt: [0.1, 0.2, 0.4 m]\n"
      "  pivot: [-0.9, 0.2, 0.4 m]\n"
      "lateral_link: {{frame_bolt: link at frame, axle_bolt: link at axle,\n"
      "  tube: 100 x 12 mm S355H, ends: tapped rod end, static_rating: 5000 kN}}\n"
      "bracket: {{drop: 125 mm, plates: 2 of 12 mm S355, depth_at_rail: 100 mm,\n"
      "  depth_at_bolt: 100 mm, weld: '10 mm fillet, both sides', side_force: 0 %,\n"
      "  rail: 'boxed, 100 x 150 x 8 mm', rail_steel: S355, rail_stress: 0 MPa,\n"
      "  welded_to: bottom and both sides}}\n"
      "frame: {{rails_apart: 800 mm, cross_member: 100 x 12 mm S355H,\n"
      "  cross_members_at: [0.5, -0.5 m], held_at: [0.5, -0.9 m], held: clamped,\n"
      "  arm_cross_member: 60 x 5 mm S355H}}\n"
      "arm: {{axle_lower: rear bolt, axle_upper: front bolt, frame: pivot,\n"
      "  lower: 100 x 12 mm S355H, axle_joint: pin along y, frame_joint: ball joint,\n"
      "  static_rating: 5000 kN}}\n"
      "axle: {{coil_spacing: 0.9 m, coil_rate: 2000 N/mm}}\n"
      "load_cases: [hard_corner, {{name: push, left_wheel: [{0}, 0, 8000 N], right_wheel: [{0}, 0, "
      "8000 N]}}]\n",
      wheel);
}

/// Wheels 0.8 m from the middle, coils and arms 0.4 m: the housing between them is bent alike.
std::string lifted(double wheel) {
  return fmt::format(
      "title: housing\n"
      "vehicle: {{axle_weight: 16 kN, tire: 830 mm, hub_height: 400 mm, track: 1.6 m}}\n"
      "points:\n"
      "  link at frame: [0, 0.45, 0.4 m]\n"
      "  link at axle: [0, -0.45, 0.4 m]\n"
      "  lower bolt: [0, 0.4, 0.3 m]\n"
      "  upper bolt: [0, 0.4, 0.55 m]\n"
      "  pivot: [-0.9, 0.4, 0.4 m]\n"
      "lateral_link: {{frame_bolt: link at frame, axle_bolt: link at axle,\n"
      "  tube: 100 x 12 mm S355H, ends: clamped bushing}}\n"
      "arm: {{axle_lower: lower bolt, axle_upper: upper bolt, frame: pivot,\n"
      "  lower: 100 x 12 mm S355H, axle_joint: ball joint, frame_joint: ball joint,\n"
      "  static_rating: 5000 kN}}\n"
      "axle: {{coil_spacing: 0.8 m, coil_rate: 20000 N/mm,\n"
      "  housing: '80 x 8 mm S355H to 200 mm, then 120 x 10 mm S355H to -100 mm, then 80 x 8 mm "
      "S355H'}}\n"
      "load_cases: [hard_corner, {{name: lift, left_wheel: [0, 0, {0} N], right_wheel: [0, 0, {0} "
      "N]}}]\n",
      wheel);
}

}  // namespace

// F L / 8 at the ends and in the middle.
TEST_CASE("a frame's rail is over past its yield strength", "[verdict][frame]") {
  const double modulus = hand::box(0.150, 0.100, 0.008, 0.008).modulus;
  check_flips(
      {.case_text =
           [&](double u) { return pushed_up(u * 8.0 * modulus * hand::kS355 / kSpan / kRequired); },
       .part = "frame",
       .check = "yield",
       .tolerance = 2e-3});
}

// A channel 100 x 150 x 8 mm by its middle lines: h 142, b 96 mm, Cw = t h^2 b^3 / 12 (2 h + 3 b) /
// (h + 6 b), J = (2 b + h) t^3 / 3, w = sqrt(E Cw / (G J)); free to warp at its ends the bimoment
// in the middle is M w / 2 tanh(a / w), and half of M shears the flanges there (Timoshenko and
// Gere, ch. 5; von Mises, Shigley, eq. 5-15; both from memory). Warping held there asks less.
TEST_CASE("an open rail is over once bimoment and shear of its warping pass yield",
          "[verdict][frame]") {
  const double h = 0.142;
  const double b = 0.096;
  const double t = 0.008;
  const double warping = t * h * h * b * b * b / 12.0 * (2.0 * h + 3.0 * b) / (h + 6.0 * b);
  const double w = std::sqrt(2.6 * warping / ((2.0 * b + h) * t * t * t / 3.0));
  const double e = 3.0 * b * b / (h + 6.0 * b);
  const double bimoment = 0.5 * w * std::tanh(0.6 / w);  // of a moment of one
  const double along = bimoment * 0.5 * h * (b - e) / warping;
  const double shear = 1.5 * 0.5 / (h * b * t);
  const double stress = std::hypot(along, std::sqrt(3.0) * shear);
  check_flips({.case_text = [&](double u) { return twisted(u * hand::kS355 / stress / kRequired); },
               .part = "frame",
               .check = "yield",
               .tolerance = 1e-2,
               .set = "soft rail"});
}

// Both arms push along, V = 0.4 / 0.9 of it upright: two equal loads a = 0.2 m from the ends of
// a beam fixed at both, L = 0.8 m: F a (1 - a / L) at the ends.
TEST_CASE("the cross member that carries the arms is over past its yield strength",
          "[verdict][frame]") {
  const double modulus = hand::tube(0.060, 0.005).modulus;
  const double moment = std::hypot(1.0, 0.4 / 0.9) * 0.2 * (1.0 - 0.2 / 0.8);  // of a push of one
  check_flips({.case_text =
                   [&](double u) {
                     return pushed_forward(u * modulus * hand::kS355H / moment / kRequired);
                   },
               .part = "frame",
               .check = "yield",
               .tolerance = 3e-3});
}

// The wheel's force times its distance from the coil.
TEST_CASE("the thinner tube of a stepped housing is over past its yield strength",
          "[verdict][axle]") {
  const double modulus = hand::tube(0.080, 0.008).modulus;
  check_flips(
      {.case_text = [&](double u) { return lifted(u * modulus * hand::kS355H / 0.4 / kRequired); },
       .part = "axle",
       .check = "yield",
       .tolerance = 2e-3});
}

}  // namespace frame_verdict_test
