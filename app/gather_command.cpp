#include <algorithm>
#include <charconv>
#include <utility>

#include <fmt/format.h>

#include "app/command_line.hpp"
#include "app/slice_output.hpp"
#include "report/wrap.hpp"

namespace app {
namespace {

using base::InputError;

InputError in_file(const std::string& file, const std::string& problem) {
  return {base::Where{file, 0, 0, {}}, problem};
}

/// All slices, of one sweep and each whole and once.
std::vector<report::Slice> whole_set(const std::vector<std::string>& files) {
  std::vector<report::Slice> all;
  for (const std::string& file : files) {
    report::Slice slice = report::read_slice(file_text(file), file);
    if (!all.empty()) {
      const report::Slice& first = all.front();
      const char* differs = slice.program != first.program       ? "another version of the program"
                            : slice.arguments != first.arguments ? "another command"
                            : slice.case_file != first.case_file ? "another case"
                            : slice.stock != first.stock         ? "another list of sizes"
                            : slice.of != first.of               ? "another number of shares"
                                                                 : nullptr;
      if (differs != nullptr) {
        throw in_file(file, fmt::format("it is of {} than {}", differs, files.front()));
      }
    }
    const std::size_t n = slice.n_known();
    if (n < slice.n_mine) {
      throw in_file(file, fmt::format("it was stopped: {} of its {} pieces are there; run share "
                                      "{}/{} again",
                                      n, slice.n_mine, slice.which, slice.of));
    }
    all.push_back(std::move(slice));
  }
  std::vector<std::string> missing;
  for (std::size_t which = 1; which <= all.front().of; ++which) {
    const auto n = std::count_if(all.begin(), all.end(), [which](const report::Slice& slice) {
      return slice.which == which;
    });
    if (n == 0) missing.push_back(fmt::format("{}/{}", which, all.front().of));
  }
  if (!missing.empty()) {
    throw InputError("gather", "these shares are missing: " + report::joined(missing, ", "));
  }
  return all;
}

Gathered together(std::vector<report::Slice> slices) {
  Gathered out{.case_text = {slices.front().case_file.name, slices.front().case_file.text}};
  const report::NamedText& stock = slices.front().stock;
  if (!stock.name.empty()) {
    out.stock = sections::read_stock(stock.text, stock.name).items;
    out.stock_text = stock.text;
  }
  for (report::Slice& slice : slices) {
    out.judged.merge(slice.judged);
    out.lanes.merge(slice.lanes);
    out.rated.merge(slice.rated);
    out.compared.merge(slice.compared);
  }
  return out;
}

/// The request that the slices were computed for, answered as asked now.
template <class AnyRequest>
AnyRequest asked_now(AnyRequest request, const GatherRequest& now) {
  request.options.json = now.options.json;
  request.options.csv = now.options.csv;
  request.options.all = now.options.all;
  request.share = {};
  return request;
}

}  // namespace

WhichShare which_share(const std::string& words) {
  WhichShare out;
  const char* end = words.data() + words.size();
  const auto which = std::from_chars(words.data(), end, out.which);
  if (which.ec == std::errc() && which.ptr != end && *which.ptr == '/') {
    const auto of = std::from_chars(which.ptr + 1, end, out.of);
    const bool whole = of.ec == std::errc() && of.ptr == end;
    if (whole && out.which >= 1 && out.which <= out.of && out.of <= 100000) return out;
  }
  throw InputError(fmt::format("--share \"{}\"", words),
                   "it is no share such as 2/8: the second of eight");
}

Output gather_command(const GatherRequest& request, bool color) {
  std::vector<report::Slice> slices = whole_set(request.slices);
  std::vector<const char*> arguments = {"linkmargin"};
  const std::vector<std::string> words = slices.front().arguments;
  for (const std::string& word : words) arguments.push_back(word.c_str());
  const Request asked = parse_command_line(static_cast<int>(arguments.size()), arguments.data());
  const Gathered gathered = together(std::move(slices));
  if (const auto* pick = std::get_if<PickRequest>(&asked.what)) {
    return pick_from(asked_now(*pick, request), gathered, color);
  }
  if (const auto* scatter = std::get_if<ScatterRequest>(&asked.what)) {
    return scatter_from(asked_now(*scatter, request), gathered, color);
  }
  if (const auto* rate = std::get_if<RateRequest>(&asked.what)) {
    return rate_from(asked_now(*rate, request), gathered, color);
  }
  if (const auto* compare = std::get_if<CompareRequest>(&asked.what)) {
    return compare_from(asked_now(*compare, request), gathered, color);
  }
  throw in_file(request.slices.front(), "its command is none that has shares");
}

}  // namespace app
