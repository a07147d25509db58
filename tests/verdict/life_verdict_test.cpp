// Estimates of life against hand calculations. Own check, no source; categories of EN 1993-1-9:2005
// and IIW (2016), from memory.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace life_verdict_test {
using verdict_tests::judged;

namespace {

/// A level link on its bracket, pulled and pushed along by 15 kN, the bracket's bolt 250 mm down.
std::string link_case(const std::string& duty, const std::string& plates = "2 of 6 mm S355",
                      const std::string& side_force = "0 %") {
  return fmt::format(
      "title: link and bracket\n"
      "lateral_link:\n"
      "  bolt_to_bolt: 900 mm\n"
      "  rise: 0 mm\n"
      "  tube: 50 x 3 mm S355H\n"
      "  ends: weld-on pin\n"
      "bracket:\n"
      "  drop: 250 mm\n"
      "  plates: {}\n"
      "  side_force: {}\n"
      "  depth_at_rail: 100 mm\n"
      "  depth_at_bolt: 60 mm\n"
      "  weld: 6 mm fillet, both sides of each plate\n"
      "  rail: boxed, 150 x 150 x 16 mm\n"
      "  welded_to: bottom\n"
      "  rail_stiffness: 2000 kN m/rad\n"
      "forces:\n"
      "  pull: {{at: axle bolt, force_y: -15 kN, load_case: pulled}}\n"
      "  push: {{at: axle bolt, force_y: 15 kN, load_case: pushed}}\n"
      "duty:\n"
      "  - {{{}}}\n",
      plates, side_force, duty);
}

studies::LifeAtPlace place(const studies::Answer& answer, const std::string& part,
                           const std::string& where) {
  REQUIRE(answer.life.has_value());
  for (const studies::LifeAtPlace& at : answer.life->places) {
    if (at.part == part && at.where == where) return at;
  }
  FAIL("no place " << part << ", " << where);
  return {};
}

/// The largest ranges that its lines show, direct and shear.  [Pa]
double range_shown(const studies::LifeAtPlace& at, const std::string& kind) {
  for (const checks::WorkedLine& line : at.lines) {
    if (line.symbols.find(kind + " stress: largest range") != std::string::npos) {
      return line.values.front().si;
    }
  }
  return 0.0;
}

}  // namespace

TEST_CASE("a tube's welded ends last as long as its range and category say", "[verdict][life]") {
  const studies::Answer answer =
      judged(link_case("from: at rest, to: pulled, per_1000_km: 100, sizes: all full"));
  // 1e4 cycles in 100 000 km, each all of it.
  const double range = 15.0e3 / hand::tube(0.050, 0.003).area;
  const auto distance = [](double category, double stress) {
    return 1.0e8 * 2.0e6 * std::pow(category * 1.0e6 / stress, 3) / 1.0e4;
  };
  CHECK(place(answer, "lateral_link", "axle end, toe").distance ==
        Approx(distance(40.0, range)).epsilon(0.02));
  CHECK(place(answer, "lateral_link", "axle end, root").distance ==
        Approx(distance(36.0, std::sqrt(2.0) * range)).epsilon(0.02));
  CHECK(answer.life->places.front().distance <= answer.life->places.back().distance);
  CHECK(answer.life->left_out.empty());
}

TEST_CASE("the toe and the root of a bracket's weld see the whole range both ways",
          "[verdict][life]") {
  const studies::Answer answer =
      judged(link_case("from: pulled, to: pushed, per_1000_km: 10000, sizes: straight line"));
  // 15 kN at 250 mm on two plates of 6 x 100 mm: 187.5 MPa each way. Fillets of 6 mm: 132.6 and
  // 8.8 MPa on the throat, across the weld and along it.
  const double modulus = 2.0 * 0.006 * 0.100 * 0.100 / 6.0;
  CHECK(range_shown(place(answer, "bracket", "plates at the rail, toe"), "direct") ==
        Approx(2.0 * 15.0e3 * 0.250 / modulus).epsilon(0.02));
  const studies::LifeAtPlace root = place(answer, "bracket", "root weld, root");
  CHECK(std::hypot(range_shown(root, "direct"), range_shown(root, "shear")) ==
        Approx(2.0 * 132.9e6).epsilon(0.02));
  CHECK(range_shown(root, "shear") == Approx(2.0 * 8.8e6).epsilon(0.05));
}

TEST_CASE("the side force on a bracket turns around with the link's force", "[verdict][life]") {
  // 5 % of 30 kN at 250 mm across one plate of 12 x 100 mm, on top of 15 kN both ways along it.
  const studies::Answer answer =
      judged(link_case("from: pulled, to: pushed, per_1000_km: 10000, sizes: straight line",
                       "1 of 12 mm S355", "5 %"));
  const double along = 0.012 * 0.100 * 0.100 / 6.0;
  const double across = 0.100 * 0.012 * 0.012 / 6.0;
  CHECK(range_shown(place(answer, "bracket", "plates at the rail, toe"), "direct") ==
        Approx(2.0 * 15.0e3 * 0.250 * (1.0 / along + 0.05 / across)).epsilon(0.02));
}

TEST_CASE("a group's bolts and holes see what their worst bolt does", "[verdict][life]") {
  // Four bolts 80 mm apart both ways about the bar's end: 8 kN along y is 2 kN each; 1 kN along
  // them at 0.4 m pulls by 1 / 4 + 0.4 x 0.04 / (4 x 0.04^2) = 2.75 kN. Both turn around.
  const studies::Answer answer = judged(
      "title: bolted bar\n"
      "points: {start: [0, 0, 0 m], end: [0, 0.4, 0 m], a: [0, -40, -40 mm], b: [0, 40, -40 mm],\n"
      "  c: [0, -40, 40 mm], d: [0, 40, 40 mm]}\n"
      "members: {bar: {from: start, to: end, section: 60 mm round bar A36}}\n"
      "supports: {start: {at: start}}\n"
      "bolt_groups: {splice: {holds: bar, end: start, at: [a, b, c, d], along: x,\n"
      "  bolt: \"M12 class 10.9, single shear, threads out of the shear plane\",\n"
      "  plates: 1 of 6 mm S355, edge: 30 mm}}\n"
      "forces: {out: {at: end, force_y: 8 kN, load_case: there},\n"
      "  side: {at: end, force_x: 1 kN, load_case: there},\n"
      "  in: {at: end, force_y: -8 kN, load_case: back},\n"
      "  aside: {at: end, force_x: -1 kN, load_case: back}}\n"
      "duty:\n  - {from: there, to: back, per_1000_km: 10000, sizes: straight line}\n");
  const double at = hand::kPi / 4.0 * std::pow(0.012 - 0.938194 * 0.00175, 2);
  CHECK(range_shown(place(answer, "bar", "splice, thread"), "direct") ==
        Approx(2.0 * 2.75e3 / at).epsilon(5e-3));
  CHECK(range_shown(place(answer, "bar", "splice, shank"), "direct") ==
        Approx(2.0 * 2.0e3 / (hand::kPi / 4.0 * 0.012 * 0.012)).epsilon(5e-3));
  CHECK(range_shown(place(answer, "bar", "splice, hole"), "direct") ==
        Approx(2.0 * 2.0e3 / (0.006 * (0.060 - 0.014))).epsilon(5e-3));
}

// IIW Recommendations (2016), ch. 4, from memory: 0.5 for spectra.
TEST_CASE("ranges of mixed size may use up half of Miner's sum, of one size all of it",
          "[verdict][life]") {
  const auto first = [](const std::string& sizes) {
    return judged(link_case("from: pulled, to: pushed, per_1000_km: 1000, sizes: " + sizes))
        .life->places.front();
  };
  const studies::LifeAtPlace mixed = first("straight line");
  CHECK(mixed.damage_limit == 0.5);
  double damage = 0.0;
  for (const checks::WorkedLine& line : mixed.lines) {
    if (line.symbols.find("= damage") != std::string::npos) damage += line.values.back().si;
  }
  CHECK(mixed.distance == Approx(0.5 * 1.0e8 / damage));
  CHECK(first("all full").damage_limit == 1.0);
}

TEST_CASE("the duty alone says how far: twice the cycles, half the distance", "[verdict][life]") {
  const auto distance = [](int cycles) {
    return judged(link_case(fmt::format(
                      "from: pulled, to: pushed, per_1000_km: {}, sizes: all full", cycles)))
        .life->places.front()
        .distance;
  };
  CHECK(distance(200) == Approx(0.5 * distance(100)));
}

TEST_CASE("no verdict rests on the life, and a block whose case is not solved is named",
          "[verdict][life]") {
  const studies::Answer answer =
      judged(link_case("from: pulled, to: pushed, per_1000_km: 1000000, sizes: all full"));
  CHECK(answer.life->band().low < 1.0e6);
  for (const checks::Finding& f : answer.findings) CHECK(f.check != "fatigue");
  CHECK(std::none_of(answer.not_offered.begin(), answer.not_offered.end(),
                     [](const std::string& kind) { return kind == "fatigue"; }));
}

}  // namespace life_verdict_test
