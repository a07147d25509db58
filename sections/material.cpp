#include "sections/material.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

#include "sections/csv_table.hpp"
#include "sections/data_text.hpp"
#include "sections/nearest.hpp"

namespace sections {
namespace {

struct Alias {
  const char* name;
  const char* id;
  const char* others;  ///< what the name alone could mean besides; empty = nothing
};

/// Names that a shop asks for. A bare trade name means the condition it is usually sold in; where
/// two conditions or shapes share it, the weaker of them.
constexpr std::array kAliases{
    Alias{"DOM", "DOM1020_SR", "also as drawn or normalized, and of 1026"},
    Alias{"DOM 1020", "DOM1020_SR", "also as drawn or normalized"},
    Alias{"DOM 1026", "DOM1026_SR", "also as drawn or normalized"},
    Alias{"mild steel", "A36", "also 1018 and 1020, hot rolled"},
    Alias{"1018", "1018_CD", "also hot rolled"},
    Alias{"1020", "1020_CD", "also hot rolled"},
    Alias{"1045", "1045_CD", "also hot rolled"},
    Alias{"cold drawn bar", "1018_CD", "also 1020 and 1045"},
    Alias{"hot rolled bar", "1018_HR", "also 1020 and 1045"},
    Alias{"4130", "4130_A513_N", "also as drawn, and aircraft tube"},
    Alias{"A500", "A500B_round", "also grade C, and square or rectangular"},
    Alias{"A513", "A513_1_1010", "also 1015, 1020 and 1026, and type 5"},
    Alias{"A53", "A53B", "also grade A"},
    Alias{"A572", "A572_50", "also other grades"},
    Alias{"E235", "E235_SR", "also +C and +N"},
    Alias{"E355", "E355_SR", "also +C and +N"},
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
          .mark = row.mark(),
          .source = text("source"),
          .sizes_by = text("sizes_by")};
}

const Alias* alias_of(std::string_view name) {
  const std::string wanted = plain(name);
  const auto* found = std::find_if(kAliases.begin(), kAliases.end(),
                                   [&](const Alias& a) { return plain(a.name) == wanted; });
  return found == kAliases.end() ? nullptr : found;
}

}  // namespace

bool Material::specified() const {
  return basis == "specified minimum" || basis == "minimum when ordered";
}

const std::vector<Material>& materials() {
  static const std::vector<Material> all = [] {
    std::vector<Material> list;
    for_each_row(data::materials(), [&](const CsvRow& row) { list.push_back(material(row)); });
    return list;
  }();
  return all;
}

std::optional<Material> find_material(std::string_view name) {
  const Alias* alias = alias_of(name);
  const std::string wanted = plain(alias == nullptr ? name : alias->id);
  for (const Material& m : materials()) {
    if (plain(m.id) == wanted) return m;
  }
  return std::nullopt;
}

std::string condition_chosen(std::string_view name) {
  const Alias* alias = alias_of(name);
  if (alias == nullptr) return {};
  return fmt::format("`{}` alone, {}; common practice, no source", alias->name, alias->others);
}

const Material* same_steel_for(const Material& material, double thickness) {
  for (const Material& m : materials()) {
    if (m.description == material.description && m.covers(thickness)) return &m;
  }
  return nullptr;
}

std::string nearest_material(std::string_view name) {
  std::vector<std::string> names;
  for (const Alias& alias : kAliases) names.emplace_back(alias.name);
  for (const Material& m : materials()) names.push_back(m.id);
  return nearest(name, names);
}

}  // namespace sections
