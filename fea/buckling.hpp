#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <Eigen/Core>

#include "fea/solver.hpp"

namespace fea {

enum class BucklingStatus {
  found,
  no_compression,  ///< no positive factor: nothing in this load case can buckle
  failed,          ///< the iteration did not converge or the list could not be proved complete
};

/// One shape in which the frame loses its stiffness.
struct BucklingMode {
  double factor = base::kUnset;       ///< multiple of the load case  [-]
  Eigen::VectorXd shape;              ///< 6 per node (global axes), largest component 1
  Eigen::VectorXd motion;             ///< of all unknowns, of the strain energy 1/2
  std::vector<double> beam_energy;    ///< share of the strain energy in each beam itself
  std::vector<double> joint_energy;   ///< share in the elastic joints at each beam's two ends
  std::vector<double> spring_energy;  ///< share in each spring; all shares sum to 1
};

struct BucklingResult;

struct BucklingOptions {
  int n_modes = 3;
  int n_reversed = 0;  ///< how many negative factors to look for as well
  /// Relative error of a factor, taken from its residual and the distance to the next one found;
  /// without that distance it is at most the root of this.
  double tolerance = 1e-6;
  /// Modes of a frame with the same unknowns under nearly the same load case, at least as many as
  /// are looked for, where to look first. Saves time, and has no say in the answer.
  const BucklingResult* start = nullptr;
};

struct BucklingResult {
  BucklingStatus status = BucklingStatus::failed;
  std::vector<BucklingMode> modes;  ///< ascending factor, positive only
  /// Negative factors, nearest to zero first: the load reversed would buckle the frame. Nothing
  /// when none is within reach, or when they could not be proved complete.
  std::vector<BucklingMode> reversed;
};

/// Buckling of one factored model, one load case after another in the same memory. Not to be shared
/// by threads.
class Buckling {
 public:
  explicit Buckling(const Factored& factored);
  ~Buckling();
  Buckling(Buckling&&) noexcept;
  Buckling& operator=(Buckling&&) noexcept;

  /// As `buckle`.
  [[nodiscard]] BucklingResult run(const Loads& loads, const BucklingOptions& options = {});

  /// How many factors lie between 0 and `factor`: negative eigenvalues of K + factor Kg, which
  /// costs one factorization. Nothing when a pivot is too small to trust.
  /// @param linear  linear solution of these loads, where it is at hand: saves time
  [[nodiscard]] std::optional<int> n_below(const Loads& loads, double factor,
                                           const Solution* linear = nullptr);

 private:
  class Search;
  std::unique_ptr<Search> search_;
};

/// Lowest positive multiples of `loads` at which the frame is no longer stiff: (-Kg) x = mu K x,
/// factor = 1/mu, with the full consistent geometric stiffness of a linear solution (axial force,
/// bending moments, shears, torque, joint and offset moments). The list is proved complete by the
/// count of negative pivots of K + s Kg just above the highest reported factor (and just below it,
/// where it is repeated).
/// Source: McGuire, Gallagher, Ziemian, Matrix Structural Analysis, 2nd ed. (2000), ch. 9.
[[nodiscard]] BucklingResult buckle(const Factored& factored, const Loads& loads,
                                    const BucklingOptions& options = {});

}  // namespace fea
