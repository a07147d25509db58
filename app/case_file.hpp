#pragma once

#include <functional>
#include <string>

#include "app/output.hpp"
#include "cases/reader.hpp"

namespace app {

/// All of a file of the user's.
/// @throws base::InputError when it cannot be opened or read, or is over 16 MB
[[nodiscard]] std::string file_text(const std::string& path);

/// Reads the case and hands its design on. A case that cannot be used ends here, with each problem
/// on a line of its own: "file:line:column: key: problem".
/// @param path  "-" = standard input
/// @param run   may throw base::InputError with a key of the case, which is then located in it
[[nodiscard]] Output with_case(const std::string& path,
                               const std::function<Output(const parts::Design&)>& run);

/// The design, to be shown in other units than those of its case file.
/// @param units  "in", "mm", or empty
[[nodiscard]] parts::Design in_units(parts::Design design, const std::string& units);

/// Whether an answer is shown in inches, where the case is or is not.
[[nodiscard]] bool shown_in_inches(bool inches_of_case, const std::string& units);

/// A case as it was read.
struct CaseText {
  std::string name;  ///< "standard input", or the path
  std::string text;
};

/// @param path  "-" = standard input
[[nodiscard]] CaseText case_text(const std::string& path);

/// The same from a text at hand.
[[nodiscard]] Output with_text(
    const CaseText& text, const std::function<Output(const parts::Design&, const CaseText&)>& run);

/// The same for a command that shows the text too.
[[nodiscard]] Output with_case_text(
    const std::string& path,
    const std::function<Output(const parts::Design&, const CaseText&)>& run);

}  // namespace app
