#include "cases/three_numbers.hpp"

#include <optional>

#include "base/input_error.hpp"
#include "cases/number.hpp"
#include "cases/words.hpp"

namespace cases {

std::vector<Measured> read_with_shared_unit(const std::vector<std::string>& texts,
                                            parts::Dimension dimension) {
  std::vector<Measured> all(texts.size());
  std::string unit;
  for (std::size_t i = texts.size(); i-- > 0;) {
    std::string text = squeeze(texts[i]);
    const std::optional<NumberStart> number = number_at_start(text);
    if (number && number->length < text.size()) unit = text.substr(number->length);
    if (number && number->length == text.size()) text += unit;
    all[i] = read_quantity(text, dimension);
  }
  return all;
}

ThreeNumbers read_three(const Value& list, parts::Dimension dimension, const std::string& wanted) {
  if (list.kind != Value::Kind::list || list.items.size() != 3) {
    throw base::InputError("", wanted);
  }
  std::vector<std::string> texts;
  for (const Value& item : list.items) texts.push_back(item.text);
  const std::vector<Measured> read = read_with_shared_unit(texts, dimension);
  ThreeNumbers out;
  for (std::size_t i = 3; i-- > 0;) {
    out.si[i] = read[i].si;
    if (!read[i].weight_unit.empty()) out.weight_unit = read[i].weight_unit;
  }
  return out;
}

}  // namespace cases
