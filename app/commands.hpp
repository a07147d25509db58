#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "app/case_file.hpp"
#include "app/output.hpp"
#include "app/request.hpp"
#include "sections/stock.hpp"
#include "studies/compare.hpp"
#include "studies/pick_grid.hpp"
#include "studies/rate.hpp"

namespace app {

/// What the slices of a sweep hold together: its files and every piece that is known.
struct Gathered {
  CaseText case_text;
  std::vector<sections::StockItem> stock = {};
  std::string stock_text = {};
  std::map<std::size_t, studies::Judged> judged = {};
  std::map<std::size_t, studies::GridLane> lanes = {};
  std::map<std::size_t, studies::Rated> rated = {};
  std::map<std::size_t, studies::Compared> compared = {};
};

/// Each command from its request to all of its output.
/// @param color  whether the text is colored
/// @throws base::InputError when the case cannot be opened or read
[[nodiscard]] Output check_command(const CheckRequest& request, bool color);
[[nodiscard]] Output report_command(const ReportRequest& request);
[[nodiscard]] Output compare_command(const CompareRequest& request, bool color);
[[nodiscard]] Output explain_command(const ExplainRequest& request, bool color);
[[nodiscard]] Output pick_command(const PickRequest& request, bool color);
[[nodiscard]] Output scatter_command(const ScatterRequest& request, bool color);
[[nodiscard]] Output gather_command(const GatherRequest& request, bool color);
[[nodiscard]] Output rate_command(const RateRequest& request, bool color);
[[nodiscard]] Output cases_command(const CasesRequest& request, bool color);
[[nodiscard]] Output new_command(const NewRequest& request);
[[nodiscard]] Output schema_command();
[[nodiscard]] Output format_command();
[[nodiscard]] Output sections_command(const SectionsRequest& request, bool color);
[[nodiscard]] Output materials_command(const MaterialsRequest& request, bool color);

/// The sizes of a user's own list; none for an empty path.
[[nodiscard]] std::vector<sections::StockItem> own_stock(const std::string& path);

/// The same commands with their files at hand, and pieces of the answer that are known already.
[[nodiscard]] Output pick_from(const PickRequest& request, const Gathered& gathered, bool color);
[[nodiscard]] Output scatter_from(const ScatterRequest& request, const Gathered& gathered,
                                  bool color);
[[nodiscard]] Output rate_from(const RateRequest& request, const Gathered& gathered, bool color);
[[nodiscard]] Output compare_from(const CompareRequest& request, const Gathered& gathered,
                                  bool color);

}  // namespace app
