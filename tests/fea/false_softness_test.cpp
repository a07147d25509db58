// Second order puts K + Kg together where the frame stood before. The forces of the deformed frame
// do not balance there, which looks like a stiffness, of either sign, of what turns as a rigid
// piece. The finite rotations of large displacement have none of it and are the reference; frames
// and numbers invented.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "tests/fea/random_frame.hpp"

namespace false_softness_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::Loads;
using fea::NodeId;
using fea::SolveStatus;
using fea_test::push;

namespace {

constexpr double kLength = 0.9;
constexpr int kPieces = 8;
const fea::Elastic kSteel{.young = 205.0e9, .shear = 79.0e9};
const sections::AreaProps kTube = fea_test::tube(0.040, 0.005);

/// A link along x between balls, off the line between them; one ball holds it a little against
/// turning about that line.
struct Link {
  fea::Model model;
  NodeId middle;
  NodeId end;  ///< free along x only
  double hold = 0.0;
  double off = 0.0;
};

/// @param off   of the length, at the middle, toward z
/// @param hold  torsional stiffness of the ball, of the link's own
/// @param bow   half a sine wave, else one bend in the middle
Link make_link(double off, double hold, bool bow) {
  Link out{.model = {},
           .middle = {},
           .end = {},
           .hold = hold * kSteel.shear * kTube.torsion / kLength,
           .off = off * kLength};
  std::vector<NodeId> nodes;
  for (int i = 0; i <= kPieces; ++i) {
    const double s = static_cast<double>(i) / kPieces;
    const double shape = bow ? std::sin(3.14159265359 * s) : 1.0 - std::abs(2.0 * s - 1.0);
    const bool at_end = i == 0 || i == kPieces;
    nodes.push_back(
        out.model.add(fea::Node{.at_g = {s * kLength, 0.0, at_end ? 0.0 : out.off * shape}}));
  }
  for (std::size_t i = 0; i < kPieces; ++i) {
    fea::Beam beam{
        .a = {.node = nodes[i]}, .b = {.node = nodes[i + 1]}, .section = kTube, .elastic = kSteel};
    if (i == 0) {
      beam.a.joint = fea_test::joint({fea::kRigid, fea::kRigid, fea::kRigid, out.hold, 0.0, 0.0});
    }
    if (i + 1 == kPieces) beam.b.joint = fea_test::ball();
    out.model.add(beam);
  }
  fea_test::clamp(out.model, nodes.front());
  fea_test::hold(out.model, nodes.back(), {false, true, true, true, true, true});
  out.middle = nodes[kPieces / 2];
  out.end = nodes.back();
  return out;
}

fea::Solution large(const fea::Factored& factored, const Loads& loads, double step = 1.0) {
  return fea::solve(factored, loads,
                    {.method = fea::Method::large_displacement, .largest_step = step});
}

double critical(const fea::Factored& factored, const Loads& loads) {
  return fea::buckle(factored, loads).modes.front().factor;
}

/// Answers up to 0.95 of the critical load, as large displacement has them; none beyond it.
void check_up_to_critical(const Link& link, const Loads& besides) {
  const fea::Factored factored = fea::factor(link.model);
  const Loads along = push(link.end, {-1.0, 0.0, 0.0});
  const double highest = critical(factored, along);
  // The nearer to the critical load, the more the terms matter that small rotations leave out.
  for (const auto& [part, tolerance] :
       {std::pair{0.5, 3e-3}, std::pair{0.8, 3e-3}, std::pair{0.95, 0.08}}) {
    INFO(part << " of the critical load");
    const Loads loads = along * (part * highest) + besides;
    const fea::Solution s = fea::solve(factored, loads);
    REQUIRE(s.status() == SolveStatus::converged);
    CHECK(s.residual() < 1e-8);
    const fea::Solution t = large(factored, loads);
    REQUIRE(t.status() == SolveStatus::converged);
    CHECK_THAT(s.placement(link.middle)(2), WithinRel(t.placement(link.middle)(2), tolerance));
  }
  for (const double part : {1.05, 1.5, 4.0}) {
    INFO(part << " of the critical load");
    const fea::Solution s = fea::solve(factored, along * (part * highest) + besides);
    CHECK(s.status() == SolveStatus::unstable);
  }
}

}  // namespace

TEST_CASE("a bent link on balls carries up to its buckling load", "[fea][second-order]") {
  for (const double hold : {1.0e-3, 1.0e-1}) {
    const Link link = make_link(0.002, hold, false);
    check_up_to_critical(link, {});
    check_up_to_critical(link, push(link.middle, {0.0, 20.0 * hold, 0.0}));  // turns it
  }
}

TEST_CASE("a bowed column on balls carries up to its buckling load", "[fea][second-order]") {
  check_up_to_critical(make_link(0.001, 1.0e-3, true), {});
}

TEST_CASE("where the search starts has no say in whether a bent link carries",
          "[fea][second-order]") {
  const Link link = make_link(0.002, 1.0e-3, false);
  const fea::Factored factored = fea::factor(link.model);
  const Loads along = push(link.end, {-1.0, 0.0, 0.0});
  const double highest = critical(factored, along);
  const fea::Solution low = fea::solve(factored, along * (0.3 * highest));
  for (const double part : {0.8, 0.9, 1.05}) {
    const Loads loads = along * (part * highest);
    const fea::Solution cold = fea::solve(factored, loads);
    const fea::Solution warm =
        fea::solve(factored, loads, {.near = &low, .near_factor = part / 0.3});
    REQUIRE(warm.status() == cold.status());
    if (cold.status() != SolveStatus::converged) continue;
    CHECK_THAT(warm.placement(link.middle)(2), WithinRel(cold.placement(link.middle)(2), 1e-6));
  }
}

TEST_CASE("a bent link that a weight would turn over is unstable", "[fea][second-order]") {
  // Weight W at the bend, pressing it toward the line between the balls: the link turns over once
  // W times the height of the bend passes what the ball holds. A push along the link has raised the
  // bend by a third, which K + Kg of the undeformed link does not see: it takes the link for stiff.
  const Link link = make_link(0.020, 1.0e-3, false);
  const fea::Factored factored = fea::factor(link.model);
  const Loads along = push(link.end, {-1.0, 0.0, 0.0});
  const Loads pushed = along * (0.3 * critical(factored, along));
  const double raised = link.off + fea::solve(factored, pushed).placement(link.middle)(2);
  REQUIRE(raised > 1.25 * link.off);
  for (const double part : {0.5, 0.9, 1.05, 1.15}) {
    INFO(part << " of the weight that turns it over");
    const Loads loads = pushed + push(link.middle, {0.0, 0.0, -part * link.hold / raised});
    const SolveStatus expected = part < 1.0 ? SolveStatus::converged : SolveStatus::unstable;
    CHECK(fea::solve(factored, loads).status() == expected);
    CHECK(large(factored, loads, 0.1).status() == expected);
  }
}

TEST_CASE("a bar on balls does not spin away under a weight", "[fea][second-order]") {
  // K + s Kg turns the bending moment of a round bar with the bar: by it, the bar spins away at the
  // weight W with W^2 = 48 E I / L^3 times what holds it, whatever its strength.
  const Link link = make_link(0.0, 1.0e-3, false);
  const fea::Factored factored = fea::factor(link.model);
  const double bends = 48.0 * kSteel.young * kTube.iyy / (kLength * kLength * kLength);
  const double spins = std::sqrt(bends * link.hold);
  CHECK_THAT(critical(factored, push(link.middle, {0.0, 0.0, -1.0})), WithinRel(spins, 0.03));
  for (const double part : {0.5, 1.5, 4.0}) {
    INFO(part << " of that weight");
    const Loads weight = push(link.middle, {0.0, 0.0, -part * spins});
    const fea::Solution s = fea::solve(factored, weight);
    REQUIRE(s.status() == SolveStatus::converged);
    const fea::Solution t = large(factored, weight);
    REQUIRE(t.status() == SolveStatus::converged);
    CHECK_THAT(s.placement(link.middle)(2), WithinRel(t.placement(link.middle)(2), 2e-3));
  }
}

TEST_CASE("no answer is given for a frame that is not stable", "[fea][second-order][property]") {
  // Frames near a critical factor of either sign: what second order answers, large displacement
  // reaches too, going step by step from no load.
  int n_answered = 0;
  for (std::uint32_t seed = 1; seed <= 12; ++seed) {
    fea_test::RandomFrame frame = fea_test::random_frame(seed);
    frame.model.rigid.clear();
    for (const int node : {6, 7}) fea_test::clamp(frame.model, NodeId{node});
    for (fea::Beam& beam : frame.model.beams) {  // slender: they buckle before they turn far
      beam.section.iyy *= 0.01;
      beam.section.izz *= 0.01;
    }
    Loads loads = frame.other;
    loads.nodes.push_back(frame.loads.nodes.front());
    const fea::Factored factored = fea::factor(frame.model);
    const fea::BucklingResult buckling = fea::buckle(factored, loads, {.n_reversed = 1});
    std::vector<double> factors;
    if (!buckling.modes.empty()) factors.push_back(buckling.modes.front().factor);
    if (!buckling.reversed.empty()) factors.push_back(buckling.reversed.front().factor);
    for (const double factor : factors) {
      for (const double part : {0.5, 0.8, 0.95, 1.02}) {
        INFO("frame " << seed << ", " << part << " of " << factor);
        const Loads now = loads * (part * factor);
        if (fea::solve(factored, now).status() != SolveStatus::converged) continue;
        ++n_answered;
        CHECK(part < 1.0);
        CHECK(large(factored, now, 0.2).status() == SolveStatus::converged);
      }
    }
  }
  CHECK(n_answered > 20);
}

}  // namespace false_softness_test
