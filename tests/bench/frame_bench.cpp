// How long a frame of 50, 500 and 5000 members takes: assembled and factored, solved, buckled.

#include <cstdint>
#include <vector>

#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "fea/buckling.hpp"
#include "fea/solver.hpp"

namespace {

struct Frame {
  fea::Model model;
  fea::Loads loads;
};

/// A welded building frame: columns clamped at the foot, a beam at each story, and on the top of
/// each column a weight that buckles none of the sizes. It has stories x (2 columns - 1) members.
Frame building_frame(int columns, int stories) {
  const sections::AreaProps bar = sections::area_props(sections::RoundBar{.diameter = 0.05});
  Frame frame;
  std::vector<fea::NodeId> below;
  for (int story = 0; story <= stories; ++story) {
    std::vector<fea::NodeId> nodes;
    for (int column = 0; column < columns; ++column) {
      nodes.push_back(
          frame.model.add(fea::Node{.at_g = {0.0, 1.0 * column, 1.0 * story}, .name = "node"}));
    }
    const auto add_member = [&](fea::NodeId a, fea::NodeId b) {
      frame.model.add(fea::Beam{.a = {.node = a},
                                .b = {.node = b},
                                .section = bar,
                                .elastic = {.young = 205e9, .shear = 79e9},
                                .name = "member"});
    };
    for (std::size_t c = 0; c < nodes.size(); ++c) {
      if (story == 0) {
        frame.model.add(fea::Support{.node = nodes[c]});
        continue;
      }
      add_member(below[c], nodes[c]);
      if (c > 0) add_member(nodes[c - 1], nodes[c]);
    }
    below = nodes;
  }
  for (const fea::NodeId top : below) {
    frame.loads.nodes.push_back({.node = top, .force_g = {0.2, 0.2, -20.0}});
  }
  return frame;
}

Frame frame_of(std::int64_t members) {
  if (members == 50) return building_frame(3, 10);
  if (members == 500) return building_frame(13, 20);
  return building_frame(63, 40);
}

void assemble_and_factor(benchmark::State& state) {
  const Frame frame = frame_of(state.range(0));
  INVARIANT(static_cast<std::int64_t>(frame.model.beams.size()) == state.range(0));
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(fea::factor(frame.model));
  }
}

void solve(benchmark::State& state, fea::Method method) {
  const Frame frame = frame_of(state.range(0));
  const fea::Factored factored = fea::factor(frame.model);
  for ([[maybe_unused]] auto round : state) {
    const fea::Solution solution = fea::solve(factored, frame.loads, {.method = method});
    if (solution.status() != fea::SolveStatus::converged) state.SkipWithError("not converged");
  }
}

void buckle(benchmark::State& state) {
  const Frame frame = frame_of(state.range(0));
  const fea::Factored factored = fea::factor(frame.model);
  for ([[maybe_unused]] auto round : state) {
    const fea::BucklingResult result = fea::buckle(factored, frame.loads);
    if (result.status != fea::BucklingStatus::found) state.SkipWithError("no factor found");
  }
}

void sizes(benchmark::internal::Benchmark* benchmark) {
  benchmark->Arg(50)->Arg(500)->Arg(5000)->Unit(benchmark::kMillisecond);
}

BENCHMARK(assemble_and_factor)->Apply(sizes);
BENCHMARK_CAPTURE(solve, linear, fea::Method::linear)->Apply(sizes);
BENCHMARK_CAPTURE(solve, second_order, fea::Method::second_order)->Apply(sizes);
BENCHMARK(buckle)->Apply(sizes);

}  // namespace
