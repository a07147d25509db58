// Quantiles of the normal distribution, and intervals of a share.

#include <string>

#include <catch2/catch.hpp>

#include "studies/random_numbers.hpp"
#include "tests/published/verification.hpp"

namespace statistics_test {
using published::Basis;
using published::Source;
using published::verify;
using published::within;

TEST_CASE("quantiles of the normal distribution are Wichura's", "[studies][scatter]") {
  const Source source{"Wichura, algorithm AS 241, Applied Statistics 37, 1988, check values",
                      Basis::from_memory};
  verify(source, "p = 0.25", "-0.6744897501960817", studies::normal_quantile(0.25), within(1e-15));
  verify(source, "p = 0.001", "-3.090232306167814", studies::normal_quantile(0.001), within(1e-15));
  verify(source, "p = 1e-20", "-9.262340089798408", studies::normal_quantile(1.0e-20),
         within(1e-15));
}

TEST_CASE("Wilson's intervals of a share are Newcombe's", "[studies][scatter]") {
  const Source source{"Newcombe, Statistics in Medicine 17, 1998, table I, method 3",
                      Basis::from_memory};
  const auto interval = [&](const char* name, std::size_t count, std::size_t n, const char* low,
                            const char* high) {
    const studies::ConfidenceInterval found = studies::share_interval(count, n);
    verify(source, std::string(name) + ", lower", low, found.low);
    verify(source, std::string(name) + ", upper", high, found.high);
  };
  interval("81 of 263", 81, 263, "0.2553", "0.3662");
  interval("15 of 148", 15, 148, "0.0624", "0.1605");
  interval("0 of 20", 0, 20, "0.0000", "0.1611");
  interval("1 of 29", 1, 29, "0.0061", "0.1718");
}

}  // namespace statistics_test
