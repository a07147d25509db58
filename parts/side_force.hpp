#pragma once

#include <string>

#include "parts/piece_forces.hpp"

namespace parts {

/// What it is in one solution, over 0.  [N]
[[nodiscard]] double side_force(const SideForce& side, const fea::Solution& solution);

/// A cut through both plates with the side force added, on the side on which it adds up. Plates
/// that bend alone are cantilevers; two that a sleeve holds are the legs of a portal, bent the
/// other way at the bolt, and a couple of pull and push in them carries the rest (statics; beside
/// solid elements 8 % more stress, tests/published).
/// @param along  from the bolt  [m]
[[nodiscard]] sections::Resultants with_side_force(sections::Resultants cut, const SideForce& side,
                                                   double along, double force);

/// A wrench on the bracket's root with the side force added, to the side on which its moment about
/// the line across the truck adds up.
[[nodiscard]] checks::Wrench with_side_force(checks::Wrench root, const fea::Vector3& bolt_g,
                                             double force);

/// What it is and where it comes from, for notes.
[[nodiscard]] std::string side_force_words(const SideForce& side);

}  // namespace parts
