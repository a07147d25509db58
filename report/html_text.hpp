#pragma once

#include <map>
#include <string>
#include <string_view>

/// Text into HTML. What a case file says stays text: it is escaped on its way in.
namespace report {

/// For the text and the attributes of HTML, SVG and XML. Control characters, and bytes that are no
/// UTF-8, become U+FFFD.
[[nodiscard]] std::string escaped(std::string_view text);

/// For the inside of a quoted CSS string: all but letters, digits and spaces as code points, each
/// with the space that belongs to it.
[[nodiscard]] std::string css_string(std::string_view text);

/// `page` with each {{name}} replaced by its value, in one pass: a value is never looked into.
[[nodiscard]] std::string filled(std::string_view page,
                                 const std::map<std::string, std::string>& values);

}  // namespace report
