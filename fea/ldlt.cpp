#include "fea/ldlt.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <type_traits>

namespace fea {

/// A run of columns whose patterns below the run are the same is a group.
struct Ldlt::Pattern {
  std::vector<int> row_begin, columns;      ///< of the matrix
  std::vector<int> group_of;                ///< of each column
  std::vector<int> first;                   ///< column of each group; one more at the end
  std::vector<int> rows_begin, rows;        ///< of each group's panel, ascending
  std::vector<std::size_t> block_begin;     ///< of each group's diagonal block
  std::vector<std::size_t> panel_begin;     ///< of each group's panel
  std::vector<int> touched_begin, touched;  ///< groups to the left with an entry in each row

  explicit Pattern(const Sparse& lower);

  [[nodiscard]] int n_groups() const { return static_cast<int>(first.size()) - 1; }
  [[nodiscard]] int width(int group) const { return at(first, group + 1) - at(first, group); }
  [[nodiscard]] int n_rows(int group) const {
    return at(rows_begin, group + 1) - at(rows_begin, group);
  }
  template <class Item>
  [[nodiscard]] static Item at(const std::vector<Item>& items, int index) {
    return items[static_cast<std::size_t>(index)];
  }

 private:
  template <class Visit>
  void for_row(int row, const std::vector<int>& parent, std::vector<int>& seen, Visit visit) const;
  void find_groups(const std::vector<int>& parent);
  void find_panels(const std::vector<int>& parent);
};

namespace {

std::size_t index(int i) {
  return static_cast<std::size_t>(i);
}

/// Elimination tree: parent of each column, -1 at a root.
std::vector<int> elimination_tree(const std::vector<int>& row_begin,
                                  const std::vector<int>& columns, int n) {
  std::vector<int> parent(index(n), -1);
  std::vector<int> ancestor(index(n), -1);
  for (int row = 0; row < n; ++row) {
    for (int p = row_begin[index(row)]; p < row_begin[index(row + 1)]; ++p) {
      for (int i = columns[index(p)]; i != -1 && i < row;) {
        const int next = ancestor[index(i)];
        ancestor[index(i)] = row;
        if (next == -1) parent[index(i)] = row;
        i = next;
      }
    }
  }
  return parent;
}

constexpr int kWidest = 6;

/// y[rows] -= panel x for W columns.
template <int W>
void subtract_columns(const double* panel, std::ptrdiff_t stride, const int* rows, int n_rows,
                      const double* x, double* y) {
  int r = 0;
  for (; r + 4 <= n_rows; r += 4) {
    double sum0 = 0.0;
    double sum1 = 0.0;
    double sum2 = 0.0;
    double sum3 = 0.0;
    const double* column = panel + r;
    for (int j = 0; j < W; ++j, column += stride) {
      sum0 += column[0] * x[j];
      sum1 += column[1] * x[j];
      sum2 += column[2] * x[j];
      sum3 += column[3] * x[j];
    }
    y[rows[r]] -= sum0;
    y[rows[r + 1]] -= sum1;
    y[rows[r + 2]] -= sum2;
    y[rows[r + 3]] -= sum3;
  }
  for (; r < n_rows; ++r) {
    double sum = 0.0;
    for (int j = 0; j < W; ++j) sum += panel[r + j * stride] * x[j];
    y[rows[r]] -= sum;
  }
}

/// x -= panel' y[rows] for W columns.
template <int W>
void subtract_rows(const double* panel, std::ptrdiff_t stride, const int* rows, int n_rows,
                   const double* y, double* x) {
  // Rows in pairs, as the processor multiplies them.
  using Pair = Eigen::Array2d;
  std::array<Pair, static_cast<std::size_t>(W)> sums;
  for (Pair& sum : sums) sum.setZero();
  int r = 0;
  for (; r + 2 <= n_rows; r += 2) {
    const Pair pair(y[rows[r]], y[rows[r + 1]]);
    const double* column = panel + r;
    for (Pair& sum : sums) {
      sum += Eigen::Map<const Pair>(column) * pair;
      column += stride;
    }
  }
  for (int j = 0; j < W; ++j) {
    double sum = sums[static_cast<std::size_t>(j)].sum();
    if (r < n_rows) sum += panel[r + j * stride] * y[rows[r]];
    x[j] -= sum;
  }
}

/// Calls run(number, first) with a constant `number` of columns for runs of at most kWidest.
template <class Run>
void in_runs(int width, Run run) {
  int j = 0;
  for (; j + kWidest <= width; j += kWidest) run(std::integral_constant<int, kWidest>(), j);
  switch (width - j) {
    case 1:
      return run(std::integral_constant<int, 1>(), j);
    case 2:
      return run(std::integral_constant<int, 2>(), j);
    case 3:
      return run(std::integral_constant<int, 3>(), j);
    case 4:
      return run(std::integral_constant<int, 4>(), j);
    case 5:
      return run(std::integral_constant<int, 5>(), j);
    default:
      return;
  }
}

void subtract_panel(const double* panel, int stride, const int* rows, int n_rows, int width,
                    const double* x, double* y) {
  in_runs(width, [&](auto number, int j) {
    subtract_columns<number.value>(panel + static_cast<std::ptrdiff_t>(j) * stride, stride, rows,
                                   n_rows, x + j, y);
  });
}

void subtract_panel_transposed(const double* panel, int stride, const int* rows, int n_rows,
                               int width, const double* y, double* x) {
  in_runs(width, [&](auto number, int j) {
    subtract_rows<number.value>(panel + static_cast<std::ptrdiff_t>(j) * stride, stride, rows,
                                n_rows, y, x + j);
  });
}

/// x = block^-1 x for the first `n` of a unit lower triangle `width` wide.
void solve_block(const double* block, int width, int n, double* x) {
  for (int i = 0; i + 1 < n; ++i) {
    const double* column = block + static_cast<std::ptrdiff_t>(i) * width;
    for (int j = i + 1; j < n; ++j) x[j] -= column[j] * x[i];
  }
}

void solve_block_transposed(const double* block, int width, double* x) {
  for (int j = width - 1; j > 0; --j) {
    const double* row = block + j;
    for (int i = 0; i < j; ++i, row += width) x[i] -= *row * x[j];
  }
}

}  // namespace

/// Visits the columns left of the diagonal in which L has an entry in `row`, in no order.
template <class Visit>
void Ldlt::Pattern::for_row(int row, const std::vector<int>& parent, std::vector<int>& seen,
                            Visit visit) const {
  seen[index(row)] = row;
  for (int p = at(row_begin, row); p < at(row_begin, row + 1); ++p) {
    for (int i = at(columns, p); seen[index(i)] != row; i = at(parent, i)) {
      seen[index(i)] = row;
      visit(i);
    }
  }
}

Ldlt::Pattern::Pattern(const Sparse& lower)
    : row_begin(lower.outerIndexPtr(), lower.outerIndexPtr() + lower.rows() + 1),
      columns(lower.innerIndexPtr(), lower.innerIndexPtr() + lower.nonZeros()) {
  const std::vector<int> parent =
      elimination_tree(row_begin, columns, static_cast<int>(lower.rows()));
  find_groups(parent);
  find_panels(parent);
}

void Ldlt::Pattern::find_groups(const std::vector<int>& parent) {
  const int n = static_cast<int>(parent.size());
  std::vector<int> n_below(index(n), 0);
  std::vector<int> seen(index(n), -1);
  for (int row = 0; row < n; ++row) {
    for_row(row, parent, seen, [&](int column) { ++n_below[index(column)]; });
  }
  group_of.resize(index(n));
  for (int column = 0; column < n; ++column) {
    const bool joins = column > 0 && parent[index(column - 1)] == column &&
                       n_below[index(column - 1)] == n_below[index(column)] + 1;
    if (!joins) first.push_back(column);
    group_of[index(column)] = static_cast<int>(first.size()) - 1;
  }
  first.push_back(n);
  rows_begin.push_back(0);
  std::size_t block = 0;
  std::size_t panel = 0;
  for (int g = 0; g < n_groups(); ++g) {
    const int n_panel_rows = n_below[index(at(first, g + 1) - 1)];
    rows_begin.push_back(rows_begin.back() + n_panel_rows);
    block_begin.push_back(block);
    panel_begin.push_back(panel);
    block += index(width(g)) * index(width(g));
    panel += index(width(g)) * index(n_panel_rows);
  }
  block_begin.push_back(block);
  panel_begin.push_back(panel);
}

void Ldlt::Pattern::find_panels(const std::vector<int>& parent) {
  const int n = static_cast<int>(parent.size());
  rows.resize(index(rows_begin.back()));
  std::vector<int> end(rows_begin.begin(), rows_begin.end() - 1);
  std::vector<int> seen(index(n), -1);
  touched_begin.push_back(0);
  for (int row = 0; row < n; ++row) {
    for_row(row, parent, seen, [&](int column) {
      const int group = at(group_of, column);
      const bool last = column + 1 == at(first, group + 1);
      if (!last || group == at(group_of, row)) return;
      touched.push_back(group);
      rows[index(end[index(group)]++)] = row;
    });
    std::sort(touched.begin() + touched_begin.back(), touched.end());
    touched_begin.push_back(static_cast<int>(touched.size()));
  }
}

Ldlt::Ldlt(const Sparse& lower) : pattern_(std::make_shared<const Pattern>(lower)) {
  blocks_.assign(pattern_->block_begin.back(), 0.0);
  panels_.assign(pattern_->panel_begin.back(), 0.0);
  n_done_.assign(index(pattern_->n_groups()), 0);
  pivots_ = Eigen::VectorXd::Zero(lower.rows());
  inverse_pivots_ = pivots_;
  work_ = pivots_;
}

std::size_t Ldlt::n_nonzeros() const {
  std::size_t n = panels_.size();
  for (int g = 0; g < pattern_->n_groups(); ++g) {
    const std::size_t width = index(pattern_->width(g));
    n += width * (width + 1) / 2;
  }
  return n;
}

std::size_t Ldlt::n_bytes() const {
  const Pattern& p = *pattern_;
  const auto bytes = [](const auto&... items) {
    return (0U + ... + (items.size() * sizeof(items.front())));
  };
  return bytes(blocks_, panels_, n_done_, p.rows, p.touched, p.touched_begin, p.group_of, p.first,
               p.rows_begin, p.block_begin, p.panel_begin) +
         sizeof(double) * static_cast<std::size_t>(3 * size());  // pivots, inverses, work
}

/// One row of L from the row of the matrix in work_, which is left at zero.
/// @param pivot  the matrix's diagonal entry
/// @return the pivot of this row
double Ldlt::eliminate_row(int row, double pivot) {
  const Pattern& p = *pattern_;
  double* y = work_.data();
  const auto move_out = [&](int first, int n, double* to, std::ptrdiff_t stride) {
    for (int j = 0; j < n; ++j) {
      const double value = y[first + j];
      const double l = value * inverse_pivots_[first + j];
      pivot -= l * value;
      to[j * stride] = l;
      y[first + j] = 0.0;
    }
  };
  for (int t = p.touched_begin[index(row)]; t < p.touched_begin[index(row + 1)]; ++t) {
    const int group = p.touched[index(t)];
    const int first = p.first[index(group)];
    const int width = p.width(group);
    const int n_rows = p.n_rows(group);
    double* panel = panels_.data() + p.panel_begin[index(group)];
    int& n_done = n_done_[index(group)];
    solve_block(blocks_.data() + p.block_begin[index(group)], width, width, y + first);
    subtract_panel(panel, n_rows, p.rows.data() + p.rows_begin[index(group)], n_done, width,
                   y + first, y);
    move_out(first, width, panel + n_done, n_rows);
    ++n_done;
  }
  const int group = p.group_of[index(row)];
  const int first = p.first[index(group)];
  const int n_before = row - first;
  double* block = blocks_.data() + p.block_begin[index(group)];
  solve_block(block, p.width(group), n_before, y + first);
  move_out(first, n_before, block + n_before, p.width(group));
  return pivot;
}

bool Ldlt::factorize(const double* values) {
  const Pattern& p = *pattern_;
  std::fill(n_done_.begin(), n_done_.end(), 0);
  work_.setZero();
  for (int row = 0; row < static_cast<int>(size()); ++row) {
    double diagonal = 0.0;
    for (int k = p.row_begin[index(row)]; k < p.row_begin[index(row + 1)]; ++k) {
      const int column = p.columns[index(k)];
      (column == row ? diagonal : work_[column]) = values[k];
    }
    const double pivot = eliminate_row(row, diagonal);
    if (!std::isfinite(pivot) || pivot == 0.0) return false;
    pivots_[row] = pivot;
    inverse_pivots_[row] = 1.0 / pivot;
  }
  return true;
}

void Ldlt::solve_lower_in_place(Eigen::VectorXd& x) const {
  const Pattern& p = *pattern_;
  for (int g = 0; g < p.n_groups(); ++g) {
    double* part = x.data() + p.first[index(g)];
    const int width = p.width(g);
    solve_block(blocks_.data() + p.block_begin[index(g)], width, width, part);
    subtract_panel(panels_.data() + p.panel_begin[index(g)], p.n_rows(g),
                   p.rows.data() + p.rows_begin[index(g)], p.n_rows(g), width, part, x.data());
  }
}

void Ldlt::solve_upper_in_place(Eigen::VectorXd& x) const {
  const Pattern& p = *pattern_;
  for (int g = p.n_groups() - 1; g >= 0; --g) {
    double* part = x.data() + p.first[index(g)];
    const int width = p.width(g);
    subtract_panel_transposed(panels_.data() + p.panel_begin[index(g)], p.n_rows(g),
                              p.rows.data() + p.rows_begin[index(g)], p.n_rows(g), width, x.data(),
                              part);
    solve_block_transposed(blocks_.data() + p.block_begin[index(g)], width, part);
  }
}

void Ldlt::solve_in_place(Eigen::VectorXd& x) const {
  solve_lower_in_place(x);
  x.array() *= inverse_pivots_.array();
  solve_upper_in_place(x);
}

Eigen::VectorXd Ldlt::solve(const Eigen::VectorXd& force) const {
  Eigen::VectorXd x = force;
  solve_in_place(x);
  return x;
}

}  // namespace fea
