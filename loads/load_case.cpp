#include "loads/load_case.hpp"

namespace loads {
namespace {

Role across(Role role) {
  switch (role) {
    case Role::left_contact:
      return Role::right_contact;
    case Role::right_contact:
      return Role::left_contact;
    case Role::left_hub:
      return Role::right_hub;
    case Role::right_hub:
      return Role::left_hub;
    case Role::left_arm_midspan:
      return Role::right_arm_midspan;
    case Role::right_arm_midspan:
      return Role::left_arm_midspan;
    case Role::left_knuckle:
      return Role::right_knuckle;
    case Role::right_knuckle:
      return Role::left_knuckle;
    case Role::axle_center:
    case Role::link_midspan:
    case Role::pitman_end:
      break;
  }
  return role;
}

std::string words_across(std::string text) {
  const std::string left = "left";
  const std::string right = "right";
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text.compare(at, left.size(), left) == 0) {
      text.replace(at, left.size(), right);
      at += right.size() - 1;
    } else if (text.compare(at, right.size(), right) == 0) {
      text.replace(at, right.size(), left);
      at += left.size() - 1;
    }
  }
  return text;
}

}  // namespace

LoadCase mirrored(const LoadCase& load_case) {
  LoadCase out = load_case;
  out.id = words_across(out.id);
  out.name = words_across(out.name);
  if (out.side != Side::none) out.side = out.side == Side::left ? Side::right : Side::left;
  for (Push& push : out.pushes) {
    push.role = across(push.role);
    // 0 - x rather than -x: a zero keeps its sign.
    push.force[1] = 0.0 - push.force[1];
    push.moment[0] = 0.0 - push.moment[0];
    push.moment[2] = 0.0 - push.moment[2];
  }
  out.place.roll = 0.0 - out.place.roll;
  return out;
}

std::string push_words(const Push& push) {
  if (!push.what.empty()) return push.what;
  switch (push.role) {
    case Role::left_contact:
      return "left wheel, at the ground";
    case Role::right_contact:
      return "right wheel, at the ground";
    case Role::left_hub:
      return "left wheel, at the hub";
    case Role::right_hub:
      return "right wheel, at the hub";
    case Role::axle_center:
      return "middle of the axle";
    case Role::link_midspan:
      return "middle of the lateral link";
    case Role::left_arm_midspan:
      return "middle of the left arm";
    case Role::right_arm_midspan:
      return "middle of the right arm";
    case Role::left_knuckle:
      return "left kingpin";
    case Role::right_knuckle:
      return "right kingpin";
    case Role::pitman_end:
      break;
  }
  return "end of the pitman arm";
}

std::string posture_word(Posture posture) {
  switch (posture) {
    case Posture::ride:
      return "ride height";
    case Posture::bump:
      return "bump";
    case Posture::droop:
      return "droop";
    case Posture::crossed:
      return "crossed";
    case Posture::imposed:
      break;
  }
  return "as imposed";
}

}  // namespace loads
