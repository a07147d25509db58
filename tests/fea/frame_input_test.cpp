#include <functional>
#include <limits>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "tests/fea/mixed_frame.hpp"

namespace frame_input_test {
using Catch::Matchers::Contains;
using fea::BeamId;
using fea::NodeId;
using fea::Vector3;

namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

/// What factor() says of the mixed frame after a change.
std::string said(const std::function<void(fea::Model&)>& change) {
  fea::Model model = fea_test::mixed_frame().model;
  model.beams[0].name = "post";
  model.springs[0].name = "bush";
  change(model);
  try {
    static_cast<void>(fea::factor(model));
  } catch (const base::InputError& error) {
    return error.what();
  }
  return "";
}

std::string said_of_load(const fea::Loads& loads) {
  fea::Model model = fea_test::mixed_frame().model;
  model.beams[0].name = "post";
  try {
    static_cast<void>(fea::solve(fea::factor(model), loads));
  } catch (const base::InputError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("a model with a number that cannot be is refused by name", "[fea][input]") {
  CHECK(said([](fea::Model&) {}).empty());
  CHECK_THAT(said([](fea::Model& m) { m.nodes[2].at_g.x() = kNan; }), Contains("node 2"));
  CHECK_THAT(said([](fea::Model& m) { m.beams[0].section.area = kNan; }),
             Contains("beam `post`: the area"));
  CHECK_THAT(said([](fea::Model& m) { m.beams[0].section.iyy = -1.0; }), Contains("second moment"));
  CHECK_THAT(said([](fea::Model& m) { m.beams[0].section.shear_y = 0.0; }), Contains("shear area"));
  CHECK_THAT(said([](fea::Model& m) { m.beams[0].elastic.young = fea::kRigid; }),
             Contains("Young's modulus"));
  CHECK_THAT(said([](fea::Model& m) { m.nodes[1].at_g = m.nodes[0].at_g; }),
             Contains("beam `post`: has no length"));
  CHECK_THAT(said([](fea::Model& m) { m.beams[0].z_toward_g = m.nodes[1].at_g - m.nodes[0].at_g; }),
             Contains("along the member"));
  CHECK_THAT(said([](fea::Model& m) {
               m.beams[0].a.joint = fea_test::ball();
               m.beams[0].a.joint->axes_g(0, 0) = 2.0;
             }),
             Contains("joint's axes"));
  CHECK_THAT(said([](fea::Model& m) {
               m.beams[0].a.joint = fea_test::joint({-1.0, 0.0, 0.0, 0.0, 0.0, 0.0});
             }),
             Contains("joint stiffness"));
}

TEST_CASE("a spring that is none is refused by name", "[fea][input]") {
  CHECK_THAT(said([](fea::Model& m) { m.springs[0].stiffness(0, 0) = -1.0; }),
             Contains("spring `bush`: the stiffness is negative"));
  CHECK_THAT(said([](fea::Model& m) { m.springs[0].stiffness(0, 1) = 10.0; }),
             Contains("not symmetric"));
  CHECK_THAT(said([](fea::Model& m) { m.springs[0].stiffness(0, 0) = fea::kRigid; }),
             Contains("not a finite number"));
  CHECK_THAT(said([](fea::Model& m) { m.springs[0].offset_b_g.x() += 0.01; }),
             Contains("not at the same place"));
}

TEST_CASE("a load that is not on its member or not a number is refused", "[fea][input]") {
  fea::Loads off;
  off.points.push_back({.beam = BeamId{0}, .at = 0.3, .force_g = Vector3::UnitX()});
  CHECK_THAT(said_of_load(off), Contains("beam `post`: a load at 0.3 m is not on the beam"));
  fea::Loads backward;
  backward.lines.push_back({.beam = BeamId{0},
                            .from = 0.1,
                            .to = 0.05,
                            .at_from_g = Vector3::UnitX(),
                            .at_to_g = Vector3::UnitX()});
  CHECK_THAT(said_of_load(backward), Contains("ends before it begins"));
  CHECK_THAT(said_of_load(fea_test::push(NodeId{5}, {0.0, kNan, 0.0})), Contains("node 5"));
}

}  // namespace frame_input_test
