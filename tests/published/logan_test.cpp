// Frames of Logan's finite-element course.

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace logan_test {
using fea::NodeId;
using fea::Vector3;
using fea::Vector6;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using fea_test::section;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

TEST_CASE("plane portal with fixed feet", "[fea]") {
  const Source source{
      "Logan, A First Course in the Finite Element Method, example 5.1 (plane frame)",
      Basis::from_memory};
  // x right, z up here; counterclockwise about -y. in, lb.
  const fea::Elastic elastic{.young = 30.0e6, .shear = 11.5e6};
  const sections::AreaProps post = section(10.0, 200.0, 200.0, 100.0);
  const sections::AreaProps rail = section(10.0, 100.0, 100.0, 100.0);
  fea::Model model;
  const Chain left = chain(model, {0.0, 0.0, 0.0}, {0.0, 0.0, 120.0}, 1, post, elastic);
  const Chain top =
      chain(model, {0.0, 0.0, 120.0}, {120.0, 0.0, 120.0}, 1, rail, elastic, left.nodes[1]);
  const Chain right =
      chain(model, {120.0, 0.0, 120.0}, {120.0, 0.0, 0.0}, 1, post, elastic, top.nodes[1]);
  fea_test::clamp(model, left.nodes[0]);
  fea_test::clamp(model, right.nodes[1]);
  const fea::Loads loads = push(left.nodes[1], {10000.0, 0.0, 0.0}) +
                           push(top.nodes[1], Vector3::Zero(), {0.0, -5000.0, 0.0});
  const fea::Solution s = fea_test::linear(model, loads);
  const Vector6 two = s.placement(top.nodes[0]);
  const Vector6 three = s.placement(top.nodes[1]);
  verify(source, "node 2, along x", "0.211 in", two(0));
  verify(source, "node 2, along y", "0.00148 in", two(2));
  verify(source, "node 2, turn", "-0.00153 rad", -two(4));
  verify(source, "node 3, along x", "0.209 in", three(0));
  verify(source, "node 3, along y", "-0.00148 in", three(2));
  verify(source, "node 3, turn", "-0.00149 rad", -three(4));
  // Printed with three digits.
  verify(source, "moment at node 1", "376e3 lb in", std::abs(s.end_forces(left.beams[0])(4)));
  verify(source, "moment at node 2, member 1", "223e3 lb in",
         std::abs(s.end_forces(left.beams[0])(10)));
  verify(source, "moment at node 4", "375e3 lb in", std::abs(s.end_forces(right.beams[0])(10)));
}

TEST_CASE("space frame of three members", "[fea]") {
  const Source source{
      "Logan, A First Course in the Finite Element Method, 4th and 5th ed., "
      "example 5.9 (space frame)",
      Basis::from_memory};
  // in, kip
  const fea::Elastic elastic{.young = 30000.0, .shear = 10000.0};
  const sections::AreaProps member = section(10.0, 100.0, 100.0, 50.0);
  fea::Model model;
  const NodeId one = model.add(fea::Node{.at_g = Vector3::Zero()});
  std::vector<fea::BeamId> beams;
  for (const Vector3& foot :
       {Vector3(-100.0, 0.0, 0.0), Vector3(0.0, 0.0, -100.0), Vector3(0.0, -100.0, 0.0)}) {
    const Chain leg = chain(model, foot, Vector3::Zero(), 1, member, elastic, std::nullopt, one);
    fea_test::clamp(model, leg.nodes[0]);
    beams.push_back(leg.beams[0]);
  }
  const fea::Solution s =
      fea_test::linear(model, push(one, {0.0, -50.0, 0.0}, {-1000.0, 0.0, 0.0}));
  const Vector6 moved = s.placement(one);
  verify(source, "node 1, along x", "7.098e-5 in", moved(0));
  verify(source, "node 1, along y", "-0.0140 in", moved(1));
  verify(source, "node 1, along z", "-2.352e-3 in", moved(2));
  verify(source, "node 1, turn about x", "-3.996e-3 rad", moved(3));
  verify(source, "node 1, turn about y", "1.78e-5 rad", moved(4));
  verify(source, "node 1, turn about z", "-1.033e-4 rad", moved(5));
  verify(source, "torque in member 2-1", "19.98 kip in", std::abs(s.end_forces(beams[0])(3)));
  verify(source, "moment Mz at node 2, member 2-1", "18.991 kip in",
         std::abs(s.end_forces(beams[0])(5)));
}

}  // namespace logan_test
