// The frame at a state with finite rotations: its tangent against differences of its forces, and
// against the linear equations at rest. Properties: no outside source.

#include "fea/moved_frame.hpp"

#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "fea/corotational.hpp"
#include "fea/rotation.hpp"
#include "tests/fea/mixed_frame.hpp"
#include "tests/fea/mixed_gaps.hpp"

namespace moved_frame_test {
using fea::Matrix3;
using fea::MovedFrame;
using fea::MovedState;
using fea::Vector3;

namespace {

Vector3 some_vector(std::mt19937& random, double size) {
  std::uniform_real_distribution<double> part(-1.0, 1.0);
  return size * Vector3(part(random), part(random), part(random));
}

std::shared_ptr<const fea::MovedModel> share(const fea::Model& model) {
  return std::make_shared<const fea::MovedModel>(std::make_shared<const fea::System>(model));
}

/// Everything turned by one rotation and moved, then bent by `size`.
MovedState some_state(const MovedFrame& frame, double whole, double size, unsigned seed) {
  std::mt19937 random(seed);
  const fea::System& system = frame.system();
  MovedState state = MovedState::at_rest(system);
  const Matrix3 turn = fea::rotation_of(some_vector(random, whole));
  for (std::size_t i = 0; i < state.nodes.size(); ++i) {
    const Vector3 at = system.model().nodes[i].at_g;
    state.nodes[i].displacement_g = turn * at - at + some_vector(random, 0.05 * size);
    state.nodes[i].turn_g = fea::rotation_of(some_vector(random, size)) * turn;
    if (!frame.holds_one_rotation(fea::NodeId{static_cast<int>(i)})) continue;
    Vector3 vector = fea::rotation_vector(state.nodes[i].turn_g);
    for (int k = 0; k < 3; ++k) {
      if (system.held(6 * static_cast<int>(i) + 3 + k)) vector(k) = 0.0;
    }
    state.nodes[i].turn_g = fea::rotation_of(vector);
  }
  for (Eigen::Index i = 0; i < state.joints.size(); ++i) {
    state.joints(i) = some_vector(random, 0.3 * size).x();
  }
  return state;
}

/// Largest difference between the assembled tangent and central differences of the forces, column
/// by column, over the largest entry of the column.
double tangent_error(const MovedFrame& frame, const MovedState& state, double factor) {
  const std::vector<bool> closed(frame.model().gaps.size(), true);
  const fea::MovedForces at = frame.forces(state, factor, closed);
  double worst = 0.0;
  for (Eigen::Index i = 0; i < at.unbalanced.size(); ++i) {
    if (frame.system().held(static_cast<int>(i))) continue;
    Eigen::VectorXd column = Eigen::VectorXd::Zero(at.unbalanced.size());
    for (std::size_t b = 0; b < at.tangent.size(); ++b) {
      if (at.tangent[b].size() == 0) continue;
      const Eigen::VectorXi& unknowns = frame.shared().unknowns[b];
      for (Eigen::Index k = 0; k < unknowns.size(); ++k) {
        if (unknowns(k) == i) column(unknowns) += at.tangent[b].col(k);
      }
    }
    const double h = 1e-5;
    const Eigen::VectorXd step = h * Eigen::VectorXd::Unit(at.unbalanced.size(), i);
    const Eigen::VectorXd difference =
        (frame.forces(frame.moved(state, step), factor, closed).unbalanced -
         frame.forces(frame.moved(state, -step), factor, closed).unbalanced) /
        (2.0 * h);
    for (int row = 0; row < static_cast<int>(column.size()); ++row) {
      if (!frame.system().held(row)) {
        worst = std::max(
            worst, std::abs(column(row) - difference(row)) / difference.cwiseAbs().maxCoeff());
      }
    }
  }
  return worst;
}

}  // namespace

TEST_CASE("rotation vectors and rotations are each other's inverse", "[fea][large]") {
  std::mt19937 random(3);
  for (int i = 0; i < 50; ++i) {
    const Vector3 t = some_vector(random, i < 25 ? 1.8 : 1e-3);
    const Matrix3 r = fea::rotation_of(t);
    CHECK((r * r.transpose() - Matrix3::Identity()).norm() < 1e-14);
    if (t.norm() < 3.14159) CHECK((fea::rotation_vector(r) - t).norm() < 1e-13);
    CHECK((fea::spin_map(t) * fea::inverse_spin_map(t) - Matrix3::Identity()).norm() < 1e-12);
  }
  // A half turn has two vectors; either will do.
  const Vector3 half = 3.14159265358979 * Vector3(0.6, 0.0, 0.8);
  CHECK((fea::rotation_of(fea::rotation_vector(fea::rotation_of(half))) - fea::rotation_of(half))
            .norm() < 1e-12);
}

TEST_CASE("the spin maps are slopes of the rotation, and their own slopes are right",
          "[fea][large]") {
  std::mt19937 random(5);
  const double h = 1e-6;
  // Both sides of where series take over.
  for (const double size : {1e-4, 0.1, 0.29, 0.31, 1.0, 2.5}) {
    const Vector3 t = size * some_vector(random, 1.0).normalized();
    const Vector3 m = some_vector(random, 1.0);
    for (Eigen::Index k = 0; k < 3; ++k) {
      const Vector3 up = t + h * Vector3::Unit(k);
      const Vector3 down = t - h * Vector3::Unit(k);
      const Matrix3 turn = fea::rotation_of(up) * fea::rotation_of(down).transpose();
      CHECK((fea::rotation_vector(turn) / (2.0 * h) - fea::spin_map(t).col(k)).norm() < 1e-8);
      const Vector3 slope = (fea::spin_map(up) - fea::spin_map(down)).transpose() * m / (2.0 * h);
      CHECK((slope - fea::spin_map_slope(t, m).col(k)).norm() < 1e-8);
      const Vector3 inverse_slope =
          (fea::inverse_spin_map(up) - fea::inverse_spin_map(down)).transpose() * m / (2.0 * h);
      CHECK((inverse_slope - fea::inverse_spin_map_slope(t, m).col(k)).norm() < 1e-8);
    }
  }
}

TEST_CASE("what a tangent is taken at has no say in the forces, and goes on along its slope",
          "[fea][large]") {
  const fea_test::Loaded frame = fea_test::mixed_frame();
  const MovedFrame moved(share(frame.model), frame.loads * 1000.0);
  const MovedState state = some_state(moved, 1.5, 0.3, 4);
  const fea::MovedForces own = moved.forces(state, 0.7, {});

  std::vector<fea::Deformation> assumed = own.deformation;
  fea::MovedForces same;
  moved.forces(state, 0.7, {}, same, &assumed);
  for (fea::Deformation& one : assumed) one += 0.01 * (one + fea::Deformation::Ones());
  fea::MovedForces other;
  moved.forces(state, 0.7, {}, other, &assumed);
  CHECK((other.unbalanced - own.unbalanced).norm() < 1e-9 * own.unbalanced.norm());
  for (std::size_t b = 0; b < own.tangent.size(); ++b) {
    CHECK((same.tangent[b] - own.tangent[b]).norm() <= 1e-12 * own.tangent[b].norm());
  }
  CHECK((other.tangent[0] - own.tangent[0]).norm() > 1e-6 * own.tangent[0].norm());

  // Along a small motion the deformation changes as its slope says.
  std::mt19937 random(6);
  Eigen::VectorXd step = Eigen::VectorXd::Zero(own.unbalanced.size());
  for (int i = 0; i < step.size(); ++i) {
    if (!moved.system().held(i)) step(i) = 1e-6 * some_vector(random, 1.0).x();
  }
  std::vector<fea::Deformation> carried;
  moved.carry_on(own, step, carried);
  const fea::MovedForces there = moved.forces(moved.moved(state, step), 0.7, {});
  for (std::size_t i = 0; i < carried.size(); ++i) {
    const fea::Deformation change = there.deformation[i] - own.deformation[i];
    CHECK((carried[i] - there.deformation[i]).norm() < 1e-4 * change.norm() + 1e-12);
  }
}

TEST_CASE("the tangent is the slope of the forces at large random states", "[fea][large]") {
  fea_test::Loaded frame = fea_test::mixed_frame();
  fea_test::add_gaps(frame.model);
  frame.model.springs[1].preload << 500.0, -200.0, 900.0, 30.0, 20.0, -40.0;
  // Loads large enough to be seen beside the stiffness.
  const MovedFrame moved(share(frame.model), frame.loads * 1000.0);
  for (const unsigned seed : {1U, 2U, 3U}) {
    for (const double size : {0.02, 0.3, 0.7}) {
      CHECK(tangent_error(moved, some_state(moved, 1.5, size, seed), 0.7) < 2e-7);
    }
  }
  // One rotation held, of nodes that beams, a spring, a gap and a load share.
  fea_test::hold(frame.model, fea::NodeId{6}, {false, false, false, false, true, false});
  fea_test::hold(frame.model, fea::NodeId{8}, {false, false, false, true, false, false});
  const MovedFrame held(share(frame.model), frame.loads * 1000.0);
  for (const unsigned seed : {4U, 5U}) {
    for (const double size : {0.02, 0.3, 0.7}) {
      CHECK(tangent_error(held, some_state(held, 0.2, size, seed), 0.7) < 2e-7);
    }
  }
}

TEST_CASE("at rest the tangent is the linear stiffness", "[fea][large]") {
  fea_test::Loaded frame = fea_test::mixed_frame();
  for (fea::Spring& spring : frame.model.springs) spring.preload.setZero();
  const auto system = std::make_shared<const fea::System>(frame.model);
  const MovedFrame moved(std::make_shared<const fea::MovedModel>(system), fea::Loads{});
  const fea::MovedForces at = moved.forces(MovedState::at_rest(*system), 0.0, {});
  CHECK(at.unbalanced.norm() < 1e-7);  // rounding
  for (std::size_t b = 0; b < frame.model.beams.size() + frame.model.springs.size(); ++b) {
    const Eigen::MatrixXd& k = system->stiffness(b);
    CHECK((at.tangent[b] - k).norm() < 1e-13 * k.norm());
  }
}

TEST_CASE("a rigid motion strains nothing", "[fea][large]") {
  const fea_test::Loaded frame = fea_test::mixed_frame();
  const fea::System system(frame.model);
  const Matrix3 turn = fea::rotation_of({1.0, -2.0, 1.5});
  for (const fea::BeamPart& beam : system.beams()) {
    const Vector3 span = beam.length * beam.axes_lg.row(0).transpose();
    const fea::CorotationalBeam now =
        fea::corotational(beam, {}, 0.0,
                          {fea::Placed{{3.0, 1.0, 2.0}, turn},
                           fea::Placed{Vector3(3.0, 1.0, 2.0) + turn * span - span, turn}});
    CHECK(now.ends_g.cwiseAbs().maxCoeff() < 1e-14 * beam.stiffness_l(6, 6));
    CHECK((now.axes_gl - turn * beam.axes_lg.transpose()).norm() < 1e-13);
  }
}

}  // namespace moved_frame_test
