#pragma once

#include <memory>
#include <string>
#include <vector>

#include "studies/answer.hpp"
#include "studies/known_design.hpp"
#include "studies/watch.hpp"

namespace studies {

/// A design checked, without its variants.
struct Run {
  Answer answer;
  Figures figures;
};

/// What an answer holds beside its findings.
enum class Extras {
  none,                    ///< cells that cannot be the worst of any check are not solved then
  figures,                 ///< of a comparison, and the numbers of each solved case
  short_answer,            ///< what gives first and how long it lasts, no figures or numbers
  order_and_life,          ///< both
  order_life_and_drawing,  ///< and a drawing
};

/// Whose checks count.
struct Counted {
  std::vector<std::string> asked = {};     ///< parts as they are asked for, "arm.lower"; none = all
  bool others = false;                     ///< and all parts beside those, but the next
  std::vector<std::string> left_out = {};  ///< as findings name them: "arm, left"
  /// Where those asked for come nearest to their limits as drawn: see first_look.
  std::vector<CellName> look_first = {};
  std::vector<std::string> load_cases = {};  ///< solve these alone; none = all
  std::vector<std::string> sets = {};        ///< with these stiffness sets; none = all
  /// What is known of a design that differs in little: cells that cannot be the worst by that are
  /// not solved. May be null.
  std::shared_ptr<const KnownDesign> known = {};

  [[nodiscard]] bool is_asked(const std::string& part) const;
  [[nodiscard]] bool has(const std::string& part) const;
};

/// @param name     of the design among its variants
/// @param counted  check these parts alone (the others are still in the frame)
/// @throws base::InputError, Stopped
[[nodiscard]] Run run(const parts::Design& design, const std::string& name, const Watch& watch,
                      const Counted& counted = {}, Extras extras = Extras::figures);

/// Findings alone: those of the first stiffness set and load case in which a check is not decided
/// or its utilization is over what it may be. Where there is none, those of `run_for_worst`.
/// @param most  utilization that the parts asked for may have, at most 1; the others may have 1
[[nodiscard]] Run run_until_over(const parts::Design& design, const std::string& name,
                                 const Counted& counted, double most = 1.0,
                                 const Watch& watch = {});

/// Findings alone: those over 1 or not decided, and of the parts asked for the worst. Cells that
/// cannot be one of them are not solved.
/// @param found  gets what is then known of the design; may be null
[[nodiscard]] Run run_as_drawn(const parts::Design& design, const Counted& counted,
                               const Watch& watch, KnownDesign* found = nullptr);

/// All load cases and stiffness sets, but no more than is needed for the worst, and findings alone:
/// of the checks that are decided those that came over all before them, so that the largest
/// utilization of the parts asked for is that of `run`; of the other parts those over 1, and where
/// the parts asked for hold, alone.
[[nodiscard]] Run run_for_worst(const parts::Design& design, const Counted& counted,
                                const Watch& watch);

/// Whether a part of an answer is what was asked for: "arm, left" is of "arm" and "arm.lower", and
/// every part where nothing was named.
[[nodiscard]] bool belongs(const std::string& part, const std::string& asked);

/// `watch` seen from a part of a longer run: fraction `from` to `to` of it.
[[nodiscard]] Watch part_of(const Watch& watch, double from, double to, const std::string& what);

}  // namespace studies
