// Single beams of AISC Manual table 3-23: 40 in long, E 29e6 psi, I 0.5 in4. in, lb.

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace aisc_beam_tables_test {
using Catch::Matchers::WithinAbs;
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

constexpr double kSpan = 40.0;
const fea::Elastic kInchSteel{.young = 29.0e6, .shear = 11.2e6};
const sections::AreaProps kBar = fea_test::section(2.0, 0.5, 0.5, 0.8);

}  // namespace

TEST_CASE("cantilever with an end load", "[fea]") {
  const Source source{"AISC Manual, table 3-23, cantilever, load at its end (PL, PL3/3EI, PL2/2EI)",
                      Basis::formula_from_memory};
  fea::Model model;
  const Chain beam = chain(model, Vector3::Zero(), {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel);
  fea_test::clamp(model, beam.nodes[0]);
  const fea::Solution s = fea_test::linear(model, push(beam.nodes[1], {0.0, 0.0, -1000.0}));
  verify(source, "deflection of the tip", "1.4713 in", -s.placement(beam.nodes[1])(2));
  verify(source, "slope of the tip", "0.055172 rad", s.placement(beam.nodes[1])(4));
  // Up on the cut's positive face at the wall is compression below: My = int sigma z dA > 0.
  verify(source, "moment at the wall", "40000 lb in", s.forces_at(beam.beams[0], 0.0).my,
         within(1e-9));
  CHECK_THAT(s.reaction(beam.nodes[0])(2), WithinRel(1000.0, 1e-12));
  CHECK_THAT(s.forces_at(beam.beams[0], kSpan).my, WithinAbs(0.0, 1e-7));
  CHECK(s.residual() < 1e-12);
}

TEST_CASE("beam fixed at both ends with a load at the center", "[fea]") {
  const Source source{
      "AISC Manual, table 3-23, fixed at both ends, load at the center (PL/8, "
      "PL3/192EI)",
      Basis::formula_from_memory};
  fea::Model model;
  const Chain beam = chain(model, Vector3::Zero(), {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel);
  fea_test::clamp(model, beam.nodes[0]);
  fea_test::clamp(model, beam.nodes[1]);
  fea::Loads loads;
  loads.points.push_back(
      {.beam = beam.beams[0], .at = 0.5 * kSpan, .force_g = {0.0, 0.0, -1000.0}});
  const fea::Solution s = fea_test::linear(model, loads);
  verify(source, "moment at the ends", "5000 lb in", s.forces_at(beam.beams[0], 0.0).my,
         within(1e-9));
  verify(source, "moment at the center", "5000 lb in", -s.forces_at(beam.beams[0], 0.5 * kSpan).my,
         within(1e-9));

  fea::Model split;
  const Chain halves = chain(split, Vector3::Zero(), {kSpan, 0.0, 0.0}, 2, kBar, kInchSteel);
  fea_test::clamp(split, halves.nodes[0]);
  fea_test::clamp(split, halves.nodes[2]);
  const fea::Solution t = fea_test::linear(split, push(halves.nodes[1], {0.0, 0.0, -1000.0}));
  verify(source, "deflection of the center", "0.022989 in", -t.placement(halves.nodes[1])(2));
}

TEST_CASE("propped cantilever with a uniform load", "[fea]") {
  const Source source{
      "AISC Manual, table 3-23, fixed and propped, uniform load (3wL/8, 5wL/8, "
      "wL2/8, 9wL2/128, wL4/185EI)",
      Basis::formula_from_memory};
  const double w = 50.0;
  fea::Model model;
  const Chain beam = chain(model, Vector3::Zero(), {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel);
  fea_test::clamp(model, beam.nodes[0]);
  fea_test::hold(model, beam.nodes[1], {false, true, true, true, false, true});
  fea::Loads loads;
  loads.lines.push_back(
      {.beam = beam.beams[0], .at_from_g = {0.0, 0.0, -w}, .at_to_g = {0.0, 0.0, -w}});
  const fea::Solution s = fea_test::linear(model, loads);
  verify(source, "force of the prop", "750 lb", s.reaction(beam.nodes[1])(2), within(1e-9));
  verify(source, "force at the wall", "1250 lb", s.reaction(beam.nodes[0])(2), within(1e-9));
  verify(source, "moment at the wall", "10000 lb in", s.forces_at(beam.beams[0], 0.0).my,
         within(1e-9));
  verify(source, "largest moment of the span", "5625 lb in",
         -s.forces_at(beam.beams[0], 0.625 * kSpan).my, within(1e-9));

  // The largest deflection is 0.4215 L from the prop.
  const double at = (1.0 - 0.4215) * kSpan;
  fea::Model split;
  const Chain left = chain(split, Vector3::Zero(), {at, 0.0, 0.0}, 1, kBar, kInchSteel);
  const Chain right =
      chain(split, {at, 0.0, 0.0}, {kSpan, 0.0, 0.0}, 1, kBar, kInchSteel, left.nodes[1]);
  fea_test::clamp(split, left.nodes[0]);
  fea_test::hold(split, right.nodes[1], {false, true, true, true, false, true});
  fea::Loads halves;
  for (const fea::BeamId id : {left.beams[0], right.beams[0]}) {
    halves.lines.push_back({.beam = id, .at_from_g = {0.0, 0.0, -w}, .at_to_g = {0.0, 0.0, -w}});
  }
  // The coefficient 185 is rounded from 184.6.
  verify(source, "largest deflection", "0.0477 in",
         -fea_test::linear(split, halves).placement(left.nodes[1])(2), within(0.003));
}

}  // namespace aisc_beam_tables_test
