#include "cases/shape_words.hpp"

namespace cases {

const std::vector<std::string>& shape_words() {
  static const std::vector<std::string> kWords = {
      "round_bar", "round_tube", "rectangular_tube", "flat_bar",   "twin_plate", "by_numbers",
      "channel",   "angle",      "boxed_channel",    "thin_walled"};
  return kWords;
}

std::optional<sections::Shape> shape_of_word(std::string_view word) {
  const std::vector<sections::Shape> kinds = {sections::RoundBar{},        sections::RoundTube{},
                                              sections::RectangularTube{}, sections::FlatBar{},
                                              sections::TwinPlate{},       sections::ByNumbers{},
                                              sections::Channel{},         sections::Angle{},
                                              sections::BoxedChannel{},    sections::ThinWalled{}};
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (shape_words()[i] == word) return kinds[i];
  }
  return std::nullopt;
}

}  // namespace cases
