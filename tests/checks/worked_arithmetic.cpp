#include "tests/checks/worked_arithmetic.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <string>

namespace worked {
namespace {

/// Recursive descent over one side of an equation.
class Side {
 public:
  Side(std::string text, const std::vector<checks::Value>& values)
      : text_(std::move(text)), values_(values) {
    text_.erase(std::remove(text_.begin(), text_.end(), ' '), text_.end());
  }

  std::optional<double> compute() {
    const double result = sum();
    if (failed_ || at_ != text_.size()) return std::nullopt;
    return result;
  }

 private:
  bool take(const std::string& word) {
    if (text_.compare(at_, word.size(), word) != 0) return false;
    at_ += word.size();
    return true;
  }

  double sum() {
    double total = product();
    while (true) {
      if (take("+")) {
        total += product();
      } else if (take("-")) {
        total -= product();
      } else {
        return total;
      }
    }
  }

  double product() {
    double total = power();
    while (true) {
      if (take("*")) {
        total *= power();
      } else if (take("/")) {
        total /= power();
      } else {
        return total;
      }
    }
  }

  double power() {
    const double root = atom();
    return take("^") ? std::pow(root, atom()) : root;
  }

  double atom() {
    if (take("sqrt(")) return std::sqrt(bracket());
    if (take("(")) return bracket();
    if (take("pi")) return base::kPi;
    if (take("{")) {
      const auto index = static_cast<std::size_t>(number());
      failed_ = failed_ || !take("}") || index >= values_.size();
      return failed_ ? 0.0 : values_[index].si;
    }
    return number();
  }

  double bracket() {
    const double inside = sum();
    failed_ = failed_ || !take(")");
    return inside;
  }

  double number() {
    std::size_t length = 0;
    while (at_ + length < text_.size() &&
           (std::isdigit(static_cast<unsigned char>(text_[at_ + length])) != 0 ||
            text_[at_ + length] == '.')) {
      ++length;
    }
    failed_ = failed_ || length == 0;
    if (failed_) return 0.0;
    const double value = std::stod(text_.substr(at_, length));
    at_ += length;
    return value;
  }

  std::string text_;
  const std::vector<checks::Value>& values_;
  std::size_t at_ = 0;
  bool failed_ = false;
};

}  // namespace

std::vector<double> sides(const checks::WorkedLine& line) {
  static const std::string kEquals = " = ";
  if (line.numbers.find(kEquals) == std::string::npos) return {};
  std::vector<double> results;
  std::size_t start = 0;
  while (start <= line.numbers.size()) {
    const std::size_t end = std::min(line.numbers.find(kEquals, start), line.numbers.size());
    const auto side = Side(line.numbers.substr(start, end - start), line.values).compute();
    if (!side) return {};
    results.push_back(*side);
    start = end + kEquals.size();
  }
  return results;
}

int equations_that_hold(const checks::Finding& finding, double tolerance) {
  int count = 0;
  for (const checks::WorkedLine& line : finding.lines) {
    const std::vector<double> results = sides(line);
    if (results.empty()) continue;
    for (const double result : results) {
      // A sum that cancels is judged by the size of its terms.
      double scale = std::abs(result);
      for (const checks::Value& value : line.values) {
        if (value.measure == line.values.back().measure)
          scale = std::max(scale, std::abs(value.si));
      }
      if (!(std::abs(result - results.front()) <= tolerance * scale)) return -1;
    }
    ++count;
  }
  return count;
}

}  // namespace worked
