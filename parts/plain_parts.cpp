#include <cmath>
#include <optional>

#include <Eigen/Geometry>

#include "base/input_error.hpp"
#include "parts/builder.hpp"

namespace parts {
namespace {

fea::Vector3 unit(Axis axis) {
  return fea::Vector3::Unit(static_cast<int>(axis));
}

void add_member(Builder& builder, const Named<Member>& named) {
  const Member& member = named.value;
  const std::string key = "members." + named.name;
  Assembly& out = builder.out();
  const fea::NodeId from = builder.point_node(member.from, key + ".from");
  const fea::NodeId to = builder.point_node(member.to, key + ".to");
  const fea::Vector3 along = out.model[to].at_g - out.model[from].at_g;
  if (!(along.norm() > 1.0e-6)) {
    throw base::InputError(key, "it has no length: it starts and ends at the same place");
  }
  std::optional<fea::Vector3> z_toward = unit(member.z_toward);
  if (along.normalized().cross(*z_toward).norm() < 1.0e-3) z_toward.reset();
  const RunSpec spec{.part = named.name,
                     .name = {},
                     .key = key,
                     .stick = member.stick,
                     .welded = member.welded,
                     .z_toward_g = z_toward};
  const std::size_t index = builder.add_run(
      spec,
      {from, fea::Vector3::Zero(), builder.connection(member.from_joint, "member bushings", along)},
      {},
      {to, fea::Vector3::Zero(), builder.connection(member.to_joint, "member bushings", along)});
  out.pieces[index].column = true;
  out.pieces[index].spin_held =
      member.from_joint.kind == JointKind::ball && member.to_joint.kind == JointKind::ball;
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
  for (int i = 0; i < 6; ++i) spring.stiffness(i, i) = plain.rates[static_cast<std::size_t>(i)];
  builder.out().model.add(spring);
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
  for (const Named<PlainForce>& force : design.forces) {
    builder.point_node(force.value.at, "forces." + force.name + ".at");
  }
}

}  // namespace parts
