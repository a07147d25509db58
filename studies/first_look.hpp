#pragma once

#include <optional>
#include <string>
#include <vector>

#include "studies/run.hpp"

namespace studies {

/// As checks::frame_stability is called in a finding.
inline constexpr const char* kFrameStability = "frame stability";

/// A check that is over in one load case and stiffness set: not the worst there may be.
struct SeenOver {
  std::string part;
  std::string check;
  std::string load_case;
  std::string set = {};
};

/// The check of the parts asked for that is most over in the first of `counted.look_first` in which
/// one clearly is. Only those load cases and sets are solved: a size that is too weak shows it
/// where the one that is there comes nearest to its limit. Nothing says nothing: then all is to be
/// solved.
/// @param most  the utilization that they may have
[[nodiscard]] std::optional<SeenOver> first_look(const parts::Design& design,
                                                 const Counted& counted, double most = 1.0);

}  // namespace studies
