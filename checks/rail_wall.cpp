#include "checks/rail_wall.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/caveat.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kPushed = 1.5;           // k of a transverse push, times the wall
constexpr double kHighest = 2.0;          // H over B that the distortion of a rail is known for
constexpr double kLeastLeft = 1.0 / 3.0;  // of an open web: a proposal, the flanges are not checked
constexpr double kTyped = 1e-9;           // what is typed in inches meets its limit exactly
constexpr double kMostFaceOverWall = 35.0;
constexpr double kLeastWide = 0.25;
constexpr double kWide = 0.85;  // of the face; beyond it the corners help: not counted
constexpr double kHighestRailYield = 360.0e6;
constexpr double kYieldOfTensile = 0.81;  // 0.8; A500 grade C, 50/62, is let pass
constexpr double kShear = 0.6;            // of Fy

/// Thickness of what the plates stand on.
double face_thickness(const RailSeat& s) {
  return s.frame_plate > 0.0 ? s.frame_plate : s.wall;
}

/// All plates along the rail, outside to outside.
double outer_length(const RailSeat& s) {
  return s.plates * s.plate + (s.plates - 1) * s.gap;
}

/// Middle to middle of two plates.
double spacing(const RailSeat& s) {
  return s.plate + s.gap;
}

bool reaches_corners(const RailSeat& s) {
  return s.line >= (s.face - 2.0 * s.wall) * (1.0 - kTyped);
}

SeatMethod not_covered(std::string why) {
  return {SeatKind::none, "outside the method: " + std::move(why)};
}

/// Holes that leave too little of what carries.
std::string too_many_holes(const RailSeat& s, bool flat) {
  constexpr double kMost = 0.5;
  if (flat && s.holes_in_face > 0.0 && !(s.frame_plate > 0.0)) {
    return "a hole in the face that the plates stand on has no yield line known for it; weld it "
           "shut "
           "or cover it with a frame plate";
  }
  const double on_face = s.line > 0.0 ? std::min(s.line, s.face) : s.face;
  const double on_wall = std::min(outer_length(s) + 5.0 * kPushed * s.wall, s.side);
  const bool up = s.walls_welded > 0 && s.holes_in_walls > kMost * s.up_the_wall;
  if (s.holes_in_face > kMost * on_face || s.holes_in_walls > kMost * on_wall || up) {
    return "holes take more than half of the wall that carries (proposal); weld them shut";
  }
  return {};
}

SeatMethod open_seat(const RailSeat& s) {
  if (!(s.line > 0.0)) {
    return not_covered("plates on the side of an open rail alone; weld them to its bottom too");
  }
  if (s.walls_welded == 2) return not_covered("an open rail has one web, and two sides are welded");
  if (!reaches_corners(s)) {
    return not_covered(
        "the plates end within an open rail's flange; let them reach its whole width");
  }
  return {s.walls_welded == 1 ? SeatKind::web : SeatKind::flange, {}};
}

SeatMethod boxed_seat(const RailSeat& s) {
  const double slender = s.face / face_thickness(s);
  if (s.line > 0.0 && slender > kMostFaceOverWall * (1.0 + kTyped)) {
    return not_covered(
        fmt::format("the rail's face is {:.3g} times its thickness wide, over 35 "
                    "(AISC 360 chapter K, from memory)",
                    slender));
  }
  if (s.yield > kHighestRailYield || s.yield > kYieldOfTensile * s.tensile) {
    return not_covered(
        "the rail's steel has Fy over 360 MPa or over 0.8 Fu (AISC 360 chapter K, from "
        "memory)");
  }
  if (s.walls_welded == 2 || reaches_corners(s)) return {SeatKind::both_walls, {}};
  if (s.walls_welded == 1) {
    return not_covered(
        "the plates wrap one corner of the rail and end short of the other; let them "
        "reach it");
  }
  if (s.line < kLeastWide * s.face * (1.0 - kTyped)) {
    return not_covered(
        "the plates are narrower than a quarter of the face (AISC 360 chapter K, from "
        "memory)");
  }
  return {SeatKind::flat_face, {}};
}

/// How a load spreads into a wall: a push by J10.2, rolling by EN table 7.14 and AISC K3.2.
enum class Spread { pushed, rolled };

/// A strength, and the least of it over the factor asked of it.
struct WallStrength {
  double nominal = base::kUnset;
  double asked = base::kUnset;
};
WallStrength least(const WallStrength& a, const WallStrength& b) {
  return {std::min(a.nominal, b.nominal), std::min(a.asked, b.asked)};
}
WallStrength most(const WallStrength& a, const WallStrength& b) {
  return {std::max(a.nominal, b.nominal), std::max(a.asked, b.asked)};
}
WallStrength operator*(double factor, const WallStrength& s) {
  return {factor * s.nominal, factor * s.asked};
}

/// What a load uses of a strength, and of that over its factor.
struct WallShare {
  double used = 0.0;
  double asked = 0.0;
};
WallShare operator/(double load, const WallStrength& s) {
  return {load / s.nominal, load / s.asked};
}
WallShare operator+(const WallShare& a, const WallShare& b) {
  return {a.used + b.used, a.asked + b.asked};
}
WallShare larger(const WallShare& a, const WallShare& b) {
  return {std::max(a.used, b.used), std::max(a.asked, b.asked)};
}
WallShare hypot(const WallShare& a, const WallShare& b) {
  return {std::hypot(a.used, b.used), std::hypot(a.asked, b.asked)};
}

/// What one group of terms of the sum uses of its strength, by worked lines.
class Terms {
 public:
  Terms(const RailWallInput& in, Finding& f) : in_(in), s_(in.seat), f_(f) {}

  WallShare both_walls() {
    const double b = s_.face - s_.wall;
    corner_kn_ = own_stress_factor(1.0);
    const WallStrength wall = one_wall(Spread::pushed);
    const WallStrength rolled = s_.walls_welded == 2 ? wall : one_wall(Spread::rolled);
    const WallShare push = 0.5 * std::abs(load().normal) / wall;
    const WallShare roll = std::abs(load().rolling) / b / rolled;
    f_.lines.push_back({"one wall carries normal / 2",
                        "{0} / 2 / {1} = {2}",
                        {force(std::abs(load().normal)), force(wall.nominal), ratio(push.used)}});
    f_.lines.push_back(
        {"and rolling / (B - t)",
         "{0} / {1} / {2} = {3}",
         {moment(std::abs(load().rolling)), length(b), force(rolled.nominal), ratio(roll.used)}});
    const WallShare pitch = pitching(wall, 2);
    const WallShare used = push + larger(roll, distortion()) + pitch;
    f_.lines.push_back(
        {"normal + the larger of rolling and distortion + pitching", "{0}", {ratio(used.used)}});
    return with_shear(used, shear(0.0));
  }

  WallShare flat_face() {
    const double beta = std::min(s_.line / s_.face, kWide);
    const double kn = own_stress_factor(beta);
    const WallStrength normal = face_push(beta, kn);
    const WallStrength roll = face_roll(beta, kn);
    const WallStrength pitch = face_pitch(beta, kn, normal);
    const WallShare rolled = larger(std::abs(load().rolling) / roll, distortion());
    const WallShare used =
        std::abs(load().normal) / normal + rolled + std::abs(load().pitching) / pitch;
    f_.lines.push_back(
        {"normal / N + rolling, the larger of / Mr and distortion + pitching / Mp",
         "{0} / {1} + {2} + {3} / {4} = {5}",
         {force(std::abs(load().normal)), force(normal.nominal), ratio(rolled.used),
          moment(std::abs(load().pitching)), moment(pitch.nominal), ratio(used.used)}});
    return with_shear(used, shear(outer_length(s_)));
  }

  WallShare open_rail(bool web) {
    const double b = s_.face - s_.wall;
    const double per_length = 0.25 * s_.yield * s_.wall * s_.wall;
    const double holes = web ? s_.holes_in_walls : s_.holes_in_face;
    const double spread = outer_length(s_) + 2.0 * (web ? s_.up_the_wall : b) - holes;
    f_.lines.push_back({"mp = Fy t^2 / 4, a yield line's moment per length",
                        "{0} * {1}^2 / 4 = {2}",
                        {stress(s_.yield), length(s_.wall), force(per_length)}});
    double holds = per_length * spread;
    if (web) {
      const double left = std::max(kLeastLeft, 1.0 - s_.up_the_wall / s_.side);
      holds /= left;
      f_.lines.push_back(
          {"M = mp (plates' length + 2 up the web - holes) / (1 - up the web / H, at least 1/3), "
           "yield line in the web",
           "{0} * ({1} + 2 * {2} - {3}) / {4} = {5}",
           {force(per_length), length(outer_length(s_)), length(s_.up_the_wall), length(holes),
            ratio(left), moment(holds)}});
    } else {
      f_.lines.push_back(
          {"M = mp (plates' length + 2 (B - t) - holes), yield line where the flange meets the web",
           "{0} * ({1} + 2 * {2} - {3}) = {4}",
           {force(per_length), length(outer_length(s_)), length(b), length(holes), moment(holds)}});
    }
    const double bent = std::abs(load().rolling) + 0.5 * b * std::abs(load().normal);
    const WallStrength wall = one_wall(Spread::pushed);
    f_.lines.push_back({"about the web: rolling + normal (B - t) / 2",
                        "{0} + {1} * {2} / 2 = {3}",
                        {moment(std::abs(load().rolling)), force(std::abs(load().normal)),
                         length(b), moment(bent)}});
    const WallShare used = bent / yielding(holds) + std::abs(load().normal) / wall;
    f_.lines.push_back({"of M, and normal of the web's strength",
                        "{0} / {1} + {2} / {3} = {4}",
                        {moment(bent), moment(holds), force(std::abs(load().normal)),
                         force(wall.nominal), ratio(used.used)}});
    const WallShare pitch = pitching(wall, 1);
    return with_shear(used + pitch, shear(0.0));
  }

 private:
  [[nodiscard]] const SeatLoad& load() const { return in_.load; }

  [[nodiscard]] WallStrength yielding(double nominal) const {
    return {nominal, nominal / in_.asked.yielding};
  }
  [[nodiscard]] WallStrength punching(double nominal) const {
    return {nominal, nominal / in_.asked.punching};
  }
  [[nodiscard]] WallStrength crippling(double nominal) const {
    return {nominal, nominal / in_.asked.crippling};
  }

  /// The demand: the sum of the other shares, and that of shear by its square.
  WallShare with_shear(const WallShare& others, const WallShare& sheared) {
    const WallShare all = hypot(others, sheared);
    f_.lines.push_back({"demand = sqrt((the other shares, added)^2 + shear^2)",
                        "sqrt(({0})^2 + ({1})^2) = {2}",
                        {ratio(others.used), ratio(sheared.used), ratio(all.used)}});
    return all;
  }

  /// WallStrength of one wall beside the face, in its own plane, under all plates.
  WallStrength one_wall(Spread spread) {
    const double yields = wall_yield(spread);
    const double cripples = wall_crippling();
    const WallStrength wall = least(yielding(yields), crippling(cripples));
    add_factors("wall yields", yielding(yields), "cripples", crippling(cripples));
    if (s_.walls_welded < 2) return wall;
    const double sheared = s_.plates * up_the_wall_sheared();
    f_.lines.push_back({"wall in shear beside the welds up it, all plates",
                        "{0} * {1} = {2}",
                        {ratio(s_.plates), force(sheared / s_.plates), force(sheared)}});
    return reaches_corners(s_) ? most(wall, yielding(sheared)) : yielding(sheared);
  }

  /// What a wall holds of one plate in its own plane, welded along `line`: both sides of the line
  /// shear, or of two plates each carries half of a block that tears out between its outer sides.
  /// @param ends  of that half block, which shear too  [m]
  double torn_out(const char* symbols, double line, double ends) {
    const bool block = s_.plates == 2 && ends < line;
    const double second = block ? ends : line;
    const double holds = kShear * s_.yield * s_.wall * (line + second);
    f_.lines.push_back(
        {fmt::format("{}, of each plate: 0.6 Fy t ({})", symbols,
                     block ? "L + ends of its half of a block" : "2 L"),
         "0.6 * {0} * {1} * ({2} + {3}) = {4}",
         {stress(s_.yield), length(s_.wall), length(line), length(second), force(holds)}});
    return holds;
  }

  /// The block of two plates has one end: the other is the rail's corner, which counts as none.
  double up_the_wall_sheared() {
    return torn_out("wall tears out beside the welds up it, L less holes", net_up_the_wall(),
                    std::max(0.0, 0.5 * outer_length(s_) - s_.holes_in_walls));
  }

  /// Two strengths over the factors asked of each: the lower one counts in what is asked.
  void add_factors(const char* a_words, const WallStrength& a, const char* b_words,
                   const WallStrength& b) {
    f_.lines.push_back({fmt::format("{} over its factor asked", a_words),
                        "{0} / {1} = {2}",
                        {force(a.nominal), ratio(a.nominal / a.asked), force(a.asked)}});
    f_.lines.push_back({fmt::format("{} over its factor asked", b_words),
                        "{0} / {1} = {2}",
                        {force(b.nominal), ratio(b.nominal / b.asked), force(b.asked)}});
  }

  /// Under 45 degrees through a frame plate, 2.5 to 1 through the wall's corner.
  double bearing_spread(Spread how) {
    const double corner = how == Spread::pushed ? kPushed : 1.0;
    return 5.0 * corner * s_.wall + 2.0 * s_.frame_plate;
  }

  double wall_yield(Spread how) {
    const bool pushed = how == Spread::pushed;
    const double spread = bearing_spread(how);
    const double apart = s_.plates * (spread + s_.plate);
    const double together = spread + outer_length(s_);
    const double bearing = std::min(apart, together) - s_.holes_in_walls;
    if (s_.holes_in_walls > 0.0) {
      f_.lines.push_back({"of it the holes left in the wall are taken off",
                          "{0} of {1}",
                          {length(s_.holes_in_walls), length(bearing + s_.holes_in_walls)}});
    }
    f_.lines.push_back({pushed ? "spread: 5 k + 2 frame plate, k = 1.5 t"
                               : "of rolling, spread: 5 k + 2 frame plate, k = t",
                        pushed ? "5 * 1.5 * {0} + 2 * {1} = {2}" : "5 * {0} + 2 * {1} = {2}",
                        {length(s_.wall), length(s_.frame_plate), length(spread)}});
    const double yields = corner_kn_ * s_.yield * s_.wall * bearing;
    f_.lines.push_back(
        {fmt::format("wall yields: kn Fy t (spread + lb), {}",
                     apart <= together ? "each plate by itself" : "lb over all plates"),
         "{0} * {1} * {2} * {3} = {4}",
         {ratio(corner_kn_), stress(s_.yield), length(s_.wall), length(bearing), force(yields)}});
    return yields;
  }

  /// Worked out once: it is the same under a push and under rolling.
  double wall_crippling() {
    if (!std::isnan(crippling_)) return crippling_;
    const double depth = s_.boxed ? s_.side - 3.0 * s_.wall : s_.side;
    const double alone = s_.plates * (1.0 + 3.0 * s_.plate / depth);
    const double together = 1.0 + 3.0 * outer_length(s_) / depth;
    const double sum = std::min(alone, together);
    const double left =
        1.0 - s_.holes_in_walls / (outer_length(s_) + bearing_spread(Spread::pushed));
    const double cripples =
        left * corner_kn_ * 0.8 * s_.wall * s_.wall * sum * std::sqrt(s_.elastic * s_.yield);
    f_.lines.push_back(
        {fmt::format("wall cripples: kn 0.8 t^2 sum of (1 + 3 lb / {}) sqrt(E Fy), of what the "
                     "holes leave",
                     s_.boxed ? "(H - 3 t)" : "H"),
         "{0} * {1} * 0.8 * {2}^2 * {3} * sqrt({4} * {5}) = {6}",
         {ratio(left), ratio(corner_kn_), length(s_.wall), ratio(sum), stress(s_.elastic),
          stress(s_.yield), force(cripples)}});
    crippling_ = cripples;
    return cripples;
  }

  /// @param wall  strength of one wall under all plates
  WallShare pitching(const WallStrength& wall, int walls) {
    const double m = std::abs(load().pitching);
    if (s_.plates == 2) {
      const WallShare used = m / (spacing(s_) * 0.5 * walls * wall);
      f_.lines.push_back(
          {"pitching, a couple of the two plates",
           "{0} / ({1} * {2} / 2 * {3}) = {4}",
           {moment(m), length(spacing(s_)), ratio(walls), force(wall.nominal), ratio(used.used)}});
      return used;
    }
    const double bearing = s_.plate + bearing_spread(Spread::pushed);
    const double holds = 0.25 * walls * s_.yield * s_.wall * bearing * bearing;
    f_.lines.push_back({"pitching of one plate on walls * Fy t (spread + lb)^2 / 4",
                        "{0} / ({1} * {2} * {3} * {4}^2 / 4) = {5}",
                        {moment(m), ratio(walls), stress(s_.yield), length(s_.wall),
                         length(bearing), ratio(m / holds)}});
    return m / yielding(holds);
  }

  WallShare distortion() {
    // Outside the formula's range a higher rail is not taken for a stronger one.
    const double side = std::min({s_.side, kHighest * s_.face, kMostFaceOverWall * s_.wall});
    const double root = std::sqrt(s_.face * side * s_.wall * (s_.face + side));
    const double holds = 2.0 * s_.yield * s_.wall * (outer_length(s_) * s_.wall + root);
    const WallShare used = std::abs(load().rolling) / yielding(holds);
    f_.lines.push_back(
        {"rolling on the rail's distortion, 2 Fy t (h1 t + sqrt(B H t (B + H))), H counted up to "
         "2 B and 35 t",
         "{0} / (2 * {1} * {2} * ({3} * {2} + sqrt({4} * {5} * {2} * ({4} + {5})))) "
         "= {6}",
         {moment(std::abs(load().rolling)), stress(s_.yield), length(s_.wall),
          length(outer_length(s_)), length(s_.face), length(side), ratio(used.used)}});
    return used;
  }

  /// In the face's plane. Without a weld on the face the walls beside it carry along the rail, and
  /// across it what bears on the face's edges.
  /// @param ends  of a block of two plates, one half of it; none where they are at the corners  [m]
  WallShare shear(double ends) {
    if (!(s_.line > 0.0)) return shear_by_walls();
    const double one = torn_out("face tears out, L less holes", s_.line - s_.holes_in_face, ends);
    const double line = s_.line;
    const double lever = s_.plates == 2 ? spacing(s_) : line;
    const double across = std::abs(load().across) / s_.plates + std::abs(load().twisting) / lever;
    const double along = std::abs(load().along) / s_.plates;
    const WallShare used = std::hypot(across, along) / yielding(one);
    f_.lines.push_back(
        {"shear in the face: across and twisting, with along",
         "sqrt(({0} / {1} + {2} / {3})^2 + ({4} / {1})^2) / {5} = {6}",
         {force(std::abs(load().across)), ratio(s_.plates), moment(std::abs(load().twisting)),
          length(lever), force(std::abs(load().along)), force(one), ratio(used.used)}});
    return used;
  }

  WallShare shear_by_walls() {
    const WallStrength bears =
        least(yielding(wall_yield(Spread::pushed)), crippling(wall_crippling()));
    const WallShare across = 0.5 * std::abs(load().across) / bears;
    const double one = s_.plates * up_the_wall_sheared();
    const double push = 0.5 * std::abs(load().along) + std::abs(load().twisting) / s_.face;
    f_.lines.push_back(
        {"across, half on each edge of the face",
         "{0} / 2 / {1} = {2}",
         {force(std::abs(load().across)), force(bears.nominal), ratio(across.used)}});
    f_.lines.push_back({"along / 2 + twisting / B, on one wall under all plates",
                        "({0} / 2 + {1} / {2}) / {3} = {4}",
                        {force(std::abs(load().along)), moment(std::abs(load().twisting)),
                         length(s_.face), force(one), ratio(push / one)}});
    return hypot(across, push / yielding(one));
  }

  /// kn = 1.3 - 0.4 n / beta, n what the rail's own load uses of its yield; at most 1.
  double own_stress_factor(double beta) {
    const double own = std::abs(s_.own_stress) * s_.net_increase();
    const double n = own / s_.yield;
    const double kn = std::max(0.0, std::min(1.0, 1.3 - 0.4 * n / beta));
    f_.lines.push_back(
        {"beta = plate / face, counted up to 0.85; 1 from corner to corner", "{0}", {ratio(beta)}});
    f_.lines.push_back(
        {"n = the rail's own stress * gross / net width / Fy",
         "{0} * {1} / {2} = {3}",
         {stress(std::abs(s_.own_stress)), ratio(s_.net_increase()), stress(s_.yield), ratio(n)}});
    f_.lines.push_back({"kn = 1.3 - 0.4 n / beta, at most 1", "{0}", {ratio(kn)}});
    return kn;
  }

  [[nodiscard]] double net_up_the_wall() const { return s_.up_the_wall - s_.holes_in_walls; }

  /// Fy t^2 of what the plates stand on.
  [[nodiscard]] double unit() const { return s_.yield * face_thickness(s_) * face_thickness(s_); }

  WallStrength face_push(double beta, double kn) {
    const double t = face_thickness(s_);
    const double uneven = s_.plates * 10.0 * unit() * beta;
    const double alone = s_.plates * kn * unit() * (2.0 + 2.8 * beta) / std::sqrt(1.0 - 0.9 * beta);
    const double eta = outer_length(s_) / s_.face;
    const double block = kn * unit() / (1.0 - beta) * (2.0 * eta + 4.0 * std::sqrt(1.0 - beta));
    f_.lines.push_back(
        {"N, uneven plate: plates * 10 Fy t^2 beta",
         "{0} * 10 * {1} * {2}^2 * {3} = {4}",
         {ratio(s_.plates), stress(s_.yield), length(t), ratio(beta), force(uneven)}});
    f_.lines.push_back(
        {"N, face: plates * kn Fy t^2 (2 + 2.8 beta) / sqrt(1 - 0.9 beta)",
         "{0} * {1} * {2} * {3}^2 * (2 + 2.8 * {4}) / sqrt(1 - 0.9 * {4}) = {5}",
         {ratio(s_.plates), ratio(kn), stress(s_.yield), length(t), ratio(beta), force(alone)}});
    f_.lines.push_back(
        {"N, all plates as a block: kn Fy t^2 / (1 - beta) (2 h1 / B + 4 sqrt(1 - beta))",
         "{0} * {1} * {2}^2 / (1 - {3}) * (2 * {4} / {5} + 4 * sqrt(1 - {3})) = {6}",
         {ratio(kn), stress(s_.yield), length(t), ratio(beta), length(outer_length(s_)),
          length(s_.face), force(block)}});
    const WallStrength bends = yielding(std::min(alone, block));
    WallStrength loaded_unevenly = punching(uneven);
    if (s_.line >= kWide * s_.face) {
      const double effective = std::min(10.0 * t / s_.face, 1.0) * s_.line;
      const double punched = s_.plates * kShear * s_.yield * t * (2.0 * s_.plate + 2.0 * effective);
      f_.lines.push_back({"N, punching: plates * 0.6 Fy t (2 tp + 2 * 10 Bp t / B)",
                          "{0} * 0.6 * {1} * {2} * (2 * {3} + 2 * {4}) = {5}",
                          {ratio(s_.plates), stress(s_.yield), length(t), length(s_.plate),
                           length(effective), force(punched)}});
      loaded_unevenly = least(loaded_unevenly, punching(punched));
    }
    add_factors("N, face or block,", bends, "N, uneven plate or punching,", loaded_unevenly);
    return least(bends, loaded_unevenly);
  }

  WallStrength face_roll(double beta, double kn) {
    const auto of = [&](double h1) {
      return kn * unit() *
             (h1 * (1.0 + beta) / (2.0 * (1.0 - beta)) +
              std::sqrt(2.0 * s_.face * beta * s_.face * (1.0 + beta) / (1.0 - beta)));
    };
    const bool block = of(outer_length(s_)) <= s_.plates * of(s_.plate);
    const double h1 = block ? outer_length(s_) : s_.plate;
    const double count = block ? 1.0 : s_.plates;
    f_.lines.push_back(
        {fmt::format("Mr, {}: kn Fy t^2 (h1 (1 + beta) / (2 (1 - beta)) + sqrt(2 B Bp (1 + beta) / "
                     "(1 - beta)))",
                     block ? "all plates as a block" : "each plate by itself"),
         "{0} * {1} * {2} * {3}^2 * ({4} * (1 + {5}) / (2 * (1 - {5})) + sqrt(2 * {6} * {7} * (1 + "
         "{5}) / (1 - {5}))) = {8}",
         {ratio(count), ratio(kn), stress(s_.yield), length(face_thickness(s_)), length(h1),
          ratio(beta), length(s_.face), length(beta * s_.face), moment(count * of(h1))}});
    return yielding(count * of(h1));
  }

  WallStrength face_pitch(double beta, double kn, const WallStrength& normal) {
    const double h1 = outer_length(s_);
    const double eta = h1 / s_.face;
    const double block =
        kn * unit() * h1 * (0.5 / eta + 2.0 / std::sqrt(1.0 - beta) + eta / (1.0 - beta));
    f_.lines.push_back(
        {"Mp, block: kn Fy t^2 h1 (1 / (2 eta) + 2 / sqrt(1 - beta) + eta / (1 - beta)), eta = h1 "
         "/ B",
         "{0} * {1} * {2}^2 * {3} * (1 / (2 * {4}) + 2 / sqrt(1 - {5}) + {4} / (1 - {5})) = {6}",
         {ratio(kn), stress(s_.yield), length(face_thickness(s_)), length(h1), ratio(eta),
          ratio(beta), moment(block)}});
    if (s_.plates < 2) return yielding(block);
    const WallStrength couple = 0.5 * spacing(s_) * normal;
    f_.lines.push_back({"Mp, a couple of the two plates: N / 2 * their spacing",
                        "{0} / 2 * {1} = {2}",
                        {force(normal.nominal), length(spacing(s_)), moment(couple.nominal)}});
    return least(yielding(block), couple);
  }

  const RailWallInput& in_;
  const RailSeat& s_;
  Finding& f_;
  double crippling_ = base::kUnset;
  double corner_kn_ = 1.0;  // open rails: their own stress is not in their method
};

std::string seat_source(SeatKind kind) {
  switch (kind) {
    case SeatKind::both_walls:
      return "walls beside the face: AISC 360-22 J10.2 and J10.3 (360-10 table K1.2), kn EN "
             "1993-1-8 table 7.13, distortion AISC 360-10 table K3.2 and EN 1993-1-8 table 7.14; "
             "all from memory; spread of a frame plate: EN 1993-1-8 6.2.6.2 (45 degrees), from "
             "memory";
    case SeatKind::flat_face:
      return "face: AISC 360-10 table K1.2, EN 1993-1-8 tables 7.13 (plate), 7.11 (block) and 7.14 "
             "(moments); all from memory";
    case SeatKind::flange:
    case SeatKind::web:
      return "yield line with a 45 degree spread: own derivation, no source; web: AISC 360-22 "
             "J10.2 and J10.3, from memory";
    case SeatKind::none:
      break;
  }
  return "AISC 360-22 chapter K and J10, EN 1993-1-8 section 7, from memory";
}

void add_rail_notes(const RailWallInput& in, SeatKind kind, Finding& f) {
  const RailSeat& s = in.seat;
  if (!in.strength_basis.empty()) f.notes.push_back("rail: " + in.strength_basis);
  if (s.frame_plate > 0.0 && s.boxed) {
    f.notes.emplace_back(
        "the frame plate is taken as wide as the face, welded all round and reaching past the "
        "bracket by half the face's width: not known here");
  } else if (s.frame_plate > 0.0) {
    f.notes.emplace_back("the frame plate on an open rail is not counted but for its spread");
  }
  if (kind == SeatKind::flange || kind == SeatKind::web) {
    f.notes.push_back(std::string(kCaveat) +
                      "judged by an upper estimate of the wall's strength; no code has one");
    f.notes.emplace_back(
        "an upper estimate, no code's: a side of an open rail that is welded is "
        "taken as its web; the rail's own stress is not in it");
  }
  if (kind == SeatKind::both_walls && s.walls_welded == 1) {
    f.notes.emplace_back("what the weld up the one side adds is not counted: both corners carry");
  }
  if (s.plates == 2) {
    f.notes.emplace_back(
        "in its own plane the wall tears out beside each plate, or around both as one block, "
        "whichever takes less; shear at 0.6 Fy all round: after AISC 360-22 J4.3, from memory");
  }
  f.notes.emplace_back(
      "shares of strength are added, but for that of shear: root of the sum's square and its own, "
      "proposal, no source; ends of the rail nearby are not known here");
  f.notes.emplace_back(
      s.holes_in_face > 0.0 || s.holes_in_walls > 0.0
          ? "holes left in the rail come off what carries, as given; their nearness "
            "to a weld is not looked at"
          : "no holes left in the rail under the bracket are given");
}

/// The demand, and the factor asked of it.
void add_asked(const RailFactors& asked, const WallShare& sum, double required, Finding& f) {
  if (sum.asked > asked.yielding * sum.used * (1.0 + 1e-9)) {
    f.lines.push_back({fmt::format("asked: yielding {:g}, punching {:g}, crippling {:g}; the same "
                                   "sum with each strength over its factor, over the demand",
                                   asked.yielding, asked.punching, asked.crippling),
                       "{0} / {1} = {2}",
                       {ratio(sum.asked), ratio(sum.used), ratio(required)}});
  }
}

}  // namespace

double RailSeat::net_increase() const {
  return 1.0 / (1.0 - std::max(holes_in_face / face, holes_in_walls / side));
}

SeatMethod seat_method(const RailSeat& s) {
  INVARIANT(s.face > 0.0 && s.side > 0.0 && s.wall > 0.0 && s.plate > 0.0 && s.yield > 0.0);
  if (std::abs(s.own_stress) * s.net_increase() >= s.yield * (1.0 - kTyped)) {
    return not_covered(
        "the rail yields by its own load: `rail_stress`, over what holes leave of it, is at its "
        "yield strength");
  }
  SeatMethod method = s.boxed ? boxed_seat(s) : open_seat(s);
  if (method.kind == SeatKind::none) return method;
  std::string holes = too_many_holes(s, method.kind == SeatKind::flat_face);
  return holes.empty() ? method : not_covered(std::move(holes));
}

double backed_length(const RailSeat& s) {
  const double t = s.boxed ? face_thickness(s) : s.wall;
  const double strong = s.yield * t / (s.plate_yield * s.plate);
  if (!s.boxed) return std::min(s.line, s.wall + 2.5 * std::min(strong, 1.0) * t);
  const double part = std::min(1.0, 10.0 * t / s.face * strong);
  return 0.5 * part * s.line;
}

Finding rail_wall(const RailWallInput& in) {
  const SeatMethod method = seat_method(in.seat);
  Finding f{.check = "rail wall", .measure = Measure::ratio};
  f.required = in.asked.yielding;
  f.capacity = 1.0;
  f.source = seat_source(method.kind);
  if (method.kind == SeatKind::none) {
    leave_undecided(f, method.why_not);
    return f;
  }
  Terms terms(in, f);
  const WallShare sum = method.kind == SeatKind::both_walls ? terms.both_walls()
                        : method.kind == SeatKind::flat_face
                            ? terms.flat_face()
                            : terms.open_rail(method.kind == SeatKind::web);
  f.demand = sum.used;
  // No load at all asks what yielding does.
  const double required = sum.used > 0.0 ? sum.asked / sum.used : in.asked.yielding;
  add_asked(in.asked, sum, required, f);
  add_rail_notes(in, method.kind, f);
  decide(f, std::isnan(in.safety_factor) ? 1.0 / f.demand : in.safety_factor, required);
  return f;
}

}  // namespace checks
