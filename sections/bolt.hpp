#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/units.hpp"

namespace sections {

/// A bolt's thread: UN of ASME B1.1 or metric of ISO 261.
struct BoltThread {
  std::string name = {};  ///< "5/8-11", "M16 x 2"; empty = no bolt
  bool inch = true;
  bool coarse = true;
  double diameter = base::kUnset;  ///< nominal, which is the shank's  [m]
  double pitch = base::kUnset;     ///< [m]
  std::string mark = {};           ///< "read" or "from memory"

  /// Tensile stress area: pi/4 (D - 0.9743 P)^2 of UN, pi/4 (d - 0.938194 P)^2 of metric.  [m^2]
  /// Source: ASME B1.1 and ISO 898-1, read on thread reference pages.
  [[nodiscard]] double tensile_area() const;
  /// Area of the shank.  [m^2]
  [[nodiscard]] double shank_area() const;
  /// At the thread's root: d - 1.226869 P.  [m]
  [[nodiscard]] double root_diameter() const;
  /// Of a standard hole for it: 1/16 in more under 1 in, 1/8 in from there on; 2 mm more up to M22,
  /// 3 mm from there on.  [m]
  /// Source: AISC 360-22 table J3.3, from memory.
  [[nodiscard]] double standard_hole() const;
  bool operator==(const BoltThread&) const = default;
};

/// A grade of bolt with its least strengths, for diameters over one and up to another.
struct BoltGrade {
  std::string name = {};      ///< "grade 8", "class 10.9"
  std::string standard = {};  ///< "SAE J429"
  bool inch = true;
  double diameter_over = 0.0;         ///< [m]
  double diameter_to = base::kUnset;  ///< [m]
  double proof = base::kUnset;        ///< [Pa]
  double yield = base::kUnset;        ///< [Pa]
  double tensile = base::kUnset;      ///< [Pa]
  std::string mark = {};
  bool operator==(const BoltGrade&) const = default;
};

/// The built-in lists, in the order of sections/data/bolt_threads.csv and bolt_grades.csv.
[[nodiscard]] const std::vector<BoltThread>& bolt_threads();
[[nodiscard]] const std::vector<BoltGrade>& bolt_grades();

/// @param name  "grade 8", "8", "class 10.9", "10.9"
/// @return null when there is none of that name for the thread's system and diameter
[[nodiscard]] const BoltGrade* find_bolt_grade(std::string_view name, const BoltThread& thread);

}  // namespace sections
