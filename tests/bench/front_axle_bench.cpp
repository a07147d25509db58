// The parts of a check of the demo front axle, one thread, each to be seen beside the floor:
// LAPACK's banded Cholesky factorization of the same matrix.

#include <memory>
#include <string>
#include <vector>

#include <benchmark/benchmark.h>

#include "base/invariant.hpp"
#include "fea/buckling.hpp"
#include "fea/member_loads.hpp"
#include "fea/second_order.hpp"
#include "parts/put_loads.hpp"
#include "studies/check.hpp"
#include "studies/set_model.hpp"
#include "tests/bench/band_cholesky.hpp"
#include "tests/bench/example.hpp"

namespace {

/// The base case, with the first of its stiffness sets.
struct Demo {
  parts::Design design;
  std::vector<parts::DesignCase> cases;
  std::vector<parts::StiffnessSet> sets;
  fea::Model model;
  std::vector<fea::Loads> loads;  ///< one a load case
  std::shared_ptr<const fea::System> system;
  std::vector<fea::LoadCase> prepared;
  std::vector<Eigen::VectorXd> forces;  ///< scaled
};

Demo read_demo() {
  Demo demo{bench::example_design("front-axle-us.yaml"), {}, {}, {}, {}, {}, {}, {}};
  demo.cases = parts::design_cases(demo.design);
  demo.sets = parts::stiffness_sets(demo.design);
  const parts::Assembly assembly = parts::assemble(demo.design, demo.sets.front());
  demo.model = assembly.model;
  demo.system = std::make_shared<const fea::System>(demo.model);
  for (const parts::DesignCase& c : demo.cases) {
    demo.loads.push_back(parts::put(assembly, demo.design, c));
    demo.prepared.push_back(fea::prepare(*demo.system, demo.loads.back()));
    demo.forces.push_back(demo.system->to_scaled_force(demo.prepared.back().vector));
  }
  return demo;
}

const Demo& demo() {
  static const Demo kDemo = read_demo();
  return kDemo;
}

void floor_factor(benchmark::State& state) {
  bench::BandCholesky band(demo().system->scaled());
  for ([[maybe_unused]] auto round : state) {
    band.load();
    band.factorize();
  }
  state.counters["unknowns"] = demo().system->n_free();
  state.counters["below"] = band.n_below();
}

void floor_solves(benchmark::State& state) {
  bench::BandCholesky band(demo().system->scaled());
  band.factorize();
  std::vector<Eigen::VectorXd> forces;
  for (const Eigen::VectorXd& force : demo().forces) forces.push_back(band.to_band(force));
  // Both solve the same equations.
  Eigen::VectorXd there = forces.front();
  band.solve(there);
  const Eigen::VectorXd here = demo().system->factor().solve(demo().forces.front());
  INVARIANT((band.from_band(there) - here).norm() < 1.0e-6 * here.norm());
  Eigen::VectorXd x = forces.front();
  for ([[maybe_unused]] auto round : state) {
    for (const Eigen::VectorXd& force : forces) {
      x = force;
      band.solve(x);
      benchmark::DoNotOptimize(x.data());
    }
  }
  state.counters["cases"] = static_cast<double>(forces.size());
}

/// Stiffness of every beam and spring, put together.
void assembly(benchmark::State& state) {
  const fea::System& system = *demo().system;
  fea::Blocks blocks(system.n_blocks());
  Eigen::VectorXd values(system.scaled().nonZeros());
  for ([[maybe_unused]] auto round : state) {
    fea::elastic_stiffness(system, blocks);
    values.setZero();
    system.assembly().add(blocks, 1.0, values.data());
    benchmark::DoNotOptimize(values.data());
  }
  const Eigen::VectorXd& kept = system.scaled_values();
  INVARIANT((values - kept).norm() < 1.0e-12 * kept.norm());
}

/// The model taken in: numbers checked, unknowns numbered, pattern, assembly, factor, mechanisms
/// looked for.
void model_to_factor(benchmark::State& state) {
  for ([[maybe_unused]] auto round : state) benchmark::DoNotOptimize(fea::factor(demo().model));
}

/// The same where another stiffness set was factored before.
void model_to_factor_like(benchmark::State& state) {
  const parts::Assembly other = parts::assemble(demo().design, demo().sets.back());
  const fea::Factored like = fea::factor(other.model);
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(fea::factor(demo().model, &like));
  }
}

/// And where the model differs by a spring to the ground alone.
void model_to_factor_with_spring(benchmark::State& state) {
  const fea::Factored other = fea::factor(demo().model);
  const fea::Added spring{.springs = {{.a = fea::NodeId{0}, .stiffness = fea::Matrix6::Identity()}},
                          .gaps = {}};
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(fea::with_added(other, spring));
  }
}

void factor(benchmark::State& state) {
  const fea::System& system = *demo().system;
  fea::Ldlt ldlt = system.factor();
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(ldlt.factorize(system.scaled_values().data()));
  }
  state.counters["nonzeros"] = static_cast<double>(ldlt.n_nonzeros());
  state.counters["bytes_each"] =
      static_cast<double>(ldlt.n_bytes()) / static_cast<double>(ldlt.n_nonzeros());
}

void solves(benchmark::State& state) {
  const fea::Ldlt& ldlt = demo().system->factor();
  Eigen::VectorXd x(ldlt.size());
  for ([[maybe_unused]] auto round : state) {
    for (const Eigen::VectorXd& force : demo().forces) {
      x = force;
      ldlt.solve_in_place(x);
      benchmark::DoNotOptimize(x.data());
    }
  }
}

/// One load case, the forces settled to 1e-7; mean of those that the frame carries on open stops.
void second_order(benchmark::State& state) {
  fea::SecondOrder solver(demo().system);
  const fea::SolveOptions options{.tolerance = 1.0e-7};
  std::vector<const fea::LoadCase*> carried;
  std::vector<Eigen::VectorXd> linear;
  for (std::size_t c = 0; c < demo().forces.size(); ++c) {
    const Eigen::VectorXd motion =
        demo().system->from_scaled_motion(demo().system->factor().solve(demo().forces[c]));
    const fea::LoadCase& load_case = demo().prepared[c];
    if (solver.run(load_case, motion, nullptr, options) != fea::SolveStatus::converged) continue;
    carried.push_back(&load_case);
    linear.push_back(motion);
  }
  INVARIANT(!carried.empty());
  std::size_t next = 0;
  double n_factored = 0.0;
  for ([[maybe_unused]] auto round : state) {
    solver.run(*carried[next], linear[next], nullptr, options);
    n_factored += solver.n_factored();
    next = (next + 1) % carried.size();
  }
  state.counters["factored"] = benchmark::Counter(n_factored, benchmark::Counter::kAvgIterations);
}

/// Three modes of one load case, from the loads to the shapes; mean of all.
void buckling(benchmark::State& state) {
  fea::Buckling buckling{fea::Factored(demo().system)};
  std::size_t next = 0;
  for ([[maybe_unused]] auto round : state) {
    const fea::BucklingResult found = buckling.run(demo().loads[next]);
    INVARIANT(found.status == fea::BucklingStatus::found);
    next = (next + 1) % demo().loads.size();
  }
}

/// The same with a factor of the load reversed, once for each stiffness set, alone or each started
/// from the modes of the set before.
void buckling_in_all_sets(benchmark::State& state, bool started) {
  struct Set {
    std::vector<fea::Loads> loads;
    fea::Buckling buckling;
  };
  std::vector<Set> sets;
  for (const parts::StiffnessSet& set : demo().sets) {
    const parts::Assembly assembly = parts::assemble(demo().design, set);
    Set& now = sets.emplace_back(Set{{}, fea::Buckling(fea::factor(assembly.model))});
    for (const parts::DesignCase& c : demo().cases) {
      now.loads.push_back(parts::put(assembly, demo().design, c));
    }
  }
  std::vector<fea::BucklingResult> known(demo().cases.size());
  std::size_t next = 0;
  for ([[maybe_unused]] auto round : state) {
    Set& set = sets[next / known.size()];
    fea::BucklingResult& at = known[next % known.size()];
    at = set.buckling.run(set.loads[next % known.size()],
                          {.n_reversed = 1, .start = started ? &at : nullptr});
    INVARIANT(at.status == fea::BucklingStatus::found);
    next = (next + 1) % (sets.size() * known.size());
  }
}

/// One posture of the axle with large displacements, from the loads to the equilibrium; mean of
/// those that are bumped, in droop, or rolled to a place.
void posture(benchmark::State& state) {
  const studies::SetModel model(demo().design, demo().sets.front());
  std::vector<const parts::DesignCase*> postures;
  for (const parts::DesignCase& c : demo().cases) {
    const bool moves =
        c.place.given() || c.posture == loads::Posture::droop || c.posture == loads::Posture::bump;
    if (moves) postures.push_back(&c);
  }
  INVARIANT(!postures.empty());
  std::size_t next = 0;
  for ([[maybe_unused]] auto round : state) {
    const studies::CaseSolution found = model.solve_moved(*postures[next], 1.0, {});
    INVARIANT(found.solution.status() == fea::SolveStatus::converged);
    next = (next + 1) % postures.size();
  }
  state.counters["postures"] = static_cast<double>(postures.size());
}

/// Every stiffness set factored, every load case in it solved in second order and buckled, once.
void linear_algebra(benchmark::State& state) {
  for ([[maybe_unused]] auto round : state) {
    for (const parts::StiffnessSet& set : demo().sets) {
      const studies::SetModel model(demo().design, set);
      for (const parts::DesignCase& c : demo().cases) {
        const studies::CaseSolution solved = model.solve(c, 1.0);
        benchmark::DoNotOptimize(model.buckle(c, solved, {}));
      }
    }
  }
  state.counters["sets"] = static_cast<double>(demo().sets.size());
}

/// All of it: each check followed to its limit, and the findings in words.
void whole_check(benchmark::State& state) {
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(studies::check(demo().design));
  }
}

BENCHMARK(floor_factor)->Name("demo/floor_factor")->Unit(benchmark::kMicrosecond);
BENCHMARK(floor_solves)->Name("demo/floor_solves")->Unit(benchmark::kMicrosecond);
BENCHMARK(assembly)->Name("demo/assembly")->Unit(benchmark::kMicrosecond);
BENCHMARK(model_to_factor)->Name("demo/model_to_factor")->Unit(benchmark::kMicrosecond);
BENCHMARK(model_to_factor_like)->Name("demo/model_to_factor/like")->Unit(benchmark::kMicrosecond);
BENCHMARK(model_to_factor_with_spring)
    ->Name("demo/model_to_factor/with_spring")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK(factor)->Name("demo/factor")->Unit(benchmark::kMicrosecond);
BENCHMARK(solves)->Name("demo/solves")->Unit(benchmark::kMicrosecond);
BENCHMARK(second_order)->Name("demo/second_order")->Unit(benchmark::kMicrosecond);
BENCHMARK(buckling)->Name("demo/buckling")->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(buckling_in_all_sets, alone, false)
    ->Name("demo/buckling_in_all_sets/alone")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(buckling_in_all_sets, started, true)
    ->Name("demo/buckling_in_all_sets/started")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK(posture)->Name("demo/posture")->Unit(benchmark::kMicrosecond);
BENCHMARK(linear_algebra)->Name("demo/linear_algebra")->Unit(benchmark::kMicrosecond);
BENCHMARK(whole_check)->Name("demo/whole_check")->Unit(benchmark::kMicrosecond);

}  // namespace
