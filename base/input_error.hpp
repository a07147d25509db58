#pragma once

#include <stdexcept>
#include <string>
#include <utility>

namespace base {

/// Where in the user's text a value stands. Lines and columns count from 1; 0 = not known.
struct Where {
  std::string file;
  int line = 0;
  int column = 0;
  std::string key;  ///< path of keys, "bracket.plates"
};

/// "file:line:column: key: problem", leaving out what is not known.
[[nodiscard]] inline std::string input_message(const Where& where, const std::string& problem) {
  std::string text;
  if (!where.file.empty()) {
    text += where.file + ":";
    if (where.line > 0) {
      text += std::to_string(where.line) + ":" + std::to_string(where.column) + ":";
    }
    text += " ";
  }
  if (!where.key.empty()) text += where.key + ": ";
  return text + problem;
}

/// What the user gave cannot be used: the only exception type the project throws.
/// Thrown where the rule lives, with the key it is about; the reader adds the place.
class InputError : public std::runtime_error {
 public:
  InputError(std::string key, std::string problem)
      : InputError(Where{{}, 0, 0, std::move(key)}, std::move(problem)) {}
  InputError(Where where, std::string problem)
      : std::runtime_error(input_message(where, problem)),
        where_(std::move(where)),
        problem_(std::move(problem)) {}

  /// The same problem, at a place in the user's text.
  [[nodiscard]] InputError at(const Where& where) const { return {where, problem_}; }
  [[nodiscard]] const Where& where() const noexcept { return where_; }
  [[nodiscard]] const std::string& problem() const noexcept { return problem_; }

 private:
  Where where_;
  std::string problem_;
};

}  // namespace base
