#include "report/balance_text.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Balance;
using studies::BalanceRow;

struct UnitOf {
  double factor;
  const char* name;
};

UnitOf unit_of(checks::Measure measure, bool inches) {
  const bool force = measure == checks::Measure::force;
  if (inches) {
    return force ? UnitOf{base::kPoundForce, "lbf"}
                 : UnitOf{base::kPoundForce * 12.0 * base::kInch, "ft-lbf"};
  }
  return force ? UnitOf{base::kKilonewton, "kN"} : UnitOf{base::kKilonewton, "kN m"};
}

/// A component beside `largest`: what is lost in rounding is 0.
std::string component(double si, double largest, const UnitOf& unit) {
  if (std::abs(si) < 5.0e-4 * largest || si == 0.0) return "0";
  return number(si / unit.factor);
}

std::vector<TableCell> row_of(const BalanceRow& row, const std::array<double, 2>& largest,
                              bool inches) {
  std::vector<TableCell> cells = {{row.what}};
  const UnitOf force = unit_of(checks::Measure::force, inches);
  const UnitOf moment = unit_of(checks::Measure::moment, inches);
  for (const double f : row.force) cells.push_back({component(f, largest[0], force)});
  for (const double m : row.moment) cells.push_back({component(m, largest[1], moment)});
  return cells;
}

std::string one_balance(const Balance& balance, bool inches, const TextStyle& style) {
  std::array<double, 2> largest = {0.0, 0.0};
  for (const std::vector<BalanceRow>* rows : {&balance.acts, &balance.holds}) {
    for (const BalanceRow& row : *rows) {
      for (const double f : row.force) largest[0] = std::max(largest[0], std::abs(f));
      for (const double m : row.moment) largest[1] = std::max(largest[1], std::abs(m));
    }
  }
  TextTable table;
  table.columns.push_back({.least_width = 18});
  for (int i = 0; i < 6; ++i) table.columns.push_back({.numbers = true});
  table.head = {{""}, {"Fx"}, {"Fy"}, {"Fz"}, {"Mx"}, {"My"}, {"Mz"}};
  table.rows.push_back({{"acts:"}, {""}, {""}, {""}, {""}, {""}, {""}});
  for (const BalanceRow& row : balance.acts) table.rows.push_back(row_of(row, largest, inches));
  table.rows.push_back({{"holds:"}, {""}, {""}, {""}, {""}, {""}, {""}});
  for (const BalanceRow& row : balance.holds) table.rows.push_back(row_of(row, largest, inches));
  return paragraph(balance.load_case + (balance.set.empty() ? "" : "; " + balance.set), style.width,
                   2, 2) +
         laid_out(table, style.width, style.color, 4) +
         paragraph(fmt::format("left over: {:.1e} of the largest", balance.open), style.width, 4,
                   0);
}

}  // namespace

bool is_any(const std::array<double, 3>& vector) {
  return std::any_of(vector.begin(), vector.end(), [](double x) { return x != 0.0; });
}

std::string three_shown(const std::array<double, 3>& si, checks::Measure measure, bool inches) {
  double largest = 0.0;
  for (const double x : si) largest = std::max(largest, std::abs(x));
  const UnitOf unit = unit_of(measure, inches);
  return fmt::format("({}, {}, {} {})", component(si[0], largest, unit),
                     component(si[1], largest, unit), component(si[2], largest, unit), unit.name);
}

std::string balance_section(const studies::Answer& answer, const TextStyle& style) {
  if (answer.balances.empty()) return "";
  std::string out = heading("Forces on the parts in each load case, in balance", style);
  out += paragraph(fmt::format("{} forward, left, up, and {} about {}; before anything moves",
                               unit_of(checks::Measure::force, answer.inches).name,
                               unit_of(checks::Measure::moment, answer.inches).name,
                               answer.balances.front().about),
                   style.width, 2, 2);
  for (const Balance& balance : answer.balances) {
    out += one_balance(balance, answer.inches, style);
  }
  return out;
}

}  // namespace report
