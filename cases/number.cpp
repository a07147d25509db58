#include "cases/number.hpp"

#include <algorithm>
#include <cmath>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include "cases/words.hpp"

namespace cases {
namespace {

std::size_t digits_from(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && is_digit(text[end])) ++end;
  return end - at;
}

char at_or_nul(std::string_view text, std::size_t at) {
  return at < text.size() ? text[at] : '\0';
}

double to_double(std::string_view text) {
  double value = 0.0;
  fast_float::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

/// The length of a plain decimal at `at`, 0 when there is none.
std::size_t decimal_from(std::string_view text, std::size_t at) {
  std::size_t end = at + digits_from(text, at);
  std::size_t n_digits = end - at;
  if (at_or_nul(text, end) == '.') {
    const std::size_t n = digits_from(text, end + 1);
    n_digits += n;
    if (n_digits > 0) end += 1 + n;
  }
  if (n_digits == 0) return 0;
  const char e = at_or_nul(text, end);
  if (e == 'e' || e == 'E') {
    const char sign = at_or_nul(text, end + 1);
    const std::size_t skip = sign == '+' || sign == '-' ? 2 : 1;
    const std::size_t n = digits_from(text, end + skip);
    if (n > 0) end += skip + n;
  }
  return end - at;
}

/// A fraction "3/16" at `at`; nothing when there is none.
std::optional<NumberStart> fraction_from(std::string_view text, std::size_t at) {
  const std::size_t n = digits_from(text, at);
  if (n == 0 || at_or_nul(text, at + n) != '/') return std::nullopt;
  const std::size_t m = digits_from(text, at + n + 1);
  if (m == 0) return std::nullopt;
  return NumberStart{to_double(text.substr(at, n)) / to_double(text.substr(at + n + 1, m)),
                     n + 1 + m};
}

}  // namespace

std::optional<NumberStart> number_at_start(std::string_view text) {
  const bool signed_ = !text.empty() && (text[0] == '-' || text[0] == '+');
  const double sign = signed_ && text[0] == '-' ? -1.0 : 1.0;
  const std::size_t at = signed_ ? 1 : 0;
  if (const auto fraction = fraction_from(text, at)) {
    return NumberStart{sign * fraction->value, at + fraction->length};
  }
  const std::size_t n = decimal_from(text, at);
  if (n == 0) return std::nullopt;
  NumberStart number{sign * to_double(text.substr(at, n)), at + n};
  if (n != digits_from(text, at)) return number;
  std::size_t next = at + n;
  if (at_or_nul(text, next) == '-') {
    ++next;
  } else {
    while (at_or_nul(text, next) == ' ') ++next;
  }
  if (next == at + n) return number;
  if (const auto fraction = fraction_from(text, next)) {
    return NumberStart{number.value + sign * fraction->value, next + fraction->length};
  }
  return number;
}

std::size_t number_at_end(std::string_view text) {
  // The longest number that reaches the end and does not start inside a word.
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool inside = at > 0 && text[at - 1] != ' ' && text[at - 1] != ',';
    if (inside || !(is_digit(text[at]) || text[at] == '.')) continue;
    const auto number = number_at_start(text.substr(at));
    if (number && at + number->length == text.size()) return at;
  }
  return text.size();
}

std::string decimal(double value, int digits) {
  const double size = std::abs(value);
  if (value == 0.0) return "0";
  if (size < 1e-4 || size >= 1e15) return fmt::format("{:.{}g}", value, digits);
  const int exponent = static_cast<int>(std::floor(std::log10(size)));
  std::string text = fmt::format("{:.{}f}", value, std::max(0, digits - 1 - exponent));
  if (text.find('.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  return text;
}

}  // namespace cases
