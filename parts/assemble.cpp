#include <algorithm>
#include <variant>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "fea/rotation.hpp"
#include "parts/builder.hpp"
#include "parts/warped_twist.hpp"

namespace parts {
namespace {

void say_of_the_frame(Assembly& out, const Design& design) {
  out.assumed.push_back(fmt::format(
      "the frame's rails run level and have the section of bracket.rail from end to end; cross "
      "members meet them on their center lines, all but rigidly; body and rear hold both rails {} "
      "at `held_at`",
      design.frame->held == RailHold::pinned ? "in place, free to turn,"
                                             : "in place and direction"));
  const auto warps = [](const Piece& piece) {
    return piece.warping.has_value() && !piece.warping->any_ends;
  };
  if (std::any_of(out.pieces.begin(), out.pieces.end(), warps)) {
    out.assumed.push_back(
        "rails and cross members that are channels warp as they twist: solved and judged with "
        "warping free, and held, where cross members or rails hold their twist");
  }
  if (design.arm && out.frame && out.frame->arm_joints.empty()) {
    out.assumed.push_back(
        "the arms' frame joints are held; `frame.arm_cross_member` lets them give");
  }
}

/// Bars that are channels, whose ends may hold their warping or not; a bracket's plates are judged
/// as they are folded.
void warp_channels(Assembly& out) {
  for (Piece& piece : out.pieces) {
    const bool bracket = out.root && piece.part == out.root->part;
    if (piece.warping || piece.beams.empty() || bracket) continue;
    const auto* channel = std::get_if<sections::Channel>(&piece.beams.front().at_a);
    if (channel == nullptr) continue;
    const PieceBeam& last = piece.beams.back();
    const double end = last.starts_at + fea::length(out.model, out.model[last.beam]);
    piece.warping = Warping{.length = warping_length(*channel, piece.material),
                            .any_ends = true,
                            .twist_held_at = {0.0, end}};
  }
}

void say_what_is_taken_for_granted(Assembly& out, const Design& design) {
  if (design.frame) {
    say_of_the_frame(out, design);
  } else if (design.lateral_link || design.arm) {
    out.assumed.push_back("the frame is rigid but for the bracket's root and the brace's end");
  }
  if (design.axle) {
    out.assumed.push_back(
        out.axle_sides[0] ? "the axle is rigid but for its housing between the arms; wheels are "
                            "held by nothing else"
                          : "the axle is rigid; wheels are held by nothing else");
    out.assumed.push_back(
        "bump stops and limit straps stand upright and follow their rate from where they are met");
  }
  if (design.steering) {
    out.assumed.push_back(
        "the knuckles turn freely about upright kingpins, whose bearings are all "
        "but rigid; wheel forces act on the knuckles");
    out.assumed.push_back(
        has_pitman_arm(*design.steering)
            ? "the pitman arm stands square to the drag link, seen from above, is of one section "
              "up "
              "to the middle of its shaft, and its shaft does not turn; how it is clamped to the "
              "shaft and the taper socket of its ball are not in the model"
            : "the pitman arm's ball does not move against the steering gear");
    out.assumed.push_back(out.frame && out.frame->gear
                              ? "the steering gear rides on its rail, rigid up to its middle line"
                              : "what the steering gear is bolted to does not move");
  }
  for (const Piece& piece : out.pieces) {
    const std::string name =
        piece.name.empty() ? piece.part : fmt::format("{}, {}", piece.part, piece.name);
    const bool open = !piece.beams.empty() && sections::is_open(piece.beams.front().at_a);
    if (open && !piece.warping) {
      out.assumed.push_back(fmt::format(
          "{}: an open section, whose warping is left out: under torque it is too soft here, and "
          "the stress of warping held at its ends is missing",
          name));
    } else if (open && piece.warping->any_ends) {
      out.assumed.push_back(fmt::format(
          "{}: a channel, which warps as it twists: under torque it is too soft here; "
          "its stress is the largest, whether either end holds its warping or leaves it free",
          name));
    }
    if (open && (!piece.warping || piece.warping->any_ends)) {
      out.assumed.push_back(fmt::format("{}: its line runs through the centroids", name));
    }
    if (piece.spin_held) {
      out.assumed.push_back(fmt::format("{}: free spin on its ball joints held by {:g} N m/rad",
                                        piece.part, kSpinStiffness));
    }
  }
}

}  // namespace

fea::Vector6 root_load(const Assembly& assembly, const fea::Solution& solution) {
  const RootWeld& root = *assembly.root;
  if (root.spring) return solution.spring_force(*root.spring);
  fea::Vector6 held = solution.reaction(root.node);
  if (solution.state() != nullptr) {
    const fea::Matrix3 turn = fea::rotation_of(solution.placement(root.node).tail<3>());
    held << turn.transpose() * held.head<3>(), turn.transpose() * held.tail<3>();
  }
  return -held;
}

Assembly assemble(const Design& design, const StiffnessSet& set, Straights straights) {
  Builder builder(design, set, straights);
  builder.out().en_welds = design.factor_preset == checks::FactorPreset::en;
  add_axle(builder);
  add_link_and_bracket(builder);
  add_arms(builder);
  add_steering(builder);
  add_plain_parts(builder);
  add_bolt_groups(builder);
  Assembly& out = builder.out();
  if (out.model.beams.empty()) {
    throw base::InputError("", "there is no part to check: add `lateral_link:` or `members:`");
  }
  warp_channels(out);
  say_what_is_taken_for_granted(out, design);
  return std::move(out);
}

}  // namespace parts
