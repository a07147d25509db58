#pragma once

#include <array>
#include <string>

#include "parts/field.hpp"

/// Loads that a case file gives, each in a load case of its choice. Components are in the axes of
/// the case.
namespace parts {

/// The load case something given belongs to.
struct GivenCase {
  std::string load_case = "forces given";
  bool routine = true;  ///< otherwise abuse
  bool operator==(const GivenCase&) const = default;
};

/// A force and moment at a point, or anywhere along a member.
struct PlainForce {
  std::string at;                            ///< a point
  std::string on;                            ///< a member, instead of a point
  double from_start = base::kUnset;          ///< along the member's center line  [m]
  std::array<double, 3> force = {0, 0, 0};   ///< [N]
  std::array<double, 3> moment = {0, 0, 0};  ///< [N m]
  GivenCase given;
  bool operator==(const PlainForce&) const = default;
};

/// A force per length of a member, the same all along or changing evenly from one end to the other.
struct LineLoad {
  std::string on;                           ///< a member
  double from = 0.0;                        ///< along the member's center line  [m]
  double to = base::kUnset;                 ///< unset = the member's end  [m]
  std::array<double, 3> force = {0, 0, 0};  ///< where it starts  [N/m]
  /// where it ends; unset = as where it starts  [N/m]
  std::array<double, 3> end_force = {base::kUnset, base::kUnset, base::kUnset};
  GivenCase given;
  bool operator==(const LineLoad&) const = default;
};

/// A member that is warmer than the rest, or was made too long.
struct GivenStrain {
  std::string on;              ///< a member
  double warmer = 0.0;         ///< [K]
  double warmer_on_top = 0.0;  ///< its +z side over its -z side  [K]
  double expansion = 12.0e-6;  ///< [1/K]
  double too_long = 0.0;       ///< [m]
  GivenCase given;
  bool operator==(const GivenStrain&) const = default;
};

/// How far a support is moved, in the directions it holds.
struct Settlement {
  std::string at;                           ///< a point with a support
  std::array<double, 3> along = {0, 0, 0};  ///< [m]
  std::array<double, 3> about = {0, 0, 0};  ///< [rad]
  GivenCase given;
  bool operator==(const Settlement&) const = default;
};

/// The weight of every bar, tube and plate.
struct SelfWeight {
  std::array<double, 3> times = {0, 0, -1};  ///< pull in each direction, in times their weight  [-]
  GivenCase given;
  bool operator==(const SelfWeight&) const = default;
};

namespace detail {
inline constexpr std::array<std::string_view, 3> kForceKeys = {"force_x", "force_y", "force_z"};
inline constexpr std::array<std::string_view, 3> kMomentKeys = {"moment_x", "moment_y", "moment_z"};
inline constexpr std::array<std::string_view, 3> kEndKeys = {"end_force_x", "end_force_y",
                                                             "end_force_z"};
inline constexpr std::array<std::string_view, 3> kAlongKeys = {"along_x", "along_y", "along_z"};
inline constexpr std::array<std::string_view, 3> kAboutKeys = {"about_x", "about_y", "about_z"};
}  // namespace detail

template <class Visitor>
void fields(Visitor& v, GivenCase& given) {
  using enum Presence;
  v.text({"load_case", assumed, "the load case it belongs to", "one load case"}, given.load_case);
  v.flag({"routine", assumed, "happens again and again (otherwise rare abuse)", "routine loads"},
         given.routine);
}

template <class Visitor>
void fields(Visitor& v, PlainForce& f) {
  using enum Presence;
  v.point({"at", optional, "point it acts at"}, f.at);
  v.text({"on", optional, "member it acts on, instead of a point"}, f.on);
  v.quantity({"from_start", optional, "how far along that member it acts"}, f.from_start,
             not_negative(Dimension::length));
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kForceKeys[i], optional, "force", "none"}, f.force[i],
               any(Dimension::force));
  }
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kMomentKeys[i], optional, "moment", "none"}, f.moment[i],
               any(Dimension::moment));
  }
  fields(v, f.given);
}

template <class Visitor>
void fields(Visitor& v, LineLoad& l) {
  using enum Presence;
  v.text({"on", required, "member it acts on"}, l.on);
  v.quantity({"from", optional, "how far along the member it starts", "its start"}, l.from,
             not_negative(Dimension::length));
  v.quantity({"to", optional, "how far along the member it ends", "its end"}, l.to,
             positive(Dimension::length));
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kForceKeys[i], optional, "force per length", "none"}, l.force[i],
               any(Dimension::force_per_length));
  }
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kEndKeys[i], optional, "the same where it ends", "as where it starts"},
               l.end_force[i], any(Dimension::force_per_length));
  }
  fields(v, l.given);
}

template <class Visitor>
void fields(Visitor& v, GivenStrain& s) {
  using enum Presence;
  v.text({"on", required, "member that is warmer or too long"}, s.on);
  v.quantity({"warmer", optional, "than when it was built in", "none"}, s.warmer,
             any(Dimension::temperature));
  v.quantity(
      {"warmer_on_top", optional, "the side its depth points to, over the other side", "none"},
      s.warmer_on_top, any(Dimension::temperature));
  v.quantity({"expansion", assumed, "growth per length and temperature",
              "steel, EN 1993-1-1 3.2.6, from memory"},
             s.expansion, positive(Dimension::expansion));
  v.quantity({"too_long", optional, "longer than the place it was built into", "none"}, s.too_long,
             any(Dimension::length));
  fields(v, s.given);
}

template <class Visitor>
void fields(Visitor& v, Settlement& s) {
  using enum Presence;
  v.point({"at", required, "point of the support"}, s.at);
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kAlongKeys[i], optional, "how far it moves", "none"}, s.along[i],
               any(Dimension::length));
  }
  for (std::size_t i = 0; i < 3; ++i) {
    v.quantity({detail::kAboutKeys[i], optional, "how far it turns", "none"}, s.about[i],
               any(Dimension::angle));
  }
  fields(v, s.given);
}

template <class Visitor>
void fields(Visitor& v, SelfWeight& w) {
  using enum Presence;
  for (std::size_t i = 0; i < 3; ++i) {
    const bool up = i == 2;
    v.quantity({detail::kAlongKeys[i], up ? assumed : optional, "pull, in times the weight",
                up ? "hangs down by its own weight" : "none"},
               w.times[i], any(Dimension::ratio));
  }
  fields(v, w.given);
}

}  // namespace parts
