// Stability functions: how a compressed strut resists a turn of its end.

#include <string>

#include <catch2/catch.hpp>

#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace stability_functions_test {
using fea::Vector3;
using fea_test::Chain;
using fea_test::push;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

constexpr double kLength = 2.0;
constexpr double kStiffness = 50.0 * 1.7;  // E I

struct Functions {
  double s, c;
};

/// Near-end stiffness s EI / L and carry-over c with the far end fixed, compressed by `rho` times
/// Euler's load.
Functions functions(double rho) {
  fea::Model model;
  const Chain strut =
      fea_test::chain(model, Vector3::Zero(), {kLength, 0.0, 0.0}, 8,
                      fea_test::section(3.0e6, 1.7, 1.7, 1.0), {.young = 50.0, .shear = 20.0});
  fea_test::keep_in_xz(model);
  fea_test::hold(model, strut.nodes.front(), {false, true, true, true, false, true});
  fea_test::clamp(model, strut.nodes.back());
  const double axial = rho * base::kPi * base::kPi * kStiffness / (kLength * kLength);
  const double moment = 1e-6 * kStiffness;
  const fea::Solution s = fea::solve(
      fea::factor(model), push(strut.nodes.front(), {axial, 0.0, 0.0}, {0.0, moment, 0.0}));
  REQUIRE(s.status() == fea::SolveStatus::converged);
  return {moment / s.placement(strut.nodes.front())(4) * kLength / kStiffness,
          s.reaction(strut.nodes.back())(4) / moment};
}

}  // namespace

TEST_CASE("stability functions without load and at the Euler load", "[fea][second-order]") {
  const Source source{"Livesley and Chandler, Stability Functions for Structural Frameworks (1956)",
                      Basis::from_memory};
  verify(source, "s at P = 0", "4", functions(0.0).s, within(3e-4));
  verify(source, "c at P = 0", "0.5", functions(0.0).c, within(3e-4));
  verify(source, "s at P = Pe", "2.467", functions(1.0).s, within(3e-4));
  verify(source, "c at P = Pe", "1.000", functions(1.0).c);
  double low = 1.9;
  double high = 2.04;  // beyond the root the strut is unstable and has no answer
  verify(source, "P / Pe at which s is zero, from s at 1.90 and 2.04", "2.046",
         high + functions(high).s * (high - low) / (functions(low).s - functions(high).s),
         within(0.001));
}

}  // namespace stability_functions_test
