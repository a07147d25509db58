#include "cases/words.hpp"

#include <algorithm>

#include "sections/nearest.hpp"

namespace cases {
namespace {

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

}  // namespace

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

std::string packed(std::string_view text) {
  std::string out = lower(text);
  out.erase(std::remove(out.begin(), out.end(), ' '), out.end());
  return out;
}

std::string_view trim(std::string_view text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

std::string squeeze(std::string_view text) {
  std::string result;
  for (const char c : trim(text)) {
    if (!is_space(c)) {
      result += c;
    } else if (result.back() != ' ') {
      result += ' ';
    }
  }
  return result;
}

std::vector<std::string> split(std::string_view text, std::string_view separator) {
  std::vector<std::string> pieces;
  for (std::size_t at = text.find(separator); at != std::string_view::npos;
       at = text.find(separator)) {
    pieces.emplace_back(trim(text.substr(0, at)));
    text.remove_prefix(at + separator.size());
  }
  pieces.emplace_back(trim(text));
  return pieces;
}

std::vector<std::string> words_of(std::string_view text) {
  const std::string squeezed = squeeze(text);
  if (squeezed.empty()) return {};
  return split(squeezed, " ");
}

std::string join(const std::vector<std::string>& items, std::string_view separator) {
  std::string result;
  for (const std::string& item : items) {
    if (&item != &items.front()) result += separator;
    result += item;
  }
  return result;
}

bool same_words(std::string_view a, std::string_view b) {
  return lower(squeeze(a)) == lower(squeeze(b));
}

std::string quoted(std::string_view text) {
  // A runaway value must not flood the screen.
  constexpr std::size_t kLongest = 80;
  std::string shown = squeeze(text);
  if (shown.size() > kLongest) shown = shown.substr(0, kLongest) + "...";
  return "`" + shown + "`";
}

std::string did_you_mean(std::string_view name, const std::vector<std::string>& candidates) {
  if (name.size() > 40) return {};
  const std::string best = sections::nearest(name, candidates);
  if (best.empty()) return {};
  const int longest = static_cast<int>(std::max(name.size(), best.size()));
  const int distance = sections::edit_distance(name, best);
  if (distance > std::max(1, longest / 2) || distance == longest) return {};
  return "; did you mean `" + best + "`?";
}

}  // namespace cases
