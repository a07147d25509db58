#include "studies/drawing_of.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

#include <Eigen/Geometry>

#include "parts/piece_forces.hpp"
#include "studies/case_overview.hpp"
#include "studies/held_force.hpp"
#include "studies/piece_places.hpp"
#include "studies/seen_buckling.hpp"

namespace studies {
namespace {

using fea::Vector3;
using fea::Vector6;

Place3 place(const Vector3& v) {
  return {v[0], v[1], v[2]};
}

/// Where each beam of a piece is cut, as parts of its length: both ends of the first, then the far
/// end of each; more of one that stands for a whole straight.
std::vector<double> cuts_of(const parts::Piece& piece, std::size_t beam) {
  constexpr std::size_t kLeast = 8;  // a curve that looks smooth
  const std::size_t n = std::max<std::size_t>(1, kLeast / piece.beams.size());
  std::vector<double> cuts;
  for (std::size_t i = beam == 0 ? 0 : 1; i <= n; ++i) {
    cuts.push_back(static_cast<double>(i) / static_cast<double>(n));
  }
  return cuts;
}

DrawnPiece drawn(const parts::Piece& piece, const parts::Assembly& assembly) {
  DrawnPiece out{.part = piece.part, .name = piece.name};
  const fea::Model& model = assembly.model;
  for (std::size_t b = 0; b < piece.beams.size(); ++b) {
    const parts::PieceBeam& beam = piece.beams[b];
    const Vector3 from = fea::end_a_g(model, model[beam.beam]);
    const Vector3 to = fea::end_b_g(model, model[beam.beam]);
    const fea::Matrix3 axes = fea::member_axes(model, model[beam.beam]);
    const double turned = sections::area_props(beam.at_a).axes_angle;
    const double angle = std::isnan(turned) ? 0.0 : turned;
    const Vector3 y = axes.row(1).transpose();
    const Vector3 z = axes.row(2).transpose();
    for (const double cut : cuts_of(piece, b)) {
      out.line.push_back(place(from + cut * (to - from)));
      out.along.push_back(beam.starts_at + cut * (to - from).norm());
      out.shapes.push_back(shape_at(beam, cut));
      out.y_axes.push_back(place(std::cos(angle) * y - std::sin(angle) * z));
      out.z_axes.push_back(place(std::sin(angle) * y + std::cos(angle) * z));
    }
  }
  return out;
}

/// The deflected line of a beam from what its ends do: a cubic across it, as one without loads
/// between its ends takes.
Vector3 between(const Vector6& a, const Vector6& b, const Vector3& span_g, double part) {
  const double length = span_g.norm();
  const Vector3 x_g = span_g / length;
  const Vector3 slope_a = a.tail<3>().cross(x_g);
  const Vector3 slope_b = b.tail<3>().cross(x_g);
  const double s = part;
  const Vector3 across =
      (1.0 - 3.0 * s * s + 2.0 * s * s * s) * a.head<3>() +
      (3.0 * s * s - 2.0 * s * s * s) * b.head<3>() +
      length * ((s - 2.0 * s * s + s * s * s) * slope_a + (s * s * s - s * s) * slope_b);
  const double straight = ((1.0 - s) * a.head<3>() + s * b.head<3>()).dot(x_g);
  return across - across.dot(x_g) * x_g + straight * x_g;
}

/// @param end  gives what end 0 or 1 of a beam does
template <class EndOf>
std::vector<std::vector<Place3>> lines_of(const parts::Assembly& assembly, const EndOf& end) {
  std::vector<std::vector<Place3>> out;
  const fea::Model& model = assembly.model;
  for (const parts::Piece& piece : assembly.pieces) {
    std::vector<Place3>& line = out.emplace_back();
    for (std::size_t b = 0; b < piece.beams.size(); ++b) {
      const fea::BeamId id = piece.beams[b].beam;
      const Vector3 span = fea::end_b_g(model, model[id]) - fea::end_a_g(model, model[id]);
      for (const double cut : cuts_of(piece, b)) {
        line.push_back(place(between(end(id, 0), end(id, 1), span, cut)));
      }
    }
  }
  return out;
}

std::vector<std::vector<sections::Resultants>> forces_of(const parts::Assembly& assembly,
                                                         const fea::Solution& solution) {
  std::vector<std::vector<sections::Resultants>> out;
  for (const parts::Piece& piece : assembly.pieces) {
    std::vector<sections::Resultants>& line = out.emplace_back();
    for (std::size_t b = 0; b < piece.beams.size(); ++b) {
      const double length = fea::length(assembly.model, assembly.model[piece.beams[b].beam]);
      for (const double cut : cuts_of(piece, b)) {
        line.push_back(parts::forces_at(piece.beams[b], solution, cut * length));
      }
    }
  }
  return out;
}

/// What an end of a beam does in a mode: its node's motion, carried along its offset.
Vector6 end_in_mode(const fea::Model& model, const Eigen::VectorXd& shape, fea::BeamId beam,
                    int end) {
  const fea::BeamEnd& at = end == 0 ? model[beam].a : model[beam].b;
  Vector6 motion = shape.segment<6>(6 * at.node.index);
  motion.head<3>() += motion.tail<3>().cross(at.offset_g);
  return motion;
}

DrawnMode drawn_mode(const parts::Assembly& assembly, const CriticalFactor& critical,
                     const Eigen::VectorXd& shape) {
  DrawnMode out{.factor = critical.factor, .what = critical.what};
  out.shape = lines_of(assembly, [&](fea::BeamId beam, int end) {
    return end_in_mode(assembly.model, shape, beam, end);
  });
  double largest = 0.0;
  for (const std::vector<Place3>& line : out.shape) {
    for (const Place3& p : line) largest = std::max(largest, std::hypot(p[0], p[1], p[2]));
  }
  if (!(largest > 0.0)) return out;
  for (std::vector<Place3>& line : out.shape) {
    for (Place3& p : line) {
      for (double& x : p) x /= largest;
    }
  }
  return out;
}

class ForceList {
 public:
  ForceList(const Cell& cell, std::vector<DrawnForce>& out) : cell_(cell), out_(out) {}

  void add_all() {
    for (const parts::NamedLoad& load :
         parts::named_loads(assembly(), cell_.model().design(), cell_.load_case())) {
      if (load.coil_at_rest) continue;
      if (const auto* at_node = std::get_if<fea::NodeLoad>(&load.load)) {
        add(load.what, model()[at_node->node].at_g + at_node->offset_g, at_node->force_g, false);
      } else if (const auto* on_beam = std::get_if<fea::BeamPointLoad>(&load.load)) {
        const fea::Beam& beam = model()[on_beam->beam];
        const Vector3 from = fea::end_a_g(model(), beam);
        const Vector3 along = (fea::end_b_g(model(), beam) - from).normalized();
        add(load.what, from + on_beam->at * along, on_beam->force_g, false);
      } else if (const auto* line = std::get_if<fea::BeamLineLoad>(&load.load)) {
        add_line(load.what, *line);
      }
    }
    const CaseSolution& solved = cell_.kept(1.0);
    if (solved.solution.status() != fea::SolveStatus::converged) return;
    const std::vector<fea::Vector6> on = held_forces(cell_.model(), cell_.load_case(), solved);
    for (std::size_t i = 0; i < on.size(); ++i) {
      const parts::NamedNode& held = assembly().held[i];
      add(held.name, model()[held.node].at_g, on[i].head<3>(), true);
    }
  }

 private:
  [[nodiscard]] const parts::Assembly& assembly() const { return cell_.assembly(); }
  [[nodiscard]] const fea::Model& model() const { return assembly().model; }

  /// Its resultant, in the middle of where it acts.
  void add_line(const std::string& what, const fea::BeamLineLoad& line) {
    const fea::Beam& beam = model()[line.beam];
    const double to = std::isnan(line.to) ? fea::length(model(), beam) : line.to;
    const Vector3 from = fea::end_a_g(model(), beam);
    const Vector3 along = (fea::end_b_g(model(), beam) - from).normalized();
    add(what, from + 0.5 * (line.from + to) * along,
        0.5 * (to - line.from) * (line.at_from_g + line.at_to_g), false);
  }

  /// What acts on one point under one name is one arrow.
  void add(const std::string& what, const Vector3& at, const Vector3& force, bool holds) {
    if (force.isZero(0.0)) return;
    const auto same = std::find_if(out_.begin(), out_.end(), [&](const DrawnForce& f) {
      return f.what == what && f.holds == holds && f.at == place(at);
    });
    if (same == out_.end()) {
      out_.push_back({what, place(at), place(force), holds});
    } else {
      for (int i = 0; i < 3; ++i) same->force[static_cast<std::size_t>(i)] += force[i];
    }
  }

  const Cell& cell_;
  std::vector<DrawnForce>& out_;
};

DrawnCase drawn_case(const Cell& cell) {
  DrawnCase out;
  out.load_case = cell.load_case().name;
  out.set = cell.model().set().name;
  ForceList(cell, out.loads).add_all();
  const parts::Assembly& assembly = cell.assembly();
  const fea::Solution& solution = cell.kept(1.0).solution;
  if (solution.status() != fea::SolveStatus::converged) return out;
  out.moved = lines_of(
      assembly, [&](fea::BeamId beam, int end) { return solution.end_placement(beam, end); });
  out.forces = forces_of(assembly, solution);
  const SeenBuckling buckling = seen_buckling(cell, 0);
  // What was left out as no mode stands before those that are kept.
  const std::size_t left_out = buckling.result.modes.size() - buckling.modes.size();
  for (std::size_t i = 0; i < buckling.modes.size(); ++i) {
    out.modes.push_back(drawn_mode(assembly, buckling.modes[i].critical,
                                   buckling.result.modes[i + left_out].shape));
  }
  return out;
}

}  // namespace

Drawing drawing_of(const std::vector<Cell>& cells, const std::vector<SolvedCase>& solved,
                   const std::vector<checks::Finding>& findings) {
  Drawing out;
  if (cells.empty()) return out;
  const Cell& first = cells.front();
  for (const parts::Piece& piece : first.assembly().pieces) {
    out.pieces.push_back(drawn(piece, first.assembly()));
  }
  CaseOverview overview = case_overview(cells, solved, findings);
  out.utilization = std::move(overview.parts);
  for (const Cell* cell : overview.worst) out.cases.push_back(drawn_case(*cell));
  const parts::Design& design = first.model().design();
  if (design.vehicle && first.assembly().axle) {
    const loads::Vehicle vehicle = parts::vehicle_of(design);
    out.tire_radius = vehicle.tire_radius;
    out.wheels = {Place3{0.0, 0.5 * vehicle.track, vehicle.tire_radius},
                  Place3{0.0, -0.5 * vehicle.track, vehicle.tire_radius}};
  }
  return out;
}

}  // namespace studies
