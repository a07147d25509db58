#pragma once

#include <string>
#include <string_view>
#include <utility>

#include "report/csv.hpp"
#include "report/html_table.hpp"

namespace report {

/// Rows under the cautions and a line of headings.
class CsvTable {
 public:
  CsvTable(std::string name, const std::string& headings) : file_{std::move(name), {}} {
    for (const std::string& caution : studies::cautions()) file_.content += "# " + caution + "\n";
    file_.content += headings + "\n";
  }

  CsvTable& text(std::string_view words) { return cell(csv_cell(words)); }
  CsvTable& number(double value) { return cell(exact(value)); }
  void end_row() {
    file_.content += "\n";
    first_ = true;
  }
  [[nodiscard]] CsvFile file() && { return std::move(file_); }

 private:
  CsvTable& cell(const std::string& content) {
    if (!first_) file_.content += ",";
    first_ = false;
    file_.content += content;
    return *this;
  }

  CsvFile file_;
  bool first_ = true;
};

}  // namespace report
