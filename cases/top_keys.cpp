#include "cases/top_keys.hpp"

namespace cases {

const std::vector<TopKey>& top_keys() {
  static const std::vector<TopKey> kKeys = {
      {"title", "what this case is, in a few words; required"},
      {"units", "inches or millimeters in the answer"},
      {"sizes", "bars and tubes as entered, or as thin as the mill may deliver them"},
      {"vehicle", "weights, tires and track: what the loads come from"},
      {"points", "places in space, by name"},
      {"materials", "steels of your own"},
      {"sections", "sections of your own"},
      {"joints", "joints known by their rates"},
      {"lateral_link", "the bar that holds the axle sideways"},
      {"bracket", "hangs from the rail and carries the link's bolt"},
      {"brace", "the tube from the bracket to the opposite rail"},
      {"frame", "the truck's rails and cross members about the bracket"},
      {"arm", "radius arms, which hold the axle lengthwise"},
      {"axle", "the beam axle and its coils"},
      {"limit_strap", "limit straps, and what else ends the axle's drop"},
      {"steering", "drag link and tie rod, which turn the axle's wheels"},
      {"members", "bars and tubes between any two points"},
      {"supports", "points that are held"},
      {"springs", "between two points, or a point and the ground"},
      {"rigid", "points that move as one piece"},
      {"side_welds", "tabs and gussets welded to the side of a bar or tube"},
      {"bolt_groups", "bolts that together hold the end of a bar"},
      {"forces", "at a point, or on a member"},
      {"line_loads", "forces per length of a member"},
      {"strains", "members that are warmer, or were made too long"},
      {"settlements", "supports that are moved"},
      {"self_weight", "the weight of every bar, tube and plate"},
      {"load_cases", "which built-in load cases run, and load cases of your own"},
      {"duty", "how often loads come back"},
      {"factors", "safety factors asked for"},
      {"variants", "changes to try, by path and value"},
      {"compare", "changes to try, in short words"}};
  return kKeys;
}

}  // namespace cases
