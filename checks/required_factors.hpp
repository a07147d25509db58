#pragma once

#include <string>
#include <vector>

namespace checks {

/// What a required factor is asked of.
enum class Item {
  yield,     ///< members and plates
  buckling,  ///< column, and member buckling of the frame
  weld,
  bolt,             ///< and the plates it bears on
  tab,              ///< tabs and eyes at their hole
  rail_wall,        ///< wall of the rail under a bracket
  tipping,          ///< the axle tipping on its springs and bushings
  reversing_joint,  ///< static rating of a ball joint or rod end whose load reverses
  joint,            ///< static rating of any other ball joint or rod end
  strap,            ///< a limit strap
};

/// What the part does: locating and steering parts ask for more.
enum class Duty { ordinary, lateral_link, steering };

/// The safety factors asked for, on capacities that hide none. `routine` loads come every day,
/// `abuse` loads are rare. Each may be overridden in the case file; they never stack.
struct RequiredFactors {
  double yield_routine = 1.5;
  double yield_abuse = 1.0;
  double yield_abuse_locating = 1.25;  ///< lateral link and steering
  double buckling_routine = 3.0;
  double buckling_routine_steering = 3.5;
  double buckling_abuse = 1.5;
  double buckling_abuse_locating = 2.0;  ///< lateral link and steering
  double weld_routine = 2.0;
  double weld_abuse = 1.5;
  double bolt_routine = 2.0;
  double bolt_abuse = 1.5;
  double tab_routine = 2.0;
  double tab_abuse = 1.5;
  double rail_wall_routine = 1.5;
  double rail_wall_abuse = 1.25;
  double tipping_routine = 1.5;
  double tipping_abuse = 1.1;
  double joint_routine_reversing = 5.0;
  double joint_routine = 3.0;
  double joint_abuse = 1.0;
  double strap_abuse = 1.0;
  bool operator==(const RequiredFactors&) const = default;
};

/// One entry of the table, for readers and writers to iterate over.
struct FactorEntry {
  std::string key;          ///< "yield_routine"
  double* value = nullptr;  ///< into the RequiredFactors given
  std::string basis;        ///< what it is asked of, and where the default comes from
};

/// Every entry, in the order of the struct. The pointers live as long as `factors`.
[[nodiscard]] std::vector<FactorEntry> factor_entries(RequiredFactors& factors);

/// Checks that every factor is a finite number over zero.
/// @throws base::InputError with the key of the entry that is wrong
void require_valid(const RequiredFactors& factors);

/// The factor asked of an item.
/// @param abuse  true for a rare abuse load, false for a routine one
[[nodiscard]] double required(const RequiredFactors& factors, Item item, bool abuse,
                              Duty duty = Duty::ordinary);

}  // namespace checks
