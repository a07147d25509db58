// The figures that `compare` sets side by side, against statics and springs in parallel (common
// practice, no source).
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "studies/compare.hpp"
#include "tests/studies/read_case.hpp"

namespace compare_figures_test {
using studies_tests::read_case;

namespace {

constexpr double kWeight = 4.1e3;  // so light that the bracket leans under 7 degrees  [N]
constexpr double kDrop = 0.25;

std::string braced(const std::string& compare, double axle_weight = kWeight) {
  return fmt::format(
      "title: bracket with and without its brace\n"
      "vehicle:\n"
      "  axle_weight: {} N\n"
      "  tire: 800 mm\n"
      "  track: 1.6 m\n"
      "lateral_link:\n"
      "  bolt_to_bolt: 900 mm\n"
      "  rise: 0 mm\n"
      "  tube: 50 x 10 mm S355H\n"
      "  ends: weld-on pin\n"
      "bracket:\n"
      "  drop: 250 mm\n"
      "  plates: 2 of 10 mm S355\n"
      "  depth_at_rail: 100 mm\n"
      "  depth_at_bolt: 100 mm\n"
      "  weld: 8 mm fillet, both sides of each plate\n"
      "  rail: boxed, 100 x 150 x 16 mm\n"
      "  welded_to: bottom\n"
      "  rail_stiffness: not sure\n"
      "brace:\n"
      "  tube: 38 x 4 mm S355H\n"
      "  length: 850 mm\n"
      "  slope: 15 deg\n"
      "  far_end: bolted to opposite rail\n"
      "  end_mount: 10 kN/mm\n"
      "compare: [{}]\n",
      axle_weight, compare);
}

/// Give of the bracket's bolt per side force: bending, shear (5/6 of the section within 2 %) and
/// the rail.
double give(double rail) {
  const double inertia = 2.0 * 0.010 * std::pow(0.100, 3) / 12.0;
  return std::pow(kDrop, 3) / (3.0 * 210.0e9 * inertia) +
         kDrop / (210.0e9 / 2.6 * 0.85 * 2.0 * 0.010 * 0.100) + kDrop * kDrop / rail;
}

}  // namespace

TEST_CASE("without a brace the root moment is force times lever at both rail bounds", "[studies]") {
  const studies::Comparison c = studies::compare(read_case(braced("no brace")));
  REQUIRE(c.failures.empty());
  REQUIRE(c.variants.size() == 1);
  const studies::Figures& alone = c.variants.front();
  const double force = 1.75 * kWeight;  // the curb is the largest load
  CHECK(alone.name == "no brace");
  CHECK(alone.root_moment.low == Approx(force * kDrop).epsilon(1e-3));
  CHECK(alone.root_moment.high == Approx(force * kDrop).epsilon(1e-3));
  CHECK(alone.tip_deflection.low == Approx(force * give(2000.0e3)).epsilon(5e-3));
  // Leaning 7 degrees, second order moves it 1.4 % less than the undeformed lever says.
  CHECK(alone.tip_deflection.high == Approx(force * give(15.0e3)).epsilon(2e-2));
}

TEST_CASE("a bracket that leans far keeps the moment of its statics", "[studies]") {
  // At 15 kN m/rad a curb leans it by over 20 degrees; its lever is never taken shorter for that.
  const double weight = 15.0e3;
  const studies::Comparison c = studies::compare(read_case(braced("no brace", weight)));
  REQUIRE(c.variants.size() == 1);
  CHECK(c.variants.front().root_moment.low == Approx(1.75 * weight * kDrop).epsilon(1e-3));
  CHECK(c.variants.front().root_moment.high == Approx(1.75 * weight * kDrop).epsilon(1e-3));
}

TEST_CASE("with a brace the root moment is a range: the stiff rail keeps the most", "[studies]") {
  const studies::Comparison c = studies::compare(read_case(braced("no brace")));
  const double pi = 3.14159265358979;
  const double area = pi / 4.0 * (0.038 * 0.038 - 0.030 * 0.030);
  const double along = 0.850 / (210.0e9 * area) + 1.0 / 10.0e6;
  const double brace = std::pow(std::cos(15.0 * pi / 180.0), 2) / along;
  const double moment = 1.75 * kWeight * kDrop;
  CHECK(c.base.root_moment.low == Approx(moment / (1.0 + brace * give(15.0e3))).epsilon(1e-2));
  CHECK(c.base.root_moment.high == Approx(moment / (1.0 + brace * give(2000.0e3))).epsilon(1e-2));
  CHECK(c.base.root_moment.low < c.base.root_moment.high);
  CHECK(c.base.root_moment.high < c.variants.front().root_moment.low);
}

TEST_CASE("masses are volume times 7850 kg/m3, and a variant's own", "[studies]") {
  const studies::Comparison c = studies::compare(read_case(braced("no brace, 45 x 5 mm S355H")));
  REQUIRE(c.variants.size() == 2);
  const double pi = 3.14159265358979;
  const auto tube = [&](double outside, double wall, double length) {
    return 7850.0 * pi * wall * (outside - wall) * length;
  };
  const double plates = 7850.0 * 2.0 * 0.010 * 0.100 * 0.250;
  const double brace = tube(0.038, 0.004, 0.850);
  CHECK(c.base.mass == Approx(tube(0.050, 0.010, 0.9) + plates + brace).epsilon(1e-9));
  CHECK(c.variants[0].mass == Approx(tube(0.050, 0.010, 0.9) + plates).epsilon(1e-9));
  CHECK(c.variants[1].mass == Approx(tube(0.045, 0.005, 0.9) + plates + brace).epsilon(1e-9));
}

}  // namespace compare_figures_test
