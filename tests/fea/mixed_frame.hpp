#pragma once

#include <Eigen/LU>

#include "tests/fea/build_frames.hpp"

/// A frame with one of everything, and the same frame turned, shifted or mirrored. Invented.
namespace fea_test {

struct Loaded {
  fea::Model model;
  fea::Loads loads;
};

/// A clamped post with an uneven arm, a ball-ended link back to the ground through an elastic
/// joint, a bush between two nodes, a coil to the ground, rigid arms and every kind of load.
inline Loaded mixed_frame() {
  using fea::Vector3;
  Loaded out;
  fea::Model& model = out.model;
  const fea::Elastic steel{.young = 205.0e9, .shear = 79.0e9};
  sections::AreaProps plate = section(1.2e-3, 1.0e-6, 1.6e-8, 5.6e-8);
  plate.shear_y = plate.shear_z = 1.0e-3;
  const sections::AreaProps round = tube(0.038, 0.005);

  const Chain post = chain(model, {0.0, 0.0, 0.0}, {0.1, 0.05, 0.4}, 3, plate, steel);
  const Chain arm =
      chain(model, {0.1, 0.05, 0.4}, {0.9, -0.3, 0.5}, 3, round, steel, post.nodes.back());
  clamp(model, post.nodes.front());
  const fea::NodeId ground = model.add(fea::Node{.at_g = {0.8, 0.5, 0.0}});
  clamp(model, ground);

  fea::Beam link{.a = {.node = ground, .joint = ball()},
                 .b = {.node = arm.nodes.back(), .offset_g = {0.02, 0.05, -0.03}},
                 .section = round,
                 .elastic = steel};
  const fea::Matrix3 axes = fea::member_axes(model, link).transpose();
  link.b.joint = joint({4.0e6, fea::kRigid, 9.0e6, 200.0, 0.0, 800.0}, axes);
  model.add(link);

  const fea::NodeId hub = model.add(fea::Node{.at_g = {0.9, -0.4, 0.45}});
  fea::Spring bush{.a = arm.nodes.back(),
                   .b = hub,
                   .offset_a_g = {0.0, -0.06, -0.02},
                   .offset_b_g = {0.0, 0.04, 0.03},
                   .axes_g = axes};
  bush.stiffness.diagonal() << 5.0e6, 2.0e6, 5.0e6, 4.0e3, 500.0, 4.0e3;
  model.add(bush);
  fea::Spring coil{.a = hub, .offset_a_g = {0.0, 0.0, 0.1}, .axes_g = axes};
  coil.stiffness.diagonal() << 1.0e4, 2.0e4, 4.0e4, 10.0, 10.0, 10.0;
  model.add(coil);

  out.loads.nodes.push_back({.node = hub,
                             .offset_g = {0.05, -0.1, -0.2},
                             .force_g = {-300.0, 500.0, 900.0},
                             .moment_g = {20.0, -10.0, 30.0}});
  out.loads.points.push_back({.beam = arm.beams[1],
                              .at = 0.1,
                              .force_g = {50.0, -80.0, -200.0},
                              .moment_g = {5.0, 3.0, -8.0}});
  out.loads.lines.push_back({.beam = post.beams[2],
                             .from = 0.02,
                             .to = 0.1,
                             .at_from_g = {100.0, 0.0, 400.0},
                             .at_to_g = {-300.0, 900.0, 100.0}});
  return out;
}

/// The frame moved by x -> turn x + shift; `turn` may be a mirror (determinant -1), under which
/// moments and rotations change sign besides. Springs must have diagonal stiffness, supports must
/// hold all or nothing.
inline Loaded moved(const Loaded& from, const fea::Matrix3& turn, const fea::Vector3& shift) {
  const double hand = turn.determinant() > 0.0 ? 1.0 : -1.0;
  const auto axes = [&](fea::Matrix3& axes_g) {
    axes_g = (turn * axes_g).eval();
    axes_g.col(0) *= hand;  // right-handed again; the stiffness does not see it
  };
  Loaded out = from;
  for (fea::Node& node : out.model.nodes) node.at_g = (turn * node.at_g + shift).eval();
  for (std::size_t i = 0; i < out.model.beams.size(); ++i) {
    fea::Beam& beam = out.model.beams[i];
    const fea::Vector3 z = fea::member_axes(from.model, from.model.beams[i]).row(2);
    beam.z_toward_g = turn * z;
    for (fea::BeamEnd* end : {&beam.a, &beam.b}) {
      end->offset_g = (turn * end->offset_g).eval();
      if (end->joint) axes(end->joint->axes_g);
    }
  }
  for (fea::Spring& spring : out.model.springs) {
    spring.offset_a_g = (turn * spring.offset_a_g).eval();
    spring.offset_b_g = (turn * spring.offset_b_g).eval();
    axes(spring.axes_g);
  }
  for (fea::NodeLoad& load : out.loads.nodes) {
    load.offset_g = (turn * load.offset_g).eval();
    load.force_g = (turn * load.force_g).eval();
    load.moment_g = (hand * turn * load.moment_g).eval();
  }
  for (fea::BeamPointLoad& load : out.loads.points) {
    load.force_g = (turn * load.force_g).eval();
    load.moment_g = (hand * turn * load.moment_g).eval();
  }
  for (fea::BeamLineLoad& load : out.loads.lines) {
    load.at_from_g = (turn * load.at_from_g).eval();
    load.at_to_g = (turn * load.at_to_g).eval();
  }
  return out;
}

}  // namespace fea_test
