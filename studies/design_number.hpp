#pragma once

#include <string>
#include <vector>

#include "cases/patch.hpp"

namespace studies {

/// A number of a design by its path: what cases::number_at knows, and beside that
/// - of what is bought as bar or tube "PART.wall", "PART.outside", "PART.yield" (beside a weld in
///   proportion), PART as `pick` names it: "lateral_link", "arm.lower", a member's name;
/// - "bracket.weld_leg", "lateral_link.weld_leg", "lateral_link.off_straight".
/// @throws base::InputError as cases::number_at
[[nodiscard]] cases::NumberAt number_of(const parts::Design& design, const std::string& path);

/// The design with that number changed.
/// @param value  [SI]
/// @throws base::InputError when the design makes no sense with it
[[nodiscard]] parts::Design with_number(const parts::Design& design, const std::string& path,
                                        double value);

/// Those paths of a design that cases::number_at does not know, in the order of a case file.
[[nodiscard]] std::vector<std::string> numbers_inside_parts(const parts::Design& design);

}  // namespace studies
