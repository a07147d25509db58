#pragma once

#include <array>
#include <functional>
#include <memory>

#include <Eigen/Core>

/// Solids for comparison with beams, by the general finite-element library GetFEM.
namespace published {

/// A block of cells in a space of its own, bent into shape. Grid coordinates run from 0 to `cells`.
struct SolidGrid {
  std::array<int, 3> cells;
  std::function<Eigen::Vector3d(const Eigen::Vector3d&)> place;  ///< grid coordinates -> place [m]
  /// Whether there is material in a cell; the cell's middle in grid coordinates.
  std::function<bool(const Eigen::Vector3d&)> filled;
};

/// An isotropic elastic body of 27-node hexahedra on a grid.
class SolidBody {
 public:
  SolidBody(const SolidGrid& grid, double young, double poisson);
  ~SolidBody();
  SolidBody(const SolidBody&) = delete;
  SolidBody& operator=(const SolidBody&) = delete;

  /// Solves with the outer faces that `clamped` picks held, and `force` spread evenly over the
  /// volume of the cells that `loaded` picks (by their middles in grid coordinates).
  /// @param clamped  the middle of a face, as a place  [m]
  void solve(const std::function<bool(const Eigen::Vector3d&)>& clamped,
             const std::function<bool(const Eigen::Vector3d&)>& loaded,
             const Eigen::Vector3d& force);

  /// Mean displacement of the loaded cells: what the force does work on.  [m]
  [[nodiscard]] Eigen::Vector3d mean_displacement() const;
  /// Stress at grid coordinates, the mean of the cells that meet there.  [Pa]
  [[nodiscard]] Eigen::Matrix3d stress(const Eigen::Vector3d& at) const;
  [[nodiscard]] int n_unknowns() const;

 private:
  struct Data;
  std::unique_ptr<Data> data_;
};

}  // namespace published
