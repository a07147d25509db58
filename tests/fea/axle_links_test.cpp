// A beam axle on three arms, a lateral bar and two coils is statically determinate: six unknown
// forces, six equations of balance of the axle. The figures were found from those six equations
// (our own statics, no published source), and must come out of the frame whatever the stiffness.

#include <cmath>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"

namespace axle_links_test {
using Catch::Matchers::WithinAbs;
using fea::NodeId;
using fea::Vector3;

namespace {

constexpr double kN = 1000.0;

struct Axle {
  fea::Model model;
  NodeId body;
  fea::BeamId low_left, low_right, upper, bar;
  fea::SpringId coil_left, coil_right;
};

/// A link with balls at both ends from a point of the axle to the frame; it may not spin.
fea::BeamId add_link(Axle& axle, const Vector3& at_axle, const Vector3& at_frame) {
  const NodeId frame = axle.model.add(fea::Node{.at_g = at_frame});
  fea_test::clamp(axle.model, frame);
  fea::Beam link{.a = {.node = axle.body, .offset_g = at_axle},
                 .b = {.node = frame, .joint = fea_test::ball()},
                 .section = fea_test::tube(0.050, 0.006),
                 .elastic = {.young = 205.0e9, .shear = 79.0e9}};
  const double own = link.elastic.shear * link.section.torsion / (at_frame - at_axle).norm();
  link.a.joint = fea_test::joint({fea::kRigid, fea::kRigid, fea::kRigid, 1e-3 * own, 0.0, 0.0},
                                 fea::member_axes(axle.model, link).transpose());
  return axle.model.add(link);
}

fea::SpringId add_coil(Axle& axle, double y) {
  fea::Spring coil{.a = axle.body, .offset_a_g = {0.0, y, 0.5}};
  coil.stiffness(2, 2) = 35.0e3;
  return axle.model.add(coil);
}

Axle make_axle(double low_frame_height, double upper_frame_height) {
  Axle axle;
  axle.body = axle.model.add(fea::Node{.at_g = Vector3::Zero(), .name = "axle"});
  axle.low_left = add_link(axle, {0.0, 0.4, 0.3}, {-0.9, 0.4, low_frame_height});
  axle.low_right = add_link(axle, {0.0, -0.4, 0.3}, {-0.9, -0.4, low_frame_height});
  axle.upper = add_link(axle, {0.0, 0.2, 0.55}, {-0.8, 0.2, upper_frame_height});
  const double rise = 0.9 * std::tan(10.0 * 3.14159265358979323846 / 180.0);
  axle.bar = add_link(axle, {0.1, -0.5, 0.45}, {0.1, 0.4, 0.45 + rise});
  axle.coil_left = add_coil(axle, 0.45);
  axle.coil_right = add_coil(axle, -0.45);
  return axle;
}

/// Forces at the left and right wheel, at `height`; the axle's own weight besides.
fea::Loads wheels(const Axle& axle, const Vector3& left, const Vector3& right,
                  double height = 0.0) {
  fea::Loads loads;
  loads.nodes.push_back({.node = axle.body, .offset_g = {0.0, 0.8, height}, .force_g = kN * left});
  loads.nodes.push_back(
      {.node = axle.body, .offset_g = {0.0, -0.8, height}, .force_g = kN * right});
  loads.nodes.push_back(
      {.node = axle.body, .offset_g = {0.0, 0.0, 0.4}, .force_g = {0.0, 0.0, -2.8 * kN}});
  return loads;
}

struct Row {
  double low_left, low_right, upper, bar, coil_left, coil_right;
};

void check(const Axle& axle, const fea::Loads& loads, const Row& row) {
  const fea::Solution s = fea_test::linear(axle.model, loads);
  const auto tension = [&s](fea::BeamId link) { return s.forces_at(link, 0.0).n / kN; };
  const auto push_up = [&s](fea::SpringId coil) { return -s.spring_force(coil)(2) / kN; };
  CHECK_THAT(tension(axle.low_left), WithinAbs(row.low_left, 0.01));
  CHECK_THAT(tension(axle.low_right), WithinAbs(row.low_right, 0.01));
  CHECK_THAT(tension(axle.upper), WithinAbs(row.upper, 0.01));
  CHECK_THAT(tension(axle.bar), WithinAbs(row.bar, 0.01));
  // A coil pushes down on the axle as hard as it pushes up on the frame.
  CHECK_THAT(push_up(axle.coil_left), WithinAbs(-row.coil_left, 0.01));
  CHECK_THAT(push_up(axle.coil_right), WithinAbs(-row.coil_right, 0.01));
}

}  // namespace

TEST_CASE("link forces of an axle standing", "[fea][axle]") {
  const Axle axle = make_axle(0.3, 0.55);
  check(axle, wheels(axle, {0.0, 0.0, 8.0}, {0.0, 0.0, 8.0}), {0.0, 0.0, 0.0, 0.0, 6.6, 6.6});
}

TEST_CASE("link forces of an axle braking", "[fea][axle]") {
  const Axle level = make_axle(0.3, 0.55);
  check(level, wheels(level, {-10.0, 0.0, 12.0}, {-10.0, 0.0, 12.0}),
        {-28.0, -16.0, 24.0, 0.0, 10.6, 10.6});
  const Axle raised = make_axle(0.4, 0.6);
  check(raised, wheels(raised, {-10.0, 0.0, 12.0}, {-10.0, 0.0, 12.0}),
        {-28.172, -16.099, 24.047, 0.0, 8.646, 9.165});
}

TEST_CASE("link forces of an axle cornering", "[fea][axle]") {
  const Axle axle = make_axle(0.3, 0.55);
  check(axle, wheels(axle, {0.0, 2.8125, 3.0}, {0.0, 12.1875, 13.0}),
        {1.082, -2.140, 1.058, -15.231, 5.358, 5.197});
}

TEST_CASE("link forces of an axle whose left wheel meets a curb", "[fea][axle]") {
  // 16 kN rearward at hub height, 0.4 m above the ground.
  const Axle axle = make_axle(0.3, 0.55);
  fea::Loads loads = wheels(axle, {0.0, 0.0, 8.0}, {0.0, 0.0, 8.0});
  loads.nodes.push_back(
      {.node = axle.body, .offset_g = {0.0, 0.8, 0.4}, .force_g = {-16.0 * kN, 0.0, 0.0}});
  check(axle, loads, {-19.2, 9.6, -6.4, 0.0, 6.6, 6.6});
}

}  // namespace axle_links_test
