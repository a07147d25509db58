#include "studies/watch.hpp"

#include <vector>

#include <catch2/catch.hpp>

#include "studies/check.hpp"
#include "studies/compare.hpp"
#include "studies/pick.hpp"
#include "tests/studies/read_case.hpp"

namespace watch_test {
using studies::Go;
using studies::Progress;
using studies_tests::read_case;

namespace {

const char* const kRod =
    "title: rod\n"
    "points:\n"
    "  foot: [0, 0, 0 in]\n"
    "  head: [0, 40, 0 in]\n"
    "members:\n"
    "  rod:\n"
    "    from: foot\n"
    "    to: head\n"
    "    section: 1 x 0.120 in DOM\n"
    "supports:\n"
    "  foot:\n"
    "    at: foot\n"
    "forces:\n"
    "  load:\n"
    "    at: head\n"
    "    force_z: -100 lb\n"
    "variants:\n"
    "  wider:\n"
    "    members.rod.section: 1-1/4 x 0.120 in DOM\n"
    "  wider still:\n"
    "    members.rod.section: 1-1/2 x 0.120 in DOM\n";

/// Goes on for some calls, then stops.
studies::Watch stops_after(int calls, int& seen) {
  return [calls, &seen](const Progress&) { return ++seen > calls ? Go::stop : Go::on; };
}

}  // namespace

TEST_CASE("a run whose watch says stop is stopped at once", "[studies]") {
  const parts::Design design = read_case(kRod);
  for (const int calls : {0, 2}) {
    int seen = 0;
    CHECK_THROWS_AS(studies::check(design, stops_after(calls, seen)), studies::Stopped);
    CHECK(seen == calls + 1);
    seen = 0;
    CHECK_THROWS_AS(studies::compare(design, stops_after(calls, seen)), studies::Stopped);
    CHECK(seen == calls + 1);
    seen = 0;
    CHECK_THROWS_AS(studies::pick(design, "rod", {}, stops_after(calls, seen)), studies::Stopped);
    CHECK(seen == calls + 1);
  }
}

TEST_CASE("a watched run is told how far it is, from 0 to 1 and never backward", "[studies]") {
  const parts::Design design = read_case(kRod);
  std::vector<double> told;
  const studies::Answer answer = studies::check(design, [&](const Progress& progress) {
    told.push_back(progress.fraction);
    CHECK_FALSE(progress.what.empty());
    return Go::on;
  });
  CHECK(answer.comparison->variants.size() == 2);
  REQUIRE(told.size() >= 6);
  CHECK(told.front() >= 0.0);
  CHECK(told.back() <= 1.0);
  for (std::size_t i = 1; i < told.size(); ++i) CHECK(told[i] >= told[i - 1]);
}

}  // namespace watch_test
