#include "parts/builder.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/input_error.hpp"

namespace parts {
namespace {

/// Two directions of the case as joint axes: x along the bolt, y and z square to it.
fea::Matrix3 bolt_axes(Axis axis) {
  fea::Matrix3 axes = fea::Matrix3::Zero();
  const int first = static_cast<int>(axis);
  for (int i = 0; i < 3; ++i) axes((first + i) % 3, i) = 1.0;
  return axes;
}

/// x along the given direction, y and z square to it.
fea::Matrix3 axes_along(const fea::Vector3& along_g) {
  const fea::Vector3 x = along_g.normalized();
  const fea::Vector3 hint = std::abs(x.z()) < 0.9 ? fea::Vector3::UnitZ() : fea::Vector3::UnitX();
  fea::Matrix3 axes;
  axes.col(0) = x;
  axes.col(1) = hint.cross(x).normalized();
  axes.col(2) = x.cross(axes.col(1));
  return axes;
}

fea::BeamEnd beam_end(const RunEnd& end) {
  return {end.node, end.offset_g, end.joint};
}

}  // namespace

fea::NodeId Builder::add_node(const fea::Vector3& at_g, const std::string& name,
                              const std::string& key) {
  const fea::NodeId id = out_.model.add(fea::Node{at_g, name});
  out_.node_keys.push_back(key);
  return id;
}

fea::BeamId Builder::add_beam(const fea::Beam& beam, const std::string& part) {
  out_.beam_part.push_back(part);
  return out_.model.add(beam);
}

fea::Vector3 Builder::point(const std::string& name, const std::string& key) const {
  for (const Named<std::array<double, 3>>& p : design_.points) {
    if (p.name == name) return {p.value[0], p.value[1], p.value[2]};
  }
  throw base::InputError(key, fmt::format("there is no point `{}`", name));
}

fea::NodeId Builder::point_node(const std::string& name, const std::string& key) {
  for (const NamedNode& known : out_.points) {
    if (known.name == name) return known.node;
  }
  const fea::NodeId id = add_node(point(name, key), name, "points." + name);
  out_.points.push_back({name, id});
  return id;
}

Bound Builder::bound_of(const std::string& group) const {
  const auto found = set_.bushings.find(group);
  return found == set_.bushings.end() ? Bound::given : found->second;
}

std::optional<fea::Joint> Builder::connection(const JointSpec& joint, const std::string& group,
                                              const fea::Vector3& along_g) const {
  switch (joint.kind) {
    case JointKind::welded:
      return std::nullopt;
    case JointKind::pin:
      return fea::Joint{bolt_axes(joint.axis),
                        {fea::kRigid, fea::kRigid, fea::kRigid, 0.0, fea::kRigid, fea::kRigid}};
    case JointKind::ball:
      return fea::Joint{axes_along(along_g),
                        {fea::kRigid, fea::kRigid, fea::kRigid, kSpinStiffness, 0.0, 0.0}};
    case JointKind::bushing:
      break;
  }
  const bool own_rates = joint.grade == BushingGrade::given;
  return fea::Joint{own_rates ? fea::Matrix3(fea::Matrix3::Identity()) : bolt_axes(joint.axis),
                    rates_in(joint, bound_of(group))};
}

std::string strength_words(const sections::Material& steel) {
  return fmt::format("{}, {}{}", steel.description, steel.basis,
                     steel.mark == "from memory" ? ", from memory" : "");
}

std::size_t Builder::add_run(const RunSpec& spec, const RunEnd& from,
                             const std::vector<fea::NodeId>& through, const RunEnd& to) {
  const sections::Shape shape =
      sections::used_shape(spec.stick.shape, spec.stick.material, design_.sizes);
  const sections::AreaProps section = sections::area_props(shape, spec.stick.material.poisson);
  const sections::Material& steel = spec.stick.material;
  Piece piece{.part = spec.part,
              .name = spec.name,
              .beams = {},
              .material = steel,
              .strength = spec.welded ? std::min(steel.yield, steel.haz_yield) : steel.yield,
              .strength_basis = {},
              .duty = spec.duty};
  piece.strength_basis = spec.welded && steel.weakened_by_welding()
                             ? fmt::format("heat-affected zone of a weld: {}", steel.haz_basis)
                             : strength_words(steel);
  piece.mass = 0.0;

  // The beam that carries the normal force then stays straight: more of them follow the bow.
  constexpr int kStraightBeams = 12;
  const int n_beams = has_offset_shear_center(section) ? kStraightBeams : spec.pieces;
  std::vector<RunEnd> stops = {from};
  for (const fea::NodeId node : through) stops.push_back({node, fea::Vector3::Zero(), {}});
  stops.push_back(to);
  const auto place = [&](const RunEnd& end) -> fea::Vector3 {
    return out_.model[end.node].at_g + end.offset_g;
  };
  for (std::size_t leg = 0; leg + 1 < stops.size(); ++leg) {
    const fea::Vector3 start = place(stops[leg]);
    const fea::Vector3 end = place(stops[leg + 1]);
    const double length = (end - start).norm();
    if (!(length > 1.0e-6)) {
      throw base::InputError(spec.key, "it has no length: its two ends are at the same place");
    }
    piece.mass += length * section.area * steel.density;
    RunEnd last = stops[leg];
    for (int i = 1; i <= n_beams; ++i) {
      const bool closes = i == n_beams;
      const std::string name =
          spec.name.empty() ? spec.part : fmt::format("{}, {}", spec.part, spec.name);
      const RunEnd next =
          closes ? stops[leg + 1]
                 : RunEnd{add_node(start + (end - start) * (i / static_cast<double>(n_beams)), name,
                                   spec.key),
                          fea::Vector3::Zero(),
                          {}};
      fea::Beam beam{.a = beam_end(last),
                     .b = beam_end(next),
                     .section = section,
                     .elastic = {steel.elastic, steel.shear_modulus()},
                     .z_toward_g = spec.z_toward_g,
                     .name = name};
      piece.beams.push_back(add_section_beam(beam, shape, spec.part));
      last = next;
      last.joint.reset();
    }
  }
  piece.length = (place(stops.back()) - place(stops.front())).norm();
  out_.pieces.push_back(std::move(piece));
  return out_.pieces.size() - 1;
}

}  // namespace parts
