#pragma once

#include <string>

#include "studies/answer.hpp"
#include "studies/case_list.hpp"
#include "studies/explain.hpp"
#include "studies/pick_grid.hpp"
#include "studies/rate.hpp"
#include "studies/scatter.hpp"

namespace report {

/// What computed an answer.
struct Program {
  std::string version;  ///< "0.1.0"
  std::string commit;
};

/// The answers as JSON (RFC 8259), for other programs: SI at full precision, whatever the units of
/// the case. The object `about` says what each key holds and in which unit, and who computed it.
/// JSON has no word for a number that is not known: it is written as the text "unset", and an
/// infinite one as "unlimited". A `null` is never written; what does not apply is left out.
[[nodiscard]] std::string json(const studies::Answer& answer, const Program& program);
[[nodiscard]] std::string json(const studies::Comparison& comparison, const Program& program);
[[nodiscard]] std::string json(const studies::Picked& picked, const Program& program);
[[nodiscard]] std::string json(const studies::PickedGrid& grid, const Program& program);
[[nodiscard]] std::string json(const studies::Scattered& scattered, const Program& program);
[[nodiscard]] std::string json(const studies::Rating& rating, const Program& program);
[[nodiscard]] std::string json(const studies::CaseList& list, const Program& program);
[[nodiscard]] std::string json(const studies::Explanation& explanation, const Program& program);
[[nodiscard]] std::string json(const std::vector<sections::StockList>& lists,
                               const std::vector<sections::PlateList>& plates,
                               const Program& program);
[[nodiscard]] std::string json(const std::vector<sections::Material>& materials,
                               const Program& program);

}  // namespace report
