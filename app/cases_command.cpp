#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "report/case_list_text.hpp"
#include "report/json.hpp"
#include "studies/case_list.hpp"

namespace app {
namespace {

Output listed(const studies::CaseList& list, const AnswerOptions& options, bool color) {
  return answer_output(
      options, [&] { return report::case_list_text(list, {.color = color}); },
      [&] { return report::json(list, program()); }, kExitWithin);
}

}  // namespace

Output cases_command(const CasesRequest& request, bool color) {
  const AnswerOptions& options = request.options;
  if (options.case_file.empty()) return listed(studies::case_list(), options, color);
  return with_case(options.case_file, [&](const parts::Design& design) {
    return listed(studies::case_list(in_units(design, options.units)), options, color);
  });
}

}  // namespace app
