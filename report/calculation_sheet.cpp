#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "checks/caveat.hpp"
#include "report/answer_words.hpp"
#include "report/balance_text.hpp"
#include "report/digest.hpp"
#include "report/droop_text.hpp"
#include "report/html_table.hpp"
#include "report/html_text.hpp"
#include "report/page_parts.hpp"
#include "report/posture_text.hpp"
#include "report/remedy_text.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

/// The part of the page that an engineer follows line by line.
namespace report {
namespace {

using checks::Finding;
using studies::Answer;

std::string sheet_section(const std::string& heading, const std::string& content) {
  return fmt::format("<h3>{}</h3>\n{}", escaped(heading), content);
}

std::string sheet_line(const std::string& words) {
  return fmt::format("<p>{}</p>\n", escaped(words));
}

std::string input_html(const Sheet& sheet) {
  return sheet_line(fmt::format("{}, {} bytes, SHA-256 {}", sheet.case_name, sheet.case_text.size(),
                                digest(sheet.case_text))) +
         fmt::format("<pre>{}</pre>\n", escaped(sheet.case_text));
}

std::string assumed_html(const Answer& answer) {
  HtmlTable table{.caption = "Values that the case file leaves open, and on what they rest",
                  .head = {"key", "value", "basis"}};
  for (const parts::Assumption& a : answer.assumed) {
    table.rows.push_back({{escaped(a.key), escaped(a.value), escaped(a.basis)}});
  }
  return html(table);
}

std::string balance_html(const studies::Balance& balance, bool inches) {
  HtmlTable table{.caption = fmt::format("{}; {}; left over: {:.1e} of the largest",
                                         balance.load_case, balance.set, balance.open),
                  .head = {"what", "force (x, y, z)", "moment (x, y, z)"}};
  const auto add = [&](const char* how, const std::vector<studies::BalanceRow>& rows) {
    for (const studies::BalanceRow& row : rows) {
      table.rows.push_back(
          {{fmt::format("{}: {}", how, escaped(row.what)),
            escaped(three_shown(row.force, checks::Measure::force, inches)),
            is_any(row.moment) ? escaped(three_shown(row.moment, checks::Measure::moment, inches))
                               : "0"}});
    }
  };
  add("acts", balance.acts);
  add("holds", balance.holds);
  return html(table);
}

std::string balances_html(const Answer& answer) {
  if (answer.balances.empty()) return "";
  std::string out = sheet_line(
      "What acts on the parts and what holds them, before anything moves; moments about " +
      answer.balances.front().about + ".");
  for (const studies::Balance& balance : answer.balances) {
    out += balance_html(balance, answer.inches);
  }
  return sheet_section("Forces on the parts in each load case, in balance", out);
}

std::string worked_html(const std::vector<checks::WorkedLine>& lines, bool inches) {
  if (lines.empty()) return "";
  std::string out = "<div class=\"worked\">\n";
  for (const checks::WorkedLine& line : lines) {
    const std::string numbers = numbers_of(line, inches);
    out += fmt::format("<div>{}", escaped(line.symbols));
    if (!numbers.empty()) {
      out += fmt::format("<div class=\"numbers\">= {}</div>", escaped(numbers));
    }
    out += "</div>\n";
  }
  return out + "</div>\n";
}

std::string origin_html(const Finding& f, bool inches) {
  const checks::Origin& origin = f.origin;
  if (origin.method.empty()) return "";
  const std::string at = origin.multiple == 1.0
                             ? "at the load itself"
                             : fmt::format("at {} times the load", multiple(origin.multiple));
  std::string out = sheet_line(fmt::format("Solved by {}, {}.", origin.method, at));
  if (origin.forces.empty()) return out;
  std::string ends;
  for (const checks::WorkedLine& line : origin.forces) {
    ends += fmt::format("<div>{}: {}</div>\n", escaped(line.symbols),
                        escaped(numbers_of(line, inches)));
  }
  return out +
         sheet_line(
             "What acts on its ends, in its own axes (x along it from its first end, y and z "
             "across; beyond first order the lines below have them turned with it):") +
         fmt::format("<div class=\"worked\">\n{}</div>\n", ends);
}

std::string result_html(const Finding& f, bool inches) {
  if (f.state == checks::State::undecided) {
    return sheet_line(
        fmt::format("not decided: {}; safety factor asked {}", f.reason, number(f.required)));
  }
  std::string out = "<p>";
  if (std::isfinite(f.demand) && std::isfinite(f.capacity)) {
    out += fmt::format(
        "demand <span data-demand=\"{}\">{}</span>, capacity "
        "<span data-capacity=\"{}\">{}</span>; ",
        exact(f.demand), escaped(shown_worked({f.demand, f.measure}, inches)), exact(f.capacity),
        escaped(shown_worked({f.capacity, f.measure}, inches)));
  }
  return out + fmt::format(
                   "safety factor <span data-safety-factor=\"{}\">{}</span>, asked {}; "
                   "utilization <strong data-utilization=\"{}\">{}</strong></p>\n",
                   exact(f.safety_factor), multiple(f.safety_factor), number(f.required),
                   exact(f.utilization()), percent(f.utilization()));
}

std::string finding_html(const Answer& answer, std::size_t index) {
  const Finding& f = answer.findings[index];
  const bool inches = answer.inches;
  const bool decided = f.state != checks::State::undecided;
  std::string out = fmt::format(
      "<article class=\"finding\" id=\"finding-{}\">\n<header><h4>{}. {}{}{}</h4>"
      "<span class=\"state {}\">{}{}</span></header>\n",
      index + 1, index + 1, escaped(part_words(f.part)), f.part.empty() ? "" : ": ",
      escaped(what_gives(f)), tone_class(state_tone(f.state)),
      decided ? percent(f.utilization()) + " " : "", state_word(f.state));
  const std::string separator = f.load_case.empty() || f.set.empty() ? "" : "; ";
  if (!(f.load_case + f.set).empty())
    out += sheet_line("In " + f.load_case + separator + f.set + ".");
  out += origin_html(f, inches) + worked_html(f.lines, inches) + result_html(f, inches);
  const std::string remedy = remedy_words(answer, f);
  if (!remedy.empty()) {
    out += fmt::format("<p class=\"mends\">{}</p>\n", escaped(remedy));
  }
  for (const std::string& note : f.notes) {
    out += sheet_line((checks::is_caveat(note) ? "" : "Note: ") + note);
  }
  if (!f.source.empty()) out += sheet_line("Source: " + f.source);
  if (!f.range.empty()) out += sheet_line("Holds for: " + f.range);
  return out + "</article>\n";
}

std::string findings_html(const Answer& answer) {
  std::string out;
  if (const std::string both = together_words(answer); !both.empty()) {
    out += fmt::format("<p class=\"mends\">What was tried and mends something, {}.</p>\n",
                       escaped(both));
  }
  for (std::size_t i = 0; i < answer.findings.size(); ++i) {
    out += finding_html(answer, i);
  }
  return out;
}

std::string factors_html(checks::RequiredFactors factors) {
  HtmlTable table{.caption =
                      "Safety factors asked for, on capacities that hide none; each may be "
                      "overridden in the case file, and they never stack",
                  .head = {"key", "#factor", "of what, and its basis"}};
  for (const checks::FactorEntry& entry : checks::factor_entries(factors)) {
    table.rows.push_back({{escaped(entry.key), number(*entry.value), escaped(entry.basis)}});
  }
  return html(table);
}

std::string limits_html(const Answer& answer) {
  std::string out = sheet_line(
      "A frame of shear-flexible beams with elastic joints, linear elastic material. Within the "
      "limits checked is all that this sheet says; what follows is left out.");
  if (!answer.not_offered.empty()) {
    out += sheet_line("Kinds of check that this version does not offer: " +
                      joined(answer.not_offered, ", ") + ".");
  }
  if (!answer.not_checked.empty()) out += "<p>Not checked:</p>\n" + html_list(answer.not_checked);
  std::vector<std::string> troubled;
  for (const studies::SolvedCase& s : answer.solved) {
    if (!s.converged) troubled.push_back(s.load_case + "; " + s.set + ": " + s.trouble);
  }
  if (!troubled.empty()) out += "<p>Not solved:</p>\n" + html_list(troubled);
  double residual = 0.0;
  for (const studies::SolvedCase& s : answer.solved) residual = std::fmax(residual, s.residual);
  return out +
         sheet_line(fmt::format("Solved: {} load cases with their stiffness sets; forces balance "
                                "within {:.1e} of the largest force.",
                                answer.solved.size(), residual));
}

constexpr const char* kSignature =
    "<div class=\"sign\">\n<div>Reviewing engineer: name</div>\n<div>License number and "
    "jurisdiction</div>\n<div>Date</div>\n<div>Signature</div>\n<div class=\"tall\">Conditions and "
    "remarks</div>\n</div>\n";

}  // namespace

std::string calculation_sheet(const Answer& answer, const Sheet& sheet) {
  std::string out = sheet_section("Input as read", input_html(sheet));
  if (!answer.assumed.empty()) out += sheet_section("Assumed", assumed_html(answer));
  out += sheet_section("Load cases", html_list(answer.load_cases));
  out +=
      sheet_section("Stiffness sets (each load case is solved with each)", html_list(answer.sets));
  out += balances_html(answer);
  if (!answer.postures.empty()) {
    out += sheet_section("Postures (each at most over its load cases and stiffness sets)",
                         html_list(posture_words(answer.postures, answer.inches)));
  }
  if (answer.droop) {
    out += sheet_section("Drop of the axle from ride height (a comparison of lengths alone)",
                         html_list(droop_words(*answer.droop, answer.inches)));
  }
  if (answer.bump) {
    out += sheet_section("Rise of the axle from ride height (a comparison of lengths alone)",
                         html_list(bump_words(*answer.bump, answer.inches)));
  }
  out += sheet_section("Findings, worst first", findings_html(answer));
  out += sheet_section("Factors used", factors_html(sheet.factors));
  out += sheet_section("Limits of the method", limits_html(answer));
  out += sheet_section("Cautions", html_list(studies::cautions()));
  return out + sheet_section("Review", kSignature);
}

}  // namespace report
