// Equilibrium of whole designs: what the supports give and what the loads take sum to nothing.
#include <algorithm>
#include <filesystem>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "studies/cell.hpp"
#include "studies/held_force.hpp"
#include "studies/set_model.hpp"
#include "tests/studies/read_case.hpp"

namespace equilibrium_test {
using fea::Vector3;

namespace {

/// Force, and moment about the origin.
struct Sum {
  Vector3 force = Vector3::Zero();
  Vector3 moment = Vector3::Zero();
  double largest = 0.0;  ///< of the loads' forces and of their moments  [N, N m]

  void add(const Vector3& at, const Vector3& f, const Vector3& m) {
    force += f;
    moment += at.cross(f) + m;
  }
  void add_load(const Vector3& at, const Vector3& f, const Vector3& m) {
    add(at, f, m);
    largest = std::max({largest, f.norm(), (at.cross(f) + m).norm()});
  }
};

Sum all_loads(const fea::Model& model, const fea::Loads& loads) {
  Sum sum;
  for (const fea::NodeLoad& load : loads.nodes) {
    sum.add_load(model[load.node].at_g + load.offset_g, load.force_g, load.moment_g);
  }
  for (const fea::BeamPointLoad& load : loads.points) {
    const Vector3 a = fea::end_a_g(model, model[load.beam]);
    const Vector3 along = (fea::end_b_g(model, model[load.beam]) - a).normalized();
    sum.add_load(a + load.at * along, load.force_g, load.moment_g);
  }
  REQUIRE(loads.lines.empty());
  return sum;
}

void add_reactions(Sum& sum, const fea::Model& model, const fea::Solution& solution) {
  for (int i = 0; i < static_cast<int>(model.nodes.size()); ++i) {
    const fea::Vector6 held = solution.reaction({i});
    sum.add(model[fea::NodeId{i}].at_g, held.head<3>(), held.tail<3>());
  }
}

/// What the gap of a closed bump stop or strap takes back of its spring's force.
Vector3 gaps(const parts::Assembly& assembly, unsigned closed) {
  Vector3 sum = Vector3::Zero();
  for (std::size_t i = 0; i < assembly.stops.size(); ++i) {
    const parts::TravelStop& stop = assembly.stops[i];
    if ((closed & (1U << i)) != 0) sum.z() += stop.sense() * stop.rate * stop.travel;
  }
  return sum;
}

void check_balance(const parts::Design& design, const parts::StiffnessSet& set) {
  const studies::SetModel model(design, set);
  const parts::Assembly& assembly = model.assembly();
  const fea::Factored linear = fea::factor(assembly.model);
  for (const parts::DesignCase& load_case : parts::design_cases(design)) {
    INFO(load_case.name << ", " << set.name);
    const fea::Loads loads = parts::put(assembly, design, load_case);
    const Sum applied = all_loads(assembly.model, loads);
    Sum undeformed = applied;
    add_reactions(undeformed, assembly.model,
                  fea::solve(linear, loads, {.method = fea::Method::linear}));
    CHECK(undeformed.force.norm() < 1e-9 * applied.largest);
    CHECK(undeformed.moment.norm() < 1e-9 * applied.largest);

    const studies::CaseSolution solved = model.solve(load_case, 1.0);
    REQUIRE(solved.solution.status() == fea::SolveStatus::converged);
    Sum deformed = applied;
    add_reactions(deformed, assembly.model, solved.solution);
    CHECK((deformed.force + gaps(assembly, solved.closed_stops)).norm() < 1e-9 * applied.largest);
  }
}

std::vector<parts::Design> examples() {
  std::vector<parts::Design> out;
  for (const auto& entry :
       std::filesystem::directory_iterator(LINKMARGIN_SOURCE_DIR "/cases/examples")) {
    if (entry.path().extension() != ".yaml") continue;
    out.push_back(studies_tests::read_example(entry.path().filename().string()));
  }
  return out;
}

}  // namespace

TEST_CASE("in every example loads and reactions balance, in every load case", "[studies]") {
  int n_examples = 0;
  for (const parts::Design& design : examples()) {
    ++n_examples;
    INFO(design.title);
    const std::vector<parts::StiffnessSet> sets = parts::stiffness_sets(design);
    check_balance(design, sets.front());
    if (sets.size() > 1) check_balance(design, sets.back());
  }
  CHECK(n_examples >= 4);
}

TEST_CASE("what is told to hold a design balances what acts on it", "[studies]") {
  int n_moved = 0;
  int n_stopped = 0;
  for (const parts::Design& design : examples()) {
    INFO(design.title);
    const studies::SetModel model(design, parts::stiffness_sets(design).back());
    for (const parts::DesignCase& load_case : parts::design_cases(design)) {
      INFO(load_case.name);
      const studies::Cell cell(model, load_case);
      const studies::CaseSolution& solved = cell.kept(1.0);
      REQUIRE(studies::carried(solved));
      Vector3 sum = Vector3::Zero();
      double largest = 0.0;
      for (const parts::NamedLoad& load : parts::named_loads(model.assembly(), design, load_case)) {
        if (load.coil_at_rest) continue;
        const Vector3 force = parts::resultant_of(load, model.assembly().model).force_g;
        sum += force;
        largest = std::max(largest, force.norm());
      }
      for (const fea::Vector6& held : studies::held_forces(model, load_case, solved)) {
        sum += held.head<3>();
      }
      CHECK(sum.norm() <= 1e-6 * std::max(largest, 1.0e3));
      n_moved += solved.method == fea::Method::large_displacement ? 1 : 0;
      n_stopped += solved.closed_stops != 0 ? 1 : 0;
    }
  }
  CHECK(n_moved > 10);
  CHECK(n_stopped > 10);
}

}  // namespace equilibrium_test
