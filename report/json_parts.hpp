#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "parts/design.hpp"
#include "report/json.hpp"

/// What the writers of JSON share.
namespace report {

using Json = nlohmann::ordered_json;

/// A number; the text "unset" or "unlimited" where it is none.
[[nodiscard]] Json value_of(double number);
[[nodiscard]] Json strings(const std::vector<std::string>& items);
[[nodiscard]] Json assumed(const std::vector<parts::Assumption>& all);

template <class Items, class Writer>
Json list_of(const Items& items, Writer write) {
  Json list = Json::array();
  for (const auto& item : items) list.push_back(write(item));
  return list;
}

/// How every answer starts.
[[nodiscard]] Json opening(const Program& program, const std::string& title, bool inches);
/// How much of what is known was run.
void add_scope(Json& out, const studies::Scope& scope);

/// What a case file says may hold bytes that are no UTF-8: they are replaced, not refused.
[[nodiscard]] std::string dumped(const Json& out);

}  // namespace report
