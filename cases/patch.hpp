#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/design.hpp"

namespace cases {

/// Changes one value of a design: "lateral_link.tube", "members.left post.section",
/// "factors.weld_routine". A part's own name with an empty value leaves the part out.
/// @throws base::InputError with the path as its key
void set(parts::Design& design, const parts::Patch& patch);

/// The design with all changes of a variant.
/// @throws base::InputError with the path of the change that cannot be made
[[nodiscard]] parts::Design apply(const parts::Design& design, const parts::Variant& variant);

/// Whether a value stands for leaving a part out: "none", "left out", "no".
[[nodiscard]] bool leaves_out(std::string_view value);

/// The variants that short words ask for: "no brace", "straight", "2 in bend", a bar or tube for
/// the lateral link ("1-1/2 in solid bar"), "lateral_link.tube = 1-1/2 x 0.188 in DOM", and several
/// in one line ("1-1/2 x 0.120 or 0.188 or 0.250 in DOM").
/// @throws base::InputError when the words are not known, or cannot be applied to the design
[[nodiscard]] std::vector<parts::Variant> variants_from_words(const parts::Design& design,
                                                              std::string_view words);

}  // namespace cases
