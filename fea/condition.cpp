#include "fea/condition.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <fmt/format.h>

#include "fea/labels.hpp"
#include "fea/mechanism.hpp"

namespace fea {
namespace {

/// Largest column sum of a symmetric matrix stored as its lower triangle.
double one_norm(const Eigen::Map<const Sparse>& lower) {
  Eigen::VectorXd sums = Eigen::VectorXd::Zero(lower.cols());
  for (int row = 0; row < lower.outerSize(); ++row) {
    for (Eigen::Map<const Sparse>::InnerIterator it(lower, row); it; ++it) {
      sums(row) += std::abs(it.value());
      if (it.col() != row) sums(it.col()) += std::abs(it.value());
    }
  }
  double most = 0.0;
  for (const double sum : sums) most = std::max(most, sum);
  return most;
}

double one_norm(const Eigen::VectorXd& vector) {
  return std::accumulate(vector.begin(), vector.end(), 0.0,
                         [](double sum, double v) { return sum + std::abs(v); });
}

/// The place of the largest number, whatever its sign.
Eigen::Index largest(const Eigen::VectorXd& vector) {
  return std::max_element(vector.begin(), vector.end(),
                          [](double a, double b) { return std::abs(a) < std::abs(b); }) -
         vector.begin();
}

/// 1-norm of the inverse: climbs from one unit vector to the next, then tries a vector of growing
/// and alternating numbers, against which the climb can be blind.
double one_norm_of_inverse(const Ldlt& factor, Eigen::Index n) {
  constexpr int kClimbs = 5;
  Eigen::VectorXd x = Eigen::VectorXd::Constant(n, 1.0 / static_cast<double>(n));
  double norm = 0.0;
  for (int i = 0; i < kClimbs; ++i) {
    const Eigen::VectorXd y = factor.solve(x);
    const double found = one_norm(y);
    if (i > 0 && !(found > norm)) break;
    norm = found;
    const Eigen::VectorXd signs = y.unaryExpr([](double v) { return v < 0.0 ? -1.0 : 1.0; });
    const Eigen::VectorXd slope = factor.solve(signs);
    const Eigen::Index steepest = largest(slope);
    if (std::abs(slope(steepest)) <= std::inner_product(slope.begin(), slope.end(), x.begin(), 0.0))
      break;
    x = Eigen::VectorXd::Unit(n, steepest);
  }
  Eigen::VectorXd alternating(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    const double grown = 1.0 + static_cast<double>(i) / std::max(1.0, static_cast<double>(n - 1));
    alternating(i) = i % 2 == 0 ? grown : -grown;
  }
  const Eigen::VectorXd y = factor.solve(alternating);
  return std::max(norm, 2.0 * one_norm(y) / (3.0 * static_cast<double>(n)));
}

std::string block_label(const System& system, std::size_t block) {
  const std::size_t n_beams = system.beams().size();
  return block < n_beams ? label(system.model(), BeamId{static_cast<int>(block)})
                         : label(system.model(), SpringId{static_cast<int>(block - n_beams)});
}

/// What moves in the softest motion although it is stiff by itself, and what alone resists it.
std::string cause(const System& system) {
  const Eigen::VectorXd motion = system.from_scaled_motion(softest(system));
  const std::size_t n_blocks = system.beams().size() + system.springs().size();
  std::size_t holder = 0;  // has most of the energy
  std::size_t moved = 0;   // would have most were it alone to move so
  double most_energy = -1.0;
  double most_alone = -1.0;
  for (std::size_t b = 0; b < n_blocks; ++b) {
    const Eigen::VectorXd q = motion(system.unknowns(b));
    const Eigen::MatrixXd& k = system.stiffness(b);
    const double energy = q.dot(k * q);
    double alone = 0.0;
    for (Eigen::Index i = 0; i < q.size(); ++i) alone += q(i) * q(i) * k(i, i);
    if (energy > most_energy) {
      most_energy = energy;
      holder = b;
    }
    if (alone > most_alone) {
      most_alone = alone;
      moved = b;
    }
  }
  std::string words = describe(system, motion).words;
  const std::size_t can = words.find(" can ");
  if (can != std::string::npos) words.insert(can + 4, " nearly");
  if (holder == moved) {
    return fmt::format("{}; {} alone resists it", words, block_label(system, holder));
  }
  return fmt::format("{}; {} resists it most, {:.0e} times softer than {}", words,
                     block_label(system, holder), most_alone / most_energy,
                     block_label(system, moved));
}

}  // namespace

Condition condition(const Factored& factored) {
  const System& system = factored.system();
  if (system.n_free() == 0) return {};
  Condition out;
  out.number = one_norm(system.scaled()) * one_norm_of_inverse(system.factor(), system.n_free());
  if (out.number > kIllConditioned) out.cause = cause(system);
  return out;
}

FactorSize factor_size(const Factored& factored) {
  const System& system = factored.system();
  FactorSize out;
  out.unknowns = system.n_free();
  if (system.n_free() == 0) return out;
  out.nonzeros = static_cast<long long>(system.factor().n_nonzeros());
  out.bytes = static_cast<long long>(system.factor().n_bytes());
  return out;
}

}  // namespace fea
