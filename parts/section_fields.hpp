#pragma once

#include "parts/field.hpp"
#include "sections/material.hpp"
#include "sections/shape.hpp"

/// The fields of sections and materials of a case file.
namespace parts {

template <class Visitor>
void fields(Visitor& v, sections::RoundBar& s) {
  v.quantity({.key = "diameter", .meaning = "outside"}, s.diameter, positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::RoundTube& s) {
  v.quantity({.key = "outside", .meaning = "outside diameter"}, s.outside,
             positive(Dimension::length));
  v.quantity({.key = "wall", .meaning = "its thickness"}, s.wall, positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::RectangularTube& s) {
  v.quantity({.key = "depth", .meaning = "outside, along z"}, s.depth, positive(Dimension::length));
  v.quantity({.key = "width", .meaning = "outside, along y"}, s.width, positive(Dimension::length));
  v.quantity({.key = "wall", .meaning = "its thickness"}, s.wall, positive(Dimension::length));
  v.quantity({.key = "corner", .meaning = "outside corner radius"}, s.corner,
             positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::FlatBar& s) {
  v.quantity({.key = "depth", .meaning = "along z"}, s.depth, positive(Dimension::length));
  v.quantity({.key = "width", .meaning = "along y"}, s.width, positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::TwinPlate& s) {
  v.quantity({.key = "depth", .meaning = "of one plate, along z"}, s.depth,
             positive(Dimension::length));
  v.quantity({.key = "thickness", .meaning = "of one plate"}, s.thickness,
             positive(Dimension::length));
  v.quantity({.key = "gap", .meaning = "clear between the plates"}, s.gap,
             positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::Channel& s) {
  v.quantity({.key = "depth", .meaning = "outside"}, s.depth, positive(Dimension::length));
  v.quantity({.key = "width", .meaning = "outside, web and flange"}, s.width,
             positive(Dimension::length));
  v.quantity({.key = "web", .meaning = "its thickness"}, s.web, positive(Dimension::length));
  v.quantity({.key = "flange", .meaning = "its thickness"}, s.flange, positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::Angle& s) {
  v.quantity({.key = "depth", .meaning = "leg along z"}, s.depth, positive(Dimension::length));
  v.quantity({.key = "width", .meaning = "leg along y"}, s.width, positive(Dimension::length));
  v.quantity({.key = "wall", .meaning = "its thickness"}, s.wall, positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::BoxedChannel& s) {
  v.quantity({.key = "depth", .meaning = "outside"}, s.depth, positive(Dimension::length));
  v.quantity({.key = "width", .meaning = "of the channel alone"}, s.width,
             positive(Dimension::length));
  v.quantity({.key = "web", .meaning = "its thickness"}, s.web, positive(Dimension::length));
  v.quantity({.key = "flange", .meaning = "its thickness"}, s.flange, positive(Dimension::length));
  v.quantity({.key = "plate", .meaning = "thickness of the closing plate"}, s.plate,
             positive(Dimension::length));
}

template <class Visitor>
void fields(Visitor& v, sections::ThinWalled& s) {
  using enum Presence;
  v.outline({"points", required, "[y, z] of each point of the walls' middle line"}, s.points);
  v.lengths({"walls", required, "thickness of all walls, or a list with that of each"}, s.walls);
  v.flag({"closed", assumed, "a last wall leads back to the first point", "open unless said"},
         s.closed);
}

template <class Visitor>
void fields(Visitor& v, sections::ByNumbers& s) {
  using enum Dimension;
  using enum Presence;
  v.quantity({.key = "area", .meaning = "of the cross section"}, s.area, positive(area));
  v.quantity({"iyy", required, "second moment for bending about y"}, s.iyy,
             positive(second_moment));
  v.quantity({"izz", required, "second moment for bending about z"}, s.izz,
             positive(second_moment));
  v.quantity({"torsion", required, "torsion constant J"}, s.torsion, positive(second_moment));
  v.quantity({"shear_y", optional, "shear area along y", "no shear give, stress V / area"},
             s.shear_y, positive(area));
  v.quantity({"shear_z", optional, "shear area along z", "no shear give, stress V / area"},
             s.shear_z, positive(area));
  v.quantity({"modulus_y", required, "section modulus for bending about y"}, s.modulus_y,
             positive(section_modulus));
  v.quantity({"modulus_z", required, "section modulus for bending about z"}, s.modulus_z,
             positive(section_modulus));
  v.quantity({"modulus_t", optional, "torsion modulus, torque over shear stress",
              "stress of torsion not known"},
             s.modulus_t, positive(section_modulus));
}

template <class Visitor>
void fields(Visitor& v, sections::Material& m) {
  using enum Dimension;
  using enum Presence;
  v.text({"description", required, "standard and grade"}, m.description);
  v.quantity({"young", required, "modulus of elasticity"}, m.elastic, positive(stress));
  v.quantity({"poisson", assumed, "Poisson's ratio", "steel"}, m.poisson,
             {.dimension = ratio, .at_least = 0.0, .at_most = 0.49});
  v.quantity({"density", required, "mass per volume"}, m.density, positive(mass_density));
  v.quantity({"yield", required, "yield strength"}, m.yield, positive(stress));
  v.quantity({"tensile", required, "tensile strength"}, m.tensile, positive(stress));
  v.quantity({"weld_zone_yield", required, "yield strength beside a weld"}, m.haz_yield,
             positive(stress));
  v.quantity({"weld_zone_tensile", required, "tensile strength beside a weld"}, m.haz_tensile,
             positive(stress));
}

}  // namespace parts
