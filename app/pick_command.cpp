#include <algorithm>
#include <functional>
#include <optional>

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
#include "cases/quantity.hpp"
#include "cases/words.hpp"
#include "report/grid_text.hpp"
#include "report/json.hpp"
#include "report/picked_text.hpp"

namespace app {
namespace {

using base::InputError;

/// Calls `use` with the value of each word, for the parts it is meant for: "brace=2 in" for one.
void for_parts(const std::vector<std::string>& words, const std::vector<std::string>& parts,
               const char* option,
               const std::function<void(std::size_t part, const std::string& value)>& use) {
  for (const std::string& word : words) {
    const std::size_t equals = word.find('=');
    const std::string of(cases::trim(std::string_view(word).substr(0, equals)));
    const auto named = std::find(parts.begin(), parts.end(), of);
    const std::string value =
        equals == std::string::npos ? word : std::string(cases::trim(word.substr(equals + 1)));
    try {
      if (equals != std::string::npos && named == parts.end()) {
        throw InputError(
            "", fmt::format("`{}` is none of the parts to pick: {}", of, cases::join(parts, ", ")));
      }
      for (std::size_t p = 0; p < parts.size(); ++p) {
        if (equals == std::string::npos || parts[p] == *named) use(p, value);
      }
    } catch (const InputError& error) {
      throw InputError(fmt::format("{} \"{}\"", option, word), error.what());
    }
  }
}

double length_in(const std::string& text) {
  const double si = cases::read_quantity(text, parts::Dimension::length).si;
  if (!(si > 0.0)) throw InputError("", fmt::format("{} is not over 0", cases::quoted(text)));
  return si;
}

sections::Material steel_in(const parts::Design& design, const std::string& name) {
  for (const parts::Named<sections::Material>& own : design.materials) {
    if (own.name == name) return own.value;
  }
  const std::optional<sections::Material> known = sections::find_material(name);
  if (known) return *known;
  throw InputError("", fmt::format("there is no steel {}; did you mean `{}`?", cases::quoted(name),
                                   sections::nearest_material(name)));
}

std::vector<studies::SizeLimits> limits_of(const parts::Design& design, const PickRequest& r) {
  using studies::PartKind;
  std::vector<studies::SizeLimits> all(r.parts.size(), {.own_alone = r.limits.own_alone});
  const auto lengths = [&](const std::vector<std::string>& words, const char* option,
                           double studies::SizeLimits::*member) {
    for_parts(words, r.parts, option,
              [&](std::size_t p, const std::string& value) { all[p].*member = length_in(value); });
  };
  lengths(r.limits.outside_from, "--od-from", &studies::SizeLimits::outside_from);
  lengths(r.limits.outside_to, "--od-to", &studies::SizeLimits::outside_to);
  lengths(r.limits.wall_from, "--wall-from", &studies::SizeLimits::wall_from);
  lengths(r.limits.wall_to, "--wall-to", &studies::SizeLimits::wall_to);
  for (const studies::SizeLimits& limits : all) {
    if (limits.outside_from > limits.outside_to) {
      throw InputError("", "--od-from is more than --od-to: the other way round");
    }
    if (limits.wall_from > limits.wall_to) {
      throw InputError("", "--wall-from is more than --wall-to: the other way round");
    }
  }
  for_parts(r.limits.kinds, r.parts, "--kind", [&](std::size_t p, const std::string& value) {
    if (value != "tube" && value != "bar") {
      throw InputError("", fmt::format("{} is neither tube nor bar", cases::quoted(value)));
    }
    all[p].kind = value == "tube" ? PartKind::tube : PartKind::bar;
  });
  for_parts(r.limits.steels, r.parts, "--steel", [&](std::size_t p, const std::string& value) {
    all[p].steels.push_back(steel_in(design, value));
  });
  return all;
}

studies::PickBy by_of(const PickRequest& request) {
  if (request.by == "cost") return studies::PickBy::cost;
  return request.by == "od" ? studies::PickBy::outside : studies::PickBy::mass;
}

std::string command_for_all(const PickRequest& r) {
  std::string command = "linkmargin pick " + shell_word(r.options.case_file);
  const auto add = [&](const char* option, const std::vector<std::string>& words) {
    for (const std::string& word : words)
      command += fmt::format(" {} {}", option, shell_word(word));
  };
  add("--part", r.parts);
  add("--od-from", r.limits.outside_from);
  add("--od-to", r.limits.outside_to);
  add("--wall-from", r.limits.wall_from);
  add("--wall-to", r.limits.wall_to);
  add("--kind", r.limits.kinds);
  add("--steel", r.limits.steels);
  if (r.by != "mass") command += " --by " + r.by;
  if (!r.stock.empty()) command += " --stock " + shell_word(r.stock);
  if (r.limits.own_alone) command += " --only-stock";
  if (!r.options.units.empty()) command += " --units " + r.options.units;
  return command + " --all";
}

report::TextStyle style_of(const PickRequest& request, bool color) {
  return {.color = color,
          .full = request.options.all,
          .command_for_more = command_for_all(request),
          .program = program_line()};
}

int picked_status(bool any) {
  return interrupted() ? kExitInterrupted : any ? kExitWithin : kExitOver;
}

Output one_picked(const parts::Design& design, const PickRequest& r, const Gathered& gathered,
                  bool color) {
  const studies::PickOptions options = {.limits = limits_of(design, r).front(),
                                        .by = by_of(r),
                                        .more = gathered.stock,
                                        .every = r.options.all || !r.options.json.empty() ||
                                                 !r.options.csv.empty() || !r.share.share.empty()};
  SharedPieces<studies::Judged> pieces(r.share, gathered.judged);
  studies::Picked picked = [&] {
    ProgressLine progress;
    return studies::pick(design, r.parts.front(), options, progress.watch(),
                         threads(r.options.jobs), pieces.share());
  }();
  // The sizes are those of the case's own lists.
  picked.inches = shown_in_inches(picked.inches, r.options.units);
  if (pieces.is_slice()) return pieces.output(gathered, r.stock, picked.n_sizes);
  pieces.require_all(picked.n_done, picked.n_sizes);
  Output out = answer_output(
      r.options, [&] { return report::picked_text(picked, style_of(r, color)); },
      [&] { return report::json(picked, program()); }, picked_status(picked.lightest.has_value()));
  add_tables(out, r.options.csv, report::csv(picked));
  return out;
}

Output several_picked(const parts::Design& design, const PickRequest& r, const Gathered& gathered,
                      bool color) {
  SharedPieces<studies::GridLane> pieces(r.share, gathered.lanes);
  studies::PickedGrid grid = [&] {
    ProgressLine progress;
    return studies::pick_grid(design, r.parts, limits_of(design, r), by_of(r), gathered.stock,
                              progress.watch(), threads(r.options.jobs), pieces.share());
  }();
  grid.inches = shown_in_inches(grid.inches, r.options.units);
  if (pieces.is_slice()) return pieces.output(gathered, r.stock, studies::kGridLanes);
  pieces.require_all(grid.n_done(), grid.n_designs);
  Output out = answer_output(
      r.options, [&] { return report::grid_text(grid, style_of(r, color)); },
      [&] { return report::json(grid, program()); }, picked_status(!grid.best.empty()));
  add_tables(out, r.options.csv, report::csv(grid));
  return out;
}

}  // namespace

Output pick_from(const PickRequest& request, const Gathered& gathered, bool color) {
  if (request.parts.size() > 3) {
    throw InputError("--part", "three parts together are the most");
  }
  return with_text(gathered.case_text, [&](const parts::Design& design, const CaseText&) {
    return request.parts.size() == 1 ? one_picked(design, request, gathered, color)
                                     : several_picked(design, request, gathered, color);
  });
}

Output pick_command(const PickRequest& request, bool color) {
  return pick_from(request,
                   {.case_text = case_text(request.options.case_file),
                    .stock = own_stock(request.stock),
                    .stock_text = request.stock.empty() ? "" : file_text(request.stock),
                    .judged = {},
                    .lanes = {}},
                   color);
}

}  // namespace app
