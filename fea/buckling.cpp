#include "fea/buckling.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
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

bool descending(const EigenPair& a, const EigenPair& b) {
  return a.mu > b.mu;
}

/// How many factors lie in (0, s); s is nudged away from a pivot that cannot be trusted.
std::optional<int> factors_below(Tangent& tangent, const Sparse& geometric, double factor,
                                 double side) {
  for (const double nudge : {1.0, 1.7, 0.6}) {
    const double s = factor * (1.0 + side * nudge * kAside);
    if (const std::optional<int> count = tangent.n_negative(geometric, s)) {
      return count;
    }
  }
  return std::nullopt;
}

/// Whether the pairs (descending mu, square to each other) are all there is up to the last of them.
/// Each is a factor of its own, so that none is missing when just above the last there are as many,
/// or, where they are as many as were `wanted`, when the others there are of the same factor.
bool complete(Tangent& tangent, const Sparse& geometric, const std::vector<EigenPair>& pairs,
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

  for (const BeamPart& beam : system.beams()) {
    const Vector12 q_l = end_freedoms(beam, motion);
    mode.beam_energy.push_back(q_l.dot(beam.stiffness_l * q_l));
    const BlockVector q = gathered(motion, beam.map.unknowns);
    mode.joint_energy.push_back(beam.plain ? 0.0 : q.dot(beam.map.springs.lazyProduct(q)));
  }
  for (const SpringPart& spring : system.springs()) {
    const BlockVector q = gathered(motion, spring.unknowns);
    const Vector6 apart = (spring.connection.far_g - spring.connection.near_g).lazyProduct(q);
    mode.spring_energy.push_back(apart.dot(spring.stiffness_g * apart));
  }
  const std::array<std::vector<double>*, 3> shares = {&mode.beam_energy, &mode.joint_energy,
                                                      &mode.spring_energy};
  double sum = 0.0;
  for (const std::vector<double>* part : shares) {
    sum = std::accumulate(part->begin(), part->end(), sum);
  }
  for (std::vector<double>* part : shares) {
    for (double& share : *part) share /= sum;
  }
  return mode;
}

}  // namespace

class Buckling::Search {
 public:
  explicit Search(const Factored& factored)
      : system_(factored.share()),
        tangent_(*system_),
        geometric_(system_->scaled()),
        turned_(geometric_) {}

  BucklingResult run(const Loads& loads, const BucklingOptions& options);

 private:
  void put_together(const Loads& loads);
  std::optional<std::vector<EigenPair>> find(const Sparse& geometric,
                                             const BucklingOptions& options);
  std::optional<std::vector<BucklingMode>> modes(const Sparse& geometric,
                                                 const BucklingOptions& options);

  std::shared_ptr<const System> system_;
  Tangent tangent_;
  StressState state_;
  Blocks blocks_;
  Sparse geometric_;  // scaled
  Sparse turned_;     // the load reversed
  LanczosMemory lanczos_;
};

/// Kg of the loads' linear solution.
void Buckling::Search::put_together(const Loads& loads) {
  const LoadCase load_case = prepare(*system_, loads);
  stress_state(*system_, load_case, linear_motion(*system_, load_case), state_);
  geometric_stiffness(*system_, load_case, state_, blocks_);
  geometric_.coeffs().setZero();
  system_->add_scaled(blocks_, 1.0, geometric_.valuePtr());
}

/// Pairs proved complete, or nothing.
std::optional<std::vector<EigenPair>> Buckling::Search::find(const Sparse& geometric,
                                                             const BucklingOptions& options) {
  const Pencil pencil(*system_, geometric);
  const auto count = static_cast<std::size_t>(options.n_modes);
  if (pencil.size() >= kDenseBelow) {
    const Eigen::Index wanted = std::min<Eigen::Index>(options.n_modes, pencil.size() - 1);
    std::vector<EigenPair> known;
    double norm = 0.0;
    // A single start vector can miss copies of a repeated factor (round tubes have nothing but
    // pairs): take out what is known and look again until the count of pivots agrees.
    for (int round = 0; round < kRounds; ++round) {
      const LargestPairs more = largest_pairs(pencil, known, wanted, options.tolerance, lanczos_);
      norm = std::max(norm, more.norm);
      known.insert(known.end(), more.pairs.begin(), more.pairs.end());
      std::vector<EigenPair> pairs = foremost(known, norm, count);
      // A short list is all there is only where the next pairs are known not to be positive.
      const bool enough = more.all || pairs.size() == count;
      if (enough && complete(tangent_, geometric, pairs, count)) return pairs;
    }
    if (pencil.size() > kDenseRescue) return std::nullopt;
  }
  std::vector<EigenPair> pairs = all_pairs(pencil);
  const double norm = std::max(std::abs(pairs.front().mu), std::abs(pairs.back().mu));
  pairs = foremost(std::move(pairs), norm, count);
  if (!complete(tangent_, geometric, pairs, count)) return std::nullopt;
  return pairs;
}

/// The modes with the lowest positive factors, proved complete, or nothing.
std::optional<std::vector<BucklingMode>> Buckling::Search::modes(const Sparse& geometric,
                                                                 const BucklingOptions& options) {
  const std::optional<std::vector<EigenPair>> pairs = find(geometric, options);
  if (!pairs) return std::nullopt;
  std::vector<BucklingMode> modes;
  for (const EigenPair& pair : *pairs) {
    if (is_rounding(*system_, state_, 1.0 / pair.mu)) break;
    modes.push_back(make_mode(*system_, geometric, pair));
  }
  return modes;
}

BucklingResult Buckling::Search::run(const Loads& loads, const BucklingOptions& options) {
  BucklingResult result;
  result.status = BucklingStatus::no_compression;
  if (system_->n_free() == 0 || options.n_modes < 1) return result;
  put_together(loads);
  if (geometric_.coeffs().cwiseAbs().maxCoeff() == 0.0) return result;
  const auto lowest = modes(geometric_, options);
  if (options.n_reversed > 0) {
    turned_.coeffs() = -geometric_.coeffs();
    BucklingOptions few = options;
    few.n_modes = options.n_reversed;
    result.reversed = modes(turned_, few).value_or(std::vector<BucklingMode>{});
    for (BucklingMode& mode : result.reversed) mode.factor = -mode.factor;
  }
  result.status = BucklingStatus::failed;
  if (!lowest) return result;
  result.modes = *lowest;
  if (result.modes.empty()) {
    result.status = BucklingStatus::no_compression;
  } else {
    result.status = BucklingStatus::found;
  }
  return result;
}

Buckling::Buckling(const Factored& factored) : search_(std::make_unique<Search>(factored)) {}
Buckling::~Buckling() = default;
Buckling::Buckling(Buckling&&) noexcept = default;
Buckling& Buckling::operator=(Buckling&&) noexcept = default;

BucklingResult Buckling::run(const Loads& loads, const BucklingOptions& options) {
  return search_->run(loads, options);
}

BucklingResult buckle(const Factored& factored, const Loads& loads,
                      const BucklingOptions& options) {
  return Buckling(factored).run(loads, options);
}

}  // namespace fea
