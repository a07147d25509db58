#include "studies/random_numbers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

#include "base/units.hpp"

namespace studies {
namespace {

/// Of a quotient of two polynomials of seventh degree, lowest term first.
struct Quotient {
  std::array<double, 8> over;
  std::array<double, 8> under;

  [[nodiscard]] double at(double x) const {
    double a = 0.0;
    double b = 0.0;
    for (std::size_t i = 8; i-- > 0;) {
      a = a * x + over[i];
      b = b * x + under[i];
    }
    return a / b;
  }
};

constexpr Quotient kCentral = {
    {3.3871328727963666080, 1.3314166789178437745e2, 1.9715909503065514427e3,
     1.3731693765509461125e4, 4.5921953931549871457e4, 6.7265770927008700853e4,
     3.3430575583588128105e4, 2.5090809287301226727e3},
    {1.0, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3,
     2.1213794301586595867e4, 3.9307895800092710610e4, 2.8729085735721942674e4,
     5.2264952788528545610e3}};
constexpr Quotient kTail = {
    {1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504,
     1.27045825245236838258, 2.41780725177450611770e-1, 2.27238449892691845833e-2,
     7.74545014278341407640e-4},
    {1.0, 2.05319162663775882187, 1.67638483018380384940, 6.89767334985100004550e-1,
     1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4,
     1.05075007164441684324e-9}};
constexpr Quotient kFarTail = {
    {6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580,
     2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
     2.71155556874348757815e-5, 2.01033439929228813265e-7},
    {1.0, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
     7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7,
     2.04426310338993978564e-15}};

/// Ranks from 1; equal values share the mean of theirs.
std::vector<double> ranks(const std::vector<double>& values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<double> out(values.size());
  for (std::size_t i = 0; i < order.size();) {
    std::size_t end = i + 1;
    while (end < order.size() && values[order[end]] == values[order[i]]) ++end;
    for (std::size_t k = i; k < end; ++k) {
      out[order[k]] = 0.5 * static_cast<double>(i + 1 + end);
    }
    i = end;
  }
  return out;
}

}  // namespace

std::uint64_t RandomNumbers::next() {
  state_ += 0x9e3779b97f4a7c15U;
  std::uint64_t z = state_;
  z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
  z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
  return z ^ (z >> 31U);
}

double RandomNumbers::uniform() {
  return std::ldexp(static_cast<double>(next() >> 11U), -53);
}

std::size_t RandomNumbers::below(std::size_t n) {
  // What is over the last whole multiple of n is drawn again.
  const std::uint64_t most = static_cast<std::uint64_t>(-1);
  const std::uint64_t whole = most - most % n;
  std::uint64_t drawn = next();
  while (drawn >= whole) drawn = next();
  return static_cast<std::size_t>(drawn % n);
}

std::vector<std::vector<double>> latin_hypercube(std::size_t n_samples, std::size_t n_inputs,
                                                 std::uint64_t seed) {
  RandomNumbers random(seed);
  std::vector<std::vector<double>> out(n_samples, std::vector<double>(n_inputs));
  std::vector<std::size_t> strata(n_samples);
  for (std::size_t input = 0; input < n_inputs; ++input) {
    std::iota(strata.begin(), strata.end(), std::size_t{0});
    for (std::size_t i = n_samples; i > 1; --i) std::swap(strata[i - 1], strata[random.below(i)]);
    for (std::size_t i = 0; i < n_samples; ++i) {
      // Half a step off the edges: the ends of (0, 1) are never met.
      const double inside = std::clamp(random.uniform(), 1.0e-9, 1.0 - 1.0e-9);
      out[i][input] = (static_cast<double>(strata[i]) + inside) / static_cast<double>(n_samples);
    }
  }
  return out;
}

double normal_quantile(double p) {
  const double q = p - 0.5;
  if (std::abs(q) <= 0.425) return q * kCentral.at(0.180625 - q * q);
  const double r = std::sqrt(-std::log(q < 0.0 ? p : 1.0 - p));
  const double size = r <= 5.0 ? kTail.at(r - 1.6) : kFarTail.at(r - 5.0);
  return q < 0.0 ? -size : size;
}

ConfidenceInterval share_interval(std::size_t count, std::size_t n) {
  if (n == 0) return {};
  const double z = normal_quantile(0.975);
  const double all = static_cast<double>(n);
  const double share = static_cast<double>(count) / all;
  const double middle = share + z * z / (2.0 * all);
  const double half = z * std::sqrt(share * (1.0 - share) / all + z * z / (4.0 * all * all));
  const double scale = 1.0 + z * z / all;
  return {std::max(0.0, (middle - half) / scale), std::min(1.0, (middle + half) / scale)};
}

double rank_correlation(const std::vector<double>& a, const std::vector<double>& b) {
  const std::vector<double> ra = ranks(a);
  const std::vector<double> rb = ranks(b);
  const double mean = 0.5 * static_cast<double>(a.size() + 1);
  double ab = 0.0;
  double aa = 0.0;
  double bb = 0.0;
  for (std::size_t i = 0; i < ra.size(); ++i) {
    ab += (ra[i] - mean) * (rb[i] - mean);
    aa += (ra[i] - mean) * (ra[i] - mean);
    bb += (rb[i] - mean) * (rb[i] - mean);
  }
  return aa > 0.0 && bb > 0.0 ? ab / std::sqrt(aa * bb) : base::kUnset;
}

}  // namespace studies
