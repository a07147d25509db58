#include "parts/used_sticks.hpp"

namespace parts {

std::vector<StickOf> used_sticks(const Design& design) {
  std::vector<StickOf> all;
  if (design.lateral_link) all.push_back({"lateral_link.tube", &design.lateral_link->stick});
  if (design.brace) all.push_back({"brace.tube", &design.brace->stick});
  if (design.bracket && !design.bracket->cross_member.material.id.empty()) {
    all.push_back({"bracket.cross_member", &design.bracket->cross_member});
  }
  if (design.frame) {
    all.push_back({"frame.cross_member", &design.frame->cross_member});
    if (!design.frame->arm_cross_member.material.id.empty()) {
      all.push_back({"frame.arm_cross_member", &design.frame->arm_cross_member});
    }
  }
  if (design.arm) {
    all.push_back({"arm.lower", &design.arm->lower});
    if (has_upper_arm(*design.arm)) all.push_back({"arm.upper", &design.arm->upper});
  }
  if (design.axle) {
    for (const HousingTube& tube : design.axle->housing.tubes) {
      all.push_back({"axle.housing", &tube.stick});
    }
  }
  if (design.steering) {
    all.push_back({"steering.drag_link", &design.steering->drag_link});
    all.push_back({"steering.tie_rod", &design.steering->tie_rod});
    if (has_pitman_arm(*design.steering)) {
      all.push_back({"steering.pitman_arm", &design.steering->pitman_arm});
    }
  }
  for (const Named<Member>& member : design.members) {
    all.push_back({"members." + member.name + ".section", &member.value.stick});
  }
  return all;
}

}  // namespace parts
