#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "studies/answer.hpp"
#include "studies/pick_grid.hpp"
#include "studies/rate.hpp"
#include "studies/scatter.hpp"

namespace report {

/// A table for a spreadsheet.
struct CsvFile {
  std::string name;  ///< "findings.csv"
  std::string content;
};

/// The answer as tables (RFC 4180, but lines end in a line feed alone): findings, critical factors,
/// forces on the ends of the pieces, masses, assumptions, variants. SI at full precision; the unit
/// stands in the heading or beside the number. Lines at the top that start with # are the cautions,
/// as in lists of stock.
[[nodiscard]] std::vector<CsvFile> csv(const studies::Answer& answer);

/// The same of the other studies: variants, sizes, combinations, limits, samples.
[[nodiscard]] std::vector<CsvFile> csv(const studies::Comparison& comparison);
[[nodiscard]] std::vector<CsvFile> csv(const studies::Picked& picked);
[[nodiscard]] std::vector<CsvFile> csv(const studies::PickedGrid& grid);
[[nodiscard]] std::vector<CsvFile> csv(const studies::Rating& rating);
[[nodiscard]] std::vector<CsvFile> csv(const studies::Scattered& scattered);

/// A text as a cell: quoted where it must be, and never read as a formula.
[[nodiscard]] std::string csv_cell(std::string_view text);

}  // namespace report
