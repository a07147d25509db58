#include "cases/plain_text.hpp"

#include <fmt/format.h>

#include "cases/words.hpp"

namespace cases {
namespace {

constexpr std::size_t kLargest = 1'000'000;

[[noreturn]] void refuse(const Place& place, const std::string& problem) {
  throw base::InputError(base::Where{{}, place.line, place.column, {}}, problem);
}

unsigned byte_at(std::string_view text, std::size_t at) {
  return at < text.size() ? static_cast<unsigned char>(text[at]) : 0U;
}

/// Bytes of the UTF-8 character at `at`; 0 when there is none (overlong forms and surrogates
/// included).
std::size_t utf8_length(std::string_view text, std::size_t at) {
  const unsigned first = byte_at(text, at);
  if (first < 0x80) return 1;
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte_at(text, at + i) & 0xC0U) != 0x80U) return 0;
  }
  const unsigned second = byte_at(text, at + 1);
  const bool overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
  const bool surrogate = first == 0xED && second > 0x9F;
  const bool beyond = first == 0xF4 && second > 0x8F;
  return overlong || surrogate || beyond ? 0 : length;
}

bool is_continuation(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

/// The tab is in the indent of a line that holds more than a comment.
bool indents(std::string_view line) {
  const std::size_t first = line.find_first_not_of(" \t\r");
  if (first == std::string_view::npos || line[first] == '#') return false;
  return line.substr(0, first).find('\t') != std::string_view::npos;
}

void require_characters(std::string_view line, int number) {
  Place place{number, 1};
  for (std::size_t at = 0; at < line.size(); ++place.column) {
    const unsigned c = byte_at(line, at);
    if (c < 0x20 && c != '\t' && c != '\r') {
      refuse(place, "the text holds a control character; save the case file as plain text (UTF-8)");
    }
    const std::size_t length = utf8_length(line, at);
    if (length == 0) {
      refuse(place, "the text is not UTF-8; save the case file as plain text (UTF-8)");
    }
    at += length;
  }
}

/// Counts the brackets left open, so that runaway ones are found before a parser meets them.
class Brackets {
 public:
  void add_line(std::string_view line, int number) {
    // A line that starts with a letter starts a key of the top level: nothing is open there.
    if (!line.empty() && is_letter(line[0])) open_ = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
      const char c = line[i];
      if (c == '#' && (i == 0 || line[i - 1] == ' ')) return;
      if (c == '[' || c == '{') ++open_;
      if ((c == ']' || c == '}') && open_ > 0) --open_;
      if (open_ > kDeepest) refuse({number, static_cast<int>(i) + 1}, too_deep());
    }
  }

 private:
  std::size_t open_ = 0;
};

}  // namespace

std::string too_deep() {
  return fmt::format("nested over {} deep; no case needs that", kDeepest);
}

void require_plain_text(std::string_view text) {
  if (text.size() > kLargest) {
    refuse({}, fmt::format("the text is {} bytes long; a case file is under {}", text.size(),
                           kLargest));
  }
  int number = 1;
  Brackets brackets;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    require_characters(line, number);
    if (indents(line)) {
      refuse({number, static_cast<int>(line.find('\t')) + 1},
             "a tab indents this line; YAML takes spaces only");
    }
    brackets.add_line(line, number);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    ++number;
  }
}

Place place_of(std::string_view text, int line, int byte) {
  for (int i = 0; i < line; ++i) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  Place place{line + 1, 1};
  const std::string_view before = text.substr(0, static_cast<std::size_t>(byte < 0 ? 0 : byte));
  for (const char c : before) place.column += is_continuation(c) ? 0 : 1;
  return place;
}

}  // namespace cases
