#pragma once

#include <array>
#include <string>

#include "parts/field.hpp"
#include "parts/joint_spec.hpp"
#include "parts/stick.hpp"

/// Parts of a frame that is no suspension.
namespace parts {

/// Any section between any two points.
struct Member {
  std::string from;
  std::string to;
  Stick stick;
  JointSpec from_joint;
  JointSpec to_joint;
  bool welded = true;       ///< weld heat reaches it: weld-zone strength where that is lower
  Axis z_toward = Axis::z;  ///< its section's depth lies along this axis
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

/// Between two points, or from a point to the ground.
struct PlainSpring {
  std::string from;
  std::string to;                                    ///< empty = ground
  std::array<double, 6> rates = {0, 0, 0, 0, 0, 0};  ///< [N/m, N m/rad], axes of the case
  bool operator==(const PlainSpring&) const = default;
};

struct PlainForce {
  std::string at;
  std::array<double, 3> force = {0, 0, 0};   ///< [N]
  std::array<double, 3> moment = {0, 0, 0};  ///< [N m]
  std::string load_case = "forces given";
  bool routine = true;  ///< otherwise abuse
  bool operator==(const PlainForce&) const = default;
};

namespace detail {
inline constexpr std::array<Word<Axis>, 3> kAxes = {
    Word<Axis>{"x", Axis::x}, Word<Axis>{"y", Axis::y}, Word<Axis>{"z", Axis::z}};
inline constexpr std::array<std::string_view, 6> kRateKeys = {"along_x", "along_y", "along_z",
                                                              "about_x", "about_y", "about_z"};
inline constexpr std::array<std::string_view, 3> kForceKeys = {"force_x", "force_y", "force_z"};
inline constexpr std::array<std::string_view, 3> kMomentKeys = {"moment_x", "moment_y", "moment_z"};
}  // namespace detail

template <class Visitor>
void fields(Visitor& v, Member& m) {
  using enum Presence;
  v.point({"from", required, "point it starts at"}, m.from);
  v.point({"to", required, "point it ends at"}, m.to);
  v.phrase({"section", required, "bar or tube with its steel, or a section's name"}, m.stick);
  v.phrase({"from_joint", assumed, "joint at its start", "welded unless said"}, m.from_joint);
  v.phrase({"to_joint", assumed, "joint at its end", "welded unless said"}, m.to_joint);
  v.flag({"welded", assumed, "weld heat reaches it", "fabricated parts are welded"}, m.welded);
  v.choice({"z_toward", assumed, "axis the section's depth lies along", "up"}, m.z_toward,
           detail::kAxes);
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
  v.point({"to", optional, "point it ends at; the ground when not given"}, s.to);
  for (std::size_t i = 0; i < 6; ++i) {
    v.quantity({detail::kRateKeys[i], optional, "its rate; none unless given"}, s.rates[i],
               not_negative(i < 3 ? stiffness : rotational_stiffness));
  }
}

template <class Visitor>
void fields(Visitor& v, PlainForce& f) {
  using enum Presence;
  v.point({"at", required, "point it acts at"}, f.at);
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kForceKeys[i], optional, "force; none unless given"}, f.force[i],
               any(Dimension::force));
  }
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kMomentKeys[i], optional, "moment; none unless given"}, f.moment[i],
               any(Dimension::moment));
  }
  v.text({"load_case", assumed, "the load case it belongs to", "one load case"}, f.load_case);
  v.flag({"routine", assumed, "happens again and again (otherwise rare abuse)", "routine loads"},
         f.routine);
}

}  // namespace parts
