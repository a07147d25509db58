#include "studies/pick.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"

namespace studies {
namespace {

/// Sorts by what is asked, and leaves out what has no price when that is the cost.
/// @return how many are left out
std::size_t order_by(std::vector<SizeChoice>& sizes, PickBy by, const std::string& part) {
  const std::size_t before = sizes.size();
  sizes.erase(
      std::remove_if(sizes.begin(), sizes.end(),
                     [by](const SizeChoice& size) { return std::isnan(measure_of(size, by)); }),
      sizes.end());
  if (sizes.empty()) {
    throw base::InputError(part,
                           "no size has a price: give --stock FILE with a column price_per_ft or "
                           "price_per_m");
  }
  std::stable_sort(sizes.begin(), sizes.end(), [by](const SizeChoice& a, const SizeChoice& b) {
    return measure_of(a, by) < measure_of(b, by);
  });
  return before - sizes.size();
}

/// The parts over or not decided as drawn, beside the one picked.
void tell_others(Picked& out, const Answer& as_drawn, const parts::Design& design,
                 const std::string& other_tube) {
  const auto add = [](std::vector<std::string>& all, const std::string& name) {
    if (std::find(all.begin(), all.end(), name) == all.end()) all.push_back(name);
  };
  for (const checks::Finding& f : as_drawn.findings) {
    if (f.state == checks::State::within) continue;
    if (!belongs(f.part, out.part)) {
      add(out.others_over, f.part);
      for (const std::string& name : sized_parts(design)) {
        if (belongs(f.part, name)) add(out.could_join, name);
      }
    } else if (!other_tube.empty() && f.where.rfind(other_tube, 0) == 0) {
      out.other_tube_over = other_tube;
    }
  }
  if (!out.other_tube_over.empty()) {
    add(out.could_join, out.part == "arm.lower" ? "arm.upper" : "arm.lower");
  }
}

void choose(Picked& out, const sections::Shape& now) {
  for (std::size_t i = 0; i < out.tried.size(); ++i) {
    const Candidate& candidate = out.tried[i];
    if (candidate.judged.verdict != Verdict::within) continue;
    if (!out.lightest) {
      out.lightest = candidate;
      if (i > 0) out.next_down = out.tried[i - 1];
    } else if (!out.next_up) {
      out.next_up = candidate;
    }
    if (!out.same_outside && same_outside(candidate.item.shape, now)) out.same_outside = candidate;
  }
}

}  // namespace

double measure_of(const SizeChoice& size, PickBy by) {
  if (by == PickBy::cost) return size.item.price;
  return by == PickBy::outside ? outside_of(size.item.shape) : size.mass_per_length();
}

std::string other_tube_of(const parts::Design& design, const std::string& part) {
  if (!design.arm || !parts::has_upper_arm(*design.arm)) return "";
  if (part == "arm.lower") return "upper tube";
  return part == "arm.upper" ? "lower tube" : "";
}

Picked pick(const parts::Design& design, const std::string& part, const PickOptions& options,
            const Watch& watch, const Spread& spread, Share<Judged>* share) {
  std::vector<SizeChoice> sizes = sizes_for(design, part, options.limits, options.more);
  const std::size_t n_unpriced = order_by(sizes, options.by, part);
  parts::Design base = design;
  const parts::Stick now = *stick_of(base, part);
  Picked out{.title = design.title,
             .inches = design.inches,
             .part = part,
             .now = fmt::format("{}, {}", sections::describe(now.shape, design.inches),
                                now.material.description),
             .by = options.by,
             .length = length_of(design, part),
             .tried = {},
             .lightest = {},
             .next_down = {},
             .next_up = {},
             .same_outside = {},
             .others_over = {},
             .could_join = {},
             .other_tube_over = {},
             .assumed = {},
             .n_sizes = sizes.size(),
             .n_unpriced = n_unpriced};
  const Answer as_drawn = run(design, "as drawn", part_of(watch, 0.0, 0.0, "as drawn")).answer;
  const Counted counted = counted_beside(as_drawn, {part});
  const std::string other_tube = other_tube_of(design, part);
  std::vector<std::optional<Judged>> judgments(sizes.size());
  std::atomic<std::size_t> n_done = 0;
  std::atomic<bool> stopped = false;
  spread_out(spread, sizes.size(), [&](std::size_t i) {
    if (const Judged* known = share == nullptr ? nullptr : share->find(i)) {
      judgments[i] = *known;
    } else if (!stopped && (share == nullptr || share->is_mine(i))) {
      const double from = static_cast<double>(n_done) / static_cast<double>(sizes.size());
      try {
        judgments[i] = judged(with_size(design, part, sizes[i]), counted,
                              part_of(watch, from, from, sizes[i].item.label), other_tube);
      } catch (const Stopped&) {
        stopped = true;
      }
    }
    ++n_done;
  });
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (!judgments[i]) continue;
    if (share != nullptr) share->known.emplace(i, *judgments[i]);
    out.tried.push_back({.item = std::move(sizes[i].item),
                         .steel = sizes[i].steel.description,
                         .mass_per_length = base::kUnset,
                         .judged = *std::move(judgments[i])});
    out.tried.back().mass_per_length =
        SizeChoice{out.tried.back().item, sizes[i].steel}.mass_per_length();
  }
  choose(out, now.shape);
  out.assumed = as_drawn.assumed;
  tell_others(out, as_drawn, design, other_tube);
  return out;
}

}  // namespace studies
