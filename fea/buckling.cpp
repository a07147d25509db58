#include "fea/buckling.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

#include "fea/lanczos.hpp"
#include "fea/linear_motion.hpp"
#include "fea/solution.hpp"
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
std::optional<std::size_t> factors_below(Tangent& tangent, const Sparse& geometric, double factor,
                                         double side) {
  for (const double nudge : {1.0, 1.7, 0.6}) {
    const double s = factor * (1.0 + side * nudge * kAside);
    if (const std::optional<int> count = tangent.n_negative(geometric.coeffs().matrix(), s)) {
      return static_cast<std::size_t>(*count);
    }
  }
  return std::nullopt;
}

/// How many pairs are missing of all there are up to the last of these (descending mu, square to
/// each other); nothing when there is no telling. Each is a factor of its own, so that none is
/// missing when just above the last there are as many, or, where they are as many as were `wanted`,
/// when the others there are of the same factor.
std::optional<std::size_t> n_missing(Tangent& tangent, const Sparse& geometric,
                                     const std::vector<EigenPair>& pairs, std::size_t wanted) {
  if (pairs.empty()) return 0;
  const auto factor = [&pairs](std::size_t i) { return 1.0 / pairs[i].mu; };
  const auto above = factors_below(tangent, geometric, factor(pairs.size() - 1), 1.0);
  if (!above || *above < pairs.size()) return std::nullopt;
  const std::size_t missing = *above - pairs.size();
  if (missing == 0 || pairs.size() < wanted) return missing;
  std::size_t n_lower = pairs.size() - 1;
  while (n_lower > 0 && factor(n_lower) < (1.0 + kSameFactor) * factor(n_lower - 1)) --n_lower;
  return factors_below(tangent, geometric, factor(n_lower), -1.0) == n_lower ? 0 : missing;
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

/// Twice what a motion strains a joint.
double joint_energy(const EndPart& end, const Eigen::VectorXd& motion) {
  const EndMotion at = end_motion(end, motion);
  double sum = 0.0;
  for (std::size_t k = 0; k < end.n_loose; ++k) {
    sum += end.loose[k].stiffness * at.apart[k] * at.apart[k];
  }
  return sum;
}

BucklingMode make_mode(const System& system, const Pencil& pencil, const EigenPair& pair) {
  BucklingMode mode;
  mode.factor = 1.0 / pair.mu;
  mode.motion = pencil.motion(pair.vector);
  const Eigen::VectorXd& motion = mode.motion;
  mode.shape = motion.head(6 * static_cast<Eigen::Index>(system.model().nodes.size()));
  Eigen::Index largest = 0;
  if (mode.shape.cwiseAbs().maxCoeff(&largest) > 0.0) mode.shape /= mode.shape(largest);

  for (const BeamPart& beam : system.beams()) {
    const Vector12 q_l = end_freedoms(beam, motion);
    mode.beam_energy.push_back(q_l.dot(beam.stiffness_l * q_l));
    mode.joint_energy.push_back(joint_energy(beam.ends[0], motion) +
                                joint_energy(beam.ends[1], motion));
  }
  for (const SpringPart& spring : system.springs()) {
    const Sides at = sides_of(spring, motion);
    const Vector6 apart = at.far - at.near;
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
  explicit Search(const Factored& factored) : system_(factored.share()), tangent_(*system_) {}

  BucklingResult run(const Loads& loads, const BucklingOptions& options);
  std::optional<int> n_below(const Loads& loads, double factor, const Solution* linear);

 private:
  /// One sign of the load: its pencil, and the pairs that are known of it.
  struct Side {
    Sparse geometric;  // scaled
    Pencil pencil;
    std::vector<EigenPair> known;
    bool looked_at = false;
    bool no_others = false;  // that are positive, but those known, for all that was seen
    double norm = 0.0;

    explicit Side(const System& system) : geometric(system.scaled()), pencil(system, geometric) {}

    void forget() {
      known.clear();
      looked_at = false;
    }
    void add(const std::vector<EigenPair>& pairs, bool all, double norm_seen) {
      norm = looked_at ? std::max(norm, norm_seen) : norm_seen;
      known.insert(known.end(), pairs.begin(), pairs.end());
      no_others = all;
      looked_at = true;
    }
  };

  void put_together(const Loads& loads, const Solution* linear);
  [[nodiscard]] bool put_start(const BucklingOptions& options);
  void look_at_both(const BucklingOptions& options);
  std::optional<std::vector<EigenPair>> find(Side& side, int n_modes, double tolerance);
  std::optional<std::vector<BucklingMode>> modes(Side& side, int n_modes, double tolerance);

  std::shared_ptr<const System> system_;
  Tangent tangent_;
  StressState state_;
  Eigen::VectorXd geometric_;  // scaled
  std::optional<Side> given_;
  std::optional<Side> reversed_;
  Eigen::VectorXd start_motion_;
  Eigen::VectorXd start_;
  LanczosMemory lanczos_;
};

/// Kg of the loads' linear solution.
/// @param linear  that solution; null = not at hand
void Buckling::Search::put_together(const Loads& loads, const Solution* linear) {
  const LoadCase load_case = prepare(*system_, loads);
  stress_state(*system_, load_case,
               linear != nullptr ? linear->data().motion : linear_motion(*system_, load_case),
               state_);
  scaled_geometric_stiffness(*system_, load_case, state_, geometric_);
}

/// C y of the sum of the modes to start from, where there are enough of them: with each the
/// iteration comes nearer to all.
bool Buckling::Search::put_start(const BucklingOptions& options) {
  if (options.start == nullptr) return false;
  start_motion_ = Eigen::VectorXd::Zero(system_->n_unknowns());
  const auto add = [this](const std::vector<BucklingMode>& modes, int count) {
    const auto n = static_cast<std::size_t>(count);
    if (modes.size() < n) return false;
    for (std::size_t i = 0; i < n; ++i) {
      if (modes[i].motion.size() != start_motion_.size()) return false;
      start_motion_ += modes[i].factor * modes[i].motion;
    }
    return true;
  };
  if (!add(options.start->modes, options.n_modes)) return false;
  if (!add(options.start->reversed, options.n_reversed)) return false;
  given_->pencil.apply_to_motion(start_motion_, start_);
  return start_.allFinite() && start_.norm() > 0.0;
}

/// The two ends of the list of mu are the lowest factors of either sign: both in one basis.
void Buckling::Search::look_at_both(const BucklingOptions& options) {
  const Eigen::Index most = given_->pencil.size() - 1;
  const bool started = put_start(options);
  const EndPairs found = end_pairs(given_->pencil, {},
                                   {.n_largest = std::min<Eigen::Index>(options.n_modes, most),
                                    .n_smallest = std::min<Eigen::Index>(options.n_reversed, most),
                                    .tolerance = options.tolerance,
                                    .start = started ? &start_ : nullptr},
                                   lanczos_);
  // From a start of modes there is no telling what else there is.
  given_->add(found.largest, found.all && !started, found.norm);
  if (found.smallest.empty()) return;
  std::vector<EigenPair> turned = found.smallest;
  for (EigenPair& pair : turned) pair.mu = -pair.mu;
  const bool all = turned.size() == static_cast<std::size_t>(options.n_reversed);
  reversed_->add(turned, all && !started, found.norm);
}

/// Pairs proved complete, or nothing.
std::optional<std::vector<EigenPair>> Buckling::Search::find(Side& side, int n_modes,
                                                             double tolerance) {
  const auto count = static_cast<std::size_t>(n_modes);
  const Eigen::Index size = side.pencil.size();
  if (size >= kDenseBelow) {
    PairsWanted wanted{.n_largest = std::min<Eigen::Index>(n_modes, size - 1),
                       .tolerance = tolerance};
    // A single start vector can miss copies of a repeated factor (round tubes have nothing but
    // pairs): take out what is known and look again until the count of pivots agrees.
    for (int round = 0; round < kRounds; ++round) {
      if (round > 0 || !side.looked_at) {
        const EndPairs more = end_pairs(side.pencil, side.known, wanted, lanczos_);
        side.add(more.largest, more.all, more.norm);
      }
      std::vector<EigenPair> pairs = foremost(side.known, side.norm, count);
      // A short list is all there is only where the next pairs are known not to be positive.
      if (!side.no_others && pairs.size() < count) continue;
      const std::optional<std::size_t> missing = n_missing(tangent_, side.geometric, pairs, count);
      if (missing == 0U) return pairs;
      const bool few = missing && pairs.size() == count;
      wanted.n_largest =
          std::min<Eigen::Index>(few ? static_cast<Eigen::Index>(*missing) : n_modes, size - 1);
    }
    if (size > kDenseRescue) return std::nullopt;
  }
  std::vector<EigenPair> pairs = all_pairs(side.pencil);
  const double norm = std::max(std::abs(pairs.front().mu), std::abs(pairs.back().mu));
  pairs = foremost(std::move(pairs), norm, count);
  if (n_missing(tangent_, side.geometric, pairs, count) != 0U) return std::nullopt;
  return pairs;
}

/// The modes with the lowest positive factors, proved complete, or nothing.
std::optional<std::vector<BucklingMode>> Buckling::Search::modes(Side& side, int n_modes,
                                                                 double tolerance) {
  const std::optional<std::vector<EigenPair>> pairs = find(side, n_modes, tolerance);
  if (!pairs) return std::nullopt;
  std::vector<BucklingMode> modes;
  for (const EigenPair& pair : *pairs) {
    if (is_rounding(*system_, state_, 1.0 / pair.mu)) break;
    modes.push_back(make_mode(*system_, side.pencil, pair));
  }
  return modes;
}

BucklingResult Buckling::Search::run(const Loads& loads, const BucklingOptions& options) {
  BucklingResult result;
  result.status = BucklingStatus::no_compression;
  if (system_->n_free() == 0 || options.n_modes < 1) return result;
  put_together(loads, nullptr);
  if (!given_) given_.emplace(*system_);
  if (options.n_reversed > 0 && !reversed_) reversed_.emplace(*system_);
  given_->geometric.coeffs() = geometric_.array();
  if (given_->geometric.coeffs().cwiseAbs().maxCoeff() == 0.0) return result;
  given_->forget();
  if (reversed_) reversed_->forget();
  if (given_->pencil.size() >= kDenseBelow) look_at_both(options);
  const auto lowest = modes(*given_, options.n_modes, options.tolerance);
  if (options.n_reversed > 0) {
    reversed_->geometric.coeffs() = -given_->geometric.coeffs();
    result.reversed = modes(*reversed_, options.n_reversed, options.tolerance)
                          .value_or(std::vector<BucklingMode>{});
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

std::optional<int> Buckling::Search::n_below(const Loads& loads, double factor,
                                             const Solution* linear) {
  if (system_->n_free() == 0) return 0;
  put_together(loads, linear);
  return tangent_.n_negative(geometric_, factor);
}

Buckling::Buckling(const Factored& factored) : search_(std::make_unique<Search>(factored)) {}
Buckling::~Buckling() = default;
Buckling::Buckling(Buckling&&) noexcept = default;
Buckling& Buckling::operator=(Buckling&&) noexcept = default;

BucklingResult Buckling::run(const Loads& loads, const BucklingOptions& options) {
  return search_->run(loads, options);
}

std::optional<int> Buckling::n_below(const Loads& loads, double factor, const Solution* linear) {
  return search_->n_below(loads, factor, linear);
}

BucklingResult buckle(const Factored& factored, const Loads& loads,
                      const BucklingOptions& options) {
  return Buckling(factored).run(loads, options);
}

}  // namespace fea
