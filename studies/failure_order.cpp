#include "studies/failure_order.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include "studies/criterion.hpp"
#include "studies/worst_case.hpp"

namespace studies {
namespace {

using How = GivesAt::How;

/// Demand over capacity at one multiple of the load.
struct Seen {
  double multiple;
  double ratio;
  /// multiple / ratio - multiple: a straight line for a beam-column, 0 at the limit.
  [[nodiscard]] double spare() const { return multiple / ratio - multiple; }
};

bool is_of_piece(Criterion::Kind kind) {
  return kind == Criterion::Kind::yield || kind == Criterion::Kind::column ||
         kind == Criterion::Kind::thin_wall;
}

/// A bar or a tube, which bends before it breaks; brackets are of plates.
bool is_bar(const Criterion& criterion, const parts::Assembly& assembly) {
  return is_of_piece(criterion.kind) &&
         !(assembly.root && assembly.pieces[criterion.index].part == assembly.root->part);
}

How how_it_gives(const Criterion& criterion) {
  if (!is_of_piece(criterion.kind)) return How::breaks;
  return criterion.kind == Criterion::Kind::column ? How::buckles : How::bends;
}

/// Where the ratio reaches 1, from the multiples at which it is known; infinite when that is
/// beyond what is searched, NaN when the ratio is not known.
double limit_between(const std::vector<Seen>& seen) {
  constexpr double kNever = std::numeric_limits<double>::infinity();
  if (std::any_of(seen.begin(), seen.end(), [](const Seen& s) { return std::isnan(s.ratio); })) {
    return base::kUnset;
  }
  if (!(seen.back().ratio > 0.0)) return kNever;
  if (!(seen.front().ratio < 1.0)) return seen.front().multiple / seen.front().ratio;
  const auto past =
      std::find_if(seen.begin(), seen.end(), [](const Seen& s) { return !(s.ratio < 1.0); });
  const auto b = past == seen.end() ? seen.end() - 1 : past;
  const auto a = b - 1;
  if (b == seen.begin() || !(a->ratio > 0.0)) return b->multiple / b->ratio;
  const double slope = (b->spare() - a->spare()) / (b->multiple - a->multiple);
  if (!(slope < 0.0)) return kNever;
  double limit = b->multiple - b->spare() / slope;
  // What has hardly any demand yet may have grown from next to nothing: beyond what was looked at
  // it is taken to grow as the square of the load at most.
  if (b->ratio < 1.0) limit = std::max(limit, b->multiple / std::sqrt(b->ratio));
  return limit < kHighestMultiple ? limit : kNever;
}

/// @param strong  null = as the cell judges it
double limit_in(const Cell& cell, const Criterion& criterion, const parts::Assembly* strong,
                double second) {
  const auto ratio = [&](double multiple, const CaseSolution& solved) {
    if (strong == nullptr) return cell.ratio_at(criterion, multiple);
    // A stress over the yield strength, wherever it is.
    if (criterion.kind == Criterion::Kind::yield) {
      return cell.ratio_at(criterion, multiple) / kOverstrength;
    }
    return demand_over_capacity(criterion, *strong, cell.judged_by(criterion, solved), multiple);
  };
  std::vector<Seen> seen;
  // A load that the frame does not carry tells nothing of one part.
  const auto look = [&](double multiple, const CaseSolution& solved) {
    if (!carried(solved)) return;
    seen.push_back({multiple, ratio(multiple, solved)});
  };
  if (cell.in_proportion()) second = 1.0;
  if (second < 1.0) look(second, cell.at(second));
  look(1.0, cell.kept(1.0));
  if (second > 1.0) look(second, cell.at(second));
  return seen.empty() ? std::numeric_limits<double>::infinity() : limit_between(seen);
}

/// Of a bar or tube only what gives first counts; of other parts each check does.
void add(std::vector<GivesAt>& order, GivesAt gives) {
  const auto same = std::find_if(order.begin(), order.end(), [&](const GivesAt& other) {
    return other.part == gives.part && (gives.bar || other.check == gives.check);
  });
  if (same == order.end()) {
    order.push_back(std::move(gives));
  } else if (gives.multiple < same->multiple) {
    *same = std::move(gives);
  }
}

/// The multiples at which the first tube or bar gives, and at which the first thing breaks.
std::pair<double, double> firsts(const FailureOrder& order) {
  constexpr double kNever = std::numeric_limits<double>::infinity();
  const auto first = [&](const auto& of_kind) {
    const auto found = std::find_if(order.order.begin(), order.order.end(), of_kind);
    return found == order.order.end() ? kNever : found->multiple;
  };
  return {first([](const GivesAt& g) { return g.bar; }),
          first([](const GivesAt& g) { return g.how == How::breaks; })};
}

}  // namespace

parts::Assembly with_overstrength(const parts::Assembly& nominal) {
  parts::Assembly strong = nominal;
  for (parts::Piece& piece : strong.pieces) {
    piece.material.yield *= kOverstrength;
    piece.material.haz_yield *= kOverstrength;
  }
  return strong;
}

FailureOrder failure_order(const Cell& cell, const parts::Assembly& strong,
                           const std::vector<CriticalFactor>& critical, double second) {
  FailureOrder out{.load_case = cell.load_case().name, .set = cell.model().set().name};
  const parts::Assembly& nominal = cell.assembly();
  for (const Criterion& criterion : criteria(nominal)) {
    // H1 is a rule for design: what gives is the section, which yields, or the column.
    if (criterion.kind == Criterion::Kind::combined) continue;
    // Faces that slip break nothing: their bolt bears then, which is a check of its own.
    const bool slips =
        criterion.kind == Criterion::Kind::slip || criterion.kind == Criterion::Kind::group_slip;
    if (slips) continue;
    const std::string& part = part_judged(criterion, nominal);
    const bool bar = is_bar(criterion, nominal);
    const double limit = limit_in(cell, criterion, bar ? &strong : nullptr, second);
    if (std::isnan(limit)) {
      out.left_out.push_back(part + ", " + check_name(criterion.kind));
    } else if (std::isfinite(limit)) {
      add(out.order, {part, check_name(criterion.kind), how_it_gives(criterion), limit, bar});
    }
  }
  std::stable_sort(out.order.begin(), out.order.end(),
                   [](const GivesAt& a, const GivesAt& b) { return a.multiple < b.multiple; });
  if (!critical.empty()) {
    // Beyond it nothing holds the frame up that could break after it.
    const double lost = critical.front().factor;
    out.order.erase(std::remove_if(out.order.begin(), out.order.end(),
                                   [&](const GivesAt& g) { return g.multiple > lost; }),
                    out.order.end());
    out.order.push_back({critical.front().what, "frame stability",
                         critical.front().axle_tips ? How::tips : How::buckles, lost, true});
  }
  const auto [tube, broken] = firsts(out);
  out.breaks_first = broken < tube;
  return out;
}

bool tells_less(const FailureOrder& a, const FailureOrder& b) {
  if (a.breaks_first != b.breaks_first) return b.breaks_first;
  if (a.breaks_first) return firsts(b).second < firsts(a).second;
  if (a.order.empty() || b.order.empty()) return a.order.empty() && !b.order.empty();
  return b.order.front().multiple < a.order.front().multiple;
}

double second_multiple(const FailureOrder& order) {
  constexpr double kLowest = 0.3;
  constexpr double kHighest = 4.0;
  constexpr double kApart = 1.1;
  if (order.order.empty()) return kHighest;
  const double first = std::clamp(order.order.front().multiple, kLowest, kHighest);
  return first > 1.0 / kApart && first < kApart ? kApart : first;
}

}  // namespace studies
