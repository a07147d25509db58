#include "fea/condensation.hpp"

#include <algorithm>
#include <iterator>

#include <Eigen/Cholesky>

namespace fea {
namespace {

/// Place of each unknown of the model in a list; -1 = not in it.
std::vector<int> places_in(const std::vector<int>& list, int n_unknowns) {
  std::vector<int> out(static_cast<std::size_t>(n_unknowns), -1);
  for (std::size_t i = 0; i < list.size(); ++i) {
    out[static_cast<std::size_t>(list[i])] = static_cast<int>(i);
  }
  return out;
}

/// Free unknowns that the blocks have, ascending.
std::vector<int> free_unknowns(const System& system, const std::vector<std::size_t>& blocks) {
  std::vector<int> all;
  for (const std::size_t block : blocks) {
    if (system.stiffness(block).size() == 0) continue;
    for (const int unknown : system.unknowns(block)) {
      if (!system.held(unknown)) all.push_back(unknown);
    }
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

/// The sum of the blocks over a list of unknowns.
Eigen::MatrixXd sum_over(const System& system, const std::vector<std::size_t>& blocks,
                         const std::vector<int>& list) {
  const std::vector<int> place = places_in(list, system.n_unknowns());
  const auto n = static_cast<Eigen::Index>(list.size());
  Eigen::MatrixXd sum = Eigen::MatrixXd::Zero(n, n);
  for (const std::size_t block : blocks) {
    const Eigen::MatrixXd& values = system.stiffness(block);
    if (values.size() == 0) continue;
    const Eigen::VectorXi& unknowns = system.unknowns(block);
    for (Eigen::Index column = 0; column < unknowns.size(); ++column) {
      const int to = place[static_cast<std::size_t>(unknowns(column))];
      if (to < 0) continue;
      for (Eigen::Index row = 0; row < unknowns.size(); ++row) {
        const int from = place[static_cast<std::size_t>(unknowns(row))];
        if (from >= 0) sum(from, to) += values(row, column);
      }
    }
  }
  return sum;
}

/// Place among the rest's kept unknowns of each that a part keeps.
std::vector<Eigen::Index> kept_places(const Condensed& rest, const Condensed& part) {
  std::vector<Eigen::Index> out;
  out.reserve(part.kept.size());
  for (const int unknown : part.kept) {
    out.push_back(std::lower_bound(rest.kept.begin(), rest.kept.end(), unknown) -
                  rest.kept.begin());
  }
  return out;
}

}  // namespace

std::vector<int> shared_unknowns(const System& system, const std::vector<std::size_t>& blocks) {
  std::vector<std::size_t> others;
  for (std::size_t block = 0; block < system.n_blocks(); ++block) {
    if (std::find(blocks.begin(), blocks.end(), block) == blocks.end()) others.push_back(block);
  }
  const std::vector<int> own = free_unknowns(system, blocks);
  const std::vector<int> of_others = free_unknowns(system, others);
  std::vector<int> out;
  std::set_intersection(own.begin(), own.end(), of_others.begin(), of_others.end(),
                        std::back_inserter(out));
  return out;
}

Condensed condense(const System& system, const std::vector<std::size_t>& blocks,
                   const std::vector<int>& kept, const Eigen::MatrixXd& loads) {
  Condensed out;
  out.kept = kept;
  const std::vector<int> all = free_unknowns(system, blocks);
  std::set_difference(all.begin(), all.end(), kept.begin(), kept.end(),
                      std::back_inserter(out.inside));
  std::vector<int> ordered = out.inside;
  ordered.insert(ordered.end(), out.kept.begin(), out.kept.end());
  const Eigen::MatrixXd whole = sum_over(system, blocks, ordered);
  const auto n_inside = static_cast<Eigen::Index>(out.inside.size());
  const auto n_kept = static_cast<Eigen::Index>(out.kept.size());
  const Eigen::LLT<Eigen::MatrixXd> inside(whole.topLeftCorner(n_inside, n_inside));
  if (n_inside > 0 && inside.info() != Eigen::Success) return out;
  out.held = true;
  const auto across = whole.topRightCorner(n_inside, n_kept);
  out.follow = n_inside > 0 ? Eigen::MatrixXd(-inside.solve(across))
                            : Eigen::MatrixXd(Eigen::MatrixXd::Zero(0, n_kept));
  const Eigen::MatrixXd loads_inside = loads(out.inside, Eigen::all);
  out.alone = n_inside > 0 ? Eigen::MatrixXd(inside.solve(loads_inside))
                           : Eigen::MatrixXd(Eigen::MatrixXd::Zero(0, loads.cols()));
  out.stiffness = whole.bottomRightCorner(n_kept, n_kept) + across.transpose() * out.follow;
  out.loads = loads(out.kept, Eigen::all) + out.follow.transpose() * loads_inside;
  return out;
}

Eigen::MatrixXd motion_of(const Condensed& rest, const std::vector<const Condensed*>& parts) {
  Eigen::MatrixXd stiffness = rest.stiffness;
  Eigen::MatrixXd motion = rest.loads;
  for (const Condensed* part : parts) {
    const std::vector<Eigen::Index> at = kept_places(rest, *part);
    for (std::size_t column = 0; column < at.size(); ++column) {
      for (std::size_t row = 0; row < at.size(); ++row) {
        stiffness(at[row], at[column]) +=
            part->stiffness(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column));
      }
    }
    for (std::size_t row = 0; row < at.size(); ++row) {
      motion.row(at[row]) += part->loads.row(static_cast<Eigen::Index>(row));
    }
  }
  const Eigen::LLT<Eigen::Ref<Eigen::MatrixXd>> factor(stiffness);  // in place
  if (factor.info() != Eigen::Success) return {};
  factor.solveInPlace(motion);
  return motion;
}

void spread_motion(const Condensed& rest, const Condensed& part, const Eigen::VectorXd& moved,
                   Eigen::Index load_case, Eigen::VectorXd& full) {
  const Eigen::VectorXd ends = moved(kept_places(rest, part));
  full(part.kept) = ends;
  if (!part.inside.empty()) {
    full(part.inside) = part.follow * ends + part.alone.col(load_case);
  }
}

}  // namespace fea
