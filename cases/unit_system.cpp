#include "cases/unit_system.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "cases/words.hpp"

namespace cases {
namespace {

struct Tally {
  int inches = 0;
  int metric = 0;
};

void count(const Value& value, Tally& tally) {
  constexpr std::array<std::string_view, 6> kInch = {"in", "in.", "ft", "lb", "lbf", "ksi"};
  constexpr std::array<std::string_view, 7> kMetric = {"mm", "cm", "m", "kg", "kN", "N", "MPa"};
  for (std::string word : words_of(value.text)) {
    if (!word.empty() && word.back() == ',') word.pop_back();
    word = word.substr(0, word.find('/'));
    if (std::find(kInch.begin(), kInch.end(), word) != kInch.end()) ++tally.inches;
    if (std::find(kMetric.begin(), kMetric.end(), word) != kMetric.end()) ++tally.metric;
    if (word.size() > 1 && word.back() == '"') ++tally.inches;
  }
  for (const Value& item : value.items) count(item, tally);
  for (const Entry& entry : value.entries) count(entry.value, tally);
}

}  // namespace

bool uses_inches(const Value& root) {
  Tally tally;
  count(root, tally);
  return tally.inches >= tally.metric;
}

}  // namespace cases
