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
#include "cases/words.hpp"
#include "report/json.hpp"
#include "report/scattered_text.hpp"
#include "studies/scatter.hpp"

namespace app {
namespace {

using base::InputError;

/// The usual inputs with what was asked instead: "lateral_link.wall = normal 1.0 0.03"; "wall =
/// fixed" for that of every part.
std::vector<studies::ScatterInput> inputs_of(const parts::Design& design,
                                             const std::vector<std::string>& changes) {
  std::vector<studies::ScatterInput> inputs = studies::usual_scatter(design);
  for (const std::string& change : changes) {
    const std::size_t equals = change.find('=');
    const std::string path(cases::trim(std::string_view(change).substr(0, equals)));
    try {
      if (equals == std::string::npos || path.empty()) {
        throw InputError("", "it is not `NUMBER = DISTRIBUTION`, e.g. `load = normal 1.0 0.1`");
      }
      const studies::Distribution factor = studies::read_distribution(change.substr(equals + 1));
      bool found = false;
      for (studies::ScatterInput& input : inputs) {
        const bool named = input.path == path || path == "all" ||
                           (input.path.size() > path.size() &&
                            input.path.compare(input.path.size() - path.size() - 1, path.size() + 1,
                                               "." + path) == 0);
        if (!named) continue;
        found = true;
        input.factor = factor;
        input.basis = "as asked";
      }
      if (!found) inputs.push_back({path, factor, "as asked"});
    } catch (const InputError& error) {
      throw InputError(fmt::format("--vary \"{}\"", change), error.what());
    }
  }
  return inputs;
}

std::string command_for_all(const ScatterRequest& r) {
  std::string command = fmt::format("linkmargin scatter {} --samples {} --seed {}",
                                    shell_word(r.options.case_file), r.samples, r.seed);
  for (const std::string& change : r.changes) command += " --vary " + shell_word(change);
  if (!r.options.units.empty()) command += " --units " + r.options.units;
  return command + " --all";
}

}  // namespace

Output scatter_from(const ScatterRequest& r, const Gathered& gathered, bool color) {
  return with_text(gathered.case_text, [&](const parts::Design& design, const CaseText&) {
    const studies::ScatterOptions options = {.n_samples = static_cast<std::size_t>(r.samples),
                                             .seed = r.seed,
                                             .inputs = inputs_of(design, r.changes)};
    SharedPieces<studies::Judged> pieces(r.share, gathered.judged);
    studies::Scattered scattered = [&] {
      ProgressLine progress;
      return studies::scatter(design, options, progress.watch(), threads(r.options.jobs),
                              pieces.share());
    }();
    scattered.inches = shown_in_inches(scattered.inches, r.options.units);
    if (pieces.is_slice()) return pieces.output(gathered, "", scattered.n_samples);
    pieces.require_all(scattered.samples.size(), scattered.n_samples);
    const report::TextStyle style = {.color = color,
                                     .full = r.options.all,
                                     .command_for_more = command_for_all(r),
                                     .program = program_line()};
    const bool within = scattered.n_over + scattered.n_undecided == 0;
    Output out = answer_output(
        r.options, [&] { return report::scattered_text(scattered, style); },
        [&] { return report::json(scattered, program()); },
        interrupted() ? kExitInterrupted
        : within      ? kExitWithin
                      : kExitOver);
    add_tables(out, r.options.csv, report::csv(scattered));
    return out;
  });
}

Output scatter_command(const ScatterRequest& request, bool color) {
  return scatter_from(request, {.case_text = case_text(request.options.case_file)}, color);
}

}  // namespace app
