#include <algorithm>
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

/// The points a member's center line passes, from start to end; those of round bends are none.
std::vector<std::string> line_of(const Member& member) {
  std::vector<std::string> line = {member.from};
  if (std::isnan(member.bend_radius)) {
    line.insert(line.end(), member.through.begin(), member.through.end());
  }
  line.push_back(member.to);
  return line;
}

/// Where a member's center line leaves one of its points for the next one.
fea::Vector3 leaving(const Builder& builder, const Named<Member>& named, std::size_t from,
                     std::size_t to) {
  const Member& member = named.value;
  const std::vector<std::string> line = line_of(member);
  const auto place = [&](const std::string& point) {
    return builder.point(point, "members." + named.name);
  };
  // A round bend turns it away from the straight between its ends.
  if (line.size() == 2 && !member.through.empty()) {
    const std::string& next = from == 0 ? member.through.front() : member.through.back();
    return (place(next) - place(line[from])).normalized();
  }
  return (place(line[to]) - place(line[from])).normalized();
}

/// The one or two ways in which it leaves a point.
std::vector<fea::Vector3> ways_from(const Builder& builder, const Named<Member>& member,
                                    std::size_t at) {
  std::vector<fea::Vector3> out;
  if (at > 0) out.push_back(leaving(builder, member, at, at - 1));
  if (at + 1 < line_of(member.value).size()) out.push_back(leaving(builder, member, at, at + 1));
  return out;
}

/// How far a member's weld with others reaches from one of the points of its line, along it.
/// @return the farthest; 0 where it meets none of them; unset when the size of one is not known
double reach_at(const Builder& builder, const Named<Member>& member, std::size_t at) {
  const std::string point = line_of(member.value)[at];
  const double half = half_outside(member.value.stick.shape);
  double farthest = 0.0;
  for (const Named<Member>& other : builder.design().members) {
    if (&other == &member) continue;
    const std::vector<std::string> line = line_of(other.value);
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (line[i] != point) continue;
      for (const fea::Vector3& own_g : ways_from(builder, member, at)) {
        for (const fea::Vector3& other_g : ways_from(builder, other, i)) {
          const double angle = std::atan2(own_g.cross(other_g).norm(), own_g.dot(other_g));
          const double reach = weld_reach(half, half_outside(other.value.stick.shape), angle);
          if (!(reach <= farthest)) farthest = reach;
          if (std::isnan(farthest)) return farthest;
        }
      }
    }
  }
  return farthest;
}

/// Welds at the ends of a member: to what it meets there, or of an eye where a joint is. Nothing
/// when no end is welded on, since then it is not known where it is.
EndWelds end_welds(const Builder& builder, const Named<Member>& named) {
  const Member& member = named.value;
  const bool start = member.from_joint.kind == JointKind::welded && member.from_free == Freed{};
  const bool end = member.to_joint.kind == JointKind::welded && member.to_free == Freed{};
  if (!start && !end) return {};
  const auto eye = [&](const JointSpec& joint) {
    return eye_reach(base::kUnset, member.stick.shape, joint.kind);
  };
  return {start ? reach_at(builder, named, 0) : eye(member.from_joint),
          end ? reach_at(builder, named, line_of(member).size() - 1) : eye(member.to_joint)};
}

/// The weld of a sharp corner, with all that meets it there.  [m]
double corner_reach(const Builder& builder, const Named<Member>& member, std::size_t at) {
  const fea::Vector3 in_g = -leaving(builder, member, at, at - 1);
  const fea::Vector3 out_g = leaving(builder, member, at, at + 1);
  const double turn = std::atan2(in_g.cross(out_g).norm(), in_g.dot(out_g));
  return std::max(reach_at(builder, member, at),
                  miter_reach(half_outside(member.value.stick.shape), turn));
}

/// It passes the point straight, whole, and what meets it there is welded to its side.
bool goes_straight(const Builder& builder, const Named<Member>& member, std::size_t at) {
  constexpr double kStraight = -0.99996;  // within half a degree
  return leaving(builder, member, at, at - 1).dot(leaving(builder, member, at, at + 1)) < kStraight;
}

/// The welds of all that meets a straight member at one of its points.
void add_branches(const Builder& builder, const Named<Member>& member, std::size_t at,
                  double from_start, std::vector<SideWeldOnRun>& welds) {
  const std::string point = line_of(member.value)[at];
  const fea::Vector3 along_g = leaving(builder, member, at, at + 1);
  const double half = half_outside(member.value.stick.shape);
  for (const Named<Member>& other : builder.design().members) {
    if (&other == &member) continue;
    const std::vector<std::string> line = line_of(other.value);
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (line[i] != point) continue;
      const double other_half = half_outside(other.value.stick.shape);
      for (const fea::Vector3& other_g : ways_from(builder, other, i)) {
        const double across = along_g.cross(other_g).norm();
        const double acute = std::asin(std::min(across, 1.0));
        welds.push_back({.at = from_start,
                         .reach = weld_reach(half, other_half, acute),
                         .width = 2.0 * other_half,
                         .toward_g = other_g});
      }
    }
  }
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
               .pieces = 4,
               .bend_radius = member.bend_radius};
  const bool tapered = !member.section_at_end.material.id.empty();
  if (tapered) spec.shape_at_end = member.section_at_end.shape;
  spec.side_welds = side_welds_on(builder, named.name, from_g);
  std::vector<fea::Vector3> corners;
  std::vector<RunStop> through;
  double at = 0.0;  // along the center line
  for (const std::string& name : member.through) {
    const fea::Vector3 before_g = corners.empty() ? from_g : corners.back();
    corners.push_back(builder.point(name, key + ".through"));
    at += (corners.back() - before_g).norm();
    if (!std::isnan(member.bend_radius)) continue;
    const std::size_t stop = through.size() + 1;
    const fea::NodeId node = builder.point_node(name, key + ".through");
    if (goes_straight(builder, named, stop)) {
      add_branches(builder, named, stop, at, spec.side_welds);
      through.push_back({node});
    } else {
      through.push_back({node, false, corner_reach(builder, named, stop)});
    }
  }
  spec.welds = end_welds(builder, named);
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
  out.pieces[index].column = true;
  out.pieces[index].bent = !through.empty();
  out.pieces[index].spin_held =
      member.from_joint.kind == JointKind::ball && member.to_joint.kind == JointKind::ball;
  out.members.emplace_back(named.name, index);
}

/// Whether a member ends at a point, its end welded there.
bool ends_welded(const Member& member, const std::string& point) {
  if (member.from == point) {
    return member.from_joint.kind == JointKind::welded && member.from_free == Freed{};
  }
  return member.to == point && member.to_joint.kind == JointKind::welded &&
         member.to_free == Freed{};
}

/// Whether a support, a spring or a rigid body is at a point.
bool is_held(const Design& design, const std::string& point) {
  const auto any = [](const auto& all, const auto& is_there) {
    return std::any_of(all.begin(), all.end(), is_there);
  };
  return any(design.supports, [&](const auto& s) { return s.value.at == point; }) ||
         any(design.springs,
             [&](const auto& s) { return s.value.from == point || s.value.to == point; }) ||
         any(design.rigid, [&](const auto& r) {
           const std::vector<std::string>& points = r.value.points;
           return std::find(points.begin(), points.end(), point) != points.end();
         });
}

/// The straight member that goes on from another one's end where nothing else meets or holds them:
/// no joint between them, and nothing that keeps that point from going sideways. Null if there is
/// none.
const Named<Member>* goes_on(const Builder& builder, const Named<Member>& member,
                             const std::string& point) {
  const Design& design = builder.design();
  if (!ends_welded(member.value, point) || is_held(design, point)) return nullptr;
  const Named<Member>* next = nullptr;
  for (const Named<Member>& other : design.members) {
    const std::vector<std::string>& through = other.value.through;
    const bool passes = std::find(through.begin(), through.end(), point) != through.end();
    const bool ends = other.value.from == point || other.value.to == point;
    if (&other == &member || (!passes && !ends)) continue;
    if (next != nullptr || passes || !through.empty()) return nullptr;
    next = &other;
  }
  if (next == nullptr || !ends_welded(next->value, point)) return nullptr;
  constexpr double kStraight = -0.9998;  // within a degree
  const auto way = [&](const Named<Member>& of) {
    const bool first = of.value.from == point;
    return leaving(builder, of, first ? 0 : 1, first ? 1 : 0);
  };
  return way(member).dot(way(*next)) < kStraight ? next : nullptr;
}

/// How far a straight member goes on beyond one of its ends, in members that nothing holds.  [m]
double length_beyond(const Builder& builder, const Named<Member>& member, std::string point) {
  double length = 0.0;
  const Named<Member>* at = &member;
  for (std::size_t i = 0; i < builder.design().members.size(); ++i) {
    at = goes_on(builder, *at, point);
    if (at == nullptr || at == &member) break;
    const std::string& other = at->value.from == point ? at->value.to : at->value.from;
    const std::string key = "members." + at->name;
    length += (builder.point(other, key) - builder.point(point, key)).norm();
    point = other;
  }
  return length;
}

/// A bar that is written as several members buckles over all of its length.
void join_lengths(Builder& builder) {
  for (std::size_t i = 0; i < builder.design().members.size(); ++i) {
    const Named<Member>& member = builder.design().members[i];
    Piece& piece = builder.out().pieces[builder.out().members[i].second];
    if (piece.bent) continue;
    const double before = length_beyond(builder, member, member.value.from);
    const double after = length_beyond(builder, member, member.value.to);
    if (!(before + after > 0.0)) continue;
    piece.length += before + after;
    piece.column_from = before;
    piece.notes.emplace_back(
        "it goes on straight in another member where nothing holds them: length between what holds "
        "it is that of all of them");
  }
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
  join_lengths(builder);
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
