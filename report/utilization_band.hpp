#pragma once

#include <array>

namespace report {

/// In which of the bands of the legend a utilization is: "0" to 25 %, 50 %, 75 %, 100 %, over that,
/// and not decided. Their colors get darker (on a dark screen lighter) step by step, so that they
/// read in gray and without telling hues apart; the one over the limit leaves the row of hues too.
inline constexpr std::array<const char*, 6> kBandNames = {
    "to 25 %", "25-50 %", "50-75 %", "75-100 %", "over 100 %: over the limit", "not decided"};

/// @param utilization  unset = not decided
[[nodiscard]] constexpr int utilization_band(double utilization) {
  if (utilization != utilization) return 5;
  if (utilization > 1.0) return 4;
  return utilization < 0.25 ? 0 : utilization < 0.5 ? 1 : utilization < 0.75 ? 2 : 3;
}

}  // namespace report
