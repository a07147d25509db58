// The side force on the link of the small case: friction x axle weight in a hard corner, 1.75 axle
// weights against a curb (Garrett's side curb factor, in Brown, Robertson, Serpento, Motor Vehicle
// Structures, p. 24, read). A link at a slope carries it over the cosine; statics.
#include <cmath>
#include <fstream>
#include <sstream>

#include <catch2/catch.hpp>

#include "tests/verdict/hand_formulas.hpp"
#include "tests/verdict/judged_case.hpp"

namespace statics_verdict_test {
using verdict_tests::judged;

namespace {

/// The small case as far as its comparison, on a rail whose stiffness is known.
std::string small_case() {
  std::ifstream file(LINKMARGIN_SOURCE_DIR "/cases/small-case.yaml");
  std::stringstream text;
  text << file.rdbuf();
  std::string whole = text.str();
  whole.resize(whole.find("compare:"));
  const std::string not_sure = "rail_stiffness: not sure";
  return whole.replace(whole.find(not_sure), not_sure.size(), "rail_stiffness: 100 kN m/rad");
}

/// Compression of the link along its axis, at its frame end.
double compression(const studies::SolvedCase& solved) {
  for (const studies::PieceEnds& piece : solved.pieces) {
    if (piece.part == "lateral_link") return piece.ends[0];
  }
  FAIL("no link");
  return 0.0;
}

}  // namespace

TEST_CASE("the small case's link carries side force over cosine of its slope, in every set",
          "[verdict]") {
  const studies::Answer answer = judged(small_case());
  const double weight = 5500.0 * hand::kPound;
  const double cosine = std::sqrt(1.0 - std::pow(4.0 / 34.0, 2));
  REQUIRE(answer.solved.size() == 4 * answer.sets.size());
  for (const studies::SolvedCase& solved : answer.solved) {
    INFO(solved.load_case << ", " << solved.set);
    const bool curb = solved.load_case.find("curb") != std::string::npos;
    const double force = (curb ? 1.75 : 0.9) * weight / cosine;
    // Turning left pushes the axle left, toward the frame bolt; a curb on the left pushes right.
    const bool left = solved.load_case.find("left") != std::string::npos;
    const double expected = left != curb ? force : -force;
    // The bushings' own stiffness against turning and the bolt's movement take up to 0.5 %.
    CHECK(compression(solved) == Approx(expected).epsilon(5e-3));
  }
}

}  // namespace statics_verdict_test
