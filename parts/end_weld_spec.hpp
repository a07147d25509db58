#pragma once

#include "base/units.hpp"

namespace parts {

/// The weld at a round bar's or tube's end: "3/16 in fillet", "3/16 in fillet, fishmouth on 2 in",
/// "4 rosettes of 1/2 in".
struct EndWeldSpec {
  double leg = base::kUnset;      ///< of the fillet all round; unset = none  [m]
  double around = base::kUnset;   ///< diameter of the round part that the end is cut to; unset = it
                                  ///< ends square on something flat, or on an insert  [m]
  int rosettes = 0;               ///< round holes welded full, onto an insert
  double rosette = base::kUnset;  ///< their diameter  [m]

  [[nodiscard]] bool given() const { return leg > 0.0 || rosettes > 0; }
  bool operator==(const EndWeldSpec&) const = default;
};

}  // namespace parts
