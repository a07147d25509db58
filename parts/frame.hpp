#pragma once

#include <array>
#include <string>
#include <vector>

#include "parts/field.hpp"
#include "parts/stick.hpp"

namespace parts {

struct Design;
struct Bracket;
struct Brace;

/// How body and rear of the frame hold a rail.
enum class RailHold { pinned, clamped };

/// The truck's frame about the bracket: its rail, the opposite one, and cross members between them.
/// The rails have the section of the bracket's `rail` and run level, one over the bracket's bolt.
/// Places along them are counted from that bolt, ahead +.
struct Frame {
  double rails_apart = base::kUnset;     ///< center line to center line  [m]
  Stick cross_member;                    ///< depth upright
  std::vector<double> cross_members_at;  ///< [m]
  std::vector<double> held_at;           ///< both rails  [m]
  RailHold held = RailHold::pinned;
  Stick arm_cross_member;  ///< carries the arms' frame joints; unset = those are held
  bool operator==(const Frame&) const = default;
};

template <class Visitor>
void fields(Visitor& v, Frame& frame) {
  using enum Dimension;
  using enum Presence;
  v.quantity({"rails_apart", required, "rail to rail, center lines"}, frame.rails_apart,
             positive(length));
  v.phrase({"cross_member", required, "section of each cross member, depth upright"},
           frame.cross_member);
  v.lengths({"cross_members_at", required, "along the rails, from the bracket's bolt, ahead +"},
            frame.cross_members_at);
  v.lengths({"held_at", required, "where body and rear hold both rails, from the bracket's bolt"},
            frame.held_at);
  constexpr std::array<Word<RailHold>, 2> kHolds = {Word<RailHold>{"pinned", RailHold::pinned},
                                                    Word<RailHold>{"clamped", RailHold::clamped}};
  v.choice({"held", assumed, "in place, or in place and direction",
            "the softer of the two; proposal, no source"},
           frame.held, kHolds);
  v.phrase({"arm_cross_member", optional, "cross member that carries the arms' frame joints",
            "those are held"},
           frame.arm_cross_member);
}

/// The section of the design's rails, depth upright: a closed one with sharp corners (outside
/// radius one wall), or a channel.
[[nodiscard]] Stick rail_stick(const Design& design);

/// The brace with its length and slope: as given, else from where it meets the bracket to the
/// middle of the opposite rail's inner face. Unset without a frame. The design has bracket and
/// brace.
[[nodiscard]] Brace placed_brace(const Design& design);

/// Where the far end of a brace of given length and slope lies from the opposite rail's center:
/// across the truck beyond it, and up. The design has frame, bracket and brace.  [m]
[[nodiscard]] std::array<double, 2> brace_end_off(const Design& design);

/// Whether what the rails and cross members give has two ends: plates that end within a wall bend
/// it, channels warp. The design has frame and bracket.
[[nodiscard]] bool frame_root_is_bounded(const Design& design);

/// Both, in words.
[[nodiscard]] std::string frame_root_words(const Bracket& bracket);

}  // namespace parts
