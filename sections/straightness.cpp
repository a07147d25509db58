#include "sections/straightness.hpp"

namespace sections {

Straightness straightness(const Material& steel) {
  const std::string& by = steel.sizes_by;
  if (by == "a513_5" || by == "a513_1") return {0.030 / 36.0, "ASTM A513: 0.030 in in 3 ft"};
  if (by == "a500") return {0.125 / 60.0, "ASTM A500: 1/8 in in 5 ft"};
  if (by == "a108_low") return {0.125 / 120.0, "ASTM A108: 1/8 in in 10 ft"};
  if (by == "a108_medium") return {0.1875 / 120.0, "ASTM A108: 3/16 in in 10 ft"};
  if (by == "a29") return {0.25 / 60.0, "ASTM A29: 1/4 in in 5 ft"};
  if (by == "en10305") {
    constexpr double kHigher = 500.0e6;
    return steel.yield > kHigher ? Straightness{0.0020, "EN 10305-1: 2 mm in 1 m"}
                                 : Straightness{0.0015, "EN 10305-1: 1.5 mm in 1 m"};
  }
  return {0.001, "no tolerance known here for this steel: L/1000, on which E3 rests"};
}

}  // namespace sections
