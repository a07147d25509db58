#include "fea/buckling.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "fea/lanczos.hpp"
#include "fea/linear_motion.hpp"
#include "fea/stress_state.hpp"
#include "fea/tangent.hpp"

namespace fea {
namespace {

constexpr Eigen::Index kDenseBelow = 60;  // as fast as the iteration
constexpr Eigen::Index kDenseRescue = 1500;
constexpr int kRounds = 5;
constexpr double kPositive = 1.0e-10;  // mu below this part of the largest is rounding
constexpr double kBeyondUse = 1.0e7;
constexpr double kAside = 1.0e-4;       // where the pivots are counted, off a factor
constexpr double kSameFactor = 5.0e-4;  // factors this near count as one of higher multiplicity

/// Kg, or its opposite: the load reversed.
struct Geometric {
  const Blocks& blocks;
  const Sparse& sum;  ///< sign times the blocks, scaled
  double sign;
};

bool descending(const EigenPair& a, const EigenPair& b) {
  return a.mu > b.mu;
}

/// How many factors lie in (0, s); s is nudged away from a pivot that cannot be trusted.
std::optional<int> factors_below(Tangent& tangent, const Geometric& geometric, double factor,
                                 double side) {
  for (const double nudge : {1.0, 1.7, 0.6}) {
    const double s = factor * (1.0 + side * nudge * kAside);
    if (const std::optional<int> count = tangent.n_negative(geometric.blocks, geometric.sign * s)) {
      return count;
    }
  }
  return std::nullopt;
}

/// Whether the pairs (descending mu, square to each other) are all there is up to the last of them.
/// Each is a factor of its own, so that none is missing when just above the last there are as many,
/// or, where they are as many as were `wanted`, when the others there are of the same factor.
bool complete(Tangent& tangent, const Geometric& geometric, const std::vector<EigenPair>& pairs,
              std::size_t wanted) {
  if (pairs.empty()) return true;
  const auto factor = [&pairs](std::size_t i) { return 1.0 / pairs[i].mu; };
  const std::optional<int> above = factors_below(tangent, geometric, factor(pairs.size() - 1), 1.0);
  if (!above) return false;
  const auto n_above = static_cast<std::size_t>(*above);
  if (n_above <= pairs.size()) return n_above == pairs.size();
  if (pairs.size() < wanted) return false;
  std::size_t n_lower = pairs.size() - 1;
  while (n_lower > 0 && factor(n_lower) < (1.0 + kSameFactor) * factor(n_lower - 1)) --n_lower;
  return factors_below(tangent, geometric, factor(n_lower), -1.0) == static_cast<int>(n_lower);
}

/// The positive pairs with the largest mu, at most `count`.
std::vector<EigenPair> foremost(std::vector<EigenPair> pairs, double norm, std::size_t count) {
  std::sort(pairs.begin(), pairs.end(), descending);
  const auto end = std::find_if(pairs.begin(), pairs.end(),
                                [norm](const EigenPair& p) { return !(p.mu > kPositive * norm); });
  const auto positive = static_cast<std::size_t>(end - pairs.begin());
  pairs.resize(std::min(positive, count));
  return pairs;
}

/// Pairs proved complete, or nothing.
std::optional<std::vector<EigenPair>> find(const System& system, const Geometric& geometric,
                                           const BucklingOptions& options) {
  const Pencil pencil(system, geometric.sum);
  const auto count = static_cast<std::size_t>(options.n_modes);
  std::optional<Tangent> tangent;
  const auto proved = [&](const std::vector<EigenPair>& pairs) {
    if (!tangent) tangent.emplace(system);
    return complete(*tangent, geometric, pairs, count);
  };
  if (pencil.size() >= kDenseBelow) {
    const Eigen::Index wanted = std::min<Eigen::Index>(options.n_modes, pencil.size() - 1);
    std::vector<EigenPair> known;
    double norm = 0.0;
    // A single start vector can miss copies of a repeated factor (round tubes have nothing but
    // pairs): take out what is known and look again until the count of pivots agrees.
    for (int round = 0; round < kRounds; ++round) {
      const LargestPairs more = largest_pairs(pencil, known, wanted, options.tolerance);
      norm = std::max(norm, more.norm);
      known.insert(known.end(), more.pairs.begin(), more.pairs.end());
      std::vector<EigenPair> pairs = foremost(known, norm, count);
      // A short list is all there is only where the next pairs are known not to be positive.
      const bool enough = more.all || pairs.size() == count;
      if (enough && proved(pairs)) return pairs;
    }
    if (pencil.size() > kDenseRescue) return std::nullopt;
  }
  std::vector<EigenPair> pairs = all_pairs(pencil);
  const double norm = std::max(std::abs(pairs.front().mu), std::abs(pairs.back().mu));
  pairs = foremost(std::move(pairs), norm, count);
  if (!proved(pairs)) return std::nullopt;
  return pairs;
}

/// Whether a factor can only come from the rounding of large rigid motions: over ten million, and
/// at that multiple the forces that are there would strain the stiffest beam by its whole length.
bool is_rounding(const System& system, const StressState& state, double factor) {
  double stiffest = 0.0;
  for (const BeamPart& beam : system.beams()) {
    stiffest = std::max(stiffest, beam.stiffness_l(0, 0) * beam.length);
  }
  return stiffest > 0.0 && factor > kBeyondUse &&
         factor * state.size(system.typical_length()).force > stiffest;
}

BucklingMode make_mode(const System& system, const Sparse& geometric, const EigenPair& pair) {
  const Eigen::VectorXd motion = Pencil(system, geometric).motion(pair.vector);
  BucklingMode mode;
  mode.factor = 1.0 / pair.mu;
  mode.shape = motion.head(6 * static_cast<Eigen::Index>(system.model().nodes.size()));
  Eigen::Index largest = 0;
  if (mode.shape.cwiseAbs().maxCoeff(&largest) > 0.0) mode.shape /= mode.shape(largest);

  const std::size_t n_beams = system.beams().size();
  const std::size_t n_parts = n_beams + system.springs().size();
  Eigen::VectorXd energy(static_cast<Eigen::Index>(n_parts));
  for (std::size_t i = 0; i < n_parts; ++i) {
    const Eigen::VectorXd q = motion(system.block_unknowns()[i]);
    energy(static_cast<Eigen::Index>(i)) = q.dot(system.stiffness()[i] * q);
  }
  const double sum = energy.sum();
  mode.joint_energy.reserve(n_beams);
  for (std::size_t i = 0; i < n_beams; ++i) {
    const EndMap& map = system.beams()[i].map;
    const Eigen::VectorXd q = motion(map.unknowns);
    const double in_joints = q.dot(map.springs * q);
    mode.joint_energy.push_back(in_joints / sum);
    energy(static_cast<Eigen::Index>(i)) -= in_joints;
  }
  energy /= sum;
  mode.beam_energy.assign(energy.begin(), energy.begin() + static_cast<std::ptrdiff_t>(n_beams));
  mode.spring_energy.assign(energy.begin() + static_cast<std::ptrdiff_t>(n_beams), energy.end());
  return mode;
}

/// The modes with the lowest positive factors, proved complete, or nothing.
std::optional<std::vector<BucklingMode>> found(const System& system, const StressState& state,
                                               const Geometric& geometric,
                                               const BucklingOptions& options) {
  const std::optional<std::vector<EigenPair>> pairs = find(system, geometric, options);
  if (!pairs) return std::nullopt;
  std::vector<BucklingMode> modes;
  for (const EigenPair& pair : *pairs) {
    if (is_rounding(system, state, 1.0 / pair.mu)) break;
    modes.push_back(make_mode(system, geometric.sum, pair));
  }
  return modes;
}

}  // namespace

BucklingResult buckle(const Factored& factored, const Loads& loads,
                      const BucklingOptions& options) {
  const System& system = factored.system();
  const LoadCase load_case = prepare(system, loads);
  BucklingResult result;
  if (system.n_free() == 0 || options.n_modes < 1) {
    result.status = BucklingStatus::no_compression;
    return result;
  }
  const Eigen::VectorXd motion = linear_motion(system, load_case);
  const StressState state = stress_state(system, load_case, motion);
  const Blocks blocks = geometric_stiffness(system, load_case, state);
  const Sparse geometric = system.scaled_sum(blocks);
  const bool nothing = geometric.coeffs().cwiseAbs().maxCoeff() == 0.0;
  if (nothing) {
    result.status = BucklingStatus::no_compression;
    return result;
  }
  const auto modes = found(system, state, {blocks, geometric, 1.0}, options);
  if (options.n_reversed > 0) {
    const Sparse turned = -geometric;
    BucklingOptions few = options;
    few.n_modes = options.n_reversed;
    result.reversed =
        found(system, state, {blocks, turned, -1.0}, few).value_or(std::vector<BucklingMode>{});
    for (BucklingMode& mode : result.reversed) mode.factor = -mode.factor;
  }
  if (!modes) return result;
  result.modes = *modes;
  result.status = result.modes.empty() ? BucklingStatus::no_compression : BucklingStatus::found;
  return result;
}

}  // namespace fea
