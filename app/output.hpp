#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/request.hpp"
#include "report/csv.hpp"

namespace app {

/// A file to write.
struct OutputFile {
  std::string path;
  std::string content;
};

/// What a command has to say, composed in full before any of it is written.
struct Output {
  std::string text = {};                  ///< to standard output
  std::string messages = {};              ///< to standard error
  std::vector<std::string> folders = {};  ///< made before the files, where there are none
  std::vector<OutputFile> files = {};
  std::string text_once_written = {};  ///< after `text`, when all of the files were written
  int status = 0;
};

/// Adds tables for a spreadsheet in a folder; nothing for an empty one.
void add_tables(Output& out, const std::string& folder, std::vector<report::CsvFile> tables);

/// An answer in the forms that were asked for: text, JSON in a file beside it, or JSON alone. Only
/// those are composed.
[[nodiscard]] Output answer_output(const AnswerOptions& options,
                                   const std::function<std::string()>& text,
                                   const std::function<std::string()>& json, int status);

/// Writes everything. A file is there whole or stays as it was. The exit status is the output's, or
/// 2 with a message when something could not be written (a full disk, a closed pipe).
[[nodiscard]] int write_out(const Output& output);

}  // namespace app
