// A bracket folded from one plate, and plates tied by a back and a face. Areas and second moments
// by straight walls and quarter rings (parallel axes); cantilevers. Common practice, no source.
#include "parts/bracket_section.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "build_design.hpp"
#include "fea/solver.hpp"
#include "parts/put_loads.hpp"
#include "sections/area_props.hpp"
#include "sections/stress.hpp"

namespace bracket_section_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kPi = 3.14159265358979;

/// Pieces of a section along one axis: area, place of the centroid, own second moment.
struct Sum {
  double area = 0.0;
  double first = 0.0;
  double second = 0.0;  // about z = 0
  void add(double a, double at, double own) {
    area += a;
    first += a * at;
    second += own + a * at * at;
  }
  void box(double width, double from, double to) {
    const double h = to - from;
    add(width * h, 0.5 * (from + to), width * h * h * h / 12.0);
  }
  [[nodiscard]] double centroid() const { return first / area; }
  [[nodiscard]] double inertia() const { return second - first * first / area; }
};

parts::Bracket folded(double radius) {
  parts::Bracket b = parts_test::hand_check_bracket();
  b.plates.fold_radius = radius;
  return b;
}

/// Channel of 6 mm, 50 mm clear and 100 mm deep, from the outside of its back.
Sum folded_by_hand(double r) {
  constexpr double t = 0.006;
  const double outer = r + t;
  Sum sum;
  sum.box(0.050 - 2.0 * r, 0.0, t);
  sum.box(2.0 * t, outer, 0.100);
  const double area = kPi / 4.0 * (outer * outer - r * r);
  const double off =
      4.0 / (3.0 * kPi) * (std::pow(outer, 3) - std::pow(r, 3)) / (outer * outer - r * r);
  const double own = kPi / 16.0 * (std::pow(outer, 4) - std::pow(r, 4)) - area * off * off;
  for (int i = 0; i < 2; ++i) sum.add(area, outer - off, own);
  return sum;
}

}  // namespace

TEST_CASE("a folded channel has the section of its plate, folds and all", "[parts][bracket]") {
  const double r = GENERATE(0.006, 0.012, 0.020);
  const double inward = GENERATE(-1.0, 1.0);
  const Sum hand = folded_by_hand(r);
  const sections::Shape shape = parts::bracket_section(folded(r), 0.1, inward);
  REQUIRE_NOTHROW(sections::require_valid(shape));
  const sections::AreaProps p = sections::area_props(shape);
  // Folds are six chords each: 0.3 % of an arc's length.
  CHECK_THAT(p.area, WithinRel(hand.area, 5e-3));
  CHECK_THAT(p.iyy, WithinRel(hand.inertia(), 5e-3));
  CHECK_THAT(p.centroid_z, WithinAbs(inward * (hand.centroid() - 0.050), 0.0005));
  CHECK_THAT(p.centroid_y, WithinAbs(0.0, 1e-9));
  CHECK_THAT(p.axes_angle, WithinAbs(0.0, 1e-9));
}

TEST_CASE("plates with back and face are a closed box", "[parts][bracket]") {
  parts::Bracket b = parts_test::hand_check_bracket();
  b.back_plate = 0.008;
  b.face_plate = 0.004;
  const sections::AreaProps p = sections::area_props(parts::bracket_section(b, 0.1, 1.0));
  Sum hand;
  hand.box(0.062, 0.0, 0.008);
  hand.box(0.012, 0.008, 0.096);
  hand.box(0.062, 0.096, 0.100);
  CHECK_THAT(p.area, WithinRel(hand.area, 1e-9));
  CHECK_THAT(p.iyy, WithinRel(hand.inertia(), 1e-9));
  CHECK_THAT(p.centroid_z, WithinAbs(hand.centroid() - 0.050, 1e-9));
  // Bredt, along the middle lines.
  const double enclosed = 0.056 * 0.094;
  const double around = 0.056 / 0.008 + 0.056 / 0.004 + 2.0 * 0.094 / 0.006;
  CHECK_THAT(p.torsion, WithinRel(4.0 * enclosed * enclosed / around, 0.03));
  // A back alone: an open channel, whose plates are flush with its outer face.
  b.face_plate = base::kUnset;
  Sum open;
  open.box(0.062, 0.0, 0.008);
  open.box(0.012, 0.008, 0.100);
  CHECK_THAT(sections::area_props(parts::bracket_section(b, 0.1, 1.0)).iyy,
             WithinRel(open.inertia(), 1e-9));
  b.back_plate = base::kUnset;
  b.face_plate = 0.008;
  CHECK_THAT(sections::area_props(parts::bracket_section(b, 0.1, 1.0)).iyy,
             WithinRel(open.inertia(), 1e-9));
}

// F D^3 / (3 E I) + F D / (G A_s); M c / I at the edge farther from the centroid, M about it and
// the rest of the moment by the bolt's distance from it: the force is across, so there is none.
TEST_CASE("a folded bracket bends as a cantilever of its section", "[parts][bracket]") {
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = folded(0.009);
  d.bracket->rail_stiffness = 1.0e12;
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  const parts::Assembly a = parts::assemble(d, {});
  const fea::Solution s =
      fea::solve(fea::factor(a.model), parts::put(a, d, parts::design_cases(d).front()),
                 {.method = fea::Method::linear});
  const Sum hand = folded_by_hand(0.009);
  const sections::AreaProps p = sections::area_props(parts::bracket_section(*d.bracket, 0.1, 1.0));
  const double give = std::pow(0.25, 3) / (3.0 * 205.0e9 * hand.inertia()) +
                      0.25 / (parts_test::steel().shear_modulus() * p.shear_z);
  CHECK_THAT(std::abs(s.placement(*a.bracket_bolt)[1]), WithinRel(15.0e3 * give, 0.01));
  const parts::Piece& plates = a.pieces.front();
  REQUIRE(plates.part == "bracket");
  const parts::PieceBeam& top = plates.beams.back();
  const double length = fea::length(a.model, a.model[top.beam]);
  const sections::PointStress stress =
      sections::worst_point(top.at_b, s.forces_at(top.beam, length));
  const double farther = 0.100 - hand.centroid();
  CHECK_THAT(std::abs(stress.bending), WithinRel(15.0e3 * 0.25 * farther / hand.inertia(), 0.01));
  // Nothing bends a plate alone, so its bolt's sleeve needs to hold none.
  CHECK(plates.side_force->straight_at == 0.0);
}

}  // namespace bracket_section_test
