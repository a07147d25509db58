#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/html_table.hpp"
#include "report/html_text.hpp"
#include "report/page_parts.hpp"
#include "report/units_shown.hpp"
#include "studies/sized_part.hpp"

/// Stock sizes of a part: mass against utilization.
namespace report {
namespace {

using studies::Candidate;
using studies::Picked;

// Of the drawing, in its own units.
constexpr double kChartWidth = 480.0;
constexpr double kChartHeight = 290.0;
constexpr double kLeft = 58.0;
constexpr double kRight = 14.0;
constexpr double kTop = 16.0;
constexpr double kBottom = 42.0;
// Above it a size is drawn at the upper edge.
constexpr double kHighest = 2.0;

struct ChartScale {
  double low = 0.0;   ///< [kg/m]
  double high = 1.0;  ///< [kg/m]

  [[nodiscard]] double x(double mass) const {
    return kLeft + (kChartWidth - kLeft - kRight) * (mass - low) / (high - low);
  }
  [[nodiscard]] static double y(double utilization) {
    const double shown = std::clamp(utilization, 0.0, kHighest);
    return kChartHeight - kBottom - (kChartHeight - kTop - kBottom) * shown / kHighest;
  }
};

ChartScale scale_of(const std::vector<const Candidate*>& shown) {
  ChartScale out{shown.front()->mass_per_length, shown.front()->mass_per_length};
  for (const Candidate* c : shown) {
    out.low = std::min(out.low, c->mass_per_length);
    out.high = std::max(out.high, c->mass_per_length);
  }
  const double spare = std::max(0.05 * (out.high - out.low), 0.02 * out.high);
  return {std::max(0.0, out.low - spare), out.high + spare};
}

std::string chart_words(const Candidate& c, bool inches) {
  return fmt::format("{}, {}, {}, {}", c.item.label,
                     shown_mass_per_length(c.mass_per_length, inches),
                     percent(c.judged.utilization), c.judged.check);
}

bool passes(const Candidate& c) {
  return c.judged.verdict == studies::Verdict::within;
}

std::string mark(const Candidate& c, const ChartScale& scale, bool inches) {
  const double x = scale.x(c.mass_per_length);
  const double y = ChartScale::y(c.judged.utilization);
  const bool bar = std::holds_alternative<sections::RoundBar>(c.item.shape) ||
                   std::holds_alternative<sections::FlatBar>(c.item.shape);
  const std::string attributes = fmt::format(
      "class=\"{}\" data-mass=\"{}\" data-utilization=\"{}\"", passes(c) ? "passes" : "fails",
      exact(c.mass_per_length), exact(c.judged.utilization));
  const std::string title = "<title>" + escaped(chart_words(c, inches)) + "</title>";
  if (bar) {
    return fmt::format("<rect {} x=\"{:.1f}\" y=\"{:.1f}\" width=\"8\" height=\"8\">{}</rect>\n",
                       attributes, x - 4.0, y - 4.0, title);
  }
  return fmt::format("<circle {} cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"4\">{}</circle>\n", attributes, x,
                     y, title);
}

/// Tubes of one outside, joined in the order of their walls.
std::string families(const std::vector<const Candidate*>& shown, const ChartScale& scale) {
  std::map<std::string, std::string> lines;
  for (const Candidate* c : shown) {
    const auto* tube = std::get_if<sections::RoundTube>(&c->item.shape);
    if (tube == nullptr || c->judged.utilization > kHighest) continue;
    std::string& line = lines[fmt::format("{:.6f}", tube->outside)];
    line += fmt::format("{}{:.1f} {:.1f}", line.empty() ? "M" : "L", scale.x(c->mass_per_length),
                        ChartScale::y(c->judged.utilization));
  }
  std::string out;
  for (const auto& [outside, line] : lines) {
    out += fmt::format("<path class=\"family\" d=\"{}\"/>\n", line);
  }
  return out;
}

std::string axes(const ChartScale& scale, bool inches) {
  std::string out;
  for (const double u : {0.0, 0.5, 1.0, 1.5, 2.0}) {
    out += fmt::format(
        "<path class=\"{0}\" d=\"M{1} {2:.1f}H{3}\"/><text x=\"{4}\" y=\"{5:.1f}\" "
        "text-anchor=\"end\">{6:.0f} %</text>\n",
        u == 1.0 ? "limit" : "zero", kLeft, ChartScale::y(u), kChartWidth - kRight, kLeft - 6.0,
        ChartScale::y(u) + 4.0, 100.0 * u);
  }
  for (const double part : {0.0, 0.5, 1.0}) {
    const double mass = scale.low + part * (scale.high - scale.low);
    out += fmt::format("<text x=\"{:.1f}\" y=\"{}\" text-anchor=\"{}\">{}</text>\n", scale.x(mass),
                       kChartHeight - 22.0,
                       part == 0.0   ? "start"
                       : part == 1.0 ? "end"
                                     : "middle",
                       escaped(shown_mass_per_length(mass, inches)));
  }
  return out + fmt::format(
                   "<text x=\"{}\" y=\"{:.1f}\" text-anchor=\"end\" class=\"limit-name\">the "
                   "limit</text>\n",
                   kChartWidth - kRight - 2.0, ChartScale::y(1.0) - 5.0);
}

HtmlRow chart_row(const std::string& what, const Candidate& c, bool inches) {
  return {
      {what, escaped(c.item.label), escaped(shown_mass_per_length(c.mass_per_length, inches)),
       percent(c.judged.utilization),
       escaped(c.judged.check + (c.judged.load_case.empty() ? "" : ", ") + c.judged.load_case)}};
}

}  // namespace

std::string pick_chart(const Picked& picked) {
  std::vector<const Candidate*> shown;
  for (const Candidate& c : picked.tried) {
    if (std::isfinite(c.judged.utilization)) shown.push_back(&c);
  }
  if (shown.empty()) return "";
  const ChartScale scale = scale_of(shown);
  std::string marks = axes(scale, picked.inches) + families(shown, scale);
  for (const Candidate* c : shown) marks += mark(*c, scale, picked.inches);
  const std::string name =
      fmt::format("Stock sizes of the {}: mass against utilization", part_words(picked.part));
  std::string out = fmt::format(
      "<figure class=\"pick-chart\"><figcaption>{0}; filled: all checks that count hold; square: a "
      "bar; a line joins tubes of one outside; over 200 % at the upper edge. Now: {1}.</figcaption>"
      "\n<svg viewBox=\"0 0 {2} {3}\" role=\"img\" aria-label=\"{0}\">\n{4}</svg></figure>\n",
      escaped(name), escaped(picked.now), kChartWidth, kChartHeight, marks);
  HtmlTable table{.caption = "Sizes nearest to the limit, each solved in all load cases",
                  .head = {"which", "size", "#mass", "#utilization", "governed by"}};
  if (picked.next_down) {
    table.rows.push_back(chart_row("next lighter", *picked.next_down, picked.inches));
  }
  if (picked.lightest) {
    table.rows.push_back(
        chart_row("lightest of those shown that passes", *picked.lightest, picked.inches));
  }
  if (picked.next_up) {
    table.rows.push_back(chart_row("next that passes", *picked.next_up, picked.inches));
  }
  if (table.rows.empty()) return out + "<p>None of them passes.</p>\n";
  return out + html(table);
}

}  // namespace report
