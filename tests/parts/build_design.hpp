#pragma once

#include "parts/design.hpp"

/// Designs for the tests of parts/, in round numbers.
namespace parts_test {

/// A steel with the modulus of the hand checks.
inline sections::Material steel(double young = 205.0e9) {
  sections::Material m;
  m.id = "test";
  m.description = "test steel";
  m.elastic = young;
  m.density = 7850.0;
  m.yield = 350.0e6;
  m.tensile = 450.0e6;
  m.haz_yield = 350.0e6;
  m.haz_tensile = 450.0e6;
  m.basis = "test";
  m.haz_basis = "test";
  m.mark = "test";
  m.source = "test";
  return m;
}

inline parts::Stick tube(double outside, double wall) {
  return {sections::RoundTube{.outside = outside, .wall = wall}, steel()};
}

/// A level link of 0.9 m on ball joints.
inline parts::LateralLink level_link() {
  parts::LateralLink link;
  link.bolt_to_bolt = 0.9;
  link.rise = 0.0;
  link.stick = tube(0.038, 0.005);
  link.ends.joint = {.kind = parts::JointKind::ball};
  return link;
}

/// Two parallel plates 6 x 100 mm, 0.25 m below a rail, 6 mm fillets on both sides of each.
inline parts::Bracket hand_check_bracket() {
  parts::Bracket b;
  b.drop = 0.25;
  b.plates = {.count = 2, .thickness = 0.006, .material = steel()};
  b.depth_at_rail = 0.1;
  b.depth_at_bolt = 0.1;
  b.weld = {.leg = 0.006, .both_sides = true};
  b.rail = {.boxed = true, .width = 0.1, .height = 0.15, .wall = 0.004};
  return b;
}

/// A force at a point of the design, as a load case.
inline parts::Named<parts::PlainForce> force_at(const std::string& point, double fx, double fy,
                                                double fz) {
  parts::PlainForce f;
  f.at = point;
  f.force = {fx, fy, fz};
  return {"push", f};
}

}  // namespace parts_test
