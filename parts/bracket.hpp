#pragma once

#include <string>

#include "parts/field.hpp"
#include "parts/stick.hpp"

namespace parts {

/// "boxed, 3 x 6 x 3/16 in, 1/4 in frame plate" or "open, 65 x 180 x 4.5 mm".
struct Rail {
  bool boxed = true;
  double width = base::kUnset;   ///< across the truck  [m]
  double height = base::kUnset;  ///< [m]
  double wall = base::kUnset;    ///< [m]
  double frame_plate = 0.0;      ///< thickness of a plate between rail and bracket; 0 = none  [m]
  bool operator==(const Rail&) const = default;
};

/// Which faces of the rail the bracket's plates are welded to: "bottom and inner side".
struct RailFaces {
  bool bottom = true;
  bool inner_side = false;
  bool outer_side = false;
  [[nodiscard]] bool wraps_both_corners() const { return bottom && inner_side && outer_side; }
  [[nodiscard]] bool one_flat_face() const {
    return static_cast<int>(bottom) + static_cast<int>(inner_side) + static_cast<int>(outer_side) ==
           1;
  }
  bool operator==(const RailFaces&) const = default;
};

/// A bracket that hangs from a frame rail and carries the lateral link's bolt. Its plates stand
/// across the truck (bolt along x), tapered from rail to bolt.
struct Bracket {
  double drop = base::kUnset;  ///< rail bottom to bolt  [m]
  Plates plates;
  double depth_at_rail = base::kUnset;  ///< across the truck  [m]
  double depth_at_bolt = base::kUnset;  ///< unset = half of depth_at_rail  [m]
  double edge_distance = base::kUnset;  ///< bolt to plate edge; unset = half depth_at_bolt  [m]
  double gap = 0.050;                   ///< clear between the plates  [m]
  double back_plate = base::kUnset;     ///< thickness, across their outer edges; unset = none  [m]
  double face_plate = base::kUnset;     ///< across their inner edges  [m]
  FilletWeld weld;
  double filler = 482.633e6;  ///< classification strength F_EXX  [Pa]
  Rail rail;
  Steel rail_steel = {*sections::find_material("A36")};  ///< of rail and frame plate
  double rail_stress = base::kUnset;  ///< along it, own load; unset = 0.4 of its yield [Pa]
  double holes_in_bottom = 0.0;       ///< of the rail under the bracket, diameters added up  [m]
  double holes_in_side = 0.0;         ///< of a side of the rail there, of two the worse  [m]
  RailFaces welded_to;
  double side_force = 0.05;              ///< share of the link's force across the plates  [-]
  double up_the_side = base::kUnset;     ///< weld on a rail side; unset = half the rail height [m]
  double rail_stiffness = base::kUnset;  ///< root about the rail; unset = both bounds  [N m/rad]
  double cross_member_ahead = base::kUnset;   ///< bracket to the next cross member  [m]
  double cross_member_behind = base::kUnset;  ///< [m]
  Stick cross_member;                         ///< depth upright; unset = not known
  double cross_member_length = base::kUnset;  ///< rail to rail  [m]
  bool operator==(const Bracket&) const = default;
};

/// Its two plates are tied along their edges, so that they bend as one.
[[nodiscard]] inline bool is_tied(const Bracket& b) {
  return b.plates.folded() || b.back_plate > 0.0 || b.face_plate > 0.0;
}

template <class Visitor>
void fields(Visitor& v, Bracket& b) {
  using enum Dimension;
  using enum Presence;
  v.quantity({"drop", required, "rail bottom to bolt"}, b.drop, positive(length));
  v.phrase({"plates", required, "how many plates, how thick, which steel"}, b.plates);
  v.quantity({"depth_at_rail", required, "plate across the truck, at the rail"}, b.depth_at_rail,
             positive(length));
  v.quantity({"depth_at_bolt", optional, "plate across the truck, at the bolt",
              "half of `depth_at_rail`; proposal"},
             b.depth_at_bolt, positive(length));
  v.quantity({"edge_distance", optional, "bolt's center to the nearest edge of a plate",
              "half of the depth at the bolt; proposal"},
             b.edge_distance, positive(length));
  v.quantity({"gap", assumed, "clear between the two plates",
              "width of a common bushing; common practice, no source"},
             b.gap, positive(length));
  v.quantity({"back_plate", optional, "thickness of a plate across their outer edges", "none"},
             b.back_plate, positive(length));
  v.quantity({"face_plate", optional, "thickness of a plate across their inner edges", "none"},
             b.face_plate, positive(length));
  v.phrase({"weld", required, "leg of the fillet, and on which sides of each plate"}, b.weld);
  v.quantity(
      {"filler", assumed, "tensile strength of the filler (F_EXX)", "E70 filler, AWS A5.1 / A5.18"},
      b.filler, positive(stress));
  v.phrase({"rail", required, "boxed or open, width x height x wall, frame plate"}, b.rail);
  v.phrase({"rail_steel", assumed, "steel of the rail and its frame plate",
            "the weakest of common rail steels; proposal, no source"},
           b.rail_steel);
  v.quantity({"rail_stress", optional, "stress along the rail from its own load",
              "0.4 of its yield strength; proposal"},
             b.rail_stress, not_negative(stress));
  v.quantity(
      {"holes_in_bottom", optional,
       "holes left in the rail's bottom under the bracket, their diameters added up", "none"},
      b.holes_in_bottom, not_negative(length));
  v.quantity({"holes_in_side", optional,
              "the same in a side of the rail beside the bracket, of two the worse", "none"},
             b.holes_in_side, not_negative(length));
  v.phrase({"welded_to", required, "faces of the rail the plates are welded to"}, b.welded_to);
  v.quantity({"side_force", assumed, "share of the link's force that acts across the plates",
              "misalignment and friction; proposal, no source; `0 %` turns it off"},
             b.side_force, {.dimension = ratio, .at_least = 0.0, .at_most = 1.0});
  v.quantity({"up_the_side", optional, "length of the weld up a rail side",
              "half of the rail's height; proposal"},
             b.up_the_side, positive(length));
  v.quantity({"rail_stiffness", optional, "root stiffness about the rail",
              "`not sure`: solved soft and stiff"},
             b.rail_stiffness,
             {.dimension = rotational_stiffness, .above = 0.0, .may_be_unsure = true});
  v.quantity({"cross_member_ahead", optional, "along the rail to the next cross member",
              "wider bounds of `rail_stiffness`"},
             b.cross_member_ahead, positive(length));
  v.quantity({"cross_member_behind", optional, "along the rail to the cross member behind",
              "wider bounds of `rail_stiffness`"},
             b.cross_member_behind, positive(length));
  v.phrase({"cross_member", optional, "section of both cross members, depth upright",
            "0.8 of a boxed rail's twist; proposal"},
           b.cross_member);
  v.quantity({"cross_member_length", optional, "cross member from rail to rail",
              "goes with `cross_member`"},
             b.cross_member_length, positive(length));
}

}  // namespace parts
