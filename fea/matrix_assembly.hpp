#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <Eigen/SparseCore>

#include "fea/over_unknowns.hpp"

namespace fea {

/// Row by row; of a symmetric matrix the lower triangle.
using Sparse = Eigen::SparseMatrix<double, Eigen::RowMajor>;

/// out -= (symmetric matrix) x.
/// @param lower  its lower triangle; every diagonal entry stored
void subtract_product(const Sparse& lower, const Eigen::VectorXd& x, Eigen::VectorXd& out);

/// An entry below the diagonal of a skew-symmetric matrix.
struct SkewEntry {
  int row;
  int column;
  double value;
};

/// out -= (skew-symmetric matrix) x.
/// @param below  what of it is below the diagonal
void subtract_skew_product(const std::vector<SkewEntry>& below, const Eigen::VectorXd& x,
                           Eigen::VectorXd& out);

/// Dense square matrices over some unknowns each, in a fixed order.
using Blocks = std::vector<Eigen::MatrixXd>;

/// Where each entry of each block goes in the matrix of the whole model. Made once; the elastic and
/// the geometric stiffness share it, so they have the same pattern and can be added value by value.
class Assembly {
 public:
  Assembly() = default;
  /// @param unknowns  of each block, numbers in the whole model
  /// @param reduced   new number of every unknown, -1 where it is held
  /// @param n_free    count of those not held
  Assembly(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& reduced,
           int n_free);
  /// Of the same unknowns in the same places as another, which it shares.
  /// @param same_as  of each block, one of the other that has its unknowns
  Assembly(const Assembly& like, const std::vector<std::size_t>& same_as);

  /// Rows and columns are multiplied by these from now on; 1 before.
  void scale_by(const Eigen::VectorXd& scale);

  /// Lower triangle, n_free square, with zeros where values will be.
  [[nodiscard]] const Sparse& pattern() const { return *pattern_; }

  /// Adds factor * scale * (sum of the blocks) * scale.
  /// @param blocks  in the order of `unknowns`, symmetric; an empty one counts as zero
  /// @param values  of the pattern, in its stored order
  void add(const Blocks& blocks, double factor, double* values) const;
  /// @param block  gives each by its number
  void add(const std::function<const Eigen::MatrixXd&(std::size_t)>& block, double factor,
           double* values) const;
  /// Adds scale * one block * scale.
  void add(std::size_t block, const Triangle& lower, double* values) const;
  /// Adds the symmetric and the skew part of blocks that need not be symmetric, scaled.
  /// @param skew  none = only the symmetric part is wanted
  void add_parts(const Blocks& blocks, double* symmetric, double* skew) const;

 private:
  struct Entry {
    int in_block;     ///< place in the block, column by column
    int mirrored;     ///< place of the entry across the diagonal
    int in_triangle;  ///< place in the Triangle of the block
    int place;        ///< among the stored values
  };
  struct Run {
    std::size_t begin;
    std::size_t end;
  };
  std::shared_ptr<const Sparse> pattern_;
  std::shared_ptr<const std::vector<Entry>> entries_;
  std::vector<double> weights_;  // one a stored value
  std::vector<Run> runs_;        // each block's entries
};

}  // namespace fea
