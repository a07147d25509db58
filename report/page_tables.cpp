#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/comparison_text.hpp"
#include "report/conclusion_text.hpp"
#include "report/failure_order_text.hpp"
#include "report/html_table.hpp"
#include "report/html_text.hpp"
#include "report/life_text.hpp"
#include "report/page_parts.hpp"
#include "report/remedy_text.hpp"
#include "report/units_shown.hpp"
#include "report/utilization_band.hpp"

/// The tables and charts of the page.
namespace report {
namespace {

using checks::Finding;
using checks::Measure;
using studies::Answer;
using studies::Figures;

std::string state_html(checks::State state) {
  return fmt::format("<span class=\"state {}\">{}</span>", tone_class(state_tone(state)),
                     state_word(state));
}

std::string number_html(const std::string& words, const std::string& name, double value) {
  return fmt::format("<span data-{}=\"{}\">{}</span>", name, exact(value), escaped(words));
}

std::string mass_of(const Answer& answer, const std::string& part) {
  for (const studies::PartMass& m : answer.masses) {
    if (m.part == part) return number_html(shown_mass(m.mass, answer.inches), "mass", m.mass);
  }
  return "&ndash;";
}

/// What gives first, and what was tried against it.
std::string what_and_remedy(const Answer& answer, const Finding& f) {
  const std::string remedy = remedy_words(answer, f);
  return escaped(what_gives_briefly(f)) +
         (remedy.empty() ? ""
                         : fmt::format("<br><span class=\"mends\">{}</span>", escaped(remedy)));
}

std::string parts_table(const Answer& answer) {
  HtmlTable table{.caption =
                      "Each part by what brings it nearest to its limit, over all load cases "
                      "and stiffness sets",
                  .head = {"part", "#utilization", "state", "governed by", "worst case",
                           "#safety factor", "#asked", "#mass"}};
  std::vector<std::string> seen;
  for (const Finding& f : answer.findings) {
    if (std::find(seen.begin(), seen.end(), f.part) != seen.end()) continue;
    const auto over =
        std::find_if(answer.findings.begin(), answer.findings.end(), [&](const Finding& other) {
          return other.part == f.part && other.state == checks::State::over;
        });
    const Finding& worst =
        f.state == checks::State::undecided && over != answer.findings.end() ? *over : f;
    seen.push_back(f.part);
    const bool decided = worst.state != checks::State::undecided;
    table.rows.push_back(
        {{fmt::format("<button type=\"button\" class=\"plain-button\" data-choose=\"{}\">{}"
                      "</button>",
                      escaped(f.part), escaped(part_words(f.part))),
          decided ? number_html(percent(worst.utilization()), "utilization", worst.utilization())
                  : "?",
          state_html(worst.state), what_and_remedy(answer, worst), escaped(worst.load_case),
          decided ? number_html(multiple(worst.safety_factor), "safety-factor", worst.safety_factor)
                  : "?",
          number(worst.required), mass_of(answer, f.part)},
         fmt::format("data-part=\"{}\"", escaped(f.part))});
  }
  return html(table) +
         "<p class=\"glossary\">utilization: 100 % = the limit; safety factor: multiple of the "
         "load "
         "at which it just holds; asked: factor required; combined: push or pull with "
         "bending</p>\n";
}

/// A cell is a button: it shows its part in its load case.
std::string heat_cell(const studies::PartInCase* one, const std::string& part,
                      const std::string& load_case, std::size_t index) {
  if (one == nullptr) {
    return fmt::format("<td class=\"none\" title=\"{}, {}: asked nothing\">&ndash;</td>",
                       escaped(part_words(part)), escaped(load_case));
  }
  const bool decided = !std::isnan(one->utilization);
  const std::string value = decided ? percent(one->utilization) : "?";
  const std::string words = fmt::format("{}, {}: {}", escaped(part_words(part)), escaped(load_case),
                                        decided ? value : "not decided");
  return fmt::format(
      "<td class=\"u{}{}\"{}><button type=\"button\" data-choose=\"{}\" data-case=\"{}\" "
      "title=\"{}\" aria-label=\"{}\">{}</button></td>",
      utilization_band(one->utilization), one->found || !decided ? " found" : "",
      decided ? fmt::format(" data-utilization=\"{}\"", exact(one->utilization)) : "",
      escaped(part), index, words, words, value);
}

std::string heat_map(const Answer& answer) {
  const studies::Drawing& drawing = *answer.drawing;
  constexpr std::size_t kMany = 6;
  constexpr const char* kCaption =
      "Utilization of each part in each load case, at its worst stiffness set";
  std::string out = fmt::format(
      "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"{0}\">\n"
      "<table class=\"heat{1}\"><caption><span>{0}</span></caption>\n<thead><tr><th "
      "scope=\"col\">part</th>",
      kCaption, drawing.cases.size() > kMany ? " many" : "");
  for (const studies::DrawnCase& c : drawing.cases) {
    out +=
        fmt::format("<th scope=\"col\" class=\"case\"><span>{}</span></th>", escaped(c.load_case));
  }
  out += "</tr></thead>\n<tbody>\n";
  std::vector<std::string> parts;
  for (const studies::PartInCase& p : drawing.utilization) {
    if (std::find(parts.begin(), parts.end(), p.part) == parts.end()) parts.push_back(p.part);
  }
  for (const std::string& part : parts) {
    out += fmt::format("<tr><th scope=\"row\">{}</th>", escaped(part_words(part)));
    for (std::size_t i = 0; i < drawing.cases.size(); ++i) {
      const studies::DrawnCase& c = drawing.cases[i];
      const auto found = std::find_if(drawing.utilization.begin(), drawing.utilization.end(),
                                      [&](const studies::PartInCase& p) {
                                        return p.part == part && p.load_case == c.load_case;
                                      });
      out +=
          heat_cell(found == drawing.utilization.end() ? nullptr : &*found, part, c.load_case, i);
    }
    out += "</tr>\n";
  }
  return out +
         "</tbody></table></div>\n<p class=\"note\">Underlined: a finding of the calculation "
         "sheet, which follows the load up to the limit. The others: demand over capacity at the "
         "load itself, times the factor asked for; they fall short where the frame softens under "
         "more load. The findings decide.<span class=\"needs-script\"> A cell shows its part in "
         "its load case above.</span></p>\n";
}

/// A bar from `low` to `high` on a scale that ends at `end`, the limit as a line where there is
/// one.
std::string bar(double low, double high, double end, double limit = base::kUnset) {
  if (!std::isfinite(low) || !std::isfinite(high) || !(end > 0.0)) return "";
  const auto at = [&](double value) { return std::clamp(100.0 * value / end, 0.0, 100.0); };
  const double width = std::max(0.8, at(high) - at(low));
  const std::string line =
      std::isnan(limit) ? "" : fmt::format("<b style=\"left:{:.1f}%\"></b>", at(limit));
  return fmt::format(
      "<span class=\"bar\" aria-hidden=\"true\"><i{} style=\"left:{:.1f}%;width:{:.1f}%\"></i>{}"
      "</span>",
      high > limit ? " class=\"over\"" : "", std::min(at(low), 100.0 - width), width, line);
}

/// The ends of the scales that bars of all designs share.
struct Scales {
  double utilization = 1.2;
  double moment = 0.0;
  double deflection = 0.0;
  double mass = 0.0;

  void take(const Figures& f) {
    const auto raise = [](double& end, double value) {
      if (std::isfinite(value)) end = std::max(end, value);
    };
    raise(utilization, f.worst_utilization);
    raise(moment, f.root_moment.high);
    raise(deflection, f.tip_deflection.high);
    raise(mass, f.mass);
  }
};

HtmlRow design_row(const Figures& f, const Scales& scales, bool inches) {
  const auto range = [&](const studies::Range& r, Measure measure, double end) -> std::string {
    if (!std::isfinite(r.low) || !std::isfinite(r.high)) return "&ndash;";
    return escaped(shown_range(r, measure, inches)) + bar(r.low, r.high, end);
  };
  const bool decided = std::isfinite(f.worst_utilization);
  return {{escaped(f.name),
           fmt::format("<span class=\"state {}\">{}</span>", tone_class(verdict_tone(f.verdict)),
                       verdict_word(f.verdict)),
           escaped(part_words(f.worst)) +
               (decided ? ", " + number_html(percent(f.worst_utilization), "utilization",
                                             f.worst_utilization)
                        : ", not decided") +
               bar(0.0, f.worst_utilization, scales.utilization, 1.0),
           range(f.root_moment, Measure::moment, scales.moment),
           range(f.tip_deflection, Measure::length, scales.deflection),
           std::isfinite(f.critical_factor) ? multiple(f.critical_factor) + " x load" : "&ndash;",
           escaped(shown_mass(f.mass, inches)) + bar(0.0, f.mass, scales.mass)}};
}

std::string comparison_html(const studies::Comparison& c) {
  Scales scales;
  scales.take(c.base);
  for (const Figures& f : c.variants) scales.take(f);
  HtmlTable table{.caption =
                      "As drawn and its variants; ranges run over the stiffness of rail, "
                      "brace end and bushings",
                  .head = {"design", "verdict", "worst (line: the limit)", "root moment",
                           "tip deflection", "buckles at", "mass"}};
  table.rows.push_back(design_row(c.base, scales, c.inches));
  for (const Figures& f : c.variants) table.rows.push_back(design_row(f, scales, c.inches));
  std::string out = html(table);
  if (const auto benefit = brace_benefit(c)) {
    out += fmt::format("<p>{}</p>\n", escaped(*benefit));
  }
  if (!c.failures.empty()) out += "<p>could not be run:</p>\n" + html_list(c.failures);
  return out;
}

std::string diagrams(const studies::Drawing& drawing) {
  std::string pieces;
  for (std::size_t i = 0; i < drawing.pieces.size(); ++i) {
    const studies::DrawnPiece& p = drawing.pieces[i];
    pieces += fmt::format("<option value=\"{}\">{}{}</option>", i, escaped(part_words(p.part)),
                          p.name.empty() ? "" : ", " + escaped(p.name));
  }
  std::string cases;
  for (std::size_t i = 0; i < drawing.cases.size(); ++i) {
    cases +=
        fmt::format("<option value=\"{}\">{}</option>", i, escaped(drawing.cases[i].load_case));
  }
  return fmt::format(
      "<p class=\"without-script\">The diagrams are drawn by the page's script; the forces on the "
      "ends of each part stand in the calculation sheet.</p>\n"
      "<div class=\"needs-script\"><div class=\"controls\">"
      "<label>part<select id=\"choose-piece\">{}</select></label>\n"
      "<label>load case<select id=\"diagram-case\">{}</select></label></div>\n"
      "<div id=\"diagrams\" class=\"charts\"></div>\n"
      "<p class=\"note\">Resultants on the cut, in the member's own axes, from its first end to "
      "its "
      "far end, at the load itself with the stiffness set in which the load case is worst; pull is "
      "positive.</p></div>\n",
      pieces, cases);
}

HtmlRow buckling_row(const studies::CriticalFactor& c, const char* how) {
  return {{escaped(part_words(c.what)), how, number_html(multiple(c.factor), "factor", c.factor),
           escaped(c.load_case), escaped(c.set)}};
}

std::string buckling_html(const Answer& answer) {
  if (answer.critical.empty() && answer.own.empty()) {
    return "<p>Nothing buckles in the load cases solved.</p>\n";
  }
  HtmlTable table{.caption =
                      "Multiples of a load case at which the assembly, or a part alone "
                      "between its joints, buckles; lowest over all load cases",
                  .head = {"what", "how", "#at", "load case", "stiffness set"}};
  for (const auto& c : answer.critical) {
    table.rows.push_back(buckling_row(c, c.axle_tips ? "the whole axle" : "assembled"));
  }
  for (const auto& c : answer.own) table.rows.push_back(buckling_row(c, "alone"));
  return html(table) +
         "<p class=\"note needs-script\">Choose a load case above the drawing, then a buckling "
         "shape "
         "to see it.</p>\n";
}

std::string life_html(const studies::Life& life, bool inches) {
  HtmlTable table{.caption = "Places in the order of their estimated life; no verdict rests on it",
                  .head = {"part", "place", "detail", "#category", "life", "source"}};
  constexpr std::size_t kMost = 12;
  for (std::size_t i = 0; i < std::min(kMost, life.places.size()); ++i) {
    const studies::LifeAtPlace& p = life.places[i];
    table.rows.push_back(
        {{escaped(part_words(p.part)), escaped(p.where), escaped(p.detail),
          escaped(shown(p.category, Measure::stress, inches)),
          number_html(life_words(p, inches), "distance", p.distance), escaped(p.source)}});
  }
  return fmt::format(
             "<p>Indicative only: {}, a third and three times of the shortest life "
             "(proposal, no source). Duty: {}.</p>\n",
             life_band_words(life, inches), escaped(life.duty_basis)) +
         html(table) +
         (life.places.size() > kMost
              ? fmt::format("<p class=\"note\">and {} more places that go farther</p>\n",
                            life.places.size() - kMost)
              : "");
}

std::string orders_html(const std::vector<studies::FailureOrder>& orders) {
  std::string out =
      "<p class=\"note\">About, in multiples of each load case; bars and tubes with 1.25 x their "
      "least yield strength, as real ones are stronger than their certificate (gamma_ov of EN "
      "1998-1 6.2(3), from memory); welds, bolts, joints and brackets at their nominal one.</p>\n";
  HtmlTable table{.caption = "What gives first, second, third", .head = {"load case", "order"}};
  for (const studies::FailureOrder& order : orders) {
    table.rows.push_back(
        {{escaped(order.load_case),
          std::string(order.breaks_first ? "<strong>gives before a tube bends:</strong> " : "") +
              escaped(order_words(order))}});
  }
  return out + html(table);
}

}  // namespace

std::string page_tables(const Answer& answer, const Sheet& sheet) {
  const studies::Drawing& drawing = *answer.drawing;
  std::string out;
  if (!answer.findings.empty()) out += html_section("parts", "Parts", parts_table(answer));
  if (!drawing.utilization.empty()) {
    out += html_section("heat-map", "Parts in each load case", heat_map(answer));
  }
  if (answer.comparison) {
    out += html_section("comparison", "Variants", comparison_html(*answer.comparison));
  }
  if (sheet.picked) {
    out += html_section("pick", "Stock sizes", pick_chart(*sheet.picked));
  }
  if (!drawing.cases.empty()) {
    out += html_section("forces", "Forces along a part", diagrams(drawing));
  }
  out += html_section("buckling", "Buckling", buckling_html(answer));
  if (answer.life && !answer.life->places.empty()) {
    out +=
        html_section("fatigue", "Fatigue, indicative only", life_html(*answer.life, answer.inches));
  }
  if (!answer.failure_orders.empty()) {
    out += html_section("order", "Order of failure", orders_html(answer.failure_orders));
  }
  return out;
}

}  // namespace report
