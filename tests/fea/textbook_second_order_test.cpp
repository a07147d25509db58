// Second-order frames against published results and closed forms. "from memory": the numbers were
// recalled from the named source and recomputed, not read in it.

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using fea_test::section;

namespace {

/// W14x48, major axis, bending in xz.  in, kip
/// @param area  its own, or a huge one for closed forms that leave out axial shortening
sections::AreaProps w14x48(bool shear, double area) {
  sections::AreaProps s = section(area, 484.0, 484.0, 1.45);
  if (shear) s.shear_y = s.shear_z = 13.8 * 0.34;
  return s;
}

const fea::Elastic kKsiSteel{.young = 29000.0, .shear = 11200.0};
constexpr double kHeight = 28.0 * 12.0;
constexpr double kArea = 14.1;
constexpr double kUnshortened = 1.0e7;

struct Answer {
  double moment;
  double deflection;
};

/// Simply supported along x, uniform w down, compressed at the ends.
Answer case_one(double axial, bool shear, double area = kArea) {
  fea::Model model;
  const int n = 8;
  const Chain beam =
      chain(model, Vector3::Zero(), {kHeight, 0.0, 0.0}, n, w14x48(shear, area), kKsiSteel);
  fea_test::keep_in_xz(model);
  fea_test::hold(model, beam.nodes.front(), {true, true, true, true, false, true});
  fea_test::hold(model, beam.nodes.back(), {false, true, true, true, false, true});
  fea::Loads loads = push(beam.nodes.back(), {-axial, 0.0, 0.0});
  const Vector3 w(0.0, 0.0, -0.2 / 12.0);
  for (const fea::BeamId id : beam.beams) {
    loads.lines.push_back({.beam = id, .at_from_g = w, .at_to_g = w});
  }
  const fea::Solution s = fea::solve(fea::factor(model), loads);
  REQUIRE(s.status() == fea::SolveStatus::converged);
  CHECK(s.residual() < 1e-9);
  return {-s.forces_at(beam.beams[n / 2], 0.0).my, -s.placement(beam.nodes[n / 2])(2)};
}

/// Upright cantilever, compressed and pushed aside at its top.
Answer case_two(double axial, bool shear, double area = kArea) {
  fea::Model model;
  const Chain post =
      chain(model, Vector3::Zero(), {0.0, 0.0, kHeight}, 8, w14x48(shear, area), kKsiSteel);
  fea_test::keep_in_xz(model);
  fea_test::clamp(model, post.nodes.front());
  const fea::Solution s =
      fea::solve(fea::factor(model), push(post.nodes.back(), {1.0, 0.0, -axial}));
  REQUIRE(s.status() == fea::SolveStatus::converged);
  // The moment about y that the ground puts on the foot.
  return {-s.reaction(post.nodes.front())(4), s.placement(post.nodes.back())(0)};
}

}  // namespace

TEST_CASE("second-order benchmark case 1, simply supported", "[fea][published][second-order]") {
  // ANSI/AISC 360-10 and -16, Commentary C2, Figure C-C2.2 (from memory). AISC asks for 3 % on
  // moments and 5 % on deflections; held here to half a percent of the printed figures, which
  // have three digits.
  const std::vector<double> axial = {0.0, 150.0, 300.0, 450.0};
  const std::vector<Answer> with_shear = {
      {235.0, 0.202}, {270.0, 0.230}, {316.0, 0.269}, {380.0, 0.322}};
  const std::vector<Answer> without = {
      {235.0, 0.197}, {269.0, 0.224}, {313.0, 0.261}, {375.0, 0.311}};
  for (std::size_t i = 0; i < axial.size(); ++i) {
    const Answer a = case_one(axial[i], true);
    CHECK_THAT(a.moment, WithinRel(with_shear[i].moment, 0.005));
    CHECK_THAT(a.deflection, WithinRel(with_shear[i].deflection, 0.005));
    const Answer b = case_one(axial[i], false);
    CHECK_THAT(b.moment, WithinRel(without[i].moment, 0.005));
    CHECK_THAT(b.deflection, WithinRel(without[i].deflection, 0.005));
  }
}

TEST_CASE("second-order benchmark case 2, cantilever", "[fea][published][second-order]") {
  // ANSI/AISC 360-10 and -16, Commentary C2, Figure C-C2.3, with shear (from memory).
  const std::vector<double> axial = {0.0, 100.0, 150.0, 200.0};
  const std::vector<Answer> expected = {
      {336.0, 0.907}, {470.0, 1.34}, {601.0, 1.77}, {856.0, 2.60}};
  for (std::size_t i = 0; i < axial.size(); ++i) {
    const Answer a = case_two(axial[i], true);
    CHECK_THAT(a.moment, WithinRel(expected[i].moment, 0.005));
    CHECK_THAT(a.deflection, WithinRel(expected[i].deflection, 0.005));
  }
  // Closed form: M = H tan(kL) / k with EI and H over (1 - P / GAs). It leaves out that the
  // pushes turn by 0.008 rad against the member.
  const double give = 1.0 - 200.0 / (11200.0 * 13.8 * 0.34);
  const double k = std::sqrt(200.0 / (29000.0 * 484.0 * give));
  CHECK_THAT(case_two(200.0, true, kUnshortened).moment,
             WithinRel(std::tan(k * kHeight) / (k * give), 5e-4));
}

TEST_CASE("uniform load on a strut at half its Euler load", "[fea][published][second-order]") {
  // Timoshenko and Gere, Theory of Elastic Stability, art. 1.4 (formula from memory): deflection
  // 2.0036 times, moment 2.0299 times the linear ones.
  const double euler = 9.8696044 * 29000.0 * 484.0 / (kHeight * kHeight);
  const Answer linear = case_one(0.0, false, kUnshortened);
  const Answer half = case_one(0.5 * euler, false, kUnshortened);
  CHECK_THAT(half.moment / linear.moment, WithinRel(2.0299, 2e-4));
  CHECK_THAT(half.deflection / linear.deflection, WithinRel(2.0036, 2e-4));
}

TEST_CASE("stability functions at the Euler load", "[fea][published][second-order]") {
  // Livesley and Chandler, Stability Functions for Structural Frameworks (1956) (from memory):
  // near-end stiffness s EI / L and carry-over c with the far end fixed; s = 4, c = 0.5 at P = 0;
  // s = 2.467, c = 1.000 at P = Pe.
  const double length = 2.0;
  const sections::AreaProps bar = section(3.0e6, 1.7, 1.7, 1.0);
  const fea::Elastic elastic{.young = 50.0, .shear = 20.0};
  const double ei = 50.0 * 1.7;
  struct Row {
    double rho, s, c;
  };
  for (const Row& row : {Row{0.0, 4.0, 0.5}, Row{1.0, 2.4674, 1.0}}) {
    fea::Model model;
    const Chain strut = chain(model, Vector3::Zero(), {length, 0.0, 0.0}, 8, bar, elastic);
    fea_test::keep_in_xz(model);
    fea_test::hold(model, strut.nodes.front(), {false, true, true, true, false, true});
    fea_test::clamp(model, strut.nodes.back());
    const double axial = row.rho * 9.8696044 * ei / (length * length);
    const double moment = 1e-6 * ei;
    const fea::Solution s = fea::solve(
        fea::factor(model), push(strut.nodes.front(), {axial, 0.0, 0.0}, {0.0, moment, 0.0}));
    REQUIRE(s.status() == fea::SolveStatus::converged);
    const double stiffness = moment / s.placement(strut.nodes.front())(4);
    CHECK_THAT(stiffness * length / ei, WithinRel(row.s, 3e-4));
    CHECK_THAT(s.reaction(strut.nodes.back())(4) / moment, WithinRel(row.c, 3e-4));
  }
}

TEST_CASE("a bent bar in compression", "[fea][published][second-order]") {
  // V shape, tube 38 x 5 mm, 900 mm between its ends, apex 60 mm off, 15.231 kN along the chord,
  // E = 205 GPa. Linear P/A + P e/Z = 269.9 MPa; second order P/A + M/Z with the shallow closed
  // form M = P e tan(u) / u, u = (pi / 2) sqrt(P / Pe): 288.1 MPa (derived, no published source).
  const sections::AreaProps tube = fea_test::tube(0.038, 0.005);
  const fea::Elastic steel{.young = 205.0e9, .shear = 79.0e9};
  fea::Model model;
  const Chain left = chain(model, Vector3::Zero(), {0.45, 0.06, 0.0}, 6, tube, steel);
  const Chain right =
      chain(model, {0.45, 0.06, 0.0}, {0.9, 0.0, 0.0}, 6, tube, steel, left.nodes.back());
  fea_test::hold(model, left.nodes.front(), {true, true, true, true, false, false});
  fea_test::hold(model, right.nodes.back(), {false, true, true, false, false, false});
  const double p = 15231.0;
  const double piece = fea::length(model, model[left.beams.back()]);
  const fea::Factored factored = fea::factor(model);
  const fea::Loads loads = push(right.nodes.back(), {-p, 0.0, 0.0});
  const auto stress = [&](fea::Method method) {
    const fea::Solution s = fea::solve(factored, loads, {.method = method});
    const double moment = std::abs(s.forces_at(right.beams.front(), 0.0).mz);
    CHECK_THAT(std::abs(s.forces_at(left.beams.back(), piece).mz), WithinRel(moment, 1e-5));
    return p / tube.area + moment / tube.modulus_z;
  };
  CHECK_THAT(stress(fea::Method::linear) / 1e6, WithinAbs(269.9, 0.05));
  CHECK_THAT(stress(fea::Method::second_order) / 1e6, WithinAbs(288.1, 0.3));
}
