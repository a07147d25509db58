#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "parts/design.hpp"

namespace cases {

/// A steel by name: the case's own materials first, then the built-in list.
[[nodiscard]] std::optional<sections::Material> find_steel(std::string_view name,
                                                           const parts::Design& names);

/// @throws base::InputError without a key, with the nearest name
[[nodiscard]] sections::Material known_steel(std::string_view name, const parts::Design& names);

/// What a steel's name left to us, under the key "steel": which condition or grade is meant.
/// Nothing for a name that says all, or one of the case's own.
[[nodiscard]] std::vector<parts::Assumption> condition_assumed(std::string_view name,
                                                               const parts::Design& names);

/// The words of a phrase that say its form ("solid round bar") and those that name its steel,
/// whichever comes first.
struct FormAndSteel {
  std::string form;   ///< small letters
  std::string steel;  ///< empty when none is named
};
[[nodiscard]] FormAndSteel form_and_steel(std::string_view rest, const parts::Design& names);

}  // namespace cases
