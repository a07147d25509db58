#include "loads/duty.hpp"

namespace loads {

std::vector<DutyBlock> default_duty(bool off_road) {
  const double cycles = off_road ? 1.0e5 : 1.0e4;
  return {{"hard corner, turning left", "hard corner, turning right", cycles, Spread::straight},
          {"hard stop", "hard stop in reverse", cycles, Spread::straight},
          {"dry park, lock to lock, to the left", "dry park, lock to lock, to the right", cycles,
           Spread::straight}};
}

std::string default_duty_basis(bool off_road) {
  return std::string(
             "default: 1e6 cycles in 100 000 km between opposite routine cases, sizes on a "
             "straight line over the logarithm of how often") +
         (off_road ? "; ten times as many for mixed use off the road" : "") +
         "; proposal, no source";
}

}  // namespace loads
