#pragma once

#include <string>

#include "base/input_error.hpp"
#include "cases/reader.hpp"

/// Case files for the tests, invented, and the problems that a change brings.
namespace case_texts {

/// A lateral link with a braced bracket. Lines: 2 vehicle, 6 lateral_link, 10 bracket, 17 brace.
inline const std::string kLink =
    "title: invented\n"
    "vehicle:\n"
    "  axle_weight: 5500 lb\n"
    "  tire: 37 in\n"
    "  track: 66 in\n"
    "lateral_link:\n"
    "  bolt_to_bolt: 34 in\n"
    "  rise: 4 in\n"
    "  tube: 1-1/2 x 0.250 in DOM\n"
    "bracket:\n"
    "  drop: 9 in\n"
    "  plates: 2 of 5/16 in mild steel\n"
    "  depth_at_rail: 5 in\n"
    "  weld: 1/4 in fillet, both sides of each plate\n"
    "  rail: boxed, 3 x 6 x 3/16 in, 1/4 in frame plate\n"
    "  welded_to: bottom and inner side\n"
    "brace:\n"
    "  tube: 1-1/2 x 0.120 in DOM\n"
    "  length: 34 in\n"
    "  slope: 15 deg\n"
    "  far_end: welded to opposite rail\n";

/// A cantilever. Lines: 2 points, 5 members, 10 supports, 13 forces.
inline const std::string kCantilever =
    "title: invented\n"
    "points:\n"
    "  wall: [0, 0, 0 in]\n"
    "  tip: [0, 10, 0 in]\n"
    "members:\n"
    "  bar:\n"
    "    from: wall\n"
    "    to: tip\n"
    "    section: 1 in round bar A36\n"
    "supports:\n"
    "  held:\n"
    "    at: wall\n"
    "forces:\n"
    "  load:\n"
    "    at: tip\n"
    "    force_z: -100 lb\n";

/// A text with one piece replaced; the piece must be there.
inline std::string with(std::string text, const std::string& piece, const std::string& instead) {
  const std::size_t at = text.find(piece);
  if (at == std::string::npos) throw std::logic_error("no `" + piece + "` in the case");
  return text.replace(at, piece.size(), instead);
}

/// Every problem of a case file as it is shown, one a line.
inline std::string problems(const std::string& text) {
  std::string all;
  for (const base::InputError& problem : cases::read(text, "case.yaml").problems) {
    if (!all.empty()) all += "\n";
    all += problem.what();
  }
  return all;
}

/// The design of a case file without problems.
inline parts::Design design(const std::string& text) {
  const cases::Reading reading = cases::read(text, "case.yaml");
  if (!reading.design) throw std::logic_error(problems(text));
  return *reading.design;
}

/// What a call throws, as it is shown; "nothing" when it does not.
template <class Call>
std::string thrown(const Call& call) {
  try {
    call();
  } catch (const base::InputError& error) {
    return error.what();
  }
  return "nothing";
}

}  // namespace case_texts
