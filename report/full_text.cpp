#include "report/full_text.hpp"

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/balance_text.hpp"
#include "report/comparison_text.hpp"
#include "report/droop_text.hpp"
#include "report/failure_order_text.hpp"
#include "report/finding_text.hpp"
#include "report/life_text.hpp"
#include "report/posture_text.hpp"
#include "report/remedy_text.hpp"
#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using checks::Finding;
using studies::Answer;

/// One bullet an item.
std::string list(const std::vector<std::string>& items, const TextStyle& style) {
  std::string out;
  for (const std::string& item : items) out += paragraph(item, style.width, 2, 2);
  return out;
}

std::string buckling_section(const Answer& answer, const TextStyle& style) {
  std::string out = heading("What buckles (multiple of the load case; stiffness set)", style);
  const auto lines = [&](const std::vector<studies::CriticalFactor>& factors) {
    std::string text;
    for (const studies::CriticalFactor& c : factors) {
      const std::string set = c.set.empty() ? "" : "; " + c.set;
      const std::string kind = c.axle_tips ? " (the whole axle)" : "";
      text += paragraph(buckling_words(c) + kind + set, style.width, 4, 2);
    }
    return text.empty() ? "    nothing\n" : text;
  };
  out += "  assembled, lowest over all load cases:\n" + lines(answer.critical);
  out += "  each part alone, between its joints:\n" + lines(answer.own);
  return out;
}

/// How every load case was solved.
std::string solved_section(const Answer& answer, const TextStyle& style) {
  std::string out = heading("Load cases", style) + list(answer.load_cases, style);
  out += heading("Stiffness sets (each load case is solved with each)", style) +
         list(answer.sets, style);
  std::vector<std::string> troubled;
  double residual = 0.0;
  for (const studies::SolvedCase& s : answer.solved) {
    if (!s.converged) troubled.push_back(s.load_case + "; " + s.set + ": " + s.trouble);
    if (s.residual > residual) residual = s.residual;
  }
  if (!troubled.empty()) out += heading("Not solved", style) + list(troubled, style);
  if (!answer.solved.empty()) {
    out += paragraph(fmt::format("solved: {}; forces balance within {:.1e} of the largest force",
                                 answer.solved.size(), residual),
                     style.width, 2, 2);
  }
  return out;
}

std::string mass_section(const Answer& answer, const TextStyle& style) {
  if (answer.masses.empty()) return "";
  TextTable table;
  table.columns = {{.least_width = 12}, {.numbers = true}};
  for (const studies::PartMass& m : answer.masses) {
    table.rows.push_back({{part_words(m.part)}, {shown_mass(m.mass, answer.inches)}});
  }
  return heading("Masses", style) + laid_out(table, style.width, style.color, 2);
}

std::string assumed_section(const Answer& answer, const TextStyle& style) {
  if (answer.assumed.empty()) return "";
  std::string out = heading("Assumed", style);
  for (const parts::Assumption& a : answer.assumed) {
    out += paragraph(fmt::format("{}: {}  [{}]", a.key, a.value, a.basis), style.width, 2, 2);
  }
  return out;
}

}  // namespace

std::string full_text(const Answer& answer, const TextStyle& style) {
  std::string out;
  if (!answer.title.empty()) out += paragraph("case: " + answer.title, style.width, 0, 2);
  out += paragraph(
      "utilization: 100 % = the limit; safety factor: multiple of the load at which "
      "it just holds; asked: factor required",
      style.width, 0, 2);
  for (const Finding& f : answer.findings) {
    out += '\n';
    out += finding_text(f, answer.inches, style);
    const std::string remedy = remedy_words(answer, f);
    if (!remedy.empty()) out += paragraph(remedy, style.width, 2, 2);
  }
  if (const std::string both = together_words(answer); !both.empty()) {
    out += "\n" + paragraph("what was tried and mends something, " + both, style.width, 0, 2);
  }
  out += buckling_section(answer, style);
  out += failure_order_section(answer.failure_orders, style);
  if (answer.life) out += life_section(*answer.life, answer.inches, style);
  out += solved_section(answer, style);
  out += balance_section(answer, style);
  if (!answer.postures.empty()) {
    out += heading("Postures (each at most over its load cases and stiffness sets)", style) +
           list(posture_words(answer.postures, answer.inches), style);
  }
  out += mass_section(answer, style);
  if (answer.droop) {
    out += heading("Drop of the axle from ride height (a comparison of lengths alone)", style) +
           list(droop_words(*answer.droop, answer.inches), style);
  }
  if (answer.bump) {
    out += heading("Rise of the axle from ride height (a comparison of lengths alone)", style) +
           list(bump_words(*answer.bump, answer.inches), style);
  }
  if (answer.comparison) {
    out += heading("Variants", style) + comparison_body(*answer.comparison, style);
  }
  out += assumed_section(answer, style);
  if (!answer.not_checked.empty()) {
    out += heading("Not checked", style) + list(answer.not_checked, style);
  }
  if (!style.program.empty()) out += heading("computed by " + style.program, style);
  return out;
}

}  // namespace report
