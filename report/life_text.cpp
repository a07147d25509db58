#include "report/life_text.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::LifeAtPlace;

constexpr double kMile = 1609.344;  // [m]
// Farther than any truck goes: what is beyond is not told apart.
constexpr double kFarthest = 1.0e10;  // [m]

std::string distance_words(double distance, bool inches) {
  return number(distance / (inches ? kMile : 1000.0), 2);
}

const char* distance_unit(bool inches) {
  return inches ? "miles" : "km";
}

/// "12,000-110,000 km".
std::string band_words(const studies::Range& band, bool inches) {
  if (!(band.low < kFarthest)) {
    return fmt::format("over {} {}", distance_words(kFarthest, inches), distance_unit(inches));
  }
  if (!(band.high < kFarthest)) {
    return fmt::format("{} {} or more", distance_words(band.low, inches), distance_unit(inches));
  }
  return fmt::format("{}-{} {}", distance_words(band.low, inches),
                     distance_words(band.high, inches), distance_unit(inches));
}

std::string place_text(const LifeAtPlace& place, bool inches, const TextStyle& style) {
  std::string out = paragraph(
      fmt::format("{}: {}: {}", part_words(place.part), place.where, life_words(place, inches)),
      style.width, 2, 2);
  out +=
      paragraph(fmt::format("{}, category {}; {}", place.detail,
                            shown(place.category, checks::Measure::stress, inches), place.stress),
                style.width, 4, 2);
  if (!place.set.empty()) out += paragraph("in " + place.set, style.width, 4, 2);
  for (const checks::WorkedLine& line : place.lines) {
    out +=
        paragraph(fmt::format("{}: {}", line.symbols, numbers_of(line, inches)), style.width, 6, 2);
  }
  return out + paragraph("source: " + place.source, style.width, 4, 2);
}

}  // namespace

std::string life_words(const LifeAtPlace& place, bool inches) {
  if (std::isinf(place.distance)) return "no damage";
  return fmt::format("{} {} at damage {:g}", distance_words(place.distance, inches),
                     distance_unit(inches), place.damage_limit);
}

std::string life_band_words(const studies::Life& life, bool inches) {
  return band_words(life.band(), inches);
}

std::string life_sentence(const studies::Life& life, bool inches) {
  if (life.places.empty()) return "";
  return fmt::format("fatigue, indicative only: {}, first {}", life_band_words(life, inches),
                     part_words(life.places.front().part));
}

std::string life_section(const studies::Life& life, bool inches, const TextStyle& style) {
  constexpr std::size_t kMost = 3;
  if (life.places.empty()) return "";
  std::string out = heading("Fatigue, indicative only: no verdict rests on it", style);
  out += paragraph(
      fmt::format("{}: a third and three times of the shortest life (proposal, no source)",
                  band_words(life.band(), inches)),
      style.width, 2, 2);
  out += paragraph("duty: " + life.duty_basis, style.width, 2, 2);
  out += paragraph(
      "n: cycles in 100,000 km; nominal stress ranges between the load cases, pushed or pulled "
      "counting alike; Miner's sum, up to 0.5 where sizes are mixed (IIW Recommendations, from "
      "memory), in place of gamma_Mf of EN 1993-1-9: its 1.35 would leave 0.45 (slope 5) to 0.8 "
      "(slope 3) of these distances (from memory); toe and root of each weld apart; corrosion "
      "shortens it",
      style.width, 2, 2);
  for (std::size_t i = 0; i < std::min(kMost, life.places.size()); ++i) {
    out += place_text(life.places[i], inches, style);
  }
  if (life.places.size() > kMost) {
    out += fmt::format("  and {} more places that go farther\n", life.places.size() - kMost);
  }
  if (!life.left_out.empty()) {
    out +=
        paragraph("left out, as their load cases were not solved: " + joined(life.left_out, "; "),
                  style.width, 2, 2);
  }
  out += paragraph("not in it: " + joined(life.without_category, "; "), style.width, 2, 2);
  return out;
}

}  // namespace report
