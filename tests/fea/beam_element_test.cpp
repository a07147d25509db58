#include "fea/beam_element.hpp"

#include <array>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <catch2/catch.hpp>

#include "fea/geometric_stiffness.hpp"
#include "tests/fea/build_frames.hpp"

namespace beam_element_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::Matrix12;
using fea::Vector12;
using fea::Vector3;

namespace {

constexpr double kLength = 1.3;
const fea::Elastic kSteel{.young = 2.0e5, .shear = 7.7e4};

/// Different in the two planes, with shear give.
sections::AreaProps uneven() {
  sections::AreaProps s = fea_test::section(3.0, 0.7, 0.2, 0.4);
  s.shear_y = 1.1;
  s.shear_z = 0.6;
  return s;
}

/// The six rigid motions of a beam along x, as columns.
Eigen::Matrix<double, 12, 6> rigid_motions() {
  Eigen::Matrix<double, 12, 6> out;
  out.topRows<6>() = fea::carried(Vector3::Zero());
  out.bottomRows<6>() = fea::carried(Vector3(kLength, 0.0, 0.0));
  return out;
}

/// Symmetric, and only rigid motions make no force.
/// @param rounding  of the forces, of the stiffness
void check_stiffness(const Matrix12& k, double rounding) {
  CHECK((k - k.transpose()).norm() < 1e-12 * k.norm());
  CHECK((k * rigid_motions()).norm() < rounding * k.norm());
  Eigen::FullPivLU<Matrix12> lu(k);
  lu.setThreshold(1e-10);
  CHECK(lu.rank() == 6);
}

}  // namespace

TEST_CASE("a rigid motion of a beam makes no force", "[fea][beam]") {
  check_stiffness(fea::beam_stiffness(uneven(), kSteel, kLength), 1e-13);
}

TEST_CASE("the shape of a beam has the stiffness as its end forces", "[fea][beam]") {
  // Moments by differences of the section rotation, shear by the angle between slope and section.
  const sections::AreaProps s = uneven();
  const fea::ShearFlex flex = fea::shear_flex(s, kSteel, kLength);
  const Matrix12 k = fea::beam_stiffness(s, kSteel, kLength);
  const double h = 1e-4;
  const Eigen::Matrix<double, 6, 12> at_end = fea::beam_shape(flex, kLength, kLength);
  const Eigen::Matrix<double, 6, 12> change =
      (3.0 * at_end - 4.0 * fea::beam_shape(flex, kLength, kLength - h) +
       fea::beam_shape(flex, kLength, kLength - 2.0 * h)) /
      (2.0 * h);
  const double tolerance = 1e-6 * k.norm();
  CHECK((kSteel.young * s.area * change.row(0) - k.row(6)).norm() < tolerance);
  CHECK((kSteel.shear * s.torsion * change.row(3) - k.row(9)).norm() < tolerance);
  CHECK((kSteel.young * s.iyy * change.row(4) - k.row(10)).norm() < tolerance);
  CHECK((kSteel.young * s.izz * change.row(5) - k.row(11)).norm() < tolerance);
  CHECK((kSteel.shear * s.shear_y * (change.row(1) - at_end.row(5)) - k.row(7)).norm() < tolerance);
  CHECK((kSteel.shear * s.shear_z * (change.row(2) + at_end.row(4)) - k.row(8)).norm() < tolerance);
}

TEST_CASE("equivalent end forces are in balance with the load", "[fea][beam]") {
  const fea::ShearFlex flex = fea::shear_flex(uneven(), kSteel, kLength);
  const double at = 0.4;
  const Vector3 force(3.0, -2.0, 5.0);
  const Vector3 moment(0.3, 0.8, -0.6);
  fea::Vector6 about_a;
  about_a << force, moment + Vector3(at, 0.0, 0.0).cross(force);
  const Vector12 point = fea::equivalent_of_point(flex, kLength, at, force, moment);
  CHECK((rigid_motions().transpose() * point - about_a).norm() < 1e-13);

  // A triangle from 0.2 to 1.1: half its height times its length, at two thirds.
  const Vector12 line =
      fea::equivalent_of_line(flex, kLength, 0.2, 1.1, Vector3::Zero(), Vector3(0.0, 4.0, 0.0));
  const fea::Vector6 sum = rigid_motions().transpose() * line;
  CHECK_THAT(sum(1), WithinRel(0.5 * 4.0 * 0.9, 1e-13));
  CHECK_THAT(sum(5), WithinRel(0.5 * 4.0 * 0.9 * (0.2 + 2.0 / 3.0 * 0.9), 1e-13));
}

TEST_CASE("the geometric stiffness turns the end forces with the beam", "[fea][beam][stability]") {
  // For a rigid rotation t: (t x f_a, t x m_a / 2, t x f_b, t x m_b / 2), to rounding. Random end
  // forces in balance, on a beam with shear give.
  const fea::ShearFlex flex = fea::shear_flex(uneven(), kSteel, kLength);
  std::srand(7);
  for (int trial = 0; trial < 20; ++trial) {
    Vector12 ends = Vector12::Random();
    const Vector3 force = ends.segment<3>(6);
    ends.segment<3>(0) = -force;
    ends.segment<3>(3) = -ends.segment<3>(9) - Vector3(kLength, 0.0, 0.0).cross(force);
    const Matrix12 kg = fea::beam_geometric(ends, flex, kLength, 0.31);
    CHECK((kg - kg.transpose()).norm() == 0.0);
    CHECK((kg * rigid_motions().leftCols<3>()).norm() < 1e-13 * kg.norm());
    const Vector3 turn = Vector3::Random();
    fea::Vector6 body;
    body << Vector3::Zero(), turn;
    Vector12 expected;
    for (const Eigen::Index first : {0, 3, 6, 9}) {
      const Vector3 part = ends.segment<3>(first);
      expected.segment<3>(first) = (first % 6 == 0 ? 1.0 : 0.5) * turn.cross(part);
    }
    CHECK((kg * (rigid_motions() * body) - expected).norm() < 1e-12);
  }
}

TEST_CASE("an arm's geometric stiffness is the second difference of its energy",
          "[fea][stability]") {
  // Energy of a dead gradient F at the end of an arm on a node turned by the rotation vector t:
  // F . exp(t) arm.
  const Vector3 force(3.0, -1.0, 2.0);
  const Vector3 arm(0.4, 0.5, -0.7);
  const fea::Matrix3 k = fea::arm_geometric(force, arm);
  const Vector3 turn(0.3, -0.5, 0.8);
  const double h = 1e-4;
  const auto energy = [&](double s) {
    const Eigen::AngleAxisd rotation(s * turn.norm(), turn.normalized());
    return force.dot(rotation * arm);
  };
  const double second = (energy(h) - 2.0 * energy(0.0) + energy(-h)) / (h * h);
  CHECK_THAT(turn.dot(k * turn), WithinRel(second, 1e-6));
}

namespace {

// A wedge one unit wide, its depth for My growing from end a on; no shear give.
constexpr double kLow = 0.2;
constexpr double kHigh = 0.7;

sections::AreaProps wedge_at(double x) {
  const double depth = kLow + (kHigh - kLow) * x / kLength;
  return fea_test::section(depth, depth * depth * depth / 12.0, depth / 12.0, 0.3 * depth);
}

/// By Simpson's rule.
fea::TaperGive wedge_give() {
  constexpr int kSteps = 2000;
  fea::TaperGive give;
  give.along = give.twist = 0.0;
  const auto take = [&give](double x, double part) {
    const sections::AreaProps s = wedge_at(x);
    give.along += part / s.area;
    give.twist += part / s.torsion;
    for (std::size_t k = 0; k < 3; ++k) {
      const double power = std::pow(x, static_cast<double>(k));
      give.bend_y[k] += part * power / s.iyy;
      give.bend_z[k] += part * power / s.izz;
    }
  };
  const double h = kLength / kSteps;
  for (int i = 0; i <= kSteps; ++i) {
    const double weight = i == 0 || i == kSteps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
    take(i * h, weight * h / 3.0);
  }
  return give;
}

}  // namespace

TEST_CASE("a beam that tapers gives what its integrals say", "[fea][beam][taper]") {
  const Matrix12 k = fea::beam_stiffness(wedge_give(), kSteel, kLength);
  check_stiffness(k, 1e-12);
  // End b held, a force along z at end a. The integral of x^2 / I of the wedge, by hand:
  // 12 / c^3 (ln r + 2 (1 / r - 1) - (1 / r^2 - 1) / 2), r = high / low, c = (high - low) / L.
  const double r = kHigh / kLow;
  const double c = (kHigh - kLow) / kLength;
  const double tip = 12.0 / (c * c * c) *
                     (std::log(r) + 2.0 * (1.0 / r - 1.0) - 0.5 * (1.0 / (r * r) - 1.0)) /
                     kSteel.young;
  const fea::Vector6 force = fea::Vector6::Unit(2);
  const fea::Vector6 motion = k.topLeftCorner<6, 6>().fullPivLu().solve(force);
  CHECK_THAT(motion(2), WithinRel(tip, 1e-8));
  // A pull: ln r / (c E).
  const fea::Vector6 pulled = k.topLeftCorner<6, 6>().fullPivLu().solve(fea::Vector6::Unit(0));
  CHECK_THAT(pulled(0), WithinRel(std::log(r) / (c * kSteel.young), 1e-8));
  const Vector12 any = Vector12::LinSpaced(-0.3, 0.9).array().sin();
  CHECK((fea::beam_elastic_force(k, any) - k * any).norm() < 1e-12 * (k * any).norm());
}

TEST_CASE("a beam that tapers is the limit of many that do not", "[fea][beam][taper]") {
  constexpr int kMany = 400;
  fea::Model many;
  const fea_test::Chain row =
      fea_test::chain(many, Vector3::Zero(), {kLength, 0.0, 0.0}, kMany, wedge_at(0.0), kSteel);
  for (int i = 0; i < kMany; ++i) {
    many.beams[static_cast<std::size_t>(i)].section = wedge_at((i + 0.5) * kLength / kMany);
  }
  fea::Model one;
  const fea_test::Chain bar = fea_test::chain(one, Vector3::Zero(), {kLength, 0.0, 0.0}, 1,
                                              wedge_at(0.5 * kLength), kSteel);
  one.beams.front().taper = wedge_give();
  const auto tip = [](fea::Model model, fea::NodeId root, fea::NodeId free, fea::Method method) {
    fea_test::clamp(model, root);
    const fea::Solution s =
        fea::solve(fea::factor(std::move(model)),
                   fea_test::push(free, {-2.0, 3.0, 5.0}, {0.2, -0.7, 0.4}), {.method = method});
    REQUIRE(s.status() == fea::SolveStatus::converged);
    return s.placement(free);
  };
  for (const fea::Method method :
       {fea::Method::linear, fea::Method::second_order, fea::Method::large_displacement}) {
    const fea::Vector6 coarse = tip(one, bar.nodes.back(), bar.nodes.front(), method);
    const fea::Vector6 fine = tip(many, row.nodes.back(), row.nodes.front(), method);
    CHECK((coarse - fine).norm() < 1e-4 * fine.norm());
  }
}

}  // namespace beam_element_test
