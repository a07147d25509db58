#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "fea/solver.hpp"
#include "parts/assembly.hpp"

namespace studies {

/// Equilibrium in the undeformed position; solved at first use, since most are never looked at.
/// The same for all copies. Not to be shared by threads.
class LinearSolution {
 public:
  /// @param only_push  coils that push no more where they have nothing left to give; any other
  /// pulls
  /// @param solution   of these loads with all coils pulling, where it is at hand
  LinearSolution(fea::Factored factored, fea::Loads loads, std::vector<parts::CoilSeat> only_push,
                 std::optional<fea::Solution> solution = {});

  [[nodiscard]] const fea::Solution& operator()() const;
  /// Of each coil that only pushes, the pull that was taken off it; empty where none would pull.
  /// [N]
  [[nodiscard]] const std::vector<double>& let_go() const;

 private:
  struct Kept;
  void solve() const;

  std::shared_ptr<Kept> kept_;
};

}  // namespace studies
