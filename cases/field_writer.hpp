#pragma once

#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "parts/field.hpp"

namespace cases {

/// A scalar as YAML reads it back, quoted where plain text would not.
[[nodiscard]] std::string yaml_text(std::string_view text);

/// Writes the fields of one part as `key: value` lines: a visitor for `fields(visitor, part)`.
/// Numbers that are unset and names that are empty are left out.
class FieldWriter {
 public:
  FieldWriter(const parts::Design& names, int indent) : names_(names), indent_(indent) {}

  void quantity(const parts::FieldInfo& info, double& value, const parts::Quantity& limits) {
    if (std::isnan(value)) {
      if (limits.may_be_unsure) line(info.key, "not sure");
      return;
    }
    line(info.key, yaml_text(write_quantity(value, limits.dimension, names_.inches)));
  }
  void flag(const parts::FieldInfo& info, bool& value) { line(info.key, value ? "yes" : "no"); }
  void text(const parts::FieldInfo& info, std::string& value) {
    if (!value.empty()) line(info.key, yaml_text(value));
  }
  void point(const parts::FieldInfo& info, std::string& value) { text(info, value); }
  void points(const parts::FieldInfo& info, std::vector<std::string>& value);

  template <class T>
  void phrase(const parts::FieldInfo& info, T& value) {
    if (is_set(value)) line(info.key, yaml_text(write_phrase(value, names_)));
  }
  template <class Enum, std::size_t N>
  void choice(const parts::FieldInfo& info, Enum& value,
              const std::array<parts::Word<Enum>, N>& words) {
    for (const parts::Word<Enum>& word : words) {
      if (word.value == value) line(info.key, yaml_text(word.word));
    }
  }

  [[nodiscard]] const std::string& lines() const { return lines_; }

 private:
  template <class T>
  static bool is_set(const T&) {
    return true;
  }
  static bool is_set(const parts::Stick& stick) { return stick.material.yield > 0.0; }
  void line(std::string_view key, const std::string& value);

  const parts::Design& names_;
  int indent_;
  std::string lines_;
};

}  // namespace cases
