#include "studies/pick_grid.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <functional>
#include <numeric>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "studies/grid_screen.hpp"

namespace studies {
namespace {

// Of a utilization: its limit is searched for to 1e-6, so that less is no gain.
constexpr double kGain = 5.0e-6;

bool is_less(double utilization, double than) {
  return utilization < (1.0 - kGain) * than;
}

/// The sizes of each part, and every combination of them by mass or cost.
class Grid {
 public:
  Grid(const parts::Design& design, const std::vector<std::string>& parts,
       const std::vector<SizeLimits>& limits, PickBy by,
       const std::vector<sections::StockItem>& more)
      : design_(design), parts_(parts), by_(by) {
    std::size_t n = 1;
    for (std::size_t p = 0; p < parts.size(); ++p) {
      std::vector<SizeChoice> sizes = sizes_for(design, parts[p], limits[p], more);
      keep_priced(sizes, parts[p]);
      lengths_.push_back(length_of(design, parts[p]));
      n *= sizes.size();
      sizes_.push_back(std::move(sizes));
    }
    order_.resize(n);
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::vector<double> measures(n);
    for (std::size_t i = 0; i < n; ++i) measures[i] = measure(i);
    std::stable_sort(order_.begin(), order_.end(),
                     [&](std::size_t a, std::size_t b) { return measures[a] < measures[b]; });
  }

  [[nodiscard]] std::size_t size() const { return order_.size(); }
  [[nodiscard]] std::size_t n_unpriced() const { return n_unpriced_; }
  [[nodiscard]] std::vector<std::size_t> n_sizes() const {
    std::vector<std::size_t> all;
    for (const std::vector<SizeChoice>& sizes : sizes_) all.push_back(sizes.size());
    return all;
  }

  /// @param rank  in the order of mass or cost
  [[nodiscard]] parts::Design design(std::size_t rank) const {
    parts::Design changed = design_;
    std::size_t rest = order_[rank];
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      changed = with_size(changed, parts_[p], size_of(p, rest));
    }
    return changed;
  }

  [[nodiscard]] const std::vector<std::vector<SizeChoice>>& sizes() const { return sizes_; }

  /// Which size of each part.
  [[nodiscard]] std::vector<std::size_t> choice(std::size_t rank) const {
    std::vector<std::size_t> out;
    std::size_t rest = order_[rank];
    for (const std::vector<SizeChoice>& sizes : sizes_) {
      out.push_back(rest % sizes.size());
      rest /= sizes.size();
    }
    return out;
  }

  [[nodiscard]] PickedDesign picked(std::size_t rank, Judged judged) const {
    PickedDesign out{
        .sizes = {}, .steels = {}, .mass = 0.0, .cost = 0.0, .judged = std::move(judged)};
    std::size_t rest = order_[rank];
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      const SizeChoice& size = size_of(p, rest);
      out.sizes.push_back(size.item.label);
      out.steels.push_back(size.steel.description);
      out.mass += size.mass_per_length() * lengths_[p];
      out.cost += size.item.price * lengths_[p];
    }
    return out;
  }

 private:
  void keep_priced(std::vector<SizeChoice>& sizes, const std::string& part) {
    if (by_ != PickBy::cost) return;
    const std::size_t before = sizes.size();
    sizes.erase(std::remove_if(sizes.begin(), sizes.end(),
                               [](const SizeChoice& s) { return std::isnan(s.item.price); }),
                sizes.end());
    n_unpriced_ += before - sizes.size();
    if (sizes.empty()) {
      throw base::InputError(part,
                             "no size has a price: give --stock FILE with a column price_per_ft "
                             "or price_per_m");
    }
  }

  /// Takes the choice of one part off a combination's number.
  [[nodiscard]] const SizeChoice& size_of(std::size_t part, std::size_t& rest) const {
    const std::vector<SizeChoice>& sizes = sizes_[part];
    const SizeChoice& size = sizes[rest % sizes.size()];
    rest /= sizes.size();
    return size;
  }

  [[nodiscard]] double measure(std::size_t combination) const {
    double sum = 0.0;
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      sum += measure_of(size_of(p, combination), by_) * lengths_[p];
    }
    return sum;
  }

  const parts::Design& design_;
  const std::vector<std::string>& parts_;
  PickBy by_;
  std::vector<std::vector<SizeChoice>> sizes_;
  std::vector<double> lengths_;
  std::vector<std::size_t> order_;
  std::size_t n_unpriced_ = 0;
};

/// What the designs of a grid are judged by.
struct Judge {
  const Grid& grid;
  const GridScreen& screen;
  const Counted& counted;
  std::function<Watch(std::size_t rank)> watch_at;
};

/// Goes through every kGridLanes-th design, by mass: each must pass and be better than those before
/// it in its own lane and in the first, which is gone through before all others.
/// @param first  null = this is the first
GridLane lane_of(const Judge& judge, std::size_t lane, const GridLane* first) {
  const auto& [grid, screen, counted, watch_at] = judge;
  GridLane out;
  double best = 1.0;
  bool any = false;
  std::size_t next_of_first = 0;
  for (std::size_t rank = lane; rank < grid.size(); rank += kGridLanes) {
    while (first != nullptr && next_of_first < first->kept.size() &&
           first->kept[next_of_first].design < rank) {
      best = std::min(best, first->kept[next_of_first++].judged.utilization);
      any = true;
    }
    Judged found;
    const Watch watch = watch_at(rank);
    try {
      if (watch && watch({0.0, ""}) == Go::stop) throw Stopped{};
      if (screen.surely_over(grid.choice(rank), best)) {
        ++out.in_part;
        continue;
      }
      found = judged_until_over(grid.design(rank), counted, best, watch);
    } catch (const Stopped&) {
      out.complete = false;
      return out;
    }
    if (found.no_sense) {
      ++out.no_sense;
      continue;
    }
    ++(found.in_full ? out.in_full : out.in_part);
    const bool better = !any || is_less(found.utilization, best);
    if (found.verdict != Verdict::within || !found.in_full || !better) continue;
    best = found.utilization;
    any = true;
    out.kept.push_back({rank, std::move(found)});
  }
  return out;
}

/// Of all lanes what no other betters.
void keep_best(PickedGrid& out, const Grid& grid,
               const std::vector<std::optional<GridLane>>& lanes) {
  std::vector<GridLane::Kept> all;
  for (const std::optional<GridLane>& lane : lanes) {
    if (!lane) continue;
    out.in_full += lane->in_full;
    out.in_part += lane->in_part;
    out.no_sense += lane->no_sense;
    all.insert(all.end(), lane->kept.begin(), lane->kept.end());
  }
  std::sort(all.begin(), all.end(),
            [](const GridLane::Kept& a, const GridLane::Kept& b) { return a.design < b.design; });
  for (GridLane::Kept& kept : all) {
    if (!out.best.empty() &&
        !is_less(kept.judged.utilization, out.best.back().judged.utilization)) {
      continue;
    }
    PickedDesign next = grid.picked(kept.design, std::move(kept.judged));
    const auto measure = [&](const PickedDesign& d) {
      return out.by == PickBy::cost ? d.cost : d.mass;
    };
    if (!out.best.empty() && !(measure(next) > measure(out.best.back()))) out.best.pop_back();
    out.best.push_back(std::move(next));
  }
}

void refuse_twice(const std::vector<std::string>& parts) {
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (std::find(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(i), parts[i]) !=
        parts.begin() + static_cast<std::ptrdiff_t>(i)) {
      throw base::InputError(parts[i], "it is named twice");
    }
  }
}

}  // namespace

PickedGrid pick_grid(const parts::Design& design, const std::vector<std::string>& parts,
                     const std::vector<SizeLimits>& limits, PickBy by,
                     const std::vector<sections::StockItem>& more, const Watch& watch,
                     const Spread& spread, Share<GridLane>* share) {
  refuse_twice(parts);
  if (by == PickBy::outside) {
    throw base::InputError("--by", "several parts have no one diameter; mass or cost would do");
  }
  const Grid grid(design, parts, limits, by, more);
  PickedGrid out{.title = design.title,
                 .inches = design.inches,
                 .by = by,
                 .parts = parts,
                 .now = {},
                 .n_sizes = grid.n_sizes(),
                 .n_designs = grid.size(),
                 .n_unpriced = grid.n_unpriced(),
                 .best = {},
                 .others_over = {},
                 .assumed = {}};
  parts::Design base = design;
  for (const std::string& part : parts) {
    const parts::Stick& stick = *stick_of(base, part);
    out.now.push_back(fmt::format("{}, {}", sections::describe(stick.shape, design.inches),
                                  stick.material.description));
  }
  const Answer as_drawn = run(design, "as drawn", part_of(watch, 0.0, 0.0, "as drawn")).answer;
  const Counted counted = counted_beside(as_drawn, parts);
  const bool any_here = share == nullptr || share->which != 0;
  const GridScreen screen(design, parts, grid.sizes(), any_here ? counted : Counted{}, spread);
  std::atomic<std::size_t> n_done = 0;
  const auto watch_at = [&](std::size_t) {
    const double done = static_cast<double>(n_done++) / static_cast<double>(grid.size());
    return part_of(watch, done, done, "");
  };
  const Judge judge{grid, screen, counted, watch_at};
  // Every share goes through the first lane: the others take from it what they must be better than.
  const GridLane* known_first = share == nullptr ? nullptr : share->find(0);
  const GridLane first = known_first != nullptr ? *known_first : lane_of(judge, 0, nullptr);
  std::vector<std::optional<GridLane>> lanes(kGridLanes);
  if (first.complete) {
    spread_out(spread, kGridLanes, [&](std::size_t lane) {
      if (const GridLane* known = share == nullptr ? nullptr : share->find(lane)) {
        lanes[lane] = *known;
      } else if (share == nullptr || share->is_mine(lane)) {
        lanes[lane] = lane == 0 ? first : lane_of(judge, lane, &first);
      }
    });
  } else if (share == nullptr || share->is_mine(0)) {
    lanes.front() = first;
  }
  if (share != nullptr) {
    for (std::size_t lane = 0; lane < kGridLanes; ++lane) {
      if (lanes[lane] && lanes[lane]->complete) share->known.emplace(lane, *lanes[lane]);
    }
  }
  keep_best(out, grid, lanes);
  out.assumed = as_drawn.assumed;
  for (const checks::Finding& f : as_drawn.findings) {
    const bool seen =
        std::find(out.others_over.begin(), out.others_over.end(), f.part) != out.others_over.end();
    if (f.state != checks::State::within && !counted.is_asked(f.part) && !seen) {
      out.others_over.push_back(f.part);
    }
  }
  return out;
}

}  // namespace studies
