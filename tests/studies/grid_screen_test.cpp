#include "studies/grid_screen.hpp"

#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "cases/starters.hpp"
#include "sections/material.hpp"
#include "studies/cell.hpp"
#include "tests/studies/read_case.hpp"

namespace grid_screen_test {

/// The cells of a set in which stops carry by second order at ride height.
std::vector<studies::CellName> cells_with_stops(const parts::Design& design,
                                                const parts::StiffnessSet& set) {
  std::vector<studies::CellName> out;
  const studies::SetModel model(design, set);
  for (const parts::DesignCase& load_case : parts::design_cases(design)) {
    const studies::Cell cell(model, load_case);
    const studies::CaseSolution& reached = cell.kept(1.0);
    const bool moved = cell.second_order() != nullptr;
    const studies::CaseSolution& solved = moved ? *cell.second_order() : reached;
    if (cell.in_proportion() || solved.closed_stops == 0) continue;
    out.push_back({set.name, load_case.name});
  }
  return out;
}

TEST_CASE("what a grid does not build where stops carry is over its limit in full",
          "[studies][pick]") {
  std::string text(cases::starter("radius-arms"));
  const std::string travel = "bump_travel: 3 in";
  REQUIRE(text.find(travel) != std::string::npos);
  // So near that a hard corner comes to rest on one of the two.
  text.replace(text.find(travel), travel.size(), "bump_travel: 0.5 in");
  text += "load_cases: [hard stop, hard corner, both wheels hit hard]\n";
  const parts::Design design = studies_tests::read_case(text);
  const std::vector<std::string> parts = {"lateral_link", "arm.lower"};
  const std::optional<sections::Material> steel = sections::find_material("E355_SR");
  REQUIRE(steel.has_value());
  std::vector<studies::SizeChoice> sizes;
  for (const auto& [outside, wall] : std::vector<std::pair<double, double>>{
           {0.010, 0.001}, {0.018, 0.0015}, {0.030, 0.003}, {0.060, 0.008}}) {
    sizes.push_back({{.label = "", .shape = sections::RoundTube{outside, wall}}, *steel});
  }
  const std::vector<studies::CellName> cells =
      cells_with_stops(design, parts::stiffness_sets(design).front());
  REQUIRE(!cells.empty());
  std::size_t n_told = 0;
  for (const studies::CellName& cell : cells) {
    INFO(cell.load_case);
    studies::Counted first{.asked = parts};
    first.look_first = {cell};
    const studies::GridScreen screen(design, parts, {sizes, sizes}, first);
    CHECK(screen.n_looks() == 1);
    studies::Counted alone{.asked = parts};
    alone.load_cases = {cell.load_case};
    alone.sets = {cell.set};
    for (std::size_t i = 0; i < sizes.size() * sizes.size(); ++i) {
      const std::vector<std::size_t> choice = {i % sizes.size(), i / sizes.size()};
      const parts::Design changed =
          with_size(with_size(design, parts[0], sizes[choice[0]]), parts[1], sizes[choice[1]]);
      double worst = 0.0;
      for (const checks::Finding& f : studies::run(changed, "", {}, alone).answer.findings) {
        if (!alone.is_asked(f.part)) continue;
        // What is not decided, as where the frame gives way, does not pass either.
        const bool decided = f.state != checks::State::undecided;
        worst =
            std::max(worst, decided ? f.utilization() : std::numeric_limits<double>::infinity());
      }
      for (const double most : {1.0, 0.7, 0.4}) {
        if (!screen.surely_over(choice, most)) continue;
        ++n_told;
        CHECK(worst > most);
      }
    }
  }
  CHECK(n_told > 3 * sizes.size());
}

}  // namespace grid_screen_test
