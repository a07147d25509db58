#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/design.hpp"

/// Short phrases in shop words. Capitals and extra spaces do not matter; in a list of sizes the
/// last unit serves those before it. Every error says what was found and gives what would do.
namespace cases {

/// A phrase that was read, and what it left to us: keys below the phrase's own, such as "steel".
template <class T>
struct Phrase {
  T value;
  std::vector<parts::Assumption> assumed = {};
};

/// @param names  its materials, sections and joints may be named
/// @throws base::InputError without a key
template <class T>
[[nodiscard]] Phrase<T> read_phrase(std::string_view text, const parts::Design& names);

/// "1-1/2 x 0.250 in DOM", "1-1/2 in solid bar" (1018 cold drawn unless a steel is named),
/// "2 x 3 x 0.125 in A500C_rect" (depth x width x wall), "2 x 1/4 in flat bar A36",
/// "4 x 2 x 1/4 in channel A36" (depth x width x thickness), "6 x 3 x 3/16 in channel boxed with
/// 1/4 in plate A36", "2 x 2 x 1/4 in angle A36" (leg along z, leg along y, thickness), or a
/// section's name and a steel: "my_section A36".
template <>
Phrase<parts::Stick> read_phrase(std::string_view text, const parts::Design& names);

/// "80 x 8 mm S355H", or from the left arm to the right one "80 x 8 mm S355H to 250 mm, then
/// 140 x 12 mm S355H to 50 mm, then 80 x 8 mm S355H": where each ends, left of the truck's middle
/// +.
template <>
Phrase<parts::Housing> read_phrase(std::string_view text, const parts::Design& names);

/// "2 of 5/16 in mild steel", "folded from 1/4 in mild steel, 3/8 in inside radius".
template <>
Phrase<parts::Plates> read_phrase(std::string_view text, const parts::Design& names);

/// "A36".
template <>
Phrase<parts::Steel> read_phrase(std::string_view text, const parts::Design& names);

/// "1/4 in fillet, both sides of each plate".
template <>
Phrase<parts::FilletWeld> read_phrase(std::string_view text, const parts::Design& names);

/// "boxed, 3 x 6 x 3/16 in, 1/4 in frame plate": width x height x wall.
template <>
Phrase<parts::Rail> read_phrase(std::string_view text, const parts::Design& names);

/// "bottom and inner side", "bottom and both sides".
template <>
Phrase<parts::RailFaces> read_phrase(std::string_view text, const parts::Design& names);

/// "weld-on bushing", "weld-on hard bushing", "weld-on ball joint", "weld-on pin", "weld-on" and a
/// joint's name, "threaded rod end" (its insert is welded in), "tapped rod end" (screwed into a
/// bar; nothing is welded), "clamped bushing". The bolt is along x unless "along y" is said.
template <>
Phrase<parts::LinkEnds> read_phrase(std::string_view text, const parts::Design& names);

/// "5/8 in grade 8", "5/8-18 grade 8, double shear", "M16 class 10.9, single shear, threads out of
/// the shear plane, loose stack", "..., held by friction". Coarse thread, double shear, threads in
/// the plane and a clamped stack unless it is said.
template <>
Phrase<parts::BoltSpec> read_phrase(std::string_view text, const parts::Design& names);

/// "2 of 1/4 in mild steel, edge 1 in, height 2 in, 1/4 in fillet both sides": edge and height from
/// the bolt's center. Also "width 3 in" at the weld, "off 1 in" of a single tab, "side force 0 %".
template <>
Phrase<parts::TabSpec> read_phrase(std::string_view text, const parts::Design& names);

/// "3/4-16, 1-1/8 in engaged, 1 in out, 60 ksi shank".
template <>
Phrase<parts::ThreadSpec> read_phrase(std::string_view text, const parts::Design& names);

/// "3/16 in fillet", "3/16 in fillet, fishmouth on 2 in", "4 rosettes of 1/2 in".
template <>
Phrase<parts::EndWeldSpec> read_phrase(std::string_view text, const parts::Design& names);

/// "none", "2 in off straight" (upward), "2 in off straight, forward".
template <>
Phrase<parts::Bend> read_phrase(std::string_view text, const parts::Design& names);

/// "at the bolt", "2 in above the bolt".
template <>
Phrase<parts::BraceAt> read_phrase(std::string_view text, const parts::Design& names);

/// "welded", "ball joint", "rod end", "pin along y", "rubber bushing", "hard bushing along y", or a
/// joint's name.
template <>
Phrase<parts::JointSpec> read_phrase(std::string_view text, const parts::Design& names);

/// "all", "x y z", "x z rx".
template <>
Phrase<parts::Held> read_phrase(std::string_view text, const parts::Design& names);

/// "none", "ry rz".
template <>
Phrase<parts::Freed> read_phrase(std::string_view text, const parts::Design& names);

/// "up", "x", "point mast", "0, 0.6, 0.8".
template <>
Phrase<parts::Toward> read_phrase(std::string_view text, const parts::Design& names);

/// "x ry -40 kN, y rx 40 kN": two freedoms and what links them.
template <>
Phrase<parts::Coupling> read_phrase(std::string_view text, const parts::Design& names);

/// The phrase that reads back to an equal part, in the units of `names`.
[[nodiscard]] std::string write_phrase(const parts::Stick& stick, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Housing& housing, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Plates& plates, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Steel& steel, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::FilletWeld& weld, const parts::Design& names);
/// Its size and kind alone: "1/4 in fillet", "4 mm groove".
[[nodiscard]] std::string weld_size_words(const parts::FilletWeld& weld,
                                          const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Rail& rail, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::RailFaces& faces, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::LinkEnds& ends, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::BoltSpec& bolt, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::TabSpec& tabs, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::ThreadSpec& thread, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::EndWeldSpec& weld, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Bend& bend, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::BraceAt& at, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::JointSpec& joint, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Held& held, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Freed& freed, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Toward& toward, const parts::Design& names);
[[nodiscard]] std::string write_phrase(const parts::Coupling& coupled, const parts::Design& names);

/// A phrase that would do, for messages.
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Stick&) {
  return "1-1/2 x 0.250 in DOM";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Housing&) {
  return "3 x 0.250 in DOM to 10 in, then 5 x 0.500 in DOM to 2 in, then 3 x 0.250 in DOM";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Plates&) {
  return "2 of 5/16 in mild steel";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Steel&) {
  return "A36";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::FilletWeld&) {
  return "1/4 in fillet, both sides of each plate";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Rail&) {
  return "boxed, 3 x 6 x 3/16 in, 1/4 in frame plate";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::RailFaces&) {
  return "bottom and inner side";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::LinkEnds&) {
  return "weld-on bushing";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::BoltSpec&) {
  return "5/8 in grade 8";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::TabSpec&) {
  return "2 of 1/4 in mild steel, edge 1 in, height 2 in, 1/4 in fillet both sides";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::ThreadSpec&) {
  return "3/4-16, 1-1/8 in engaged, 1 in out, 60 ksi shank";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::EndWeldSpec&) {
  return "3/16 in fillet";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Bend&) {
  return "2 in off straight";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::BraceAt&) {
  return "at the bolt";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::JointSpec&) {
  return "rubber bushing along y";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Held&) {
  return "x y z";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Freed&) {
  return "ry rz";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Toward&) {
  return "x";
}
[[nodiscard]] constexpr std::string_view example_phrase(const parts::Coupling&) {
  return "x ry -40 kN";
}

}  // namespace cases
