// Tubes and shafts of Gere.

#include <cmath>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "tests/published/verification.hpp"

namespace gere_test {
using Catch::Matchers::WithinRel;
using published::Basis;
using published::Source;
using published::verify;
using namespace sections;

namespace {

constexpr double in = base::kInch;
constexpr double lbf = base::kPoundForce;
constexpr double MPa = base::kMegapascal;

}  // namespace

TEST_CASE("Gere's tube in torsion reaches 7965 psi", "[sections][stress]") {
  const Source source{
      "Gere, Mechanics of Materials, 7th ed., problem 3.3-7 (tube 1.75 / 1.25 in, "
      "6200 lb in)",
      Basis::read};
  const RoundTube tube{.outside = 1.75 * in, .wall = 0.25 * in};
  verify(source, "Ip", "0.681 in4", area_props(tube).torsion / std::pow(in, 4));
  verify(source, "largest shear stress", "7965 psi",
         worst_point(tube, {.t = 6200 * lbf * in}).torsion / base::kPsi);
  verify(source, "shear modulus, from a twist of 4 degrees over 24 in", "3.13e6 psi",
         6200 * lbf * in * 24 * in / (area_props(tube).torsion * 4 * base::kDegree) / base::kPsi);
}

TEST_CASE("Gere's rotor shaft has 63.66 and 97.78 MPa", "[sections][stress]") {
  const Source source{
      "Gere, Mechanics of Materials, 6th and 7th ed., ch. 8, rotor shaft (50 mm, "
      "2.4 kN m, 125 kN)",
      Basis::from_memory};
  const PointStress p = worst_point(RoundBar{.diameter = 0.050}, {.n = 125e3, .t = 2.4e3});
  verify(source, "axial stress", "63.66 MPa", p.axial / MPa);
  verify(source, "shear stress", "97.78 MPa", p.torsion / MPa, published::within_absolute(0.006));
  // Principal stresses of the two, by Mohr's circle.
  const double radius = std::hypot(0.5 * p.axial, p.torsion);
  verify(source, "first principal stress", "135 MPa", (0.5 * p.axial + radius) / MPa);
  verify(source, "second principal stress", "-71 MPa", (0.5 * p.axial - radius) / MPa);
  verify(source, "largest shear stress of all planes", "103 MPa", radius / MPa);
  CHECK_THAT(p.von_mises / MPa,
             WithinRel(std::sqrt(135.0 * 135.0 + 135.0 * 71.0 + 71.0 * 71.0), 0.005));
}

TEST_CASE("a thin round tube has 0.785 of the stress and 0.617 of the twist of a square one",
          "[sections][stress]") {
  const Source source{
      "Gere, Mechanics of Materials, ch. 3, thin round and square tube of equal "
      "girth and wall",
      Basis::from_memory};
  const double wall = 1e-6;
  const double girth = 0.2;
  const RoundTube round{.outside = girth / base::kPi + wall, .wall = wall};
  const RectangularTube square{
      .depth = girth / 4 + wall, .width = girth / 4 + wall, .wall = wall, .corner = wall};
  verify(source, "stress, round over square", "0.785",
         worst_point(round, {.t = 1.0}).torsion / worst_point(square, {.t = 1.0}).torsion);
  verify(source, "twist, round over square", "0.617",
         area_props(square).torsion / area_props(round).torsion);
}

}  // namespace gere_test
