#pragma once

#include <array>
#include <optional>
#include <string>

#include "checks/finding.hpp"
#include "sections/bolt.hpp"

namespace checks {

/// A force across a bolt, along two directions square to it.  [N]
using AcrossBolt = std::array<double, 2>;

/// Two eyes side by side on one bolt, of two parts.
struct TwoEyes {
  AcrossBolt first = {};
  AcrossBolt second = {};
};

/// Two plates with an eye or a sleeve between them, through which a bolt goes.
struct BoltStack {
  double plate = base::kUnset;           ///< thickness of one plate  [m]
  double eye = base::kUnset;             ///< width between the plates, spacers and all  [m]
  bool loose = false;                    ///< nothing clamps it: the bolt bends as a beam
  double spacer = 0.0;                   ///< or gap, between eye and plate, on each side  [m]
  std::optional<TwoEyes> two_eyes = {};  ///< each of half the width between the plates
  bool spacers_left_out = false;         ///< given, but not counted beside two eyes
};

/// What the check of one bolt needs.
struct BoltInput {
  sections::BoltThread thread;
  sections::BoltGrade grade;
  int planes = 2;                       ///< 1 = single shear, 2 = double shear
  bool threads_in_plane = true;         ///< of shear
  double shear = 0.0;                   ///< across the bolt, all planes together  [N]
  double tension = 0.0;                 ///< along the bolt  [N]
  std::optional<BoltStack> stack = {};  ///< unset = not known
  bool loose = false;                   ///< nothing clamps it, known or not
  bool clamp_assumed = false;           ///< not loose only because nobody says that it is
  std::string planes_basis = {};        ///< why so many planes, if not as given
  double required = base::kUnset;
  double safety_factor = base::kUnset;  ///< largest multiple of the load, multiplied before the
                                        ///< solve; unset = 1 / demand
  double if_slipped = base::kUnset;     ///< largest utilization with bending counted, of the loads
                                        ///< that slip its clamped stack; unset = this one alone
  std::string slipped_in = {};          ///< under which of them; empty = this one
};

/// Demand over capacity with the bending of the bolt counted, where the load times the factor asked
/// slips its clamped stack, one of two eyes on it at the least; nothing where friction holds or the
/// stack is loose anyway. Of a stack that is not known infinite where nobody says that it is
/// clamped, else nothing.
[[nodiscard]] std::optional<double> demand_if_slipped(const BoltInput& input);

/// Shear, tension and both together of one bolt, and its bending where its stack is loose.
/// Nominal: a plane of shear 0.450 Fu A with threads in it, 0.563 Fu A without; tension 0.75 Fu A,
/// A of the shank. Small coarse threads, whose stress area At is under 0.75 A: Fu At in tension,
/// and 0.60 Fu At at most in a plane with threads (proposal, errs to less strength). Both together
/// add up to 1.3. Of a clamped stack the friction of its faces is shown beside: planes x 0.20 x
/// 0.75 Sp At (Shigley, eq. 8-31 and ch. 8, from memory; 0.20: common practice). Bending: M = F
/// (eye + 4 spacers + 2 plates) / 8, in single shear F (between the plates + plate) / 2, of two
/// eyes side by side that of a beam on the plates' middles with each eye's force in its middle
/// (statics, no source), against first yield, squares added with those of shear; a loose stack that
/// is not known is undecided; of a clamped stack that the load, times the factor asked, slips it is
/// said what bending would make of it, and where it is only assumed to be clamped and bending would
/// be over, or is not known, the check is undecided. Limits: a bolt drawn tight or a snug one; slip
/// and fatigue are not in it. Source:
/// AISC 360-22 J3.7 and J3.8, from memory; bending of pins EN 1993-1-8 3.13 (table 3.10 read).
[[nodiscard]] Finding bolt_shear(const BoltInput& input);
/// Demand over capacity of that alone.
[[nodiscard]] double bolt_use(const BoltInput& input);

}  // namespace checks
