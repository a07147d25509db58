#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace studies {

/// The same numbers on every machine: SplitMix64 (Steele, Lea and Flood, "Fast splittable
/// pseudorandom number generators", OOPSLA 2014; from memory).
class RandomNumbers {
 public:
  explicit RandomNumbers(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next();
  /// In [0, 1), of 53 bits.
  double uniform();
  /// In 0 ... n - 1, every one as likely.
  std::size_t below(std::size_t n);

 private:
  std::uint64_t state_;
};

/// Latin hypercube: each of `n_inputs` columns has one value in each of `n_samples` equal strata of
/// (0, 1), in random order (McKay, Beckman and Conover, Technometrics 21, 1979; from memory).
/// @return by sample, then by input
[[nodiscard]] std::vector<std::vector<double>> latin_hypercube(std::size_t n_samples,
                                                               std::size_t n_inputs,
                                                               std::uint64_t seed);

/// The value that a standard normal variable stays under with this probability.
/// @param p  in (0, 1)
/// Source: Wichura, algorithm AS 241 (PPND16), Applied Statistics 37, 1988; about 1e-16 relative
/// (from memory).
[[nodiscard]] double normal_quantile(double p);

struct ConfidenceInterval {
  double low = 0.0;
  double high = 1.0;
};

/// Wilson's score interval of a share of `count` in `n`, for 95 %.
/// Source: Wilson, J. American Statistical Association 22, 1927; Newcombe, Statistics in Medicine
/// 17, 1998, method 3 (from memory).
[[nodiscard]] ConfidenceInterval share_interval(std::size_t count, std::size_t n);

/// Spearman's rank correlation, ties by their mean rank; unset where either is constant.
[[nodiscard]] double rank_correlation(const std::vector<double>& a, const std::vector<double>& b);

}  // namespace studies
