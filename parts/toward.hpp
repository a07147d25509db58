#pragma once

#include <array>
#include <string>

namespace parts {

enum class Axis { x, y, z };

/// A direction: "up" (what is usual), "x", "y", "point mast" or "0, 0.6, 0.8".
struct Toward {
  enum class Kind {
    usual,   ///< for a member: up, or forward (x) for an upright one; for a spring: as the case
    axis,    ///< along an axis of the case
    point,   ///< from where it is used to a point of the case file
    vector,  ///< components in the axes of the case
  };
  Kind kind = Kind::usual;
  Axis axis = Axis::z;
  std::string point = {};
  std::array<double, 3> vector = {0.0, 0.0, 0.0};
  bool operator==(const Toward&) const = default;
};

}  // namespace parts
