// How many sizes a second a pick tries: each judged in full, each looked at where the part comes
// nearest to its limit, and as many as the answer takes, by one thread and by two.

#include <string>
#include <vector>

#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "studies/judged.hpp"
#include "studies/pick.hpp"
#include "tests/bench/example.hpp"
#include "tests/studies/two_threads.hpp"

namespace {

const char* const kPart = "lateral_link";

/// The sizes in stock, and where they are looked at.
struct Sizes {
  parts::Design design = bench::example_design("lateral-link-only.yaml");
  studies::Counted counted = studies::as_drawn(design, {kPart}).counted;
  std::vector<studies::SizeChoice> all = studies::sizes_for(design, kPart, {}, {});
};

const Sizes& sizes() {
  static const Sizes kSizes;
  return kSizes;
}

void each_size(benchmark::State& state,
               studies::Judged (*judge)(const parts::Design&, const studies::Counted&)) {
  std::size_t next = 0;
  for ([[maybe_unused]] auto round : state) {
    const studies::SizeChoice& size = sizes().all[next];
    benchmark::DoNotOptimize(
        judge(studies::with_size(sizes().design, kPart, size), sizes().counted));
    next = (next + 1) % sizes().all.size();
  }
  state.counters["sizes"] =
      benchmark::Counter(static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}

void in_full(benchmark::State& state) {
  each_size(state, [](const parts::Design& design, const studies::Counted& counted) {
    // As if nothing were known of the design as drawn.
    studies::Counted alone = counted;
    alone.known.reset();
    return studies::judged(design, alone);
  });
}

void at_first_look(benchmark::State& state) {
  each_size(state, [](const parts::Design& design, const studies::Counted& counted) {
    return studies::judged_at_first_look(design, counted);
  });
}

void pick(benchmark::State& state, bool every, const studies::Spread& spread) {
  studies::PickOptions options;
  options.every = every;
  for ([[maybe_unused]] auto round : state) {
    const studies::Picked picked = studies::pick(sizes().design, kPart, options, {}, spread);
    INVARIANT(picked.lightest.has_value());
    state.counters["sizes"] = static_cast<double>(picked.tried.size());
  }
}

BENCHMARK(in_full)->Name("pick/one_in_full")->Unit(benchmark::kMillisecond)->Iterations(145);
BENCHMARK(at_first_look)
    ->Name("pick/one_at_first_look")
    ->Unit(benchmark::kMillisecond)
    ->Iterations(145);
BENCHMARK_CAPTURE(pick, as_few_as_it_takes, false, {})
    ->Name("pick/as_few_as_it_takes")
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(pick, on_two_threads, false, studies_tests::on_two_threads)
    ->Name("pick/as_few_as_it_takes, two threads")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(pick, every_size, true, {})
    ->Name("pick/every_size")
    ->Unit(benchmark::kMillisecond)
    ->Iterations(1)
    ->UseRealTime();
BENCHMARK_CAPTURE(pick, every_size_on_two_threads, true, studies_tests::on_two_threads)
    ->Name("pick/every_size, two threads")
    ->Unit(benchmark::kMillisecond)
    ->Iterations(1)
    ->UseRealTime();

}  // namespace
