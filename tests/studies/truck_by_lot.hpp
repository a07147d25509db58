#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "cases/starters.hpp"
#include "studies/random_numbers.hpp"
#include "tests/studies/starter_text.hpp"

namespace studies_tests {

/// A truck to start from with its weight, coils and link drawn by lot, and some load cases in which
/// its axle goes far. Invented numbers.
inline std::string truck_by_lot(const std::string& layout, std::uint32_t seed) {
  studies::RandomNumbers random(seed);
  std::string text(cases::starter(layout));
  const auto number = [&](double low, double high) {
    return std::to_string(low + (high - low) * random.uniform());
  };
  set_value(text, "axle_weight", number(2200.0, 4200.0) + " lb");
  set_value(text, "coil_rate", number(150.0, 400.0) + " lb/in");
  set_value(text, "drop", number(3.0, 9.0) + " in");
  const std::vector<std::string> tubes = {"1-1/4 x 0.250 in DOM", "1-1/2 x 0.250 in DOM",
                                          "2 x 0.120 in DOM", "2 x 0.250 in DOM"};
  set_value(text, "tube", tubes[static_cast<std::size_t>(3.999 * random.uniform())]);
  const std::string heave = number(-1.0, 1.0);
  text += "load_cases:\n  - {name: crossed, heave: " + heave + " in, roll: " + number(-4.0, 4.0) +
          " deg}\n  - slid into a curb\n  - hard corner\n";
  return text;
}

}  // namespace studies_tests
