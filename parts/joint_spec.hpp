#pragma once

#include <array>
#include <string>

#include "parts/field.hpp"
#include "parts/toward.hpp"

namespace parts {

enum class JointKind { welded, pin, ball, bushing };
enum class BushingGrade {
  rubber,  ///< radial 1 to 5 kN/mm
  hard,    ///< radial 5 to 20 kN/mm
  given,   ///< the six rates are entered
};

/// How the end of a part is joined: "welded", "ball joint", "pin along x", "rubber bushing",
/// "hard bushing along y", or the name of a joint of the case file (six rates).
struct JointSpec {
  JointKind kind = JointKind::welded;
  BushingGrade grade = BushingGrade::rubber;
  Axis axis = Axis::x;  ///< of the bolt or pin
  /// given grade only: along x, y, z [N/m], then about x, y, z [N m/rad]
  std::array<double, 6> rates = {base::kUnset, base::kUnset, base::kUnset,
                                 base::kUnset, base::kUnset, base::kUnset};
  bool own_axes = false;  ///< given grade only: the rates are in the axes of the part it joins
  bool operator==(const JointSpec&) const = default;
};

/// A joint of the case file known by its six rates, in the axes of the case or of the part.
struct GivenJoint {
  std::array<double, 6> rates = {base::kUnset, base::kUnset, base::kUnset,
                                 base::kUnset, base::kUnset, base::kUnset};
  bool own_axes = false;  ///< x along the part it joins; otherwise the axes of the case
  bool operator==(const GivenJoint&) const = default;
};

template <class Visitor>
void fields(Visitor& v, GivenJoint& joint) {
  using enum Dimension;
  const std::array<std::string_view, 6> keys = {"along_x", "along_y", "along_z",
                                                "about_x", "about_y", "about_z"};
  for (std::size_t i = 0; i < 6; ++i) {
    v.quantity({.key = keys[i],
                .meaning = i < 3 ? "rate along this axis" : "rate about this axis; 0 turns freely"},
               joint.rates[i], not_negative(i < 3 ? stiffness : rotational_stiffness));
  }
  v.flag({.key = "own_axes",
          .presence = Presence::optional,
          .meaning = "x is along the part it joins, not forward"},
         joint.own_axes);
}

/// Where in its range a stiffness that is not known is taken.
enum class Bound { low, given, high };

/// The six rates of a bushing at one place of its range, bolt along the joint's x axis: along x, y,
/// z [N/m], then about x, y, z [N m/rad]. `given` is the geometric mean of the two ends.
/// @param grade  rubber or hard
/// Source: radial rates 1 to 5 and 5 to 20 kN/mm are common practice, no source; the other rates
/// are a proposal near the proportions of a bonded rubber bushing of radii 12 and 25 mm and length
/// 60 mm (Adkins and Gent 1954, from memory).
[[nodiscard]] std::array<double, 6> bushing_rates(BushingGrade grade, Bound bound);

}  // namespace parts
