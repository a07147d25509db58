#include "studies/criterion.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "checks/column.hpp"
#include "checks/joint_rating.hpp"
#include "checks/weld.hpp"
#include "checks/yield.hpp"
#include "parts/piece_forces.hpp"

namespace studies {
namespace {

checks::ColumnInput column_input(const parts::Piece& piece, double pressing) {
  return {.shape = piece.beams.front().at_a,
          .elastic = piece.material.elastic,
          .yield = piece.strength,
          .strength_basis = piece.strength_basis,
          .length = piece.length,
          .k = 1.0,
          .compression = pressing};
}

checks::WeldInput weld_input(const parts::RootWeld& root, const fea::Solution& solution) {
  const fea::Vector6 held = solution.reaction(root.node);
  return {.group = root.group,
          .wrench = {.force = -held.head<3>(), .moment = -held.tail<3>(), .at = root.at_g},
          .thinner_part = root.thinner,
          .edge = base::kUnset};
}

double joint_force(const parts::RatedJoint& joint, const fea::Solution& solution) {
  const fea::Vector12 ends = parts::end_forces(joint.beam, solution);
  return ends.segment<3>(6 * joint.end).norm();
}

checks::JointRatingInput joint_input(const parts::RatedJoint& joint, const fea::Solution& at) {
  return {.force = joint_force(joint, at),
          .static_rating = joint.static_rating,
          .ultimate_rating = joint.ultimate_rating};
}

/// Words for a place along a piece.
std::string place_word(const parts::Piece& piece, const PieceStress& stress) {
  const double station = (static_cast<double>(stress.beam) + (stress.at_b ? 1.0 : 0.0)) /
                         static_cast<double>(piece.beams.size());
  if (piece.part == "lateral_link") {
    if (station < 0.01) return "frame end";
    if (station > 0.99) return "axle end";
    if (!piece.column && std::abs(station - 0.5) < 0.01) return "at the bend";
  }
  if (piece.part == "bracket") {
    if (station > 0.99) return "plates at the rail";
    return station < 0.01 ? "plates at the bolt"
                          : fmt::format("plates, {:.0f} % of the way up", 100.0 * station);
  }
  const std::string along = station < 0.01   ? "at its first end"
                            : station > 0.99 ? "at its far end"
                                             : fmt::format("{:.0f} % along", 100.0 * station);
  return piece.name.empty() ? along : piece.name + ", " + along;
}

const sections::Shape& shape_at(const parts::Piece& piece, const PieceStress& stress) {
  const parts::PieceBeam& beam = piece.beams[stress.beam];
  return stress.at_b ? beam.at_b : beam.at_a;
}

checks::Finding yield_finding(const parts::Piece& piece, const parts::Assembly& assembly,
                              const Outcome& outcome) {
  const PieceStress at = worst_stress(piece, assembly, *outcome.at_load);
  checks::YieldInput input{.shape = shape_at(piece, at),
                           .resultants = at.resultants,
                           .worst = sections::worst_point(shape_at(piece, at), at.resultants),
                           .strength = piece.strength,
                           .strength_basis = piece.strength_basis,
                           .safety_factor = outcome.safety_factor,
                           .required = outcome.required,
                           .at_limit = {}};
  if (outcome.at_limit != nullptr) {
    input.at_limit = worst_stress(piece, assembly, *outcome.at_limit).resultants;
  }
  checks::Finding finding = checks::yield(input);
  finding.part = piece.part;
  finding.where = place_word(piece, at);
  return finding;
}

}  // namespace

std::vector<Criterion> criteria(const parts::Assembly& assembly) {
  std::vector<Criterion> all;
  for (std::size_t i = 0; i < assembly.pieces.size(); ++i) {
    all.push_back({Criterion::Kind::yield, i});
    if (assembly.pieces[i].column) all.push_back({Criterion::Kind::column, i});
  }
  if (assembly.root) all.push_back({Criterion::Kind::weld, 0});
  for (std::size_t i = 0; i < assembly.rated_joints.size(); ++i) {
    all.push_back({Criterion::Kind::joint, i});
  }
  return all;
}

const std::string& part_judged(const Criterion& criterion, const parts::Assembly& assembly) {
  switch (criterion.kind) {
    case Criterion::Kind::weld:
      return assembly.root->part;
    case Criterion::Kind::joint:
      return assembly.rated_joints[criterion.index].part;
    case Criterion::Kind::yield:
    case Criterion::Kind::column:
      break;
  }
  return assembly.pieces[criterion.index].part;
}

std::string check_name(Criterion::Kind kind) {
  switch (kind) {
    case Criterion::Kind::yield:
      return "yield";
    case Criterion::Kind::column:
      return "column";
    case Criterion::Kind::weld:
      return "weld";
    case Criterion::Kind::joint:
      break;
  }
  return "joint rating";
}

PieceStress worst_stress(const parts::Piece& piece, const parts::Assembly& assembly,
                         const fea::Solution& solution) {
  PieceStress worst{.von_mises = -1.0, .beam = 0, .at_b = false, .resultants = {}};
  for (std::size_t i = 0; i < piece.beams.size(); ++i) {
    const parts::PieceBeam& beam = piece.beams[i];
    const double length = fea::length(assembly.model, assembly.model[beam.beam]);
    for (const bool at_b : {false, true}) {
      const sections::Resultants cut = parts::forces_at(beam, solution, at_b ? length : 0.0);
      const double stress = sections::worst_point(at_b ? beam.at_b : beam.at_a, cut).von_mises;
      if (!(stress <= worst.von_mises)) worst = {stress, i, at_b, cut};
      if (std::isnan(stress)) return worst;
    }
  }
  return worst;
}

double compression(const parts::Piece& piece, const parts::Assembly& assembly,
                   const fea::Solution& solution) {
  double largest = -std::numeric_limits<double>::infinity();
  for (const parts::PieceBeam& beam : piece.beams) {
    const double length = fea::length(assembly.model, assembly.model[beam.beam]);
    largest = std::max({largest, -parts::forces_at(beam, solution, 0.0).n,
                        -parts::forces_at(beam, solution, length).n});
  }
  return largest;
}

double demand_over_capacity(const Criterion& criterion, const parts::Assembly& assembly,
                            const fea::Solution& solution) {
  switch (criterion.kind) {
    case Criterion::Kind::yield: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      return worst_stress(piece, assembly, solution).von_mises / piece.strength;
    }
    case Criterion::Kind::column: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      const double pressing = compression(piece, assembly, solution);
      const std::optional<checks::Finding> column = checks::column(column_input(piece, pressing));
      return column ? pressing / column->capacity : 0.0;
    }
    case Criterion::Kind::weld: {
      const checks::Finding weld = checks::weld(weld_input(*assembly.root, solution));
      return weld.demand / weld.capacity;
    }
    case Criterion::Kind::joint:
      break;
  }
  const checks::Finding joint =
      checks::joint_rating(joint_input(assembly.rated_joints[criterion.index], solution));
  return joint.demand / joint.capacity;
}

double required_factor(const Criterion& criterion, const parts::Assembly& assembly,
                       const checks::RequiredFactors& factors, bool abuse) {
  using checks::Item;
  switch (criterion.kind) {
    case Criterion::Kind::yield:
      return checks::required(factors, Item::yield, abuse, assembly.pieces[criterion.index].duty);
    case Criterion::Kind::column:
      return checks::required(factors, Item::buckling, abuse,
                              assembly.pieces[criterion.index].duty);
    case Criterion::Kind::weld:
      return checks::required(factors, Item::weld, abuse);
    case Criterion::Kind::joint:
      break;
  }
  const parts::RatedJoint& joint = assembly.rated_joints[criterion.index];
  return checks::required(factors, joint.reversing ? Item::reversing_joint : Item::joint, abuse);
}

std::optional<checks::Finding> finding(const Criterion& criterion, const parts::Assembly& assembly,
                                       const Outcome& outcome) {
  switch (criterion.kind) {
    case Criterion::Kind::yield:
      return yield_finding(assembly.pieces[criterion.index], assembly, outcome);
    case Criterion::Kind::column: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      checks::ColumnInput input =
          column_input(piece, compression(piece, assembly, *outcome.at_load));
      input.required = outcome.required;
      input.safety_factor = outcome.safety_factor;
      std::optional<checks::Finding> column = checks::column(input);
      if (column) {
        column->part = piece.part;
        column->where = piece.name.empty() ? "between its joints" : piece.name;
      }
      return column;
    }
    case Criterion::Kind::weld: {
      checks::WeldInput input = weld_input(*assembly.root, *outcome.at_load);
      input.required = outcome.required;
      input.safety_factor = outcome.safety_factor;
      checks::Finding weld = checks::weld(input);
      weld.part = assembly.root->part;
      weld.where = "root weld at the rail";
      return weld;
    }
    case Criterion::Kind::joint:
      break;
  }
  const parts::RatedJoint& joint = assembly.rated_joints[criterion.index];
  checks::JointRatingInput input = joint_input(joint, *outcome.at_load);
  input.required = outcome.required;
  input.safety_factor = outcome.safety_factor;
  checks::Finding rated = checks::joint_rating(input);
  rated.part = joint.part;
  rated.where = joint.where;
  return rated;
}

}  // namespace studies
