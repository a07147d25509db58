#include "fea/elimination_order.hpp"

#include <algorithm>
#include <cstdint>
#include <unordered_map>

#include <Eigen/OrderingMethods>
#include <Eigen/SparseCore>

namespace fea {
namespace {

/// A number that looks random, one for each i (splitmix64's last step).
std::uint64_t scattered(std::uint64_t i) {
  i = (i + 1U) * 0x9e3779b97f4a7c15U;
  i = (i ^ (i >> 30U)) * 0xbf58476d1ce4e5b9U;
  i = (i ^ (i >> 27U)) * 0x94d049bb133111ebU;
  return i ^ (i >> 31U);
}

/// Unknowns in the same blocks have the same group. -1 = held.
Eigen::VectorXi groups_of(const std::vector<Eigen::VectorXi>& unknowns, const Eigen::VectorXi& held,
                          int& n_groups) {
  std::vector<std::uint64_t> in_blocks(static_cast<std::size_t>(held.size()), 0U);
  for (std::size_t b = 0; b < unknowns.size(); ++b) {
    for (const int u : unknowns[b]) in_blocks[static_cast<std::size_t>(u)] += scattered(b);
  }
  Eigen::VectorXi group(held.size());
  std::unordered_map<std::uint64_t, int> known;
  for (Eigen::Index u = 0; u < held.size(); ++u) {
    if (held(u) < 0) {
      group(u) = -1;
      continue;
    }
    const int next = static_cast<int>(known.size());
    group(u) = known.emplace(in_blocks[static_cast<std::size_t>(u)], next).first->second;
  }
  n_groups = static_cast<int>(known.size());
  return group;
}

Eigen::SparseMatrix<double> neighbors(const std::vector<Eigen::VectorXi>& unknowns,
                                      const Eigen::VectorXi& group, int n_groups) {
  std::vector<Eigen::Triplet<double>> pairs;
  std::vector<int> together;
  for (const Eigen::VectorXi& block : unknowns) {
    together.clear();
    for (const int u : block) {
      if (group(u) >= 0) together.push_back(group(u));
    }
    std::sort(together.begin(), together.end());
    together.erase(std::unique(together.begin(), together.end()), together.end());
    for (const int a : together) {
      for (const int b : together) pairs.emplace_back(a, b, 1.0);
    }
  }
  Eigen::SparseMatrix<double> graph(n_groups, n_groups);
  graph.setFromTriplets(pairs.begin(), pairs.end());
  return graph;
}

}  // namespace

Eigen::VectorXi elimination_order(const std::vector<Eigen::VectorXi>& unknowns,
                                  const Eigen::VectorXi& held) {
  int n_groups = 0;
  const Eigen::VectorXi group = groups_of(unknowns, held, n_groups);
  Eigen::VectorXi order = Eigen::VectorXi::Constant(held.size(), -1);
  if (n_groups == 0) return order;
  Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> groups_in_order;
  Eigen::AMDOrdering<int>()(neighbors(unknowns, group, n_groups), groups_in_order);

  Eigen::VectorXi first = Eigen::VectorXi::Zero(n_groups);  // place of each group's next unknown
  for (const int g : group) {
    if (g >= 0) ++first(g);
  }
  int next = 0;
  for (const int g : groups_in_order.indices()) {
    const int size = first(g);
    first(g) = next;
    next += size;
  }
  for (Eigen::Index u = 0; u < group.size(); ++u) {
    if (group(u) >= 0) order(u) = first(group(u))++;
  }
  return order;
}

}  // namespace fea
