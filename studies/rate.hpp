#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cases/patch.hpp"
#include "checks/finding.hpp"
#include "studies/answer.hpp"
#include "studies/share.hpp"
#include "studies/spread.hpp"
#include "studies/watch.hpp"

namespace studies {

/// The number that is varied ("lateral_link.wall" too: studies/design_number.hpp), and between
/// which values its limit is looked for.
struct Span {
  std::string path;            ///< "vehicle.axle_weight"
  double from = base::kUnset;  ///< [SI]; unset = 0.4 of what the case has
  double to = base::kUnset;    ///< [SI]; unset = 2.5 of it
};

/// All checks at one value of the number.
struct RatedPoint {
  double value = base::kUnset;  ///< [SI]
  Verdict verdict = Verdict::not_decided;
  /// The worst check where all hold; else the first found that is over or not decided. None where
  /// the case makes no sense with that value.
  std::optional<checks::Finding> worst = {};
  std::string refused = {};  ///< why it makes none
};

/// One design over the whole span.
struct Rated {
  std::string name;
  std::vector<RatedPoint> points;  ///< all that were tried, by value
  /// Ends of the run of values in which everything was found to hold: it holds the value as drawn
  /// if that holds, else it is the next below that, else the next above. Rounded inward to three
  /// digits and run there.
  std::optional<RatedPoint> holds_from;  ///< none: from the start of the span, or nowhere
  std::optional<RatedPoint> holds_to;    ///< none: nowhere
  double limit = base::kUnset;  ///< the upper end before it is rounded, to 0.1 %; unset = none [SI]
  bool proved = false;          ///< run at 0.999 of the limit, where all holds, and at 1.001
  bool to_the_end = false;      ///< it holds up to the end of the span
  std::optional<RatedPoint> fails_at;  ///< the nearest value above that does not hold
  std::optional<RatedPoint> fails_below;
  bool holds_again = false;              ///< somewhere else in the span too
  std::vector<std::string> beware = {};  ///< of the design at its limit, not of the case as drawn
  std::string failure = {};              ///< why this design could not be run at all
  bool stopped = false;                  ///< before its limit was found
};

struct Rating {
  std::string title;
  bool inches = true;
  Scope scope = {};
  Span span;
  cases::NumberAt now;  ///< the number in the case
  std::vector<Rated> designs;
};

/// Up to which value of a number every check holds, for the design and each of its variants: a scan
/// first (what governs can change, and a larger number need not be worse), then the ends of the run
/// that holds are closed in to 0.05 %, and the upper one is run at 0.999 and 1.001 of it. Bars and
/// tubes are as thin as the mill may deliver them. When `watch` stops it, the designs that are not
/// done say so.
/// @throws base::InputError when the path names no number of the case or the span is empty
[[nodiscard]] Rating rate(const parts::Design& design, const Span& span, const Watch& watch = {},
                          const Spread& spread = {}, Share<Rated>* share = nullptr);

}  // namespace studies
