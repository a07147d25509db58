#include "studies/held_force.hpp"

#include <variant>

#include <Eigen/Geometry>

#include "fea/rotation.hpp"

namespace studies {

fea::Vector6 held_force(const SetModel& model, const parts::DesignCase& load_case,
                        const CaseSolution& solved, fea::NodeId node) {
  const parts::Assembly& assembly = model.assembly();
  const fea::Solution& solution = solved.solution;
  fea::Vector6 out = solution.reaction(node);
  const bool moved = solution.state() != nullptr;
  fea::Matrix3 turn = fea::Matrix3::Identity();
  if (moved) turn = fea::rotation_of(solution.placement(node).tail<3>());
  const auto add = [&](const fea::NodeLoad& load) {
    if (load.node != node) return;
    const fea::Vector3 arm = turn * load.offset_g;
    out.head<3>() += load.force_g;
    out.tail<3>() += arm.cross(load.force_g) + load.moment_g;
  };
  for (const parts::NamedLoad& named : parts::named_loads(assembly, model.design(), load_case)) {
    const auto* load = std::get_if<fea::NodeLoad>(&named.load);
    if (named.coil_at_rest && load != nullptr) add(*load);
  }
  // With large displacements a stop's gap is its own, and so is the place the ground holds.
  if (moved) {
    if (assembly.axle == node) out[3] += solved.ground_moment;
    return out;
  }
  for (std::size_t i = 0; i < assembly.stops.size(); ++i) {
    if ((solved.closed_stops & (1U << i)) != 0) add(gap_load_of(assembly.stops[i]));
  }
  for (const fea::NodeLoad& load : ground_loads(assembly, load_case.place, solved.closed_stops)) {
    add(load);
  }
  return out;
}

}  // namespace studies
