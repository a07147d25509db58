#include "studies/piece_places.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "parts/piece_forces.hpp"
#include "parts/taper.hpp"
#include "parts/weld_zone.hpp"
#include "sections/straightness.hpp"

namespace studies {

namespace {

/// How far along a piece a place is, by its center line where that is known.  [-]
double station_of(const parts::Piece& piece, std::size_t beam, double part) {
  const double from = piece.beams[beam].starts_at;
  const double to =
      beam + 1 < piece.beams.size() ? piece.beams[beam + 1].starts_at : piece.center_line;
  if (to > from && to <= piece.center_line) return std::lerp(from, to, part) / piece.center_line;
  return (static_cast<double>(beam) + part) / static_cast<double>(piece.beams.size());
}

}  // namespace

std::string place_words(const parts::Piece& piece, std::size_t beam, double part) {
  const double station = station_of(piece, beam, part);
  if (piece.part == "lateral_link") {
    if (station < 0.01) return "frame end";
    if (station > 0.99) return "axle end";
    if (piece.bent && std::abs(station - 0.5) < 0.01) return "at the bend";
  }
  if (piece.part == "bracket") {
    if (station > 0.99) return "plates at the rail";
    return station < 0.01 ? "plates at the bolt"
                          : fmt::format("plates, {:.0f} % of the way up", 100.0 * station);
  }
  if (piece.part == "pitman_arm" && station > 0.99) return "at its shaft";
  const std::string along = station < 0.01   ? "at its first end"
                            : station > 0.99 ? "at its far end"
                                             : fmt::format("{:.0f} % along", 100.0 * station);
  return piece.name.empty() ? along : piece.name + ", " + along;
}

sections::Shape shape_at(const parts::PieceBeam& beam, double part) {
  if (part == 0.0 || beam.at_a == beam.at_b) return beam.at_a;
  return part == 1.0 ? beam.at_b : parts::between(beam.at_a, beam.at_b, part);
}

void stations_of(const parts::Piece& piece, const parts::PieceBeam& beam,
                 const fea::Solution& solution, std::vector<double>& stations) {
  solution.stations(beam.beam, stations);
  const double beam_length = stations.back();
  const std::size_t without_edges = stations.size();
  for (const parts::WeldZone& zone : piece.weld_zones) {
    for (const double edge : {zone.from - beam.starts_at, zone.to - beam.starts_at}) {
      if (edge > 0.0 && edge < beam_length) stations.push_back(edge);
    }
  }
  for (int i = 1; i < beam.parts; ++i) stations.push_back(i * beam_length / beam.parts);
  if (stations.size() > without_edges) std::sort(stations.begin(), stations.end());
}

const sections::Shape& weaker_end(const parts::Piece& piece) {
  const auto weak = [](const sections::Shape& shape) {
    const sections::AreaProps props = sections::area_props(shape);
    return std::min(props.iyy, props.izz);
  };
  const sections::Shape& first = piece.beams.front().at_a;
  const sections::Shape& last = piece.beams.back().at_b;
  return weak(last) < weak(first) ? last : first;
}

double compression(const parts::Piece& piece, const fea::Solution& solution) {
  double largest = -std::numeric_limits<double>::infinity();
  for (const parts::PieceBeam& beam : piece.beams) {
    largest = std::max(largest, -parts::axial_range(beam, solution).least);
  }
  return largest;
}

checks::ColumnInput column_input(const parts::Piece& piece, double pressing) {
  checks::ColumnInput input{.shape = weaker_end(piece),
                            .elastic = piece.material.elastic,
                            .yield = piece.material.yield,
                            .length = piece.length,
                            .k = 1.0,
                            .bow = sections::straightness(piece.material).share,
                            .compression = pressing};
  if (!piece.weld_zones.empty()) {
    input.welds = checks::ColumnWelds{.yield = piece.material.haz_yield,
                                      .farthest = piece.farthest_weld(),
                                      .assumed = piece.reach_assumed};
  }
  return input;
}

void add_bases(checks::ColumnInput& input, const parts::Piece& piece) {
  input.strength_basis = parts::parent_words(piece.material);
  input.bow_basis = sections::straightness(piece.material).basis;
  if (input.welds) input.welds->basis = parts::weld_zone_words(piece.material);
}

}  // namespace studies
