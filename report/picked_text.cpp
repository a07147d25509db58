#include "report/picked_text.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Candidate;
using studies::Picked;
using studies::Verdict;

std::string size_words(const Candidate& c) {
  return c.steel.empty() ? c.item.label : c.item.label + ", " + c.steel;
}

std::vector<TableCell> row(const std::string& what, const std::string& size, const Candidate& c,
                           bool inches) {
  const Tone tone = verdict_tone(c.verdict);
  return {{what},
          {size},
          {shown_mass_per_length(c.mass_per_length, inches)},
          {std::isfinite(c.utilization) ? percent(c.utilization) : "not decided", tone},
          {c.stopped_by.empty() ? verdict_word(c.verdict) : c.stopped_by, tone}};
}

TextTable empty_table() {
  TextTable table;
  table.columns = {{.least_width = 8},
                   {.least_width = 25},
                   {.numbers = true, .gap = 1},
                   {.numbers = true, .gap = 1},
                   {.least_width = 14}};
  table.head = {{"", Tone::label},
                {"size", Tone::label},
                {"mass", Tone::label},
                {"utilization", Tone::label},
                {"stopped by", Tone::label}};
  return table;
}

/// The sizes around the lightest that passes, with the lightest of the outside that is there now.
std::vector<std::pair<std::string, Candidate>> sizes_shown(const Picked& p) {
  std::vector<std::pair<std::string, Candidate>> shown;
  const auto add = [&](const std::string& what, const std::optional<Candidate>& c) {
    if (c) shown.emplace_back(what, *c);
  };
  add("lighter", p.next_down);
  add("lightest", p.lightest);
  add("heavier", p.next_up);
  const bool there_already =
      p.same_outside && std::any_of(shown.begin(), shown.end(), [&](const auto& other) {
        return other.second.item.label == p.same_outside->item.label;
      });
  if (!there_already) add("same outside", p.same_outside);
  return shown;
}

std::string neighbors(const Picked& p, const TextStyle& style) {
  const auto shown = sizes_shown(p);
  if (shown.empty()) return "";
  TextTable table = empty_table();
  std::vector<std::string> steels;
  for (const auto& [what, c] : shown) {
    table.rows.push_back(row(what, c.item.label, c, p.inches));
    if (!c.steel.empty()) steels.push_back(fmt::format("{}: {}", c.item.label, c.steel));
  }
  const bool same_steel = std::all_of(shown.begin(), shown.end(), [&](const auto& other) {
    return other.second.steel == shown.front().second.steel;
  });
  return laid_out(table, style.width, style.color) +
         (same_steel ? "" : paragraph("steel: " + joined(steels, "; "), style.width, 0, 2)) +
         paragraph("utilization: 100 % = the limit, worst of this part's checks", style.width, 0,
                   2);
}

/// "yield" of "yield at the bend, slid into a curb, left: over".
std::string kind_of_stop(const Candidate& c) {
  return c.stopped_by.substr(0, c.stopped_by.find(','));
}

/// How many of the sizes lighter than the lightest that passes are stopped by what.
std::string what_stops_the_lighter(const Picked& p, const TextStyle& style) {
  std::map<std::string, int> stops;
  int n_lighter = 0;
  for (const Candidate& c : p.tried) {
    if (p.lightest && !(c.mass_per_length < p.lightest->mass_per_length)) continue;
    if (c.verdict == Verdict::within) continue;
    ++n_lighter;
    ++stops[kind_of_stop(c)];
  }
  if (n_lighter == 0) return "";
  std::vector<std::pair<std::string, int>> by_count(stops.begin(), stops.end());
  std::stable_sort(by_count.begin(), by_count.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  std::vector<std::string> words;
  for (const auto& [what, n] : by_count) words.push_back(fmt::format("{} ({})", what, n));
  return paragraph(
      fmt::format("{} of {} sizes{} do not pass, stopped by: {}", n_lighter, p.tried.size(),
                  p.lightest ? " are lighter and" : "", joined(words, ", ")),
      style.width, 0, 2);
}

std::string all_tried(const Picked& p, const TextStyle& style) {
  TextTable table = empty_table();
  for (const Candidate& c : p.tried) table.rows.push_back(row("", size_words(c), c, p.inches));
  std::string out =
      heading("Every size tried, by mass", style) + laid_out(table, style.width, style.color) +
      paragraph("a size that does not pass is followed only to the first load case that stops it",
                style.width, 0, 2);
  if (p.assumed.empty()) return out;
  out += heading("Assumed", style);
  for (const parts::Assumption& a : p.assumed) {
    out += paragraph(fmt::format("{}: {}  [{}]", a.key, a.value, a.basis), style.width, 2, 2);
  }
  return out;
}

/// What the user reads first.
struct PickedHead {
  std::string head;
  Tone tone = Tone::plain;
  std::string rest;
};

PickedHead picked_head(const Picked& p) {
  if (p.lightest) {
    return {"LIGHTEST THAT PASSES", Tone::within,
            fmt::format("{} for the {}, {}, at {} of its limit", size_words(*p.lightest),
                        part_words(p.part),
                        shown_mass_per_length(p.lightest->mass_per_length, p.inches),
                        percent(p.lightest->utilization))};
  }
  const auto open = [](const Candidate& c) { return c.verdict == Verdict::not_decided; };
  if (!p.tried.empty() && std::all_of(p.tried.begin(), p.tried.end(), open)) {
    return {"NOT DECIDED", Tone::undecided,
            fmt::format("none of {} sizes for the {} can be decided: {}", p.tried.size(),
                        part_words(p.part), p.tried.front().stopped_by)};
  }
  return {"NONE PASSES", Tone::over,
          fmt::format("no size of the stock list holds for the {} ({} tried)", part_words(p.part),
                      p.tried.size())};
}

}  // namespace

std::string picked_text(const Picked& p, const TextStyle& style) {
  const PickedHead first = picked_head(p);
  std::string out = opening(first.head, first.tone,
                            fmt::format("{}: {}. {}", first.head, first.rest,
                                        not_offered_sentence(studies::checks_not_offered())),
                            style);
  if (!p.now.empty()) out += paragraph("now in the case: " + p.now, style.width, 0, 2);
  out += neighbors(p, style) + what_stops_the_lighter(p, style);
  const bool nominal = std::any_of(p.assumed.begin(), p.assumed.end(), [](const auto& a) {
    return a.key == "sizes" && a.value == "nominal";
  });
  if (nominal) {
    out += paragraph(
        "sizes are nominal; `sizes: minimum` in the case counts what the mill may "
        "leave away",
        style.width, 0, 2);
  }
  if (!p.other_tube_over.empty()) {
    out += paragraph(
        fmt::format("The {} of the same arm is over its limit or not decided with the size it has, "
                    "and counts here: pick it too (--part arm.{}).",
                    p.other_tube_over, p.other_tube_over.substr(0, p.other_tube_over.find(' '))),
        style.width, 0, 2);
  }
  if (p.others_over) {
    out += paragraph(
        "Another part of this design is over its limit or not decided: `check` says "
        "which.",
        style.width, 0, 2);
  }
  if (style.full) out += all_tried(p, style);
  out += caution_lines(style);
  if (!style.full && !style.command_for_more.empty()) {
    out += paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  return out;
}

}  // namespace report
