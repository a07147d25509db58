#include "parts/piece_forces.hpp"

#include <algorithm>
#include <limits>
#include <vector>

namespace parts {

sections::Resultants forces_at(const PieceBeam& beam, const fea::Solution& solution, double at) {
  sections::Resultants cut = solution.forces_at(beam.beam, at);
  if (beam.axial) cut.n = solution.forces_at(*beam.axial, at).n;
  return cut;
}

AxialRange axial_range(const PieceBeam& beam, const fea::Solution& solution) {
  constexpr double kInfinite = std::numeric_limits<double>::infinity();
  const fea::BeamId of = beam.axial.value_or(beam.beam);
  AxialRange out{kInfinite, -kInfinite};
  const auto take = [&](double at) {
    const double n = solution.forces_at(of, at).n;
    out.least = std::min(out.least, n);
    out.most = std::max(out.most, n);
  };
  if (!solution.is_loaded_between(of)) {
    take(0.0);
    return out;
  }
  std::vector<double> stations;
  solution.stations(beam.beam, stations);
  for (const double at : stations) take(at);
  return out;
}

fea::Vector12 end_forces(const PieceBeam& beam, const fea::Solution& solution) {
  fea::Vector12 ends = solution.end_forces(beam.beam);
  if (beam.axial) {
    const fea::Vector12 axial = solution.end_forces(*beam.axial);
    ends[0] = axial[0];
    ends[6] = axial[6];
  }
  return ends;
}

}  // namespace parts
