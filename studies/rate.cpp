#include "studies/rate.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/patch.hpp"
#include "sections/stock.hpp"
#include "studies/design_caveats.hpp"
#include "studies/design_number.hpp"
#include "studies/run.hpp"
#include "studies/sized_part.hpp"

namespace studies {
namespace {

constexpr int kScanned = 9;
constexpr double kSpanLow = 0.4;
constexpr double kSpanHigh = 2.5;
constexpr double kClosedIn = 0.0005;
constexpr double kNear = 0.005;
constexpr double kProof = 0.001;
constexpr int kExpectedRuns = kScanned + 14;  // for the progress shown

/// `value` in whole steps of its third digit, rounded down, or up.  [SI]
double rounded(double value, double factor, bool down) {
  const double x = value / factor;
  if (x == 0.0) return value;
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(x))) - 2.0);
  return (down ? std::floor(x / step) : std::ceil(x / step)) * step * factor;
}

/// Tries values of the number in one design.
class Trial {
 public:
  Trial(const parts::Design& design, const Span& span, const cases::NumberAt& number,
        const Watch& watch)
      : design_(design), span_(span), number_(number), watch_(watch) {}

  /// In every load case and stiffness set, until one is found in which something does not hold.
  const RatedPoint& at(double value) {
    if (const RatedPoint* known = find(value)) return *known;
    std::optional<RatedPoint> point = stopped_where_known(value);
    return keep(point ? *std::move(point) : tried(value, {}));
  }

  [[nodiscard]] bool holds(double value) { return at(value).verdict == Verdict::within; }

  /// Looks only where other values came nearest to a limit or went over it. What does not hold
  /// there does not hold; what holds there may yet fail elsewhere.
  [[nodiscard]] bool may_hold(double value) {
    if (near_.empty()) return holds(value);
    if (const RatedPoint* known = find(value)) return known->verdict == Verdict::within;
    std::optional<RatedPoint> point = stopped_where_known(value);
    if (point) keep(*std::move(point));
    return !point;
  }

  /// All that are known to hold, in full, or not to, by value.
  [[nodiscard]] std::vector<RatedPoint> points() const {
    std::vector<RatedPoint> sorted(points_.begin(), points_.end());
    std::sort(sorted.begin(), sorted.end(),
              [](const RatedPoint& a, const RatedPoint& b) { return a.value < b.value; });
    return sorted;
  }

 private:
  [[nodiscard]] const RatedPoint* find(double value) const {
    const auto same = std::find_if(points_.begin(), points_.end(),
                                   [&](const RatedPoint& p) { return p.value == value; });
    return same == points_.end() ? nullptr : &*same;
  }

  const RatedPoint& keep(RatedPoint point) {
    if (point.worst) remember({point.worst->set, point.worst->load_case});
    points_.push_back(std::move(point));
    return points_.back();
  }

  /// The last one first: it is likely to say the same again.
  void remember(CellName cell) {
    constexpr std::size_t kMost = 3;
    if (cell.set.empty() || cell.load_case.empty()) return;
    near_.erase(std::remove(near_.begin(), near_.end(), cell), near_.end());
    near_.insert(near_.begin(), std::move(cell));
    if (near_.size() > kMost) near_.pop_back();
  }

  [[nodiscard]] std::optional<RatedPoint> stopped_where_known(double value) const {
    for (const CellName& cell : near_) {
      RatedPoint point = tried(value, {.load_cases = {cell.load_case}, .sets = {cell.set}});
      if (point.verdict != Verdict::within) return point;
    }
    return std::nullopt;
  }

  [[nodiscard]] RatedPoint tried(double value, const Counted& counted) const {
    RatedPoint point{.value = value};
    const std::string text = number_.text_of(value);
    const double done = std::min(static_cast<double>(points_.size()) / kExpectedRuns, 0.99);
    try {
      const parts::Design changed = with_number(design_, span_.path, value);
      const Answer answer =
          run_until_over(changed, text, counted, 1.0, part_of(watch_, done, done, text)).answer;
      point.verdict = answer.verdict;
      if (!answer.findings.empty()) point.worst = answer.findings.front();
    } catch (const base::InputError& error) {
      point.refused = error.what();
    }
    return point;
  }

  const parts::Design& design_;
  const Span& span_;
  const cases::NumberAt& number_;
  const Watch& watch_;
  std::deque<RatedPoint> points_;  // those before stay where they are
  std::vector<CellName> near_;
};

/// Between a value that holds and one that does not, either the larger, where the limit was come
/// nearest to.
/// @return the two, close together; the first may fail elsewhere
std::pair<double, double> closed_in(Trial& trial, double holds, double fails) {
  while (std::abs(fails - holds) > kClosedIn * std::max(std::abs(fails), std::abs(holds))) {
    const double middle = 0.5 * (holds + fails);
    (trial.may_hold(middle) ? holds : fails) = middle;
  }
  return {holds, fails};
}

/// Where the values hold up to, with the nearest that does not.
struct End {
  RatedPoint holds;
  RatedPoint fails;
  double inside = base::kUnset;  ///< before it is rounded
};

/// Closes in on what was seen to stop it, until all else holds there too.
End end_between(Trial& trial, double holds, double fails, double factor) {
  for (;;) {
    const auto [inside, outside] = closed_in(trial, holds, fails);
    const double step = std::copysign(kProof * std::abs(inside), fails - holds);
    const bool beyond = (inside - step - holds) * step > 0.0;
    const double beside = beyond ? inside - step : holds;
    if (!trial.holds(beside)) {
      fails = beside;
      continue;
    }
    const double round = rounded(inside, factor, fails > holds);
    // Rounding may leave the run of values that hold where that is narrow.
    const bool kept = (round - holds) * (fails - holds) >= 0.0 && trial.holds(round);
    return {trial.at(kept ? round : beside), trial.at(outside), inside};
  }
}

std::vector<double> scanned(const Span& span) {
  std::vector<double> values;
  const bool by_ratio = span.from > 0.0;
  for (int i = 0; i < kScanned; ++i) {
    const double share = static_cast<double>(i) / (kScanned - 1);
    values.push_back(by_ratio ? span.from * std::pow(span.to / span.from, share)
                              : span.from + share * (span.to - span.from));
  }
  values.front() = span.from;
  values.back() = span.to;
  return values;
}

/// Outsides or walls in stock that lie in the span, where that is the number: what can be bought is
/// tried, whatever the scan steps over.
std::vector<double> in_stock(const parts::Design& design, const Span& span) {
  const std::size_t dot = span.path.rfind('.');
  if (dot == std::string::npos) return {};
  const std::string name = span.path.substr(dot + 1);
  if (name != "outside" && name != "wall") return {};
  parts::Design copy = design;
  const parts::Stick* stick = stick_of(copy, span.path.substr(0, dot));
  if (stick == nullptr || !std::holds_alternative<sections::RoundTube>(stick->shape)) return {};
  std::vector<double> out;
  for (const sections::StockItem& item : sections::stock_like(stick->shape, design.inches, {})) {
    const auto* tube = std::get_if<sections::RoundTube>(&item.shape);
    if (tube == nullptr || (name == "wall" && !same_outside(item.shape, stick->shape))) continue;
    const double value = name == "wall" ? tube->wall : tube->outside;
    if (span.from < value && value < span.to) out.push_back(value);
  }
  return out;
}

/// First and last of the run of values that hold: that around `now`, or else the next below it, or
/// else the next above.
std::optional<std::pair<std::size_t, std::size_t>> run_of(Trial& trial,
                                                          const std::vector<double>& values,
                                                          double now) {
  std::optional<std::pair<std::size_t, std::size_t>> chosen;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!trial.holds(values[i])) continue;
    std::size_t last = i;
    while (last + 1 < values.size() && trial.holds(values[last + 1])) ++last;
    if (!chosen || values[i] <= now) chosen = {i, last};
    i = last;
  }
  return chosen;
}

/// A thousandth on either side of the limit: there all holds, and no more.
void prove(Rated& out, Trial& trial, double limit, double from) {
  const double step = kProof * std::abs(limit);
  out.limit = limit;
  out.proved = trial.holds(std::max(limit - step, from)) && !trial.holds(limit + step);
}

/// Whether a design has the number at all: a variant may leave its part out, or put a bar where a
/// tube's wall was.
bool has_number(const parts::Design& design, const std::string& path) {
  try {
    static_cast<void>(number_of(design, path));
    return true;
  } catch (const base::InputError&) {
    return false;
  }
}

Rated rated(Trial& trial, const Span& span, const cases::NumberAt& number,
            const std::vector<double>& stock) {
  Rated out;
  std::vector<double> values = scanned(span);
  values.insert(values.end() - 1, stock.begin(), stock.end());
  const auto near = [&](double value) {
    return std::abs(value - number.si) <= kNear * std::abs(number.si);
  };
  if (span.from < number.si && number.si < span.to) {
    values.erase(std::remove_if(values.begin() + 1, values.end() - 1, near), values.end() - 1);
    values.push_back(number.si);
  }
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
  for (const double value : values) static_cast<void>(trial.at(value));
  if (const auto chosen = run_of(trial, values, number.si)) {
    const auto [first, last] = *chosen;
    if (first > 0) {
      const End end = end_between(trial, values[first], values[first - 1], number.factor);
      out.holds_from = end.holds;
      out.fails_below = end.fails;
    }
    out.to_the_end = last + 1 == values.size();
    if (out.to_the_end) {
      out.holds_to = trial.at(values[last]);
    } else {
      const End end = end_between(trial, values[last], values[last + 1], number.factor);
      out.holds_to = end.holds;
      out.fails_at = end.fails;
      prove(out, trial, end.inside, values.front());
    }
    for (std::size_t i = 0; i < values.size(); ++i) {
      out.holds_again = out.holds_again || ((i < first || i > last) && trial.holds(values[i]));
    }
  }
  out.points = trial.points();
  return out;
}

/// Where its limit is, or, where nothing holds, with the number of the case.
parts::Design at_its_limit(const parts::Design& design, const Rated& found, const Span& span,
                           const cases::NumberAt& number) {
  return with_number(design, span.path, found.holds_to ? found.holds_to->value : number.si);
}

Span full_span(Span span, const cases::NumberAt& now) {
  if (std::isnan(span.from)) span.from = std::min(kSpanLow * now.si, kSpanHigh * now.si);
  if (std::isnan(span.to)) span.to = std::max(kSpanLow * now.si, kSpanHigh * now.si);
  if (span.from < span.to) return span;
  if (span.from > span.to) {
    throw base::InputError(span.path,
                           fmt::format("--from {} is more than --to {}: the other way round",
                                       now.text_of(span.from), now.text_of(span.to)));
  }
  throw base::InputError(span.path,
                         fmt::format("nothing lies between {} and {}; give --from and --to",
                                     now.text_of(span.from), now.text_of(span.to)));
}

}  // namespace

Rating rate(const parts::Design& design, const Span& span, const Watch& watch, const Spread& spread,
            Share<Rated>* share) {
  const parts::Design thin = cases::apply(design, {"", {{"sizes", "minimum"}}});
  const cases::NumberAt now = number_of(thin, span.path);
  Rating out{.title = design.title,
             .inches = design.inches,
             .scope = scope_of(design),
             .span = full_span(span, now),
             .now = now,
             .designs = {}};
  std::vector<parts::Variant> variants = {{"as drawn", {}}};
  variants.insert(variants.end(), design.variants.begin(), design.variants.end());
  const double part = 1.0 / static_cast<double>(variants.size());
  out.designs.resize(variants.size());
  spread_out(spread, variants.size(), [&](std::size_t i) {
    Rated& one = out.designs[i];
    if (const Rated* known = share == nullptr ? nullptr : share->find(i)) {
      one = *known;
      return;
    }
    if (share != nullptr && !share->is_mine(i)) return;
    const double from = static_cast<double>(i) * part;
    const Watch seen = part_of(watch, from, from + part, variants[i].name);
    try {
      const parts::Design changed = cases::apply(thin, variants[i]);
      if (has_number(changed, span.path)) {
        Trial trial(changed, out.span, now, seen);
        one = rated(trial, out.span, now, in_stock(changed, out.span));
        one.beware = more_caveats(at_its_limit(changed, one, out.span, now), thin);
      } else {
        one.failure = fmt::format("this variant has no {}", span.path);
      }
    } catch (const base::InputError& error) {
      one.failure = error.what();
    } catch (const Stopped&) {
      one.stopped = true;
    }
    one.name = variants[i].name;
  });
  if (share == nullptr) return out;
  for (std::size_t i = 0; i < variants.size(); ++i) {
    if (share->is_mine(i) && !out.designs[i].stopped) share->known.emplace(i, out.designs[i]);
  }
  return out;
}

}  // namespace studies
