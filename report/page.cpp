#include "report/page.hpp"

#include <fmt/format.h>

#include "report/digest.hpp"
#include "report/html_text.hpp"
#include "report/page_data.hpp"
#include "report/page_parts.hpp"
#include "report/page_texts.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

std::string block_field(const std::string& name, const std::string& value) {
  return fmt::format("<div><dt>{}</dt><dd>{}</dd></div>\n", escaped(name),
                     value.empty() ? "&nbsp;" : escaped(value));
}

std::string title_block(const studies::Answer& answer, const Sheet& sheet, const std::string& sum) {
  return block_field("case file", sheet.case_name) + block_field("date", sheet.date) +
         block_field("input digest (SHA-256, start)", sum.substr(0, 16)) +
         block_field("computed by", fmt::format("linkmargin {}, {}", sheet.program.version,
                                                sheet.program.commit)) +
         block_field("units", answer.inches ? "inch, pound" : "millimeter, newton") +
         block_field("axes (ISO 8855)", "x forward, y left, z up");
}

}  // namespace

std::string page(const studies::Answer& answer, const Sheet& sheet) {
  const View view;
  const std::string sum = digest(sheet.case_text);
  const std::string title = answer.title.empty() ? sheet.case_name : answer.title;
  const std::string date = sheet.date.empty() ? "" : sheet.date + " - ";
  return filled(page_texts::page_skeleton(),
                {{"title", escaped(title)},
                 {"print_title", css_string(title)},
                 {"print_digest", css_string(date + "input " + sum.substr(0, 16))},
                 {"style", std::string(page_texts::page_style())},
                 {"script", std::string(page_texts::page_script())},
                 {"title_block", title_block(answer, sheet, sum)},
                 {"verdict", page_verdict(answer)},
                 {"assembly", page_assembly(answer, view)},
                 {"tables", page_tables(answer, sheet)},
                 {"calculation", calculation_sheet(answer, sheet)},
                 {"footer", fmt::format("<p>{}</p>", escaped(joined(studies::cautions(), " ")))},
                 {"data", page_data(answer, view)}});
}

}  // namespace report
