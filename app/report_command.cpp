#include <array>
#include <cstddef>
#include <ctime>
#include <optional>
#include <utility>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/threads.hpp"
#include "base/input_error.hpp"
#include "report/answer_words.hpp"
#include "report/page.hpp"
#include "report/text_style.hpp"
#include "report/wrap.hpp"
#include "studies/check.hpp"
#include "studies/pick.hpp"
#include "studies/remedy.hpp"
#include "studies/run.hpp"

namespace app {
namespace {

studies::Answer drawn_answer(const parts::Design& design, const AnswerOptions& options) {
  ProgressLine progress;
  studies::Answer answer = studies::check_and_draw(in_units(design, options.units),
                                                   progress.watch(), threads(options.jobs));
  studies::add_remedies(answer, design, progress.watch());
  return answer;
}

// Load cases times stiffness sets up to which a chart of sizes is drawn without being asked for.
constexpr std::size_t kFewCells = 64;

/// The stock sizes for the chart: all of the part asked for; else, where that is short, those of
/// the outside that the governing part has now.
std::optional<studies::Picked> picked_for(const parts::Design& design,
                                          const studies::Answer& answer,
                                          const ReportRequest& request) {
  studies::PickOptions options;
  std::string part = request.pick;
  if (part.empty()) {
    if (answer.solved.size() > kFewCells || answer.findings.empty()) return std::nullopt;
    for (const std::string& name : studies::sized_parts(design)) {
      if (part.empty() && studies::belongs(answer.findings.front().part, name)) part = name;
    }
    if (part.empty()) return std::nullopt;
    parts::Design copy = design;
    const double outside = studies::outside_of(studies::stick_of(copy, part)->shape);
    options.limits.outside_from = outside;
    options.limits.outside_to = outside;
  }
  try {
    ProgressLine progress;
    studies::Picked picked =
        studies::pick(design, part, options, progress.watch(), threads(request.options.jobs));
    picked.inches = shown_in_inches(picked.inches, request.options.units);
    return picked;
  } catch (const base::InputError&) {
    if (!request.pick.empty()) throw;
    return std::nullopt;  // no list holds sizes like it
  }
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
std::string said_of(const studies::Answer& answer) {
  const report::TextStyle style;
  return report::paragraph(report::verdict_sentence(answer, ""), style.width) +
         report::caution_lines(style);
}

}  // namespace

Output report_command(const ReportRequest& request) {
  return with_case_text(request.options.case_file, [&](const parts::Design& design,
                                                       const CaseText& text) {
    const studies::Answer answer = drawn_answer(design, request.options);
    std::string page = report::page(answer, {.case_name = without_folders(text.name),

                                             .case_text = text.text,
                                             .date = request.date.empty() ? today() : request.date,
                                             .factors = design.factors,
                                             .program = program(),
                                             .picked = picked_for(design, answer, request)});
    const int status = exit_status(answer.verdict);
    if (request.out == "-") return Output{.text = std::move(page), .status = status};
    return Output{.text = said_of(answer),
                  .files = {{request.out, std::move(page)}},
                  .text_once_written = report::paragraph("sheet: " + request.out, 80, 0, 2),
                  .status = status};
  });
}

}  // namespace app
