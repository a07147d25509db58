#include "fea/matrix_assembly.hpp"

#include <algorithm>

namespace fea {
namespace {

Sparse lower_pattern(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& reduced,
                     int n_free) {
  std::vector<Eigen::Triplet<double>> entries;
  for (const Eigen::VectorXi& block : unknowns) {
    for (const int column : block) {
      for (const int row : block) {
        const int i = reduced(row);
        const int j = reduced(column);
        if (j >= 0 && i >= j) entries.emplace_back(i, j, 0.0);
      }
    }
  }
  Sparse pattern(n_free, n_free);
  pattern.setFromTriplets(entries.begin(), entries.end());
  return pattern;
}

int place_of(const Sparse& pattern, int row, int column) {
  const int* first = pattern.innerIndexPtr() + pattern.outerIndexPtr()[column];
  const int* last = pattern.innerIndexPtr() + pattern.outerIndexPtr()[column + 1];
  return static_cast<int>(std::lower_bound(first, last, row) - pattern.innerIndexPtr());
}

}  // namespace

Assembly::Assembly(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& reduced,
                   int n_free)
    : pattern_(lower_pattern(unknowns, reduced, n_free)) {
  for (const Eigen::VectorXi& block : unknowns) {
    std::vector<int> places;
    places.reserve(static_cast<std::size_t>(block.size() * block.size()));
    for (const int column : block) {
      for (const int row : block) {
        const int i = reduced(row);
        const int j = reduced(column);
        places.push_back(j >= 0 && i >= j ? place_of(pattern_, i, j) : -1);
      }
    }
    places_.push_back(std::move(places));
  }
}

Sparse Assembly::sum(const Blocks& blocks) const {
  Sparse out = pattern_;
  double* values = out.valuePtr();
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    const double* block = blocks[b].data();
    for (Eigen::Index i = 0; i < blocks[b].size(); ++i) {
      const int place = places_[b][static_cast<std::size_t>(i)];
      if (place >= 0) values[place] += block[i];
    }
  }
  return out;
}

}  // namespace fea
