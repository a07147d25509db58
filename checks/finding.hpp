#pragma once

#include <string>
#include <vector>

#include "base/units.hpp"

/// Strength checks: pure functions from demand and geometry to a Finding. They know no frame.
namespace checks {

enum class State {
  within,     ///< within the limit
  over,       ///< over the limit
  undecided,  ///< outside the method, not converged, or something is missing: see `reason`
};

/// What a number measures, so that a writer can show it in the user's units.
enum class Measure {
  ratio,
  stress,
  force,
  moment,
  length,
  force_per_length,
  angle,
  area,             ///< [m^2]
  section_modulus,  ///< [m^3]
  second_moment,    ///< of a section, or of a weld group with its throats  [m^4]
};

/// A number inside a worked line.
struct Value {
  double si = base::kUnset;
  Measure measure = Measure::ratio;
};

/// One line of the worked calculation. `{0}`, `{1}` ... in `numbers` stand for `values`, so that a
/// writer can put them in any units.
struct WorkedLine {
  std::string symbols = {};  ///< "sigma = |N|/A + M/S"
  std::string numbers = {};  ///< "{0} / {1} + {2} / {3} = {4}"
  std::vector<Value> values = {};
};

/// Where the numbers in the lines of a finding come from. What runs the check knows it.
struct Origin {
  std::string method = {};              ///< "second order"; empty = no frame was solved
  double multiple = base::kUnset;       ///< of the load case, at which that was solved
  std::vector<WorkedLine> forces = {};  ///< what acts on the ends of the part's pieces there
};

/// The result of one check, with all that is needed to follow it by hand.
struct Finding {
  std::string check = {};      ///< "yield", "column", "weld", "frame stability"
  std::string part = {};       ///< "lateral_link"
  std::string where = {};      ///< "at the bend", "root, rail side"
  std::string load_case = {};  ///< "slid into a curb, left"
  std::string set = {};        ///< stiffness set, in words: "soft rail, brace end rigid"
  double demand = base::kUnset;
  double capacity = base::kUnset;
  double first_order = base::kUnset;  ///< demand in the undeformed position; unset = not compared
  Measure measure = Measure::stress;
  double safety_factor = base::kUnset;  ///< largest multiple of the load at which the check holds
  double required = base::kUnset;       ///< the safety factor asked for
  State state = State::undecided;
  std::string reason = {};  ///< why undecided; empty otherwise
  std::string source = {};  ///< clause or textbook, and "from memory" where it is
  std::string range = {};   ///< where the formula holds; empty = said by the notes
  std::vector<WorkedLine> lines = {};
  std::vector<std::string> notes = {};  ///< which strength was used where, ranges, warnings
  Origin origin = {};

  /// required / safety_factor: 1 is the limit  [-]
  [[nodiscard]] double utilization() const { return required / safety_factor; }
};

/// Sets the safety factor, the required one and the state they give.
void decide(Finding& finding, double safety_factor, double required);

/// Marks a finding as not decided, and why. Its safety factor becomes unset.
void leave_undecided(Finding& finding, std::string reason);

}  // namespace checks
