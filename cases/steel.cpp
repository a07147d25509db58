#include "cases/steel.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "base/input_error.hpp"
#include "cases/trade_words.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

constexpr std::array<std::string_view, 11> kFormWords = {
    "solid", "round",  "square", "rectangular", "flat", "bar",
    "tube",  "tubing", "plate",  "channel",     "angle"};

bool is_form_word(std::string_view word) {
  return std::find(kFormWords.begin(), kFormWords.end(), lower(word)) != kFormWords.end();
}

std::string join_range(const std::vector<std::string>& words, std::size_t from, std::size_t to) {
  std::string text;
  for (std::size_t i = from; i < to; ++i) text += (i == from ? "" : " ") + words[i];
  return text;
}

}  // namespace

std::optional<sections::Material> find_steel(std::string_view name, const parts::Design& names) {
  for (const auto& own : names.materials) {
    if (same_words(own.name, name)) return own.value;
  }
  return sections::find_material(name);
}

sections::Material known_steel(std::string_view name, const parts::Design& names) {
  if (const auto steel = find_steel(name, names)) return *steel;
  std::vector<std::string> candidates;
  for (const auto& own : names.materials) candidates.push_back(own.name);
  candidates.push_back(sections::nearest_material(name));
  std::string hint = steel_meant(name);
  if (hint.empty()) hint = did_you_mean(name, candidates);
  if (hint.empty()) hint = "; e.g. DOM, 1018, 4130, mild steel, A36, S355, or one of `materials:`";
  throw base::InputError("", "unknown steel " + quoted(name) + hint);
}

std::vector<parts::Assumption> condition_assumed(std::string_view name,
                                                 const parts::Design& names) {
  const std::string chosen = sections::condition_chosen(name);
  const sections::Material steel = known_steel(name, names);
  // A case may give its own steel the same name.
  if (chosen.empty() || steel.source == "the case file") return {};
  return {{"steel", steel.id, chosen}};
}

FormAndSteel form_and_steel(std::string_view rest, const parts::Design& names) {
  std::string plain(rest);
  std::replace(plain.begin(), plain.end(), ',', ' ');
  const std::vector<std::string> words = words_of(plain);
  const std::size_t n = words.size();
  // A name may hold a word of form ("cold drawn bar"), so known names are looked for first.
  for (std::size_t length = n; length > 0; --length) {
    for (std::size_t from = 0; from + length <= n; ++from) {
      const std::string name = join_range(words, from, from + length);
      if (!find_steel(name, names)) continue;
      const std::string form =
          squeeze(join_range(words, 0, from) + " " + join_range(words, from + length, n));
      const std::vector<std::string> others = words_of(form);
      if (std::all_of(others.begin(), others.end(), is_form_word)) return {lower(form), name};
    }
  }
  FormAndSteel result;
  for (const std::string& word : words) {
    std::string& to = is_form_word(word) ? result.form : result.steel;
    to += (to.empty() ? "" : " ") + (is_form_word(word) ? lower(word) : word);
  }
  return result;
}

}  // namespace cases
