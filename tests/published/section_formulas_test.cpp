// Formulas that stand in any text on strength of materials.

#include <cmath>

#include <catch2/catch.hpp>

#include "sections/area_props.hpp"
#include "sections/stress.hpp"
#include "tests/published/verification.hpp"

namespace section_formulas_test {
using published::Basis;
using published::Source;
using published::verify;
using published::within;
using namespace sections;

namespace {

constexpr double mm = base::kMillimeter;
constexpr double mm2 = mm * mm;
constexpr double mm3 = mm2 * mm;
constexpr double mm4 = mm3 * mm;
constexpr double MPa = base::kMegapascal;

}  // namespace

TEST_CASE("tube 50 x 5 has the ring formulas' values", "[sections][area_props]") {
  const Source source{"ring formulas of any text (tube 50 x 5 mm)", Basis::formula_from_memory};
  const AreaProps p = area_props(RoundTube{.outside = 50 * mm, .wall = 5 * mm});
  verify(source, "A", "706.9 mm2", p.area / mm2);
  verify(source, "I", "1.811e5 mm4", p.iyy / mm4);
  verify(source, "J", "3.623e5 mm4", p.torsion / mm4);
  verify(source, "S", "7245 mm3", p.modulus_y / mm3);
  verify(source, "Z", "1.017e4 mm3", p.plastic_y / mm3);
}

TEST_CASE("plastic moduli and shape factors are those of the textbooks", "[sections][area_props]") {
  const Source source{"plastic moduli and shape factors of any text", Basis::from_memory};
  const AreaProps bar = area_props(RoundBar{.diameter = 50 * mm});
  verify(source, "Z of a bar of 50 mm", "2.083e4 mm3", bar.plastic_y / mm3);
  verify(source, "shape factor of a round bar", "1.70", bar.plastic_y / bar.modulus_y);
  const AreaProps plate = area_props(FlatBar{.depth = 60 * mm, .width = 10 * mm});
  verify(source, "Z of a plate 60 x 10 mm", "9000 mm3", plate.plastic_y / mm3, within(1e-9));
  verify(source, "shape factor of a rectangle", "1.5", plate.plastic_z / plate.modulus_z,
         within(1e-9));
  const auto factor = [](double d_over_t) {
    const AreaProps p = area_props(RoundTube{.outside = 1.0, .wall = 1.0 / d_over_t});
    return p.plastic_y / p.modulus_y;
  };
  verify(source, "shape factor of a tube, D/t = 6", "1.49", factor(6.0));
  verify(source, "shape factor of a tube, D/t = 10", "1.40", factor(10.0));
  verify(source, "shape factor of a thin tube", "1.27", factor(1e6));
}

TEST_CASE("shear on a tube and a bar is V Q / (I t)", "[sections][stress]") {
  const Source source{"V Q / (I t), any handbook (10 kN)", Basis::formula_from_memory};
  const auto shear = [](const Shape& shape) {
    return worst_point(shape, {.vz = 10e3}).shear / MPa;
  };
  verify(source, "largest shear stress, tube 50 x 5 mm", "28.06 MPa",
         shear(RoundTube{.outside = 50 * mm, .wall = 5 * mm}));
  verify(source, "largest shear stress, bar of 30 mm (4V/3A)", "18.86 MPa",
         shear(RoundBar{.diameter = 30 * mm}));
}

TEST_CASE("tube 50 x 5 under tension, two moments and torque has 176.7 MPa", "[sections][stress]") {
  const Source source{
      "superposition on a round section, any text (tube 50 x 5 mm; 20 kN, 0.6 and "
      "0.8 kN m, torque 0.5 kN m)",
      Basis::formula_from_memory};
  const PointStress p = worst_point(RoundTube{.outside = 50 * mm, .wall = 5 * mm},
                                    {.n = 20e3, .t = 500.0, .my = 600.0, .mz = 800.0});
  verify(source, "normal stress", "166.3 MPa", (p.axial + p.bending) / MPa);
  verify(source, "shear stress", "34.51 MPa", p.torsion / MPa);
  verify(source, "von Mises stress", "176.7 MPa", p.von_mises / MPa);
}

}  // namespace section_formulas_test
