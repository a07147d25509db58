#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "fea/condensation.hpp"
#include "fea/member_loads.hpp"
#include "parts/assembly.hpp"
#include "parts/design_cases.hpp"
#include "parts/stiffness_set.hpp"
#include "studies/criterion.hpp"
#include "studies/run.hpp"
#include "studies/sized_part.hpp"
#include "studies/spread.hpp"

namespace studies {

/// Says no to most designs of a grid of sizes without building them: the frame is condensed onto
/// the ends of the parts picked, once; each size of each part likewise, by itself; a design is then
/// a dense solve of a few dozen equations, in the load cases and stiffness sets in which the parts
/// as drawn come nearest to their limits.
///
/// The condensed motion is exact in first order (fea/condensation.hpp). Second order, and stops
/// that close, are not in it: what it says no to is over by more than they can make up for, by the
/// margins in grid_screen.cpp. What is left is solved in full; nothing is let pass by this.
class GridScreen {
 public:
  /// @param sizes    of each part
  /// @param counted  where to look: Counted::look_first
  GridScreen(const parts::Design& design, const std::vector<std::string>& parts,
             const std::vector<std::vector<SizeChoice>>& sizes, const Counted& counted,
             const Spread& spread = {});

  /// Whether a check of the parts picked is over `most` for sure.
  /// @param choice  the size of each part
  [[nodiscard]] bool surely_over(const std::vector<std::size_t>& choice, double most) const;

  /// How many load cases with a stiffness set it looks at; 0 = it never says no.
  [[nodiscard]] std::size_t n_looks() const;
  /// Equations that a design comes down to, at most.
  [[nodiscard]] std::size_t n_equations() const;

 private:
  /// One size of one part in one stiffness set, all else as drawn.
  struct Size {
    parts::Assembly assembly = {};
    std::shared_ptr<const fea::System> system = {};
    std::vector<fea::LoadCase> loads = {};  ///< one a load case
    std::vector<Criterion> criteria = {};   ///< of the part
    fea::Condensed condensed = {};          ///< not held = this size is not looked at
  };
  struct Look {
    parts::StiffnessSet set;
    std::vector<parts::DesignCase> cases;
    fea::Condensed rest = {};
    std::vector<std::vector<Size>> sizes = {};  ///< of each part
  };

  [[nodiscard]] std::vector<Look> places(const Counted& counted) const;
  void build(Look& look, const std::vector<std::vector<SizeChoice>>& sizes, const Spread& spread);
  [[nodiscard]] Size built(const Look& look, std::size_t part, const SizeChoice& size) const;
  [[nodiscard]] bool is_over(const Size& size, const Criterion& criterion,
                             const parts::DesignCase& load_case, const fea::Solution& solution,
                             double most) const;

  const parts::Design& design_;
  const std::vector<std::string>& parts_;
  std::vector<Look> looks_;
};

}  // namespace studies
