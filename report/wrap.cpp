#include "report/wrap.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace report {
namespace {

/// One character of a UTF-8 text; a byte that starts none counts as a character of its own.
struct Character {
  std::uint32_t code = 0;
  std::size_t bytes = 1;
};

Character character_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i]));
  };
  const std::uint32_t first = byte(at);
  const std::size_t bytes = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 1;
  if (bytes == 1 || at + bytes > text.size()) return {first, 1};
  std::uint32_t code = first & (0x7FU >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(at + i) & 0xC0U) != 0x80U) return {first, 1};
    code = (code << 6U) | (byte(at + i) & 0x3FU);
  }
  return {code, bytes};
}

/// Blocks of the Unicode standard whose characters take two columns.
bool is_wide(std::uint32_t code) {
  constexpr std::array<std::pair<std::uint32_t, std::uint32_t>, 8> kWide = {{{0x1100, 0x115F},
                                                                             {0x2E80, 0xA4CF},
                                                                             {0xAC00, 0xD7A3},
                                                                             {0xF900, 0xFAFF},
                                                                             {0xFE30, 0xFE6F},
                                                                             {0xFF00, 0xFF60},
                                                                             {0x1F300, 0x1F9FF},
                                                                             {0x20000, 0x3FFFD}}};
  return std::any_of(kWide.begin(), kWide.end(), [&](const auto& block) {
    return code >= block.first && code <= block.second;
  });
}

bool is_control(std::uint32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0);
}

bool is_unit(std::string_view word) {
  while (!word.empty() && std::string_view(",.;:)").find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  constexpr std::array<std::string_view, 18> kUnits = {
      "%",   "x", "in", "mm", "lbf",    "kip",    "ksi",   "MPa",  "kN",
      "deg", "N", "kg", "lb", "ft-lbf", "kip-in", "lb/ft", "kg/m", "m"};
  return std::find(kUnits.begin(), kUnits.end(), word) != kUnits.end();
}

/// Words, with a unit kept on its number.
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    const bool after_number =
        !words.empty() && words.back().back() >= '0' && words.back().back() <= '9';
    if (after_number && is_unit(word)) {
      words.back().append(" ").append(word);
    } else if (!word.empty()) {
      words.emplace_back(word);
    }
    at = end + 1;
  }
  return words;
}

/// The longest start of `word` that fits in `width` columns, at least one character.
std::size_t bytes_that_fit(std::string_view word, int width) {
  std::size_t at = 0;
  int used = 0;
  while (at < word.size()) {
    const Character c = character_at(word, at);
    used += is_wide(c.code) ? 2 : 1;
    if (used > width && at > 0) break;
    at += c.bytes;
  }
  return at;
}

}  // namespace

int display_width(std::string_view utf8) {
  int width = 0;
  for (std::size_t at = 0; at < utf8.size();) {
    const Character c = character_at(utf8, at);
    width += is_wide(c.code) ? 2 : 1;
    at += c.bytes;
  }
  return width;
}

std::string without_controls(std::string_view utf8) {
  std::string clean;
  clean.reserve(utf8.size());
  for (std::size_t at = 0; at < utf8.size();) {
    const Character c = character_at(utf8, at);
    if (is_control(c.code)) {
      clean += '?';
    } else {
      clean.append(utf8.substr(at, c.bytes));
    }
    at += c.bytes;
  }
  return clean;
}

std::vector<std::string> wrapped_lines(std::string_view text, int width, int indent) {
  const std::string clean = without_controls(text);
  std::vector<std::string> lines(1);
  int room = std::max(width, 1);
  int used = 0;
  const auto start_line = [&] {
    lines.emplace_back();
    room = std::max(width - indent, 1);
    used = 0;
  };
  for (const std::string& whole : words_of(clean)) {
    std::string_view word = whole;
    const int needs = display_width(word);
    if (used > 0 && used + 1 + needs <= room) {
      lines.back().append(" ").append(word);
      used += 1 + needs;
      continue;
    }
    if (used > 0) start_line();
    while (display_width(word) > room) {
      const std::size_t cut = bytes_that_fit(word, room);
      lines.back().append(word.substr(0, cut));
      word.remove_prefix(cut);
      if (word.empty()) break;
      start_line();
    }
    lines.back().append(word);
    used = display_width(lines.back());
  }
  return lines;
}

std::string paragraph(std::string_view text, int width, int first, int further) {
  std::string out;
  int indent = first;
  for (const std::string& line : wrapped_lines(text, width - first, further)) {
    out += std::string(static_cast<std::size_t>(indent), ' ') + line + "\n";
    indent = first + further;
  }
  return out;
}

void add_once(std::vector<std::string>& items, const std::string& item) {
  if (std::find(items.begin(), items.end(), item) == items.end()) items.push_back(item);
}

std::string joined(const std::vector<std::string>& items, std::string_view separator) {
  std::string text;
  for (const std::string& item : items) {
    if (!text.empty()) text += separator;
    text += item;
  }
  return text;
}

}  // namespace report
