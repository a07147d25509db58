// Joints, springs and rigid arms: against each other, against differences of their energy with
// finite rotations, and against closed forms. No outside source beyond statics.

#include <cmath>
#include <functional>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "fea/geometric_stiffness.hpp"
#include "fea/system.hpp"
#include "tests/fea/dense_ends.hpp"
#include "tests/fea/mixed_frame.hpp"
#include "tests/fea/random_frame.hpp"

namespace joints_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::Matrix3;
using fea::NodeId;
using fea::Vector3;
using fea::Vector6;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;

namespace {

const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};
const sections::AreaProps kTube = fea_test::tube(0.038, 0.005);

Matrix3 rotation(const Vector3& t) {
  return t.norm() == 0.0 ? Matrix3::Identity()
                         : Eigen::AngleAxisd(t.norm(), t.normalized()).toRotationMatrix();
}

Vector3 vector_of(const Matrix3& r) {
  const Eigen::AngleAxisd turn(r);
  return turn.angle() * turn.axis();
}

/// Second differences of a function of twelve numbers, at zero.
Eigen::MatrixXd hessian(const std::function<double(const fea::Vector12&)>& f) {
  const double h = 1e-3;
  Eigen::MatrixXd out(12, 12);
  for (Eigen::Index i = 0; i < 12; ++i) {
    for (Eigen::Index j = 0; j < 12; ++j) {
      const auto at = [&](double a, double b) {
        return f(a * h * fea::Vector12::Unit(i) + b * h * fea::Vector12::Unit(j));
      };
      out(i, j) = (at(1.0, 1.0) - at(1.0, -1.0) - at(-1.0, 1.0) + at(-1.0, -1.0)) / (4.0 * h * h);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a spring's geometric stiffness is the second difference of its work",
          "[fea][joints][stability]") {
  // Its force and moment, fixed in the near side's axes, times the relative motion seen from there:
  // Ra' (x_far - x_near) and log(Ra' Rb), with arms on both sides and finite rotations.
  const Vector3 near_arm(0.3, -0.2, 0.5);
  const Vector3 far_arm(-0.4, 0.1, 0.25);
  Vector6 wrench;
  wrench << 3.0, -1.0, 2.0, 0.7, 1.5, -0.8;
  const auto work = [&](const fea::Vector12& q) {
    const Matrix3 ra = rotation(q.segment<3>(3));
    const Matrix3 rb = rotation(q.segment<3>(9));
    const Vector3 apart =
        (q.segment<3>(6) + rb * far_arm - far_arm) - (q.segment<3>(0) + ra * near_arm - near_arm);
    return wrench.head<3>().dot(ra.transpose() * apart) +
           wrench.tail<3>().dot(vector_of(ra.transpose() * rb));
  };
  const Eigen::MatrixXd found = fea::geometric_block(
      fea::spring_part(
          {.a = NodeId{0}, .b = NodeId{1}, .offset_a_g = near_arm, .offset_b_g = far_arm}),
      wrench);
  CHECK((found - hessian(work)).norm() < 2e-5);

  // To the ground the near side stays.
  const Eigen::MatrixXd to_ground = fea::geometric_block(
      fea::spring_part({.a = NodeId{0}, .b = {}, .offset_a_g = far_arm}), wrench);
  CHECK((to_ground - hessian(work).bottomRightCorner<6, 6>()).norm() < 2e-5);
}

TEST_CASE("what a spring puts on its nodes is the change of its energy", "[fea][joints]") {
  fea::Spring spring{.a = NodeId{0},
                     .b = NodeId{1},
                     .offset_a_g = Vector3(0.3, -0.2, 0.5),
                     .offset_b_g = Vector3(-0.4, 0.1, 0.25)};
  fea_test::Lot lot(7);
  for (Eigen::Index i = 0; i < 6; ++i) spring.stiffness(i, i) = lot.between(1.0, 5.0);
  for (const bool to_ground : {false, true}) {
    if (to_ground) spring.b.reset();
    const fea::SpringPart part = fea::spring_part(spring);
    Eigen::VectorXd motion(to_ground ? 6 : 12);
    for (double& value : motion) value = lot.between(-1.0, 1.0);
    const fea::Sides at = fea::sides_of(part, motion);
    const Vector6 force = part.stiffness_g * (at.far - at.near);
    const Eigen::VectorXd on = fea::on_unknowns(part, {.near = -force, .far = force});
    Eigen::MatrixXd k;
    fea::elastic_block(part, k);
    CHECK((k * motion - on).norm() < 1e-12 * on.norm());
    CHECK_THAT(motion.dot(on), WithinRel((at.far - at.near).dot(force), 1e-12));
  }
}

TEST_CASE("an end's geometric stiffness is that of the connection that it is",
          "[fea][joints][stability]") {
  int n_joints = 0;
  for (std::uint32_t seed = 1; seed <= 30; ++seed) {
    const fea_test::RandomFrame frame = fea_test::random_frame(seed);
    const fea::System system(frame.model);
    fea_test::Lot lot(seed);
    for (const fea::BeamPart& beam : system.beams()) {
      const Eigen::Index size = beam.unknowns.size();
      Eigen::Index joint = 12;
      for (const Eigen::Index end : {0, 1}) {
        INFO("seed " << seed << ", end " << end);
        const auto which = static_cast<std::size_t>(end);
        Vector6 wrench;
        for (double& value : wrench) value = lot.between(-1.0, 1.0);
        Eigen::MatrixXd found = Eigen::MatrixXd::Zero(size, size);
        fea::add_end_geometric(beam.ends[which], wrench, 6 * end, joint, found);
        const Eigen::MatrixXd expected =
            fea_test::connection_geometric(fea_test::connection_of(beam, which), wrench);
        CHECK((found - expected).norm() <= 1e-12 * (1.0 + expected.norm()));
        joint += static_cast<Eigen::Index>(beam.ends[which].n_loose);
      }
      if (joint > 12) ++n_joints;
    }
  }
  CHECK(n_joints > 0);
}

TEST_CASE("a beam's matrices over its unknowns are those between its ends, seen through them",
          "[fea][joints][stability]") {
  int n_plain = 0;
  int n_other = 0;
  for (std::uint32_t seed = 1; seed <= 30; ++seed) {
    const fea_test::RandomFrame frame = fea_test::random_frame(seed);
    const fea::System system(frame.model);
    fea_test::Lot lot(seed);
    for (const fea::BeamPart& beam : system.beams()) {
      INFO("seed " << seed);
      ++(beam.plain ? n_plain : n_other);
      const Eigen::MatrixXd ends_l = fea_test::ends_l(beam);
      Eigen::MatrixXd found;
      fea::elastic_block(beam, beam.stiffness_l, found);
      const Eigen::MatrixXd expected =
          ends_l.transpose() * beam.stiffness_l * ends_l + fea_test::joint_springs(beam);
      CHECK((found - expected).norm() <= 1e-12 * expected.norm());

      // Forces in balance, and those of loads between the ends beside them.
      fea::Vector12 motion_l;
      for (double& value : motion_l) value = lot.between(-1.0, 1.0);
      const fea::Vector12 elastic_l = beam.stiffness_l * motion_l;
      fea::Vector12 loads_l = fea::Vector12::Zero();
      if (lot.between(0.0, 1.0) > 0.5) {
        for (double& value : loads_l) value = lot.between(-0.1, 0.1) * elastic_l.norm();
      }
      const fea::Vector12 acting_l = elastic_l - loads_l;
      Eigen::MatrixXd geometric =
          ends_l.transpose() * fea::geometric_between_ends(beam, elastic_l) * ends_l;
      for (const std::size_t end : {0U, 1U}) {
        geometric += fea_test::connection_geometric(fea_test::connection_of(beam, end),
                                                    -fea::wrench_at(beam, acting_l, end));
      }
      fea::geometric_block(beam, elastic_l, acting_l, found);
      CHECK((found - geometric).norm() <= 1e-11 * geometric.norm());
      const fea::Triangle lower = fea::geometric_triangle(beam, elastic_l, acting_l);
      CHECK((lower - fea::lower_triangle(geometric)).norm() <= 1e-11 * geometric.norm());
    }
  }
  CHECK(n_plain > 0);
  CHECK(n_other > 0);
}

TEST_CASE("an elastic joint equals a spring between two nodes", "[fea][joints]") {
  // The same six stiffnesses between the arm and the ground, once inside the beam's end.
  const Matrix3 axes =
      Eigen::AngleAxisd(0.7, Vector3(1.0, 2.0, -1.0).normalized()).toRotationMatrix();
  const std::array<double, 6> k = {4.0e6, 7.0e6, 2.0e6, 900.0, 3000.0, 1500.0};
  const Vector3 offset(0.03, -0.04, 0.06);

  fea::Model inside;
  const Chain a = chain(inside, Vector3::Zero(), {0.5, 0.2, 0.1}, 4, kTube, kSteel);
  inside.beams.front().a.offset_g = offset;
  inside.beams.front().a.joint = fea_test::joint(k, axes);
  inside.nodes.front().at_g -= offset;
  fea_test::clamp(inside, a.nodes.front());
  fea_test::hold(inside, a.nodes.back(), {false, false, true, false, false, false});

  fea::Model between;
  const Chain b = chain(between, Vector3::Zero(), {0.5, 0.2, 0.1}, 4, kTube, kSteel);
  const NodeId base = between.add(fea::Node{.at_g = -offset});
  fea::Spring spring{.a = base, .b = b.nodes.front(), .offset_a_g = offset, .axes_g = axes};
  for (Eigen::Index i = 0; i < 6; ++i) spring.stiffness(i, i) = k[static_cast<std::size_t>(i)];
  between.add(spring);
  fea_test::clamp(between, base);
  fea_test::hold(between, b.nodes.back(), {false, false, true, false, false, false});

  const fea::Loads loads = push(a.nodes.back(), {-600.0, -250.0, 0.0}, {30.0, 20.0, 10.0});
  for (const fea::Method method : {fea::Method::linear, fea::Method::second_order}) {
    const fea::Solution s = fea::solve(fea::factor(inside), loads, {.method = method});
    const fea::Solution t = fea::solve(fea::factor(between), loads, {.method = method});
    REQUIRE(s.status() == fea::SolveStatus::converged);
    CHECK((s.placement(a.nodes.back()) - t.placement(b.nodes.back())).norm() < 1e-11);
    CHECK((s.end_placement(a.beams.front(), 0) - t.placement(b.nodes.front())).norm() < 1e-11);
    // In second order the two take the joint's force from their own law: beam or spring. They
    // differ by terms of third order.
    CHECK((s.reaction(a.nodes.front()) - t.reaction(base)).norm() < 1e-5 * 650.0);
  }
  const fea::BucklingResult s = fea::buckle(fea::factor(inside), loads);
  const fea::BucklingResult t = fea::buckle(fea::factor(between), loads);
  REQUIRE(s.modes.size() == 3);
  REQUIRE(t.modes.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK_THAT(s.modes[i].factor, WithinRel(t.modes[i].factor, 1e-8));
    CHECK_THAT(s.modes[i].beam_energy.front(), WithinAbs(t.modes[i].beam_energy.front(), 1e-7));
    CHECK_THAT(s.modes[i].joint_energy.front(), WithinAbs(t.modes[i].spring_energy.front(), 1e-7));
  }
}

TEST_CASE("a rigid arm behaves as a very stiff piece", "[fea][joints]") {
  // Column with rigid ends of a sixth of its height; bent and twisted as well.
  const Vector3 low(0.05, 0.0, 0.15);
  const Vector3 high(0.0, 0.04, 0.75);
  const Vector3 top(0.0, 0.0, 0.9);
  fea::Model arms;
  const NodeId foot = arms.add(fea::Node{.at_g = Vector3::Zero()});
  const NodeId head = arms.add(fea::Node{.at_g = top});
  const Chain flexible = chain(arms, low, high, 6, kTube, kSteel);
  arms.beams.front().a = {.node = foot, .offset_g = low};
  arms.beams.back().b = {.node = head, .offset_g = high - top};
  fea_test::clamp(arms, flexible.nodes.front());  // no longer used by any beam
  fea_test::clamp(arms, flexible.nodes.back());
  fea_test::clamp(arms, foot);

  fea::Model pieces;
  const Chain middle = chain(pieces, low, high, 6, kTube, kSteel);
  const fea::Elastic stiff{.young = 1e5 * kSteel.young, .shear = 1e5 * kSteel.shear};
  const Chain under =
      chain(pieces, Vector3::Zero(), low, 1, kTube, stiff, std::nullopt, middle.nodes.front());
  const Chain over = chain(pieces, high, top, 1, kTube, stiff, middle.nodes.back());
  fea_test::clamp(pieces, under.nodes.front());

  const Vector3 force(200.0, -300.0, -6000.0);
  const Vector3 moment(50.0, 20.0, 80.0);
  fea::Loads on_arms = push(head, force, moment);
  fea::Loads on_pieces = push(over.nodes.back(), force, moment);
  // A heavy load on the pieces next to the arms: it goes through the arms as well.
  for (const fea::BeamId id : {flexible.beams.front(), flexible.beams.back()}) {
    on_arms.points.push_back({.beam = id, .at = 0.03, .force_g = {300.0, -200.0, -4000.0}});
  }
  for (const fea::BeamId id : {middle.beams.front(), middle.beams.back()}) {
    on_pieces.points.push_back({.beam = id, .at = 0.03, .force_g = {300.0, -200.0, -4000.0}});
  }
  for (const fea::Method method : {fea::Method::linear, fea::Method::second_order}) {
    const Vector6 s = fea::solve(fea::factor(arms), on_arms, {.method = method}).placement(head);
    const Vector6 t =
        fea::solve(fea::factor(pieces), on_pieces, {.method = method}).placement(over.nodes.back());
    CHECK((s - t).norm() < 1e-4 * s.norm());
  }
  const fea::BucklingResult s = fea::buckle(fea::factor(arms), on_arms);
  const fea::BucklingResult t = fea::buckle(fea::factor(pieces), on_pieces);
  REQUIRE(s.modes.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK_THAT(s.modes[i].factor, WithinRel(t.modes[i].factor, 1e-3));
  }
}

TEST_CASE("a weight on a mast topples it where its moment beats the spring",
          "[fea][joints][buckling]") {
  // Dead load P at the end of a rigid arm h on a rotational spring c: critical P = c / h.
  fea::Model model;
  const NodeId mast = model.add(fea::Node{.at_g = Vector3::Zero()});
  fea::Spring base{.a = mast};
  base.stiffness.diagonal() << 1.0e6, 1.0e6, 1.0e6, 300.0, 500.0, 400.0;
  model.add(base);
  fea::Loads loads;
  loads.nodes.push_back({.node = mast, .offset_g = {0.0, 0.0, 2.0}, .force_g = {0.0, 0.0, -1.0}});
  const fea::BucklingResult result = fea::buckle(fea::factor(model), loads);
  REQUIRE(result.modes.size() == 2);
  CHECK_THAT(result.modes[0].factor, WithinRel(150.0, 1e-12));
  CHECK_THAT(result.modes[1].factor, WithinRel(250.0, 1e-12));
  CHECK(fea::buckle(fea::factor(model), loads * -1.0).status ==
        fea::BucklingStatus::no_compression);
}

TEST_CASE("a released end carries no moment and its link no shear", "[fea][joints]") {
  fea::Model model;
  const Chain bar = chain(model, Vector3::Zero(), {0.6, 0.5, 0.2}, 1, kTube, kSteel);
  const NodeId far = bar.nodes.back();
  fea_test::clamp(model, bar.nodes.front());
  fea_test::hold(model, far, {false, false, false, true, true, true});
  fea::Spring held{.a = far};
  held.stiffness.diagonal() << 1.0e6, 2.0e6, 3.0e6, 0.0, 0.0, 0.0;
  model.add(held);
  const Matrix3 axes = fea::member_axes(model, model.beams[0]).transpose();
  model.beams[0].a.joint =
      fea_test::joint({fea::kRigid, fea::kRigid, fea::kRigid, 5.0, 0.0, 0.0}, axes);
  model.beams[0].b.joint = fea_test::ball();
  const fea::Solution s = fea_test::linear(model, push(far, {3000.0, -1000.0, 500.0}));
  const fea::Vector12 ends = s.end_forces(bar.beams[0]);
  CHECK(std::abs(ends(6)) > 100.0);
  for (const Eigen::Index i : {1, 2, 3, 4, 5, 7, 8, 9, 10, 11}) CHECK(std::abs(ends(i)) < 1e-8);
}

TEST_CASE("the force of a spring is what it puts on b's side", "[fea][joints]") {
  fea::Model model;
  const NodeId a = model.add(fea::Node{.at_g = Vector3::Zero()});
  const NodeId b = model.add(fea::Node{.at_g = Vector3::Zero()});
  fea_test::clamp(model, a);
  fea::Spring spring{.a = a, .b = b};
  spring.stiffness.diagonal() << 100.0, 200.0, 400.0, 10.0, 20.0, 40.0;
  spring.axes_g.col(0) = Vector3::UnitY();  // the spring's x is global y, its y global -x
  spring.axes_g.col(1) = -Vector3::UnitX();
  const fea::SpringId between = model.add(spring);
  spring.a = b;
  spring.b = std::nullopt;
  const fea::SpringId to_ground = model.add(spring);
  const fea::Solution s = fea_test::linear(model, push(b, {0.0, 30.0, 0.0}, {0.0, 0.0, 8.0}));
  CHECK_THAT(s.placement(b)(1), WithinRel(0.15, 1e-12));
  CHECK_THAT(s.spring_force(between)(0), WithinRel(-15.0, 1e-12));
  CHECK_THAT(s.spring_force(between)(5), WithinRel(-4.0, 1e-12));
  CHECK_THAT(s.spring_force(to_ground)(0), WithinRel(15.0, 1e-12));
  CHECK_THAT(s.reaction(b)(1), WithinRel(-15.0, 1e-12));
  CHECK_THAT(s.reaction(a)(1), WithinRel(-15.0, 1e-12));
}

}  // namespace joints_test
