#include "report/html_text.hpp"

#include <cstddef>

#include <fmt/format.h>

#include "base/invariant.hpp"

namespace report {
namespace {

struct CodePoint {
  char32_t value = U'\uFFFD';
  std::size_t bytes = 1;
};

bool allowed(char32_t c) {
  if (c == U'\n' || c == U'\t') return true;
  if (c < 0x20 || (c >= 0x7F && c < 0xA0)) return false;
  return (c < 0xD800 || c > 0xDFFF) && c != 0xFFFE && c != 0xFFFF && c <= 0x10FFFF;
}

/// The code point that starts at `at` (RFC 3629); U+FFFD of one byte where none does.
CodePoint decoded(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(at);
  if (lead < 0x80) return {allowed(lead) ? static_cast<char32_t>(lead) : U'\uFFFD', 1};
  const std::size_t n = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || at + n > text.size()) return {};
  char32_t value = lead & (0xFFU >> (n + 1));
  for (std::size_t i = at + 1; i < at + n; ++i) {
    if ((byte(i) & 0xC0U) != 0x80) return {};
    value = (value << 6U) | (byte(i) & 0x3FU);
  }
  const bool overlong = (n == 3 && value < 0x800) || (n == 4 && value < 0x10000);
  if (overlong || !allowed(value)) return {U'\uFFFD', overlong ? std::size_t{1} : n};
  return {value, n};
}

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

}  // namespace

std::string escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const CodePoint c = decoded(text, i);
    switch (c.value) {
      case U'&':
        out += "&amp;";
        break;
      case U'<':
        out += "&lt;";
        break;
      case U'>':
        out += "&gt;";
        break;
      case U'"':
        out += "&quot;";
        break;
      case U'\'':
        out += "&#39;";
        break;
      case U'\uFFFD':
        out += kReplacement;
        break;
      default:
        out += text.substr(i, c.bytes);
    }
    i += c.bytes;
  }
  return out;
}

std::string css_string(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const CodePoint c = decoded(text, i);
    const bool plain = (c.value >= U'0' && c.value <= U'9') ||
                       (c.value >= U'A' && c.value <= U'Z') ||
                       (c.value >= U'a' && c.value <= U'z') || c.value == U' ';
    if (plain) {
      out += static_cast<char>(c.value);
    } else {
      out += fmt::format("\\{:06X} ", static_cast<unsigned>(c.value));
    }
    i += c.bytes;
  }
  return out;
}

std::string filled(std::string_view page, const std::map<std::string, std::string>& values) {
  std::string out;
  while (true) {
    const std::size_t open = page.find("{{");
    const std::size_t close = open == page.npos ? page.npos : page.find("}}", open);
    if (close == page.npos) return out.append(page);
    const auto value = values.find(std::string(page.substr(open + 2, close - open - 2)));
    INVARIANT(value != values.end());
    out.append(page.substr(0, open)).append(value->second);
    page.remove_prefix(close + 2);
  }
}

}  // namespace report
