// A model factored like another, with which it shares what is the same: the
// answers are its own.

#include <optional>
#include <utility>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "fea/solver.hpp"
#include "fea/system.hpp"
#include "tests/fea/mixed_frame.hpp"

namespace like_model_test {
using fea::NodeId;
using fea::Vector3;

namespace {

/// That the answers of a model are those of the same one factored by itself.
void check_same(const fea::Factored& beside, const fea::Loads& loads) {
  const fea::Model& model = beside.model();
  const fea::Factored alone = fea::factor(model);
  for (const fea::Method method :
       {fea::Method::linear, fea::Method::second_order, fea::Method::large_displacement}) {
    const fea::Solution expected = fea::solve(alone, loads, {.method = method});
    const fea::Solution found = fea::solve(beside, loads, {.method = method});
    REQUIRE(found.status() == expected.status());
    if (expected.status() != fea::SolveStatus::converged) continue;
    for (int i = 0; i < static_cast<int>(model.nodes.size()); ++i) {
      const fea::Vector6 place = expected.placement(NodeId{i});
      CHECK((found.placement(NodeId{i}) - place).norm() <= 1e-9 * place.norm());
    }
  }
}

/// That no answer is another one because the model was factored like `other`.
/// @return whether it shares the order of the unknowns
bool check_like(const fea::Model& model, const fea::Model& other, const fea::Loads& loads) {
  const fea::Factored like = fea::factor(other);
  const fea::Factored beside = fea::factor(model, &like);
  check_same(beside, loads);
  return &beside.system().assembly().pattern() == &like.system().assembly().pattern();
}

/// Neither large displacement nor strains go together.
fea_test::Loaded frame() {
  fea_test::Loaded out = fea_test::mixed_frame();
  out.loads.strains.clear();
  out.loads.moves.clear();
  return out;
}

fea::Spring ground_spring(NodeId node) {
  fea::Spring spring{.a = node, .offset_a_g = {0.03, -0.02, 0.05}};
  spring.stiffness(2, 2) = 3.0e5;
  return spring;
}

fea::Gap strap(const fea::Model& model, NodeId a, std::optional<NodeId> b) {
  const Vector3 at_g = model[a].at_g + Vector3(0.0, 0.0, 0.1);
  fea::Gap gap{.a = {.node = b, .at_g = at_g},
               .b = {.node = a, .at_g = at_g},
               .axis_g = Vector3(0.0, 0.0, 1.0),
               .stiffness = 2.0e5,
               .clearance = 0.0};
  if (b) gap.a.at_g = model[*b].at_g;
  return gap;
}

}  // namespace

TEST_CASE(
    "a model with more springs to the ground shares the order of one "
    "with fewer",
    "[fea][like]") {
  const fea_test::Loaded start = frame();
  CHECK(check_like(start.model, start.model, start.loads));
  fea::Model more = start.model;
  more.add(ground_spring(NodeId{5}));
  CHECK(check_like(more, start.model, start.loads));
  CHECK(check_like(start.model, more, start.loads));
  fea::Model before = start.model;
  before.springs = {ground_spring(NodeId{2})};
  for (const fea::Spring& spring : start.model.springs) before.add(spring);
  CHECK_FALSE(check_like(before, start.model, start.loads));
}

TEST_CASE("a model with other rates, sections and places shares the order", "[fea][like]") {
  const fea_test::Loaded start = frame();
  fea::Model model = start.model;
  SECTION("rate") {
    for (fea::Beam& beam : model.beams) {
      if (beam.b.joint) beam.b.joint->stiffness[0] *= 0.5;
    }
  }
  SECTION("section") {
    model.beams[1].section.iyy *= 2.0;
  }
  SECTION("material") {
    model.beams[2].elastic.young *= 0.5;
  }
  SECTION("orientation") {
    model.beams[0].z_toward_g = Vector3(1.0, 0.3, 0.2);
  }
  SECTION("offset") {
    model.beams[3].b.offset_g = Vector3(0.01, -0.01, 0.02);
  }
  SECTION("place") {
    model.nodes[2].at_g += Vector3(0.01, 0.0, -0.02);
  }
  SECTION("spring") {
    model.springs[1].stiffness *= 2.0;
  }
  CHECK(check_like(model, start.model, start.loads));
}

TEST_CASE("a model that hangs together otherwise shares nothing that it must not", "[fea][like]") {
  const fea_test::Loaded start = frame();
  fea::Model model = start.model;
  SECTION("a joint's component is rigid") {
    model.beams.back().b.joint->stiffness[3] = fea::kRigid;
  }
  SECTION("another component is the rigid one") {
    std::swap(model.beams.back().b.joint->stiffness[1], model.beams.back().b.joint->stiffness[3]);
  }
  SECTION("a beam goes elsewhere") {
    model.beams[4].b.node = NodeId{2};
  }
  SECTION("a beam more") {
    fea::Beam more = model.beams[0];
    more.b.node = NodeId{4};
    model.add(more);
  }
  SECTION("a beam fewer") {
    model.beams.erase(model.beams.begin() + 6);
  }
  SECTION("a support more") {
    model.add(fea::Support{.node = NodeId{4}, .held = {false, true, false, false, false, false}});
  }
  SECTION("a spring between two other nodes") {
    fea::Spring more = ground_spring(NodeId{3});
    more.offset_a_g.setZero();
    more.b = NodeId{5};
    more.offset_b_g = model.nodes[3].at_g - model.nodes[5].at_g;
    model.add(more);
  }
  SECTION("a rigid body") {
    model.add(fea::RigidBody{.master = NodeId{5}, .carried = {NodeId{6}}});
  }
  CHECK_FALSE(check_like(model, start.model, start.loads));
  check_like(start.model, model, start.loads);
}

TEST_CASE("gaps share the order where they bring no nodes together", "[fea][like]") {
  const fea_test::Loaded start = frame();
  for (const std::optional<NodeId> other : {std::optional<NodeId>(), std::optional(NodeId{2})}) {
    fea::Model model = start.model;
    model.add(strap(model, NodeId{5}, other));
    CHECK(check_like(model, start.model, start.loads));
  }
}

TEST_CASE("what is added to a model shares all else", "[fea][like]") {
  const fea_test::Loaded start = frame();
  const fea::Factored open = fea::factor(start.model);
  fea::Added added;
  bool same_order = true;
  SECTION("a spring to the ground") {
    added.springs = {ground_spring(NodeId{5})};
  }
  SECTION("a gap") {
    added.gaps = {strap(start.model, NodeId{5}, std::nullopt)};
  }
  SECTION("both") {
    added.springs = {ground_spring(NodeId{2})};
    added.gaps = {strap(start.model, NodeId{5}, std::optional(NodeId{2}))};
  }
  SECTION("a spring between two nodes") {
    fea::Spring more = ground_spring(NodeId{3});
    more.offset_a_g.setZero();
    more.b = NodeId{5};
    more.offset_b_g = start.model.nodes[3].at_g - start.model.nodes[5].at_g;
    added.springs = {more};
    same_order = false;
  }
  const fea::Factored made = fea::with_added(open, added);
  check_same(made, start.loads);
  CHECK(&made.system().beams() == &open.system().beams());
  CHECK((&made.system().assembly().pattern() == &open.system().assembly().pattern()) == same_order);
}

TEST_CASE("what is added to a model is looked at before it is used", "[fea][like]") {
  const fea_test::Loaded start = frame();
  const fea::Factored open = fea::factor(start.model);
  fea::Spring wrong = ground_spring(NodeId{5});
  wrong.stiffness(2, 2) = -1.0;
  CHECK_THROWS_AS(fea::with_added(open, {.springs = {wrong}, .gaps = {}}), base::InputError);
  fea::Gap nowhere = strap(start.model, NodeId{5}, std::nullopt);
  nowhere.clearance = -1.0;
  CHECK_THROWS_AS(fea::with_added(open, {.springs = {}, .gaps = {nowhere}}), base::InputError);
}

}  // namespace like_model_test
