#include "cases/yaml_text.hpp"

#include <fmt/format.h>

#include "cases/words.hpp"

namespace cases {
namespace {

/// YAML reads it as the same text without quotes.
bool is_plain(std::string_view text, bool in_list) {
  constexpr std::string_view kSafe = " _./%+-()^=;<>";
  if (text.empty() || trim(text) != text || lower(text) == "null") return false;
  const bool negative = text.size() > 1 && text[0] == '-' && is_digit(text[1]);
  if (!is_letter(text[0]) && !is_digit(text[0]) && !negative) return false;
  for (const char c : text) {
    const bool comma = c == ',' && !in_list;
    if (!is_letter(c) && !is_digit(c) && !comma && kSafe.find(c) == std::string_view::npos) {
      return false;
    }
  }
  return true;
}

}  // namespace

std::string yaml_text(std::string_view text, bool in_list) {
  if (is_plain(text, in_list)) return std::string(text);
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (static_cast<unsigned char>(c) < 0x20) {
      out += fmt::format("\\x{:02x}", static_cast<unsigned>(c));
    } else {
      out += c;
    }
  }
  out += '"';
  return out;
}

}  // namespace cases
