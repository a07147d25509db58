#pragma once

#include "tests/report/small_answer.hpp"

namespace invented {

/// The invented answer with a drawing of one straight piece in one load case.
inline studies::Answer drawn_answer() {
  studies::Answer a = answer();
  studies::Drawing d;
  d.pieces = {{.part = "lateral_link",
               .name = "",
               .line = {{0.0, 0.4, 0.5}, {0.0, -0.4, 0.45}},
               .along = {0.0, 0.8},
               .shapes = {sections::RoundTube{0.038, 0.006}, sections::RoundTube{0.038, 0.006}},
               .y_axes = {{1.0, 0.0, 0.0}, {1.0, 0.0, 0.0}},
               .z_axes = {{0.0, 0.0, 1.0}, {0.0, 0.0, 1.0}}}};
  const std::string load_case = "slid into a curb, left wheel";
  d.cases = {{.load_case = load_case,
              .set = "soft rail",
              .moved = {{{0.0, 0.001, 0.0}, {0.0, 0.002, 0.0}}},
              .forces = {{{.n = -40.0e3}, {.n = -40.0e3}}},
              .loads = {{"axle, across the truck", {0.0, -0.4, 0.45}, {0.0, 40.0e3, 0.0}, false}},
              .modes = {}}};
  d.utilization = {{"bracket", load_case, 1.18, true}, {"brace", load_case, base::kUnset, false}};
  a.drawing = d;
  return a;
}

}  // namespace invented
