#pragma once

#include <string>

#include "report/text_style.hpp"
#include "studies/answer.hpp"

namespace report {

/// "120,000 km at damage 1" or "no damage".
[[nodiscard]] std::string life_words(const studies::LifeAtPlace& place, bool inches);

/// "12,000-110,000 km": the band of the shortest life.
[[nodiscard]] std::string life_band_words(const studies::Life& life, bool inches);

/// "fatigue, indicative only: 12,000-110,000 km, first bracket".
[[nodiscard]] std::string life_sentence(const studies::Life& life, bool inches);

/// The three places that go first with their worked lines, the band, and what is not in it.
[[nodiscard]] std::string life_section(const studies::Life& life, bool inches,
                                       const TextStyle& style);

}  // namespace report
