#include "parts/piece_forces.hpp"

namespace parts {

sections::Resultants forces_at(const PieceBeam& beam, const fea::Solution& solution, double at) {
  sections::Resultants cut = solution.forces_at(beam.beam, at);
  if (beam.axial) cut.n = solution.forces_at(*beam.axial, at).n;
  return cut;
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
