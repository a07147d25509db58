#include "fea/member_loads.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Geometry>

#include "fea/model_check.hpp"

namespace fea {
namespace {

Vector6 about(double lever, const Vector3& force, const Vector3& moment) {
  Vector6 out;
  out << force, moment + lever * Vector3::UnitX().cross(force);
  return out;
}

std::vector<MemberLoads> member_loads(const System& system, const Loads& loads) {
  std::vector<MemberLoads> members(system.beams().size());
  const auto index = [](BeamId id) { return static_cast<std::size_t>(id.index); };
  for (const BeamPointLoad& load : loads.points) {
    const BeamPart& beam = system.beams()[index(load.beam)];
    const double at = std::clamp(load.at, 0.0, beam.length);
    const Vector3 force_l = beam.axes_lg * load.force_g;
    const Vector3 moment_l = beam.axes_lg * load.moment_g;
    MemberLoads& member = members[index(load.beam)];
    member.between.points.push_back({at, force_l, moment_l});
    member.equivalent_l += equivalent_of_point(beam.flex, beam.length, at, force_l, moment_l);
  }
  for (const BeamLineLoad& load : loads.lines) {
    const BeamPart& beam = system.beams()[index(load.beam)];
    const double from = std::clamp(load.from, 0.0, beam.length);
    const double to = std::isnan(load.to) ? beam.length : std::clamp(load.to, 0.0, beam.length);
    const Vector3 at_from_l = beam.axes_lg * load.at_from_g;
    const Vector3 at_to_l = beam.axes_lg * load.at_to_g;
    MemberLoads& member = members[index(load.beam)];
    member.between.lines.push_back({from, to, at_from_l, at_to_l});
    member.equivalent_l += equivalent_of_line(beam.flex, beam.length, from, to, at_from_l, at_to_l);
  }
  for (const BeamStrain& strain : loads.strains) {
    const Beam& beam = system.model()[strain.beam];
    members[index(strain.beam)].strained_l += equivalent_of_strain(
        beam.section, beam.elastic, strain.stretch, strain.bend_y, strain.bend_z);
  }
  return members;
}

/// The weight of the beams as loads along them.
std::vector<BeamLineLoad> weights(const Model& model, const Vector3& gravity_g) {
  std::vector<BeamLineLoad> lines;
  if (gravity_g.isZero(0.0)) return lines;
  for (int i = 0; i < static_cast<int>(model.beams.size()); ++i) {
    const Beam& beam = model[BeamId{i}];
    if (std::isnan(beam.density)) continue;
    const Vector3 weight_g = beam.density * beam.section.area * gravity_g;
    lines.push_back({.beam = BeamId{i}, .at_from_g = weight_g, .at_to_g = weight_g});
  }
  return lines;
}

Eigen::VectorXd imposed_motion(const System& system, const std::vector<SupportMove>& moves) {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(system.n_unknowns());
  for (const SupportMove& move : moves) out.segment<6>(first_unknown(move.node)) += move.by_g;
  if (!moves.empty()) system.carry(out);
  return out;
}

}  // namespace

LoadsBetween LoadsBetween::seen_from(const Vector3& turn_l) const {
  const auto seen = [&turn_l](Vector3& vector) { vector -= turn_l.cross(vector).eval(); };
  LoadsBetween out = *this;
  for (Point& point : out.points) {
    seen(point.force_l);
    seen(point.moment_l);
  }
  for (Line& line : out.lines) {
    seen(line.at_from_l);
    seen(line.at_to_l);
  }
  return out;
}

Vector6 LoadsBetween::wrench_up_to(double x) const {
  Vector6 sum = Vector6::Zero();
  for (const Point& point : points) {
    if (point.at <= x) sum += about(point.at - x, point.force_l, point.moment_l);
  }
  // Two Gauss points integrate the lever (1) times the load (1) exactly.
  const double gauss = 1.0 / std::sqrt(3.0);
  for (const Line& line : lines) {
    const double end = std::min(x, line.to);
    if (!(end > line.from)) continue;
    for (const double p : {-gauss, gauss}) {
      const double s = line.from + 0.5 * (1.0 + p) * (end - line.from);
      const double t = (s - line.from) / (line.to - line.from);
      const Vector3 force =
          0.5 * (end - line.from) * ((1.0 - t) * line.at_from_l + t * line.at_to_l);
      sum += about(s - x, force, Vector3::Zero());
    }
  }
  return sum;
}

LoadCase prepare(const System& system, const Loads& loads) {
  require_valid(system.model(), loads);
  LoadCase out;
  out.loads = loads;
  for (NodeLoad& load : out.loads.nodes) {
    load.offset_g += system.roots().arm_g(load.node);
    load.node = system.roots().root(load.node);
  }
  for (const BeamLineLoad& weight : weights(system.model(), loads.gravity_g)) {
    out.loads.lines.push_back(weight);
  }
  out.members = member_loads(system, out.loads);
  out.imposed = imposed_motion(system, loads.moves);
  out.vector = Eigen::VectorXd::Zero(system.n_unknowns());
  for (const NodeLoad& load : out.loads.nodes) {
    const Eigen::Index first = first_unknown(load.node);
    out.vector.segment<3>(first) += load.force_g;
    out.vector.segment<3>(first + 3) += load.moment_g + load.offset_g.cross(load.force_g);
  }
  for (std::size_t i = 0; i < out.members.size(); ++i) {
    const BeamPart& beam = system.beams()[i];
    const Vector12 force_l = out.members[i].equivalent_l + out.members[i].strained_l;
    if (force_l.isZero(0.0)) continue;
    for (std::size_t end = 0; end < 2; ++end) {
      for_each_force(beam.ends[end], EndMotion{}, Vector6::Zero(), wrench_at(beam, force_l, end),
                     [&](Eigen::Index unknown, double force) { out.vector(unknown) += force; });
    }
  }
  return out;
}

}  // namespace fea
