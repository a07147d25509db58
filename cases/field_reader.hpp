#pragma once

#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/reading_context.hpp"
#include "cases/tire_size.hpp"
#include "cases/words.hpp"
#include "parts/field.hpp"

namespace cases {

/// Reads the fields of one part from one mapping: a visitor for parts' `fields(visitor, part)`.
/// Problems go to the context; call finish() after the visit to hear of unknown keys.
class FieldReader {
 public:
  enum class Mode {
    whole,  ///< a part of a case file: missing keys are problems or assumptions
    patch,  ///< only the keys that are given change anything
  };

  FieldReader(ReadingContext& context, const Value& mapping, const Place& place, std::string path,
              Mode mode = Mode::whole);

  void quantity(const parts::FieldInfo& info, double& value, const parts::Quantity& limits);
  void vector(const parts::FieldInfo& info, std::array<double, 3>& value,
              parts::Dimension dimension);
  void flag(const parts::FieldInfo& info, bool& value);
  void text(const parts::FieldInfo& info, std::string& value);
  void point(const parts::FieldInfo& info, std::string& value);
  void points(const parts::FieldInfo& info, std::vector<std::string>& value);
  void outline(const parts::FieldInfo& info, std::vector<std::array<double, 2>>& value);
  /// One length, or a list of them.
  void take_tire(const parts::FieldInfo& info, const std::string& found, const TireSize& tire,
                 double& value);
  void lengths(const parts::FieldInfo& info, std::vector<double>& value);

  template <class T>
  void phrase(const parts::FieldInfo& info, T& value) {
    const Entry* entry = take(info, std::string(example_phrase(value)));
    if (entry == nullptr) {
      if (assumes(info)) {
        context_.assume(path_of(info.key), write_phrase(value, context_.design), info.basis);
      }
      return;
    }
    read_scalar(*entry, info, [&](const std::string& found) {
      if (mode_ == Mode::whole && unsets(info, found)) return;
      Phrase<T> phrase = read_phrase<T>(found, context_.design);
      keep_axis(found, value, phrase.value);
      value = std::move(phrase.value);
      for (const parts::Assumption& assumption : phrase.assumed) {
        context_.assume(path_of(info.key) + "." + assumption.key, assumption.value,
                        assumption.basis);
      }
    });
  }

  template <class Enum, std::size_t N>
  void choice(const parts::FieldInfo& info, Enum& value,
              const std::array<parts::Word<Enum>, N>& words) {
    std::vector<std::string> known;
    for (const parts::Word<Enum>& word : words) known.emplace_back(word.word);
    const Entry* entry = take(info, known.front());
    if (entry == nullptr) {
      for (const parts::Word<Enum>& word : words) {
        if (word.value == value && assumes(info)) {
          context_.assume(path_of(info.key), std::string(word.word), info.basis);
        }
      }
      return;
    }
    read_scalar(*entry, info, [&](const std::string& found) {
      for (const parts::Word<Enum>& word : words) {
        if (same_words(found, word.word)) {
          value = word.value;
          return;
        }
      }
      refuse_word(found, known);
    });
  }

  /// Reports every key that no field took.
  void finish();

 private:
  /// The entry of a field, if it is there and has a value; a missing required one is a problem.
  const Entry* take(const parts::FieldInfo& info, const std::string& example);
  [[nodiscard]] bool assumes(const parts::FieldInfo& info) const;
  /// `none`, where the key may be left out.
  [[nodiscard]] bool unsets(const parts::FieldInfo& info, std::string_view found) const;
  [[nodiscard]] std::string path_of(std::string_view key) const;
  [[noreturn]] static void refuse_word(const std::string& found,
                                       const std::vector<std::string>& known);
  void require_point(const std::string& name) const;

  /// Runs `read` on the text of a scalar, and places what it throws.
  template <class Read>
  void read_scalar(const Entry& entry, const parts::FieldInfo& info, const Read& read) {
    if (entry.value.kind != Value::Kind::scalar) {
      context_.problem(entry.value.place, path_of(info.key), "a single value is needed here");
      return;
    }
    try {
      read(entry.value.text);
    } catch (const base::InputError& error) {
      context_.problem(entry.value.place, path_of(info.key), error.problem());
    }
  }

  /// A joint whose axis is not said keeps the one that is usual for its part.
  template <class T>
  static void keep_axis(const std::string&, const T&, T&) {}
  static void keep_axis(const std::string& found, const parts::JointSpec& usual,
                        parts::JointSpec& read);

  ReadingContext& context_;
  const Value& mapping_;
  Place place_;
  std::string path_;
  Mode mode_;
  std::vector<std::string> known_;
  std::vector<std::string> taken_;
  std::vector<std::pair<std::string, std::string>> missing_;  ///< key and what to say of it
};

}  // namespace cases
