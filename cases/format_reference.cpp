#include "cases/format_reference.hpp"

#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "cases/case_text.hpp"
#include "cases/format_examples.hpp"
#include "cases/format_table.hpp"
#include "cases/quantity.hpp"
#include "cases/top_keys.hpp"
#include "cases/unit.hpp"
#include "cases/words.hpp"
#include "checks/required_factors.hpp"
#include "loads/case_library.hpp"

namespace cases {
namespace {

std::string key_rows() {
  std::string rows = "| key | holds |\n| --- | --- |\n";
  for (const TopKey& top : top_keys()) {
    rows += fmt::format("| [`{0}`](#{0}) | {1} |\n", top.key, top.meaning);
  }
  return rows;
}

std::string unit_rows() {
  std::string rows;
  constexpr auto kLast = static_cast<int>(parts::Dimension::acceleration);
  for (int i = 0; i <= kLast; ++i) {
    const auto dimension = static_cast<parts::Dimension>(i);
    rows += fmt::format("| {} | `{}` | `{}` | {} |\n", dimension_name(dimension),
                        example_quantity(dimension, true), example_quantity(dimension, false),
                        example_units(dimension));
  }
  return rows;
}

std::string unit_list() {
  std::vector<std::string> names;
  for (const std::string& name : unit_names()) names.push_back("`" + name + "`");
  return join(names, ", ");
}

std::string factor_rows() {
  std::string rows;
  std::vector<checks::RequiredFactors> tables;
  for (const checks::FactorPreset preset : checks::factor_presets()) {
    tables.push_back(checks::factors_of(preset));
  }
  const std::vector<checks::FactorEntry> usual = checks::factor_entries(tables[0]);
  for (std::size_t i = 0; i < usual.size(); ++i) {
    rows += fmt::format("| `{}` | `{}` | {} |", usual[i].key, *usual[i].value, usual[i].basis);
    for (std::size_t k = 1; k < tables.size(); ++k) {
      const checks::FactorEntry other =
          checks::factor_entries(tables[k], checks::factor_presets()[k])[i];
      rows += fmt::format(" `{}` | {} |", *other.value,
                          other.basis == usual[i].basis ? "as the usual one" : other.basis);
    }
    rows += "\n";
  }
  return rows;
}

std::string load_case_rows() {
  std::string rows;
  for (const loads::CaseInfo& info : loads::case_library()) {
    const bool routine = info.severity == loads::Severity::routine;
    rows +=
        fmt::format("| `{}` | {} | {} |\n", info.name, routine ? "routine" : "abuse", info.checks);
  }
  return rows;
}

std::string example(const std::vector<std::string>& words) {
  INVARIANT(words.size() == 3);
  return fmt::format("```yaml\n{}```\n", FormatExamples::block(words[1], words[2]));
}

/// What stands in the place of a line such as `{table bracket}`.
std::string made(const FormatExamples& examples, const std::string& order) {
  if (order == "keys") return key_rows();
  if (order == "units") return unit_rows();
  if (order == "factors") return factor_rows();
  if (order == "load cases") return load_case_rows();
  const std::vector<std::string> words = words_of(order);
  if (words[0] == "example") return example(words);
  INVARIANT(words[0] == "table" && words.size() == 2);
  return format_table(examples, words[1]);
}

std::string with_unit_names(std::string line) {
  constexpr std::string_view kPlace = "{unit names}";
  const std::size_t at = line.find(kPlace);
  if (at != std::string::npos) line.replace(at, kPlace.size(), unit_list());
  return line;
}

}  // namespace

std::string format_reference() {
  const FormatExamples examples;
  std::string out;
  std::string_view text = data::format_text();
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string line(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    const bool is_order = line.size() > 2 && line.front() == '{' && line.back() == '}';
    out +=
        is_order ? made(examples, line.substr(1, line.size() - 2)) : with_unit_names(line) + "\n";
  }
  return out;
}

}  // namespace cases
