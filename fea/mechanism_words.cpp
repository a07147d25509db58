#include <cmath>

#include <fmt/format.h>

#include "fea/labels.hpp"
#include "fea/mechanism.hpp"

namespace fea {
namespace {

constexpr double kNegligible = 1.0e-6;  // of the largest motion of the model

/// A motion of six components with the size of each half.
struct Moved {
  Vector6 motion = Vector6::Zero();
  double along = 0.0;
  double turned = 0.0;
};

Moved moved(const Vector6& motion) {
  return {motion, motion.head<3>().norm(), motion.tail<3>().norm()};
}

std::string words(const std::string& who, const Moved& m, bool along) {
  return along ? fmt::format("{} can move along {}", who, direction_words(m.motion.head<3>()))
               : fmt::format("{} can turn about {}", who, direction_words(m.motion.tail<3>()));
}

/// The largest motion of the ends of all beams, and of which beam.
std::pair<Moved, BeamId> largest_end(const System& system, const Eigen::VectorXd& motion) {
  Moved most;
  BeamId which;
  for (std::size_t b = 0; b < system.beams().size(); ++b) {
    const BeamPart& part = system.beams()[b];
    for (const EndPart& end : part.ends) {
      const Moved here = moved(end_motion(end, motion).far_g);
      const double lever = system.typical_length();
      if (std::hypot(here.along, lever * here.turned) <=
          std::hypot(most.along, lever * most.turned) * (1.0 + kNegligible)) {
        continue;
      }
      most = here;
      which = BeamId{static_cast<int>(b)};
    }
  }
  return {most, which};
}

Mechanism describe_beam(const System& system, const Moved& most, BeamId which) {
  const Beam& beam = system.model()[which];
  const bool along = most.along > kNegligible * system.typical_length() * most.turned;
  const Vector3 axis_g = system.beams()[static_cast<std::size_t>(which.index)].axes_lg.row(0);
  Mechanism out{beam.a.node, most.motion / most.motion.cwiseAbs().maxCoeff(), {}};
  const double about_itself = std::abs(most.motion.tail<3>().dot(axis_g));
  out.words = !along && about_itself > (1.0 - kNegligible) * most.turned
                  ? label(system.model(), which) + " can turn about its own axis"
                  : words("an end of " + label(system.model(), which), most, along);
  return out;
}

}  // namespace

Mechanism describe(const System& system, const Eigen::VectorXd& motion) {
  const double lever = system.typical_length();
  const auto n_nodes = static_cast<int>(system.model().nodes.size());
  NodeId farthest{0};
  NodeId most_turned{0};
  double along = 0.0;
  double turned = 0.0;
  for (int i = 0; i < n_nodes; ++i) {
    const Moved here = moved(motion.segment<6>(first_unknown({i})));
    if (here.along > along * (1.0 + kNegligible)) {
      along = here.along;
      farthest = NodeId{i};
    }
    if (here.turned > turned * (1.0 + kNegligible)) {
      turned = here.turned;
      most_turned = NodeId{i};
    }
  }
  const auto [end, beam] = largest_end(system, motion);
  const double of_ends = std::hypot(end.along, lever * end.turned);
  if (std::hypot(along, lever * turned) < kNegligible * of_ends) {
    return describe_beam(system, end, beam);
  }
  const bool moves = along > kNegligible * lever * turned;
  const NodeId node = moves ? farthest : most_turned;
  const Moved most = moved(motion.segment<6>(first_unknown(node)));
  return {node, most.motion / most.motion.cwiseAbs().maxCoeff(),
          words(label(system.model(), node), most, moves)};
}

}  // namespace fea
