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

/// Whether two variants come to the same design, in whatever words.
bool same_design(const parts::Design& design, const parts::Variant& a, const parts::Variant& b) {
  const auto changed = [&](const parts::Variant& variant) {
    parts::Design out = cases::apply(design, variant);
    out.variants.clear();
    return out;
  };
  const parts::Design one = changed(a);
  const parts::Design other = changed(b);
  return one.lateral_link == other.lateral_link && one.bracket == other.bracket &&
         one.brace == other.brace && one.arm == other.arm && one.points == other.points &&
         a.patches.size() == b.patches.size();
}

/// The design with the variants of the command line after its own.
parts::Design with_changes(parts::Design design, const CompareRequest& request) {
  if (request.usual) {
    std::vector<parts::Variant> usual = cases::usual_variants(design);
    for (parts::Variant& variant : usual) {
      const bool there = std::any_of(
          design.variants.begin(), design.variants.end(), [&](const parts::Variant& own) {
            return own.patches == variant.patches || same_design(design, own, variant);
          });
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
    const studies::Comparison comparison = comparison_of(
        in_units(with_changes(design, request), request.options.units), request.options.jobs);
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
