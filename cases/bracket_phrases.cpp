#include <algorithm>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/phrase.hpp"
#include "cases/sizes.hpp"
#include "cases/steel.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::FilletWeld;
using parts::Plates;
using parts::Rail;
using parts::RailFaces;

template <class T>
[[noreturn]] void refuse(std::string_view text, std::string_view why) {
  throw InputError("",
                   fmt::format("{} {}; e.g. {}", quoted(text), why, quoted(example_phrase(T{}))));
}

int count_of(std::string_view text) {
  const std::vector<std::string> words = words_of(lower(text));
  if (words.size() < 3 || words[1] != "of") {
    refuse<Plates>(text, "does not say how many plates of which thickness");
  }
  if (words[0] == "1" || words[0] == "one") return 1;
  if (words[0] == "2" || words[0] == "two") return 2;
  refuse<Plates>(text, "is not 1 or 2 plates");
}

constexpr const char* kFoldedExample = "folded from 1/4 in mild steel, 3/8 in inside radius";

/// "folded from 1/4 in mild steel, 3/8 in inside radius".
Phrase<Plates> folded_plates(const std::string& text, const parts::Design& names) {
  const std::vector<std::string> pieces = split(text.substr(text.find(' ') + 6), ",");
  const Sizes wall = read_sizes(pieces[0], kFoldedExample);
  const Sizes radius = read_sizes(pieces.size() == 2 ? pieces[1] : "", kFoldedExample);
  if (wall.si.size() != 1 || wall.rest.empty() || radius.si.size() != 1 ||
      lower(radius.rest) != "inside radius") {
    throw InputError("", fmt::format("{} does not give the thickness, its steel and the inside "
                                     "radius; e.g. `{}`",
                                     quoted(text), kFoldedExample));
  }
  const FormAndSteel words = form_and_steel(wall.rest, names);
  if (!words.form.empty() && words.form != "plate") refuse<Plates>(text, "is no plate");
  Plates plates{.count = 2, .thickness = wall.si[0], .fold_radius = radius.si[0], .material = {}};
  plates.material = known_steel(words.steel, names);
  return {plates, condition_assumed(words.steel, names)};
}

void require_rail(const Sizes& sizes, bool boxed, std::string_view text) {
  if (sizes.si.size() != 3) {
    refuse<Rail>(text, "does not give width x height x wall of the rail");
  }
  const double smaller = std::min(sizes.si[0], sizes.si[1]);
  const bool fits = boxed ? sizes.si[2] < 0.5 * smaller : sizes.si[2] < smaller;
  if (!fits) {
    refuse<Rail>(text, fmt::format("has a wall of {}, too thick for a rail of {} x {}",
                                   sizes.found[2], sizes.found[0], sizes.found[1]));
  }
}

double read_frame_plate(std::string_view piece, std::string_view text) {
  if (lower(piece) == "no frame plate") return 0.0;
  const Sizes plate = read_sizes(piece, example_phrase(Rail{}));
  if (plate.si.size() == 1 && lower(plate.rest) == "frame plate") return plate.si[0];
  refuse<Rail>(text, fmt::format("ends with {}, which is no frame plate", quoted(piece)));
}

/// Adds the face, or both sides, that one piece of the phrase names.
RailFaces with_face(RailFaces faces, std::string_view piece, std::string_view text) {
  std::string name =
      piece.substr(0, 4) == "the " ? std::string(piece.substr(4)) : std::string(piece);
  if (name == "bottom") {
    faces.bottom = true;
  } else if (name == "inner side" || name == "inside") {
    faces.inner_side = true;
  } else if (name == "outer side" || name == "outside") {
    faces.outer_side = true;
  } else if (name == "both sides") {
    faces.inner_side = faces.outer_side = true;
  } else {
    refuse<RailFaces>(text,
                      "names no faces of the rail (bottom, inner side, outer side, both "
                      "sides)");
  }
  return faces;
}

}  // namespace

template <>
Phrase<Plates> read_phrase(std::string_view raw, const parts::Design& names) {
  const std::string text = squeeze(raw);
  if (lower(text).rfind("folded from ", 0) == 0) return folded_plates(text, names);
  Plates plates;
  plates.count = count_of(text);
  const std::size_t of = lower(text).find(" of ");
  const Sizes sizes = read_sizes(text.substr(of + 4), example_phrase(plates));
  if (sizes.si.size() != 1) refuse<Plates>(text, "does not give one thickness");
  plates.thickness = sizes.si[0];
  if (sizes.rest.empty()) refuse<Plates>(text, "does not name its steel");
  const FormAndSteel words = form_and_steel(sizes.rest, names);
  if (!words.form.empty() && words.form != "plate") {
    refuse<Plates>(text, "is no plate");
  }
  plates.material = known_steel(words.steel, names);
  return {plates, condition_assumed(words.steel, names)};
}

template <>
Phrase<parts::Steel> read_phrase(std::string_view raw, const parts::Design& names) {
  const std::string name = squeeze(raw);
  return {{known_steel(name, names)}, condition_assumed(name, names)};
}

template <>
Phrase<FilletWeld> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = squeeze(raw);
  FilletWeld weld;
  const Sizes sizes = read_sizes(text, example_phrase(weld));
  std::string rest = lower(sizes.rest);
  std::replace(rest.begin(), rest.end(), ',', ' ');
  rest = squeeze(rest);
  const bool groove = rest.rfind("groove", 0) == 0;
  if (sizes.si.size() != 1 || !(groove || rest.rfind("fillet", 0) == 0)) {
    refuse<FilletWeld>(text, "is not the leg of a fillet or the throat of a groove");
  }
  (groove ? weld.groove : weld.leg) = sizes.si[0];
  std::string sides = squeeze(rest.substr(6));
  const std::string by_direction = "directional strength";
  const std::size_t said = sides.find(by_direction);
  if (said != std::string::npos) {
    if (groove) refuse<FilletWeld>(text, "asks for directional strength, which is a fillet's");
    weld.directional = true;
    sides = squeeze(sides.erase(said, by_direction.size()));
  } else if (sides.find("directional") != std::string::npos) {
    refuse<FilletWeld>(text, "says `directional` alone; write `directional strength`");
  }
  if (sides == "both sides" || sides == "both sides of each plate") {
    weld.both_sides = true;
  } else if (sides == "one side" || sides == "one side of each plate") {
    weld.both_sides = false;
  } else {
    refuse<FilletWeld>(text, "does not say `both sides` or `one side` of each plate");
  }
  return {weld};
}

template <>
Phrase<Rail> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = squeeze(raw);
  const std::vector<std::string> pieces = split(text, ",");
  const std::string kind = lower(pieces[0]);
  if (kind != "boxed" && kind != "open") refuse<Rail>(text, "does not start with boxed or open");
  if (pieces.size() < 2 || pieces.size() > 3) {
    refuse<Rail>(text, "is not boxed or open, sizes, and a frame plate if there is one");
  }
  Rail rail;
  rail.boxed = kind == "boxed";
  const Sizes sizes = read_sizes(pieces[1], example_phrase(rail));
  require_rail(sizes, rail.boxed, text);
  if (!sizes.rest.empty()) refuse<Rail>(text, "has " + quoted(sizes.rest) + " after its sizes");
  rail.width = sizes.si[0];
  rail.height = sizes.si[1];
  rail.wall = sizes.si[2];
  if (pieces.size() == 3) rail.frame_plate = read_frame_plate(pieces[2], text);
  return {rail};
}

template <>
Phrase<RailFaces> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = squeeze(raw);
  RailFaces faces{.bottom = false, .inner_side = false, .outer_side = false};
  for (const std::string& piece : split(lower(text), ",")) {
    for (const std::string& face : split(piece, " and ")) faces = with_face(faces, face, text);
  }
  return {faces};
}

std::string write_phrase(const Plates& plates, const parts::Design& names) {
  if (plates.folded()) {
    return fmt::format("folded from {} {}, {} inside radius",
                       write_sizes({plates.thickness}, names.inches), plates.material.id,
                       write_sizes({plates.fold_radius}, names.inches));
  }
  return fmt::format("{} of {} {}", plates.count, write_sizes({plates.thickness}, names.inches),
                     plates.material.id);
}

std::string write_phrase(const parts::Steel& steel, const parts::Design&) {
  return steel.material.id;
}

std::string weld_size_words(const FilletWeld& weld, const parts::Design& names) {
  return weld.groove > 0.0 ? write_sizes({weld.groove}, names.inches) + " groove"
                           : write_sizes({weld.leg}, names.inches) + " fillet";
}

std::string write_phrase(const FilletWeld& weld, const parts::Design& names) {
  return weld_size_words(weld, names) + ", " + (weld.both_sides ? "both sides" : "one side") +
         " of each plate" + (weld.directional ? ", directional strength" : "");
}

std::string write_phrase(const Rail& rail, const parts::Design& names) {
  std::string text = std::string(rail.boxed ? "boxed" : "open") + ", " +
                     write_sizes({rail.width, rail.height, rail.wall}, names.inches);
  if (rail.frame_plate > 0.0) {
    text += ", " + write_sizes({rail.frame_plate}, names.inches) + " frame plate";
  }
  return text;
}

std::string write_phrase(const RailFaces& faces, const parts::Design&) {
  std::vector<std::string> named;
  if (faces.bottom) named.emplace_back("bottom");
  if (faces.inner_side && faces.outer_side) {
    named.emplace_back("both sides");
  } else if (faces.inner_side) {
    named.emplace_back("inner side");
  } else if (faces.outer_side) {
    named.emplace_back("outer side");
  }
  return join(named, " and ");
}

}  // namespace cases
