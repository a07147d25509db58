#include "studies/solved_case.hpp"

#include "parts/piece_forces.hpp"
#include "studies/held_force.hpp"

namespace studies {
namespace {

AtPoint at_point(const std::string& name, const fea::Vector6& value) {
  AtPoint at{name, {}};
  for (int i = 0; i < 6; ++i) at.value[static_cast<std::size_t>(i)] = value[i];
  return at;
}

PieceEnds piece_ends(const parts::Piece& piece, const fea::Solution& solution) {
  PieceEnds out{piece.part, piece.name, {}};
  const fea::Vector12 first = parts::end_forces(piece.beams.front(), solution);
  const fea::Vector12 last = parts::end_forces(piece.beams.back(), solution);
  for (int i = 0; i < 6; ++i) {
    out.ends[static_cast<std::size_t>(i)] = first[i];
    out.ends[static_cast<std::size_t>(i + 6)] = last[i + 6];
  }
  return out;
}

}  // namespace

SolvedCase solved_case(const SetModel& model, const CaseSolution& solved) {
  SolvedCase out;
  out.method =
      solved.method == fea::Method::large_displacement ? "large displacement" : "second order";
  const fea::Solution& solution = solved.solution;
  out.converged = solution.status() == fea::SolveStatus::converged && solved.contact_settled;
  if (!out.converged) return out;
  out.residual = solution.residual();
  const fea::Condition condition = model.condition(solved.closed_stops);
  out.condition = condition.number;
  out.condition_cause = condition.cause;
  out.factor = model.factor_size(solved.closed_stops);
  return out;
}

void add_numbers(SolvedCase& out, const SetModel& model, const parts::DesignCase& load_case,
                 const CaseSolution& solved) {
  if (!out.converged) return;
  const fea::Solution& solution = solved.solution;
  for (const parts::Piece& piece : model.assembly().pieces) {
    out.pieces.push_back(piece_ends(piece, solution));
  }
  const std::vector<fea::Vector6> held = held_forces(model, load_case, solved);
  for (std::size_t i = 0; i < held.size(); ++i) {
    out.reactions.push_back(at_point(model.assembly().held[i].name, held[i]));
  }
  for (const parts::NamedNode& point : model.assembly().points) {
    out.displacements.push_back(at_point(point.name, solution.placement(point.node)));
    out.first_order.push_back(at_point(point.name, solved.linear().placement(point.node)));
  }
}

}  // namespace studies
