#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "checks/column.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"

/// Places along a piece, what acts there, and what it is as a column.
namespace studies {

/// "at its far end", "lower tube, 40 % along".
/// @param part  of the beam's length, from its end a
[[nodiscard]] std::string place_words(const parts::Piece& piece, std::size_t beam, double part);

/// The section at a part of a beam's length from its end a.
[[nodiscard]] sections::Shape shape_at(const parts::PieceBeam& beam, double part);

/// Where one of its beams is looked at, from its end a to its end b: where the loads on it change,
/// and the edges of weld zones.
/// @param stations  gets them, in memory that may be there  [m]
void stations_of(const parts::Piece& piece, const parts::PieceBeam& beam,
                 const fea::Solution& solution, std::vector<double>& stations);

/// The section a piece is judged by as a column: of a tapered one the end that bends more easily.
[[nodiscard]] const sections::Shape& weaker_end(const parts::Piece& piece);

/// Largest compression in a piece; negative when all of it is in tension.  [N]
[[nodiscard]] double compression(const parts::Piece& piece, const fea::Solution& solution);

/// The piece as a column.
/// @param pressing  its largest compression  [N]
[[nodiscard]] checks::ColumnInput column_input(const parts::Piece& piece, double pressing);
/// Where its numbers come from, which only a finding tells.
void add_bases(checks::ColumnInput& input, const parts::Piece& piece);

}  // namespace studies
