// Most load cases and sets are left out of the search for a check's limit by what they are worth at
// the load itself. The answer must be the one that searching each of them by itself gives.
#include <algorithm>
#include <map>
#include <memory>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "parts/design_cases.hpp"
#include "studies/check.hpp"
#include "studies/combined_criterion.hpp"
#include "studies/worst_case.hpp"
#include "tests/studies/read_case.hpp"

namespace screening_test {
using Place = std::pair<std::string, std::string>;  // part and check

namespace {

/// Utilization of a check in one cell, looked at as if there were no other.
double searched(const studies::Criterion& criterion, const studies::Cell& cell) {
  const auto alone = studies::worst_case(criterion, {{&cell, studies::asked_in(criterion, cell)}});
  REQUIRE(alone.has_value());
  return alone->asked.factor.value / alone->limit.factor;
}

/// The worst of every check by part and name, every cell searched.
std::map<Place, double> all_searched(const parts::Design& design) {
  std::map<Place, double> worst;
  const std::vector<parts::DesignCase> cases = parts::design_cases(design);
  for (const parts::StiffnessSet& set : parts::stiffness_sets(design)) {
    const studies::SetModel model(design, set);
    for (const parts::DesignCase& load_case : cases) {
      const studies::Cell cell(model, load_case);
      for (const studies::Criterion& criterion : studies::criteria(cell.assembly())) {
        if (studies::says_nothing(criterion, cell)) continue;
        double& most = worst[{studies::part_judged(criterion, cell.assembly()),
                              studies::check_name(criterion.kind)}];
        most = std::max(most, searched(criterion, cell));
      }
    }
  }
  return worst;
}

void compare_with_all_searched(const std::string& text, std::size_t least_near) {
  const parts::Design design = studies_tests::read_case(text);
  std::map<Place, double> screened;
  for (const checks::Finding& f : studies::check(design).findings) {
    if (f.check == "frame stability") continue;
    INFO(f.reason);
    REQUIRE(f.state != checks::State::undecided);
    double& most = screened[{f.part, f.check}];
    most = std::max(most, f.utilization());
  }
  const std::map<Place, double> full = all_searched(design);
  std::size_t near = 0;
  INFO(text);
  for (const auto& [place, utilization] : screened) {
    INFO(place.first << ", " << place.second);
    REQUIRE(full.count(place) == 1);
    const double other = full.at(place);
    if (utilization < 0.5 && other < 0.5) continue;  // far within: not followed so far
    ++near;
    CHECK(utilization == Approx(other).epsilon(2e-3));
  }
  CHECK(near >= least_near);
}

/// A link on a bracket with a brace whose rail is not sure, sizes and places at random.
std::string random_link(unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  // One drawn after the other, so that every compiler draws the same.
  const double slope = between(2.0, 20.0);
  const double brace = between(600.0, 900.0);
  const double plate = between(6.0, 10.0);
  const double drop = between(120.0, 250.0);
  const double rise = between(20.0, 120.0);
  const double length = between(700.0, 1000.0);
  const double weight = between(15e3, 24e3);
  return fmt::format(
      "title: link\n"
      "vehicle:\n"
      "  axle_weight: {:.0f} N\n"
      "  tire: 900 mm\n"
      "  track: 1650 mm\n"
      "lateral_link:\n"
      "  bolt_to_bolt: {:.0f} mm\n"
      "  rise: {:.0f} mm\n"
      "  tube: 40 x 4 mm E355\n"
      "  ends: weld-on pin\n"
      "  bolt: M16 10.9, clamped stack\n"
      "bracket:\n"
      "  drop: {:.0f} mm\n"
      "  plates: 2 of {:.0f} mm S355\n"
      "  depth_at_rail: 120 mm\n"
      "  weld: 6 mm fillet, both sides of each plate\n"
      "  rail: boxed, 75 x 150 x 5 mm\n"
      "  welded_to: bottom and inner side\n"
      "  rail_stiffness: not sure\n"
      "brace:\n"
      "  tube: 38 x 4 mm E355\n"
      "  length: {:.0f} mm\n"
      "  slope: {:.0f} deg\n"
      "  far_end: welded to opposite rail\n"
      "  end_mount: 10 kN/mm\n"
      "load_cases: [hard corner, slid into a curb]\n",
      weight, length, rise, drop, plate, brace, slope);
}

/// The same on bushings, the brace's end not sure either: eight sets, most of which change little.
std::string link_on_bushings(unsigned seed) {
  std::string text = random_link(seed);
  const auto put = [&text](const std::string& old, const std::string& now) {
    text.replace(text.find(old), old.size(), now);
  };
  put("  ends: weld-on pin\n", "  ends: weld-on bushing\n");
  put("  end_mount: 10 kN/mm\n", "");
  return text;
}

/// A frame whose posts are pressed and bent by loads at random, alone and together.
std::string random_portal(unsigned seed) {
  std::mt19937 random(seed);
  const auto newtons = [&](double most) {
    return fmt::format("{:.0f} N", most * (static_cast<double>(random()) / 2147483648.0 - 1.0));
  };
  std::string cases;
  for (int i = 0; i < 6; ++i) {
    const std::string z = newtons(150e3);
    const std::string y = newtons(6e3);
    const std::string x = newtons(2e3);
    cases += fmt::format("  - {{name: case {}, at: {} knee, force: [{}, {}, {}]}}\n", i + 1,
                         i % 2 == 0 ? "left" : "right", x, y, z);
  }
  return "title: portal\n"
         "points: {left foot: [0, 1, 0 m], right foot: [0, -1, 0 m], left knee: [0, 1, 1.8 m], "
         "right knee: [0, -1, 1.8 m]}\n"
         "members:\n"
         "  left post: {from: left foot, to: left knee, section: 80 x 60 x 4 mm S355H}\n"
         "  right post: {from: right foot, to: right knee, section: 80 x 60 x 4 mm S355H}\n"
         "  beam: {from: left knee, to: right knee, section: 80 x 60 x 4 mm S355H}\n"
         "supports: {left: {at: left foot}, right: {at: right foot}}\n"
         "load_cases:\n" +
         cases;
}

/// A strut pressed along y and pushed up at its middle, where two ties across it are drawn the
/// tighter the more load there is.
const char* const kTiedStrut =
    "title: tied strut\n"
    "points: {foot: [0, 0, 0 m], middle: [0, 0.5, 0 m], head: [0, 1, 0 m], ahead: [0.5, 0.5, 0 m], "
    "behind: [-0.5, 0.5, 0 m]}\n"
    "members:\n"
    "  strut: {from: foot, to: middle, section: 40 x 4 mm S355H}\n"
    "  other half: {from: middle, to: head, section: 40 x 4 mm S355H}\n"
    "  tie ahead: {from: middle, to: ahead, section: 60 x 10 mm S355H, from_joint: pin along y}\n"
    "  tie behind: {from: middle, to: behind, section: 60 x 10 mm S355H, from_joint: pin along y}\n"
    "supports:\n"
    "  foot: {at: foot, held: x y z ry}\n"
    "  head: {at: head, held: x z}\n"
    "  ahead: {at: ahead, held: y z rx rz}\n"
    "  behind: {at: behind, held: y z rx rz}\n"
    "forces:\n"
    "  press: {at: head, force_y: -12 kN}\n"
    "  push: {at: middle, force_z: 6 kN}\n"
    "  pull ahead: {at: ahead, force_x: 150 kN}\n"
    "  pull behind: {at: behind, force_x: -150 kN}\n";

}  // namespace

TEST_CASE("what others come to hold is asked by the multiple that is looked at, if that is more",
          "[studies]") {
  const parts::Design design = studies_tests::read_case(kTiedStrut);
  const studies::Answer answer = studies::check(design);
  const auto found = std::find_if(
      answer.findings.begin(), answer.findings.end(),
      [](const checks::Finding& f) { return f.part == "strut" && f.check == "combined forces"; });
  REQUIRE(found != answer.findings.end());
  const studies::SetModel model(design, parts::stiffness_sets(design).front());
  const std::vector<parts::DesignCase> cases = parts::design_cases(design);
  const studies::Cell cell(model, cases.front());
  const std::vector<studies::Criterion> all = studies::criteria(cell.assembly());
  const auto combined = std::find_if(all.begin(), all.end(), [&](const studies::Criterion& c) {
    return c.kind == studies::Criterion::Kind::combined &&
           studies::part_judged(c, cell.assembly()) == "strut";
  });
  REQUIRE(combined != all.end());
  const double at_load = studies::asked_in(*combined, cell).value;
  const double at_three = studies::asked_in(*combined, cell, 3.0).value;
  CHECK(at_three > 1.02 * at_load);
  CHECK(found->required == Approx(at_three).epsilon(1e-6));
}

TEST_CASE("checks of a portal are worth what searching every load case gives", "[studies]") {
  for (const unsigned seed : {1u, 2u, 3u, 4u}) {
    compare_with_all_searched(random_portal(seed), 2);
  }
}

TEST_CASE("checks of a link are worth what searching every case in every set gives", "[studies]") {
  for (const unsigned seed : {1u, 2u}) compare_with_all_searched(random_link(seed), 3);
  for (const unsigned seed : {3u, 4u}) compare_with_all_searched(link_on_bushings(seed), 3);
}

}  // namespace screening_test
