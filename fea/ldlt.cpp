#include "fea/ldlt.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <type_traits>

#include "base/invariant.hpp"

namespace fea {

/// A run of columns whose patterns below the run are the same is a group, and those columns its
/// front: the group's own rows, then the others that it has entries in, ascending.
struct Ldlt::Pattern {
  /// Columns of one group among the rows below another one's.
  struct Target {
    int group;
    int from, to;      ///< among the rows below
    std::size_t rows;  ///< where `places_in` begins for them
  };

  std::vector<int> first;                ///< column of each group; one more at the end
  std::vector<int> below_begin, below;   ///< rows below each group, ascending
  std::vector<std::size_t> front_begin;  ///< of each group's front among the values of L
  std::vector<int> places;               ///< of the matrix's stored values among those of L
  std::vector<int> targets_begin;
  std::vector<Target> targets;
  std::vector<int> places_in;  ///< rows of a target's front, for its columns' rows and all after
  std::size_t largest = 0;     ///< memory that passing one on takes

  explicit Pattern(const Sparse& lower);

  [[nodiscard]] int n_groups() const { return static_cast<int>(first.size()) - 1; }
  [[nodiscard]] int width(int group) const { return at(first, group + 1) - at(first, group); }
  [[nodiscard]] int n_below(int group) const {
    return at(below_begin, group + 1) - at(below_begin, group);
  }
  [[nodiscard]] int height(int group) const { return width(group) + n_below(group); }
  [[nodiscard]] const int* rows_below(int group) const {
    return below.data() + at(below_begin, group);
  }
  template <class Item>
  [[nodiscard]] static Item at(const std::vector<Item>& items, int index) {
    return items[static_cast<std::size_t>(index)];
  }

 private:
  void find_groups(const Sparse& lower, const std::vector<int>& parent);
  void find_rows_below(const Sparse& lower, const std::vector<int>& parent);
  void find_places(const Sparse& lower);
  void find_targets();
  [[nodiscard]] int place_in(int group, int row) const;

  std::vector<int> group_of;  ///< of each column
};

namespace {

std::size_t index(int i) {
  return static_cast<std::size_t>(i);
}

/// Elimination tree: parent of each column, -1 at a root.
std::vector<int> elimination_tree(const Sparse& lower) {
  const int n = static_cast<int>(lower.rows());
  std::vector<int> parent(index(n), -1);
  std::vector<int> ancestor(index(n), -1);
  for (int row = 0; row < n; ++row) {
    for (int p = lower.outerIndexPtr()[row]; p < lower.outerIndexPtr()[row + 1]; ++p) {
      for (int i = lower.innerIndexPtr()[p]; i != -1 && i < row;) {
        const int next = ancestor[index(i)];
        ancestor[index(i)] = row;
        if (next == -1) parent[index(i)] = row;
        i = next;
      }
    }
  }
  return parent;
}

/// Visits the columns left of the diagonal in which L has an entry in `row`, in no order.
template <class Visit>
void for_row(const Sparse& lower, int row, const std::vector<int>& parent, std::vector<int>& seen,
             Visit visit) {
  seen[index(row)] = row;
  for (int p = lower.outerIndexPtr()[row]; p < lower.outerIndexPtr()[row + 1]; ++p) {
    for (int i = lower.innerIndexPtr()[p]; seen[index(i)] != row; i = parent[index(i)]) {
      seen[index(i)] = row;
      visit(i);
    }
  }
}

// Numbers in pairs, as the processor multiplies them.
using Pair = Eigen::Array2d;
using Stride = std::ptrdiff_t;

Pair pair_at(const double* values) {
  return Eigen::Map<const Pair>(values);
}

constexpr int kWidest = 6;

/// Calls run(number, first) with a constant `number` of columns, less than kWidest.
template <class Run>
void with_constant(int number, int first, const Run& run) {
  switch (number) {
    case 1:
      return run(std::integral_constant<int, 1>(), first);
    case 2:
      return run(std::integral_constant<int, 2>(), first);
    case 3:
      return run(std::integral_constant<int, 3>(), first);
    case 4:
      return run(std::integral_constant<int, 4>(), first);
    case 5:
      return run(std::integral_constant<int, 5>(), first);
    default:
      return;
  }
}

/// The same for all columns, in runs of kWidest and what is left.
template <class Run>
void in_runs(int width, const Run& run) {
  int j = 0;
  for (; j + kWidest <= width; j += kWidest) run(std::integral_constant<int, kWidest>(), j);
  with_constant(width - j, j, run);
}

/// The same runs, the last one first.
template <class Run>
void in_runs_back(int width, const Run& run) {
  int j = width - width % kWidest;
  with_constant(width - j, j, run);
  for (j -= kWidest; j >= 0; j -= kWidest) run(std::integral_constant<int, kWidest>(), j);
}

/// Columns times x for W columns.
/// @param take_off  called with each row and what comes of it
template <int W, class TakeOff>
void multiply(const double* columns, Stride stride, int n_rows, const double* x,
              const TakeOff& take_off) {
  int r = 0;
  for (; r + 4 <= n_rows; r += 4) {
    Pair sum = Pair::Zero();
    Pair next = Pair::Zero();
    const double* column = columns + r;
    for (int j = 0; j < W; ++j, column += stride) {
      sum += pair_at(column) * x[j];
      next += pair_at(column + 2) * x[j];
    }
    take_off(r, sum[0]);
    take_off(r + 1, sum[1]);
    take_off(r + 2, next[0]);
    take_off(r + 3, next[1]);
  }
  for (; r < n_rows; ++r) {
    double sum = 0.0;
    for (int j = 0; j < W; ++j) sum += columns[r + j * stride] * x[j];
    take_off(r, sum);
  }
}

/// x -= columns' y for W columns.
/// @param y_at  of each row
template <int W, class At>
void subtract_transposed(const double* columns, Stride stride, int n_rows, const At& y_at,
                         double* x) {
  std::array<Pair, static_cast<std::size_t>(W)> sums;
  for (Pair& sum : sums) sum.setZero();
  int r = 0;
  for (; r + 2 <= n_rows; r += 2) {
    const Pair pair(y_at(r), y_at(r + 1));
    const double* column = columns + r;
    for (Pair& sum : sums) {
      sum += pair_at(column) * pair;
      column += stride;
    }
  }
  for (int j = 0; j < W; ++j) {
    double sum = sums[index(j)].sum();
    if (r < n_rows) sum += columns[r + j * stride] * y_at(r);
    x[j] -= sum;
  }
}

/// x = T^-1 x of a unit lower triangle.
template <int W>
void solve_triangle(const double* triangle, Stride stride, double* x) {
  for (int i = 0; i + 1 < W; ++i) {
    for (int j = i + 1; j < W; ++j) x[j] -= triangle[j + i * stride] * x[i];
  }
}

template <int W>
void solve_triangle_transposed(const double* triangle, Stride stride, double* x) {
  for (int j = W - 1; j > 0; --j) {
    for (int i = 0; i < j; ++i) x[i] -= triangle[j + i * stride] * x[j];
  }
}

/// Four rows of X times two rows of L turned on their side: each number that is read is used more
/// than once.
struct Tile {
  std::array<Pair, 2> left = {Pair::Zero(), Pair::Zero()};
  std::array<Pair, 2> right = left;

  Tile(const double* x, Stride of_x, const double* l, Stride of_l, int width) {
    for (int j = 0; j < width; ++j, x += of_x, l += of_l) {
      const std::array<Pair, 2> four = {pair_at(x), pair_at(x + 2)};
      for (std::size_t i = 0; i < 2; ++i) {
        left[i] += four[i] * l[0];
        right[i] += four[i] * l[1];
      }
    }
  }
};

/// Rows beyond a front's last that are read with it.
constexpr int kSpare = 4;

}  // namespace

Ldlt::Pattern::Pattern(const Sparse& lower) {
  const std::vector<int> parent = elimination_tree(lower);
  find_groups(lower, parent);
  find_rows_below(lower, parent);
  find_places(lower);
  find_targets();
  group_of = {};
}

void Ldlt::Pattern::find_groups(const Sparse& lower, const std::vector<int>& parent) {
  const int n = static_cast<int>(parent.size());
  std::vector<int> n_entries(index(n), 0);
  std::vector<int> seen(index(n), -1);
  for (int row = 0; row < n; ++row) {
    for_row(lower, row, parent, seen, [&](int column) { ++n_entries[index(column)]; });
  }
  group_of.resize(index(n));
  for (int column = 0; column < n; ++column) {
    const bool joins = column > 0 && parent[index(column - 1)] == column &&
                       n_entries[index(column - 1)] == n_entries[index(column)] + 1;
    if (!joins) first.push_back(column);
    group_of[index(column)] = static_cast<int>(first.size()) - 1;
  }
  first.push_back(n);
  below_begin.push_back(0);
  front_begin.push_back(0);
  for (int g = 0; g < n_groups(); ++g) {
    below_begin.push_back(below_begin.back() + n_entries[index(at(first, g + 1) - 1)]);
    front_begin.push_back(front_begin.back() + index(width(g)) * index(height(g)));
    largest = std::max(largest, index(n_below(g) + kSpare) * index(width(g)));
  }
  INVARIANT(front_begin.back() < index(std::numeric_limits<int>::max()));
}

void Ldlt::Pattern::find_rows_below(const Sparse& lower, const std::vector<int>& parent) {
  const int n = static_cast<int>(parent.size());
  below.resize(index(below_begin.back()));
  std::vector<int> end(below_begin.begin(), below_begin.end() - 1);
  std::vector<int> seen(index(n), -1);
  for (int row = 0; row < n; ++row) {
    for_row(lower, row, parent, seen, [&](int column) {
      const int group = at(group_of, column);
      const bool last = column + 1 == at(first, group + 1);
      if (!last || group == at(group_of, row)) return;
      below[index(end[index(group)]++)] = row;
    });
  }
}

/// Of a row among those of a group's front.
int Ldlt::Pattern::place_in(int group, int row) const {
  if (row < at(first, group + 1)) return row - at(first, group);
  const int* begin = rows_below(group);
  return width(group) +
         static_cast<int>(std::lower_bound(begin, begin + n_below(group), row) - begin);
}

void Ldlt::Pattern::find_places(const Sparse& lower) {
  places.reserve(static_cast<std::size_t>(lower.nonZeros()));
  for (int row = 0; row < static_cast<int>(lower.rows()); ++row) {
    for (int p = lower.outerIndexPtr()[row]; p < lower.outerIndexPtr()[row + 1]; ++p) {
      const int column = lower.innerIndexPtr()[p];
      const int group = at(group_of, column);
      const int in_front = (column - at(first, group)) * height(group) + place_in(group, row);
      places.push_back(static_cast<int>(front_begin[index(group)]) + in_front);
    }
  }
}

void Ldlt::Pattern::find_targets() {
  targets_begin.push_back(0);
  for (int g = 0; g < n_groups(); ++g) {
    const int* rows = rows_below(g);
    const int n = n_below(g);
    for (int from = 0; from < n;) {
      Target target{at(group_of, rows[from]), from, from, places_in.size()};
      while (target.to < n && at(group_of, rows[target.to]) == target.group) ++target.to;
      for (int r = from; r < n; ++r) places_in.push_back(place_in(target.group, rows[r]));
      from = target.to;
      targets.push_back(target);
    }
    targets_begin.push_back(static_cast<int>(targets.size()));
  }
}

Ldlt::Ldlt(const Sparse& lower) : pattern_(std::make_shared<const Pattern>(lower)) {
  take_memory(lower.rows());
}

void Ldlt::take_memory(Eigen::Index n) {
  fronts_.resize(static_cast<Eigen::Index>(pattern_->front_begin.back()));
  work_.resize(static_cast<Eigen::Index>(pattern_->largest));
  pivots_ = Eigen::VectorXd::Zero(n);
  inverse_pivots_ = pivots_;
}

Ldlt Ldlt::empty_like() const {
  Ldlt out;
  out.pattern_ = pattern_;
  if (pattern_ != nullptr) out.take_memory(size());
  return out;
}

std::size_t Ldlt::n_nonzeros() const {
  std::size_t n = 0;
  for (int g = 0; g < pattern_->n_groups(); ++g) {
    const std::size_t width = index(pattern_->width(g));
    n += width * (width + 1) / 2 + width * index(pattern_->n_below(g));
  }
  return n;
}

std::size_t Ldlt::n_bytes() const {
  const Pattern& p = *pattern_;
  const auto bytes = [](const auto&... items) {
    return (0U + ... + (items.size() * sizeof(items.front())));
  };
  return sizeof(double) * static_cast<std::size_t>(fronts_.size()) +
         bytes(p.first, p.below_begin, p.below, p.front_begin, p.places, p.targets_begin, p.targets,
               p.places_in) +
         sizeof(double) * static_cast<std::size_t>(2 * size());  // pivots and their inverses
}

bool Ldlt::factorize(const double* values) {
  const Pattern& p = *pattern_;
  fronts_.setZero();
  for (std::size_t k = 0; k < p.places.size(); ++k) fronts_[p.places[k]] = values[k];
  for (int g = 0; g < p.n_groups(); ++g) {
    if (!eliminate(g)) return false;
    if (p.n_below(g) > 0) pass_on(g);
  }
  return true;
}

/// The columns of a front, one after the other, each by those before it.
/// @return whether every pivot is finite and not zero
bool Ldlt::eliminate(int group) {
  const Pattern& p = *pattern_;
  const int width = p.width(group);
  const int height = p.height(group);
  const Stride stride = height;
  double* front = fronts_.data() + p.front_begin[index(group)];
  double* pivots = pivots_.data() + p.first[index(group)];
  double* inverse = inverse_pivots_.data() + p.first[index(group)];
  std::array<double, kWidest> by{};
  for (int k = 0; k < width; ++k) {
    double* column = front + k * stride + k;
    in_runs(k, [&](auto number, int j) {
      const double* before = front + j * stride + k;
      for (int i = 0; i < number.value; ++i) {
        by[index(i)] = before[i * stride] * pivots[j + i];
      }
      multiply<number.value>(before, stride, height - k, by.data(),
                             [&](int r, double product) { column[r] -= product; });
    });
    if (!std::isfinite(*column) || *column == 0.0) return false;
    pivots[k] = *column;
    inverse[k] = 1.0 / pivots[k];
    for (int r = 1; r < height - k; ++r) column[r] *= inverse[k];
  }
  return true;
}

/// What the columns of a front take off those of the groups that its other rows belong to: L D L'
/// over these rows.
void Ldlt::pass_on(int group) {
  const Pattern& p = *pattern_;
  const int width = p.width(group);
  const int n = p.n_below(group);
  const Stride stride = p.height(group);
  const Stride padded = n + kSpare;
  const double* rows = fronts_.data() + p.front_begin[index(group)] + width;
  const double* pivots = pivots_.data() + p.first[index(group)];
  for (int j = 0; j < width; ++j) {
    double* out = work_.data() + j * padded;  // L D
    for (int r = 0; r < n; ++r) out[r] = rows[r + j * stride] * pivots[j];
    std::fill(out + n, out + padded, 0.0);
  }
  for (int t = p.targets_begin[index(group)]; t < p.targets_begin[index(group + 1)]; ++t) {
    const Pattern::Target& target = p.targets[index(t)];
    const int* places = p.places_in.data() + target.rows - target.from;
    const Stride there = p.height(target.group);
    double* front = fronts_.data() + p.front_begin[index(target.group)];
    int q = target.from;
    for (; q + 2 <= target.to; q += 2) {
      double* left = front + places[q] * there;
      double* right = front + places[q + 1] * there;
      for (int r = q; r < n; r += 4) {
        const Tile tile(work_.data() + r, padded, rows + q, stride, width);
        // The right column's first row is above its diagonal, where nothing is read.
        for (int i = 0; i < std::min(4, n - r); ++i) {
          left[places[r + i]] -= tile.left[index(i / 2)][i % 2];
          right[places[r + i]] -= tile.right[index(i / 2)][i % 2];
        }
      }
    }
    if (q == target.to) continue;
    double* left = front + places[q] * there;
    for (int r = q; r < n; ++r) {
      double sum = 0.0;
      for (int j = 0; j < width; ++j) {
        sum += work_[r + j * padded] * rows[q + j * stride];
      }
      left[places[r]] -= sum;
    }
  }
}

void Ldlt::solve_lower_in_place(Eigen::VectorXd& x) const {
  const Pattern& p = *pattern_;
  for (int g = 0; g < p.n_groups(); ++g) {
    const int width = p.width(g);
    const Stride stride = p.height(g);
    const double* front = fronts_.data() + p.front_begin[index(g)];
    double* own = x.data() + p.first[index(g)];
    const int* below = p.rows_below(g);
    in_runs(width, [&](auto number, int j) {
      constexpr int kNumber = number.value;
      const double* columns = front + j * stride + j;
      solve_triangle<kNumber>(columns, stride, own + j);
      double* left = own + j + kNumber;
      multiply<kNumber>(columns + kNumber, stride, width - j - kNumber, own + j,
                        [&](int r, double product) { left[r] -= product; });
      multiply<kNumber>(front + j * stride + width, stride, p.n_below(g), own + j,
                        [&](int r, double product) { x[below[r]] -= product; });
    });
  }
}

void Ldlt::solve_upper_in_place(Eigen::VectorXd& x) const {
  const Pattern& p = *pattern_;
  for (int g = p.n_groups() - 1; g >= 0; --g) {
    const int width = p.width(g);
    const Stride stride = p.height(g);
    const double* front = fronts_.data() + p.front_begin[index(g)];
    double* own = x.data() + p.first[index(g)];
    const int* below = p.rows_below(g);
    in_runs_back(width, [&](auto number, int j) {
      constexpr int kNumber = number.value;
      const double* columns = front + j * stride + j;
      subtract_transposed<kNumber>(
          front + j * stride + width, stride, p.n_below(g), [&](int r) { return x[below[r]]; },
          own + j);
      const double* left = own + j + kNumber;
      subtract_transposed<kNumber>(
          columns + kNumber, stride, width - j - kNumber, [&](int r) { return left[r]; }, own + j);
      solve_triangle_transposed<kNumber>(columns, stride, own + j);
    });
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
