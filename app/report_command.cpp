#include <array>
#include <ctime>
#include <utility>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/threads.hpp"
#include "report/answer_words.hpp"
#include "report/page.hpp"
#include "report/text_style.hpp"
#include "report/wrap.hpp"
#include "studies/check.hpp"

namespace app {
namespace {

studies::Answer drawn_answer(const parts::Design& design, int jobs) {
  ProgressLine progress;
  return studies::check_and_draw(design, progress.watch(), threads(jobs));
}

/// ISO 8601, where the machine is.
std::string today() {
  const std::time_t now = std::time(nullptr);
  std::tm local = {};
  if (::localtime_r(&now, &local) == nullptr) return "";
  std::array<char, 16> text = {};
  const std::size_t n = std::strftime(text.data(), text.size(), "%Y-%m-%d", &local);
  return {text.data(), n};
}

/// A sheet that is mailed says nothing of the folders of who made it.
std::string without_folders(const std::string& path) {
  return path.substr(path.rfind('/') + 1);
}

/// What the terminal says beside the sheet.
std::string said_of(const studies::Answer& answer, const std::string& path) {
  const report::TextStyle style;
  return report::paragraph(report::verdict_sentence(answer, ""), style.width) +
         report::paragraph("sheet: " + path, style.width, 0, 2) + report::caution_lines(style);
}

}  // namespace

Output report_command(const ReportRequest& request) {
  return with_case_text(request.options.case_file, [&](const parts::Design& design,
                                                       const CaseText& text) {
    const studies::Answer answer = drawn_answer(design, request.options.jobs);
    std::string page = report::page(answer, {.case_name = without_folders(text.name),
                                             .case_text = text.text,
                                             .date = request.date.empty() ? today() : request.date,
                                             .factors = design.factors,
                                             .program = program()});
    const int status = exit_status(answer.verdict);
    if (request.out == "-") return Output{.text = std::move(page), .status = status};
    return Output{.text = said_of(answer, request.out),
                  .files = {{request.out, std::move(page)}},
                  .status = status};
  });
}

}  // namespace app
