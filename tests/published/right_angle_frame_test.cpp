// The right-angle frame that buckles sideways: legs of 240, a strip 30 deep and 0.6 thick in the
// plane of the frame. mm, N.

#include <cmath>

#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace right_angle_frame_test {
using Catch::Matchers::WithinRel;
using fea::Vector3;
using fea_test::chain;
using fea_test::Chain;
using fea_test::push;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

const Source kSource{
    "Argyris and others, Comput. Methods Appl. Mech. Eng. 17/18 (1979); Simo and "
    "Vu-Quoc (1986), right-angle frame",
    Basis::from_memory};

const fea::Elastic kAlloy{.young = 71240.0, .shear = 71240.0 / 2.62};
constexpr double kLeg = 240.0;
const sections::AreaProps kStrip =
    fea_test::section(18.0, 30.0 * 0.6 * 0.6 * 0.6 / 12.0, 0.6 * 30.0 * 30.0 * 30.0 / 12.0,
                      30.0 * 0.6 * 0.6 * 0.6 / 3.0);

double lowest(const fea::Factored& factored, const fea::Loads& loads) {
  const fea::BucklingResult result = fea::buckle(factored, loads);
  REQUIRE(result.status == fea::BucklingStatus::found);
  return result.modes.front().factor;
}

}  // namespace

TEST_CASE("right-angle frame pushed at its free end", "[fea][buckling]") {
  // Without the joint moments' terms it is 0.55 and -0.42.
  fea::Model model;
  const Chain first = chain(model, Vector3::Zero(), {kLeg, 0.0, 0.0}, 8, kStrip, kAlloy);
  const Chain second =
      chain(model, {kLeg, 0.0, 0.0}, {kLeg, -kLeg, 0.0}, 8, kStrip, kAlloy, first.nodes.back());
  fea_test::clamp(model, first.nodes.front());
  const fea::Factored factored = fea::factor(model);
  const auto factor_of = [&](double push_x) {
    return lowest(factored, push(second.nodes.back(), {push_x, 0.0, 0.0}));
  };
  verify(kSource, "critical force at the free end, outward", "1.088 N", factor_of(1.0),
         within(2e-3));
  verify(kSource, "critical force at the free end, inward", "0.680 N", factor_of(-1.0),
         within(2e-3));
  const fea::BucklingResult both =
      fea::buckle(factored, push(second.nodes.back(), {1.0, 0.0, 0.0}), {.n_reversed = 1});
  REQUIRE(both.reversed.size() == 1);
  verify(kSource, "the same as a reversed factor", "-0.680", both.reversed[0].factor, within(2e-3));
}

TEST_CASE("right-angle frame bent by moments at its ends", "[fea][buckling]") {
  // The ends turn about the normal of the plane alone; one of them slides toward the other.
  fea::Model model;
  const double half = kLeg / std::sqrt(2.0);
  const Chain first = chain(model, Vector3::Zero(), {half, half, 0.0}, 16, kStrip, kAlloy);
  const Chain second = chain(model, {half, half, 0.0}, {2.0 * half, 0.0, 0.0}, 16, kStrip, kAlloy,
                             first.nodes.back());
  fea_test::hold(model, first.nodes.front(), {true, true, true, true, true, false});
  fea_test::hold(model, second.nodes.back(), {false, true, true, true, true, false});
  const fea::Factored factored = fea::factor(model);
  const auto moments = [&](double sign) {
    return push(first.nodes.front(), Vector3::Zero(), {0.0, 0.0, sign}) +
           push(second.nodes.back(), Vector3::Zero(), {0.0, 0.0, -sign});
  };
  const double closed =
      base::kPi * std::sqrt(kAlloy.young * kStrip.iyy * kAlloy.shear * kStrip.torsion) / kLeg;
  CHECK_THAT(closed, WithinRel(622.2, 1e-4));
  verify(kSource, "critical end moments, opening", "622.2 N mm", lowest(factored, moments(1.0)),
         within(3e-3));
  verify(kSource, "critical end moments, closing", "622.2 N mm", lowest(factored, moments(-1.0)),
         within(3e-3));
}

}  // namespace right_angle_frame_test
