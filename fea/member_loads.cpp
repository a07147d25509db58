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
    member.points.push_back({at, force_l, moment_l});
    member.equivalent_l += equivalent_of_point(beam.flex, beam.length, at, force_l, moment_l);
  }
  for (const BeamLineLoad& load : loads.lines) {
    const BeamPart& beam = system.beams()[index(load.beam)];
    const double from = std::clamp(load.from, 0.0, beam.length);
    const double to = std::isnan(load.to) ? beam.length : std::clamp(load.to, 0.0, beam.length);
    const Vector3 at_from_l = beam.axes_lg * load.at_from_g;
    const Vector3 at_to_l = beam.axes_lg * load.at_to_g;
    MemberLoads& member = members[index(load.beam)];
    member.lines.push_back({from, to, at_from_l, at_to_l});
    member.equivalent_l += equivalent_of_line(beam.flex, beam.length, from, to, at_from_l, at_to_l);
  }
  return members;
}

}  // namespace

MemberLoads MemberLoads::seen_from(const Vector3& turn_l) const {
  const auto seen = [&turn_l](Vector3& vector) { vector -= turn_l.cross(vector).eval(); };
  MemberLoads out = *this;
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

Vector6 MemberLoads::wrench_up_to(double x) const {
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
  LoadCase out{loads, member_loads(system, loads), Eigen::VectorXd::Zero(system.n_unknowns())};
  for (const NodeLoad& load : loads.nodes) {
    const Eigen::Index first = first_unknown(load.node);
    out.vector.segment<3>(first) += load.force_g;
    out.vector.segment<3>(first + 3) += load.moment_g + load.offset_g.cross(load.force_g);
  }
  for (std::size_t i = 0; i < out.members.size(); ++i) {
    const BeamPart& beam = system.beams()[i];
    out.vector(beam.map.unknowns) += beam.ends_l.transpose() * out.members[i].equivalent_l;
  }
  return out;
}

}  // namespace fea
