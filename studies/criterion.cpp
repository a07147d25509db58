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
#include "parts/taper.hpp"

namespace studies {
namespace {

checks::ColumnInput column_input(const parts::Piece& piece, double pressing) {
  return {.shape = weaker_end(piece),
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
  const double station =
      (static_cast<double>(stress.beam) + stress.part) / static_cast<double>(piece.beams.size());
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

sections::Shape shape_at(const parts::PieceBeam& beam, double part) {
  if (part == 0.0 || beam.at_a == beam.at_b) return beam.at_a;
  return part == 1.0 ? beam.at_b : parts::between(beam.at_a, beam.at_b, part);
}

checks::Finding yield_finding(const parts::Piece& piece, const Outcome& outcome) {
  const PieceStress at = worst_stress(piece, *outcome.at_load);
  const sections::Shape shape = shape_at(piece.beams[at.beam], at.part);
  checks::YieldInput input{.shape = shape,
                           .resultants = at.resultants,
                           .worst = sections::worst_point(shape, at.resultants),
                           .strength = piece.strength,
                           .strength_basis = piece.strength_basis,
                           .safety_factor = outcome.safety_factor,
                           .required = outcome.required,
                           .at_limit = {}};
  if (outcome.at_limit != nullptr) {
    input.at_limit = worst_stress(piece, *outcome.at_limit).resultants;
  }
  checks::Finding finding = checks::yield(input);
  finding.part = piece.part;
  finding.where = place_word(piece, at);
  finding.notes.insert(finding.notes.end(), piece.notes.begin(), piece.notes.end());
  return finding;
}

}  // namespace

const sections::Shape& weaker_end(const parts::Piece& piece) {
  const auto weak = [](const sections::Shape& shape) {
    const sections::AreaProps props = sections::area_props(shape);
    return std::min(props.iyy, props.izz);
  };
  const sections::Shape& first = piece.beams.front().at_a;
  const sections::Shape& last = piece.beams.back().at_b;
  return weak(last) < weak(first) ? last : first;
}

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

PieceStress worst_stress(const parts::Piece& piece, const fea::Solution& solution) {
  PieceStress worst{.von_mises = -1.0, .beam = 0, .part = 0.0, .resultants = {}};
  for (std::size_t i = 0; i < piece.beams.size(); ++i) {
    const parts::PieceBeam& beam = piece.beams[i];
    const std::vector<double> stations = solution.stations(beam.beam);
    for (const double at : stations) {
      const double part = at / stations.back();
      sections::Resultants cut = parts::forces_at(beam, solution, at);
      cut.my *= beam.curved;
      cut.mz *= beam.curved;
      const double stress = sections::worst_point(shape_at(beam, part), cut).von_mises;
      if (!(stress <= worst.von_mises)) worst = {stress, i, part, cut};
      if (std::isnan(stress)) return worst;
    }
  }
  return worst;
}

double compression(const parts::Piece& piece, const fea::Solution& solution) {
  double largest = -std::numeric_limits<double>::infinity();
  for (const parts::PieceBeam& beam : piece.beams) {
    for (const double at : solution.stations(beam.beam)) {
      largest = std::max(largest, -parts::forces_at(beam, solution, at).n);
    }
  }
  return largest;
}

double demand_over_capacity(const Criterion& criterion, const parts::Assembly& assembly,
                            const fea::Solution& solution) {
  switch (criterion.kind) {
    case Criterion::Kind::yield: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      return worst_stress(piece, solution).von_mises / piece.strength;
    }
    case Criterion::Kind::column: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      const double pressing = compression(piece, solution);
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
      return yield_finding(assembly.pieces[criterion.index], outcome);
    case Criterion::Kind::column: {
      const parts::Piece& piece = assembly.pieces[criterion.index];
      checks::ColumnInput input = column_input(piece, compression(piece, *outcome.at_load));
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
