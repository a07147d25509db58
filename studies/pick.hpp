#pragma once

#include <optional>

#include "sections/stock.hpp"
#include "studies/answer.hpp"
#include "studies/watch.hpp"

namespace studies {

/// A stock size tried for a part, by a full solve.
struct Candidate {
  sections::StockItem item;
  std::string steel;
  double mass_per_length = base::kUnset;   ///< [kg/m]
  Verdict verdict = Verdict::not_decided;  ///< of this part's findings alone
  double utilization = base::kUnset;       ///< worst of this part
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
  std::vector<parts::Assumption> assumed;
};

/// Tries every round tube and bar of the built-in stock list for one part.
/// @param part  "lateral_link", "brace", "arm.lower", "arm.upper" or a member's name
/// @throws base::InputError when there is no such part, or it is not made of bar or tube
[[nodiscard]] Picked pick(const parts::Design& design, const std::string& part,
                          const Watch& watch = {});

}  // namespace studies
