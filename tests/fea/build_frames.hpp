#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "fea/solver.hpp"

/// Frames for the tests. Units are whatever the test uses, as long as they agree.
namespace fea_test {

inline constexpr double kNone = std::numeric_limits<double>::infinity();  // no shear give

/// A section by its numbers, without shear give.
inline sections::AreaProps section(double area, double iyy, double izz, double torsion) {
  sections::AreaProps out;
  out.area = area;
  out.iyy = iyy;
  out.izz = izz;
  out.torsion = torsion;
  out.shear_y = kNone;
  out.shear_z = kNone;
  out.polar = iyy + izz;
  return out;
}

/// Round tube without shear give.
inline sections::AreaProps tube(double outside, double wall) {
  const double r = 0.5 * outside;
  const double inside = r - wall;
  const double pi = 3.14159265358979323846;
  const double i = 0.25 * pi * (r * r * r * r - inside * inside * inside * inside);
  sections::AreaProps out = section(pi * (r * r - inside * inside), i, i, 2.0 * i);
  out.modulus_y = out.modulus_z = i / r;
  return out;
}

struct Chain {
  std::vector<fea::NodeId> nodes;
  std::vector<fea::BeamId> beams;
};

/// A straight row of `n` equal beams; `first` and `last` are nodes already there, if given.
inline Chain chain(fea::Model& model, const fea::Vector3& from_g, const fea::Vector3& to_g, int n,
                   const sections::AreaProps& props, const fea::Elastic& elastic,
                   std::optional<fea::NodeId> first = std::nullopt,
                   std::optional<fea::NodeId> last = std::nullopt) {
  Chain out;
  for (int i = 0; i <= n; ++i) {
    if (i == 0 && first) {
      out.nodes.push_back(*first);
    } else if (i == n && last) {
      out.nodes.push_back(*last);
    } else {
      out.nodes.push_back(model.add(fea::Node{
          .at_g = from_g + (to_g - from_g) * (static_cast<double>(i) / n),
      }));
    }
  }
  for (std::size_t i = 0; i + 1 < out.nodes.size(); ++i) {
    out.beams.push_back(model.add(fea::Beam{.a = {.node = out.nodes[i]},
                                            .b = {.node = out.nodes[i + 1]},
                                            .section = props,
                                            .elastic = elastic}));
  }
  return out;
}

inline void hold(fea::Model& model, fea::NodeId node, const std::array<bool, 6>& held) {
  model.add(fea::Support{.node = node, .held = held});
}

inline void clamp(fea::Model& model, fea::NodeId node) {
  hold(model, node, {true, true, true, true, true, true});
}

/// Keeps every node of a frame in the xz plane there.
inline void keep_in_xz(fea::Model& model) {
  for (int i = 0; i < static_cast<int>(model.nodes.size()); ++i) {
    hold(model, fea::NodeId{i}, {false, true, false, true, false, true});
  }
}

inline fea::Loads push(fea::NodeId node, const fea::Vector3& force_g,
                       const fea::Vector3& moment_g = fea::Vector3::Zero()) {
  fea::Loads loads;
  loads.nodes.push_back({.node = node, .force_g = force_g, .moment_g = moment_g});
  return loads;
}

inline fea::Solution linear(const fea::Model& model, const fea::Loads& loads) {
  return fea::solve(fea::factor(model), loads, {.method = fea::Method::linear});
}

/// A joint whose given components are free (0), rigid or springs; axes global unless given.
inline fea::Joint joint(const std::array<double, 6>& stiffness,
                        const fea::Matrix3& axes_g = fea::Matrix3::Identity()) {
  return {.axes_g = axes_g, .stiffness = stiffness};
}

/// Turns freely about all three axes.
inline fea::Joint ball() {
  return joint({fea::kRigid, fea::kRigid, fea::kRigid, 0.0, 0.0, 0.0});
}

}  // namespace fea_test
