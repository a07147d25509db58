#include "studies/pick.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "studies/run.hpp"
#include "tests/studies/read_case.hpp"

namespace pick_test {
using Catch::Matchers::Contains;
using studies::Verdict;
using studies_tests::read_case;

namespace {

constexpr double kPi = 3.14159265358979323846;
constexpr double kKsi = 6.894757293168361e6;
constexpr double kYoung = 200.0e9;
constexpr double kLength = 40.0 * 0.0254;

/// A rod on ball joints under `pull` along its axis; negative presses.
std::string rod(double pull, const std::string& section = "1 x 0.120 in DOM") {
  return fmt::format(
      "title: rod\n"
      "points:\n"
      "  foot: [0, 0, 0 in]\n"
      "  head: [0, 40, 0 in]\n"
      "members:\n"
      "  rod:\n"
      "    from: foot\n"
      "    to: head\n"
      "    section: {}\n"
      "    from_joint: ball joint\n"
      "    to_joint: ball joint\n"
      "supports:\n"
      "  foot:\n"
      "    at: foot\n"
      "  head:\n"
      "    at: head\n"
      "    held: x z rx ry rz\n"
      "forces:\n"
      "  load:\n"
      "    at: head\n"
      "    force_y: {} N\n",
      section, pull);
}

/// Outside and inside diameter, and the yield strength beside a weld: DOM 1020 35 ksi (ASTM A513,
/// normalized, read), 1018 bar 32 ksi (hot rolled, Shigley table A-20, read).
struct Round {
  double outside;
  double inside;
  double yield;
  [[nodiscard]] double area() const { return kPi / 4.0 * (outside * outside - inside * inside); }
  [[nodiscard]] double radius() const { return 0.25 * std::hypot(outside, inside); }
};

Round round_of(const studies::Candidate& candidate) {
  if (const auto* bar = std::get_if<sections::RoundBar>(&candidate.item.shape)) {
    return {bar->diameter, 0.0, 32.0 * kKsi};
  }
  const auto& tube = std::get<sections::RoundTube>(candidate.item.shape);
  return {tube.outside, tube.outside - 2.0 * tube.wall, 35.0 * kKsi};
}

/// Utilization of a pulled rod: 1.5 N / (A Fy).
double pulled(const Round& round, double pull) {
  return 1.5 * pull / (round.area() * round.yield);
}

/// Utilization of a pressed rod: 3 P / Pn, AISC 360-22 E3, from memory.
double pressed(const Round& round, double press) {
  const double slenderness = kLength / round.radius();
  const double elastic = kPi * kPi * kYoung / (slenderness * slenderness);
  const double nominal = slenderness <= 4.71 * std::sqrt(kYoung / round.yield)
                             ? std::pow(0.658, round.yield / elastic) * round.yield
                             : 0.877 * elastic;
  return 3.0 * press / (nominal * round.area());
}

/// Every candidate against its utilization by hand, and the choice against the list.
template <class Utilization>
void check_choice(const studies::Picked& picked, const Utilization& by_hand) {
  REQUIRE(picked.tried.size() > 100);
  REQUIRE(picked.lightest.has_value());
  REQUIRE(picked.next_down.has_value());
  double lightest = 1.0e9;
  for (const studies::Candidate& c : picked.tried) {
    const Round round = round_of(c);
    INFO(c.item.label << ", " << c.steel << ": " << c.stopped_by);
    CHECK(c.mass_per_length == Approx(7850.0 * round.area()).epsilon(1e-9));
    CHECK((c.verdict == Verdict::within) == (by_hand(round) <= 1.0));
    if (c.verdict == Verdict::not_decided) {  // buckled before its load was reached
      CHECK(std::isnan(c.utilization));
    } else {
      CHECK(c.utilization == Approx(by_hand(round)).epsilon(2e-3));
    }
    if (by_hand(round) <= 1.0) lightest = std::min(lightest, 7850.0 * round.area());
  }
  CHECK(picked.lightest->mass_per_length == Approx(lightest).epsilon(1e-9));
  CHECK(picked.next_down->mass_per_length <= picked.lightest->mass_per_length);
  CHECK(picked.next_down->verdict != Verdict::within);
  REQUIRE(picked.next_up.has_value());
  CHECK(picked.next_up->mass_per_length >= picked.lightest->mass_per_length);
  CHECK(picked.next_up->verdict == Verdict::within);
}

/// The lightest that passes of one outside, by going through what was tried.
const studies::Candidate* lightest_of(const studies::Picked& picked, double outside) {
  for (const studies::Candidate& c : picked.tried) {
    if (c.verdict == Verdict::within && round_of(c).outside == Approx(outside)) return &c;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("pick finds the lightest rod that carries a pull, tried by mass", "[studies]") {
  const double pull = 60.0e3;
  const studies::Picked picked = studies::pick(read_case(rod(pull)), "rod");
  check_choice(picked, [&](const Round& round) { return pulled(round, pull); });
  // One strength and no buckling: among tubes more mass is always less utilization.
  double last = 1.0e9;
  double last_mass = 0.0;
  for (const studies::Candidate& c : picked.tried) {
    CHECK(c.mass_per_length >= last_mass);
    last_mass = c.mass_per_length;
    if (!std::holds_alternative<sections::RoundTube>(c.item.shape)) continue;
    CHECK(c.utilization <= last * (1.0 + 1e-6));
    last = c.utilization;
  }
}

TEST_CASE("pick finds the lightest strut, wide and thin rather than stout", "[studies]") {
  const double press = 30.0e3;
  const studies::Picked picked = studies::pick(read_case(rod(-press)), "rod");
  check_choice(picked, [&](const Round& round) { return pressed(round, press); });
  // The lightest of all that pass is no bar: a bar of its weight buckles.
  CHECK(std::holds_alternative<sections::RoundTube>(picked.lightest->item.shape));
}

TEST_CASE("pick answers which wall for the outside that is there", "[studies]") {
  const double outside = 1.75 * 0.0254;
  const studies::Picked picked =
      studies::pick(read_case(rod(-60.0e3, "1-3/4 x 0.065 in DOM")), "rod");
  const studies::Candidate* wall = lightest_of(picked, outside);
  REQUIRE(wall != nullptr);
  REQUIRE(picked.same_outside.has_value());
  CHECK(picked.same_outside->item.label == wall->item.label);
  CHECK(picked.same_outside->mass_per_length >= picked.lightest->mass_per_length);
}

TEST_CASE("pick says which parts there are, and that some have no list to pick from", "[studies]") {
  const parts::Design design = read_case(rod(1000.0));
  CHECK_THROWS_WITH(studies::pick(design, "lateral_link"),
                    Contains("there is no such part") && Contains("there is rod"));
  CHECK_THROWS_AS(studies::pick(design, "brace"), base::InputError);
  const parts::Design angle = read_case(rod(1000.0, "2 x 2 x 1/4 in angle A36"));
  CHECK_THROWS_WITH(studies::pick(angle, "rod"), Contains("no list holds sizes like it"));
}

// Its name has a dot, as that of an arm's tube; but its findings are about a part of its own.
TEST_CASE("a steering link is judged by its own checks alone", "[studies][pick]") {
  const std::string text =
      "title: parked\n"
      "vehicle: {axle_weight: 16 kN, tire: 830 mm, hub_height: 400 mm, track: 1.6 m,\n"
      "  kingpin_offset: 60 mm}\n"
      "points: {a: [0.1, 0.45, 0.4 m], b: [0.1, -0.45, 0.4 m], c: [0, 0.4, 0.3 m],\n"
      "  d: [0, 0.4, 0.55 m], e: [-0.9, 0.4, 0.45 m], f: [0.15, 0.44, 0.4 m],\n"
      "  g: [0.15, -0.74, 0.4 m], h: [-0.15, 0.74, 0.4 m]}\n"
      "lateral_link: {frame_bolt: a, axle_bolt: b, tube: 100 x 12 mm S355H,\n"
      "  ends: tapped rod end, static_rating: 5000 kN}\n"
      "arm: {axle_lower: c, axle_upper: d, frame: e, joins_at: 0.4 m, lower: 100 x 12 mm S355H,\n"
      "  upper: 100 x 12 mm S355H, axle_joint: ball joint, frame_joint: ball joint}\n"
      "axle: {coil_spacing: 0.9 m, coil_rate: 100 N/mm}\n"
      "steering: {pitman_ball: f, knuckle_ball: g, tie_rod_ball: h, static_rating: 5000 kN,\n"
      "  drag_link: 70 x 10 mm S355H, tie_rod: 20 x 2 mm S355H}\n"
      "load_cases: [{name: parked, at: left kingpin, moment: [0, 0, 900 N m]}]\n";
  const std::vector<checks::Finding> findings =
      studies::run(read_case(text), "thin", {}, "steering.tie_rod").answer.findings;
  const auto about = [&](const std::string& part, const std::string& check) {
    return std::count_if(findings.begin(), findings.end(), [&](const checks::Finding& f) {
      return f.part == part && f.check == check && f.state == checks::State::over;
    });
  };
  CHECK(about("tie_rod", "column") == 1);
  for (const checks::Finding& f : findings) CHECK(studies::belongs(f.part, "steering.tie_rod"));
  CHECK_FALSE(studies::belongs("drag_link", "steering.tie_rod"));
  CHECK(studies::belongs("pitman_arm", "steering.pitman_arm"));
  CHECK(studies::belongs("arm, left", "arm.lower"));
}

}  // namespace pick_test
