#pragma once

#include <array>
#include <map>
#include <string>

#include "studies/answer.hpp"

namespace report {

/// Where a drawing is looked at from: about z from straight ahead, then up.  [rad]
struct View {
  double yaw = 0.62;
  double pitch = 0.36;
};

/// A picture's size in the units of its coordinates, and its marks.
struct Picture {
  int width = 0;
  int height = 0;
  std::string marks;
};

/// The utilization of each part at its worst over all load cases; unset = not decided. Over the
/// limit says more than not decided.
[[nodiscard]] std::map<std::string, double> worst_utilizations(
    const std::vector<checks::Finding>& findings);

/// The assembly in its reference place, to scale, as seen from far off; each face has the class of
/// its part's band of utilization ("u3") and of its shade ("k1").
[[nodiscard]] Picture picture_of(const studies::Answer& answer, const View& view);

/// The same as an SVG 1.1 file of its own, with the verdict, the legend and the cautions.
/// @param answer  with a drawing
[[nodiscard]] std::string drawing_svg(const studies::Answer& answer);

}  // namespace report
