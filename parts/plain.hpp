#pragma once

#include <array>
#include <string>
#include <vector>

#include "parts/field.hpp"
#include "parts/joint_spec.hpp"
#include "parts/stick.hpp"
#include "parts/toward.hpp"

/// Parts of a frame that is no suspension.
namespace parts {

/// Which freedoms a member's end lets go, in the member's own axes (x along it): "none", "ry rz".
struct Freed {
  std::array<bool, 6> freedoms = {false, false, false, false, false, false};
  bool operator==(const Freed&) const = default;
};

/// Any section between any two points.
struct Member {
  std::string from;
  std::string to;
  Stick stick;
  JointSpec from_joint;
  JointSpec to_joint;
  Freed from_free;  ///< let go at its start, in its own axes, instead of a joint
  Freed to_free;
  std::vector<std::string> through;   ///< points its center line bends at, from start to end
  double bend_radius = base::kUnset;  ///< of the center line at those points; unset = sharp  [m]
  Stick section_at_end;               ///< a tapered member's other end; unset = no taper
  bool welded = true;  ///< weld heat reaches it: weld-zone strength where that is lower
  Toward z_toward;     ///< its section's depth lies that way where it starts
  bool operator==(const Member&) const = default;
};

/// Which freedoms of a point are held: "all", "x y z", "x z rx".
struct Held {
  std::array<bool, 6> freedoms = {true, true, true, true, true, true};
  bool operator==(const Held&) const = default;
};

struct PlainSupport {
  std::string at;
  Held held;
  bool operator==(const PlainSupport&) const = default;
};

/// Off-diagonal terms of a spring's stiffness: "x ry -40 kN, y rx 40 kN".
struct Coupling {
  struct Term {
    int row = 0;  ///< freedoms x y z rx ry rz, row < column
    int column = 0;
    double value = 0.0;  ///< [N/m], [N] or [N m/rad]
    bool operator==(const Term&) const = default;
  };
  std::vector<Term> terms;
  bool operator==(const Coupling&) const = default;
};

/// Between two points, or from a point to the ground.
struct PlainSpring {
  std::string from;
  std::string to;                                    ///< empty = ground
  std::array<double, 6> rates = {0, 0, 0, 0, 0, 0};  ///< [N/m, N m/rad], its own axes
  Coupling coupled;                                  ///< what links one freedom to another
  Toward x_toward;                                   ///< its x axis; usual = the case's
  Toward z_toward;                                   ///< its z axis lies in this direction and x
  bool operator==(const PlainSpring&) const = default;
};

/// Points that move as one rigid piece; the first is its master.
struct RigidSet {
  std::vector<std::string> points;
  bool operator==(const RigidSet&) const = default;
};

namespace detail {
inline constexpr std::array<std::string_view, 6> kRateKeys = {"along_x", "along_y", "along_z",
                                                              "about_x", "about_y", "about_z"};
}  // namespace detail

template <class Visitor>
void fields(Visitor& v, Member& m) {
  using enum Presence;
  v.point({"from", required, "point it starts at"}, m.from);
  v.point({"to", required, "point it ends at"}, m.to);
  v.phrase({"section", required, "bar or tube with its steel, or a section's name"}, m.stick);
  v.phrase({"from_joint", assumed, "joint at its start", "welded unless said"}, m.from_joint);
  v.phrase({"to_joint", assumed, "joint at its end", "welded unless said"}, m.to_joint);
  v.phrase({"from_free", optional, "what its start lets go, in its own axes", "nothing"},
           m.from_free);
  v.phrase({"to_free", optional, "what its end lets go, in its own axes", "nothing"}, m.to_free);
  v.points({"through", optional, "points where its center line bends, start to end", "straight"},
           m.through);
  v.quantity(
      {"bend_radius", optional, "radius of its center line at those points", "sharp corners"},
      m.bend_radius, positive(Dimension::length));
  v.phrase({"section_at_end", optional, "section at its end, when it tapers", "no taper"},
           m.section_at_end);
  v.flag({"welded", assumed, "weld heat reaches it", "fabricated parts are welded"}, m.welded);
  v.phrase({"z_toward", assumed, "where the section's depth points", "up; forward when upright"},
           m.z_toward);
}

template <class Visitor>
void fields(Visitor& v, PlainSupport& s) {
  using enum Presence;
  v.point({"at", required, "point that is held"}, s.at);
  v.phrase({"held", assumed, "all, or some of x y z rx ry rz", "held in every direction"}, s.held);
}

template <class Visitor>
void fields(Visitor& v, PlainSpring& s) {
  using enum Presence;
  using enum Dimension;
  v.point({"from", required, "point it starts at"}, s.from);
  v.point({"to", optional, "point it ends at", "the ground"}, s.to);
  for (std::size_t i = 0; i < 6; ++i) {
    v.quantity({detail::kRateKeys[i], optional,
                i < 3 ? "its rate along this axis" : "its rate about this axis", "none"},
               s.rates[i], not_negative(i < 3 ? stiffness : rotational_stiffness));
  }
  v.phrase({"coupled", optional, "what links one direction to another", "nothing"}, s.coupled);
  v.phrase({"x_toward", optional, "its x axis", "the case's"}, s.x_toward);
  v.phrase({"z_toward", optional, "its z axis, as near as that can be", "the case's"}, s.z_toward);
}

template <class Visitor>
void fields(Visitor& v, RigidSet& r) {
  v.points({"points", Presence::required, "points that move as one piece"}, r.points);
}

}  // namespace parts
