// Memory asked for while second-order solutions follow one another. Linked so that every malloc,
// calloc and realloc of the project's own code, and every operator new, is counted.

#include <atomic>
#include <cstdlib>
#include <memory>
#include <new>

#include <catch2/catch.hpp>

#include "fea/member_loads.hpp"
#include "fea/second_order.hpp"
#include "tests/fea/mixed_frame.hpp"

namespace {

// Atomic, since compilers take it that malloc changes no number of ours.
std::atomic<long> n_asked = 0;  // NOLINT: a counter behind malloc cannot be anything but global

}  // namespace

extern "C" {
void* __real_malloc(std::size_t size);
void* __real_calloc(std::size_t count, std::size_t size);
void* __real_realloc(void* memory, std::size_t size);
void* __wrap_malloc(std::size_t size) {
  ++n_asked;
  return __real_malloc(size);
}
void* __wrap_calloc(std::size_t count, std::size_t size) {
  ++n_asked;
  return __real_calloc(count, size);
}
void* __wrap_realloc(void* memory, std::size_t size) {
  ++n_asked;
  return __real_realloc(memory, size);
}
}

// Not inlined: g++ would take a pair of them for a mismatch of new and free.
[[gnu::noinline]] void* operator new(std::size_t size) {
  ++n_asked;
  if (void* memory = __real_malloc(size)) return memory;
  throw std::bad_alloc();
}
[[gnu::noinline]] void operator delete(void* memory) noexcept {
  std::free(memory);
}
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}

TEST_CASE("memory is counted", "[fea][memory]") {
  // Seen from outside, so that no compiler leaves them out.
  const double* volatile seen = nullptr;
  const long before = n_asked;
  const Eigen::VectorXd one = Eigen::VectorXd::Zero(100);
  seen = one.data();
  const auto two = std::make_unique<double>(1.0);
  seen = two.get();
  const long asked = n_asked - before;
  CHECK(seen != nullptr);
  CHECK(asked == 2);
}

TEST_CASE("after the first load case, second-order solutions ask for no memory", "[fea][memory]") {
  const fea_test::Loaded frame = fea_test::mixed_frame();
  const auto system = std::make_shared<const fea::System>(frame.model);
  fea::SecondOrder solver(system);
  std::vector<fea::LoadCase> cases;
  for (const double multiple : {1.0, 0.3, 0.6, 0.9}) {
    cases.push_back(fea::prepare(*system, frame.loads * multiple));
  }
  Eigen::VectorXd force(system->n_free());
  Eigen::VectorXd linear(system->n_unknowns());
  Eigen::VectorXd start = Eigen::VectorXd::Zero(system->n_unknowns());
  bool first = true;
  for (const fea::LoadCase& load_case : cases) {
    const long before = n_asked;
    system->to_scaled_force(load_case.vector, force);
    system->factor().solve_in_place(force);
    system->from_scaled_motion(force, linear);
    const fea::SolveStatus cold = solver.run(load_case, linear, nullptr, {});
    const fea::SolveStatus warm = solver.run(load_case, linear, &start, {});
    const long asked = n_asked - before;
    CHECK(cold == fea::SolveStatus::converged);
    CHECK(warm == fea::SolveStatus::converged);
    if (!first) CHECK(asked == 0);
    first = false;
  }
}
