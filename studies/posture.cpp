#include "studies/posture.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Geometry>

#include "fea/rotation.hpp"
#include "studies/answer.hpp"
#include "studies/set_model.hpp"

namespace studies {
namespace {

fea::Matrix3 turn_of(const fea::Vector6& placement) {
  return fea::rotation_of(placement.tail<3>());
}

/// Turns of what holds the bolt, and of the part that turns on it.
struct Turns {
  fea::Matrix3 holder;
  fea::Matrix3 part;
};

Turns turns_at(const parts::TurningJoint& joint, const parts::Assembly& assembly,
               const fea::Solution& solution) {
  if (joint.spring) {
    const fea::Spring& spring = assembly.model[*joint.spring];
    return {turn_of(solution.placement(spring.a)), turn_of(solution.placement(*spring.b))};
  }
  const fea::Beam& beam = assembly.model[joint.beam];
  return {turn_of(solution.placement(joint.end == 0 ? beam.a.node : beam.b.node)),
          turn_of(solution.end_placement(joint.beam, joint.end))};
}

/// How far the part has moved from what holds its bolt, along the case's axes.
fea::Vector3 gap_at(const parts::TurningJoint& joint, const parts::Assembly& assembly,
                    const fea::Solution& solution) {
  if (joint.spring) {
    const fea::Spring& s = assembly.model[*joint.spring];
    return shift_of(*s.b, s.offset_b_g, solution) - shift_of(s.a, s.offset_a_g, solution);
  }
  const fea::Beam& beam = assembly.model[joint.beam];
  const fea::BeamEnd& end = joint.end == 0 ? beam.a : beam.b;
  return solution.end_placement(joint.beam, joint.end).head<3>() -
         shift_of(end.node, end.offset_g, solution);
}

/// Direction of the part at ride height.
fea::Vector3 along(const parts::TurningJoint& joint, const parts::Assembly& assembly) {
  const fea::Model& model = assembly.model;
  if (joint.spring) return joint.bar_g;
  return (fea::end_b_g(model, model[joint.beam]) - fea::end_a_g(model, model[joint.beam]))
      .normalized();
}

double off_square(const fea::Vector3& bolt, const fea::Vector3& bar) {
  return std::asin(std::clamp(bolt.dot(bar), -1.0, 1.0));
}

template <class Item>
Item& same_or_new(std::vector<Item>& all, const Item& item,
                  bool (*same)(const Item&, const Item&)) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Item& one) { return same(one, item); });
  if (found != all.end()) return *found;
  all.push_back(item);
  return all.back();
}

void widen(PostureExtremes& out, const AxlePlace& place) {
  out.lowest = std::fmin(out.lowest, place.moved[2]);
  out.highest = std::fmax(out.highest, place.moved[2]);
  out.sideways = std::max(out.sideways, std::abs(place.moved[1]));
  out.roll = std::max(out.roll, std::abs(place.moved[3]));
  out.ground_moment = std::max(out.ground_moment, std::abs(place.ground_moment));
  for (const JointAngles& joint : place.joints) {
    JointAngles& most =
        same_or_new<JointAngles>(out.joints, joint, [](const JointAngles& a, const JointAngles& b) {
          return a.part == b.part && a.where == b.where;
        });
    most.twist = std::fmax(most.twist, joint.twist);
    most.tilt = std::fmax(most.tilt, joint.tilt);
    most.give = std::fmax(most.give, joint.give);
  }
  for (const StopForce& stop : place.stops) {
    if (!(stop.force > 0.0)) continue;
    StopForce& most = same_or_new<StopForce>(
        out.stops, stop, [](const StopForce& a, const StopForce& b) { return a.name == b.name; });
    most.force = std::max(most.force, stop.force);
  }
}

}  // namespace

JointAngles angles_of(const parts::TurningJoint& joint, const parts::Assembly& assembly,
                      const fea::Solution& solution) {
  const Turns turns = turns_at(joint, assembly, solution);
  const fea::Matrix3 between = turns.holder.transpose() * turns.part;
  JointAngles out{.part = joint.part,
                  .where = joint.where,
                  .ball = joint.kind == parts::JointKind::ball,
                  .most_tilt = joint.most_tilt};
  if (out.ball) {
    const fea::Vector3 bar = along(joint, assembly);
    out.tilt = std::abs(off_square(joint.bolt_g, between * bar) - off_square(joint.bolt_g, bar));
    return out;
  }
  const fea::Vector3 turn = fea::rotation_vector(between);
  out.twist = std::abs(turn.dot(joint.bolt_g));
  out.tilt = (turn - turn.dot(joint.bolt_g) * joint.bolt_g).norm();
  const fea::Vector3 gap = turns.holder.transpose() * gap_at(joint, assembly, solution);
  out.give = (gap - gap.dot(joint.bolt_g) * joint.bolt_g).norm();
  return out;
}

std::optional<AxlePlace> axle_place(const SetModel& model, const parts::DesignCase& load_case,
                                    const CaseSolution& solved) {
  const parts::Assembly& assembly = model.assembly();
  const fea::Solution& solution = solved.solution;
  if (!assembly.axle || solution.status() != fea::SolveStatus::converged) return std::nullopt;
  AxlePlace out;
  const fea::Vector6 at = solution.placement(*assembly.axle);
  for (int i = 0; i < 6; ++i) out.moved[static_cast<std::size_t>(i)] = at[i];
  for (const parts::TurningJoint& joint : assembly.joints) {
    out.joints.push_back(angles_of(joint, assembly, solution));
  }
  out.lowest_corner = out.highest_corner = at[2];
  const auto at_corner = [&](fea::NodeId node, const fea::Vector3& offset_g) {
    const double rise = rise_of(node, offset_g, solution);
    out.lowest_corner = std::min(out.lowest_corner, rise);
    out.highest_corner = std::max(out.highest_corner, rise);
  };
  for (const parts::TravelStop& stop : assembly.stops) {
    if (stop.known()) out.stops.push_back({stop.name, force_of(stop, solution)});
    at_corner(stop.node, stop.offset_g);
  }
  for (const parts::CoilSeat& seat : assembly.coil_seats) at_corner(seat.node, seat.offset_g);
  const GroundHold ground = ground_hold(assembly, load_case.place, solved);
  out.ground_force = ground.force;
  out.ground_moment = ground.moment;
  return out;
}

std::vector<PostureExtremes> extremes_of(const std::vector<SolvedCase>& solved) {
  std::vector<PostureExtremes> out;
  for (const SolvedCase& one : solved) {
    if (!one.place) continue;
    widen(same_or_new<PostureExtremes>(
              out, PostureExtremes{.posture = one.posture, .joints = {}, .stops = {}},
              [](const PostureExtremes& a, const PostureExtremes& b) {
                return a.posture == b.posture;
              }),
          *one.place);
  }
  return out;
}

}  // namespace studies
