#pragma once

#include "base/units.hpp"

namespace parts {

/// The weld at a round bar's or tube's end: "3/16 in fillet", "3/16 in fillet, fishmouth on 2 in",
/// "4 rosettes of 1/2 in",
/// "3 mm groove", "full groove".
struct EndWeldSpec {
  double leg = base::kUnset;      ///< of the fillet all round; unset = none  [m]
  double groove = base::kUnset;   ///< effective throat of a groove all round; infinite = it goes
                                  ///< through the wall  [m]
  double around = base::kUnset;   ///< diameter of the round part that the end is cut to; unset = it
                                  ///< ends square on something flat, or on an insert  [m]
  int rosettes = 0;               ///< round holes welded full, onto an insert
  double rosette = base::kUnset;  ///< their diameter  [m]

  /// A line of weld all round.
  [[nodiscard]] bool all_round() const { return leg > 0.0 || groove > 0.0; }
  [[nodiscard]] bool given() const { return all_round() || rosettes > 0; }
  bool operator==(const EndWeldSpec&) const = default;
};

}  // namespace parts
