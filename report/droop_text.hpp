#pragma once

#include <string>
#include <vector>

#include "studies/answer.hpp"

namespace report {

/// What ends the axle's rise, in order, or its drop, in order, and where a strap should come tight:
/// one sentence each.
[[nodiscard]] std::vector<std::string> bump_words(const studies::Bump& bump, bool inches);
[[nodiscard]] std::vector<std::string> droop_words(const studies::Droop& droop, bool inches);

/// The same in one sentence: what ends the drop first, and what is wrong with that.
[[nodiscard]] std::string droop_sentence(const studies::Droop& droop, bool inches);

/// "a corner of the axle goes 5.09 in down (strap catch), past 3.00 in (damper at full length):
/// that ends its travel or breaks, and what the parts then carry is not judged"
[[nodiscard]] std::string beyond_travel_words(const studies::BeyondTravel& beyond, bool inches);

}  // namespace report
