#include "studies/origin.hpp"

#include "parts/piece_forces.hpp"
#include "studies/piece_places.hpp"

namespace studies {
namespace {

std::string method_words(const CaseSolution& solved, const fea::Solution& used) {
  if (&used == &solved.linear()) return "first order, equilibrium as drawn";
  return solved.method == fea::Method::large_displacement
             ? "large displacements, equilibrium in the place reached"
             : "second order, equilibrium in the deformed position";
}

checks::WorkedLine end_line(std::string place, const fea::Vector12& ends, int first) {
  checks::WorkedLine line{std::move(place), "force ({0}, {1}, {2}), moment ({3}, {4}, {5})", {}};
  for (int i = 0; i < 6; ++i) {
    line.values.push_back(
        {ends[first + i], i < 3 ? checks::Measure::force : checks::Measure::moment});
  }
  return line;
}

}  // namespace

checks::Origin origin_of(const parts::Assembly& assembly, const std::string& part,
                         const CaseSolution& solved, const fea::Solution& used, double multiple) {
  checks::Origin out{.method = method_words(solved, used), .multiple = multiple};
  for (const parts::Piece& piece : assembly.pieces) {
    if (piece.part != part) continue;
    const fea::Vector12 first = parts::end_forces(piece.beams.front(), used);
    const fea::Vector12 last = parts::end_forces(piece.beams.back(), used);
    out.forces.push_back(end_line(place_words(piece, 0, 0.0), first, 0));
    out.forces.push_back(end_line(place_words(piece, piece.beams.size() - 1, 1.0), last, 6));
  }
  return out;
}

}  // namespace studies
