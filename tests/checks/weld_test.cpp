#include "checks/weld.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace weld_test {
using Catch::Matchers::WithinRel;
using checks::State;
using Eigen::Vector3d;

namespace {

constexpr double kE70 = 70.0 * base::kKsi;

/// Two lines of 100 mm, 60 mm apart, pulled along themselves.
checks::WeldInput two_lines(double force) {
  checks::WeldInput in;
  in.group.lines = {{{0, 0, 0}, {0.1, 0, 0}, 0.006}, {{0, 0.06, 0}, {0.1, 0.06, 0}, 0.006}};
  in.group.filler_tensile = kE70;
  in.wrench = {{force, 0, 0}, Vector3d::Zero(), {0, 0.03, 0}};
  in.required = 2.0;
  return in;
}

bool has_note(const checks::Finding& f, const std::string& words) {
  for (const std::string& note : f.notes) {
    if (note.find(words) != std::string::npos) return true;
  }
  return false;
}

}  // namespace

// Hand evaluation of AISC J2.4: leg 6 mm, 100 mm long, 482.6 MPa: Rn 122.9 kN; two lines here.
TEST_CASE("the weld verdict turns at the required factor", "[checks][weld]") {
  const double limit = 2.0 * 122.9e3 / 2.0;
  CHECK(checks::weld(two_lines(0.98 * limit)).state == State::within);
  CHECK(checks::weld(two_lines(1.02 * limit)).state == State::over);
  CHECK_THAT(checks::weld(two_lines(limit)).safety_factor, WithinRel(2.0, 1e-3));
}

TEST_CASE("what a weld uses is told without its words too", "[checks][weld]") {
  for (const double part : {0.3, 0.98, 1.7}) {
    const checks::WeldInput in = two_lines(part * 1.0e3);
    const checks::Finding told = checks::weld(in);
    REQUIRE(told.state != State::undecided);
    CHECK(checks::weld_use(in) == told.demand / told.capacity);
  }
}

TEST_CASE("the worked lines of a weld group can be redone", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  in.wrench = {{3e3, -7e3, 2e3}, {50, 20, -90}, {0.02, 0.01, 0.15}};
  const checks::Finding straight = checks::weld(in);
  // area, three moments, three stresses, resultant, capacity, quotient
  CHECK(worked::equations_that_hold(straight) == 10);
  in.group.lines[1].leg = 0.008;
  in.group.lines.push_back({{0, 0, 0}, {0.01, 0.05, 0.02}, 0.006});
  const checks::Finding skew = checks::weld(in);
  CHECK(worked::equations_that_hold(skew) == 10);
  in.group.lines = {in.group.lines.front()};
  in.wrench = {{3e3, -7e3, 2e3}, {0, 20, -90}, {0.02, 0, 0}};
  CHECK(worked::equations_that_hold(checks::weld(in)) == 10);
  in.group.lines = checks::ring_weld(Vector3d::Zero(), {1, 0, 0}, 0.019, 0.005);
  CHECK(worked::equations_that_hold(checks::weld(in)) == 10);
}

TEST_CASE("a single line that is turned about itself is undecided, and why is said",
          "[checks][weld]") {
  checks::WeldInput in = two_lines(0.0);
  in.group.lines.pop_back();
  in.wrench = {{1e3, 0, 0}, {25, 0, 0}, Vector3d::Zero()};
  const checks::Finding f = checks::weld(in);
  CHECK(f.state == State::undecided);
  CHECK_THAT(f.reason, Catch::Contains("second line"));
  CHECK(std::isnan(f.utilization()));
}

TEST_CASE("a multiple found by solving again decides the weld", "[checks][weld]") {
  checks::WeldInput in = two_lines(50e3);
  CHECK(checks::weld(in).state == State::within);
  in.safety_factor = 1.9;
  CHECK(checks::weld(in).state == State::over);
  CHECK(has_note(checks::weld(in), "solved again"));
}

// AISC 360-05 Table J2.4 (read; inclusive upper bounds), thinner part joined. Its metric legs of 3
// and 6 mm are a little smaller than 1/8 and 1/4 in and pass as well.
TEST_CASE("the minimum leg follows the thinner part", "[checks][weld]") {
  const double inch = base::kInch;
  for (const auto& [part, leg] : {std::pair{0.25, 0.125},
                                  {0.26, 0.1875},
                                  {0.5, 0.1875},
                                  {0.51, 0.25},
                                  {0.75, 0.25},
                                  {0.76, 0.3125}}) {
    checks::WeldInput in = two_lines(10e3);
    in.thinner_part = part * inch;
    for (checks::WeldLine& line : in.group.lines) line.leg = leg * inch;
    CHECK_FALSE(has_note(checks::weld(in), "under the minimum"));
    for (checks::WeldLine& line : in.group.lines) line.leg = (leg - 0.02) * inch;
    CHECK(has_note(checks::weld(in), "under the minimum"));
  }
}

TEST_CASE("a leg over twice the thinner part is warned of", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  in.thinner_part = 0.1875 * base::kInch;
  for (checks::WeldLine& line : in.group.lines) line.leg = 0.375 * base::kInch;
  CHECK_FALSE(has_note(checks::weld(in), "over twice the thinner part"));
  for (checks::WeldLine& line : in.group.lines) line.leg = 0.5 * base::kInch;
  CHECK(has_note(checks::weld(in), "over twice the thinner part"));
}

// AISC 360 J2.2b (read): up to the thickness under 6 mm, 1/16 in less from there on.
TEST_CASE("the maximum leg follows the edge that is welded along", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  in.edge = 0.25 * base::kInch;
  for (checks::WeldLine& line : in.group.lines) line.leg = 3.0 / 16.0 * base::kInch;
  CHECK_FALSE(has_note(checks::weld(in), "over the maximum"));
  for (checks::WeldLine& line : in.group.lines) line.leg = 0.25 * base::kInch;
  CHECK(has_note(checks::weld(in), "over the maximum of 0.1875 in"));
  CHECK(checks::maximum_leg(0.004) == 0.004);
}

// AISC 360-22 J2.4 with J4.2, from memory: 0.60 Fu on the face; by hand.
TEST_CASE("the fusion face decides where the base metal is soft", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  CHECK(checks::weld(in).capacity == Approx(0.60 * kE70));
  in.base_tensile = 400e6;
  CHECK(checks::weld(in).capacity == Approx(0.60 * kE70));
  in.base_tensile = 310e6;
  const checks::Finding soft = checks::weld(in);
  CHECK(soft.capacity == Approx(0.60 * 310e6 * std::sqrt(2.0)));
  CHECK(worked::equations_that_hold(soft) == 11);
}

// AISC 360-22 J2.1a, from memory: the throat as given; minimum of it by Table J2.3 (read, 360-05).
TEST_CASE("a groove counts with its throat, its fusion face too", "[checks][weld]") {
  checks::WeldInput fillets = two_lines(10e3);
  fillets.wrench = {{3e3, -7e3, 2e3}, {50, 20, -90}, {0.02, 0.01, 0.15}};
  checks::WeldInput grooves = fillets;
  checks::make_grooves(grooves.group.lines, 0.006 / std::sqrt(2.0));
  const checks::Finding groove = checks::weld(grooves);
  CHECK(groove.demand == Approx(checks::weld(fillets).demand));
  CHECK(worked::equations_that_hold(groove) == 10);
  grooves.base_tensile = 400e6;
  CHECK(checks::weld(grooves).capacity == Approx(0.60 * 400e6));
  grooves.thinner_part = 0.006;
  CHECK_FALSE(has_note(checks::weld(grooves), "throat is under the minimum"));
  checks::make_grooves(grooves.group.lines, 0.0029);
  CHECK(has_note(checks::weld(grooves), "throat is under the minimum"));
}

TEST_CASE("a longer or larger weld is never worse", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  in.wrench = {{3e3, -7e3, 2e3}, {50, 20, -90}, {0.05, 0.03, 0.15}};
  double last = checks::weld(in).utilization();
  for (int i = 1; i <= 8; ++i) {
    for (checks::WeldLine& line : in.group.lines) {
      if (i % 2 == 0) {
        line.leg *= 1.1;
      } else {
        line.from.x() -= 0.004;
        line.to.x() += 0.004;
      }
    }
    const double now = checks::weld(in).utilization();
    CHECK(now < last);
    last = now;
  }
}

// AISC 360 J2.2b (read): a fillet shorter than four legs.
TEST_CASE("a weld shorter than four legs is noted", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  CHECK_FALSE(has_note(checks::weld(in), "four legs"));
  in.group.lines[0].to.x() = 0.023;
  CHECK(has_note(checks::weld(in), "four legs"));
}

TEST_CASE("a weld's strength follows the direction of its load where that is asked for",
          "[checks][weld]") {
  // Across the lines kds is 1.5, along them 1: AISC J2.4, from memory.
  checks::WeldInput in = two_lines(0.0);
  in.wrench.force = {0, 0, 50e3};
  in.wrench.at = {0.05, 0.03, 0};
  const double plain = checks::weld(in).safety_factor;
  in.directional = true;
  CHECK_THAT(checks::weld(in).safety_factor, WithinRel(1.5 * plain, 1e-9));
  CHECK(worked::equations_that_hold(checks::weld(in)) == 10);
  CHECK(has_note(checks::weld(in), "deform alike"));
  in.wrench.force = {50e3, 0, 0};
  CHECK_THAT(checks::weld(in).safety_factor, WithinRel(plain, 1e-9));
  // Never of grooves, nor where a hollow section ends.
  in.wrench.force = {0, 0, 50e3};
  in.skewed = true;
  CHECK_THAT(checks::weld(in).safety_factor, WithinRel(plain, 1e-9));
  in.skewed = false;
  in.group.lines = two_lines(0.0).group.lines;
  checks::make_grooves(in.group.lines, 0.006 / std::sqrt(2.0));
  CHECK_THAT(checks::weld(in).safety_factor, WithinRel(plain, 1e-9));
  // The fusion face gains nothing: 0.60 x 300 MPa x sqrt(2) = 254.6 MPa under 1.5 x 289.6.
  in = two_lines(0.0);
  in.wrench.force = {0, 0, 50e3};
  in.wrench.at = {0.05, 0.03, 0};
  in.directional = true;
  in.base_tensile = 300e6;
  CHECK_THAT(checks::weld(in).safety_factor * 50e3 / (2.0 * 0.1 * 0.006 / std::sqrt(2.0)),
             WithinRel(0.60 * 300e6 * std::sqrt(2.0), 1e-9));
}

// AISC 360-22 J2.4(b), from memory: kds over 1 for lines that deform alike alone.
TEST_CASE("lines in two directions gain nothing by direction", "[checks][weld]") {
  checks::WeldInput in = two_lines(0.0);
  in.group.lines.push_back({{0, 0, 0}, {0, 0.06, 0}, 0.006});
  in.wrench.force = {0, 0, 50e3};
  const double plain = checks::weld(in).safety_factor;
  in.directional = true;
  CHECK_THAT(checks::weld(in).safety_factor, WithinRel(plain, 1e-12));
  CHECK(has_note(checks::weld(in), "lines run in two directions"));
  in.en = true;
  in.base_tensile = 470e6;
  CHECK(has_note(checks::weld(in), "asked for and not counted: simplified method"));
  in.directional = false;
  CHECK_FALSE(has_note(checks::weld(in), "not counted: simplified"));
}

TEST_CASE("the kds that is shown is that of the place shown", "[checks][weld]") {
  // Across the lines, where the base metal gives first: 0.60 x 482.6 x 1.5 beside it.
  checks::WeldInput in = two_lines(0.0);
  in.wrench = {{0, 0, 50e3}, {0, 0, 20}, {0.05, 0.03, 0}};
  in.directional = true;
  in.base_tensile = 300e6;
  const checks::Finding f = checks::weld(in);
  CHECK_THAT(f.capacity, WithinRel(0.60 * 300e6 * std::sqrt(2.0), 1e-9));
  for (const checks::WorkedLine& line : f.lines) {
    if (line.symbols.rfind("weld metal", 0) == 0) CHECK(line.values.back().si > f.capacity);
  }
}

// AISC 360-22 J4.2, from memory: 0.60 Fu t of the part; by hand.
TEST_CASE("a weld larger than its part is worth no more than the part", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  for (checks::WeldLine& line : in.group.lines) line.leg = 0.016;
  in.base_tensile = 470e6;
  const double free = checks::weld(in).safety_factor;
  in.part = 0.005;
  in.part_tensile = 470e6;
  const checks::Finding capped = checks::weld(in);
  // 0.60 x 470 MPa x 5 mm = 1410 N/mm on each of two lines of 100 mm.
  const double throat = 0.016 / std::sqrt(2.0);
  CHECK_THAT(capped.capacity * throat, WithinRel(1410e3, 1e-9));
  CHECK(capped.safety_factor < 0.5 * free);
  CHECK(worked::equations_that_hold(capped) == 12);
  in.part_lines = 2;
  CHECK_THAT(checks::weld(in).capacity * throat, WithinRel(705e3, 1e-9));
  CHECK(worked::equations_that_hold(checks::weld(in)) == 12);
  in.part = 0.040;
  CHECK_THAT(checks::weld(in).safety_factor, WithinRel(free, 1e-12));
}

TEST_CASE("a skewed fillet's leg has its minimum too", "[checks][weld]") {
  checks::WeldInput in = two_lines(10e3);
  in.thinner_part = 0.005;
  in.skewed = true;
  in.skewed_leg = 0.003;
  CHECK_FALSE(has_note(checks::weld(in), "under the minimum"));
  in.skewed_leg = 0.001;
  CHECK(has_note(checks::weld(in), "under the minimum"));
}

TEST_CASE("by direction the worst place may lie between the ends of a line", "[checks][weld]") {
  // Turned and pushed at once, all of it in the plane of the lines: never better than at the places
  // looked at one by one, never worse than without kds.
  checks::WeldInput in = two_lines(0.0);
  in.wrench = {{30e3, 10e3, 0}, {0, 0, 900}, {0.05, 0.03, 0}};
  const double plain = checks::weld(in).safety_factor;
  in.directional = true;
  const double by_direction = checks::weld(in).safety_factor;
  CHECK(by_direction > plain);
  CHECK(by_direction < 1.5 * plain);
}

// EN 1993-1-8 4.5.3.3 and table 4.1, from memory.
TEST_CASE("by EN a weld hangs on the steel beside it, 4 mm thick or more", "[checks][weld]") {
  checks::WeldInput in = two_lines(50e3);
  in.en = true;
  CHECK_THAT(checks::weld(in).reason, Catch::Contains("not known here"));
  in.base_tensile = 470e6;
  in.thinner_part = 0.0039;
  CHECK_THAT(checks::weld(in).reason, Catch::Contains("under 4 mm"));
  in.thinner_part = 0.004;
  const checks::Finding f = checks::weld(in);
  CHECK_THAT(f.capacity, WithinRel(470e6 / (std::sqrt(3.0) * 0.90), 1e-12));
  CHECK_THAT(f.source, Catch::Contains("EN 1993-1-8"));
  CHECK(worked::equations_that_hold(f) == 10);
  in.required = 1.25;
  const double limit = f.capacity * 2.0 * 0.1 * 0.006 / std::sqrt(2.0) / 1.25;
  in.wrench.force.x() = 0.98 * limit;
  CHECK(checks::weld(in).state == State::within);
  in.wrench.force.x() = 1.02 * limit;
  CHECK(checks::weld(in).state == State::over);
}

}  // namespace weld_test
