#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/design.hpp"
#include "parts/field.hpp"

namespace cases {

/// Changes one value of a design: "lateral_link.tube", "members.left post.section",
/// "points.frame bolt", "factors.weld_routine", "load_cases", "load_cases.ditch.left_wheel",
/// "duty.1.per_1000_km", "title"; a field alone ("drop") where one part of the design has it. The
/// name of a part, or of a member, support, spring or force, with an empty value leaves it out.
/// @throws base::InputError with the path as its key: unknown path with the nearest one, a value
///         that does not read, or a part that the case does not have
void set(parts::Design& design, const parts::Patch& patch);

/// A number of a design, and the customary unit to write it in: `number / factor` of it.
struct NumberAt {
  double si = base::kUnset;
  std::string unit;     ///< "in", "lb", "kg" of a weight; empty for a ratio
  double factor = 1.0;  ///< of the unit; of a weight in kg with gravity
  parts::Dimension dimension = parts::Dimension::length;

  /// Text that reads back as `value` where this number stands.
  /// @param value  in SI
  [[nodiscard]] std::string text_of(double value) const;
};

/// A number and the customary unit to write it in.
[[nodiscard]] NumberAt shown_number(double si, parts::Dimension dimension, bool inches);

/// @param path  of a number with or without a unit: "vehicle.axle_weight", "bracket.drop"
/// @throws base::InputError with the path as its key: unknown path, no number, or one that the case
///         does not give
[[nodiscard]] NumberAt number_at(const parts::Design& design, std::string_view path);

/// The design with all changes of a variant; a part that the base case lacks is added when the
/// variant gives all it needs.
/// @throws base::InputError with the path of the change that cannot be made, or of the part that
///         no longer makes sense
[[nodiscard]] parts::Design apply(const parts::Design& design, const parts::Variant& variant);

/// Whether a value stands for leaving a part out: "none", "left out", "no", or nothing.
[[nodiscard]] bool leaves_out(std::string_view value);

/// Whether a path names something that can be left out: "brace", "members.left post".
[[nodiscard]] bool names_a_part(std::string_view path);

/// The ready-made comparisons that a design allows: without its brace, bar and tube of equal
/// outside and of equal mass, straight or bent, other drops with and without the brace.
[[nodiscard]] std::vector<parts::Variant> usual_variants(const parts::Design& design);

/// The variants that short words ask for: "as drawn", "no brace", "braced and unbraced", "bar and
/// tube", "straight and bent", "every drop", "straight", "2 in bend", a bar or
/// tube for the lateral link ("1-1/2 in solid bar"), "lateral_link.tube = 1-1/2 x 0.188 in DOM",
/// and several in one line ("1-1/2 x 0.120 or 0.188 or 0.250 in DOM").
/// @return one variant an alternative, each tried on the design
/// @throws base::InputError when the words are not known, or cannot be applied to the design
[[nodiscard]] std::vector<parts::Variant> variants_from_words(const parts::Design& design,
                                                              std::string_view words);

}  // namespace cases
