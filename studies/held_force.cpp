#include "studies/held_force.hpp"

#include <variant>

#include <Eigen/Geometry>

#include "fea/rotation.hpp"

namespace studies {

std::vector<fea::Vector6> held_forces(const SetModel& model, const parts::DesignCase& load_case,
                                      const CaseSolution& solved) {
  const parts::Assembly& assembly = model.assembly();
  const fea::Solution& solution = solved.solution;
  const bool moved = solution.state() != nullptr;
  std::vector<fea::NodeLoad> beside;  // what the springs do not say
  for (const parts::NamedLoad& named : parts::named_loads(assembly, model.design(), load_case)) {
    const auto* load = std::get_if<fea::NodeLoad>(&named.load);
    if (named.coil_at_rest && load != nullptr) beside.push_back(*load);
  }
  // With large displacements a stop's gap is its own, and so is the heave the ground holds.
  if (moved && assembly.axle) {
    beside.push_back({.node = *assembly.axle,
                      .offset_g = fea::Vector3::Zero(),
                      .force_g = fea::Vector3::Zero(),
                      .moment_g = {solved.ground_moment, 0.0, 0.0}});
  }
  for (std::size_t i = 0; !moved && i < assembly.stops.size(); ++i) {
    if ((solved.closed_stops & (1U << i)) != 0) beside.push_back(gap_load_of(assembly.stops[i]));
  }
  for (const fea::NodeLoad& ground : ground_loads(assembly, load_case.place, solved.closed_stops)) {
    if (!moved) beside.push_back(ground);
  }

  std::vector<fea::Vector6> out;
  for (const parts::NamedNode& held : assembly.held) {
    fea::Vector6 on = solution.reaction(held.node);
    fea::Matrix3 turn = fea::Matrix3::Identity();
    if (moved) turn = fea::rotation_of(solution.placement(held.node).tail<3>());
    for (const fea::NodeLoad& load : beside) {
      if (load.node != held.node) continue;
      const fea::Vector3 arm = turn * load.offset_g;
      on.head<3>() += load.force_g;
      on.tail<3>() += arm.cross(load.force_g) + load.moment_g;
    }
    out.push_back(on);
  }
  return out;
}

}  // namespace studies
