#include <fmt/format.h>

#include "app/case_file.hpp"
#include "app/commands.hpp"
#include "app/program.hpp"
#include "report/json.hpp"
#include "report/stock_text.hpp"
#include "report/wrap.hpp"

namespace app {
namespace {

/// Adds the lists whose name holds the word; all of them for an empty one.
template <class List>
void add_named_like(std::vector<List>& to, const std::vector<List>& all, const std::string& word) {
  for (const List& list : all) {
    if (list.name.find(word) != std::string::npos) to.push_back(list);
  }
}

std::string list_names() {
  std::vector<std::string> names;
  for (const sections::StockList& list : sections::stock_lists()) names.push_back(list.name);
  for (const sections::PlateList& list : sections::plate_lists()) names.push_back(list.name);
  return report::joined(names, "; ");
}

}  // namespace

std::vector<sections::StockItem> own_stock(const std::string& path) {
  if (path.empty()) return {};
  return sections::read_stock(file_text(path), path).items;
}

Output sections_command(const SectionsRequest& request, bool color) {
  std::vector<sections::StockList> lists;
  std::vector<sections::PlateList> plates;
  if (!request.stock.empty()) {
    lists.push_back(sections::read_stock(file_text(request.stock), request.stock));
  }
  add_named_like(lists, sections::stock_lists(), request.list);
  add_named_like(plates, sections::plate_lists(), request.list);
  if (lists.empty() && plates.empty()) {
    throw base::InputError(
        "sections", fmt::format("no list is named `{}`; there is: {}", request.list, list_names()));
  }
  const report::TextStyle style = {.color = color,
                                   .full = request.options.all,
                                   .command_for_more =
                                       "linkmargin sections --all, or a list by name, such as "
                                       "`linkmargin sections \"flat bar\"`",
                                   .program = program_line()};
  return answer_output(
      request.options, [&] { return report::stock_text(lists, plates, style); },
      [&] { return report::json(lists, plates, program()); }, kExitWithin);
}

Output materials_command(const MaterialsRequest& request, bool color) {
  const report::TextStyle style = {.color = color,
                                   .full = request.options.all,
                                   .command_for_more = "linkmargin materials --all",
                                   .program = program_line()};
  return answer_output(
      request.options,
      [&] { return report::materials_text(sections::materials(), !request.metric, style); },
      [&] { return report::json(sections::materials(), program()); }, kExitWithin);
}

}  // namespace app
