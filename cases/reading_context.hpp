#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/input_error.hpp"
#include "cases/document.hpp"
#include "parts/design.hpp"

namespace cases {

/// Where the keys of a case file stand, so that a problem found later can name its line.
class Places {
 public:
  void add(const std::string& path, const Place& place) { places_.emplace(path, place); }
  /// The place of a key path, or of the nearest path above it; line 0 when there is none.
  [[nodiscard]] Place find(std::string path) const;

 private:
  std::map<std::string, Place> places_;
};

/// What one reading gathers.
class ReadingContext {
 public:
  explicit ReadingContext(std::string file) : file_(std::move(file)) {}

  parts::Design design;
  std::vector<base::InputError> problems;
  Places places;

  void problem(const Place& place, const std::string& key, const std::string& what);
  void assume(const std::string& key, const std::string& value, std::string_view basis);
  /// Notes once that a weight given in a unit of mass is read as a force.
  void note_weight(const std::string& unit);

 private:
  std::string file_;
  bool weight_noted_ = false;
};

}  // namespace cases
