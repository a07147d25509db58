#include "report/text.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "checks/caveat.hpp"
#include "report/answer_words.hpp"
#include "report/comparison_text.hpp"
#include "report/droop_text.hpp"
#include "report/failure_order_text.hpp"
#include "report/full_text.hpp"
#include "report/life_text.hpp"
#include "report/posture_text.hpp"
#include "report/remedy_text.hpp"
#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using checks::Finding;
using checks::State;
using studies::Answer;
using studies::CriticalFactor;

constexpr std::size_t kScreenLines = 25;
// Of what is assumed and what is not checked together, where there is room.
constexpr std::size_t kListLines = 4;

/// One finding a part, in the order of the answer: its worst one that is over, or else its worst.
std::vector<const Finding*> worst_of_parts(const Answer& answer) {
  std::vector<const Finding*> worst;
  for (const Finding& f : answer.findings) {
    const auto same = std::find_if(worst.begin(), worst.end(),
                                   [&](const Finding* other) { return other->part == f.part; });
    if (same == worst.end()) {
      worst.push_back(&f);
    } else if ((*same)->state == State::undecided && f.state == State::over) {
      *same = &f;
    }
  }
  return worst;
}

/// A tipping axle is no part by name: "the axle tips on its springs and bushings".
constexpr std::string_view kTippingAxle = "the axle tips ";

bool is_tipping(const Finding& f) {
  return f.part.rfind(kTippingAxle, 0) == 0;
}

std::string part_of_row(const Finding& f) {
  return is_tipping(f) ? "axle" : part_words(f.part);
}

constexpr std::string_view kCombined = "combined forces";

bool is_combined(const Finding& f) {
  return f.check == kCombined;
}

std::string what_of_row(const Finding& f) {
  if (is_tipping(f)) return "tips " + f.part.substr(kTippingAxle.size());
  const std::string words = what_gives_briefly(f);
  return is_combined(f) ? "combined" + words.substr(kCombined.size()) : words;
}

std::string table_of_parts(const Answer& answer, const TextStyle& style) {
  TextTable table;
  table.columns = {{.least_width = 12},         {.least_width = 10},
                   {.least_width = 16},         {.numbers = true, .gap = 1},
                   {.numbers = true, .gap = 1}, {.numbers = true, .gap = 1}};
  for (const char* name :
       {"part", "governed by", "worst case", "safety factor", "asked", "utilization"}) {
    table.head.push_back({name, Tone::label});
  }
  const std::vector<const Finding*> worst = worst_of_parts(answer);
  for (const Finding* f : worst) {
    const bool decided = f->state != State::undecided;
    table.rows.push_back(
        {{part_of_row(*f)},
         {what_of_row(*f)},
         {f->load_case},
         {decided ? multiple(f->safety_factor) : "?"},
         {number(f->required)},
         {decided ? percent(f->utilization()) : "not decided", state_tone(f->state)}});
  }
  if (table.rows.empty()) return "";
  std::string words =
      "utilization: 100 % = the limit; safety factor: multiple of the load at which it just holds; "
      "asked: factor required";
  if (std::any_of(worst.begin(), worst.end(), [](const Finding* f) { return is_combined(*f); })) {
    words += "; combined: push or pull with bending";
  }
  return laid_out(table, style.width, style.color) + paragraph(words, style.width, 0, 2);
}

/// Parts judged at ride height although their load case turns them far from it.
std::string second_order_line(const Answer& answer, const TextStyle& style) {
  std::vector<std::string> parts;
  for (const Finding* f : worst_of_parts(answer)) {
    if (studies::judged_at_ride_height(*f)) parts.push_back(part_words(f->part));
  }
  if (parts.empty()) return "";
  return paragraph("in second order at ride height, which asks more than the place reached: " +
                       joined(parts, "; "),
                   style.width, 0, 2);
}

/// The worst check that is decided of each part that is not, so that it is not lost from sight.
std::string decided_beside(const Answer& answer, const TextStyle& style) {
  std::vector<std::string> words;
  for (const Finding* open : worst_of_parts(answer)) {
    if (open->state != State::undecided) continue;
    const Finding* worst = nullptr;
    for (const Finding& f : answer.findings) {
      if (f.part != open->part || f.state == State::undecided) continue;
      if (worst == nullptr || f.utilization() > worst->utilization()) worst = &f;
    }
    if (worst == nullptr) continue;
    words.push_back(fmt::format("{}, {}, {}", part_words(worst->part), what_gives_briefly(*worst),
                                percent(worst->utilization())));
  }
  if (words.empty()) return "";
  return paragraph("decided beside that, the worst: " + joined(words, "; "), style.width, 0, 2);
}

/// Why something is not decided, each reason once with the parts it leaves open, unless the verdict
/// has said it.
std::string undecided_reasons(const Answer& answer, const TextStyle& style) {
  constexpr std::size_t kMost = 3;
  std::vector<std::string> reasons;
  for (const Finding& f : answer.findings) {
    if (f.state == State::undecided) add_once(reasons, f.reason);
  }
  if (answer.verdict == studies::Verdict::not_decided && !reasons.empty()) {
    reasons.erase(reasons.begin());
  }
  std::string out;
  for (std::size_t i = 0; i < reasons.size() && i < kMost; ++i) {
    std::vector<std::string> left_open;
    for (const Finding& f : answer.findings) {
      if (f.state == State::undecided && f.reason == reasons[i]) {
        add_once(left_open, part_words(f.part));
      }
    }
    out += paragraph(fmt::format("not decided: {}: {}", joined(left_open, "; "), reasons[i]),
                     style.width, 0, 2);
  }
  if (reasons.size() > kMost) {
    out += fmt::format("not decided for {} more reasons\n", reasons.size() - kMost);
  }
  return out;
}

/// What the findings warn of, as far as a short answer has room for it.
std::string caveat_lines(const Answer& answer, const TextStyle& style) {
  constexpr std::size_t kMost = 5;
  const std::vector<std::string> caveats = caveats_of(answer);
  std::string out;
  for (std::size_t i = 0; i < std::min(caveats.size(), kMost); ++i) {
    out += paragraph(checks::kCaveat + caveats[i], style.width, 0, 2);
  }
  if (caveats.size() > kMost) {
    out += fmt::format("beware of {} more, in what `explain` says\n", caveats.size() - kMost);
  }
  return out;
}

/// The lowest factor of the assembly, and the lowest that is no tipping of the axle.
std::string assembly_words(const Answer& answer) {
  const CriticalFactor& lowest = answer.critical.front();
  std::string words = buckling_words(lowest);
  if (!lowest.axle_tips) return words;
  const auto other = std::find_if(answer.critical.begin(), answer.critical.end(),
                                  [](const CriticalFactor& c) { return !c.axle_tips; });
  return other == answer.critical.end() ? words : words + "; then " + buckling_words(*other);
}

std::string own_words(const Answer& answer) {
  constexpr std::size_t kMost = 3;
  std::vector<std::string> words;
  for (const CriticalFactor& c : answer.own) {
    if (words.size() < kMost) {
      words.push_back(fmt::format("{} at {} times", part_words(c.what), multiple(c.factor)));
    }
  }
  return joined(words, "; ");
}

std::string buckling_lines(const Answer& answer, const TextStyle& style) {
  const bool missed = std::any_of(
      answer.findings.begin(), answer.findings.end(),
      [](const Finding& f) { return f.state == State::undecided && f.check == "frame stability"; });
  std::string out;
  if (!answer.critical.empty()) {
    out += paragraph("buckles first: " + assembly_words(answer), style.width, 0, 2);
  } else if (missed) {
    out += paragraph("buckles first: not found, see what is not decided", style.width, 0, 2);
  } else if (!answer.solved.empty()) {
    out += paragraph("buckles first: nothing in the load cases solved", style.width, 0, 2);
  }
  if (!answer.own.empty()) {
    out += paragraph("each alone, between its joints: " + own_words(answer), style.width, 0, 2);
  }
  return out;
}

/// A list cut at `most` lines, with what is left out counted and said.
std::string short_list(const std::string& head, const std::vector<std::string>& items,
                       std::string_view separator, const std::string& all_end,
                       const std::string& cut_end, std::size_t most, int width) {
  // What is longer than this cannot fit, at up to four bytes a column.
  const std::size_t room = 4 * most * static_cast<std::size_t>(width);
  std::size_t n = 0;
  for (std::size_t bytes = 0; n < items.size() && bytes <= room; ++n) bytes += items[n].size();
  for (; n > 0; --n) {
    const std::vector<std::string> some(items.begin(),
                                        items.begin() + static_cast<std::ptrdiff_t>(n));
    const std::string end =
        n == items.size() ? all_end
                          : fmt::format("{}and {} more{}", separator, items.size() - n, cut_end);
    const std::string line = head + joined(some, separator) + end;
    if (wrapped_lines(line, width, 2).size() <= most || n == 1) return paragraph(line, width, 0, 2);
  }
  return "";
}

std::string assumed_lines(const Answer& answer, std::size_t most, const TextStyle& style) {
  std::vector<std::string> items;
  for (const parts::Assumption& a : answer.assumed) {
    items.push_back(key_words(a.key) + " " + a.value);
  }
  const std::string where = style.command_for_more.empty() ? "" : " (--all: each with its basis)";
  return short_list("assumed: ", items, ", ", where, where, most, style.width);
}

/// What only some cases have to say.
std::string lines_of_some(const Answer& answer, const TextStyle& style) {
  std::string out;
  const std::string breaks_first = breaks_first_sentence(answer.failure_orders);
  if (!breaks_first.empty()) out += paragraph("order: " + breaks_first, style.width, 0, 2);
  const std::string life = answer.life ? life_sentence(*answer.life, answer.inches) : "";
  if (!life.empty()) out += paragraph(life, style.width, 0, 2);
  return out;
}

std::size_t lines_in(const std::string& text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

/// Lines for the two lists beside `others`: fewer where that keeps a small case on one screen.
std::size_t list_lines(std::size_t others) {
  const bool fits_with_two = others + 2 <= kScreenLines;
  return fits_with_two ? std::min(kListLines, kScreenLines - others) : kListLines;
}

/// @param around  lines before and after it
std::string short_text(const Answer& answer, std::size_t around, const TextStyle& style) {
  std::string out;
  out += table_of_parts(answer, style);
  out += second_order_line(answer, style) + remedy_lines(answer, style);
  out += undecided_reasons(answer, style) + decided_beside(answer, style);
  out += caveat_lines(answer, style);
  out += buckling_lines(answer, style);
  out += lines_of_some(answer, style);
  if (const std::string squeezed = squeezed_words(answer.postures, answer.inches);
      !squeezed.empty()) {
    out += paragraph(squeezed, style.width, 0, 2);
  }
  if (answer.droop) {
    const std::string words = droop_sentence(*answer.droop, answer.inches);
    if (!words.empty()) out += paragraph(words, style.width, 0, 2);
  }
  if (answer.bump) {
    out +=
        paragraph("rise from ride height: " + joined(bump_words(*answer.bump, answer.inches), "; "),
                  style.width, 0, 2);
  }
  if (answer.comparison) out += variant_lines(*answer.comparison, style);
  const std::size_t left = list_lines(lines_in(out) + around);
  out += assumed_lines(answer, left / 2, style);
  const std::string where = style.command_for_more.empty() ? "" : " (--all)";
  out += short_list("not checked: ", answer.not_checked, "; ", "", where, left - left / 2,
                    style.width);
  return out;
}

}  // namespace

std::string text(const Answer& answer, const TextStyle& style) {
  std::string out = opening(verdict_head(answer.verdict), verdict_tone(answer.verdict),
                            verdict_sentence(answer), style);
  std::string end = caution_lines(style);
  if (!style.full && !style.command_for_more.empty()) {
    end += paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  out += style.full ? full_text(answer, style)
                    : short_text(answer, lines_in(out) + lines_in(end), style);
  return out + end;
}

}  // namespace report
