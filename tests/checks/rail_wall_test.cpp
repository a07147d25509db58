// The wall of a rail under a bracket. No worked example is in our sources: own check, no
// source, by hand with the formulas of AISC 360-10 chapter K, 360-22 J10 and EN 1993-1-8
// tables 7.13 and 7.14, all from memory; yield lines of open rails are our own derivation, no
// source.
#include "checks/rail_wall.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include <catch2/catch.hpp>

#include "tests/checks/worked_arithmetic.hpp"

namespace rail_wall_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;
using checks::RailSeat;
using checks::RailWallInput;
using checks::SeatKind;
using checks::State;

namespace {

/// One plate of 8 mm, 60 mm wide, on a face of 120 x 4 mm.
RailSeat flat() {
  return {.face = 0.120,
          .side = 0.100,
          .wall = 0.004,
          .line = 0.060,
          .plates = 1,
          .plate = 0.008,
          .plate_yield = 355e6,
          .yield = 350e6,
          .tensile = 450e6,
          .elastic = 200e9};
}

/// Two plates of 8 mm, 50 mm apart, from corner to corner of 75 x 150 x 5 mm.
RailSeat cornered() {
  return {.face = 0.075,
          .side = 0.150,
          .wall = 0.005,
          .line = 0.075,
          .plates = 2,
          .plate = 0.008,
          .gap = 0.050,
          .plate_yield = 250e6,
          .yield = 250e6,
          .tensile = 400e6,
          .elastic = 200e9};
}

RailSeat opened(int walls_welded) {
  RailSeat seat = cornered();
  seat.boxed = false;
  seat.face = 0.070;
  seat.line = 0.070;
  seat.side = 0.160;
  seat.walls_welded = walls_welded;
  seat.up_the_wall = 0.080;
  return seat;
}

double demand(const RailSeat& seat, const checks::SeatLoad& load) {
  return checks::rail_wall({.seat = seat, .load = load}).demand;
}

constexpr double kTight = 1e-4;

}  // namespace

TEST_CASE("a flat face holds a plate by its weakest way to fail", "[checks][rail_wall]") {
  // beta 0.5: uneven plate 28.00 kN, face 25.67 kN, block 33.17 kN.
  CHECK_THAT(1.0 / demand(flat(), {.normal = 1.0}), WithinRel(25.673e3, kTight));
  CHECK_THAT(1.0 / demand(flat(), {.rolling = 1.0}), WithinRel(1231.1, kTight));
  CHECK_THAT(1.0 / demand(flat(), {.pitching = 1.0}), WithinRel(468.69, kTight));
  // 2 x 0.6 Fy t L.
  CHECK_THAT(1.0 / demand(flat(), {.across = 1.0}), WithinRel(100.8e3, kTight));
  CHECK_THAT(demand(flat(), {.normal = 5e3, .along = 10e3, .rolling = 300.0}),
             WithinRel(std::hypot(5.0 / 25.673 + 0.3 / 1.2311, 10.0 / 100.8), kTight));
}

TEST_CASE("a rail's own stress takes from a flat face", "[checks][rail_wall]") {
  RailSeat seat = flat();
  seat.own_stress = 0.5 * seat.yield;  // kn = 1.3 - 0.4 x 0.5 / 0.5
  CHECK_THAT(1.0 / demand(seat, {.rolling = 1.0}), WithinRel(0.9 * 1231.1, kTight));
}

TEST_CASE("on a flat face a frame plate acts alone, as where it is pulled", "[checks][rail_wall]") {
  RailSeat seat = flat();
  seat.frame_plate = 0.006;
  CHECK_THAT(1.0 / demand(seat, {.rolling = 1.0}), WithinRel(2.25 * 1231.1, kTight));
}

TEST_CASE("plates from corner to corner load the walls beside the face", "[checks][rail_wall]") {
  // 91 mm of each wall yield at 113.75 kN, of rolling (5 t) 66 mm at 82.5 kN; 70 mm between the
  // walls. The rail distorts at 9.719 kN m.
  CHECK_THAT(1.0 / demand(cornered(), {.rolling = 1.0}), WithinRel(5775.0, kTight));
  CHECK_THAT(1.0 / demand(cornered(), {.normal = 1.0}), WithinRel(227.5e3, kTight));
  CHECK_THAT(1.0 / demand(cornered(), {.pitching = 1.0}), WithinRel(0.058 * 113.75e3, kTight));
  RailSeat plated = cornered();
  plated.frame_plate = 0.006;  // twice its thickness: 115 mm of each wall, 90 mm of rolling
  CHECK_THAT(1.0 / demand(plated, {.rolling = 1.0}), WithinRel(7875.0, kTight));
  // Each force's own weakest way to fail, added up (EN 1993-1-8, 7.5.2.1, from memory).
  CHECK_THAT(demand(plated, {.normal = 1e4, .rolling = 1e3}),
             WithinRel(1e4 / 287.5e3 + 1e3 / 7875.0, kTight));
  CHECK_THAT(1.0 / demand(plated, {.normal = 1.0}), WithinRel(287.5e3, kTight));
}

TEST_CASE("a thick frame plate spreads under 45 degrees, not 2.5 to 1", "[checks][rail_wall]") {
  RailSeat seat = cornered();
  seat.frame_plate = 0.012;
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}),
             WithinRel(2.0 * 250e6 * 0.005 * (0.0375 + 0.024 + 0.066), kTight));
}

TEST_CASE("a rail's own stress takes from the walls beside the face", "[checks][rail_wall]") {
  RailSeat seat = cornered();
  seat.own_stress = 0.75 * seat.yield;  // kn = 1.3 - 0.4 x 0.75
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}), WithinRel(227.5e3, kTight));
  seat.own_stress = 0.95 * seat.yield;
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}), WithinRel(0.92 * 227.5e3, kTight));
}

TEST_CASE("a rail that its own load brings to yield leaves its wall undecided",
          "[checks][rail_wall]") {
  for (RailSeat seat : {cornered(), flat(), opened(1)}) {
    seat.own_stress = 0.999 * seat.yield;
    CHECK(checks::seat_method(seat).why_not.empty());
    seat.own_stress = seat.yield;
    CHECK_THAT(checks::seat_method(seat).why_not, Contains("yields by its own load"));
  }
}

// Omega of each limit state: AISC 360-22 J10.2 and J10.3, 360-10 table K1.2, from memory.
TEST_CASE("each way in which a rail's wall gives asks its own factor", "[checks][rail_wall]") {
  const auto asked = [](const RailSeat& seat, const checks::SeatLoad& load) {
    return checks::rail_wall({.seat = seat, .load = load}).required;
  };
  CHECK_THAT(asked(cornered(), {.normal = 1.0}), WithinRel(1.5, 1e-12));
  RailSeat thin = cornered();
  thin.wall = 0.002;
  thin.side = 0.400;
  thin.frame_plate = 0.010;
  CHECK_THAT(asked(thin, {.normal = 1.0}), WithinRel(2.0, 1e-12));
  // Two thirds of what yields from crippling, the rest from shear in the face: between the two.
  const double between = asked(thin, {.normal = 1e4, .across = 1e4});
  CHECK(between > 1.5);
  CHECK(between < 2.0);
  RailSeat narrow = flat();  // beta 0.25: uneven plate 14.00 kN, face 17.17 kN, block 26.86 kN
  narrow.line = 0.25 * narrow.face;
  CHECK_THAT(1.0 / demand(narrow, {.normal = 1.0}), WithinRel(14.0e3, kTight));
  CHECK_THAT(asked(narrow, {.normal = 1.0}), WithinRel(1.58, 1e-12));
  // Crippling is the weaker by its factor, yielding by nominal strength: what is asked of the
  // nominal one makes both hold.
  RailSeat near = thin;
  near.elastic *= 1.8;  // yields at 43.0 kN, cripples at 34.0 sqrt(1.8) = 45.6 kN
  const checks::Finding f = checks::rail_wall({.seat = near, .load = {.normal = 1.0}});
  CHECK_THAT(1.0 / f.demand, WithinRel(2.0 * 43.0e3, kTight));
  CHECK_THAT(f.required * f.demand, WithinRel(2.0 / (2.0 * 45.612e3), 5e-4));
  CHECK(worked::equations_that_hold(f) >= 6);
}

TEST_CASE("a thin high wall cripples before it yields", "[checks][rail_wall]") {
  RailSeat seat = cornered();
  seat.wall = 0.002;
  seat.frame_plate = 0.010;
  seat.side = 0.400;
  // Yield 250 x 2 x 2 (15 + 20 + 8) = 43.0 kN; 0.8 x 4 x (1 + 198 / 394) x 7071 = 34.00 kN.
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}), WithinRel(2.0 * 34.0e3, 5e-4));
}

// AISC 360-22 J10.3, from memory: the full depth d.
TEST_CASE("an open rail's web cripples over its full depth", "[checks][rail_wall]") {
  RailSeat seat = opened(1);
  const checks::Finding f = checks::rail_wall({.seat = seat, .load = {.normal = 1.0}});
  bool shown = false;
  for (const checks::WorkedLine& line : f.lines) {
    if (line.symbols.rfind("wall cripples", 0) != 0) continue;
    shown = true;
    const double lb = 2.0 * seat.plate + seat.gap;
    const double sum =
        std::min(2.0 * (1.0 + 3.0 * seat.plate / seat.side), 1.0 + 3.0 * lb / seat.side);
    CHECK_THAT(
        line.values.back().si,
        WithinRel(0.8 * seat.wall * seat.wall * sum * std::sqrt(seat.elastic * seat.yield), 1e-9));
  }
  CHECK(shown);
}

TEST_CASE("plates on both sides of a box load its walls in shear", "[checks][rail_wall]") {
  RailSeat seat = cornered();
  seat.line = 0.0;
  seat.walls_welded = 2;
  seat.up_the_wall = 0.060;
  // A block of both plates: 0.6 x 250 x 5 x (2 x 60 + 66) = 139.5 kN a wall, 70 mm apart; the rail
  // distorts first.
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}), WithinRel(279e3, kTight));
  CHECK_THAT(1.0 / demand(seat, {.along = 1.0}), WithinRel(279e3, kTight));
  seat.gap = 0.104;  // as far apart as twice their welds: each by itself, 180 kN
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}), WithinRel(360e3, kTight));
  seat.gap = 0.050;
  CHECK_THAT(1.0 / demand(seat, {.rolling = 1.0}), WithinRel(9719.0, kTight));
  CHECK_THAT(1.0 / demand(seat, {.across = 1.0}), WithinRel(227.5e3, kTight));
}

// Shear along what tears out, 0.6 Fy: AISC 360-22 J4.3, from memory.
TEST_CASE("two plates tear the face out as one block where that takes less",
          "[checks][rail_wall]") {
  // Corner to corner the block's ends are the corners: 2 x 0.6 x 250 x 5 x 75.
  CHECK_THAT(1.0 / demand(cornered(), {.across = 1.0}), WithinRel(112.5e3, kTight));
  CHECK_THAT(1.0 / demand(cornered(), {.twisting = 1.0}), WithinRel(0.058 * 56.25e3, kTight));
  RailSeat within = flat();  // 0.6 x 350 x 4 x 2 (60 + 56), 16 mm and 40 mm outside to outside
  within.plates = 2;
  within.gap = 0.040;
  CHECK_THAT(1.0 / demand(within, {.along = 1.0}), WithinRel(0.6 * 350e6 * 0.004 * 0.232, kTight));
  within.gap = 0.060;  // each by itself
  CHECK_THAT(1.0 / demand(within, {.along = 1.0}), WithinRel(0.6 * 350e6 * 0.004 * 0.240, kTight));
}

TEST_CASE("a rail higher than the formulas know is not taken for a stronger one",
          "[checks][rail_wall]") {
  RailSeat seat = cornered();
  seat.frame_plate = 0.006;
  const double in_range = demand(seat, {.rolling = 1.0});
  seat.side = 0.225;
  CHECK_THAT(demand(seat, {.rolling = 1.0}), WithinRel(in_range, kTight));
}

TEST_CASE("an open rail gives along a yield line", "[checks][rail_wall]") {
  // mp 1562.5 N: flange 66 + 2 x 65 mm; web 66 + 2 x 80 mm, half of the moment left there.
  CHECK_THAT(1.0 / demand(opened(0), {.rolling = 1.0}), WithinRel(306.25, kTight));
  CHECK_THAT(1.0 / demand(opened(1), {.rolling = 1.0}), WithinRel(706.25, kTight));
  // Up to three times what the web alone gives, however high the plates reach.
  RailSeat high = opened(1);
  high.up_the_wall = 0.150;
  CHECK_THAT(1.0 / demand(high, {.rolling = 1.0}), WithinRel(1.5625 * 366.0 * 3.0, kTight));
  // A push 32.5 mm off the web bends it too.
  CHECK_THAT(demand(opened(0), {.normal = 1e3}), WithinRel(32.5 / 306.25 + 1.0 / 113.75, kTight));
}

TEST_CASE("what the wall backs of a weld is the effective width of AISC K5",
          "[checks][rail_wall]") {
  // Half of 10 x 4 / 120 x (350 x 4) / (355 x 8) x 60 mm.
  CHECK_THAT(checks::backed_length(flat()), WithinRel(0.004930, 2e-4));
  RailSeat thick = flat();
  thick.wall = 0.020;
  CHECK(checks::backed_length(thick) == Approx(0.030));
  // Open: 5 + 2.5 x (250 x 5) / (250 x 8) x 5 mm at the web.
  CHECK_THAT(checks::backed_length(opened(0)), WithinRel(0.0128125, kTight));
}

TEST_CASE("the rail wall is decided inside its range and not outside", "[checks][rail_wall]") {
  struct Row {
    RailSeat seat;
    std::function<void(RailSeat&, double)> set;
    double inside, outside;
  };
  const Row rows[] = {
      {flat(), [](RailSeat& s, double v) { s.wall = s.face / v; }, 34.9, 35.1},
      {flat(), [](RailSeat& s, double v) { s.line = v * s.face; }, 0.251, 0.249},
      {flat(), [](RailSeat& s, double v) { s.yield = v; }, 359e6, 361e6},
      {flat(), [](RailSeat& s, double v) { s.tensile = s.yield / v; }, 0.80, 0.82},
      {cornered(),
       [](RailSeat& s, double v) {
         s.walls_welded = 1;
         s.line = v;
       },
       0.0651, 0.0649},
      {opened(0), [](RailSeat& s, double v) { s.line = v; }, 0.0601, 0.0599},
      {opened(0), [](RailSeat& s, double v) { s.walls_welded = static_cast<int>(v); }, 1.0, 2.0},
      {opened(1), [](RailSeat& s, double v) { s.line = v; }, 0.070, 0.0},
  };
  for (const Row& row : rows) {
    RailSeat seat = row.seat;
    row.set(seat, row.inside);
    CHECK(checks::seat_method(seat).why_not.empty());
    row.set(seat, row.outside);
    CHECK_FALSE(checks::seat_method(seat).why_not.empty());
    CHECK(checks::seat_method(seat).kind == SeatKind::none);
    const checks::Finding f = checks::rail_wall({.seat = seat, .load = {.normal = 1.0}});
    CHECK(f.state == State::undecided);
    CHECK_THAT(f.reason, Contains("outside the method"));
    CHECK(std::isnan(f.demand));
  }
}

TEST_CASE("more steel in the rail or a longer line is never worse", "[checks][rail_wall]") {
  const checks::SeatLoad load{.normal = 4e3,
                              .across = 9e3,
                              .along = 0.5e3,
                              .rolling = 900.0,
                              .pitching = 60.0,
                              .twisting = 30.0};
  RailSeat sides = cornered();
  sides.line = 0.0;
  sides.walls_welded = 2;
  sides.up_the_wall = 0.060;
  RailSeat plated = flat();
  plated.frame_plate = 0.006;
  for (const RailSeat& base : {flat(), plated, cornered(), sides, opened(0), opened(1)}) {
    const auto falls = [&](const std::function<void(RailSeat&, double)>& grow) {
      double last = demand(base, load);
      for (double more = 1.05; more < 1.5; more += 0.05) {
        RailSeat seat = base;
        grow(seat, more);
        const double here = demand(seat, load);
        CHECK(here <= last * (1.0 + 1e-12));
        last = here;
      }
    };
    falls([](RailSeat& s, double m) { s.wall *= m; });
    falls([](RailSeat& s, double m) {
      s.yield *= std::min(m, 350e6 / s.yield);
      s.tensile = 1.3 * s.yield;
    });
    falls([](RailSeat& s, double m) { s.frame_plate *= m; });
    falls([](RailSeat& s, double m) { s.up_the_wall *= m; });
    falls([](RailSeat& s, double m) { s.plate *= m; });
    if (base.line < 0.5 * base.face) falls([](RailSeat& s, double m) { s.line *= m; });
  }
}

TEST_CASE("the worked lines of the rail wall add up, and the verdict turns at its limit",
          "[checks][rail_wall]") {
  RailSeat sides = cornered();
  sides.line = 0.0;
  sides.walls_welded = 2;
  sides.up_the_wall = 0.060;
  const checks::SeatLoad load{.normal = -1e3,
                              .across = 2e3,
                              .along = 1e3,
                              .rolling = -50.0,
                              .pitching = 9.0,
                              .twisting = 9.0};
  RailSeat single = cornered();
  single.plates = 1;
  for (const RailSeat& seat : {flat(), cornered(), sides, single, opened(0), opened(1)}) {
    const checks::Finding f = checks::rail_wall({.seat = seat, .load = load});
    CHECK(worked::equations_that_hold(f) >= 6);
    CHECK_THAT(f.lines.back().values.back().si, WithinRel(f.demand, 1e-12));
    checks::SeatLoad scaled = load;
    for (const double u : {0.98, 1.02}) {
      const double m = u / f.demand / f.required;
      scaled = {m * load.normal,  m * load.across,   m * load.along,
                m * load.rolling, m * load.pitching, m * load.twisting};
      CHECK(checks::rail_wall({.seat = seat, .load = scaled}).state ==
            (u < 1.0 ? State::within : State::over));
    }
  }
}

TEST_CASE("holes left in the rail come off what carries", "[checks][rail_wall]") {
  RailSeat seat = cornered();
  seat.holes_in_walls = 0.020;
  // 91 - 20 mm of each wall yield at 88.75 kN.
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}), WithinRel(177.5e3, kTight));
  CHECK_THAT(1.0 / demand(seat, {.pitching = 1.0}), WithinRel(0.058 * 88.75e3, kTight));
  seat = cornered();
  seat.holes_in_face = 0.015;
  // 2 x 0.6 Fy t (L - 15 mm) beside the block of both plates.
  CHECK_THAT(1.0 / demand(seat, {.along = 1.0}),
             WithinRel(2.0 * 0.6 * 250e6 * 0.005 * 0.060, kTight));
  // n grows by 75 / 60: kn = 1.3 - 0.4 x 0.76 x 1.25 = 0.92.
  seat.own_stress = 0.76 * seat.yield;
  CHECK_THAT(1.0 / demand(seat, {.normal = 1.0}), WithinRel(0.92 * 227.5e3, kTight));
  // Yield lines of open rails: 124 + 2 x 80 - 20 mm up the web's 66 + ... less 20 mm of holes.
  RailSeat open = opened(1);
  const double whole = 1.0 / demand(open, {.rolling = 1.0});
  open.holes_in_walls = 0.020;
  const double spread = 0.066 + 2.0 * 0.080;
  CHECK_THAT(1.0 / demand(open, {.rolling = 1.0}),
             WithinRel(whole * (spread - 0.020) / spread, kTight));
}

TEST_CASE("holes are decided up to half of what carries, in a flat face under a frame plate alone",
          "[checks][rail_wall]") {
  RailSeat seat = cornered();
  seat.holes_in_face = 0.0374;  // of 75 mm
  CHECK(checks::seat_method(seat).kind == SeatKind::both_walls);
  seat.holes_in_face = 0.0376;
  CHECK(checks::seat_method(seat).kind == SeatKind::none);
  seat.holes_in_face = 0.0;
  seat.holes_in_walls = 0.0517;  // of 66 + 37.5 mm
  CHECK(checks::seat_method(seat).kind == SeatKind::both_walls);
  seat.holes_in_walls = 0.0518;
  CHECK_THAT(checks::seat_method(seat).why_not, Contains("more than half"));
  RailSeat face = flat();
  face.holes_in_face = 0.010;
  CHECK_THAT(checks::seat_method(face).why_not, Contains("no yield line"));
  CHECK(std::isnan(checks::rail_wall({.seat = face, .load = {.normal = 1.0}}).safety_factor));
  face.frame_plate = 0.006;
  CHECK(checks::seat_method(face).kind == SeatKind::flat_face);
}

}  // namespace rail_wall_test
