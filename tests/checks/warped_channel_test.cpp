// A channel that warps: its sectors against their own integral, and its stresses by hand.
#include "checks/warped_channel.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace warped_channel_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

constexpr sections::Channel kChannel{.depth = 0.150, .width = 0.100, .web = 0.008, .flange = 0.008};

}  // namespace

// Cw is the integral of the sectorial coordinate's square: from e h/2 at a corner it falls along
// the flange, and grows along the web from nothing in the middle (Vlasov; e of 38.5 mm is
// 3 b^2 / (h + 6 b), Beer and Johnston, from memory).
TEST_CASE("a channel's warping constant is the integral of its sectors", "[checks][warping]") {
  const double h = 0.142;
  const double b = 0.096;
  const double t = 0.008;
  const checks::ChannelSectors s = checks::channel_sectors(kChannel);
  const double e = 3.0 * b * b / (h + 6.0 * b);
  CHECK_THAT(s.shear_center, WithinRel(e, 1e-12));
  const double web = e * e * t * h * h * h / 12.0;
  const double flanges = t * h * h / 6.0 * (std::pow(e, 3) + std::pow(b - e, 3));
  CHECK_THAT(s.constant, WithinRel(web + flanges, 1e-12));
  CHECK_THAT(s.most, WithinRel(0.5 * h * (b - e), 1e-12));
}

TEST_CASE("stresses of bending, warping and torsion are added", "[checks][warping]") {
  const checks::WarpedChannel section(kChannel);
  const checks::ChannelSectors s = checks::channel_sectors(kChannel);
  checks::WarpedCut cut;
  cut.bimoment = -200.0;
  CHECK_THAT(section.von_mises(cut), WithinRel(200.0 * s.most / s.constant, 1e-12));
  cut.bimoment = 0.0;
  cut.resultants.t = cut.st_venant = 300.0;
  const double torsion = (2.0 * 0.096 + 0.142) * std::pow(0.008, 3) / 3.0;
  CHECK_THAT(section.shear(cut), WithinRel(300.0 * 0.008 / torsion, 1e-6));
  cut.st_venant = 0.0;  // all of it warps: each flange shears by T / h
  CHECK_THAT(section.shear(cut), WithinRel(1.5 * 300.0 / (0.142 * 0.096 * 0.008), 1e-12));
}

TEST_CASE("a thin wall that warps is not decided", "[checks][warping]") {
  checks::WarpedChannelInput input{.shape = kChannel, .cut = {}};
  input.cut.bimoment = 100.0;
  input.elastic = 210.0e9;
  input.strength = 355.0e6;
  input.safety_factor = 2.0;
  input.required = 1.5;
  CHECK(checks::warped_channel(input).state == checks::State::within);
  // 100 mm over 0.56 sqrt(E / Fy) = 13.62 (AISC 360-22 table B4.1a, from memory): 7.34 mm.
  input.shape.web = input.shape.flange = 0.0074;
  CHECK(checks::warped_channel(input).state == checks::State::within);
  input.shape.web = input.shape.flange = 0.0073;
  const checks::Finding thin = checks::warped_channel(input);
  CHECK(thin.state == checks::State::undecided);
  CHECK_THAT(thin.reason, Contains("buckle before it yields"));
}

}  // namespace warped_channel_test
