#include "studies/load_limit.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "studies/give_way.hpp"

namespace load_limit_test {
using Catch::Matchers::WithinRel;

TEST_CASE("a ratio that grows with the load reaches 1 at its reciprocal", "[studies]") {
  for (const double slope : {0.02, 0.4, 1.0, 3.0, 250.0}) {
    const auto ratio = [&](double m) { return slope * m; };
    CHECK_THAT(studies::load_limit(ratio, ratio(1.0), 100.0, {}).multiple,
               WithinRel(1.0 / slope, 1e-5));
  }
}

TEST_CASE("a beam-column's ratio is followed to its root, near the critical load", "[studies]") {
  // ratio = a m / (1 - m / critical): the root is 1 / (a + 1 / critical).
  for (const double a : {0.01, 0.2, 0.9}) {
    for (const double critical : {1.05, 3.0, 40.0}) {
      const auto ratio = [&](double m) {
        return m < critical ? a * m / (1.0 - m / critical)
                            : std::numeric_limits<double>::infinity();
      };
      CHECK_THAT(studies::load_limit(ratio, ratio(1.0), 100.0, {}).multiple,
                 WithinRel(1.0 / (a + 1.0 / critical), 1e-5));
    }
  }
}

TEST_CASE("a frame that fails at the load itself has its limit below it", "[studies]") {
  const auto ratio = [](double m) { return m < 0.5 ? m : std::numeric_limits<double>::infinity(); };
  const studies::LimitFound found = studies::load_limit(ratio, ratio(1.0), 100.0, {});
  CHECK_THAT(found.multiple, WithinRel(0.5, 1e-3));
  CHECK(found.gives_way);
}

TEST_CASE("where the frame gives way is closed in from both sides", "[studies]") {
  const studies::GivesWay edge =
      studies::closed_in({2.0, 2.5}, 1.001, [](double m) { return m < 2.3; });
  CHECK(edge.carried < 2.3);
  CHECK(edge.lost >= 2.3);
  CHECK_THAT(edge.carried, WithinRel(2.3, 1e-3));
}

TEST_CASE("ratios that are known save asking for them", "[studies]") {
  const auto beam_column = [](double m) { return 0.2 * m / (1.0 - m / 7.0); };
  int asked = 0;
  const auto ratio = [&](double m) {
    ++asked;
    return beam_column(m);
  };
  const double limit = studies::load_limit(ratio, beam_column(1.0), 100.0,
                                           {{1.5, beam_column(1.5)}, {2.5, beam_column(2.5)}})
                           .multiple;
  CHECK_THAT(limit, WithinRel(1.0 / (0.2 + 1.0 / 7.0), 1e-5));
  CHECK(asked == 1);
}

TEST_CASE("a limit that is a corner is closed in", "[studies]") {
  // A stop comes to carry at 1.9: interpolation from either side alone misses.
  const auto ratio = [](double m) { return m < 1.9 ? 0.5 * m : 0.95 + 0.01 * (m - 1.9); };
  CHECK_THAT(studies::load_limit(ratio, ratio(1.0), 100.0, {{1.95, ratio(1.95)}}).multiple,
             WithinRel(6.9, 1e-5));
}

TEST_CASE("the search stops at the highest multiple", "[studies]") {
  const auto ratio = [](double m) { return 1e-4 * m; };
  CHECK(studies::load_limit(ratio, ratio(1.0), 100.0, {}).multiple == 100.0);
}

}  // namespace load_limit_test
