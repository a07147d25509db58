#pragma once

#include <cstdint>

#include <Eigen/Geometry>

#include "tests/fea/build_frames.hpp"

/// Frames drawn by lot, with every kind of thing a frame can have. Invented.
namespace fea_test {

/// The same numbers from the same seed, everywhere.
class Lot {
 public:
  explicit Lot(std::uint32_t seed) : state_(seed * 2654435761U + 12345U) {}
  double between(double low, double high) {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 17U;
    state_ ^= state_ << 5U;
    return low + (high - low) * (static_cast<double>(state_) / 4294967296.0);
  }
  fea::Vector3 vector(double size) {
    const double x = between(-size, size);
    const double y = between(-size, size);
    return {x, y, between(-size, size)};
  }
  fea::Matrix3 axes() {
    const fea::Vector3 about = vector(1.0).normalized();
    return Eigen::AngleAxisd(between(0.1, 3.0), about).toRotationMatrix();
  }
  fea::Matrix6 coupled(double size) {
    fea::Matrix6 root;
    for (double& value : root.reshaped()) value = between(-1.0, 1.0);
    fea::Vector6 scale;
    scale << 1.0, 1.0, 1.0, 0.2, 0.2, 0.2;
    return size * (scale.asDiagonal() * root * root.transpose() * scale.asDiagonal());
  }

 private:
  std::uint32_t state_;
};

struct RandomFrame {
  fea::Model model;
  fea::Loads loads;
  fea::Loads other;  ///< forces only, elsewhere
};

/// Six points joined by beams, some with joints and offsets; two of the points and a third, to
/// which a bar goes, are one rigid body; a coupled spring between two nodes and one to the ground;
/// one clamp, one partial support; every kind of load, heat, own weight and a moved support.
inline RandomFrame random_frame(std::uint32_t seed) {
  Lot lot(seed);
  RandomFrame out;
  fea::Model& model = out.model;
  const fea::Elastic steel{.young = 205.0e9, .shear = 79.0e9};
  std::vector<fea::NodeId> n;
  for (int i = 0; i < 8; ++i) {
    n.push_back(model.add(
        fea::Node{.at_g = fea::Vector3(0.4 * i, 0.3 * (i % 2), 0.25 * (i % 3)) + lot.vector(0.1)}));
  }
  const auto beam = [&](int a, int b) -> fea::Beam& {
    sections::AreaProps props = tube(lot.between(0.03, 0.05), 0.004);
    props.izz *= lot.between(0.4, 1.0);
    props.polar = props.iyy + props.izz;
    props.shear_y = props.shear_z = 0.5 * props.area;
    model.add(fea::Beam{.a = {.node = n[static_cast<std::size_t>(a)]},
                        .b = {.node = n[static_cast<std::size_t>(b)]},
                        .section = props,
                        .elastic = steel,
                        .density = 7850.0});
    return model.beams.back();
  };
  for (int i = 0; i < 5; ++i) beam(i, i + 1);
  beam(0, 2).b.offset_g = lot.vector(0.03);
  fea::Beam& jointed = beam(1, 4);
  jointed.a.joint = joint({fea::kRigid, fea::kRigid, fea::kRigid, 900.0, 0.0, 0.0}, lot.axes());
  jointed.b.joint = joint({2.0e6, 3.0e6, fea::kRigid, 500.0, 900.0, 700.0}, lot.axes());
  beam(3, 6);
  beam(7, 2);
  model.add(fea::RigidBody{.master = n[6], .carried = {n[7], n[5]}});
  clamp(model, n[0]);
  hold(model, n[3], {false, true, true, false, false, false});
  fea::Spring between{.a = n[1], .b = n[4], .axes_g = lot.axes(), .stiffness = lot.coupled(2.0e5)};
  const fea::Vector3 reach = model[n[4]].at_g - model[n[1]].at_g;
  between.offset_a_g = 0.3 * reach;
  between.offset_b_g = -0.7 * reach;
  model.add(between);
  model.add(fea::Spring{.a = n[7], .axes_g = lot.axes(), .stiffness = lot.coupled(1.0e5)});

  out.loads.nodes.push_back({.node = n[5],
                             .offset_g = lot.vector(0.1),
                             .force_g = lot.vector(400.0),
                             .moment_g = lot.vector(30.0)});
  out.loads.points.push_back({.beam = fea::BeamId{1},
                              .at = 0.15,
                              .force_g = lot.vector(300.0),
                              .moment_g = lot.vector(20.0)});
  out.loads.lines.push_back({.beam = fea::BeamId{2},
                             .from = 0.05,
                             .to = 0.3,
                             .at_from_g = lot.vector(900.0),
                             .at_to_g = lot.vector(900.0)});
  out.loads.strains.push_back({.beam = fea::BeamId{3},
                               .stretch = 2.0e-5,
                               .bend_y = lot.between(-1.0e-4, 1.0e-4),
                               .bend_z = lot.between(-1.0e-4, 1.0e-4)});
  fea::Vector6 by = fea::Vector6::Zero();
  by(1) = lot.between(-1.0e-4, 1.0e-4);
  by(2) = lot.between(-1.0e-4, 1.0e-4);
  out.loads.moves.push_back({.node = n[3], .by_g = by});
  out.loads.gravity_g = lot.vector(9.8);
  out.other.nodes.push_back(
      {.node = n[2], .force_g = lot.vector(500.0), .moment_g = lot.vector(40.0)});
  out.other.nodes.push_back(
      {.node = n[7], .force_g = lot.vector(500.0), .moment_g = lot.vector(40.0)});
  out.other.points.push_back({.beam = fea::BeamId{7}, .at = 0.2, .force_g = lot.vector(300.0)});
  return out;
}

}  // namespace fea_test
