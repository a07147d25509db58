#include "parts/rail_seat.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>
#include <fmt/format.h>

namespace parts {
namespace {

bool on_one_side(const RailFaces& faces) {
  return !faces.bottom && faces.inner_side != faces.outer_side;
}

/// Both ends of a weld line count, or one.
enum class Backed { both_ends, from_end, to_end };

void add_backed(checks::WeldGroup& group, const checks::WeldLine& line, double length,
                Backed backed) {
  const double whole = line.length();
  const double most = backed == Backed::both_ends ? 0.5 * whole : whole;
  if (length >= most * (1.0 - 1e-9)) {
    group.lines.push_back(line);
    return;
  }
  const Eigen::Vector3d part = (line.to - line.from) * (length / whole);
  if (backed != Backed::to_end) {
    group.lines.push_back({line.from, Eigen::Vector3d(line.from + part), line.leg, line.groove});
  }
  if (backed != Backed::from_end) {
    group.lines.push_back({Eigen::Vector3d(line.to - part), line.to, line.leg, line.groove});
  }
}

/// Which end of a line on the seat is backed; lines on the bottom run toward +y.
Backed backed_end(const Bracket& bracket, const BracketPlace& place) {
  if (bracket.rail.boxed) return Backed::both_ends;
  // The web of an open rail is where a side is welded, else taken outside: trucks' channels mostly
  // open inward.
  const bool web_inside = bracket.welded_to.inner_side && !bracket.welded_to.outer_side;
  const double web_y = web_inside ? place.inward_y : -place.inward_y;
  return web_y > 0.0 ? Backed::to_end : Backed::from_end;
}

std::string backed_words(const Bracket& bracket, double length) {
  return fmt::format(
      "of each weld line across the rail only {:.3g} in ({:.3g} mm) {} counts, where the wall "
      "backs it ({}, from memory)",
      length / base::kInch, length / base::kMillimeter,
      bracket.rail.boxed ? "from each end" : "from the web",
      bracket.rail.boxed ? "AISC 360-16 K5: less beside a thicker plate" : "EN 1993-1-8, 4.10");
}

/// Welding across a cold bend. Source: EN 1993-1-8 (2005), table 4.2, fatigue, read.
std::string fold_warning(const Plates& plates) {
  if (!plates.folded()) return {};
  const double t = plates.thickness;
  const double sharp = plates.fold_radius / t;
  double most = 0.0;  // [mm]
  for (const auto& [ratio, thickest] :
       {std::pair{1.0, 4.0}, std::pair{1.5, 8.0}, std::pair{2.0, 10.0}, std::pair{3.0, 12.0},
        std::pair{10.0, 16.0}}) {
    if (sharp >= ratio * (1.0 - 1e-9)) most = thickest;
  }
  if (t <= most * base::kMillimeter) return {};
  return fmt::format(
      "warning: the root weld crosses the bracket's folds, of inside radius {:.2g} t: EN 1993-1-8 "
      "table 4.2 (fatigue) allows welds within 5 t of such a bend {}, here {:.3g} in ({:.3g} mm)",
      sharp, most > 0.0 ? fmt::format("up to {:.0f} mm of thickness", most) : "not at all",
      t / base::kInch, t / base::kMillimeter);
}

}  // namespace

double rail_stress(const Bracket& bracket) {
  constexpr double kUsual = 0.4;
  return std::isnan(bracket.rail_stress) ? kUsual * bracket.rail_steel.material.yield
                                         : bracket.rail_stress;
}

RootSeat root_seat(const Bracket& bracket, const BracketPlace& place) {
  const Rail& rail = bracket.rail;
  const RailFaces& faces = bracket.welded_to;
  const sections::Material& steel = bracket.rail_steel.material;
  RootSeat out{.seat = {.boxed = rail.boxed,
                        .face = rail.width,
                        .side = rail.height,
                        .wall = rail.wall,
                        .frame_plate = rail.frame_plate,
                        .line = faces.bottom ? std::min(bracket.depth_at_rail, rail.width) : 0.0,
                        .walls_welded =
                            static_cast<int>(faces.inner_side) + static_cast<int>(faces.outer_side),
                        .up_the_wall = weld_up_the_side(bracket),
                        .plates = bracket.plates.count,
                        .plate = bracket.plates.thickness,
                        .gap = bracket.gap,
                        .plate_yield = bracket.plates.material.yield,
                        .yield = steel.yield,
                        .tensile = steel.tensile,
                        .elastic = steel.elastic,
                        .own_stress = rail_stress(bracket),
                        .holes_in_face = bracket.holes_in_bottom,
                        .holes_in_walls = bracket.holes_in_side},
               .on_side = on_one_side(faces),
               .middle_g = place.rail_bottom_g};
  if (!out.on_side || !rail.boxed) return out;
  out.seat.face = rail.height;
  out.seat.side = rail.width;
  out.seat.line = weld_up_the_side(bracket);
  out.seat.walls_welded = 0;
  out.seat.up_the_wall = 0.0;
  std::swap(out.seat.holes_in_face, out.seat.holes_in_walls);
  const double toward = faces.inner_side ? place.inward_y : -place.inward_y;
  out.middle_g += fea::Vector3(0.0, 0.5 * toward * rail.width, 0.5 * out.seat.line);
  return out;
}

std::vector<std::string> root_weld_warnings(const Bracket& bracket) {
  std::vector<std::string> warnings;
  const RailFaces& faces = bracket.welded_to;
  if (std::string fold = fold_warning(bracket.plates); !fold.empty()) {
    warnings.push_back(std::move(fold));
  }
  if (bracket.weld.directional && bracket.rail.boxed) {
    warnings.emplace_back(
        "directional strength is asked for and not counted: a boxed rail is a hollow section "
        "(tests found less strength there; McFadden, Sun and Packer, read)");
  }
  if (!faces.bottom) return warnings;
  const double to_edge = 0.5 * (bracket.rail.width - bracket.depth_at_rail);
  const double size = bracket.weld.leg > 0.0 ? bracket.weld.leg : bracket.weld.groove;
  if (to_edge < size && !(faces.inner_side && faces.outer_side)) {
    warnings.emplace_back(
        "warning: on the bottom the weld runs to an edge of the rail where it does not go around: "
        "stop it a leg short of the edge (AISC 360 J2.2b, read)");
  }
  constexpr double kSticksOut = 0.05;  // of the plates' width, past each side
  if (to_edge < -kSticksOut * bracket.depth_at_rail && !faces.wraps_both_corners()) {
    warnings.emplace_back(
        "warning: at the rail the plates are wider than the rail: what sticks out past a side that "
        "is not welded holds nothing there, yet counts in their stress");
  }
  constexpr double kNearBend = 5.0;
  if (to_edge < kNearBend * bracket.rail.wall) {
    warnings.emplace_back(
        "warning: it comes nearer than 5 t to the rail's corner; where that is a cold bend, EN "
        "1993-1-8 table 4.2 limits how sharp it may be (from memory)");
  }
  warnings.emplace_back(
      "warning: a weld across the rail's bottom is a notch in the rail itself, which fatigue "
      "finds; the rail is not checked for it (common practice, no source: stay off the flange's "
      "edges)");
  return warnings;
}

checks::SeatLoad seat_load(const RootSeat& seat, const checks::Wrench& wrench) {
  const fea::Vector3 arm = wrench.at - seat.middle_g;
  const fea::Vector3 moment = wrench.moment + arm.cross(wrench.force);
  const int normal = seat.on_side ? 1 : 2;
  const int across = seat.on_side ? 2 : 1;
  return {.normal = wrench.force[normal],
          .across = wrench.force[across],
          .along = wrench.force[0],
          .rolling = moment[0],
          .pitching = moment[across],
          .twisting = moment[normal]};
}

BackedWeld backed_root_weld(const Bracket& bracket, const BracketPlace& place) {
  BackedWeld out{.group = root_weld(bracket, place), .words = {}, .why_not = {}};
  const RootSeat seat = root_seat(bracket, place);
  out.why_not = checks::seat_method(seat.seat).why_not;
  if (!out.why_not.empty() || !(seat.seat.line > 0.0)) return out;
  const double length = checks::backed_length(seat.seat);
  const Backed backed = backed_end(bracket, place);
  const checks::WeldGroup whole = std::move(out.group);
  out.group = {.lines = {}, .filler_tensile = whole.filler_tensile};
  for (const checks::WeldLine& line : whole.lines) {
    const bool upright = std::abs((line.to - line.from).z()) > 0.5 * line.length();
    if (upright == seat.on_side) {
      add_backed(out.group, line, length, backed);
    } else {
      out.group.lines.push_back(line);
    }
  }
  const double share = bracket.rail.boxed ? 2.0 * length : length;
  if (share < seat.seat.line * (1.0 - 1e-9)) out.words = backed_words(bracket, length);
  return out;
}

}  // namespace parts
