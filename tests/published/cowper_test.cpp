// Shear coefficients of beams, and a short beam in which they count.

#include <string>

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace cowper_test {
using fea::Vector3;
using fea_test::Chain;
using published::Basis;
using published::Source;
using published::verify;
using namespace sections;

namespace {

double along_z(const Shape& shape, double poisson) {
  const AreaProps p = area_props(shape, poisson);
  return p.shear_z / p.area;
}

}  // namespace

TEST_CASE("shear coefficients are Cowper's", "[sections][area_props]") {
  const Source table{"Cowper, J. Appl. Mech. 33 (1966), table 1", Basis::from_memory};
  verify(table, "circle, nu = 0.3", "0.886", along_z(RoundBar{0.05}, 0.3));
  verify(table, "rectangle, nu = 0.3", "0.850", along_z(FlatBar{0.06, 0.01}, 0.3));
  verify(table, "thin round tube, nu = 0.3", "0.531", along_z(RoundTube{0.1, 1e-7}, 0.3));
  verify(table, "thin square tube, nu = 0.3", "0.436",
         along_z(RectangularTube{0.1, 0.1, 1e-7, 1e-7}, 0.3));
  verify(table, "circle, nu = 0", "0.857", along_z(RoundBar{0.05}, 0.0));
  verify(table, "rectangle, nu = 0", "0.833", along_z(FlatBar{0.06, 0.01}, 0.0));
  const Source formula{"Cowper, J. Appl. Mech. 33 (1966), hollow circle",
                       Basis::formula_from_memory};
  verify(formula, "inner diameter 0.8 of the outer, nu = 0.3", "0.541",
         along_z(RoundTube{1.0, 0.1}, 0.3));
  verify(formula, "tube 1.5 x 0.120, nu = 0.3", "0.53703", along_z(RoundTube{1.5, 0.12}, 0.3));
}

TEST_CASE("short tube cantilever with shear give", "[fea]") {
  // P L^3 / 3EI + P L / (kappa A G), in and lb.
  const Source source{
      "Timoshenko's beam with Cowper's coefficient, tube 1.5 x 0.120 in, 6 in long, "
      "1000 lb at the tip",
      Basis::formula_from_memory};
  const AreaProps tube = area_props(RoundTube{1.5, 0.12});
  const fea::Elastic elastic{.young = 30.0e6, .shear = 11.5e6};
  for (const int n : {1, 3}) {
    fea::Model model;
    const Chain beam = fea_test::chain(model, Vector3::Zero(), {6.0, 0.0, 0.0}, n, tube, elastic);
    fea_test::clamp(model, beam.nodes.front());
    const fea::Solution s =
        fea_test::linear(model, fea_test::push(beam.nodes.back(), {0.0, 1000.0, 1000.0}));
    const std::string pieces = std::to_string(n) + (n == 1 ? " beam" : " beams");
    verify(source, "deflection along y, " + pieces, "0.021101 in",
           s.placement(beam.nodes.back())(1));
    verify(source, "deflection along z, " + pieces, "0.021101 in",
           s.placement(beam.nodes.back())(2));
  }
}

}  // namespace cowper_test
