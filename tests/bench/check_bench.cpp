// How long the whole check of one example takes, its case file already in memory.

#include <string>

#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "cases/reader.hpp"
#include "studies/check.hpp"
#include "tests/bench/example.hpp"

namespace {

const char* const kExample = "lateral-link-only.yaml";

void read_example(benchmark::State& state) {
  const std::string text = bench::example_text(kExample);
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(cases::read(text, kExample));
  }
}

void check_example(benchmark::State& state) {
  const cases::Reading reading = cases::read(bench::example_text(kExample), kExample);
  INVARIANT(reading.design.has_value());
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(studies::check(*reading.design));
  }
}

BENCHMARK(read_example)->Unit(benchmark::kMillisecond);
BENCHMARK(check_example)->Unit(benchmark::kMillisecond);

}  // namespace
