#include "report/scattered_text.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/stopped_words.hpp"
#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Sample;
using studies::Scattered;

std::string input_words(const std::string& path) {
  std::string words = part_words(path);
  std::replace(words.begin(), words.end(), '.', ' ');
  return words;
}

std::string judged_words(const studies::Judged& j) {
  if (!std::isfinite(j.utilization)) return j.open;
  return fmt::format("{}, {}{}", part_words(j.part), j.check,
                     j.load_case.empty() ? "" : ", " + j.load_case);
}

/// Utilizations by rank: the middle one, and one that 95 of 100 stay under.
std::string spread_words(const Scattered& s) {
  std::vector<double> all;
  for (const Sample& sample : s.samples) {
    if (std::isfinite(sample.judged.utilization)) all.push_back(sample.judged.utilization);
  }
  if (all.empty()) return "";
  std::sort(all.begin(), all.end());
  const auto at = [&](double share) {
    const double index = share * static_cast<double>(all.size() - 1);
    return percent(all[static_cast<std::size_t>(std::lround(index))]);
  };
  return fmt::format(
      "worst utilization: {} as drawn; over the samples {} in the middle, {} to {} "
      "between the 5th and the 95th of 100",
      std::isfinite(s.as_drawn.utilization) ? percent(s.as_drawn.utilization) : "not decided",
      at(0.5), at(0.05), at(0.95));
}

std::string what_governs(const Scattered& s) {
  std::map<std::string, int> counts;
  for (const Sample& sample : s.samples) {
    if (!std::isfinite(sample.judged.utilization)) continue;
    ++counts[part_words(sample.judged.part) + ", " + sample.judged.check];
  }
  std::vector<std::pair<std::string, int>> all(counts.begin(), counts.end());
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  std::vector<std::string> words;
  for (const auto& [what, n] : all) words.push_back(fmt::format("{} ({})", what, n));
  return "governed by: " + joined(words, "; ");
}

/// Whether the samples differ by so little that how the inputs rank says nothing.
bool moves_nothing(const Scattered& s) {
  constexpr double kLittle = 0.005;
  double least = std::numeric_limits<double>::infinity();
  double most = 0.0;
  for (const Sample& sample : s.samples) {
    if (!std::isfinite(sample.judged.utilization)) return false;
    least = std::min(least, sample.judged.utilization);
    most = std::max(most, sample.judged.utilization);
  }
  return most - least < kLittle * most;
}

/// What a rank correlation may be by chance, at 95 % confidence.
std::string chance_words(const Scattered& s) {
  constexpr double kNormal = 1.96;
  if (s.samples.size() < 2) return "";
  if (moves_nothing(s)) return "; none is told: all samples come to the same, to half a percent";
  return fmt::format(", up to {:.2f} may be chance",
                     kNormal / std::sqrt(static_cast<double>(s.samples.size() - 1)));
}

std::string inputs_table(const Scattered& s, const TextStyle& style) {
  const bool ranks_say_nothing = moves_nothing(s);
  TextTable table;
  table.columns = {
      {.least_width = 16}, {.numbers = true, .gap = 1}, {.least_width = 20}, {.least_width = 14}};
  table.head = {{"what scatters", Tone::label},
                {"rank correlation", Tone::label},
                {"times what the case has", Tone::label},
                {"basis", Tone::label}};
  const auto add = [&](const studies::ScatterInput& input, const std::string& rank) {
    table.rows.push_back({{input_words(input.path)}, {rank}, {studies::words_of(input.factor)}});
  };
  for (const studies::InputRank& rank : s.ranks) {
    for (const studies::ScatterInput& input : s.inputs) {
      if (input.path != rank.path) continue;
      const bool says_nothing = ranks_say_nothing || std::isnan(rank.correlation);
      add(input, says_nothing ? "-" : fmt::format("{:+.2f}", rank.correlation));
    }
  }
  for (const studies::ScatterInput& input : s.inputs) {
    if (input.factor.kind == studies::Distribution::Kind::fixed) add(input, "");
  }
  return laid_out(table, style.width, style.color);
}

/// Each basis with the inputs that have it.
std::string bases(const Scattered& s, const TextStyle& style) {
  std::vector<std::pair<std::string, std::vector<std::string>>> all;
  for (const studies::ScatterInput& input : s.inputs) {
    auto same = std::find_if(all.begin(), all.end(),
                             [&](const auto& known) { return known.first == input.basis; });
    if (same == all.end()) same = all.insert(all.end(), {input.basis, {}});
    same->second.push_back(input_words(input.path));
  }
  std::string out;
  for (const auto& [basis, names] : all) {
    out += paragraph(fmt::format("basis of {}: {}", joined(names, ", "), basis), style.width, 0, 2);
  }
  return out;
}

std::string all_samples(const Scattered& s, const TextStyle& style) {
  TextTable table;
  table.columns = {{.numbers = true}, {.numbers = true, .gap = 1}, {.least_width = 40}};
  table.head = {{"sample", Tone::label}, {"utilization", Tone::label}, {"of", Tone::label}};
  for (std::size_t i = 0; i < s.samples.size(); ++i) {
    const studies::Judged& j = s.samples[i].judged;
    table.rows.push_back({{std::to_string(i + 1)},
                          {std::isfinite(j.utilization) ? percent(j.utilization) : "not decided",
                           verdict_tone(j.verdict)},
                          {judged_words(j)}});
  }
  return heading("Every sample", style) + laid_out(table, style.width, style.color);
}

}  // namespace

std::string scattered_text(const Scattered& s, const TextStyle& style) {
  const std::size_t n_bad = s.n_over + s.n_undecided;
  const std::size_t n = s.samples.size();
  const std::string head = n == 0      ? "NOT DECIDED"
                           : n_bad > 0 ? "OVER IN SOME"
                                       : "WITHIN IN ALL SAMPLES";
  const Tone tone = n == 0 ? Tone::undecided : n_bad > 0 ? Tone::over : Tone::within;
  const std::string rest =
      n == 0 ? ": no sample was solved to the end"
             : fmt::format(
                   ": {} of {} samples are over a limit{} ({:.1f} %; with 95 % confidence "
                   "between {:.1f} and {:.1f} %)",
                   s.n_over, n,
                   s.n_undecided == 0 ? "" : fmt::format(" and {} are not decided", s.n_undecided),
                   100.0 * static_cast<double>(n_bad) / static_cast<double>(n),
                   100.0 * s.share_over.low, 100.0 * s.share_over.high);
  std::string out =
      opening(head, tone,
              head + rest + ". " + scope_sentence(s.scope, studies::checks_not_offered()), style);
  if (n > 0) {
    out += paragraph(spread_words(s), style.width, 0, 2);
    out += paragraph(what_governs(s), style.width, 0, 2);
  }
  out += inputs_table(s, style) + bases(s, style);
  out += paragraph(
      fmt::format("{} samples by Latin hypercube (seed {}), inputs independent; interval after "
                  "Wilson (1927), as if the samples were drawn one by one; rank correlation after "
                  "Spearman with the worst utilization: +1 or -1 moves it alone, 0 not at all{}. "
                  "What the shares mean rests on the distributions, which are not measured on "
                  "your parts; with a required factor in every check, under the limit is far from "
                  "breaking, and none of it is a chance of failure.",
                  s.n_samples, s.seed, chance_words(s)),
      style.width, 0, 2);
  out += stopped_words(n, s.n_samples, "samples", style);
  if (style.full) out += all_samples(s, style);
  out += stacks_line(s.scope, style) + caution_lines(style);
  if (!style.full && !style.command_for_more.empty()) {
    out += paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  return out;
}

}  // namespace report
