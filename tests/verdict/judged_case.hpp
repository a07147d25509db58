#pragma once

#include <functional>
#include <string>

#include "studies/answer.hpp"

/// Whole judgments for the tests: the text of a case file in, the verdict out.
namespace verdict_tests {

/// The answer to a case file. The test fails when the file cannot be read.
[[nodiscard]] studies::Answer judged(const std::string& case_text);

/// The finding of one part and one kind of check. The test fails when there is none.
[[nodiscard]] checks::Finding finding(const studies::Answer& answer, const std::string& part,
                                      const std::string& check);

/// Every finding must be within, but for those of one part and one kind of check.
void check_others_within(const studies::Answer& answer, const std::string& part,
                         const std::string& check);

/// A case just inside and just outside of one limit, everything else far within.
struct Limit {
  /// The case whose utilization of this check is the number given, worked out by hand.
  std::function<std::string(double utilization)> case_text;
  std::string part;
  std::string check;
  double tolerance = 1e-3;  ///< of the utilization: what the hand formula leaves out
  std::string set = {};     ///< stiffness set that must govern; empty = any
};

/// Judges the case at 0.98 and 1.02 of its limit: verdict and finding must be within, then over.
void check_flips(const Limit& limit);

/// The multiple at which a growing function passes a value, by bisection.
[[nodiscard]] double where_it_reaches(const std::function<double(double)>& growing, double value,
                                      double low, double high);

}  // namespace verdict_tests
