#pragma once

#include "fea/frame_model.hpp"

namespace fea_test {

/// A strap and a stop of each kind between points of the mixed frame (tests/fea/mixed_frame.hpp).
/// Invented.
inline void add_gaps(fea::Model& model) {
  const auto end = [&model](int node, const fea::Vector3& arm) {
    const fea::NodeId id{node};
    return fea::GapEnd{.node = id, .at_g = model[id].at_g + arm};
  };
  model.add(fea::Gap{.a = {.at_g = {0.7, -0.4, 0.9}},
                     .b = end(8, {0.05, 0.02, 0.1}),
                     .stiffness = 3.0e5,
                     .clearance = 2.0e-3});
  model.add(fea::Gap{.a = end(3, {0.02, -0.01, 0.05}),
                     .b = end(5, {0.0, 0.03, 0.04}),
                     .contact = fea::Gap::Contact::when_shorter,
                     .stiffness = 2.0e6,
                     .clearance = 1.0e-3});
  model.add(fea::Gap{.a = end(6, {0.03, 0.0, -0.05}),
                     .b = end(8, {0.0, 0.04, 0.06}),
                     .axis_g = fea::Vector3(0.2, -1.0, 0.4),
                     .contact = fea::Gap::Contact::when_shorter,
                     .stiffness = 1.0e6,
                     .clearance = 5.0e-4});
  model.add(fea::Gap{.a = end(8, {0.0, 0.0, -0.1}),
                     .b = {.at_g = {0.9, -0.4, 0.1}},
                     .axis_g = fea::Vector3(0.0, 0.0, 2.0),
                     .contact = fea::Gap::Contact::when_longer,
                     .stiffness = 4.0e5,
                     .clearance = 1.0e-3});
}

}  // namespace fea_test
