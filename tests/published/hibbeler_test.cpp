// A pin-ended tube column, as a frame and by the column formula.

#include <catch2/catch.hpp>

#include "checks/column_strength.hpp"
#include "fea/buckling.hpp"
#include "sections/area_props.hpp"
#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace hibbeler_test {
using Catch::Matchers::WithinRel;
using fea::Vector3;
using published::Basis;
using published::Source;
using published::verify;

TEST_CASE("pin-ended tube column", "[fea][buckling][column]") {
  const Source source{
      "Hibbeler, Mechanics of Materials, SI ed., example 13.1 (radii 75 and 70 mm, "
      "7.2 m, 200 GPa)",
      Basis::read};
  const sections::AreaProps tube =
      sections::area_props(sections::RoundTube{.outside = 0.150, .wall = 0.005});
  const fea::Elastic steel{.young = 200.0e9, .shear = 77.0e9};
  fea::Model model;
  const fea_test::Chain post =
      fea_test::chain(model, Vector3::Zero(), {0.0, 0.0, 7.2}, 8,
                      fea_test::section(tube.area, tube.iyy, tube.izz, tube.torsion), steel);
  fea_test::hold(model, post.nodes.front(), {true, true, true, false, false, true});
  fea_test::hold(model, post.nodes.back(), {true, true, false, false, false, false});
  const fea::BucklingResult result =
      fea::buckle(fea::factor(model), fea_test::push(post.nodes.back(), {0.0, 0.0, -1000.0}));
  REQUIRE(result.modes.size() == 3);
  verify(source, "critical load, as a frame", "228.2 kN", result.modes[0].factor);
  verify(source, "critical stress, as a frame", "100.2 MPa",
         1000.0 * result.modes[0].factor / tube.area / base::kMegapascal);
  verify(source, "critical load, column formula", "228.2 kN",
         checks::euler_load(200e9, tube.iyy, 7.2) / base::kKilonewton);
  // Round: twice, and the next four times as high.
  CHECK_THAT(result.modes[1].factor, WithinRel(result.modes[0].factor, 1e-8));
  CHECK_THAT(result.modes[2].factor, WithinRel(4.0 * 228.2, 1e-3));
}

}  // namespace hibbeler_test
