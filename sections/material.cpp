#include "sections/material.hpp"

#include <array>
#include <utility>

#include "base/invariant.hpp"
#include "sections/csv_table.hpp"
#include "sections/data_text.hpp"
#include "sections/nearest.hpp"

namespace sections {
namespace {

struct Alias {
  const char* name;
  const char* id;
};

/// Names that a shop asks for. A bare trade name means the condition it is usually sold in; where
/// two conditions or shapes share it, the weaker of them.
constexpr std::array kAliases{
    Alias{"DOM", "DOM1020_SR"},
    Alias{"DOM 1020", "DOM1020_SR"},
    Alias{"DOM 1026", "DOM1026_SR"},
    Alias{"mild steel", "A36"},
    Alias{"1018", "1018_CD"},
    Alias{"1020", "1020_CD"},
    Alias{"1045", "1045_CD"},
    Alias{"cold drawn bar", "1018_CD"},
    Alias{"hot rolled bar", "1018_HR"},
    Alias{"4130", "4130_A513_N"},
    Alias{"A500", "A500B_round"},
    Alias{"A513", "A513_1_1010"},
    Alias{"A53", "A53B"},
    Alias{"A572", "A572_50"},
    Alias{"E235", "E235_SR"},
    Alias{"E355", "E355_SR"},
};

/// Small letters and digits only, so that "dom-1020 sr" is DOM1020_SR.
std::string plain(std::string_view name) {
  std::string text;
  for (const char c : name) {
    if (c == ' ' || c == '\t' || c == '-' || c == '_') continue;
    text += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return text;
}

std::string mark(std::string_view in_table) {
  INVARIANT(in_table == "seen" || in_table == "memory");
  return in_table == "seen" ? "read" : "from memory";
}

Material material(const CsvRow& row) {
  constexpr double kGigapascal = 1e9;
  const auto text = [&](std::string_view column) { return std::string(row.text(column)); };
  return {.id = text("id"),
          .description = text("description"),
          .elastic = row.number("e_gpa") * kGigapascal,
          .density = row.number("density_kg_m3"),
          .yield = row.number("yield_mpa") * base::kMegapascal,
          .tensile = row.number("tensile_mpa") * base::kMegapascal,
          .haz_yield = row.number("haz_yield_mpa") * base::kMegapascal,
          .haz_tensile = row.number("haz_tensile_mpa") * base::kMegapascal,
          .thickness_over = row.number("t_from_mm") * base::kMillimeter,
          .thickness_to = row.number("t_to_mm") * base::kMillimeter,
          .basis = text("basis"),
          .haz_basis = text("haz_basis"),
          .mark = mark(row.text("mark")),
          .source = text("source")};
}

}  // namespace

const std::vector<Material>& materials() {
  static const std::vector<Material> all = [] {
    std::vector<Material> list;
    for_each_row(data::materials(), [&](const CsvRow& row) { list.push_back(material(row)); });
    return list;
  }();
  return all;
}

std::optional<Material> find_material(std::string_view name) {
  std::string wanted = plain(name);
  for (const Alias& alias : kAliases) {
    if (plain(alias.name) == wanted) {
      wanted = plain(alias.id);
      break;
    }
  }
  for (const Material& m : materials()) {
    if (plain(m.id) == wanted) return m;
  }
  return std::nullopt;
}

std::string nearest_material(std::string_view name) {
  std::vector<std::string> names;
  for (const Alias& alias : kAliases) names.emplace_back(alias.name);
  for (const Material& m : materials()) names.push_back(m.id);
  return nearest(name, names);
}

}  // namespace sections
