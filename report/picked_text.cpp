#include "report/picked_text.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>

#include "checks/caveat.hpp"
#include "report/answer_words.hpp"
#include "report/stopped_words.hpp"
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

/// The check that governs a size, or what is not decided about it.
std::string governed_by(const Candidate& c) {
  const studies::Judged& j = c.judged;
  if (j.verdict == Verdict::not_decided && !j.open.empty()) return j.open;
  std::string words = j.load_case.empty() ? j.check : j.check + ", " + j.load_case;
  if (!j.other_over.empty()) words += fmt::format("; with it {}", part_words(j.other_over));
  if (j.verdict == Verdict::over && !j.open.empty()) words += "; not decided: " + j.open;
  return words;
}

std::string utilization_words(const Candidate& c) {
  return std::isfinite(c.judged.utilization) ? percent(c.judged.utilization) : "not decided";
}

bool has_prices(const Picked& p) {
  return std::any_of(p.tried.begin(), p.tried.end(),
                     [](const Candidate& c) { return std::isfinite(c.item.price); });
}

/// In the user's own money, for all that the part takes.
std::string cost_words(const Picked& p, const Candidate& c) {
  return std::isfinite(c.item.price) ? fmt::format("{:.2f}", c.item.price * p.length) : "-";
}

std::vector<TableCell> row(const Picked& p, const std::string& what, const std::string& size,
                           const Candidate& c) {
  const Tone tone = verdict_tone(c.judged.verdict);
  std::vector<TableCell> cells = {{what},
                                  {size},
                                  {shown_mass_per_length(c.mass_per_length, p.inches)},
                                  {utilization_words(c), tone},
                                  {governed_by(c), tone}};
  if (has_prices(p)) cells.insert(cells.begin() + 3, {cost_words(p, c)});
  return cells;
}

TextTable empty_table(const Picked& p) {
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
                {"governed by", Tone::label}};
  if (has_prices(p)) {
    table.columns.insert(table.columns.begin() + 3, {.numbers = true, .gap = 1});
    table.head.insert(table.head.begin() + 3, {"cost", Tone::label});
  }
  return table;
}

/// The words for the first that passes, the one before it and the one after it.
struct StepWords {
  const char* first;
  const char* before;
  const char* after;
  const char* less;
  const char* order;
};

StepWords step_words(studies::PickBy by) {
  switch (by) {
    case studies::PickBy::cost:
      return {"cheapest", "cheaper", "dearer", "cost less", "cost"};
    case studies::PickBy::outside:
      return {"smallest", "smaller", "larger", "are no larger", "diameter"};
    case studies::PickBy::mass:
      break;
  }
  return {"lightest", "lighter", "heavier", "are lighter", "mass"};
}

/// The sizes around the one that is picked, with the first of the outside that is there now.
std::vector<std::pair<std::string, Candidate>> sizes_shown(const Picked& p) {
  std::vector<std::pair<std::string, Candidate>> shown;
  const auto add = [&](const std::string& what, const std::optional<Candidate>& c) {
    if (c) shown.emplace_back(what, *c);
  };
  const StepWords words = step_words(p.by);
  add(words.before, p.next_down);
  add(words.first, p.lightest);
  add(words.after, p.next_up);
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
  TextTable table = empty_table(p);
  std::vector<std::string> steels;
  for (const auto& [what, c] : shown) {
    table.rows.push_back(row(p, what, c.item.label, c));
    if (!c.steel.empty()) steels.push_back(fmt::format("{}: {}", c.item.label, c.steel));
  }
  const bool same_steel = std::all_of(shown.begin(), shown.end(), [&](const auto& other) {
    return other.second.steel == shown.front().second.steel;
  });
  return laid_out(table, style.width, style.color) +
         (same_steel ? "" : paragraph("steel: " + joined(steels, "; "), style.width, 0, 2)) +
         paragraph(
             "utilization: 100 % = the limit; worst of this part's checks over all load "
             "cases and stiffness sets",
             style.width, 0, 2);
}

/// What keeps a size from passing, in short.
std::string kind_of_stop(const Candidate& c) {
  if (c.judged.no_sense) return "makes no sense in this case";
  if (c.judged.verdict == Verdict::not_decided) {
    return c.judged.open.substr(0, c.judged.open.find_first_of(",:")) + " not decided";
  }
  if (c.judged.utilization > 1.0 || c.judged.other_over.empty()) return c.judged.check;
  return c.judged.other_over.substr(0, c.judged.other_over.find(", ")) + " over with it";
}

bool is_open(const Candidate& c) {
  return c.judged.verdict == Verdict::not_decided && !c.judged.no_sense;
}

/// How many of the sizes before the first that passes are stopped by what.
std::string what_stops_those_before(const Picked& p, const TextStyle& style) {
  std::map<std::string, int> stops;
  int n_before = 0;
  for (const Candidate& c : p.tried) {
    if (p.lightest && c.item.label == p.lightest->item.label && c.steel == p.lightest->steel) break;
    ++n_before;
    ++stops[part_words(kind_of_stop(c))];
  }
  if (n_before == 0) return "";
  std::vector<std::pair<std::string, int>> by_count(stops.begin(), stops.end());
  std::stable_sort(by_count.begin(), by_count.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  std::vector<std::string> words;
  for (const auto& [what, n] : by_count) words.push_back(fmt::format("{} ({})", what, n));
  const std::string less = p.lightest ? fmt::format(" {} and", step_words(p.by).less) : "";
  return paragraph(fmt::format("{} of {} sizes{} do not pass, stopped by: {}", n_before, p.n_sizes,
                               less, joined(words, ", ")),
                   style.width, 0, 2);
}

std::string all_tried(const Picked& p, const TextStyle& style) {
  TextTable table = empty_table(p);
  for (const Candidate& c : p.tried) table.rows.push_back(row(p, "", size_words(c), c));
  std::string out = heading(fmt::format("Every size tried, by {}", step_words(p.by).order), style) +
                    laid_out(table, style.width, style.color);
  if (p.assumed.empty()) return out;
  out += heading("Assumed", style);
  for (const parts::Assumption& a : p.assumed) {
    out += paragraph(fmt::format("{}: {}  [{}]", a.key, a.value, a.basis), style.width, 2, 2);
  }
  return out;
}

/// That a size holds only as thick as it is sold for.
std::string thin_words(const Candidate& c) {
  if (!c.at_minimum || c.at_minimum->verdict != Verdict::over) return "";
  return fmt::format(", but OVER at {} with the least the mill may deliver",
                     percent(c.at_minimum->utilization));
}

/// What the user reads first.
struct PickedHead {
  std::string head;
  Tone tone = Tone::plain;
  std::string rest;
};

PickedHead picked_head(const Picked& p) {
  if (p.lightest) {
    const char* head = p.by == studies::PickBy::cost      ? "CHEAPEST THAT PASSES"
                       : p.by == studies::PickBy::outside ? "SMALLEST THAT PASSES"
                                                          : "LIGHTEST THAT PASSES";
    const std::string cost =
        has_prices(p) ? fmt::format(", cost {}", cost_words(p, *p.lightest)) : "";
    return {head, Tone::within,
            fmt::format("{} for the {}, {}{}, at {} of its limit{}", size_words(*p.lightest),
                        part_words(p.part),
                        shown_mass_per_length(p.lightest->mass_per_length, p.inches), cost,
                        percent(p.lightest->judged.utilization), thin_words(*p.lightest))};
  }
  if (p.tried.empty()) return {"NOT DECIDED", Tone::undecided, "no size was tried to the end"};
  if (std::all_of(p.tried.begin(), p.tried.end(), is_open)) {
    return {"NOT DECIDED", Tone::undecided,
            fmt::format("none of {} sizes for the {} can be decided: {}", p.tried.size(),
                        part_words(p.part), p.tried.front().judged.open)};
  }
  const auto first_open = std::find_if(p.tried.begin(), p.tried.end(), is_open);
  if (first_open != p.tried.end()) {
    return {
        "NOT DECIDED", Tone::undecided,
        fmt::format("no size for the {} is seen to hold: of {} tried {} are not decided: {}",
                    part_words(p.part), p.tried.size(),
                    std::count_if(first_open, p.tried.end(), is_open), first_open->judged.open)};
  }
  if (p.n_done < p.n_sizes) {
    return {"NOT DECIDED", Tone::undecided,
            fmt::format("none of the {} sizes tried before it was interrupted holds for the {}",
                        p.tried.size(), part_words(p.part))};
  }
  return {"NONE PASSES", Tone::over,
          fmt::format("no size of the stock list holds for the {} ({} tried)", part_words(p.part),
                      p.tried.size())};
}

/// Another part is over as drawn: whether that keeps this one from passing, and what to do.
std::string others_words(const Picked& p, const TextStyle& style) {
  std::string out;
  const auto n_only = std::count_if(p.tried.begin(), p.tried.end(),
                                    [](const Candidate& c) { return c.judged.only_other_tube; });
  std::string together = fmt::format("--part {}", p.part);
  for (const std::string& name : p.could_join) together += " --part " + name;
  if (!p.other_tube_over.empty()) {
    const std::string alone =
        p.every ? fmt::format(": {} of the {} sizes tried do not pass for that alone", n_only,
                              p.tried.size())
                : "";
    out += paragraph(
        fmt::format("The {} beside it is over its limit or not decided with the size it has, "
                    "and counts here{}. Pick both together: {}",
                    p.other_tube_over, alone, together),
        style.width, 0, 2);
  }
  if (p.others_over.empty()) return out;
  std::vector<std::string> names;
  for (const std::string& name : p.others_over) names.push_back(part_words(name));
  const std::string others = joined(names, ", ");
  const bool any_open = std::any_of(p.tried.begin(), p.tried.end(), is_open);
  if (p.lightest || any_open || p.could_join.empty()) {
    return out + paragraph(fmt::format("Over its limit or not decided as drawn, and not counted "
                                       "here: {} (`check` says why).",
                                       others),
                           style.width, 0, 2);
  }
  return out + paragraph(fmt::format("No size passes, and as drawn {} is over its limit or not "
                                     "decided too: each may keep the other from passing, whatever "
                                     "its size. Pick them together: {}",
                                     others, together),
                         style.width, 0, 2);
}

/// How the sizes chosen do when the mill delivers as little as it may.
std::string sizes_words(const Picked& p, const TextStyle& style) {
  const bool nominal = std::any_of(p.assumed.begin(), p.assumed.end(), [](const auto& a) {
    return a.key == "sizes" && a.value == "nominal";
  });
  if (!nominal) return "";
  const bool tried = p.lightest && p.lightest->at_minimum;
  if (!tried) {
    return paragraph(
        "sizes are nominal; `sizes: minimum` in the case counts what the mill may leave away",
        style.width, 0, 2);
  }
  const auto one = [](const Candidate& c) {
    const studies::Judged& thin = *c.at_minimum;
    if (thin.verdict == Verdict::not_decided) return c.item.label + " not decided";
    return fmt::format("{} at {}{}", c.item.label, percent(thin.utilization),
                       thin.verdict == Verdict::over ? ", OVER" : "");
  };
  std::string both = one(*p.lightest);
  const bool second = p.next_up && p.next_up->at_minimum;
  if (second) both += "; " + one(*p.next_up);
  const bool holds = p.lightest->at_minimum->verdict == Verdict::within;
  return paragraph(fmt::format("sizes are nominal; with the least the mill may deliver: {}{}", both,
                               holds ? "" : ". `sizes: minimum` in the case picks by that"),
                   style.width, 0, 2);
}

}  // namespace

std::string picked_text(const Picked& p, const TextStyle& style) {
  const PickedHead first = picked_head(p);
  std::string out = opening(first.head, first.tone,
                            fmt::format("{}: {}. {}", first.head, first.rest,
                                        scope_sentence(p.scope, studies::checks_not_offered())),
                            style);
  if (!p.now.empty()) out += paragraph("now in the case: " + p.now, style.width, 0, 2);
  out += neighbors(p, style) + what_stops_those_before(p, style);
  out += sizes_words(p, style);
  if (p.lightest) {
    for (const std::string& words : p.lightest->judged.beware) {
      out += paragraph(fmt::format("{}{}: {}", checks::kCaveat, p.lightest->item.label, words),
                       style.width, 0, 2);
    }
  }
  out += stacks_line(p.scope, style);
  out += others_words(p, style);
  if (p.n_unpriced > 0) {
    out += paragraph(fmt::format("{} sizes have no price and are left out", p.n_unpriced),
                     style.width, 0, 2);
  }
  out += stopped_words(p.n_done, p.n_sizes, "sizes", style);
  if (style.full) out += all_tried(p, style);
  out += caution_lines(style);
  if (!style.full && !style.command_for_more.empty()) {
    out += paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  return out;
}

}  // namespace report
