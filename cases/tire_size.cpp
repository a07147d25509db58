#include "cases/tire_size.hpp"

#include <array>

#include <fmt/format.h>

#include "base/units.hpp"
#include "cases/number.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

/// Takes a sidewall's text apart from its start.
class SidewallText {
 public:
  explicit SidewallText(std::string text) : text_(std::move(text)) {}

  bool take(std::string_view word) {
    if (text_.compare(at_, word.size(), word) != 0) return false;
    at_ += word.size();
    return true;
  }

  void skip_spaces() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }

  /// Digits, and one point at most.
  std::optional<double> number() {
    const std::size_t start = at_;
    bool point = false;
    while (at_ < text_.size() && (is_digit(text_[at_]) || (text_[at_] == '.' && !point))) {
      point = point || text_[at_] == '.';
      ++at_;
    }
    const auto found = number_at_start(std::string_view(text_).substr(start, at_ - start));
    if (!found) return std::nullopt;
    return found->value;
  }

  /// The rim's diameter behind its letter or dash.  [in]
  std::optional<double> rim() {
    skip_spaces();
    constexpr std::array<std::string_view, 5> kBuilds = {"zr", "r", "d", "b", "-"};
    bool built = false;
    for (const std::string_view build : kBuilds) built = built || take(build);
    if (!built) return std::nullopt;
    skip_spaces();
    return number();
  }

  /// Nothing behind it, or what says how much load and speed it takes.
  bool ends() {
    for (const std::string_view kind : {"lt", "c"}) {
      if (take(kind)) break;
    }
    return at_ == text_.size() || text_[at_] == ' ';
  }

 private:
  std::string text_;
  std::size_t at_ = 0;
};

bool is_between(double value, double low, double high) {
  return value >= low && value <= high;
}

constexpr double kSmallestRim = 8.0;  // [in]
constexpr double kLargestRim = 30.0;  // [in]

}  // namespace

std::optional<TireSize> read_tire_size(std::string_view raw) {
  SidewallText text(lower(squeeze(raw)));
  if (!text.take("lt")) (void)text.take("p");
  const std::optional<double> first = text.number();
  if (!first) return std::nullopt;
  const bool inches = text.take("x");
  if (!inches && !text.take("/")) return std::nullopt;
  const std::optional<double> second = text.number();
  if (!second) return std::nullopt;
  const std::optional<double> rim = text.rim();
  if (!rim || !text.ends() || !is_between(*rim, kSmallestRim, kLargestRim)) return std::nullopt;
  if (inches) {
    if (!(*first > *rim)) return std::nullopt;
    return TireSize{*first * base::kInch, fmt::format("{:g} in over all", *first)};
  }
  if (!is_between(*first, 90.0, 500.0) || !is_between(*second, 20.0, 100.0)) return std::nullopt;
  return TireSize{*rim * base::kInch + 2.0 * *second / 100.0 * *first * base::kMillimeter,
                  fmt::format("{:g} in rim and twice {:g} % of {:g} mm", *rim, *second, *first)};
}

}  // namespace cases
