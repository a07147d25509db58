#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "checks/combined_forces.hpp"
#include "checks/finding.hpp"
#include "checks/rail_wall.hpp"
#include "checks/required_factors.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"

namespace studies {

/// A check of one place that holds up to some multiple of the load.
struct Criterion {
  enum class Kind {
    yield,
    column,
    combined,
    thin_wall,
    weld,
    rail_wall,
    joint,
    bolt,
    bolt_hole,
    bolt_group,
    group_hole,
    group_slip,
    slip,
    bracket_eye,
    tab,
    tab_root,
    tab_wall,
    tab_weld,
    end_weld,
    rosettes,
    net_section,
    seat_load,
    seat_weld,
    stop_load,
    pad_weld,
    shank,
    thread,
    strap,
    tilt
  };
  Kind kind = Kind::yield;
  std::size_t index = 0;  ///< of the piece, the joint, the bolt, the tabs, the thread or the stop
};

/// Every check of a design. The same list, in the same order, for each of its stiffness sets.
[[nodiscard]] std::vector<Criterion> criteria(const parts::Assembly& assembly);

/// The part that a criterion is about: "lateral_link", "arm, left".
[[nodiscard]] const std::string& part_judged(const Criterion& criterion,
                                             const parts::Assembly& assembly);

/// The name that a finding of this kind carries: "yield", "column", "combined forces",
/// "thin wall", "weld", "rail wall", "joint rating", "bolt", "bolt hole", "bolt group", "tab",
/// "tab root", "tab wall", "tab weld", "end weld", "rosettes", "net section", "rated load",
/// "seat weld", "pad weld", "slip", "threaded
/// shank", "thread engagement", "strap", "joint tilt".
[[nodiscard]] std::string check_name(Criterion::Kind kind);

/// Whether it is told by forces at the ends and along the beams of one piece alone: yield, column
/// and combined forces of a piece that carries no more than those.
[[nodiscard]] bool rests_on_piece(const Criterion& criterion, const parts::Assembly& assembly);

/// Demand over capacity in one solution: the check holds up to 1.
/// NaN when it cannot be decided; the finding says why.
/// @param multiple  of the load in the solution
[[nodiscard]] double demand_over_capacity(const Criterion& criterion,
                                          const parts::Assembly& assembly,
                                          const fea::Solution& solution, double multiple = 1.0);

/// The safety factor asked for. Combined forces are asked more of their compression than of the
/// rest, a rail's wall by the ways in which it gives; of every other check all three are one.
struct AskedFactor {
  double value = base::kUnset;
  double of_compression = base::kUnset;
  double of_rest = base::kUnset;
  checks::RailFactors of_rail = {};
  checks::CombinedAsked combined = {};
  /// The multiple of the load at which the check is looked at: near `value`, and one that others
  /// look at too.
  [[nodiscard]] double looked_at() const { return std::max(of_compression, of_rest); }
};

/// @param solution  whose forces say how much of each factor is asked; null when the frame cannot
///                  carry the load: the largest
[[nodiscard]] AskedFactor asked_factor(const Criterion& criterion, const parts::Assembly& assembly,
                                       const checks::RequiredFactors& factors, bool abuse,
                                       const fea::Solution* solution);

/// What a finding is written from.
struct Outcome {
  const fea::Solution* at_load = nullptr;   ///< the solution at the load itself
  const fea::Solution* at_limit = nullptr;  ///< at safety_factor times the load; may be null
  double safety_factor = base::kUnset;
  AskedFactor asked;
  double if_slipped = base::kUnset;  ///< of a bolt: as checks::BoltInput
  std::string slipped_in = {};
};

/// The finding with its worked lines; nothing when the check does not apply (no compression).
[[nodiscard]] std::optional<checks::Finding> finding(const Criterion& criterion,
                                                     const parts::Assembly& assembly,
                                                     const Outcome& outcome);

/// Von Mises stress at one place of a piece in one solution.
struct PieceStress {
  double von_mises = 0.0;          ///< [Pa]; NaN when it cannot be told
  std::size_t beam = 0;            ///< in the piece
  double part = 0.0;               ///< of that beam's length, from its end a
  double along = 0.0;              ///< the piece's center line  [m]
  double strength = base::kUnset;  ///< yield strength there  [Pa]
  sections::Resultants resultants;
  /// The part of a round outside that the stress is the worst of: the zone of a weld on that side.
  std::optional<sections::OutlinePart> on_side = {};
  double st_venant = 0.0;  ///< of a channel that warps: what of the torque twists its walls  [N m]
  double bimoment = 0.0;   ///< of such a channel  [N m^2]

  /// Stress over strength.
  [[nodiscard]] double utilized() const { return von_mises / strength; }
};
/// The largest stress of a piece, and where.
[[nodiscard]] PieceStress worst_stress(const parts::Piece& piece, const fea::Solution& solution);
/// The place of a piece where it first yields: where stress over strength is largest.
[[nodiscard]] PieceStress governing_stress(const parts::Piece& piece,
                                           const fea::Solution& solution);

}  // namespace studies
