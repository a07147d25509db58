#include <algorithm>
#include <cstddef>
#include <iterator>
#include <vector>

#include <fmt/format.h>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/interrupt.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/slice_output.hpp"
#include "app/threads.hpp"
#include "cases/patch.hpp"
#include "parts/used_sticks.hpp"
#include "report/comparison_text.hpp"
#include "report/json.hpp"
#include "studies/compare.hpp"

namespace app {
namespace {

/// Whether two variants change the same things to the same, though in other words: "1-1/2 in solid
/// bar" and "1.5 in solid bar".
bool same_change(const parts::Design& design, const parts::Variant& a, const parts::Variant& b) {
  if (a.patches.size() != b.patches.size()) return false;
  for (std::size_t i = 0; i < a.patches.size(); ++i) {
    if (a.patches[i].path != b.patches[i].path) return false;
  }
  const parts::Design one = cases::apply(design, a);
  const parts::Design other = cases::apply(design, b);
  const std::vector<parts::StickOf> sticks = parts::used_sticks(one);
  const std::vector<parts::StickOf> others = parts::used_sticks(other);
  bool any = false;
  for (std::size_t i = 0; i < sticks.size() && i < others.size(); ++i) {
    const parts::Stick& first = *sticks[i].stick;
    const parts::Stick& second = *others[i].stick;
    if (!(first.shape == second.shape) || first.material.id != second.material.id) return false;
    any = any || std::any_of(a.patches.begin(), a.patches.end(), [&](const parts::Patch& patch) {
            return patch.path == sticks[i].key;
          });
  }
  return any && a.patches.size() == 1;
}

/// The design with the variants of the command line after its own.
parts::Design with_changes(parts::Design design, const CompareRequest& request) {
  if (request.usual) {
    std::vector<parts::Variant> usual = cases::usual_variants(design);
    for (parts::Variant& variant : usual) {
      const bool there = std::any_of(
          design.variants.begin(), design.variants.end(), [&](const parts::Variant& own) {
            return own.patches == variant.patches || same_change(design, own, variant);
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

}  // namespace

Output compare_from(const CompareRequest& request, const Gathered& gathered, bool color) {
  return with_text(gathered.case_text, [&](const parts::Design& design, const CaseText&) {
    const parts::Design all = in_units(with_changes(design, request), request.options.units);
    SharedPieces<studies::Compared> pieces(request.share, gathered.compared);
    const studies::Comparison comparison = [&] {
      ProgressLine progress;
      return studies::compare(all, progress.watch(), threads(request.options.jobs), pieces.share());
    }();
    const std::size_t n_designs = 1 + all.variants.size();
    if (pieces.is_slice()) return pieces.output(gathered, "", n_designs);
    pieces.require_all(gathered.compared.size(), n_designs);
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

Output compare_command(const CompareRequest& request, bool color) {
  return compare_from(request, {.case_text = case_text(request.options.case_file)}, color);
}

}  // namespace app
