// A bar's own second order in as many beams as it is made of: its buckling load, wherever that
// comes before the squash load.
#include "parts/beams_of_straight.hpp"

#include <array>
#include <limits>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "tests/fea/build_frames.hpp"

namespace beams_of_straight_test {
namespace {

using fea::Vector3;
using Held = std::array<bool, 6>;
constexpr Held kPinnedFoot = {true, true, true, true, false, true};
constexpr Held kPinnedTop = {true, true, false, true, false, true};
constexpr Held kFixedFoot = {true, true, true, true, true, true};
constexpr Held kFixedTop = {true, true, false, true, true, true};

struct Ends {
  std::string name;
  Held foot;
  Held top;
  double k_length;  ///< sqrt(P / E I) times the length at which it buckles
  bool held = false;
};

/// Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., art. 2.1-2.3, from memory: pi,
/// tan kL = kL, 2 pi.
const std::vector<Ends> kEnds = {{"pinned", kPinnedFoot, kPinnedTop, 3.14159265},
                                 {"one end fixed", kFixedFoot, kPinnedTop, 4.49340946},
                                 {"both fixed", kFixedFoot, kFixedTop, 6.28318531, true}};

double buckling_load(const sections::AreaProps& section, const sections::Material& steel,
                     double length, const Ends& ends) {
  fea::Model model;
  const fea_test::Chain post =
      fea_test::chain(model, Vector3::Zero(), {0.0, 0.0, length},
                      parts::beams_of_straight(section, steel, length, ends.held), section,
                      {steel.elastic, steel.shear_modulus()});
  fea_test::keep_in_xz(model);
  fea_test::hold(model, post.nodes.front(), ends.foot);
  fea_test::hold(model, post.nodes.back(), ends.top);
  const fea::BucklingResult found =
      fea::buckle(fea::factor(model), fea_test::push(post.nodes.back(), {0.0, 0.0, -1.0}));
  // Both ends of one beam held: nothing is left that could bend.
  if (found.modes.empty()) return std::numeric_limits<double>::infinity();
  return found.modes.front().factor;
}

}  // namespace

TEST_CASE("a bar is made of as many beams as its buckling takes", "[parts][buckling]") {
  int n_compared = 0;
  for (const double yield : {235.0e6, 355.0e6, 690.0e6}) {
    sections::Material steel;
    steel.elastic = 210.0e9;
    steel.yield = yield;
    const sections::AreaProps section = fea_test::tube(0.040, 0.005);
    for (double length = 0.05; length < 3.0; length *= 1.05) {
      for (const Ends& ends : kEnds) {
        const double euler =
            steel.elastic * section.iyy * ends.k_length * ends.k_length / (length * length);
        const double squash = yield * section.area;
        const double found = buckling_load(section, steel, length, ends);
        INFO(ends.name << ", " << length << " m, " << yield);
        if (euler > squash) {
          CHECK(found > squash);
          continue;
        }
        ++n_compared;
        CHECK(found >= (1.0 - 1.0e-6) * euler);
        CHECK(found < 1.005 * euler);
      }
    }
  }
  CHECK(n_compared > 150);
}

TEST_CASE("a bar of more than one beam has a node in its middle", "[parts]") {
  sections::Material steel;
  steel.elastic = 210.0e9;
  steel.yield = 355.0e6;
  const sections::AreaProps section = fea_test::tube(0.040, 0.005);
  const auto n_beams = [&](double length, bool held) {
    return parts::beams_of_straight(section, steel, length, held);
  };
  CHECK(n_beams(0.2, true) == 1);
  CHECK(n_beams(0.7, true) == 2);
  CHECK(n_beams(1.0, true) == 4);
  CHECK(n_beams(10.0, true) == 8);
  CHECK(n_beams(10.0, false) == 4);
  steel.yield = base::kUnset;
  CHECK(n_beams(0.2, true) == 8);
  CHECK(n_beams(0.2, false) == 4);
}

}  // namespace beams_of_straight_test
