#include <fmt/format.h>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/shell_word.hpp"
#include "app/threads.hpp"
#include "report/json.hpp"
#include "report/text.hpp"
#include "studies/check.hpp"

namespace app {
namespace {

studies::Answer answer_to(const parts::Design& design, int jobs) {
  ProgressLine progress;
  return studies::check(design, progress.watch(), threads(jobs));
}

}  // namespace

Output check_command(const CheckRequest& request, bool color) {
  const AnswerOptions& options = request.options;
  return with_case(options.case_file, [&](const parts::Design& design) {
    const studies::Answer answer = answer_to(design, options.jobs);
    const report::TextStyle style = {
        .color = color,
        .full = options.all,
        .command_for_more = fmt::format("linkmargin check {} --all; or explain CASE PART",
                                        shell_word(options.case_file)),
        .program = program_line()};
    return answer_output(
        options, [&] { return report::text(answer, style); },
        [&] { return report::json(answer, program()); }, exit_status(answer.verdict));
  });
}

}  // namespace app
