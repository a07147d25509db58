#pragma once

#include <algorithm>
#include <cctype>
#include <sstream>
#include <string>
#include <vector>

#include "report/wrap.hpp"

/// What every text that a writer makes must keep to.
namespace written {

inline std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> all;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) all.push_back(line);
  return all;
}

/// The text as one line, so that what is looked for may be wrapped anywhere.
inline std::string flat(const std::string& text) {
  std::string all;
  for (const std::string& line : lines(text)) {
    const std::size_t start = line.find_first_not_of(' ');
    if (start != std::string::npos) all += (all.empty() ? "" : " ") + line.substr(start);
  }
  return all;
}

inline int widest(const std::string& text) {
  int widest = 0;
  for (const std::string& line : lines(text)) {
    widest = std::max(widest, report::display_width(line));
  }
  return widest;
}

/// Whether a word stands in the text by itself, whatever its case.
inline bool has_word(const std::string& text, const std::string& word) {
  std::string words = " ";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    words += std::isalpha(byte) != 0 ? static_cast<char>(std::tolower(byte)) : ' ';
  }
  return (words + " ").find(" " + word + " ") != std::string::npos;
}

/// No number that is not one, and no promise.
inline bool is_clean(const std::string& text) {
  return !has_word(text, "nan") && !has_word(text, "inf") && !has_word(text, "safe");
}

}  // namespace written
