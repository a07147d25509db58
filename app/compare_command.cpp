#include <algorithm>
#include <iterator>

#include <fmt/format.h>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/interrupt.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/threads.hpp"
#include "cases/patch.hpp"
#include "report/comparison_text.hpp"
#include "report/json.hpp"
#include "studies/compare.hpp"

namespace app {
namespace {

/// The design with the variants of the command line after its own.
parts::Design with_changes(parts::Design design, const CompareRequest& request) {
  if (request.usual) {
    std::vector<parts::Variant> usual = cases::usual_variants(design);
    for (parts::Variant& variant : usual) {
      const bool there =
          std::any_of(design.variants.begin(), design.variants.end(),
                      [&](const parts::Variant& own) { return own.patches == variant.patches; });
      if (!there) design.variants.push_back(std::move(variant));
    }
  }
  const std::vector<std::string>& changes = request.changes;
  for (const std::string& change : changes) {
    try {
      std::vector<parts::Variant> more = cases::variants_from_words(design, change);
      std::move(more.begin(), more.end(), std::back_inserter(design.variants));
    } catch (const base::InputError& error) {
      throw base::InputError(fmt::format("--set \"{}\"", change), error.what());
    }
  }
  if (design.variants.empty()) {
    throw base::InputError("compare",
                           "there is nothing to compare: name variants in the case (`compare: [no "
                           "brace, straight]`), by --set PATH=VALUE or by --usual");
  }
  return design;
}

studies::Comparison comparison_of(const parts::Design& design, int jobs) {
  ProgressLine progress;
  return studies::compare(design, progress.watch(), threads(jobs));
}

}  // namespace

Output compare_command(const CompareRequest& request, bool color) {
  return with_case(request.options.case_file, [&](const parts::Design& design) {
    const studies::Comparison comparison =
        comparison_of(with_changes(design, request), request.options.jobs);
    const int status = interrupted()                 ? kExitInterrupted
                       : comparison.failures.empty() ? exit_status(comparison.base.verdict)
                                                     : kExitOver;
    Output out = answer_output(
        request.options, [&] { return report::comparison_text(comparison, {.color = color}); },
        [&] { return report::json(comparison, program()); }, status);
    add_tables(out, request.options.csv, report::csv(comparison));
    return out;
  });
}

}  // namespace app
