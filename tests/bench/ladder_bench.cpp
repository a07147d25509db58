// A long ladder frame of 10^2 to 10^5 unknowns: assembled, factored and solved for one load case.

#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "fea/solver.hpp"
#include "fea/system.hpp"

namespace {

/// Two rails with a rung at every step, held at one end, pushed at the other. Two nodes a step.
struct Ladder {
  fea::Model model;
  fea::Loads loads;

  explicit Ladder(std::int64_t steps) {
    const sections::AreaProps tube =
        sections::area_props(sections::RoundTube{.outside = 0.06, .wall = 0.004});
    const auto add_member = [&](fea::NodeId a, fea::NodeId b) {
      model.add(fea::Beam{.a = {.node = a},
                          .b = {.node = b},
                          .section = tube,
                          .elastic = {.young = 205e9, .shear = 79e9},
                          .name = "member"});
    };
    fea::NodeId left;
    fea::NodeId right;
    for (std::int64_t step = 0; step <= steps; ++step) {
      const double x = 0.3 * static_cast<double>(step);
      const fea::NodeId next_left = model.add(fea::Node{.at_g = {x, 0.0, 0.0}, .name = "left"});
      const fea::NodeId next_right = model.add(fea::Node{.at_g = {x, 0.8, 0.0}, .name = "right"});
      if (step == 0) {
        model.add(fea::Support{.node = next_left});
        model.add(fea::Support{.node = next_right});
      } else {
        add_member(left, next_left);
        add_member(right, next_right);
        add_member(next_left, next_right);
        // Every tenth step stands on the ground: a ladder this long is nearly a mechanism.
        if (step % 10 == 0) {
          model.add(
              fea::Support{.node = next_left, .held = {false, true, true, false, false, false}});
        }
      }
      left = next_left;
      right = next_right;
    }
    loads.nodes.push_back({.node = right, .force_g = {100.0, 20.0, -50.0}});
  }
};

constexpr std::int64_t kUnknownsPerStep = 12;

void ladder(benchmark::State& state) {
  const Ladder frame(state.range(0) / kUnknownsPerStep);
  for ([[maybe_unused]] auto round : state) {
    const fea::Factored factored = fea::factor(frame.model);
    const fea::Solution solution =
        fea::solve(factored, frame.loads, {.method = fea::Method::linear});
    INVARIANT(solution.residual() < 1.0e-6);
  }
  const fea::Factored factored = fea::factor(frame.model);
  const fea::Ldlt& ldlt = factored.system().factor();
  state.counters["unknowns"] = factored.system().n_free();
  state.counters["nonzeros"] = static_cast<double>(ldlt.n_nonzeros());
  state.counters["bytes_each"] =
      static_cast<double>(ldlt.n_bytes()) / static_cast<double>(ldlt.n_nonzeros());
}

/// The factor alone.
void ladder_factor(benchmark::State& state) {
  const Ladder frame(state.range(0) / kUnknownsPerStep);
  const fea::System system(frame.model);
  fea::Ldlt ldlt = system.factor();
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(ldlt.factorize(system.scaled_values().data()));
  }
}

void sizes(benchmark::internal::Benchmark* benchmark) {
  benchmark->Arg(100)->Arg(1000)->Arg(10000)->Arg(100000)->Unit(benchmark::kMicrosecond);
}

BENCHMARK(ladder)->Apply(sizes);
BENCHMARK(ladder_factor)->Apply(sizes);

}  // namespace
