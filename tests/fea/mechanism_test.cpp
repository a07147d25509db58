#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "tests/fea/build_frames.hpp"

namespace mechanism_test {
using Catch::Matchers::Contains;
using fea::Vector3;
using fea_test::ball;
using fea_test::chain;
using fea_test::Chain;
using fea_test::joint;

namespace {

const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};
const sections::AreaProps kTube = fea_test::tube(0.038, 0.005);

std::string words(const fea::Model& model) {
  const std::optional<fea::Mechanism> mechanism = fea::find_mechanism(model);
  return mechanism ? mechanism->words : "";
}

/// A tube held by balls at both ends; `held_about` is the stiffness of end a about the tube.
fea::Model ball_ended(double held_about, int n = 1) {
  fea::Model model;
  const Chain bar = chain(model, Vector3::Zero(), {0.9, 0.0, 0.0}, n, kTube, kSteel);
  fea_test::clamp(model, bar.nodes.front());
  fea_test::clamp(model, bar.nodes.back());
  model.beams.front().a.joint = ball();
  model.beams.front().a.joint->stiffness[3] = held_about;
  model.beams.back().b.joint = ball();
  model.beams.front().name = "lateral link";
  return model;
}

}  // namespace

TEST_CASE("a whole frame that nothing holds can move", "[fea][mechanism]") {
  fea::Model model;
  chain(model, Vector3::Zero(), {1.0, 0.2, 0.3}, 3, kTube, kSteel);
  model.nodes[0].name = "hub";
  CHECK(words(model) == "point `hub` can move along x");
  CHECK_THROWS_WITH(fea::factor(model), Contains("point `hub` can move along x"));
  fea_test::hold(model, fea::NodeId{1}, {true, false, true, true, true, true});
  CHECK(words(model) == "point `hub` can move along y");
}

TEST_CASE("a frame on a hinge swings, and the far point is named", "[fea][mechanism]") {
  fea::Model model;
  const Chain arm = chain(model, Vector3::Zero(), {1.0, 0.0, 0.0}, 2, kTube, kSteel);
  model.nodes[0].name = "pivot";
  model.nodes[2].name = "tip";
  fea_test::hold(model, arm.nodes[0], {true, true, true, true, false, true});
  CHECK(words(model) == "point `tip` can move along z");
  const fea::Mechanism found = fea::find_mechanism(model).value();
  CHECK(found.node == arm.nodes[2]);
  CHECK(found.motion.cwiseAbs().maxCoeff() == Approx(1.0));
}

TEST_CASE("a shaft in bearings turns about its own axis", "[fea][mechanism]") {
  fea::Model model;
  const Chain shaft = chain(model, Vector3::Zero(), {0.0, 1.0, 0.0}, 2, kTube, kSteel);
  model.nodes[0].name = "bearing";
  fea_test::hold(model, shaft.nodes[0], {true, true, true, true, false, true});
  CHECK(words(model) == "point `bearing` can turn about y");
}

TEST_CASE("a free node and an unnamed one are found", "[fea][mechanism]") {
  fea::Model model;
  const Chain arm = chain(model, Vector3::Zero(), {1.0, 0.0, 0.0}, 1, kTube, kSteel);
  fea_test::clamp(model, arm.nodes[0]);
  CHECK(words(model).empty());
  model.add(fea::Node{.at_g = {0.0, 3.0, 0.0}, .name = "loose"});
  CHECK(words(model) == "point `loose` can move along x");
  fea_test::hold(model, fea::NodeId{2}, {true, false, true, true, true, true});
  model.nodes[2].name.clear();
  CHECK(words(model) == "node 2 can move along y");
  fea_test::hold(model, fea::NodeId{2}, {false, true, false, false, false, false});
  CHECK(words(model).empty());
}

TEST_CASE("a node without anything at all is a mechanism, an empty model an error",
          "[fea][mechanism]") {
  fea::Model model;
  CHECK_THROWS_AS(fea::factor(model), base::InputError);
  model.add(fea::Node{.at_g = Vector3::Zero(), .name = "alone"});
  CHECK(words(model) == "point `alone` can move along x");
}

TEST_CASE("a ball-ended bar spins until a stated stiffness holds it", "[fea][mechanism]") {
  CHECK(words(ball_ended(0.0)) == "beam `lateral link` can turn about its own axis");
  // A thousandth of the bar's own torsional stiffness is enough.
  const double own = kSteel.shear * kTube.torsion / 0.9;
  CHECK(words(ball_ended(1e-3 * own)).empty());
  CHECK(words(ball_ended(1e-3 * own, 8)).empty());
  // Of several pieces the points between the ends are seen to turn.
  CHECK(words(ball_ended(0.0, 4)) == "node 1 can turn about x");
}

TEST_CASE("a ball-ended bar with an arm spins too", "[fea][mechanism]") {
  fea::Model model = ball_ended(0.0);
  model.nodes[1].at_g = {0.9, 0.2, -0.1};
  model.beams[0].b.offset_g = {0.0, -0.05, 0.3};
  model.beams[0].name.clear();
  CHECK(words(model) == "beam 0 can turn about its own axis");
}

TEST_CASE("an end that slides is named with its beam", "[fea][mechanism]") {
  fea::Model model;
  const Chain bar = chain(model, Vector3::Zero(), {0.9, 0.0, 0.0}, 1, kTube, kSteel);
  fea_test::clamp(model, bar.nodes[0]);
  fea_test::clamp(model, bar.nodes[1]);
  for (fea::BeamEnd* end : {&model.beams[0].a, &model.beams[0].b}) {
    end->joint = joint({0.0, fea::kRigid, fea::kRigid, fea::kRigid, fea::kRigid, fea::kRigid});
  }
  model.beams[0].name = "sleeve";
  CHECK(words(model) == "an end of beam `sleeve` can move along x");
}

TEST_CASE("a point on two bars in line can move across them, also askew", "[fea][mechanism]") {
  // Two ball-ended bars in line: their middle is free across, whatever the direction.
  const Vector3 along = Vector3(1.0, 1.0, -1.0) / std::sqrt(3.0);
  const double spin = 1e-3 * kSteel.shear * kTube.torsion;
  fea::Model model;
  const Chain bars = chain(model, -along, along, 2, kTube, kSteel);
  for (fea::Beam& beam : model.beams) {
    fea::Matrix3 axes = fea::member_axes(model, beam).transpose();
    beam.a.joint = joint({fea::kRigid, fea::kRigid, fea::kRigid, spin, 0.0, 0.0}, axes);
    beam.b.joint = ball();
  }
  fea_test::clamp(model, bars.nodes[0]);
  fea_test::clamp(model, bars.nodes[2]);
  model.nodes[1].name = "middle";
  fea_test::hold(model, bars.nodes[1], {false, false, false, true, true, true});
  const std::optional<fea::Mechanism> found = fea::find_mechanism(model);
  REQUIRE(found.has_value());
  CHECK_THAT(found->words, Contains("point `middle` can move along ("));
  CHECK(std::abs(found->motion.head<3>().dot(along)) < 1e-9);
  // One direction held: it moves in what is left, square to the bars and to that one.
  fea_test::hold(model, bars.nodes[1], {true, false, false, true, true, true});
  CHECK(words(model) == "point `middle` can move along (0.00, 0.71, 0.71)");
}

TEST_CASE("a rigid body on too few links is found", "[fea][mechanism]") {
  // Five links and springs are needed besides the one that is left out here: fore and aft.
  fea::Model model;
  const fea::NodeId axle = model.add(fea::Node{.at_g = {0.0, 0.0, 0.4}, .name = "axle"});
  for (const double y : {-0.45, 0.45}) {
    fea::Spring coil{.a = axle, .offset_a_g = {0.0, y, 0.1}};
    coil.stiffness(2, 2) = 35.0e3;
    coil.stiffness(1, 1) = 10.0e3;
    model.add(coil);
  }
  CHECK(words(model) == "point `axle` can move along x");
}

TEST_CASE("slender, soft and small things that do hold are not taken for mechanisms",
          "[fea][mechanism]") {
  // A cantilever of 60 pieces, L / r = 1000, askew so that scaling cannot part stiff from soft.
  const sections::AreaProps wire = fea_test::tube(0.012, 0.002);
  fea::Model model;
  const Chain whip = chain(model, Vector3::Zero(), {2.1, 1.3, 2.7}, 60, wire, kSteel);
  fea_test::clamp(model, whip.nodes[0]);
  CHECK(words(model).empty());

  // A tube on rubber: 1 kN/mm all ways, 140 N m/rad about its axis and 500 across it.
  fea::Model rubber;
  const Chain tube = chain(rubber, Vector3::Zero(), {0.9, 0.1, 0.0}, 4, kTube, kSteel);
  for (const fea::NodeId node : {tube.nodes.front(), tube.nodes.back()}) {
    fea::Spring bush{.a = node};
    bush.stiffness.diagonal() << 1.0e6, 1.0e6, 1.0e6, 140.0, 500.0, 500.0;
    rubber.add(bush);
  }
  CHECK(words(rubber).empty());
}

TEST_CASE("a stiffness that is nothing beside the frame holds nothing", "[fea][mechanism]") {
  // A thousandth of a newton per meter, under a bar of many pieces.
  fea::Model model;
  const Chain bar = chain(model, Vector3::Zero(), {0.9, 0.0, 0.0}, 60, kTube, kSteel);
  fea_test::hold(model, bar.nodes.front(), {false, true, true, true, true, true});
  fea::Spring thread{.a = bar.nodes.front()};
  thread.stiffness(0, 0) = 1.0e-3;
  model.add(thread);
  CHECK(words(model) == "node 0 can move along x");
}

TEST_CASE("what rounding leaves of a right angle holds nothing", "[fea][mechanism]") {
  // Two bars that keep a node from turning about x alone; the axes of one joint were turned by
  // cos and sin of 90 degrees, which are not quite 0 and 1.
  const double cosine = std::cos(0.5 * base::kPi);
  const double sine = std::sin(0.5 * base::kPi);
  fea::Matrix3 turned;
  turned << cosine, -sine, 0.0, sine, cosine, 0.0, 0.0, 0.0, 1.0;
  fea::Model model;
  const Chain one = chain(model, Vector3::Zero(), {1.0, 0.0, 0.0}, 1, kTube, kSteel);
  chain(model, Vector3::Zero(), {1.0, 0.0, 0.0}, 1, kTube, kSteel, one.nodes[0], one.nodes[1]);
  model.beams[0].b.joint =
      joint({fea::kRigid, fea::kRigid, fea::kRigid, 0.0, fea::kRigid, 0.0}, turned);
  model.beams[1].b.joint = joint({fea::kRigid, fea::kRigid, fea::kRigid, fea::kRigid, 0.0, 0.0});
  fea_test::clamp(model, one.nodes[0]);
  fea_test::hold(model, one.nodes[1], {false, false, false, false, false, true});
  CHECK(words(model) == "node 1 can turn about y");
}

}  // namespace mechanism_test
