// How long the whole check of one example takes, its case file already in memory.

#include <fstream>
#include <sstream>
#include <string>

#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "cases/reader.hpp"
#include "studies/check.hpp"

namespace {

std::string example_text() {
  std::ifstream file(LINKMARGIN_SOURCE_DIR "/cases/examples/lateral-link-only.yaml");
  INVARIANT(file.good());
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

void read_example(benchmark::State& state) {
  const std::string text = example_text();
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(cases::read(text, "lateral-link-only.yaml"));
  }
}

void check_example(benchmark::State& state) {
  const cases::Reading reading = cases::read(example_text(), "lateral-link-only.yaml");
  INVARIANT(reading.design.has_value());
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(studies::check(*reading.design));
  }
}

BENCHMARK(read_example)->Unit(benchmark::kMillisecond);
BENCHMARK(check_example)->Unit(benchmark::kMillisecond);

}  // namespace
