#include "fea/matrix_assembly.hpp"

#include <algorithm>
#include <utility>

namespace fea {
namespace {

/// For each free unknown, the blocks it is in.
struct BlocksOf {
  std::vector<int> begin;
  std::vector<int> blocks;

  BlocksOf(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& reduced, int n_free)
      : begin(static_cast<std::size_t>(n_free) + 2, 0) {
    const auto for_each = [&](auto visit) {
      for (std::size_t b = 0; b < unknowns.size(); ++b) {
        for (const int u : unknowns[b]) {
          if (reduced(u) >= 0) visit(static_cast<std::size_t>(reduced(u)), static_cast<int>(b));
        }
      }
    };
    for_each([&](std::size_t i, int) { ++begin[i + 2]; });
    for (std::size_t i = 2; i < begin.size(); ++i) begin[i] += begin[i - 1];
    blocks.resize(static_cast<std::size_t>(begin.back()));
    for_each([&](std::size_t i, int b) { blocks[static_cast<std::size_t>(begin[i + 1]++)] = b; });
  }
};

Sparse lower_pattern(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& reduced,
                     int n_free) {
  const BlocksOf of(unknowns, reduced, n_free);
  std::vector<int> row_begin = {0};
  std::vector<int> columns;
  std::vector<int> seen(static_cast<std::size_t>(n_free), -1);
  for (int row = 0; row < n_free; ++row) {
    const auto i = static_cast<std::size_t>(row);
    for (int k = of.begin[i]; k < of.begin[i + 1]; ++k) {
      for (const int u :
           unknowns[static_cast<std::size_t>(of.blocks[static_cast<std::size_t>(k)])]) {
        const int column = reduced(u);
        if (column < 0 || column > row || seen[static_cast<std::size_t>(column)] == row) continue;
        seen[static_cast<std::size_t>(column)] = row;
        columns.push_back(column);
      }
    }
    std::sort(columns.begin() + row_begin.back(), columns.end());
    row_begin.push_back(static_cast<int>(columns.size()));
  }
  const std::vector<double> zeros(columns.size(), 0.0);
  return Eigen::Map<const Sparse>(n_free, n_free, static_cast<Eigen::Index>(columns.size()),
                                  row_begin.data(), columns.data(), zeros.data());
}

/// Place of an entry in a Triangle.
int in_triangle(int row, int column, int size) {
  return column * size - column * (column - 1) / 2 + row - column;
}

int place_of(const Sparse& pattern, int row, int column) {
  const int* first = pattern.innerIndexPtr() + pattern.outerIndexPtr()[row];
  const int* last = pattern.innerIndexPtr() + pattern.outerIndexPtr()[row + 1];
  return static_cast<int>(std::lower_bound(first, last, column) - pattern.innerIndexPtr());
}

}  // namespace

Assembly::Assembly(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& reduced,
                   int n_free)
    : pattern_(std::make_shared<const Sparse>(lower_pattern(unknowns, reduced, n_free))) {
  std::vector<Entry> entries;
  for (const Eigen::VectorXi& block : unknowns) {
    const auto size = static_cast<int>(block.size());
    const std::size_t begin = entries.size();
    for (int j = 0; j < size; ++j) {
      for (int i = 0; i < size; ++i) {
        const int row = reduced(block(i));
        const int column = reduced(block(j));
        if (column < 0 || row < column) continue;
        entries.push_back({j * size + i, i * size + j,
                           in_triangle(std::max(i, j), std::min(i, j), size),
                           place_of(*pattern_, row, column)});
      }
    }
    runs_.push_back({begin, entries.size()});
  }
  weights_.assign(static_cast<std::size_t>(pattern_->nonZeros()), 1.0);
  entries_ = std::make_shared<const std::vector<Entry>>(std::move(entries));
}

Assembly::Assembly(const Assembly& like, const std::vector<std::size_t>& same_as)
    : pattern_(like.pattern_), entries_(like.entries_), weights_(like.weights_.size(), 1.0) {
  runs_.reserve(same_as.size());
  for (const std::size_t block : same_as) runs_.push_back(like.runs_[block]);
}

void Assembly::scale_by(const Eigen::VectorXd& scale) {
  const int* row_begin = pattern_->outerIndexPtr();
  const int* columns = pattern_->innerIndexPtr();
  for (Eigen::Index row = 0; row < pattern_->rows(); ++row) {
    for (int p = row_begin[row]; p < row_begin[row + 1]; ++p) {
      weights_[static_cast<std::size_t>(p)] = scale(row) * scale(columns[p]);
    }
  }
}

void Assembly::add(const Blocks& blocks, double factor, double* values) const {
  add([&blocks](std::size_t b) -> const Eigen::MatrixXd& { return blocks[b]; }, factor, values);
}

void Assembly::add(const std::function<const Eigen::MatrixXd&(std::size_t)>& block, double factor,
                   double* values) const {
  const std::vector<Entry>& entries = *entries_;
  for (std::size_t b = 0; b < runs_.size(); ++b) {
    const Eigen::MatrixXd& here = block(b);
    if (here.size() == 0) continue;
    for (std::size_t e = runs_[b].begin; e < runs_[b].end; ++e) {
      const Entry& entry = entries[e];
      values[entry.place] +=
          factor * weights_[static_cast<std::size_t>(entry.place)] * here.data()[entry.in_block];
    }
  }
}

void Assembly::add(std::size_t block, const Triangle& lower, double* values) const {
  const std::vector<Entry>& entries = *entries_;
  for (std::size_t e = runs_[block].begin; e < runs_[block].end; ++e) {
    const Entry& entry = entries[e];
    values[entry.place] +=
        weights_[static_cast<std::size_t>(entry.place)] * lower.data()[entry.in_triangle];
  }
}

void Assembly::add_parts(const Blocks& blocks, double* symmetric, double* skew) const {
  const std::vector<Entry>& entries = *entries_;
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    if (blocks[b].size() == 0) continue;
    const double* block = blocks[b].data();
    for (std::size_t e = runs_[b].begin; e < runs_[b].end; ++e) {
      const Entry& entry = entries[e];
      const double half = 0.5 * weights_[static_cast<std::size_t>(entry.place)];
      const double below = half * block[entry.in_block];
      const double above = half * block[entry.mirrored];
      symmetric[entry.place] += below + above;
      if (skew != nullptr) skew[entry.place] += below - above;
    }
  }
}

void subtract_product(const Sparse& lower, const Eigen::VectorXd& x, Eigen::VectorXd& out) {
  const double* values = lower.valuePtr();
  const int* columns = lower.innerIndexPtr();
  for (Eigen::Index row = 0; row < lower.rows(); ++row) {
    const double here = x[row];
    const int diagonal = lower.outerIndexPtr()[row + 1] - 1;  // the last of its row
    // Two sums, so that one addition need not wait for the last.
    double sum = values[diagonal] * here;
    double other = 0.0;
    int k = lower.outerIndexPtr()[row];
    for (; k + 1 < diagonal; k += 2) {
      sum += values[k] * x[columns[k]];
      other += values[k + 1] * x[columns[k + 1]];
      out[columns[k]] -= values[k] * here;
      out[columns[k + 1]] -= values[k + 1] * here;
    }
    if (k < diagonal) {
      sum += values[k] * x[columns[k]];
      out[columns[k]] -= values[k] * here;
    }
    out[row] -= sum + other;
  }
}

void subtract_skew_product(const std::vector<SkewEntry>& below, const Eigen::VectorXd& x,
                           Eigen::VectorXd& out) {
  for (const SkewEntry& entry : below) {
    out[entry.row] -= entry.value * x[entry.column];
    out[entry.column] += entry.value * x[entry.row];
  }
}

}  // namespace fea
