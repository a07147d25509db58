#pragma once

#include <array>
#include <limits>
#include <optional>
#include <string_view>

#include "base/units.hpp"

/// How a part declares its fields once, for the reader, the writer, `--set`, the assumed list and
/// the format reference alike. `fields(visitor, part)` calls one visitor function a field:
///
///   v.quantity(info, double&, Quantity)        a number with a unit
///   v.phrase(info, T&)                         a short phrase in shop words: Stick, Plates, ...
///   v.choice(info, Enum&, words)               one of a few words; words = span of Word<Enum>
///   v.flag(info, bool&)                        yes / no
///   v.text(info, std::string&)                 free text
///   v.point(info, std::string&)                the name of a point
///   v.vector(info, array<double, 3>&, Dimension)  [x, y, z]; the last unit serves those before it
///   v.name_of(info, std::string&, NameKind)    the name of a section, material or joint
namespace parts {

enum class Dimension {
  ratio,
  length,
  force,
  stress,
  mass_density,
  angle,
  stiffness,             ///< force per length  [N/m]
  rotational_stiffness,  ///< moment per angle  [N m/rad]
  moment,
  force_per_length,
  area,
  section_modulus,  ///< [m^3]
  second_moment,    ///< [m^4]
  temperature,      ///< a difference  [K]
  expansion,        ///< strain per temperature  [1/K]
  speed,
  acceleration,
};

/// Whether a field must be there, and what stands in for it.
enum class Presence {
  required,
  optional,  ///< stays unset when it is not given; `basis` says what that means
  assumed,   ///< the value in the struct stands, and is listed under "assumed" with `basis`
};

/// What the format says about one field.
struct FieldInfo {
  std::string_view key;
  Presence presence = Presence::required;
  std::string_view meaning = {};    ///< one line, for the format reference and messages
  std::string_view basis = {};      ///< where an assumed value comes from; of an optional field,
                                    ///< what is done without it
  std::string_view other_key = {};  ///< a second spelling that is accepted
};

/// What a number must be.
struct Quantity {
  Dimension dimension = Dimension::length;
  double above = -std::numeric_limits<double>::infinity();     ///< must be > this
  double at_least = -std::numeric_limits<double>::infinity();  ///< must be >= this
  double at_most = std::numeric_limits<double>::infinity();    ///< must be <= this
  bool may_be_unsure = false;  ///< `not sure` is allowed and leaves it unset: both bounds are used
};

inline constexpr Quantity positive(Dimension d) {
  return {.dimension = d, .above = 0.0};
}
inline constexpr Quantity not_negative(Dimension d) {
  return {.dimension = d, .at_least = 0.0};
}
inline constexpr Quantity any(Dimension d) {
  return {.dimension = d};
}

/// A word of the format and what it stands for.
template <class Enum>
struct Word {
  std::string_view word;
  Enum value;
};

enum class NameKind { section, material, joint };

}  // namespace parts
