#include "parts/bracket_weld.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace parts {
namespace {

/// Stations along the rail of every weld line, from the bracket's middle.
std::vector<double> line_stations(const Bracket& bracket) {
  const double t = bracket.plates.thickness;
  const double inner = bracket.plates.count > 1 ? 0.5 * bracket.gap : -0.5 * t;
  // A groove's throat lies inside its plate.
  const double inside = bracket.weld.groove > 0.0 ? 0.5 * bracket.weld.groove : 0.0;
  std::vector<double> stations;
  for (const double side : {-1.0, 1.0}) {
    if (bracket.plates.count > 1) {
      stations.push_back(side * (inner + t - inside));
      if (bracket.weld.both_sides) stations.push_back(side * (inner + inside));
    } else if (side > 0.0 || bracket.weld.both_sides) {
      stations.push_back(side * (0.5 * t - inside));
    }
  }
  return stations;
}

}  // namespace

double weld_up_the_side(const Bracket& bracket) {
  return std::isnan(bracket.up_the_side) ? 0.5 * bracket.rail.height : bracket.up_the_side;
}

double edge_distance(const Bracket& bracket) {
  return std::isnan(bracket.edge_distance) ? 0.5 * depth_at_bolt(bracket) : bracket.edge_distance;
}

double depth_at_bolt(const Bracket& bracket) {
  return std::isnan(bracket.depth_at_bolt) ? 0.5 * bracket.depth_at_rail : bracket.depth_at_bolt;
}

double filler_of(const Design& design) {
  return design.bracket ? design.bracket->filler : Bracket{}.filler;
}

checks::WeldGroup root_weld(const Bracket& bracket, const BracketPlace& place) {
  checks::WeldGroup group{.lines = {}, .filler_tensile = bracket.filler};
  const double half_bottom = 0.5 * std::min(bracket.depth_at_rail, bracket.rail.width);
  const double half_width = 0.5 * bracket.rail.width;
  const fea::Vector3 up(0.0, 0.0, weld_up_the_side(bracket));
  for (const double x : line_stations(bracket)) {
    const fea::Vector3 foot = place.rail_bottom_g + fea::Vector3(x, 0.0, 0.0);
    const auto add = [&](const fea::Vector3& from, const fea::Vector3& to) {
      group.lines.push_back({from, to, bracket.weld.leg, bracket.weld.groove});
    };
    const fea::Vector3 across(0.0, half_bottom, 0.0);
    if (bracket.welded_to.bottom) add(foot - across, foot + across);
    const fea::Vector3 inner(0.0, place.inward_y * half_width, 0.0);
    if (bracket.welded_to.inner_side) add(foot + inner, foot + inner + up);
    if (bracket.welded_to.outer_side) add(foot - inner, foot - inner + up);
  }
  return group;
}

}  // namespace parts
