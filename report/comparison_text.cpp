#include "report/comparison_text.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/conclusion_text.hpp"
#include "report/stopped_words.hpp"
#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using checks::Measure;
using studies::Comparison;
using studies::Figures;
using studies::Range;

constexpr double kFarAway = 100.0;  // multiples of a load from there on are not given in digits
constexpr const char* kNone = "-";

/// One quantity of a design: in words, and as a range that ratios are taken of.
struct Quantity {
  std::string name;
  std::string words;
  Range range;  // unset: no ratio is shown
  Tone tone = Tone::plain;
};

Range single(double value) {
  return {value, value};
}

bool known(const Range& range) {
  return std::isfinite(range.low) && std::isfinite(range.high);
}

Range ratio(const Range& of, const Range& to) {
  if (!known(of) || !known(to) || to.low == 0.0 || to.high == 0.0) return {};
  const double low = of.low / to.low;
  const double high = of.high / to.high;
  return {std::min(low, high), std::max(low, high)};
}

std::string worst_words(const Figures& f) {
  if (f.worst.empty()) return "";
  if (!std::isfinite(f.worst_utilization)) {
    return fmt::format("{}, not decided", part_words(f.worst));
  }
  return fmt::format("{} {}", part_words(f.worst), percent(f.worst_utilization));
}

/// The worst part alone, for a line that has no room for the check.
std::string worst_part_words(const Figures& f) {
  const std::string part = part_words(f.worst.substr(0, f.worst.rfind(", ")));
  if (f.worst.empty()) return part;
  return std::isfinite(f.worst_utilization)
             ? fmt::format("{} {}", part, percent(f.worst_utilization))
             : fmt::format("{}, not decided", part);
}

/// What is not known of a design is left out with a dash: a frame without a bracket has no root.
std::string or_dash(bool is_known, const std::string& words) {
  return is_known ? words : kNone;
}

/// The parts that any of the designs has, in the order of the first that has them.
std::vector<std::string> parts_compared(const Comparison& c) {
  std::vector<std::string> names;
  const auto add = [&](const Figures& f) {
    for (const studies::PartUtilization& p : f.parts) {
      if (std::find(names.begin(), names.end(), p.part) == names.end()) names.push_back(p.part);
    }
  };
  add(c.base);
  for (const Figures& f : c.variants) add(f);
  return names;
}

Quantity part_quantity(const Figures& f, const std::string& part) {
  const auto found =
      std::find_if(f.parts.begin(), f.parts.end(),
                   [&](const studies::PartUtilization& p) { return p.part == part; });
  if (found == f.parts.end()) return {part_words(part), kNone, {}};
  if (!std::isfinite(found->utilization)) {
    return {part_words(part), "not decided", {}, Tone::undecided};
  }
  return {part_words(part), fmt::format("{} {}", percent(found->utilization), found->check),
          single(found->utilization), found->utilization > 1.0 ? Tone::over : Tone::within};
}

std::vector<Quantity> quantities(const Figures& f, const Comparison& c) {
  const bool inches = c.inches;
  std::vector<Quantity> all = {
      {"verdict", verdict_word(f.verdict), {}, verdict_tone(f.verdict)},
      {"worst", or_dash(!f.worst.empty(), worst_words(f)), single(f.worst_utilization)}};
  for (const std::string& part : parts_compared(c)) all.push_back(part_quantity(f, part));
  const std::vector<Quantity> figures = {
      {"tip deflection",
       or_dash(known(f.tip_deflection), shown_range(f.tip_deflection, Measure::length, inches)),
       f.tip_deflection},
      {"root moment",
       or_dash(known(f.root_moment), shown_range(f.root_moment, Measure::moment, inches)),
       f.root_moment},
      {"root weld", or_dash(std::isfinite(f.weld_utilization), percent(f.weld_utilization)),
       single(f.weld_utilization)},
      {"worst stress",
       or_dash(std::isfinite(f.worst_stress),
               fmt::format("{} {}", shown(f.worst_stress, Measure::stress, inches),
                           part_words(f.worst_stress_part))),
       single(f.worst_stress)},
      {"buckles at",
       or_dash(std::isfinite(f.critical_factor), multiple(f.critical_factor) + " x load"),
       f.critical_factor < kFarAway ? single(f.critical_factor) : Range{}},
      {"mass", or_dash(std::isfinite(f.mass), shown_mass(f.mass, inches)), single(f.mass)},
  };
  all.insert(all.end(), figures.begin(), figures.end());
  return all;
}

/// "2.00 x base", or nothing.
std::string ratio_words(const Quantity& of, const Quantity& to) {
  const Range r = ratio(of.range, to.range);
  return known(r) ? ratio_range(r) + " x base" : "";
}

/// The quantities that any of the designs has.
std::vector<std::size_t> rows_to_show(const Comparison& c) {
  std::vector<std::vector<Quantity>> designs = {quantities(c.base, c)};
  for (const Figures& f : c.variants) designs.push_back(quantities(f, c));
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < designs.front().size(); ++i) {
    if (std::any_of(designs.begin(), designs.end(),
                    [&](const std::vector<Quantity>& d) { return d[i].words != kNone; })) {
      rows.push_back(i);
    }
  }
  return rows;
}

/// Rows = quantities, columns = base and variants.
TextTable side_by_side(const Comparison& c) {
  const std::vector<Quantity> base = quantities(c.base, c);
  TextTable table;
  table.columns.push_back({.least_width = 12});
  table.head = {{"", Tone::label}};
  const auto add_design = [&](const Figures& f) {
    table.columns.push_back({.least_width = 12});
    table.head.push_back({f.name.empty() ? "base" : f.name, Tone::label});
  };
  add_design(c.base);
  const std::vector<std::size_t> rows = rows_to_show(c);
  for (const std::size_t i : rows) {
    table.rows.push_back({{base[i].name}, {base[i].words, base[i].tone}});
  }
  for (const Figures& f : c.variants) {
    add_design(f);
    const std::vector<Quantity> its = quantities(f, c);
    for (std::size_t row = 0; row < rows.size(); ++row) {
      const std::size_t i = rows[row];
      const std::string times = ratio_words(its[i], base[i]);
      table.rows[row].push_back(
          {its[i].words + (times.empty() ? "" : " (" + times + ")"), its[i].tone});
    }
  }
  return table;
}

/// One block a variant: quantity, base, variant, ratio.
std::string blocks(const Comparison& c, const TextStyle& style) {
  const std::vector<Quantity> base = quantities(c.base, c);
  std::string out;
  for (const Figures& f : c.variants) {
    TextTable table;
    table.columns = {
        {.least_width = 14}, {.least_width = 12}, {.least_width = 12}, {.least_width = 12}};
    table.head = {{"", Tone::label},
                  {c.base.name.empty() ? "base" : c.base.name, Tone::label},
                  {f.name, Tone::label},
                  {"", Tone::label}};
    const std::vector<Quantity> its = quantities(f, c);
    for (const std::size_t i : rows_to_show(c)) {
      table.rows.push_back({{its[i].name},
                            {base[i].words, base[i].tone},
                            {its[i].words, its[i].tone},
                            {ratio_words(its[i], base[i])}});
    }
    if (!out.empty()) out += '\n';
    out += laid_out(table, style.width, style.color);
  }
  return out;
}

/// What to beware of, and what is missing.
std::string beside_the_table(const Comparison& c, const TextStyle& style) {
  std::string out;
  for (const Figures& f : c.variants) {
    for (const std::string& words : f.beware) {
      out += paragraph(fmt::format("beware, {}: {}", f.name, words), style.width, 0, 2);
    }
  }
  for (const std::string& failure : c.failures) {
    out += paragraph("could not be run: " + failure, style.width, 0, 2);
  }
  const std::size_t n_done = 1 + c.variants.size() + c.failures.size();
  out += stopped_words(n_done, n_done + c.unfinished.size(), "designs", style);
  return out;
}

std::string benefit_line(const Comparison& c, const TextStyle& style) {
  const std::optional<std::string> words = brace_benefit(c);
  return words ? paragraph(*words, style.width, 0, 2) : "";
}

}  // namespace

std::string comparison_body(const Comparison& c, const TextStyle& style) {
  const TextTable table = side_by_side(c);
  std::string out = natural_width(table) <= style.width ? laid_out(table, style.width, style.color)
                                                        : blocks(c, style);
  out += paragraph(
      "ranges run over the stiffness of rail, brace end and bushings; 100 % = the "
      "limit; buckles at: lowest multiple of a load case",
      style.width, 0, 2);
  for (std::size_t i = 0; i < c.variants.size(); ++i) {
    out += paragraph(conclusion(c, i), style.width, 0, 2);
  }
  return out + beside_the_table(c, style);
}

std::string variant_lines(const Comparison& c, const TextStyle& style) {
  // A frame without a bracket has no root moment to show.
  const bool has_root = known(c.base.root_moment) ||
                        std::any_of(c.variants.begin(), c.variants.end(),
                                    [](const Figures& f) { return known(f.root_moment); });
  TextTable table;
  table.columns = {{.least_width = 12}, {.least_width = 7}, {.least_width = 14}};
  table.head = {{"variant", Tone::label}, {"verdict", Tone::label}, {"worst", Tone::label}};
  if (has_root) {
    table.columns.insert(table.columns.end(), {{.least_width = 14}, {.least_width = 8}});
    table.head.push_back({"root moment", Tone::label});
    table.head.push_back({"x base", Tone::label});
  }
  const auto add_row = [&](const Figures& f, const std::string& times) {
    table.rows.push_back(
        {{f.name}, {verdict_word(f.verdict), verdict_tone(f.verdict)}, {worst_part_words(f)}});
    if (!has_root) return;
    table.rows.back().push_back(
        {or_dash(known(f.root_moment), shown_range(f.root_moment, Measure::moment, c.inches))});
    table.rows.back().push_back({times});
  };
  add_row(c.base, "");
  for (const Figures& f : c.variants) {
    const Range r = ratio(f.root_moment, c.base.root_moment);
    add_row(f, or_dash(known(r), ratio_range(r)));
  }
  return laid_out(table, style.width, style.color) + benefit_line(c, style) +
         beside_the_table(c, style);
}

std::string comparison_text(const Comparison& c, const TextStyle& style) {
  const std::string base = c.base.name.empty() ? "base" : c.base.name;
  std::string first = verdict_head(c.base.verdict);
  std::string rest = ": " + base + (c.base.worst.empty() ? "" : ", worst " + worst_words(c.base));
  rest += ". " + scope_sentence(c.scope, studies::checks_not_offered());
  std::string out = paragraph(first + rest, style.width);
  out = toned(first, verdict_tone(c.base.verdict), style.color) + out.substr(first.size());
  return out + comparison_body(c, style) + stacks_line(c.scope, style) + caution_lines(style);
}

}  // namespace report
