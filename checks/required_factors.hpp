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
  slip,             ///< of faces that friction is to hold
  tab,              ///< tabs and eyes at their hole
  rail_wall,        ///< wall of the rail under a bracket, where it yields
  rail_punching,    ///< the same, where a plate punches it or loads it unevenly
  rail_crippling,   ///< the same, where a wall of it cripples
  tipping,          ///< the axle tipping on its springs and bushings
  reversing_joint,  ///< static rating of a ball joint or rod end whose load reverses
  joint,            ///< static rating of any other ball joint or rod end
  strap,            ///< a limit strap
};

/// What the part does: locating and steering parts ask for more. One rule for a load's whole path:
/// the bracket, the brace and the tabs that hold the lateral link ask what the link asks.
enum class Duty { ordinary, lateral_link, steering };

/// The safety factors asked for, on capacities that hide none. `routine` loads come every day,
/// `abuse` loads are rare. Each may be overridden in the case file; they never stack. The values
/// here are those of the usual preset.
struct RequiredFactors {
  double yield_routine = 1.5;
  double yield_abuse = 1.0;
  double yield_abuse_locating = 1.25;  ///< lateral link, what holds it, and steering
  double buckling_routine = 3.0;
  double buckling_routine_steering = 3.5;
  double buckling_abuse = 1.5;
  double buckling_abuse_locating = 2.0;  ///< lateral link, its brace, and steering
  double weld_routine = 2.0;
  double weld_abuse = 1.5;
  double bolt_routine = 2.0;
  double bolt_abuse = 1.5;
  double slip_routine = 1.5;
  double slip_abuse = 1.0;
  double tab_routine = 2.0;
  double tab_abuse = 1.5;
  double rail_wall_routine = 1.5;
  double rail_wall_abuse = 1.25;
  double rail_punching_routine = 1.58;
  double rail_punching_abuse = 1.32;
  double rail_crippling_routine = 2.0;
  double rail_crippling_abuse = 1.67;
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

/// A table of factors that a case may choose; what it does not say is as in the usual one.
enum class FactorPreset {
  usual,     ///< this project's, for routine and abuse loads
  aisc_asd,  ///< Omega of AISC 360-22, allowable strength design, the same for every load
  en,        ///< gamma_M of EN 1993 times gamma_F of EN 1990: 1.5 routine, 1.0 accidental
};

/// "usual", "AISC ASD", "EN".
[[nodiscard]] std::string name_of(FactorPreset preset);
/// Every preset, the usual one first.
[[nodiscard]] const std::vector<FactorPreset>& factor_presets();
[[nodiscard]] RequiredFactors factors_of(FactorPreset preset);

/// Every entry, in the order of the struct. The pointers live as long as `factors`.
/// @param preset  whose basis is told
[[nodiscard]] std::vector<FactorEntry> factor_entries(RequiredFactors& factors,
                                                      FactorPreset preset = FactorPreset::usual);

/// Checks that every factor is a finite number over zero.
/// @throws base::InputError with the key of the entry that is wrong
void require_valid(const RequiredFactors& factors);

/// The factor asked of an item.
/// @param abuse  true for a rare abuse load, false for a routine one
[[nodiscard]] double required(const RequiredFactors& factors, Item item, bool abuse,
                              Duty duty = Duty::ordinary);

}  // namespace checks
