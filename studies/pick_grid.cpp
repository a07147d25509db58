#include "studies/pick_grid.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <iterator>
#include <map>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "sections/tolerance.hpp"
#include "studies/first_look.hpp"
#include "studies/grid_screen.hpp"

namespace studies {
namespace {

// Utilizations are compared in steps of half a percent of the limit: what gains less weighs more
// for nothing. By steps, since of three designs the first may otherwise be no worse than the second
// and the second than the third, yet the first worse than the third.
constexpr double kStep = 5.0e-3;
constexpr int kSeedRounds = 60;
// From round to round, of what was shown of a size: it need not be so beside others.
constexpr double kFades = 0.98;
constexpr std::size_t kMostPromising = 65536;
// Designs solved beforehand where no frame is condensed.
constexpr std::size_t kBlindSeeds = 16;

double step_of(double utilization) {
  return std::ceil(utilization / kStep);
}

bool is_less(double utilization, double than) {
  return step_of(utilization) < step_of(than);
}

/// What a design may come to that is to be less than another; than nothing: to pass.
double most_under(const std::optional<double>& than) {
  return than ? kStep * (step_of(*than) - 1.0) : 1.0;
}

/// A design and what it weighs or costs.
struct Weighed {
  double measure = base::kUnset;
  std::size_t design = 0;
  [[nodiscard]] bool operator<(const Weighed& other) const {
    return measure < other.measure || (measure == other.measure && design < other.design);
  }
};

/// Designs known so far that no other betters: as many as there are steps of utilization, whatever
/// the number of designs.
class Front {
 public:
  struct Step {
    Weighed at;
    double utilization;
  };

  /// The utilization of the best that comes before a design; nothing where none does.
  [[nodiscard]] std::optional<double> before(const Weighed& at) const {
    const auto next = first_from(at);
    if (next == steps_.begin()) return std::nullopt;
    return std::prev(next)->utilization;
  }
  void add(const Weighed& at, double utilization) {
    auto next = steps_.begin() + (first_from(at) - steps_.cbegin());
    next = std::next(steps_.insert(next, {at, utilization}));
    const auto end = std::find_if(next, steps_.end(),
                                  [&](const Step& s) { return s.utilization < utilization; });
    steps_.erase(next, end);
  }
  [[nodiscard]] const std::vector<Step>& steps() const { return steps_; }

 private:
  [[nodiscard]] std::vector<Step>::const_iterator first_from(const Weighed& at) const {
    return std::lower_bound(steps_.begin(), steps_.end(), at,
                            [](const Step& s, const Weighed& w) { return s.at < w; });
  }
  std::vector<Step> steps_;
};

/// The sizes of each part, and every combination of them by its number.
class Grid {
 public:
  Grid(const parts::Design& design, const std::vector<std::string>& parts,
       const std::vector<SizeLimits>& limits, PickBy by,
       const std::vector<sections::StockItem>& more)
      : design_(design), parts_(parts), by_(by) {
    for (std::size_t p = 0; p < parts.size(); ++p) {
      std::vector<SizeChoice> sizes = sizes_for(design, parts[p], limits[p], more);
      keep_priced(sizes, parts[p]);
      lengths_.push_back(length_of(design, parts[p]));
      std::vector<double>& measures = measures_.emplace_back();
      for (const SizeChoice& size : sizes) {
        measures.push_back(measure_of(size, by) * lengths_.back());
      }
      size_ *= sizes.size();
      sizes_.push_back(std::move(sizes));
    }
  }

  [[nodiscard]] std::size_t size() const { return size_; }
  [[nodiscard]] std::size_t n_unpriced() const { return n_unpriced_; }
  [[nodiscard]] std::vector<std::size_t> n_sizes() const {
    std::vector<std::size_t> all;
    for (const std::vector<SizeChoice>& sizes : sizes_) all.push_back(sizes.size());
    return all;
  }

  [[nodiscard]] parts::Design design(std::size_t number) const {
    parts::Design changed = design_;
    std::size_t rest = number;
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      changed = with_size(changed, parts_[p], size_of(p, rest));
    }
    return changed;
  }

  [[nodiscard]] const std::vector<std::vector<SizeChoice>>& sizes() const { return sizes_; }

  /// Which size of each part.
  [[nodiscard]] std::vector<std::size_t> choice(std::size_t number) const {
    std::vector<std::size_t> out;
    std::size_t rest = number;
    for (const std::vector<SizeChoice>& sizes : sizes_) {
      out.push_back(rest % sizes.size());
      rest /= sizes.size();
    }
    return out;
  }

  /// The number of the design whose sizes are a part of the way from the lightest to the heaviest.
  [[nodiscard]] std::size_t along(std::size_t step, std::size_t of) const {
    std::size_t number = 0;
    for (std::size_t p = sizes_.size(); p-- > 0;) {
      number = number * sizes_[p].size() + step * (sizes_[p].size() - 1) / of;
    }
    return number;
  }

  [[nodiscard]] Weighed weighed(std::size_t number) const {
    Weighed out{0.0, number};
    for (const std::vector<double>& measures : measures_) {
      out.measure += measures[number % measures.size()];
      number /= measures.size();
    }
    return out;
  }

  /// Whether it is known how thin the mill may deliver each of its sizes.
  [[nodiscard]] bool minimum_is_known(std::size_t number) const {
    std::size_t rest = number;
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      const SizeChoice& size = size_of(p, rest);
      if (!sections::minimum_material(size.item.shape, size.steel).known) return false;
    }
    return true;
  }

  [[nodiscard]] PickedDesign picked(std::size_t number, Judged judged) const {
    PickedDesign out{
        .sizes = {}, .steels = {}, .mass = 0.0, .cost = 0.0, .judged = std::move(judged)};
    std::size_t rest = number;
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

  const parts::Design& design_;
  const std::vector<std::string>& parts_;
  PickBy by_;
  std::vector<std::vector<SizeChoice>> sizes_;
  std::vector<double> lengths_;
  std::vector<std::vector<double>> measures_;  ///< of each size of each part
  std::size_t size_ = 1;
  std::size_t n_unpriced_ = 0;
};

/// What the designs of a grid are judged by.
struct Judge {
  const Grid& grid;
  const GridScreen& screen;
  const Counted& counted;
  Watch watch;
  std::atomic<std::size_t>& n_done;
};

void look_at_watch(const Judge& judge) {
  if (judge.watch && judge.watch({0.0, ""}) == Go::stop) throw Stopped{};
}

void see(const Judge& judge, std::size_t design, const Judged& found, GridScreen::Seen& seen) {
  if (std::isnan(found.utilization)) return;
  judge.screen.see(judge.grid.choice(design),
                   {found.part, found.check, found.load_case, found.utilization}, seen);
}

/// A design that may better what is known, by first order.
struct Promising {
  Weighed at;
  double likely;
};

/// Designs that seem better than what is known, a bounded number of them whatever the grid: the
/// others are left to their lanes.
/// @param front  no more than what no other of a lane betters
std::vector<Promising> promising(const Judge& judge, const Spread& spread, const Front& known,
                                 bool front) {
  const Grid& grid = judge.grid;
  std::vector<std::vector<Promising>> found(kGridLanes);
  spread_out(spread, kGridLanes, [&](std::size_t lane) {
    GridScreen::Hint hint;
    Front own;
    for (std::size_t i = lane; i < grid.size(); i += kGridLanes) {
      if (i / kGridLanes % 64 == 0) look_at_watch(judge);
      const Weighed at = grid.weighed(i);
      double bound = most_under(known.before(at));
      if (front) bound = std::min(bound, most_under(own.before(at)));
      const double likely = judge.screen.likely(grid.choice(i), bound, hint);
      if (!(likely <= bound)) continue;
      if (front) {
        own.add(at, likely);
      } else if (found[lane].size() < kMostPromising / kGridLanes) {
        found[lane].push_back({at, likely});
      }
    }
    for (const Front::Step& step : own.steps()) found[lane].push_back({step.at, step.utilization});
  });
  std::vector<Promising> all;
  for (const std::vector<Promising>& some : found) all.insert(all.end(), some.begin(), some.end());
  std::sort(all.begin(), all.end(),
            [](const Promising& a, const Promising& b) { return a.at < b.at; });
  return all;
}

/// From the lightest of every part to the heaviest.
std::vector<Weighed> blind_seeds(const Grid& grid) {
  std::vector<Weighed> seeds;
  for (std::size_t i = 0; i <= kBlindSeeds; ++i) {
    const Weighed next = grid.weighed(grid.along(i, kBlindSeeds));
    if (seeds.empty() || seeds.back().design != next.design) seeds.push_back(next);
  }
  return seeds;
}

/// Solves the designs in full that seem to be the front, in rounds, until none seems to better
/// those that are known: so that of the whole grid few are left to solve. Each round takes those
/// that none of the others betters by first order and by what was shown; they are solved side by
/// side.
class FirstLane {
 public:
  FirstLane(const Judge& judge, const std::vector<std::string>& parts, const Spread& spread)
      : judge_(judge), parts_(parts), spread_(spread) {
    for (const std::size_t n : judge.grid.n_sizes()) shown_.emplace_back(n, 0.0);
  }

  GridLane result() {
    try {
      if (judge_.screen.n_looks() == 0) {
        solve(blind_seeds(judge_.grid));
      } else {
        solve_promising();
      }
    } catch (const Stopped&) {
      out_.complete = false;
    }
    for (const Front::Step& step : known_.steps()) {
      out_.kept.push_back({step.at.design, passing_.at(step.at.design)});
    }
    return std::move(out_);
  }

  [[nodiscard]] const GridScreen::Seen& seen() const { return seen_; }

  /// The designs it has done, ascending.
  [[nodiscard]] std::vector<std::size_t> done() const {
    std::vector<std::size_t> sorted = done_;
    std::sort(sorted.begin(), sorted.end());
    return sorted;
  }

 private:
  void solve_promising() {
    rounds(promising(judge_, spread_, known_, true), 1);
    std::vector<Promising> left = promising(judge_, spread_, known_, false);
    const std::vector<std::size_t> before = done();
    left.erase(std::remove_if(left.begin(), left.end(),
                              [&](const Promising& one) {
                                return std::binary_search(before.begin(), before.end(),
                                                          one.at.design);
                              }),
               left.end());
    rounds(std::move(left), kSeedRounds);
  }

  void rounds(std::vector<Promising> left, int most_rounds) {
    double fades = 1.0;
    for (int round = 0; round < most_rounds; ++round, fades *= kFades) {
      std::vector<Weighed> seeds;
      std::vector<Promising> later;
      double best = 1.0;
      for (const Promising& one : left) {
        const double likely = std::max(one.likely, fades * shown(one.at));
        const double most = most_under(known_.before(one.at));
        if (likely > most) continue;
        if (likely > best) {
          later.push_back(one);
        } else if (!is_surely_over(one.at, most)) {
          best = most_under(likely);
          seeds.push_back(one.at);
        }
      }
      if (seeds.empty()) return;
      solve(seeds);
      left = std::move(later);
    }
  }

  [[nodiscard]] bool is_surely_over(const Weighed& at, double most) {
    return judge_.screen.surely_over(judge_.grid.choice(at.design), most, hint_, seen_);
  }

  void solve(const std::vector<Weighed>& seeds) {
    std::vector<Judged> found(seeds.size());
    std::vector<double> most;
    for (const Weighed& seed : seeds) most.push_back(most_under(known_.before(seed)));
    std::vector<Counted> looking(seeds.size(), counted_);
    spread_out(spread_, seeds.size(), [&](std::size_t i) {
      look_at_watch(judge_);
      found[i] =
          judged_until_over(judge_.grid.design(seeds[i].design), looking[i], most[i], judge_.watch);
    });
    // Where the last of them was over, those of the next round are looked at first.
    counted_.look_first = looking.back().look_first;
    for (std::size_t i = 0; i < seeds.size(); ++i) take(seeds[i], most[i], std::move(found[i]));
  }

  void take(const Weighed& at, double most, Judged found) {
    ++judge_.n_done;
    done_.push_back(at.design);
    see(judge_, at.design, found, seen_);
    if (found.no_sense) {
      ++out_.no_sense;
      return;
    }
    ++(found.in_full ? out_.in_full : out_.in_part);
    const bool passes = found.verdict == Verdict::within && found.in_full;
    const double least = passes ? found.utilization : most;
    const std::vector<std::size_t> choice = judge_.grid.choice(at.design);
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      // What the condensed frame tells by itself need not be shown.
      if (found.check != kFrameStability || !belongs(found.part, parts_[p])) continue;
      shown_[p][choice[p]] = std::max(shown_[p][choice[p]], least);
    }
    const std::optional<double> bound = known_.before(at);
    if (!passes || (bound && !is_less(found.utilization, *bound))) return;
    known_.add(at, found.utilization);
    passing_.emplace(at.design, std::move(found));
  }

  /// What was shown of its sizes, whatever the others are: the utilization of a part that the
  /// condensed frame does not know, where the frame's stability governs.
  [[nodiscard]] double shown(const Weighed& at) const {
    double most = 0.0;
    const std::vector<std::size_t> choice = judge_.grid.choice(at.design);
    for (std::size_t p = 0; p < choice.size(); ++p) most = std::max(most, shown_[p][choice[p]]);
    return most;
  }

  const Judge& judge_;
  const std::vector<std::string>& parts_;
  const Spread& spread_;
  Counted counted_ = judge_.counted;
  Front known_;
  std::map<std::size_t, Judged> passing_;
  std::vector<std::vector<double>> shown_;  ///< of each size of each part
  std::vector<std::size_t> done_;
  GridScreen::Seen seen_;
  GridScreen::Hint hint_;
  GridLane out_;
};

/// Goes through every design of a lane: each must pass and be better than what is lighter in its
/// own lane and in the first.
/// @param done  by the first, ascending
/// @param seen  by the first
GridLane lane_of(const Judge& judge, std::size_t lane, const GridLane& first,
                 const std::vector<std::size_t>& done, GridScreen::Seen seen) {
  const Grid& grid = judge.grid;
  GridLane out;
  Front known;
  for (const GridLane::Kept& kept : first.kept) {
    known.add(grid.weighed(kept.design), kept.judged.utilization);
  }
  Counted counted = judge.counted;
  GridScreen::Hint hint;
  for (std::size_t i = lane - 1; i < grid.size(); i += kGridLanes - 1) {
    if (std::binary_search(done.begin(), done.end(), i)) continue;
    ++judge.n_done;
    const Weighed at = grid.weighed(i);
    const double best = most_under(known.before(at));
    Judged found;
    try {
      look_at_watch(judge);
      if (judge.screen.surely_over(grid.choice(i), best, hint, seen)) {
        ++out.in_part;
        continue;
      }
      found = judged_until_over(grid.design(i), counted, best, judge.watch);
    } catch (const Stopped&) {
      out.complete = false;
      return out;
    }
    if (found.no_sense) {
      ++out.no_sense;
      continue;
    }
    see(judge, i, found, seen);
    ++(found.in_full ? out.in_full : out.in_part);
    if (found.verdict != Verdict::within || !found.in_full) continue;
    known.add(at, found.utilization);
    out.kept.push_back({i, std::move(found)});
  }
  return out;
}

/// Of all lanes what no other betters.
/// @return the numbers of those designs
std::vector<std::size_t> keep_best(PickedGrid& out, const Grid& grid,
                                   const std::vector<std::optional<GridLane>>& lanes) {
  std::vector<std::size_t> numbers;
  std::vector<GridLane::Kept> all;
  for (const std::optional<GridLane>& lane : lanes) {
    if (!lane) continue;
    out.in_full += lane->in_full;
    out.in_part += lane->in_part;
    out.no_sense += lane->no_sense;
    all.insert(all.end(), lane->kept.begin(), lane->kept.end());
  }
  std::sort(all.begin(), all.end(), [&](const GridLane::Kept& a, const GridLane::Kept& b) {
    return grid.weighed(a.design) < grid.weighed(b.design);
  });
  for (GridLane::Kept& kept : all) {
    if (!out.best.empty() &&
        !is_less(kept.judged.utilization, out.best.back().judged.utilization)) {
      continue;
    }
    PickedDesign next = grid.picked(kept.design, std::move(kept.judged));
    const auto measure = [&](const PickedDesign& d) {
      return out.by == PickBy::cost ? d.cost : d.mass;
    };
    if (!out.best.empty() && !(measure(next) > measure(out.best.back()))) {
      out.best.pop_back();
      numbers.pop_back();
    }
    out.best.push_back(std::move(next));
    numbers.push_back(kept.design);
  }
  return numbers;
}

/// Judges those that are named again, with sizes as the mill may deliver them.
void judge_best_at_minimum(PickedGrid& out, const Grid& grid,
                           const std::vector<std::size_t>& numbers, const Counted& counted,
                           const Watch& watch, const Spread& spread) {
  spread_out(spread, numbers.size(), [&](std::size_t i) {
    if (!grid.minimum_is_known(numbers[i])) return;
    out.best[i].at_minimum = judged_at_minimum(grid.design(numbers[i]), counted, watch);
  });
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
                 .scope = scope_of(design),
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
  const AsDrawn drawn = as_drawn(design, parts, part_of(watch, 0.0, 0.0, "as drawn"), spread);
  const Counted& counted = drawn.counted;
  const bool any_here = share == nullptr || share->which != 0;
  const GridScreen screen(design, parts, grid.sizes(), any_here ? counted : Counted{}, spread);
  std::atomic<std::size_t> n_done = 0;
  Watch over_all;
  if (watch) {
    over_all = [&](const Progress& progress) {
      const double done = static_cast<double>(n_done) / static_cast<double>(grid.size());
      return watch({done, progress.what});
    };
  }
  const Judge judge{grid, screen, counted, over_all, n_done};
  // Every share goes through the first lane: the others take from it what they must be better than.
  const GridLane* known_first = share == nullptr ? nullptr : share->find(0);
  FirstLane first_lane(judge, parts, spread);
  const GridLane first = known_first != nullptr ? *known_first : first_lane.result();
  const std::vector<std::size_t> done = first_lane.done();
  std::vector<std::optional<GridLane>> lanes(kGridLanes);
  lanes.front() = first;
  if (first.complete) {
    spread_out(spread, kGridLanes - 1, [&](std::size_t before) {
      const std::size_t lane = before + 1;
      if (const GridLane* known = share == nullptr ? nullptr : share->find(lane)) {
        lanes[lane] = *known;
      } else if (share == nullptr || share->is_mine(lane)) {
        lanes[lane] = lane_of(judge, lane, first, done, first_lane.seen());
      }
    });
  }
  if (share != nullptr && !share->is_mine(0) && known_first == nullptr) lanes.front().reset();
  if (share != nullptr) {
    for (std::size_t lane = 0; lane < kGridLanes; ++lane) {
      if (lanes[lane] && lanes[lane]->complete) share->known.emplace(lane, *lanes[lane]);
    }
  }
  const std::vector<std::size_t> numbers = keep_best(out, grid, lanes);
  if (out.n_done() == out.n_designs) {
    judge_best_at_minimum(out, grid, numbers, counted, over_all, spread);
  }
  out.assumed = drawn.answer.assumed;
  for (const checks::Finding& f : drawn.answer.findings) {
    const bool seen =
        std::find(out.others_over.begin(), out.others_over.end(), f.part) != out.others_over.end();
    if (f.state != checks::State::within && !counted.is_asked(f.part) && !seen) {
      out.others_over.push_back(f.part);
    }
  }
  return out;
}

}  // namespace studies
