#include "studies/trouble.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "parts/length_words.hpp"

namespace studies {
namespace {

constexpr double kMostTurn = 3.0 * base::kDegree;
// A bracket is judged by the larger of second-order and undeformed statics, which bounds it to some
// two percent up to this lean: proposal.
constexpr double kMostLean = 10.0 * base::kDegree;
// Of a piece's end from its chord: proposal.
constexpr double kMostBent = 0.3;
// Upward seat travel up to which a bump stop that is not given is taken as open: proposal.
constexpr double kTravelWithoutStop = 0.025;

double turn_of(const parts::Chord& chord, const parts::Assembly& assembly,
               const fea::Solution& solution) {
  const fea::Model& model = assembly.model;
  const fea::Vector3 before =
      fea::end_b_g(model, model[chord.to]) - fea::end_a_g(model, model[chord.from]);
  const fea::Vector3 moved = solution.end_placement(chord.to, 1).head<3>() -
                             solution.end_placement(chord.from, 0).head<3>();
  const fea::Vector3 after = before + moved;
  return std::atan2(before.cross(after).norm(), before.dot(after));
}

double largest_torque(const parts::Piece& piece, const fea::Solution& solution) {
  double largest = 0.0;
  for (const parts::PieceBeam& beam : piece.beams) {
    largest = std::max(largest, std::abs(solution.end_forces(beam.beam)[3]));
  }
  return largest;
}

/// Travel up to which a stop or strap that is not wholly known is taken as open.  [m]
double open_to(const parts::TravelStop& stop) {
  return stop.kind == parts::TravelStop::Kind::bump_stop ? kTravelWithoutStop : stop.travel;
}

/// Why a stop or strap that is not wholly known leaves a case open; empty = it does not.
std::string why_unknown(const parts::TravelStop& stop, const fea::Solution& solution, bool inches) {
  const double travel = stop.sense() * rise_of(stop.node, stop.offset_g, solution);
  if (stop.known() || !(travel > open_to(stop))) return {};
  if (stop.kind == parts::TravelStop::Kind::bump_stop) {
    return fmt::format(
        "the {} is not given and its seat rises {}: enter axle.bump_travel and axle.stop_rate",
        stop.name, parts::length_words(travel, inches));
  }
  return fmt::format(
      "the axle drops {} at the {}, which is tight at {}: enter limit_strap.rate, of one strap",
      parts::length_words(travel, inches), stop.name, parts::length_words(stop.travel, inches));
}

bool is_strapped(const parts::Assembly& assembly) {
  return std::any_of(assembly.stops.begin(), assembly.stops.end(),
                     [](const parts::TravelStop& stop) {
                       return stop.kind == parts::TravelStop::Kind::limit_strap && stop.known();
                     });
}

double drop_of(const parts::CoilSeat& seat, const fea::Solution& solution) {
  return -rise_of(seat.node, seat.offset_g, solution);
}

/// Why an axle that only coils hold is not held: they push, and would have to pull; empty = it is.
std::string why_not_caught(const parts::Assembly& assembly, const fea::Solution& solution) {
  if (is_strapped(assembly)) return {};
  for (const parts::CoilSeat& seat : assembly.coil_seats) {
    const double drop = drop_of(seat, solution);
    if (!(drop > seat.leaves_at())) continue;
    return fmt::format(
        "no equilibrium without straps: the {} has nothing left to give {} below ride height, and "
        "its seat would drop {}; enter limit_strap.slack and limit_strap.rate",
        seat.name, parts::length_words(seat.leaves_at(), assembly.inches),
        parts::length_words(drop, assembly.inches));
  }
  return {};
}

}  // namespace

std::map<std::string, std::string> trouble_by_part(const SetModel& model,
                                                   const CaseSolution& solved) {
  std::map<std::string, std::string> trouble;
  const parts::Assembly& assembly = model.assembly();
  // A load at or above a critical one is a matter of stability: that check says so, and the others
  // are followed as far as the frame can carry.
  if (solved.solution.status() == fea::SolveStatus::unstable) return trouble;
  const bool moved = solved.method == fea::Method::large_displacement;
  if (solved.solution.status() == fea::SolveStatus::not_converged) {
    trouble[""] = moved ? solved.solution.words() : "the second-order solution did not converge";
    return trouble;
  }
  if (!solved.contact_settled)
    trouble[""] = "the bump stops did not settle, or the roll was not reached";
  for (const parts::TravelStop& stop : assembly.stops) {
    const std::string reason = why_unknown(stop, solved.solution, assembly.inches);
    if (!reason.empty()) trouble[""] = reason;
  }
  const std::string loose = why_not_caught(assembly, solved.solution);
  if (!loose.empty()) trouble[""] = loose;
  if (moved && solved.solution.local_rotation() > kMostBent) {
    trouble[""] = fmt::format("a member's end turns {:.0f} degrees from the line between its ends",
                              solved.solution.local_rotation() / base::kDegree);
  }
  for (const parts::Chord& chord : assembly.chords) {
    if (moved) break;
    const double turn = turn_of(chord, assembly, solved.solution);
    if (chord.part == "bracket" && turn > kMostLean) {
      trouble[chord.part] = fmt::format(
          "it leans {:.0f} degrees on its rail; over 10 needs the large-displacement solution, "
          "which takes no heat or moved supports: brace it, or enter bracket.rail_stiffness",
          turn / base::kDegree);
    }
    if (chord.part == "bracket" || !(turn > kMostTurn)) continue;
    const std::string reason = fmt::format(
        "it turns {:.1f} degrees from ride height; over 3 needs the large-displacement "
        "solution, which takes no heat or moved supports",
        turn / base::kDegree);
    trouble[chord.part] = reason;
    if (chord.part == "lateral_link") {
      trouble["bracket"] = "its link: " + reason;
      trouble["brace"] = "its link: " + reason;
    }
  }
  for (const parts::Piece& piece : assembly.pieces) {
    if (piece.spin_held && largest_torque(piece, solved.solution) > 1.0) {
      trouble[piece.part] = "a torque turns it about its own axis, and its ball joints hold none";
    }
  }
  return trouble;
}

bool is_near_trouble(const SetModel& model, const CaseSolution& solved, double near) {
  const parts::Assembly& assembly = model.assembly();
  const fea::Solution& solution = solved.solution;
  const auto near_unknown = [&](const parts::TravelStop& stop) {
    const double travel = stop.sense() * rise_of(stop.node, stop.offset_g, solution);
    return !stop.known() && travel > near * open_to(stop);
  };
  const auto nearly_leaves = [&](const parts::CoilSeat& seat) {
    return drop_of(seat, solution) > near * seat.leaves_at();
  };
  const bool moved = solved.method == fea::Method::large_displacement;
  return std::any_of(assembly.stops.begin(), assembly.stops.end(), near_unknown) ||
         (!is_strapped(assembly) &&
          std::any_of(assembly.coil_seats.begin(), assembly.coil_seats.end(), nearly_leaves)) ||
         (moved && solution.local_rotation() > near * kMostBent);
}

bool moves_far(const SetModel& model, const CaseSolution& second_order) {
  const fea::SolveStatus status = second_order.solution.status();
  if (status != fea::SolveStatus::converged) return status == fea::SolveStatus::not_converged;
  const std::vector<parts::Chord>& chords = model.assembly().chords;
  return std::any_of(chords.begin(), chords.end(), [&](const parts::Chord& chord) {
    const double most = chord.part == "bracket" ? kMostLean : kMostTurn;
    return turn_of(chord, model.assembly(), second_order.solution) > most;
  });
}

}  // namespace studies
