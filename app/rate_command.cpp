#include <algorithm>

#include <fmt/format.h>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/interrupt.hpp"
#include "app/program.hpp"
#include "app/progress_line.hpp"
#include "app/shell_word.hpp"
#include "app/slice_output.hpp"
#include "app/threads.hpp"
#include "base/input_error.hpp"
#include "cases/patch.hpp"
#include "cases/quantity.hpp"
#include "report/json.hpp"
#include "report/rated_text.hpp"
#include "studies/design_number.hpp"
#include "studies/rate.hpp"

namespace app {
namespace {

/// Of two lists that change the same key the later would win in every combination.
void refuse_twice(const std::vector<parts::Patch>& known, const std::vector<parts::Patch>& more) {
  for (const parts::Patch& patch : more) {
    const bool twice = std::any_of(known.begin(), known.end(), [&](const parts::Patch& other) {
      return other.path == patch.path;
    });
    if (twice) {
      throw base::InputError(patch.path,
                             "another --for changes it too: give all its values in one, "
                             "with `or` between");
    }
  }
}

/// Every combination of one alternative from each `--for`; the case's own variants without any.
parts::Design with_alternatives(parts::Design design, const std::vector<std::string>& lists) {
  if (lists.empty()) return design;
  std::vector<parts::Variant> all = {{}};
  for (const std::string& list : lists) {
    std::vector<parts::Variant> next;
    try {
      for (const parts::Variant& more : cases::variants_from_words(design, list)) {
        for (parts::Variant one : all) {
          refuse_twice(one.patches, more.patches);
          if (!more.patches.empty()) one.name += (one.name.empty() ? "" : ", ") + more.name;
          one.patches.insert(one.patches.end(), more.patches.begin(), more.patches.end());
          next.push_back(std::move(one));
        }
      }
    } catch (const base::InputError& error) {
      throw base::InputError(fmt::format("--for \"{}\"", list), error.what());
    }
    all = std::move(next);
  }
  design.variants.clear();
  for (parts::Variant& one : all) {
    if (!one.patches.empty()) design.variants.push_back(std::move(one));
  }
  return design;
}

/// An end of the search, in the units that the number itself is written in.
double span_end(const parts::Design& design, const std::string& path, const char* option,
                const std::string& text) {
  if (text.empty()) return base::kUnset;
  try {
    return cases::read_quantity(text, studies::number_of(design, path).dimension).si;
  } catch (const base::InputError& error) {
    throw base::InputError(fmt::format("{} \"{}\"", option, text), error.what());
  }
}

std::string command_for_all(const RateRequest& request) {
  std::string command =
      fmt::format("linkmargin rate {} --over {}", shell_word(request.options.case_file),
                  shell_word(request.over));
  const auto add = [&](const char* option, const std::string& text) {
    if (!text.empty()) command += fmt::format(" {} {}", option, shell_word(text));
  };
  for (const std::string& list : request.alternatives) add("--for", list);
  add("--from", request.from);
  add("--to", request.to);
  if (!request.options.units.empty()) command += " --units " + request.options.units;
  return command + " --all";
}

}  // namespace

Output rate_from(const RateRequest& request, const Gathered& gathered, bool color) {
  return with_text(gathered.case_text, [&](const parts::Design& design, const CaseText&) {
    const studies::Span span = {.path = request.over,
                                .from = span_end(design, request.over, "--from", request.from),
                                .to = span_end(design, request.over, "--to", request.to)};
    const parts::Design all =
        in_units(with_alternatives(design, request.alternatives), request.options.units);
    SharedPieces<studies::Rated> pieces(request.share, gathered.rated);
    const studies::Rating rating = [&] {
      ProgressLine progress;
      return studies::rate(all, span, progress.watch(), threads(request.options.jobs),
                           pieces.share());
    }();
    if (pieces.is_slice()) return pieces.output(gathered, "", rating.designs.size());
    pieces.require_all(gathered.rated.size(), rating.designs.size());
    const report::TextStyle style = {.color = color,
                                     .full = request.options.all,
                                     .command_for_more = command_for_all(request),
                                     .program = program_line()};
    const bool all_hold =
        std::all_of(rating.designs.begin(), rating.designs.end(),
                    [](const studies::Rated& d) { return d.holds_to.has_value(); });
    Output out = answer_output(
        request.options, [&] { return report::rated_text(rating, style); },
        [&] { return report::json(rating, program()); },
        interrupted() ? kExitInterrupted
        : all_hold    ? kExitWithin
                      : kExitOver);
    add_tables(out, request.options.csv, report::csv(rating));
    return out;
  });
}

Output rate_command(const RateRequest& request, bool color) {
  return rate_from(request, {.case_text = case_text(request.options.case_file)}, color);
}

}  // namespace app
