#include "report/grid_text.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include <fmt/format.h>

#include "checks/caveat.hpp"
#include "report/answer_words.hpp"
#include "report/stopped_words.hpp"
#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::PickedDesign;
using studies::PickedGrid;

std::string grid_parts(const PickedGrid& g) {
  std::vector<std::string> names;
  for (const std::string& part : g.parts) names.push_back(part_words(part));
  return joined(names, " and ");
}

std::string count_words(std::size_t n) {
  return number(static_cast<double>(n), static_cast<int>(std::to_string(n).size()));
}

bool costs(const PickedGrid& g) {
  return std::any_of(g.best.begin(), g.best.end(),
                     [](const PickedDesign& d) { return std::isfinite(d.cost); });
}

std::string measure_words(const PickedGrid& g, const PickedDesign& d) {
  return g.by == studies::PickBy::cost ? fmt::format("a cost of {:.2f}", d.cost)
                                       : shown_mass(d.mass, g.inches);
}

std::string governs(const PickedDesign& d) {
  const studies::Judged& j = d.judged;
  return fmt::format("{}, {}{}", part_words(j.part), j.check,
                     j.load_case.empty() ? "" : ", " + j.load_case);
}

/// All of them in a full answer; else each a point better than the one before it.
std::vector<PickedDesign> shown_designs(const PickedGrid& g, bool full) {
  constexpr double kPoint = 0.01;
  if (full || g.best.empty()) return g.best;
  std::vector<PickedDesign> shown = {g.best.front()};
  for (const PickedDesign& d : g.best) {
    if (d.judged.utilization < shown.back().judged.utilization - kPoint) shown.push_back(d);
  }
  return shown;
}

/// The steels of each part, once where all designs have the same.
std::string steel_words(const PickedGrid& g) {
  std::vector<std::string> words;
  for (std::size_t p = 0; p < g.parts.size(); ++p) {
    std::vector<std::string> steels;
    for (const PickedDesign& d : g.best) {
      const std::string& steel = d.steels[p];
      if (std::find(steels.begin(), steels.end(), steel) == steels.end()) steels.push_back(steel);
    }
    words.push_back(fmt::format("{} {}", part_words(g.parts[p]), joined(steels, " or ")));
  }
  return "steel: " + joined(words, "; ");
}

TextTable table_of_best(const PickedGrid& g, const std::vector<PickedDesign>& shown) {
  TextTable table;
  table.columns = {{.numbers = true}, {.numbers = true, .gap = 1}};
  table.head = {{"mass", Tone::label}, {"utilization", Tone::label}};
  if (costs(g)) {
    table.columns.push_back({.numbers = true, .gap = 1});
    table.head.push_back({"cost", Tone::label});
  }
  for (const std::string& part : g.parts) {
    table.columns.push_back({.least_width = 14});
    table.head.push_back({part_words(part), Tone::label});
  }
  table.columns.push_back({.least_width = 12});
  table.head.push_back({"governed by", Tone::label});
  for (const PickedDesign& d : shown) {
    std::vector<TableCell>& row = table.rows.emplace_back();
    row = {{shown_mass(d.mass, g.inches)}, {percent(d.judged.utilization), Tone::within}};
    if (costs(g)) row.push_back({std::isfinite(d.cost) ? fmt::format("{:.2f}", d.cost) : "-"});
    for (const std::string& size : d.sizes) row.push_back({size});
    row.push_back({governs(d)});
  }
  return table;
}

/// How those shown do when the mill delivers as little as it may.
std::string minimum_words(const std::vector<PickedDesign>& shown, const PickedGrid& g,
                          const TextStyle& style) {
  std::vector<std::string> words;
  bool holds = true;
  for (const PickedDesign& d : shown) {
    if (!d.at_minimum) continue;
    const studies::Judged& thin = *d.at_minimum;
    holds = holds && thin.verdict == studies::Verdict::within;
    const std::string comes_to =
        thin.verdict == studies::Verdict::not_decided
            ? "not decided"
            : fmt::format("{}{}", percent(thin.utilization),
                          thin.verdict == studies::Verdict::over ? " OVER" : "");
    words.push_back(fmt::format("{} {}", measure_words(g, d), comes_to));
  }
  if (words.empty()) return "";
  return paragraph(
      fmt::format("sizes are nominal; with the least the mill may deliver: {}{}",
                  joined(words, ", "), holds ? "" : ". `sizes: minimum` in the case picks by that"),
      style.width, 0, 2);
}

/// What those shown hang on; once where it differs by its numbers alone.
std::string beware_words(const std::vector<PickedDesign>& shown, const PickedGrid& g,
                         const TextStyle& style) {
  std::string out;
  std::vector<std::string> said;
  for (const PickedDesign& d : shown) {
    for (const std::string& words : d.judged.beware) {
      std::string kind = words;
      kind.erase(std::remove_if(kind.begin(), kind.end(),
                                [](unsigned char c) { return std::isdigit(c) != 0; }),
                 kind.end());
      if (std::find(said.begin(), said.end(), kind) != said.end()) continue;
      said.push_back(kind);
      out += paragraph(fmt::format("{}{}: {}", checks::kCaveat, measure_words(g, d), words),
                       style.width, 0, 2);
    }
  }
  return out + paragraph("`check` with such sizes in the case says what else they hang on",
                         style.width, 0, 2);
}

struct GridHead {
  std::string head;
  Tone tone;
  std::string rest;
};

GridHead grid_head(const PickedGrid& g) {
  const std::string of =
      fmt::format("{} combinations of sizes for the {}", count_words(g.n_designs), grid_parts(g));
  if (g.best.empty()) {
    if (g.n_done() < g.n_designs) {
      return {"NOT DECIDED", Tone::undecided, "of the " + of + " none that was tried passes"};
    }
    return {"NONE PASSES", Tone::over, "none of the " + of + " holds"};
  }
  const char* less = g.by == studies::PickBy::cost ? "costs" : "weighs";
  const std::string tried = g.n_done() < g.n_designs
                                ? fmt::format("{} tried of the ", count_words(g.n_done()))
                                : std::string();
  return {"BEST COMBINATIONS", Tone::within,
          fmt::format("{} of the {}{}, from {} at {} of the limit to {} at {}; no other of them "
                      "{} less without being nearer to its limit",
                      g.best.size(), tried, of, measure_words(g, g.best.front()),
                      percent(g.best.front().judged.utilization), measure_words(g, g.best.back()),
                      percent(g.best.back().judged.utilization), less)};
}

}  // namespace

std::string grid_text(const PickedGrid& g, const TextStyle& style) {
  const GridHead first = grid_head(g);
  std::string out = opening(first.head, first.tone,
                            fmt::format("{}: {}. {}", first.head, first.rest,
                                        scope_sentence(g.scope, studies::checks_not_offered())),
                            style);
  for (std::size_t p = 0; p < g.parts.size(); ++p) {
    out += paragraph(fmt::format("now in the case, {}: {}", part_words(g.parts[p]), g.now[p]),
                     style.width, 0, 2);
  }
  if (!g.best.empty()) {
    const std::vector<PickedDesign> shown = shown_designs(g, style.full);
    out += laid_out(table_of_best(g, shown), style.width, style.color);
    out += paragraph(steel_words(g), style.width, 0, 2);
    if (shown.size() < g.best.size()) {
      out += paragraph(fmt::format("{} between them gain less than a point each (--all lists them)",
                                   g.best.size() - shown.size()),
                       style.width, 0, 2);
    }
    out += minimum_words(shown, g, style) + beware_words(shown, g, style);
  }
  out += paragraph(
      "utilization: 100 % = the limit; worst of these parts' checks over all load "
      "cases and stiffness sets; two within the same half percent count as equal",
      style.width, 0, 2);
  out += paragraph(
      fmt::format(
          "{} combinations solved in full; {} left where a load case and stiffness set, or "
          "first order beside combinations that were solved, had them over a limit or no "
          "better than a lighter one{}",
          count_words(g.in_full), count_words(g.in_part),
          g.no_sense == 0 ? "" : fmt::format("; {} make no sense", count_words(g.no_sense))),
      style.width, 0, 2);
  if (!g.others_over.empty()) {
    std::vector<std::string> names;
    for (const std::string& name : g.others_over) names.push_back(part_words(name));
    out += paragraph(fmt::format("Over its limit or not decided as drawn, and not counted here: "
                                 "{} (`check` says why).",
                                 joined(names, ", ")),
                     style.width, 0, 2);
  }
  if (g.n_unpriced > 0) {
    out += paragraph(fmt::format("{} sizes have no price and are left out", g.n_unpriced),
                     style.width, 0, 2);
  }
  out += stopped_words(g.n_done(), g.n_designs, "combinations", style);
  if (style.full && !g.assumed.empty()) {
    out += heading("Assumed", style);
    for (const parts::Assumption& a : g.assumed) {
      out += paragraph(fmt::format("{}: {}  [{}]", a.key, a.value, a.basis), style.width, 2, 2);
    }
  }
  out += stacks_line(g.scope, style) + caution_lines(style);
  if (!style.full && !style.command_for_more.empty()) {
    out += paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  return out;
}

}  // namespace report
