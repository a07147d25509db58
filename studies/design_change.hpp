#pragma once

#include <functional>
#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "parts/design.hpp"

namespace studies {

/// One size of a design made larger.
struct DesignChange {
  std::string words;  ///< "1-1/2 x 0.134 in DOM tube", "weld leg 3/8 in"
  std::function<void(parts::Design&)> make;

  /// The design with it, without its variants.
  [[nodiscard]] parts::Design on(const parts::Design& design) const;
};

/// Changes of one kind, the smallest first.
using ChangeLadder = std::vector<DesignChange>;

/// What a shop would change for a check that is over, the usual change first: the next sections in
/// stock for a bar or tube, thicker plates, longer legs of welds, the next bolt, a plate on the
/// frame, a brace where there is none. Empty where no single size of the case would do (an axle
/// that tips, a rating of a joint). What each change is worth is not known here.
[[nodiscard]] std::vector<ChangeLadder> changes_for(const parts::Design& design,
                                                    const checks::Finding& over);

}  // namespace studies
