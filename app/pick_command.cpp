#include <fmt/format.h>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/shell_word.hpp"
#include "app/threads.hpp"
#include "report/json.hpp"
#include "report/picked_text.hpp"
#include "studies/pick.hpp"

namespace app {
namespace {

studies::Picked picked_for(const parts::Design& design, const std::string& part,
                           const std::vector<sections::StockItem>& own, int jobs) {
  ProgressLine progress;
  return studies::pick(design, part, progress.watch(), own, threads(jobs));
}

}  // namespace

Output pick_command(const PickRequest& request, bool color) {
  const AnswerOptions& options = request.options;
  const std::vector<sections::StockItem> own = own_stock(request.stock);
  return with_case(options.case_file, [&](const parts::Design& design) {
    const studies::Picked picked = picked_for(design, request.part, own, options.jobs);
    const report::TextStyle style = {
        .color = color,
        .full = options.all,
        .command_for_more =
            fmt::format("linkmargin pick {} --part {}{} --all", shell_word(options.case_file),
                        shell_word(request.part),
                        request.stock.empty() ? "" : " --stock " + shell_word(request.stock)),
        .program = program_line()};
    return answer_output(
        options, [&] { return report::picked_text(picked, style); },
        [&] { return report::json(picked, program()); }, picked.lightest ? kExitWithin : kExitOver);
  });
}

}  // namespace app
