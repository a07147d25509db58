#pragma once

#include <string>
#include <vector>

#include "report/tone.hpp"
#include "studies/answer.hpp"

namespace report {

/// "over", "within", "open": what the style sheet colors.
[[nodiscard]] std::string tone_class(Tone tone);

/// A number at full precision for an attribute; "unset" and "unlimited" as in the JSON.
[[nodiscard]] std::string exact(double value);

/// A row of cells, which are HTML.
struct HtmlRow {
  std::vector<std::string> cells;
  std::string attributes = {};  ///< of its <tr>
};

/// A table in a box that scrolls sideways where it is wider than the screen.
struct HtmlTable {
  std::string caption;             ///< text
  std::vector<std::string> head;   ///< text; one that starts with '#' heads numbers
  std::vector<HtmlRow> rows = {};  ///< the first cell heads its row
};

[[nodiscard]] std::string html(const HtmlTable& table);

/// A list of texts.
[[nodiscard]] std::string html_list(const std::vector<std::string>& items);

/// A section with a heading and an id.
[[nodiscard]] std::string html_section(const std::string& id, const std::string& heading,
                                       const std::string& content);

}  // namespace report
