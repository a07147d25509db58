#pragma once

#include "parts/bolt_spec.hpp"
#include "parts/end_weld_spec.hpp"
#include "parts/field.hpp"
#include "parts/stick.hpp"
#include "parts/tab_spec.hpp"

namespace parts {

/// "at the bolt" or "2 in above the bolt".
struct BraceAt {
  double above_bolt = 0.0;  ///< [m]
  [[nodiscard]] bool at_bolt() const { return !(above_bolt > 0.0); }
  bool operator==(const BraceAt&) const = default;
};

enum class BraceEnd { welded, bolted };

/// The diagonal tube from the bracket to the opposite rail.
struct Brace {
  Stick stick;
  double length = base::kUnset;  ///< unset = to the opposite rail of the frame  [m]
  double slope = base::kUnset;   ///< rises toward the opposite rail; unset with `length`  [rad]
  BraceAt meets_bracket;
  BraceEnd far_end = BraceEnd::welded;
  double bolt_to_weld = base::kUnset;  ///< farthest of an eye's welds; unset = its outside size [m]
  BoltSpec bolt;                       ///< of its bolted ends
  BoltSpec far_bolt;                   ///< of its far end; unset = as `bolt`
  EndWeldSpec end_weld;                ///< of both ends
  TabSpec far_tabs;                    ///< on the opposite rail, for its bolt there
  double end_mount = base::kUnset;  ///< give of its end along the brace; unset = both bounds [N/m]
  bool operator==(const Brace&) const = default;
};

template <class Visitor>
void fields(Visitor& v, Brace& b) {
  using enum Dimension;
  using enum Presence;
  v.phrase({"tube", required, "tube or bar, with its steel", {}, "bar"}, b.stick);
  v.quantity({"length", optional, "end to end", "needed, unless `frame` says where it ends"},
             b.length, positive(length));
  v.quantity({"slope", optional, "rise toward the opposite rail", "goes with `length`"}, b.slope,
             {.dimension = angle, .at_least = -80 * base::kDegree, .at_most = 80 * base::kDegree});
  v.phrase({"meets_bracket", assumed, "where it meets the bracket", "as drawn most often"},
           b.meets_bracket);
  constexpr std::array<Word<BraceEnd>, 2> kEnds = {
      Word<BraceEnd>{"welded to opposite rail", BraceEnd::welded},
      Word<BraceEnd>{"bolted to opposite rail", BraceEnd::bolted}};
  v.choice({"far_end", required, "how the far end is held"}, b.far_end, kEnds);
  v.quantity({"bolt_to_weld", optional, "how far from its bolt an eye's weld reaches",
              "the width of the part; proposal, no source"},
             b.bolt_to_weld, positive(length));
  v.phrase({"bolt", optional, "bolt of each bolted end: size, grade, how it is sheared",
            "its bolts are not checked"},
           b.bolt);
  v.phrase({"far_bolt", optional, "bolt of its far end, where it is another one", "as `bolt`"},
           b.far_bolt);
  v.phrase({"end_weld", optional, "weld at each of its ends: fillet all round, fishmouth, rosettes",
            "those welds are not checked"},
           b.end_weld);
  v.phrase({"far_tabs", optional, "tabs on the opposite rail that its bolt goes through",
            "they are not checked"},
           b.far_tabs);
  v.quantity({"end_mount", optional, "stiffness of the far end along the brace",
              "`not sure`: solved at 10 kN/mm and rigid; proposal, no source"},
             b.end_mount, {.dimension = stiffness, .above = 0.0, .may_be_unsure = true});
}

}  // namespace parts
