#pragma once

#include <string>

#include "parts/field.hpp"
#include "parts/toward.hpp"

namespace parts {

/// Something welded to the side of a bar or tube: a tab, a gusset, a clip. Its heat weakens that
/// side and no more.
struct SideWeld {
  std::string on;                    ///< "lateral_link", "brace" or a member
  double from_start = base::kUnset;  ///< to its middle, along the center line  [m]
  double length = base::kUnset;      ///< along the bar  [m]
  double width = base::kUnset;       ///< around the bar  [m]
  Toward toward;                     ///< from the bar to it
  bool operator==(const SideWeld&) const = default;
};

template <class Visitor>
void fields(Visitor& v, SideWeld& w) {
  using enum Presence;
  v.text({"on", required, "what it is welded to: lateral_link, brace or a member"}, w.on);
  v.quantity({"from_start", required,
              "its middle, along the center line; a link starts at its frame bolt, a brace at the "
              "bracket"},
             w.from_start, not_negative(Dimension::length));
  v.quantity({"length", required, "along the bar or tube"}, w.length, positive(Dimension::length));
  v.quantity({"width", required, "around it"}, w.width, positive(Dimension::length));
  v.phrase({"toward", assumed, "the side it is on", "on top"}, w.toward);
}

}  // namespace parts
