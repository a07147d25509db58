#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "checks/finding.hpp"

/// Life under stress ranges that come back, by Miner's rule on nominal stresses.
namespace checks {

/// Cycles that a detail stands: N = 2e6 (category / range)^slope up to the knee, from there on with
/// the other slope, and no damage at all below the range that it stands `cut_off` times.
struct FatigueCurve {
  double category = base::kUnset;  ///< range that it stands 2e6 times  [Pa]
  double slope = 3.0;
  double knee = std::numeric_limits<double>::infinity();  ///< [cycles]
  double slope_beyond = 5.0;
  double cut_off = std::numeric_limits<double>::infinity();  ///< [cycles]; infinite = none
};

/// Direct stress: slope 3 to 5e6 cycles, 5 to 1e8, and no damage below that range.
/// Source: EN 1993-1-9:2005, 7.1, from memory.
[[nodiscard]] FatigueCurve en_direct(double category);
/// Shear: slope 5 to 1e8 cycles.  Source: EN 1993-1-9:2005, 7.1, from memory.
[[nodiscard]] FatigueCurve en_shear(double category);
/// Direct stress of mixed size: slope 3 to 1e7 cycles, 5 from there on.
/// Source: Hobbacher, IIW Recommendations (2016), ch. 3 and 4, from memory.
[[nodiscard]] FatigueCurve iiw_direct(double category);

/// The range that a curve stands so many times.  [Pa]
[[nodiscard]] double range_at(const FatigueCurve& curve, double cycles);
/// How many times it stands a range; infinite below the cut-off.
[[nodiscard]] double cycles_at(const FatigueCurve& curve, double range);

/// How large the cycles of a block are: so many exceed S as cycles^(1 - (S / largest)^shape).
struct Spectrum {
  double largest = base::kUnset;  ///< range  [Pa]
  double cycles = base::kUnset;   ///< over 1
  double shape =
      1.0;  ///< 1 straight line over the logarithm, 2 bell curve, infinite all the largest
};

/// Miner's sum of a block: 1 when the detail's life is used up.
/// Source: Palmgren, Miner; the spectrum after Weibull as in offshore rules, from memory.
[[nodiscard]] double miner_sum(const FatigueCurve& curve, const Spectrum& spectrum);

/// A detail of a table of categories.
struct FatigueDetail {
  std::string what;  ///< "tube end welded all round, toe"
  FatigueCurve curve;
  std::string source;  ///< table and detail, and how many survive
};

[[nodiscard]] FatigueDetail tube_end_toe();       ///< of a bar or tube welded all round at its end
[[nodiscard]] FatigueDetail attachment_toe();     ///< of what is welded onto its side
[[nodiscard]] FatigueDetail plate_toe();          ///< of a plate that a fillet carries
[[nodiscard]] FatigueDetail fillet_root();        ///< stress across the line, on the throat
[[nodiscard]] FatigueDetail fillet_root_shear();  ///< stress along the line, on the throat
[[nodiscard]] FatigueDetail bolt_thread(double diameter);  ///< tension on the stress area
[[nodiscard]] FatigueDetail bolt_shank();                  ///< shear of the shank
[[nodiscard]] FatigueDetail bolted_hole();                 ///< net section at a hole with clearance
[[nodiscard]] FatigueDetail plain_tube();                  ///< away from welds
[[nodiscard]] FatigueDetail plain_bar();

/// The ranges of one block of cycles at one place.
struct FatigueBlock {
  std::string what;              ///< "hard stop to hard stop in reverse"
  double range = base::kUnset;   ///< of direct stress  [Pa]
  double shear = 0.0;            ///< of shear stress  [Pa]
  double cycles = base::kUnset;  ///< in the distance
  double shape = 1.0;
};

struct FatigueInput {
  FatigueDetail detail;
  std::optional<FatigueDetail> shear_detail = {};
  std::vector<FatigueBlock> blocks;
};

/// Miner's sum that ranges of mixed size may reach: 0.5, as IIW Recommendations (2016), ch. 4, have
/// it for spectra; 1 where all cycles are of one size. It stands in for gamma_Mf of EN 1993-1-9
/// table 3.1 (1.15 to 1.35, all from memory): at slope 3 half the life is 1.26 times the stress,
/// and both together would count one thing twice.
[[nodiscard]] double damage_limit(const std::vector<FatigueBlock>& blocks);

/// What the blocks use of the life of one place, in the distance that they are of. Direct and
/// shear stress add their damage (EN 1993-1-9:2005, 8(3), from memory). The whole range counts,
/// pushed or pulled: welds hold their own tension.
/// Limits: elastic nominal stress; no corrosion; indicative only.
[[nodiscard]] double damage(const FatigueInput& input);
/// The lines to follow that by hand.
[[nodiscard]] std::vector<WorkedLine> damage_lines(const FatigueInput& input);

}  // namespace checks
