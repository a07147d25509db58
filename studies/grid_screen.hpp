#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "fea/condensation.hpp"
#include "fea/solution.hpp"
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
    parts::Assembly assembly = {};                     ///< its pieces alone
    std::vector<Criterion> criteria = {};              ///< of the part
    std::vector<fea::BeamAt> beams = {};               ///< of the part
    std::vector<std::vector<fea::MemberLoads>> loads;  ///< of those beams, in each load case
    fea::Condensed condensed = {};                     ///< not held = this size is not looked at
  };
  /// One stiffness set.
  struct Look {
    parts::StiffnessSet set;
    std::vector<parts::DesignCase> cases;
    std::shared_ptr<const fea::System> drawn = {};
    std::vector<std::vector<std::size_t>> changing = {};  ///< blocks, with each part
    fea::Condensed rest = {};
    std::vector<std::vector<Size>> sizes = {};  ///< of each part
  };
  struct Built;
  using Sizes = std::vector<std::vector<SizeChoice>>;

  [[nodiscard]] std::vector<Look> places(const Counted& counted) const;
  void prepare(Look& look, const Sizes& sizes, const Spread& spread) const;
  [[nodiscard]] std::optional<Built> built(const parts::Design& design, const Look& look) const;
  [[nodiscard]] bool find_changing(Look& look, const Sizes& sizes) const;
  [[nodiscard]] Size condensed(const Look& look, std::size_t part, const SizeChoice& size,
                               const Eigen::MatrixXd& force) const;
  [[nodiscard]] bool adds_up(const Look& look, const Sizes& sizes) const;
  [[nodiscard]] bool is_over(const Size& size, const Criterion& criterion,
                             const parts::DesignCase& load_case, const fea::Solution& solution,
                             double most) const;

  const parts::Design& design_;
  const std::vector<std::string>& parts_;
  std::vector<Look> looks_;
};

}  // namespace studies
