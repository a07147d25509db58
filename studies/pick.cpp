#include "studies/pick.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <functional>
#include <mutex>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "sections/tolerance.hpp"
#include "studies/growing_work.hpp"

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

/// @param minima  of each that was tried
void choose(Picked& out, const std::vector<std::optional<Judged>>& minima,
            const sections::Shape& now) {
  for (std::size_t i = 0; i < out.tried.size(); ++i) {
    const Candidate& candidate = out.tried[i];
    if (candidate.judged.verdict != Verdict::within) continue;
    if (!out.lightest) {
      out.lightest = candidate;
      out.lightest->at_minimum = minima[i];
      if (i > 0) out.next_down = out.tried[i - 1];
    } else if (!out.next_up) {
      out.next_up = candidate;
      out.next_up->at_minimum = minima[i];
    }
    if (!out.same_outside && same_outside(candidate.item.shape, now)) out.same_outside = candidate;
  }
}

/// The judgments of a list of sizes, as many as are wanted.
class Trials {
 public:
  Trials(const parts::Design& design, const std::string& part, const std::vector<SizeChoice>& sizes,
         Counted counted, const Watch& watch, const Spread& spread, Share<Judged>* share)
      : design_(design),
        part_(part),
        sizes_(sizes),
        other_tube_(other_tube_of(design, part)),
        counted_(std::move(counted)),
        watch_(watch),
        spread_(spread),
        share_(share),
        judgments_(sizes.size()),
        minima_(sizes.size()) {}

  void judge_all() {
    spread_out(spread_, sizes_.size(), [&](std::size_t i) {
      if (const Judged* known = share_ == nullptr ? nullptr : share_->find(i)) {
        judgments_[i] = *known;
      } else if (share_ == nullptr || share_->is_mine(i)) {
        judge(i);
      }
    });
    for (std::size_t i = 0; i < sizes_.size(); ++i) {
      if (judgments_[i] && share_ != nullptr) share_->known.emplace(i, *judgments_[i]);
    }
    done_ = n_judged();
    if (done_ < sizes_.size()) return;
    for (std::size_t i = 0; i < sizes_.size() && passing_.size() < kPassing; ++i) {
      if (passes(i)) passing_.push_back(i);
    }
    do_all(at_minimum());
  }

  /// In their order up to the second that passes, those of the outside that is there up to the
  /// first that passes, and in full the one before the first.
  void judge_around_the_first(const sections::Shape& now) {
    open_ = look_from(next_, kAtOnce);
    judge_what_is_needed(now);
    judge_up_to_two_passing();
    do_all(at_minimum());
    if (const std::optional<std::size_t> lighter = before_the_first()) judge(*lighter);
    judge_to_the_first(same_outside_from(now, passing_.empty() ? next_ : passing_.front() + 1));
    forget_looks();
    done_ = stopped_ ? n_judged() : sizes_.size();
    if (stopped_) std::fill(minima_.begin(), minima_.end(), std::nullopt);
  }

  [[nodiscard]] std::size_t n_done() const { return done_; }
  [[nodiscard]] std::vector<std::optional<Judged>> take() { return std::move(judgments_); }
  /// Of the first two that pass, with sizes as the mill may deliver them, where it is known how
  /// thin those are.
  [[nodiscard]] std::vector<std::optional<Judged>> take_minima() { return std::move(minima_); }

 private:
  // Sizes judged in full side by side.
  static constexpr std::size_t kAtOnce = 2;
  // That are named.
  static constexpr std::size_t kPassing = 2;

  void do_all(const std::vector<Piece>& pieces) {
    spread_out(spread_, pieces.size(), [&](std::size_t i) { pieces[i](); });
  }

  /// Of the first sizes that are left open all that is needed whatever the others come to, mostly
  /// all there is to do: what one of them asks for is begun while others are still judged.
  void judge_what_is_needed(const sections::Shape& now) {
    static_assert(kAtOnce <= kPassing, "each of them that passes is named");
    GrowingWork work;
    for (const std::size_t i : open_) {
      work.add([this, i, &work] {
        judge(i);
        if (!passes(i)) return;
        if (i == open_.front()) {
          if (const auto lighter = before(i)) work.add([this, lighter] { judge(*lighter); });
        }
        if (has_minimum(i)) work.add([this, i] { judge_minimum(i); });
      });
    }
    if (std::none_of(open_.begin(), open_.end(), [&](std::size_t i) { return is_like(i, now); })) {
      work.add([this, &now] {
        if (const auto open = first_open_like(now)) judge(*open);
      });
    }
    work.do_all(spread_);
  }

  [[nodiscard]] std::size_t n_judged() const {
    return static_cast<std::size_t>(
        std::count_if(judgments_.begin(), judgments_.end(),
                      [](const std::optional<Judged>& j) { return j.has_value(); }));
  }
  [[nodiscard]] parts::Design with(std::size_t i) const {
    return with_size(design_, part_, sizes_[i]);
  }
  [[nodiscard]] Watch watch_at(std::size_t i) {
    const double share = static_cast<double>(n_begun_++) / static_cast<double>(sizes_.size());
    return part_of(watch_, share, share, sizes_[i].item.label);
  }

  void judge(std::size_t i) {
    if (stopped_) return;
    try {
      const Judged* looked_at = judgments_[i] ? &*judgments_[i] : nullptr;
      judgments_[i] = judged(with(i), counted_, watch_at(i), other_tube_, looked_at);
    } catch (const Stopped&) {
      stopped_ = true;
    }
  }

  void look(std::size_t i) {
    const double share = static_cast<double>(i) / static_cast<double>(sizes_.size());
    if (watch_ && watch_({share, sizes_[i].item.label}) == Go::stop) stopped_ = true;
    if (!stopped_) judgments_[i] = judged_at_first_look(with(i), counted_);
  }

  /// From one on, side by side, as far as it takes to leave so many open. What others have gone
  /// beyond that is let go of: how far that is hangs on how many there are.
  /// @param next  gets the first that was not looked at
  /// @return those that are left open, ascending
  std::vector<std::size_t> look_from(std::size_t& next, std::size_t n_wanted) {
    const std::size_t from = next;
    std::vector<std::size_t> open;
    std::mutex of_open;
    std::atomic<std::size_t> end = sizes_.size();
    spread_out(spread_, end - from, [&](std::size_t k) {
      const std::size_t i = from + k;
      if (i >= end) return;
      look(i);
      if (!is_open(i)) return;
      const std::lock_guard<std::mutex> lock(of_open);
      open.insert(std::upper_bound(open.begin(), open.end(), i), i);
      if (open.size() >= n_wanted) end = open[n_wanted - 1] + 1;
    });
    next = end;
    open.erase(std::lower_bound(open.begin(), open.end(), next), open.end());
    std::fill(judgments_.begin() + static_cast<std::ptrdiff_t>(next), judgments_.end(),
              std::nullopt);
    return open;
  }

  [[nodiscard]] bool is_open(std::size_t i) const {
    return judgments_[i] && !judgments_[i]->in_full && judgments_[i]->verdict != Verdict::over;
  }
  [[nodiscard]] bool passes(std::size_t i) const {
    return judgments_[i] && judgments_[i]->in_full && judgments_[i]->verdict == Verdict::within;
  }

  /// The size before another, where it is not judged in full.
  [[nodiscard]] std::optional<std::size_t> before(std::size_t i) const {
    const bool in_part = i > 0 && judgments_[i - 1] && !judgments_[i - 1]->in_full;
    return in_part ? std::optional(i - 1) : std::nullopt;
  }
  [[nodiscard]] std::optional<std::size_t> before_the_first() const {
    return passing_.empty() ? std::nullopt : before(passing_.front());
  }

  void judge_open(const std::vector<std::size_t>& some) {
    spread_out(spread_, some.size(), [&](std::size_t k) {
      if (judgments_[some[k]] && !judgments_[some[k]]->in_full) judge(some[k]);
    });
  }

  /// A few at once.
  void judge_up_to_two_passing() {
    while (passing_.size() < kPassing && !stopped_) {
      if (open_.empty()) open_ = look_from(next_, kAtOnce);
      if (open_.empty()) break;
      judge_open(open_);
      for (const std::size_t i : open_) {
        if (passes(i) && passing_.size() < kPassing) passing_.push_back(i);
      }
      open_.clear();
    }
  }

  /// Whether it is of the outside that is there.
  [[nodiscard]] bool is_like(std::size_t i, const sections::Shape& now) const {
    return same_outside(sizes_[i].item.shape, now);
  }

  /// The first of that outside among those not looked at yet that a look leaves open.
  std::optional<std::size_t> first_open_like(const sections::Shape& now) {
    for (std::size_t i = next_; i < sizes_.size() && !stopped_; ++i) {
      if (!is_like(i, now)) continue;
      look(i);
      if (is_open(i)) return i;
    }
    return std::nullopt;
  }

  /// Those of the outside that is there, from one on, that a look leaves open; none where one of
  /// them passes already.
  std::vector<std::size_t> same_outside_from(const sections::Shape& now, std::size_t from) {
    std::vector<std::size_t> left;
    for (std::size_t i = 0; i < sizes_.size(); ++i) {
      if (!is_like(i, now)) continue;
      if (passes(i)) return {};
      if (i >= from) left.push_back(i);
    }
    spread_out(spread_, left.size(), [&](std::size_t n) {
      if (!judgments_[left[n]]) look(left[n]);
    });
    left.erase(std::remove_if(left.begin(), left.end(), [&](std::size_t i) { return !is_open(i); }),
               left.end());
    return left;
  }

  /// A few at once up to the first that passes.
  void judge_to_the_first(const std::vector<std::size_t>& some) {
    for (std::size_t k = 0; k < some.size() && !stopped_; k += kAtOnce) {
      const auto begin = some.begin() + static_cast<std::ptrdiff_t>(k);
      const std::vector<std::size_t> now(
          begin, begin + static_cast<std::ptrdiff_t>(std::min(kAtOnce, some.size() - k)));
      judge_open(now);
      if (std::any_of(now.begin(), now.end(), [&](std::size_t i) { return passes(i); })) return;
    }
  }

  /// Whether it is known how thin the mill may deliver it.
  [[nodiscard]] bool has_minimum(std::size_t i) const {
    return sections::minimum_material(sizes_[i].item.shape, sizes_[i].steel).known;
  }
  void judge_minimum(std::size_t i) {
    if (stopped_) return;
    minima_[i] = judged_at_minimum(with(i), {.asked = {part_}, .known = counted_.known},
                                   part_of(watch_, 1.0, 1.0, sizes_[i].item.label), other_tube_);
  }

  [[nodiscard]] std::vector<Piece> at_minimum() {
    std::vector<Piece> out;
    for (const std::size_t i : passing_) {
      if (!minima_[i] && has_minimum(i)) out.emplace_back([this, i] { judge_minimum(i); });
    }
    return out;
  }

  /// Of sizes that were looked at together with others, and left open.
  void forget_looks() {
    for (std::size_t i = 0; i < judgments_.size(); ++i) {
      if (is_open(i)) judgments_[i].reset();
    }
  }

  const parts::Design& design_;
  const std::string& part_;
  const std::vector<SizeChoice>& sizes_;
  std::string other_tube_;
  Counted counted_;
  const Watch& watch_;
  const Spread& spread_;
  Share<Judged>* share_;
  std::vector<std::optional<Judged>> judgments_;
  std::vector<std::optional<Judged>> minima_;
  std::size_t next_ = 0;           // the first that was not looked at
  std::vector<std::size_t> open_;  // to be judged next
  std::vector<std::size_t> passing_;
  std::atomic<std::size_t> n_begun_ = 0;
  std::atomic<bool> stopped_ = false;
  std::size_t done_ = 0;
};

}  // namespace

double measure_of(const SizeChoice& size, PickBy by) {
  if (by == PickBy::cost) return size.item.price;
  return by == PickBy::outside ? outside_of(size.item.shape) : size.mass_per_length();
}

std::string other_tube_of(const parts::Design& design, const std::string& part) {
  if (!design.arm || !parts::has_upper_arm(*design.arm)) return "";
  if (part == "arm.lower") return "upper arm";
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
             .scope = scope_of(design),
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
             .every = options.every,
             .n_sizes = sizes.size(),
             .n_done = 0,
             .n_unpriced = n_unpriced};
  AsDrawn drawn = as_drawn(design, {part}, part_of(watch, 0.0, 0.0, "as drawn"), spread);
  tell_others(out, drawn.answer, design, other_tube_of(design, part));
  out.assumed = drawn.answer.assumed;
  Trials trials(design, part, sizes, std::move(drawn.counted), watch, spread, share);
  if (options.every) {
    trials.judge_all();
  } else {
    trials.judge_around_the_first(now.shape);
  }
  out.n_done = trials.n_done();
  std::vector<std::optional<Judged>> judgments = trials.take();
  const std::vector<std::optional<Judged>> minima = trials.take_minima();
  std::vector<std::optional<Judged>> minima_of_tried;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (!judgments[i]) continue;
    const double mass_per_length = sizes[i].mass_per_length();
    out.tried.push_back({.item = sizes[i].item,
                         .steel = sizes[i].steel.description,
                         .mass_per_length = mass_per_length,
                         .judged = *std::move(judgments[i])});
    minima_of_tried.push_back(minima[i]);
  }
  choose(out, minima_of_tried, now.shape);
  return out;
}

}  // namespace studies
