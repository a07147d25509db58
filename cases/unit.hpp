#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/field.hpp"

namespace cases {

/// Powers of the base quantities. Angle is one of its own, so that a stiffness about an axis is no
/// moment; a moment and a work share one on purpose.
struct Powers {
  int length = 0;
  int mass = 0;
  int time = 0;
  int angle = 0;
  int temperature = 0;
  bool operator==(const Powers&) const = default;
};

/// A unit, simple or compound.
struct Unit {
  double factor = 1.0;     ///< multiply by it to get SI
  double as_weight = 1.0;  ///< the same, with every mass taken as the force of its weight
  Powers powers;
  std::string mass;  ///< its unit of mass as written ("lb", "kg"), if it has one
};

/// Reads `in`, `lb/in`, `/K`, `ft-lbf`, `kip in`, `kN m/rad`, `in^4`, `mm4`, `kg/m^3`, ...
/// @throws base::InputError without a key: unknown unit, with the nearest one; more than one `/`
[[nodiscard]] Unit read_unit(std::string_view text);

/// Every simple unit: "in", "mm", "lb", ...
[[nodiscard]] std::vector<std::string> unit_names();

[[nodiscard]] Powers powers_of(parts::Dimension dimension);

/// The powers are those of `dimension` but for a mass in place of a force: `lb/in` for a stiffness.
[[nodiscard]] bool is_weight_for(const Powers& powers, parts::Dimension dimension);

/// "a length", "a stiffness (force per length)".
[[nodiscard]] std::string_view dimension_name(parts::Dimension dimension);

/// What a unit measures, for messages: "a mass or force", "a moment".
[[nodiscard]] std::string_view powers_name(const Powers& powers);

/// Units that would do: "in or mm".
[[nodiscard]] std::string_view example_units(parts::Dimension dimension);

}  // namespace cases
