#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <Eigen/Geometry>

#include "base/input_error.hpp"
#include "parts/builder.hpp"
#include "parts/spring_axes.hpp"

namespace parts {
namespace {

/// One end of a member: joined as named, or letting go what is said in the beam's own axes.
RunEnd member_end(const Builder& builder, fea::NodeId node, const JointSpec& joint,
                  const Freed& freed, const fea::Vector3& along_g) {
  RunEnd end{node, fea::Vector3::Zero(), builder.connection(joint, "member bushings", along_g)};
  end.own_axes = joint.own_axes && end.joint;
  if (freed == Freed{}) return end;
  end.joint = fea::Joint{};
  end.own_axes = true;
  for (std::size_t i = 0; i < 6; ++i) {
    if (freed.freedoms[i]) end.joint->stiffness[i] = 0.0;
  }
  return end;
}

void add_member(Builder& builder, const Named<Member>& named) {
  const Member& member = named.value;
  const std::string key = "members." + named.name;
  Assembly& out = builder.out();
  const fea::NodeId from = builder.point_node(member.from, key + ".from");
  const fea::NodeId to = builder.point_node(member.to, key + ".to");
  const fea::Vector3 from_g = out.model[from].at_g;
  const fea::Vector3 to_g = out.model[to].at_g;
  RunSpec spec{.part = named.name,
               .name = {},
               .key = key,
               .stick = member.stick,
               .welded = member.welded,
               .z_toward_g = builder.direction(member.z_toward, from_g, key + ".z_toward"),
               .bend_radius = member.bend_radius};
  const bool tapered = !member.section_at_end.material.id.empty();
  if (tapered) spec.shape_at_end = member.section_at_end.shape;
  std::vector<fea::Vector3> corners;
  std::vector<RunStop> through;
  for (const std::string& name : member.through) {
    corners.push_back(builder.point(name, key + ".through"));
    if (std::isnan(member.bend_radius)) {
      through.push_back({builder.point_node(name, key + ".through"), false});
    }
  }
  if (!std::isnan(member.bend_radius)) through = builder.bends(from_g, corners, to_g, spec);
  const fea::Vector3 first = (corners.empty() ? to_g : corners.front()) - from_g;
  const fea::Vector3 last = to_g - (corners.empty() ? from_g : corners.back());
  if (!(first.norm() > 1.0e-6) || !(last.norm() > 1.0e-6)) {
    throw base::InputError(key, "it has no length: it starts and ends at the same place");
  }
  if (spec.z_toward_g &&
      !(first.cross(*spec.z_toward_g).norm() > 1.0e-3 * first.norm() * spec.z_toward_g->norm())) {
    throw base::InputError(key + ".z_toward",
                           "it lies along the member; give a direction across it");
  }
  const std::size_t index =
      builder.add_run(spec, member_end(builder, from, member.from_joint, member.from_free, first),
                      through, member_end(builder, to, member.to_joint, member.to_free, last));
  out.pieces[index].column = through.empty();
  out.pieces[index].spin_held =
      member.from_joint.kind == JointKind::ball && member.to_joint.kind == JointKind::ball;
  out.members.emplace_back(named.name, index);
}

void add_spring(Builder& builder, const Named<PlainSpring>& named) {
  const PlainSpring& plain = named.value;
  const std::string key = "springs." + named.name;
  const fea::NodeId from = builder.point_node(plain.from, key + ".from");
  fea::Spring spring{.a = from, .b = {}, .name = named.name};
  if (!plain.to.empty()) {
    const fea::NodeId to = builder.point_node(plain.to, key + ".to");
    const fea::Vector3 reach = builder.out().model[to].at_g - builder.out().model[from].at_g;
    spring.b = to;
    spring.offset_a_g = 0.5 * reach;
    spring.offset_b_g = -0.5 * reach;
  }
  const fea::Vector3 from_g = builder.out().model[from].at_g;
  const std::optional<fea::Matrix3> axes =
      axes_of(builder.direction(plain.x_toward, from_g, key + ".x_toward"),
              builder.direction(plain.z_toward, from_g, key + ".z_toward"));
  if (!axes) {
    throw base::InputError(key + ".z_toward",
                           "it is the same direction as `x_toward`; give one "
                           "across it");
  }
  spring.axes_g = *axes;
  spring.stiffness = spring_stiffness(plain);
  builder.out().model.add(spring);
}

void add_rigid(Builder& builder, const Named<RigidSet>& named) {
  const std::string key = "rigid." + named.name + ".points";
  fea::RigidBody body{.master = {}, .carried = {}, .name = named.name};
  for (const std::string& point : named.value.points) {
    const fea::NodeId node = builder.point_node(point, key);
    if (body.master.index < 0) {
      body.master = node;
    } else {
      body.carried.push_back(node);
    }
  }
  builder.out().model.add(std::move(body));
}

}  // namespace

void add_plain_parts(Builder& builder) {
  const Design& design = builder.design();
  for (const Named<Member>& member : design.members) add_member(builder, member);
  for (const Named<PlainSupport>& support : design.supports) {
    const fea::NodeId node =
        builder.point_node(support.value.at, "supports." + support.name + ".at");
    builder.out().model.add(fea::Support{node, support.value.held.freedoms});
    builder.out().held.push_back({support.value.at, node});
  }
  for (const Named<PlainSpring>& spring : design.springs) add_spring(builder, spring);
  for (const Named<RigidSet>& rigid : design.rigid) add_rigid(builder, rigid);
  for (const Named<PlainForce>& force : design.forces) {
    if (!force.value.at.empty()) builder.point_node(force.value.at, "forces." + force.name + ".at");
  }
  for (const Named<CustomCase>& custom : design.custom_cases) {
    if (!custom.value.at.empty()) {
      builder.point_node(custom.value.at, "load_cases." + custom.name + ".at");
    }
  }
}

}  // namespace parts
