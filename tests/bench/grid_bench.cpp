// How many designs of a grid a second can be said no to: condensed onto the ends of the parts
// picked by one thread and by two, built and solved anew in second order where the parts come
// nearest to their limits, and judged in full. The floor is LAPACK's dense Cholesky solution
// (dposv) of as many equations.

#include <optional>
#include <string>
#include <vector>

#include <Eigen/Dense>
#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "studies/grid_screen.hpp"
#include "studies/judged.hpp"
#include "tests/bench/example.hpp"

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

template <class Judge>
void each_design(benchmark::State& state, const Judge& judge) {
  const Picked& picked = small();
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

void condensed(benchmark::State& state) {
  each_design(state, [](const Picked& picked, const std::vector<std::size_t>& choice) {
    return picked.screen->surely_over(choice, 1.0);
  });
}

void at_first_look(benchmark::State& state) {
  each_design(state, [](const Picked& picked, const std::vector<std::size_t>& choice) {
    return studies::judged_at_first_look(picked.with(choice), picked.counted).verdict ==
           studies::Verdict::over;
  });
}

void in_full(benchmark::State& state) {
  each_design(state, [](const Picked& picked, const std::vector<std::size_t>& choice) {
    // As if nothing were known of the design as drawn.
    studies::Counted alone = picked.counted;
    alone.known.reset();
    return studies::judged(picked.with(choice), alone).verdict == studies::Verdict::over;
  });
}

void dense_floor(benchmark::State& state) {
  const int n = static_cast<int>(small().screen->n_equations());
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

BENCHMARK(condensed)->Name("grid/one_condensed")->Unit(benchmark::kMicrosecond);
BENCHMARK(condensed)
    ->Name("grid/one_condensed, two threads")
    ->Unit(benchmark::kMicrosecond)
    ->Threads(2)
    ->UseRealTime();
BENCHMARK(at_first_look)->Name("grid/one_at_first_look")->Unit(benchmark::kMillisecond);
BENCHMARK(in_full)->Name("grid/one_in_full")->Unit(benchmark::kMillisecond)->Iterations(5);
BENCHMARK(dense_floor)->Name("grid/floor")->Unit(benchmark::kMicrosecond);

}  // namespace
