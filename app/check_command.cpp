#include <utility>

#include <fmt/format.h>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/shell_word.hpp"
#include "app/threads.hpp"
#include "report/csv.hpp"
#include "report/drawing_svg.hpp"
#include "report/json.hpp"
#include "report/markdown.hpp"
#include "report/text.hpp"
#include "report/vtu.hpp"
#include "studies/check.hpp"
#include "studies/remedy.hpp"

namespace app {
namespace {

studies::Answer answer_to(const parts::Design& as_read, const CheckRequest& request) {
  ProgressLine progress;
  const parts::Design design = in_units(as_read, request.options.units);
  const bool drawn = !request.beside.svg.empty() || !request.beside.vtu.empty();
  const bool whole = request.options.all || !request.options.json.empty() ||
                     !request.beside.csv.empty() || !request.beside.md.empty();
  const auto check = drawn   ? studies::check_and_draw
                     : whole ? studies::check
                             : studies::check_briefly;
  studies::Answer answer = check(design, progress.watch(), threads(request.options.jobs));
  studies::add_remedies(answer, as_read, progress.watch());
  return answer;
}

/// The files that were asked for beside the answer.
void add_beside(Output& out, const studies::Answer& answer, const BesideFiles& beside) {
  if (!beside.svg.empty()) out.files.push_back({beside.svg, report::drawing_svg(answer)});
  if (!beside.vtu.empty()) out.files.push_back({beside.vtu, report::vtu(answer)});
  if (!beside.md.empty()) out.files.push_back({beside.md, report::markdown(answer)});
  if (!beside.csv.empty()) add_tables(out, beside.csv, report::csv(answer));
}

}  // namespace

Output check_command(const CheckRequest& request, bool color) {
  const AnswerOptions& options = request.options;
  return with_case(options.case_file, [&](const parts::Design& design) {
    const studies::Answer answer = answer_to(design, request);
    const report::TextStyle style = {
        .color = color,
        .full = options.all,
        .command_for_more = fmt::format("linkmargin check {}{} --all; or explain CASE.yaml PART",
                                        shell_word(options.case_file),
                                        options.units.empty() ? "" : " --units " + options.units),
        .program = program_line()};
    Output out = answer_output(
        options, [&] { return report::text(answer, style); },
        [&] { return report::json(answer, program()); }, exit_status(answer.verdict));
    add_beside(out, answer, request.beside);
    return out;
  });
}

}  // namespace app
