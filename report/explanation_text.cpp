#include "report/explanation_text.hpp"

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/case_list_text.hpp"
#include "report/failure_order_text.hpp"
#include "report/finding_text.hpp"
#include "report/life_text.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

std::string head_of(const studies::Explanation& explanation) {
  const std::size_t n = explanation.findings.size();
  return fmt::format("{}: {} check{}, line by line", part_words(explanation.part), n,
                     n == 1 ? "" : "s");
}

std::string case_section(const studies::Explanation& explanation, const TextStyle& style) {
  if (explanation.kinds.empty()) return "";
  std::string out =
      heading("Load cases named above (forces and moments: forward, left, up)", style);
  for (const studies::ListedKind& kind : explanation.kinds) {
    out += named_case_lines(kind, explanation.inches, style);
  }
  return out;
}

}  // namespace

std::string explanation_text(const studies::Explanation& explanation, const TextStyle& style) {
  std::string out = paragraph(head_of(explanation), style.width);
  if (!explanation.title.empty()) {
    out += paragraph("case: " + explanation.title, style.width, 0, 2);
  }
  out += paragraph(
      "Each formula in symbols, then with numbers, at the worst load case and stiffness set. "
      "utilization: 100 % = the limit; safety factor: multiple of the load at which it just holds; "
      "asked: factor required",
      style.width, 0, 2);
  for (const checks::Finding& f : explanation.findings) {
    out += '\n';
    out += explained_text(f, explanation.inches, style);
  }
  out += case_section(explanation, style);
  out += failure_order_section(explanation.failure_orders, style);
  if (explanation.life) out += life_section(*explanation.life, explanation.inches, style);
  if (!style.program.empty()) out += heading("computed by " + style.program, style);
  return out + caution_lines(style);
}

}  // namespace report
