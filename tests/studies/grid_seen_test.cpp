// What a grid is told by designs that were solved saves solving others: it must have no say in the
// answer. Invented numbers.
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "studies/grid_screen.hpp"
#include "studies/judged.hpp"
#include "tests/studies/read_case.hpp"

namespace grid_seen_test {
namespace {

struct Solved {
  std::vector<std::size_t> choice;
  studies::Judged judged;
};

/// Some of the sizes of a part, from light to heavy.
std::vector<studies::SizeChoice> some_sizes(const parts::Design& design, const std::string& part) {
  const std::vector<studies::SizeChoice> all = studies::sizes_for(design, part, {}, {});
  constexpr std::size_t kSome = 3;
  std::vector<studies::SizeChoice> out;
  for (std::size_t i = 0; i < kSome; ++i) {
    out.push_back(all[all.size() * (i + kSome) / (2 * kSome)]);
  }
  return out;
}

studies::SeenCheck check_of(const studies::Judged& judged) {
  return {judged.part, judged.check, judged.load_case, judged.utilization};
}

}  // namespace

TEST_CASE("a grid is never told more of a design than it comes to", "[studies][pick][property]") {
  const parts::Design design = studies_tests::read_example("front-axle-us.yaml");
  const std::vector<std::string> parts = {"lateral_link", "brace"};
  const std::vector<std::vector<studies::SizeChoice>> sizes = {some_sizes(design, parts[0]),
                                                               some_sizes(design, parts[1])};
  const studies::Counted counted = studies::as_drawn(design, parts).counted;
  const studies::GridScreen screen(design, parts, sizes, counted);
  REQUIRE(screen.n_looks() > 0);
  std::vector<Solved> all;
  for (std::size_t i = 0; i < sizes[0].size() * sizes[1].size(); ++i) {
    const std::vector<std::size_t> choice = {i % sizes[0].size(), i / sizes[0].size()};
    const parts::Design changed =
        with_size(with_size(design, parts[0], sizes[0][choice[0]]), parts[1], sizes[1][choice[1]]);
    all.push_back({choice, studies::judged(changed, counted)});
    REQUIRE(std::isfinite(all.back().judged.utilization));
  }
  int n_told = 0;
  int n_told_by_others = 0;
  for (const Solved& one : all) {
    const double comes_to = one.judged.utilization;
    INFO(sizes[0][one.choice[0]].item.label << " and " << sizes[1][one.choice[1]].item.label << ", "
                                            << one.judged.part << ", " << one.judged.check << ", "
                                            << one.judged.load_case << ", " << comes_to);
    studies::GridScreen::Seen others;
    for (const Solved& other : all) {
      if (&other != &one) screen.see(other.choice, check_of(other.judged), others);
    }
    studies::GridScreen::Hint hint;
    CHECK(!screen.surely_over(one.choice, comes_to, hint, others));
    const double nearly = 0.98 * comes_to;
    n_told += screen.surely_over(one.choice, nearly, hint, {}) ? 1 : 0;
    n_told_by_others += screen.surely_over(one.choice, nearly, hint, others) ? 1 : 0;
  }
  CAPTURE(n_told, n_told_by_others);
  CHECK(n_told_by_others > n_told + 4);
}

}  // namespace grid_seen_test
