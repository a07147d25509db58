#pragma once

#include <optional>

#include "sections/stock.hpp"
#include "studies/answer.hpp"
#include "studies/spread.hpp"
#include "studies/watch.hpp"

namespace studies {

/// A stock size tried for a part, by full solves. One that does not pass is followed only as far as
/// the first load case and stiffness set in which it does not (all of them for Picked::next_down).
struct Candidate {
  sections::StockItem item;
  std::string steel;
  double mass_per_length = base::kUnset;   ///< [kg/m]
  Verdict verdict = Verdict::not_decided;  ///< of this part's findings alone
  double utilization = base::kUnset;       ///< worst of this part, as far as it was followed
  std::string stopped_by = {};             ///< check, load case and state; empty when it passes
};

struct Picked {
  std::string title;
  bool inches = true;
  std::string part;
  std::string now;                        ///< what the case has
  std::vector<Candidate> tried;           ///< by mass
  std::optional<Candidate> lightest;      ///< the lightest that passes
  std::optional<Candidate> next_down;     ///< next lighter, which does not pass
  std::optional<Candidate> next_up;       ///< next heavier that passes
  std::optional<Candidate> same_outside;  ///< lightest that passes of the outside now in the case
  bool others_over = false;               ///< another part of the design is over or undecided
  /// "upper tube": the same arm's other one is over or undecided as drawn, which no size of the
  /// part picked may mend; empty when it is not.
  std::string other_tube_over = {};
  std::vector<parts::Assumption> assumed;
};

/// Tries every size in stock that can stand in for one part: round tubes and bars for a round one,
/// else sizes of its own kind.
/// @param part  "lateral_link", "brace", "arm.lower", "arm.upper" or a member's name
/// @param more  sizes of the user's own, beside the built-in lists
/// @throws base::InputError when there is no such part, or no size in stock is of its kind
[[nodiscard]] Picked pick(const parts::Design& design, const std::string& part,
                          const Watch& watch = {},
                          const std::vector<sections::StockItem>& more = {},
                          const Spread& spread = {});

}  // namespace studies
