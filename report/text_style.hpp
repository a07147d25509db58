#pragma once

#include <string>

#include "report/tone.hpp"
#include "studies/scope.hpp"

namespace report {

/// How an answer is written for a terminal.
struct TextStyle {
  bool color = false;
  bool full = false;                  ///< every finding with its worked lines, every assumption
  std::string command_for_more = {};  ///< the command that shows the full answer; empty = none
  std::string program = {};           ///< name, version and commit, at the end of a full answer
  int width = 80;                     ///< columns no line passes
};

/// The cautions that every output carries: all of them in a full answer, else in short.
[[nodiscard]] std::string caution_lines(const TextStyle& style);

/// For answers that do not tell of single findings: what they take the bolts for; may be empty.
[[nodiscard]] std::string stacks_line(const studies::Scope& scope, const TextStyle& style);

/// The first paragraph of an answer, its first words in a tone.
/// @param head  how `sentence` starts; fits a line
[[nodiscard]] std::string opening(const std::string& head, Tone tone, const std::string& sentence,
                                  const TextStyle& style);

/// A heading of a full answer, after an empty line.
[[nodiscard]] std::string heading(const std::string& words, const TextStyle& style);

}  // namespace report
