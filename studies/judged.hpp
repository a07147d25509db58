#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studies/run.hpp"
#include "studies/spread.hpp"

namespace studies {

/// What the checks that count say of one design.
struct Judged {
  Verdict verdict = Verdict::not_decided;
  /// Worst of the parts asked for, over all load cases, stiffness sets and checks that are decided;
  /// unset where none is.
  double utilization = base::kUnset;
  std::string part = {};       ///< of that check
  std::string check = {};      ///< "column"; empty where none is decided
  std::string load_case = {};  ///< in which it is that
  std::string open = {};       ///< a check that is not decided, and why; empty = all are
  /// Of the other parts that count, where those asked for hold: one that does not, "bracket, weld,
  /// hard corner at 104 %".
  std::string other_over = {};
  /// All that does not hold is about one tube of an arm, which was not asked for.
  bool only_other_tube = false;
  bool no_sense = false;                 ///< its sizes do not go together, as `open` says
  std::vector<std::string> beware = {};  ///< what the checks of the parts asked for hang on
  bool in_full = true;  ///< else left at the first load case in which it was past what was allowed

  bool operator==(const Judged&) const = default;
};

/// Solves one design and judges it by the checks that count: all that is asked of a candidate, in
/// one place.
/// @param other_tube  how findings begin that are about an arm's tube not asked for; may be empty
/// @param looked_at  what a first look said; null = there was none. What is over in
///                   the one load case of a look stays over
/// @throws Stopped
[[nodiscard]] Judged judged(const parts::Design& design, const Counted& counted,
                            const Watch& watch = {}, const std::string& other_tube = {},
                            const Judged* looked_at = nullptr);

/// With all bars and tubes as thin as the mill may deliver them, by the checks of the parts asked
/// for alone. Nothing where the design counts that anyhow, or when it is stopped: all else is
/// complete then, and this is left unsaid.
/// @param sized  as it is picked, of steels whose standard says how thin
[[nodiscard]] std::optional<Judged> judged_at_minimum(const parts::Design& sized,
                                                      const Counted& counted, const Watch& watch,
                                                      const std::string& other_tube = {});

/// Only where the parts asked for come nearest to their limits as drawn: over, or makes no sense,
/// or not decided by that.
[[nodiscard]] Judged judged_at_first_look(const parts::Design& design, const Counted& counted);

/// The same, left as soon as it is known that the utilization of the parts asked for is over `most`
/// (at most 1) or that another part does not hold.
/// @param counted  where to look first; the load case and stiffness set in which the design is over
///                 is put before the others there, since the next like it will be over there too
[[nodiscard]] Judged judged_until_over(const parts::Design& design, Counted& counted, double most,
                                       const Watch& watch = {});

/// A design before sizes are tried in it.
struct AsDrawn {
  Answer answer;    ///< findings over or not decided, and the worst of the parts asked for
  Counted counted;  ///< the parts asked for, and the others that must hold beside them: all but
                    ///< those over their limits or not decided, which are no sign of how good a
                    ///< size is
};
/// @param asked  parts, of which there is one at least
/// @throws Stopped
[[nodiscard]] AsDrawn as_drawn(const parts::Design& design, const std::vector<std::string>& asked,
                               const Watch& watch = {}, const Spread& spread = {});

}  // namespace studies
