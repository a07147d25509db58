#pragma once

#include <array>
#include <string>
#include <vector>

#include "parts/bolt_spec.hpp"
#include "parts/field.hpp"
#include "parts/stick.hpp"
#include "parts/toward.hpp"

namespace parts {

enum class EndOfBar { start, far_end };

/// Bolts that together hold the end of a bar, wherever they are beside it.
struct BoltedGroup {
  std::string holds;  ///< "lateral_link", "brace" or a member
  EndOfBar end = EndOfBar::start;
  std::vector<std::string> at;  ///< points: each of the bolts
  Toward along;                 ///< the bolts
  BoltSpec bolt;
  Plates plates;               ///< that they bear on; without a steel = not given
  double edge = base::kUnset;  ///< a bolt's center to the nearest edge of those  [m]
  bool operator==(const BoltedGroup&) const = default;
};

template <class Visitor>
void fields(Visitor& v, BoltedGroup& g) {
  using enum Presence;
  v.text({"holds", required, "what they hold: lateral_link, brace or a member"}, g.holds);
  constexpr std::array<Word<EndOfBar>, 2> kEnds = {Word<EndOfBar>{"start", EndOfBar::start},
                                                   Word<EndOfBar>{"far end", EndOfBar::far_end}};
  v.choice({"end", required,
            "which end of it; a link starts at its frame bolt, a brace at the "
            "bracket"},
           g.end, kEnds);
  v.points({"at", required, "where each bolt is, two or more"}, g.at);
  v.phrase({"along", required, "which way the bolts point"}, g.along);
  v.phrase({"bolt", required, "size, grade, how each is sheared"}, g.bolt);
  v.phrase({"plates", optional, "what they bear on: how many, how thick, which steel",
            "bearing and tear-out are not checked"},
           g.plates);
  v.quantity({"edge", optional, "a bolt's center to the nearest edge of those plates",
              "goes with `plates`"},
             g.edge, positive(Dimension::length));
}

}  // namespace parts
