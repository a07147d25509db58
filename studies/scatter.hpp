#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "studies/judged.hpp"
#include "studies/random_numbers.hpp"
#include "studies/scope.hpp"
#include "studies/share.hpp"
#include "studies/spread.hpp"

namespace studies {

/// A factor on what the case has.
struct Distribution {
  enum class Kind { fixed, normal, lognormal, uniform };
  Kind kind = Kind::fixed;
  double a = 1.0;  ///< mean; of a uniform one the least
  double b = 0.0;  ///< coefficient of variation (standard deviation over mean); the most

  /// The value it stays under with this probability.
  [[nodiscard]] double quantile(double p) const;
  bool operator==(const Distribution&) const = default;
};

/// "normal 1.0 0.05", "lognormal 1.1 0.07", "uniform 0.9 1.05", "fixed": a factor on what the case
/// has: mean and coefficient of variation, or least and most.
/// @throws base::InputError without a key
[[nodiscard]] Distribution read_distribution(std::string_view text);
[[nodiscard]] std::string words_of(const Distribution& distribution);

/// One input that scatters.
struct ScatterInput {
  std::string path;  ///< "lateral_link.wall" (studies/design_number.hpp), or "load"
  Distribution factor;
  std::string basis;  ///< where the distribution comes from
};

/// The inputs that scatter unless told otherwise: wall, diameter and yield strength of each bar or
/// tube, legs of welds, offset of a bend, and the load.
[[nodiscard]] std::vector<ScatterInput> usual_scatter(const parts::Design& design);

struct ScatterOptions {
  std::size_t n_samples = 100;
  std::uint64_t seed = 1;
  std::vector<ScatterInput> inputs;  ///< as usual_scatter, some changed
};

/// One design drawn.
struct Sample {
  std::vector<double> factors;  ///< of the inputs
  Judged judged;                ///< its utilization with the factor on the load
};

/// How much an input moves the worst utilization.
struct InputRank {
  std::string path;
  double correlation = base::kUnset;  ///< Spearman's, over the samples that are decided
};

struct Scattered {
  std::string title;
  bool inches = true;
  Scope scope = {};
  std::uint64_t seed = 1;
  std::vector<ScatterInput> inputs;
  std::vector<Sample> samples;
  std::size_t n_samples = 0;      ///< to be drawn; `samples` is shorter when it was stopped
  std::size_t n_over = 0;         ///< samples with a check over its limit
  std::size_t n_undecided = 0;    ///< others with one not decided
  ConfidenceInterval share_over;  ///< 95 %, of `n_over` and `n_undecided` together
  std::vector<InputRank> ranks;   ///< those that move it most first
  Judged as_drawn;
  std::vector<parts::Assumption> assumed;
};

/// Draws designs by Latin hypercube, independent inputs, and checks each in full. The factor on the
/// load multiplies every load case before its solve, so that a utilization is worked out once for
/// the load as it is, and multiplied: required factor over safety factor, and the safety factor is
/// a multiple of the load.
/// @throws base::InputError an input that is none; no input that scatters; no sample
[[nodiscard]] Scattered scatter(const parts::Design& design, const ScatterOptions& options,
                                const Watch& watch = {}, const Spread& spread = {},
                                Share<Judged>* share = nullptr);

}  // namespace studies
