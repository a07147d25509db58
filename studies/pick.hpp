#pragma once

#include <optional>
#include <string>
#include <vector>

#include "studies/judged.hpp"
#include "studies/scope.hpp"
#include "studies/share.hpp"
#include "studies/sized_part.hpp"
#include "studies/spread.hpp"

namespace studies {

/// What the best size is the least of.
enum class PickBy { mass, cost, outside };

/// A stock size tried for a part, by full solves of all load cases.
struct Candidate {
  sections::StockItem item;
  std::string steel;
  double mass_per_length = base::kUnset;  ///< [kg/m]
  Judged judged;
  /// With all as thin as the mill may deliver it, by the checks of its part alone. Only of the
  /// first two that pass, in a case of nominal sizes, where a standard says how thin that is.
  std::optional<Judged> at_minimum = {};
};

struct Picked {
  std::string title;
  bool inches = true;
  Scope scope = {};
  std::string part;
  std::string now;  ///< what the case has
  PickBy by = PickBy::mass;
  double length = base::kUnset;           ///< bar or tube that the part takes  [m]
  std::vector<Candidate> tried;           ///< in the order of `by`
  std::optional<Candidate> lightest;      ///< the first that passes
  std::optional<Candidate> next_down;     ///< the one before it, which does not pass
  std::optional<Candidate> next_up;       ///< the next that passes
  std::optional<Candidate> same_outside;  ///< first that passes of the outside now in the case
  std::vector<std::string> others_over;   ///< other parts, over or not decided as drawn
  std::vector<std::string> could_join;    ///< those of them that can be picked together with it
  /// "upper arm": the same arm's other one is over or not decided as drawn, which no size of the
  /// part picked may mend; empty when it is not.
  std::string other_tube_over = {};
  std::vector<parts::Assumption> assumed;
  bool every = true;           ///< all were judged in full
  std::size_t n_sizes = 0;     ///< that may be tried
  std::size_t n_done = 0;      ///< tried or known not to be needed; fewer when it was stopped
  std::size_t n_unpriced = 0;  ///< left out of a pick by cost
};

struct PickOptions {
  SizeLimits limits = {};
  PickBy by = PickBy::mass;
  std::vector<sections::StockItem> more = {};  ///< sizes of the user's own
  /// Every size judged in full; else as much of each as it takes to tell the sizes around the one
  /// picked, which come out the same: of those before it what stops them, of those beyond nothing.
  bool every = true;
};

/// Tries every size in stock that can stand in for one part. A size passes when every check of its
/// part holds, and every check of the other parts that hold as drawn. When `watch` stops it, the
/// answer is of the sizes tried by then.
/// @throws base::InputError when there is no such part or no size
[[nodiscard]] Picked pick(const parts::Design& design, const std::string& part,
                          const PickOptions& options = {}, const Watch& watch = {},
                          const Spread& spread = {}, Share<Judged>* share = nullptr);

/// The other tube of the same arm, as findings name it; empty for other parts.
[[nodiscard]] std::string other_tube_of(const parts::Design& design, const std::string& part);

/// Whether some size costs or weighs less, by what is asked.
[[nodiscard]] double measure_of(const SizeChoice& size, PickBy by);

}  // namespace studies
