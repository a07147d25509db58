// How many designs of a grid a second can be said no to: condensed onto the ends of the parts
// picked by one thread and by two, built and solved anew in second order where the parts come
// nearest to their limits, and judged in full. The floor is LAPACK's dense Cholesky solution
// (dposv) of as many equations. Of the small case, and of three parts of the demo axle, of which a
// whole grid is picked too.

#include <optional>
#include <string>
#include <vector>

#include <Eigen/Dense>
#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "studies/grid_screen.hpp"
#include "studies/judged.hpp"
#include "studies/pick_grid.hpp"
#include "tests/bench/example.hpp"
#include "tests/studies/two_threads.hpp"

extern "C" void dposv_(const char* uplo, const int* n, const int* nrhs, double* a, const int* lda,
                       double* b, const int* ldb, int* info, std::size_t);

namespace {

/// The parts of an example picked together, and every size of each.
struct Picked {
  explicit Picked(const std::string& example, std::vector<std::string> names)
      : design(bench::example_design(example)), parts(std::move(names)) {
    counted = studies::as_drawn(design, parts).counted;
    for (const std::string& part : parts) {
      sizes.push_back(studies::sizes_for(design, part, {}, {}));
    }
    screen.emplace(design, parts, sizes, counted);
    INVARIANT(screen->n_looks() > 0);
  }

  /// Spread over the whole grid.
  [[nodiscard]] std::vector<std::size_t> choice(std::size_t n) const {
    std::vector<std::size_t> out;
    for (std::size_t p = 0; p < sizes.size(); ++p) {
      out.push_back((n * (p + 3) * 37 + p) % sizes[p].size());
    }
    return out;
  }
  [[nodiscard]] parts::Design with(const std::vector<std::size_t>& choice) const {
    parts::Design changed = design;
    for (std::size_t p = 0; p < parts.size(); ++p) {
      changed = studies::with_size(changed, parts[p], sizes[p][choice[p]]);
    }
    return changed;
  }

  parts::Design design;
  std::vector<std::string> parts;
  studies::Counted counted;
  std::vector<std::vector<studies::SizeChoice>> sizes;
  std::optional<studies::GridScreen> screen;
};

const Picked& small() {
  static const Picked kSmall("lateral-link-only.yaml", {"lateral_link", "brace"});
  return kSmall;
}

const Picked& demo() {
  static const Picked kDemo("front-axle-us.yaml", {"lateral_link", "brace", "steering.tie_rod"});
  return kDemo;
}

using Which = const Picked& (*)();

template <class Judge>
void each_design(benchmark::State& state, Which which, const Judge& judge) {
  const Picked& picked = which();
  auto next = static_cast<std::size_t>(state.thread_index());
  std::size_t over = 0;
  for ([[maybe_unused]] auto round : state) {
    if (judge(picked, picked.choice(next))) ++over;
    next += static_cast<std::size_t>(state.threads());
  }
  state.counters["designs"] =
      benchmark::Counter(static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
  state.counters["over"] =
      benchmark::Counter(static_cast<double>(over) / static_cast<double>(state.iterations()),
                         benchmark::Counter::kAvgThreads);
}

void condensed(benchmark::State& state, Which which) {
  each_design(state, which, [](const Picked& picked, const std::vector<std::size_t>& choice) {
    return picked.screen->surely_over(choice, 1.0);
  });
}

void at_first_look(benchmark::State& state, Which which) {
  each_design(state, which, [](const Picked& picked, const std::vector<std::size_t>& choice) {
    return studies::judged_at_first_look(picked.with(choice), picked.counted).verdict ==
           studies::Verdict::over;
  });
}

void in_full(benchmark::State& state, Which which) {
  each_design(state, which, [](const Picked& picked, const std::vector<std::size_t>& choice) {
    // As if nothing were known of the design as drawn.
    studies::Counted alone = picked.counted;
    alone.known.reset();
    return studies::judged(picked.with(choice), alone).verdict == studies::Verdict::over;
  });
}

void dense_floor(benchmark::State& state, Which which) {
  const int n = static_cast<int>(which().screen->n_equations());
  const Eigen::MatrixXd root = Eigen::MatrixXd::Random(n, n);
  const Eigen::MatrixXd matrix = root * root.transpose() + n * Eigen::MatrixXd::Identity(n, n);
  for ([[maybe_unused]] auto round : state) {
    Eigen::MatrixXd a = matrix;
    Eigen::VectorXd b = Eigen::VectorXd::Ones(n);
    const int one = 1;
    int info = 0;
    dposv_("L", &n, &one, a.data(), &n, b.data(), &n, &info, 1);
    INVARIANT(info == 0);
    benchmark::DoNotOptimize(b.data());
  }
  state.counters["equations"] = n;
}

/// Every combination of three parts of the demo axle in tubes of 1-1/4 to 2 in.
void whole_grid(benchmark::State& state, const studies::Spread& spread) {
  constexpr double kInch = 0.0254;
  const studies::SizeLimits tubes{
      .outside_from = 1.249 * kInch, .outside_to = 2.001 * kInch, .kind = studies::PartKind::tube};
  const Picked& picked = demo();
  for ([[maybe_unused]] auto round : state) {
    const studies::PickedGrid grid = studies::pick_grid(
        picked.design, picked.parts, {tubes, tubes, tubes}, studies::PickBy::mass, {}, {}, spread);
    INVARIANT(!grid.best.empty());
    state.counters["designs"] = static_cast<double>(grid.n_designs);
    state.counters["solved in full"] = static_cast<double>(grid.in_full);
  }
}

BENCHMARK_CAPTURE(condensed, small, small)
    ->Name("grid/one_condensed")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(condensed, small, small)
    ->Name("grid/one_condensed, two threads")
    ->Unit(benchmark::kMicrosecond)
    ->Threads(2)
    ->UseRealTime();
BENCHMARK_CAPTURE(at_first_look, small, small)
    ->Name("grid/one_at_first_look")
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(in_full, small, small)
    ->Name("grid/one_in_full")
    ->Unit(benchmark::kMillisecond)
    ->Iterations(5);
BENCHMARK_CAPTURE(dense_floor, small, small)->Name("grid/floor")->Unit(benchmark::kMicrosecond);

BENCHMARK_CAPTURE(condensed, demo, demo)
    ->Name("demo/grid/one_condensed")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(condensed, demo, demo)
    ->Name("demo/grid/one_condensed, two threads")
    ->Unit(benchmark::kMicrosecond)
    ->Threads(2)
    ->UseRealTime();
BENCHMARK_CAPTURE(in_full, demo, demo)
    ->Name("demo/grid/one_in_full")
    ->Unit(benchmark::kMillisecond)
    ->Iterations(10);
BENCHMARK_CAPTURE(in_full, demo, demo)
    ->Name("demo/grid/one_in_full, two threads")
    ->Unit(benchmark::kMillisecond)
    ->Iterations(10)
    ->Threads(2)
    ->UseRealTime();
BENCHMARK_CAPTURE(dense_floor, demo, demo)->Name("demo/grid/floor")->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(whole_grid, one_thread, {})
    ->Name("demo/grid/three_parts")
    ->Unit(benchmark::kSecond)
    ->Iterations(1);
BENCHMARK_CAPTURE(whole_grid, two_threads, studies_tests::on_two_threads)
    ->Name("demo/grid/three_parts, two threads")
    ->Unit(benchmark::kSecond)
    ->Iterations(1)
    ->UseRealTime();

}  // namespace
