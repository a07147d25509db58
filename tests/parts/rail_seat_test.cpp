// Which part of a bracket's root weld counts, and what it brings to the rail. Geometry and statics,
// no source; lengths backed: AISC 360-16 K5 and EN 1993-1-8, 4.10, from memory.
#include "parts/rail_seat.hpp"

#include <algorithm>

#include <catch2/catch.hpp>

#include "tests/parts/build_design.hpp"

namespace rail_seat_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

const parts::BracketPlace kPlace{{0.0, 0.0, 1.0}, -1.0};

/// Plates of 6 mm, 350 MPa, 100 mm deep, on a box of 100 x 150 x 4 mm of A36.
parts::Bracket bracket() {
  return parts_test::hand_check_bracket();
}

double total_length(const checks::WeldGroup& group) {
  double sum = 0.0;
  for (const checks::WeldLine& line : group.lines) sum += line.length();
  return sum;
}

}  // namespace

TEST_CASE("of a line across a box its ends at the corners count", "[parts][rail_seat]") {
  const parts::BackedWeld weld = parts::backed_root_weld(bracket(), kPlace);
  // Four lines; 10 / 25 x (248.2 x 4) / (350 x 6) of 100 mm each.
  CHECK(weld.group.lines.size() == 8);
  CHECK_THAT(total_length(weld.group), WithinRel(4.0 * 0.018911, 1e-4));
  for (const checks::WeldLine& line : weld.group.lines) {
    CHECK_THAT(std::max(std::abs(line.from.y()), std::abs(line.to.y())), WithinRel(0.05, 1e-9));
  }
  CHECK_THAT(weld.words, Contains("from each end"));
  CHECK(weld.why_not.empty());
}

TEST_CASE("a line up the side of a box counts whole, one on an open rail from its web",
          "[parts][rail_seat]") {
  parts::Bracket b = bracket();
  b.welded_to.inner_side = true;
  CHECK_THAT(total_length(parts::backed_root_weld(b, kPlace).group),
             WithinRel(4.0 * (0.018911 + 0.075), 1e-4));
  b.rail.boxed = false;
  // 4 + 2.5 x (248.2 x 4) / (350 x 6) x 4 mm, on the inner side: y under 0.
  const parts::BackedWeld open = parts::backed_root_weld(b, kPlace);
  CHECK_THAT(total_length(open.group), WithinRel(4.0 * (0.0087277 + 0.075), 1e-4));
  for (const checks::WeldLine& line : open.group.lines) CHECK(line.from.y() < 0.0);
  b.welded_to.inner_side = false;
  for (const checks::WeldLine& line : parts::backed_root_weld(b, kPlace).group.lines) {
    CHECK(line.to.y() > 0.0);  // the web is taken outside
  }
}

TEST_CASE("a weld that no method covers is left whole, and says so", "[parts][rail_seat]") {
  parts::Bracket b = bracket();
  b.rail.wall = 0.0025;  // 40 walls wide
  const parts::BackedWeld weld = parts::backed_root_weld(b, kPlace);
  CHECK(total_length(weld.group) == Approx(0.4));
  CHECK_THAT(weld.why_not, Contains("outside the method"));
}

TEST_CASE("a wrench at the root is moved to the middle of its seat", "[parts][rail_seat]") {
  parts::Bracket b = bracket();
  const checks::Wrench push{.force = {1.0, 2.0, 3.0}, .moment = {0.0, 0.0, 0.0}, .at = {0, 0, 0.8}};
  const checks::SeatLoad bottom = parts::seat_load(parts::root_seat(b, kPlace), push);
  CHECK(bottom.normal == Approx(3.0));
  CHECK(bottom.across == Approx(2.0));
  CHECK(bottom.along == Approx(1.0));
  CHECK(bottom.rolling == Approx(0.2 * 2.0));
  CHECK(bottom.pitching == Approx(-0.2 * 1.0));
  b.welded_to = {.bottom = false, .inner_side = true, .outer_side = false};
  const parts::RootSeat side = parts::root_seat(b, kPlace);
  CHECK(side.on_side);
  CHECK(side.seat.face == Approx(0.150));
  CHECK(side.middle_g.y() == Approx(-0.050));
  CHECK(side.middle_g.z() == Approx(1.0375));
  const checks::SeatLoad load = parts::seat_load(side, push);
  CHECK(load.normal == Approx(2.0));
  CHECK(load.across == Approx(3.0));
  CHECK(load.rolling == Approx(0.2375 * 2.0 + 0.050 * 3.0));
}

TEST_CASE("a root weld warns of edges, bends and the flange it crosses", "[parts][rail_seat]") {
  parts::Bracket b = bracket();
  CHECK(parts::root_weld_warnings(b).size() == 3);
  b.depth_at_rail = 0.080;  // 10 mm from the edges, under 5 x 4 mm
  CHECK(parts::root_weld_warnings(b).size() == 2);
  b.depth_at_rail = 0.058;
  CHECK(parts::root_weld_warnings(b).size() == 1);
  b.welded_to = {.bottom = false, .inner_side = true, .outer_side = false};
  CHECK(parts::root_weld_warnings(b).empty());
}

}  // namespace rail_seat_test
