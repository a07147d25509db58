#include "tests/bench/band_cholesky.hpp"

#include <algorithm>

#include "base/invariant.hpp"

extern "C" {
void dpbtrf_(const char* uplo, const int* n, const int* kd, double* ab, const int* ldab, int* info,
             std::size_t);
void dpbtrs_(const char* uplo, const int* n, const int* kd, const int* nrhs, const double* ab,
             const int* ldab, double* b, const int* ldb, int* info, std::size_t);
}

namespace bench {
namespace {

using Graph = std::vector<std::vector<int>>;

std::size_t index(int i) {
  return static_cast<std::size_t>(i);
}

Graph neighbors(const fea::Sparse& lower) {
  Graph graph(index(static_cast<int>(lower.rows())));
  for (int row = 0; row < lower.outerSize(); ++row) {
    for (fea::Sparse::InnerIterator it(lower, row); it; ++it) {
      const int column = static_cast<int>(it.col());
      if (column == row) continue;
      graph[index(row)].push_back(column);
      graph[index(column)].push_back(row);
    }
  }
  return graph;
}

/// Unknowns by distance from `start`, those of fewer neighbors first; `reached` is added to.
std::vector<int> levels(const Graph& graph, int start, std::vector<bool>& reached, int& depth) {
  std::vector<int> order = {start};
  reached[index(start)] = true;
  depth = 0;
  std::size_t level_end = 1;
  for (std::size_t i = 0; i < order.size(); ++i) {
    if (i == level_end) {
      level_end = order.size();
      ++depth;
    }
    const std::size_t first = order.size();
    for (const int next : graph[index(order[i])]) {
      if (reached[index(next)]) continue;
      reached[index(next)] = true;
      order.push_back(next);
    }
    std::stable_sort(
        order.begin() + static_cast<std::ptrdiff_t>(first), order.end(),
        [&graph](int a, int b) { return graph[index(a)].size() < graph[index(b)].size(); });
  }
  return order;
}

/// An unknown at the far end of its part of the graph.
int far_end(const Graph& graph, int start, const std::vector<bool>& reached) {
  int depth = -1;
  for (;;) {
    std::vector<bool> seen = reached;
    int deeper = 0;
    const std::vector<int> order = levels(graph, start, seen, deeper);
    if (deeper <= depth) return start;
    depth = deeper;
    start = order.back();
  }
}

}  // namespace

std::vector<int> reverse_cuthill_mckee(const fea::Sparse& lower) {
  const Graph graph = neighbors(lower);
  std::vector<bool> reached(graph.size(), false);
  std::vector<int> order;
  for (int start = 0; start < static_cast<int>(graph.size()); ++start) {
    if (reached[index(start)]) continue;
    int depth = 0;
    const std::vector<int> part = levels(graph, far_end(graph, start, reached), reached, depth);
    order.insert(order.end(), part.begin(), part.end());
  }
  std::vector<int> place(graph.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    place[index(order[i])] = static_cast<int>(order.size() - 1 - i);
  }
  return place;
}

BandCholesky::BandCholesky(const fea::Sparse& lower) : place_(reverse_cuthill_mckee(lower)) {
  const auto for_each = [&](auto visit) {
    for (int row = 0; row < lower.outerSize(); ++row) {
      for (fea::Sparse::InnerIterator it(lower, row); it; ++it) {
        const int a = place_[index(row)];
        const int b = place_[index(static_cast<int>(it.col()))];
        visit(std::max(a, b), std::min(a, b), it.value());
      }
    }
  };
  for_each([&](int row, int column, double) { n_below_ = std::max(n_below_, row - column); });
  matrix_.assign(place_.size() * index(n_below_ + 1), 0.0);
  for_each([&](int row, int column, double value) {
    matrix_[index(column) * index(n_below_ + 1) + index(row - column)] = value;
  });
  factor_ = matrix_;
}

void BandCholesky::load() {
  std::copy(matrix_.begin(), matrix_.end(), factor_.begin());
}

void BandCholesky::factorize() {
  const int n = static_cast<int>(place_.size());
  const int stride = n_below_ + 1;
  int info = 0;
  dpbtrf_("L", &n, &n_below_, factor_.data(), &stride, &info, 1);
  INVARIANT(info == 0);
}

void BandCholesky::solve(Eigen::VectorXd& x) const {
  const int n = static_cast<int>(place_.size());
  const int stride = n_below_ + 1;
  const int one = 1;
  int info = 0;
  dpbtrs_("L", &n, &n_below_, &one, factor_.data(), &stride, x.data(), &n, &info, 1);
  INVARIANT(info == 0);
}

Eigen::VectorXd BandCholesky::to_band(const Eigen::VectorXd& x) const {
  Eigen::VectorXd out(x.size());
  for (Eigen::Index i = 0; i < x.size(); ++i) out(place_[static_cast<std::size_t>(i)]) = x(i);
  return out;
}

Eigen::VectorXd BandCholesky::from_band(const Eigen::VectorXd& x) const {
  Eigen::VectorXd out(x.size());
  for (Eigen::Index i = 0; i < x.size(); ++i) out(i) = x(place_[static_cast<std::size_t>(i)]);
  return out;
}

}  // namespace bench
