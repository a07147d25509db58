#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/input_error.hpp"

namespace cases {

/// A place in a text, counted from 1; columns count characters.
struct Place {
  int line = 0;
  int column = 0;
};

struct Entry;

/// A value of a YAML document.
struct Value {
  enum class Kind { empty, scalar, list, mapping };
  Kind kind = Kind::empty;
  Place place = {};               ///< of its first character; of its key when it is empty
  std::string text = {};          ///< of a scalar
  std::vector<Value> items = {};  ///< of a list
  std::vector<Entry> entries;     ///< of a mapping, in the order of the text
  [[nodiscard]] const Entry* find(std::string_view key) const;
};

struct Entry {
  std::string key;
  Place place;  ///< of the key
  Value value;
};

/// A value without items or entries.
[[nodiscard]] Value bare_value(Value::Kind kind, const Place& place = {}, std::string text = {});

struct Document {
  Value root;                              ///< a mapping
  std::vector<base::InputError> problems;  ///< keys that are given twice; the first one is kept
};

/// Reads one YAML document.
/// @throws base::InputError with line and column (no file): the text is no plain UTF-8 text, empty,
///         over 1 MB, no YAML, nested over 30 deep, several documents, no mapping at the top, or it
///         uses anchors, aliases or tags
[[nodiscard]] Document read_document(std::string_view text);

}  // namespace cases
