// The second-order benchmark problems of the AISC 360 commentary. AISC asks for 3 % on moments and
// 5 % on deflections; half a percent is asked here of what is printed with three digits.

#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace aisc_second_order_test {
using Catch::Matchers::WithinRel;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

const Source kCaseOne{
    "ANSI/AISC 360-10 and -16, commentary C2, figure C-C2.2, benchmark case 1 (W14x48, 28 ft)",
    Basis::from_memory};
const Source kCaseTwo{
    "ANSI/AISC 360-10 and -16, commentary C2, figure C-C2.3, benchmark case 2 (W14x48, 28 ft)",
    Basis::from_memory};

constexpr double kHeight = 28.0 * 12.0;
constexpr double kShearArea = 13.8 * 0.34;
constexpr double kUnshortened = 1.0e7;  // area for closed forms that leave out axial shortening
const fea::Elastic kKsiSteel{.young = 29000.0, .shear = 11200.0};

/// W14x48, major axis, bending in xz.  in, kip
sections::AreaProps w14x48(bool shear, double area) {
  sections::AreaProps s = fea_test::section(area, 484.0, 484.0, 1.45);
  if (shear) s.shear_y = s.shear_z = kShearArea;
  return s;
}

struct Answer {
  double moment;
  double deflection;
};

/// Simply supported along x, uniform w down, compressed at the ends.
Answer case_one(double axial, bool shear) {
  fea::Model model;
  const int n = 8;
  const Chain beam =
      chain(model, Vector3::Zero(), {kHeight, 0.0, 0.0}, n, w14x48(shear, 14.1), kKsiSteel);
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
Answer case_two(double axial, bool shear, double area = 14.1) {
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

struct Row {
  double axial;
  const char* moment;
  const char* deflection;
};

std::string at_load(const char* what, double axial, bool shear) {
  return std::string(what) + ", P = " + std::to_string(static_cast<int>(axial)) + " kip" +
         (shear ? "" : ", no shear give");
}

}  // namespace

TEST_CASE("second-order benchmark case 1, simply supported", "[fea][second-order]") {
  const auto agree = [](const std::vector<Row>& rows, bool shear) {
    for (const Row& row : rows) {
      const Answer a = case_one(row.axial, shear);
      verify(kCaseOne, at_load("moment", row.axial, shear), row.moment, a.moment, within(0.005));
      verify(kCaseOne, at_load("deflection", row.axial, shear), row.deflection, a.deflection,
             within(0.005));
    }
  };
  agree({{0.0, "235 kip in", "0.202 in"},
         {150.0, "270 kip in", "0.230 in"},
         {300.0, "316 kip in", "0.269 in"},
         {450.0, "380 kip in", "0.322 in"}},
        true);
  agree({{0.0, "235 kip in", "0.197 in"},
         {150.0, "269 kip in", "0.224 in"},
         {300.0, "313 kip in", "0.261 in"},
         {450.0, "375 kip in", "0.311 in"}},
        false);
}

TEST_CASE("second-order benchmark case 2, cantilever", "[fea][second-order]") {
  for (const Row& row :
       {Row{0.0, "336 kip in", "0.907 in"}, Row{100.0, "470 kip in", "1.34 in"},
        Row{150.0, "601 kip in", "1.77 in"}, Row{200.0, "856 kip in", "2.60 in"}}) {
    const Answer a = case_two(row.axial, true);
    verify(kCaseTwo, at_load("moment", row.axial, true), row.moment, a.moment, within(0.005));
    verify(kCaseTwo, at_load("deflection", row.axial, true), row.deflection, a.deflection,
           within(0.005));
  }
  // Closed form: M = H tan(kL) / k with EI and H over (1 - P / GAs). It leaves out that the
  // pushes turn by 0.008 rad against the member.
  const double give = 1.0 - 200.0 / (11200.0 * kShearArea);
  const double k = std::sqrt(200.0 / (29000.0 * 484.0 * give));
  CHECK_THAT(case_two(200.0, true, kUnshortened).moment,
             WithinRel(std::tan(k * kHeight) / (k * give), 5e-4));
}

}  // namespace aisc_second_order_test
