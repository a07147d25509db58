#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "report/explanation_text.hpp"
#include "report/json.hpp"
#include "studies/explain.hpp"

namespace app {
namespace {

studies::Explanation explanation_for(const parts::Design& design, const ExplainRequest& request) {
  ProgressLine progress;
  return studies::explain(in_units(design, request.options.units), request.part, request.check,
                          progress.watch());
}

}  // namespace

Output explain_command(const ExplainRequest& request, bool color) {
  return with_case(request.options.case_file, [&](const parts::Design& design) {
    const studies::Explanation explanation = explanation_for(design, request);
    const report::TextStyle style = {.color = color, .full = true, .program = program_line()};
    return answer_output(
        request.options, [&] { return report::explanation_text(explanation, style); },
        [&] { return report::json(explanation, program()); }, exit_status(explanation.verdict));
  });
}

}  // namespace app
