#include "studies/scatter.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "tests/studies/read_case.hpp"

namespace scatter_test {
using Catch::Matchers::Contains;
using studies::Distribution;
using studies::Scattered;
using studies_tests::read_case;

namespace {

/// A pulled tube on ball joints: its utilization is 1.5 N / (A Fy).
const char* const kPulled =
    "title: tube\n"
    "points: {foot: [0, 0, 0 m], head: [0, 1, 0 m]}\n"
    "members: {tube: {from: foot, to: head, section: 40 x 4 mm S355H, from_joint: ball joint,\n"
    "  to_joint: ball joint}}\n"
    "supports: {foot: {at: foot}, head: {at: head, held: x z rx ry rz}}\n"
    "forces: {load: {at: head, force_y: 100 kN}}\n";

studies::ScatterOptions options(const std::string& path, const Distribution& factor,
                                std::size_t n = 40) {
  return {.n_samples = n, .seed = 3, .inputs = {{path, factor, "invented"}}};
}

}  // namespace

// The sequence that the generator's authors publish for this seed (from memory).
TEST_CASE("the generator gives the same numbers everywhere", "[studies][scatter]") {
  studies::RandomNumbers random(1234567);
  CHECK(random.next() == 6457827717110365317U);
  CHECK(random.next() == 3203168211198807973U);
  CHECK(random.next() == 9817491932198370423U);
}

TEST_CASE("a Latin hypercube has one sample in each stratum of each input", "[studies][scatter]") {
  const auto samples = studies::latin_hypercube(50, 3, 9);
  for (std::size_t input = 0; input < 3; ++input) {
    std::set<int> strata;
    for (const auto& sample : samples) {
      CHECK(sample[input] > 0.0);
      CHECK(sample[input] < 1.0);
      strata.insert(static_cast<int>(50.0 * sample[input]));
    }
    CHECK(strata.size() == 50);
  }
  CHECK(studies::latin_hypercube(50, 3, 9) == samples);
  CHECK(studies::latin_hypercube(50, 3, 10) != samples);
}

// mean and coefficient of variation by the closed forms of the distributions.
TEST_CASE("distributions have the mean and spread that they are given by", "[studies][scatter]") {
  for (const char* words : {"normal 1.1 0.08", "lognormal 1.1 0.08"}) {
    const Distribution d = studies::read_distribution(words);
    double sum = 0.0;
    double squares = 0.0;
    constexpr int kN = 20000;
    for (int i = 0; i < kN; ++i) {
      const double x = d.quantile((i + 0.5) / kN);
      sum += x;
      squares += x * x;
    }
    const double mean = sum / kN;
    CHECK(mean == Approx(1.1).epsilon(1e-3));
    CHECK(std::sqrt(squares / kN - mean * mean) / mean == Approx(0.08).epsilon(5e-3));
  }
  CHECK(studies::read_distribution("uniform 0.8 1.2").quantile(0.25) == Approx(0.9));
  CHECK(studies::read_distribution("fixed").quantile(0.9) == 1.0);
  for (const char* wrong : {"", "normal", "normal 1", "normal 1 0.6", "normal -1 0.1",
                            "uniform 2 1", "beta 1 2", "normal 1 x"}) {
    CHECK_THROWS_AS(studies::read_distribution(wrong), base::InputError);
  }
}

TEST_CASE("rank correlation counts ties by their mean rank", "[studies][scatter]") {
  CHECK(studies::rank_correlation({1.0, 2.0, 3.0, 4.0}, {10.0, 20.0, 40.0, 80.0}) == Approx(1.0));
  CHECK(studies::rank_correlation({1.0, 2.0, 3.0}, {3.0, 2.0, 1.0}) == Approx(-1.0));
  // Ranks 1, 2.5, 2.5, 4 with 1, 2, 3, 4: 4.5 / sqrt(4.5 * 5).
  CHECK(studies::rank_correlation({1.0, 2.0, 2.0, 3.0}, {1.0, 2.0, 3.0, 4.0}) ==
        Approx(4.5 / std::sqrt(22.5)));
  CHECK(std::isnan(studies::rank_correlation({1.0, 1.0}, {1.0, 2.0})));
}

TEST_CASE("a factor on the load is one on the utilization", "[studies][scatter]") {
  const parts::Design design = read_case(kPulled);
  const Scattered s =
      studies::scatter(design, options("load", {Distribution::Kind::uniform, 0.5, 1.5}));
  const double area = 3.14159265358979 * 0.004 * 0.036;
  CHECK(s.as_drawn.utilization == Approx(1.5 * 100.0e3 / (area * 355.0e6)).epsilon(1e-3));
  std::size_t n_over = 0;
  for (const studies::Sample& sample : s.samples) {
    CHECK(sample.judged.utilization ==
          Approx(s.as_drawn.utilization * sample.factors[0]).epsilon(1e-9));
    n_over += sample.judged.utilization > 1.0 ? 1U : 0U;
  }
  CHECK(s.n_over == n_over);
  // Uniform between 0.5 and 1.5: over above 1 / utilization, to one stratum.
  CHECK(static_cast<double>(n_over) / 40.0 ==
        Approx(1.5 - 1.0 / s.as_drawn.utilization).margin(1.0 / 40.0));
  CHECK(s.ranks.front().correlation == Approx(1.0));
}

TEST_CASE("a stronger steel and a thicker wall ask less, and seeds repeat", "[studies][scatter]") {
  const parts::Design design = read_case(kPulled);
  studies::ScatterOptions both = options("tube.yield", {Distribution::Kind::normal, 1.0, 0.05});
  both.inputs.push_back({"tube.wall", {Distribution::Kind::normal, 1.0, 0.01}, "invented"});
  const Scattered s = studies::scatter(design, both);
  REQUIRE(s.ranks.size() == 2);
  CHECK(s.ranks[0].path == "tube.yield");
  CHECK(s.ranks[0].correlation < -0.8);
  CHECK(s.ranks[1].correlation < 0.0);
  const Scattered again = studies::scatter(design, both);
  for (std::size_t i = 0; i < s.samples.size(); ++i) {
    CHECK(again.samples[i].judged == s.samples[i].judged);
  }
}

TEST_CASE("what cannot scatter is refused", "[studies][scatter]") {
  const parts::Design design = read_case(kPulled);
  CHECK_THROWS_AS(studies::scatter(design, options("tube.color", {})), base::InputError);
  CHECK_THROWS_WITH(studies::scatter(design, options("load", {})), Contains("nothing scatters"));
  CHECK_THROWS_AS(
      studies::scatter(design, options("load", {Distribution::Kind::normal, 1.0, 0.1}, 1)),
      base::InputError);
  // Wall, diameter and yield of the tube, and the load.
  CHECK(studies::usual_scatter(design).size() == 4);
}

}  // namespace scatter_test
