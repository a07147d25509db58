#pragma once

#include <string>
#include <vector>

#include "report/text_style.hpp"
#include "sections/material.hpp"
#include "sections/stock.hpp"

namespace report {

/// The sizes in stock by list, with where each list comes from, and the cautions. A full answer has
/// the properties of every size.
/// @param lists  bars and tubes
[[nodiscard]] std::string stock_text(const std::vector<sections::StockList>& lists,
                                     const std::vector<sections::PlateList>& plates,
                                     const TextStyle& style);

/// The steels with their strengths, also beside welds, and the cautions. A full answer adds what
/// each strength is and where it comes from.
/// @param inches  ksi and in, else MPa and mm
[[nodiscard]] std::string materials_text(const std::vector<sections::Material>& materials,
                                         bool inches, const TextStyle& style);

}  // namespace report
