#include "report/stock_text.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"
#include "sections/area_props.hpp"

namespace report {
namespace {

using checks::Measure;

constexpr double kSteel = 7850.0;  // [kg/m^3]

std::string in_unit(double si, double unit) {
  return std::isnan(si) ? "" : number(si / unit, 4);
}

TextTable size_table(bool inches) {
  const std::string unit = inches ? "in" : "mm";
  TextTable table;
  table.columns = {{.least_width = 16}, {.numbers = true}, {.numbers = true}, {.numbers = true},
                   {.numbers = true},   {.numbers = true}, {.least_width = 8}};
  for (const std::string& head :
       {std::string("size"), "A " + unit + "^2", "I " + unit + "^4", "S " + unit + "^3",
        "Z " + unit + "^3", std::string(inches ? "lb/ft" : "kg/m"), std::string("size known")}) {
    table.head.push_back({head, Tone::label});
  }
  return table;
}

std::vector<TableCell> size_row(const sections::StockItem& item, bool inches) {
  const double unit = inches ? base::kInch : base::kMillimeter;
  const sections::AreaProps p = sections::area_props(item.shape);
  const double mass_unit = inches ? base::kPoundMass / (12.0 * base::kInch) : 1.0;
  return {{item.label},
          {in_unit(p.area, std::pow(unit, 2))},
          {in_unit(p.iyy, std::pow(unit, 4))},
          {in_unit(p.modulus_y, std::pow(unit, 3))},
          {in_unit(p.plastic_y, std::pow(unit, 3))},
          {in_unit(p.mass_per_length(kSteel), mass_unit)},
          {item.mark}};
}

/// Sizes that differ in their last number alone, as one: "1-1/2 x 0.065, 0.083 in DOM tube".
struct SizeGroup {
  std::string head;  ///< "1-1/2 x "
  std::vector<std::string> last;
  std::string tail;  ///< " in DOM tube"
};

std::string labels(const sections::StockList& list) {
  std::vector<SizeGroup> groups;
  for (const sections::StockItem& item : list.items) {
    const std::size_t cross = item.label.rfind(" x ");
    const std::size_t start = cross == std::string::npos ? 0 : cross + 3;
    const std::size_t end = std::min(item.label.find(' ', start), item.label.size());
    const std::string head = item.label.substr(0, start);
    const std::string tail = item.label.substr(end);
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const SizeGroup& g) {
      return g.head == head && g.tail == tail;
    });
    const std::string last = item.label.substr(start, end - start);
    if (same == groups.end()) {
      groups.push_back({head, {last}, tail});
    } else {
      same->last.push_back(last);
    }
  }
  std::vector<std::string> all;
  for (const SizeGroup& g : groups) all.push_back(g.head + joined(g.last, ", ") + g.tail);
  return joined(all, "; ");
}

std::string list_text(const sections::StockList& list, const TextStyle& style) {
  std::string out = heading(fmt::format("{}: {} sizes", list.name, list.items.size()), style);
  out += paragraph("source: " + list.source, style.width, 0, 2);
  if (!style.full) return out + paragraph(labels(list), style.width, 0, 2);
  // A user's list may hold both systems of units.
  for (const bool inches : {true, false}) {
    TextTable table = size_table(inches);
    for (const sections::StockItem& item : list.items) {
      if (item.inches == inches) table.rows.push_back(size_row(item, inches));
    }
    if (!table.rows.empty()) out += laid_out(table, style.width, style.color);
  }
  return out;
}

std::string plates_text(const sections::PlateList& list, const TextStyle& style) {
  std::string out = heading(fmt::format("{}: {} thicknesses", list.name, list.sizes.size()), style);
  out += paragraph("source: " + list.source, style.width, 0, 2);
  std::vector<std::string> all;
  for (const sections::PlateSize& size : list.sizes) {
    all.push_back(fmt::format(
        "{} ({} in, {} mm{})", size.label, in_unit(size.thickness, base::kInch),
        in_unit(size.thickness, base::kMillimeter), style.full ? ", " + size.mark : ""));
  }
  return out + paragraph(joined(all, "; "), style.width, 0, 2);
}

std::string range_of(const sections::Material& m, bool inches) {
  const double unit = inches ? base::kInch : base::kMillimeter;
  return fmt::format("{}-{}", number(m.thickness_over / unit), number(m.thickness_to / unit));
}

}  // namespace

std::string stock_text(const std::vector<sections::StockList>& lists,
                       const std::vector<sections::PlateList>& plates, const TextStyle& style) {
  std::string out = paragraph(
      "Sizes in stock. Properties are those of the nominal sizes; what a mill may leave away is "
      "not "
      "taken off. A, I, S, Z: area, second moment, elastic and plastic section modulus for bending "
      "along the depth; mass at 7850 kg/m3.",
      style.width);
  for (const sections::StockList& list : lists) out += list_text(list, style);
  for (const sections::PlateList& list : plates) out += plates_text(list, style);
  if (!style.command_for_more.empty() && !style.full) {
    out += "\n" + paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  out += caution_lines(style);
  if (style.full && !style.program.empty()) out += style.program + "\n";
  return out;
}

std::string materials_text(const std::vector<sections::Material>& materials, bool inches,
                           const TextStyle& style) {
  const std::string stress = inches ? "ksi" : "MPa";
  std::string out = paragraph(
      fmt::format(
          "Steels: strengths in {}; \"weld\" is the yield strength beside a weld; thickness "
          "in {}. Moduli: 200 GPa (29000 ksi) for US, 210 GPa for EN steels; 7850 kg/m3.",
          stress, inches ? "in" : "mm"),
      style.width);
  TextTable table;
  table.columns = {{.least_width = 13}, {.least_width = 18}, {.numbers = true}, {.numbers = true},
                   {.numbers = true},   {.numbers = true},   {.least_width = 6}};
  for (const char* head :
       {"name", "standard and grade", "yield", "tensile", "weld", "thickness", "known"}) {
    table.head.push_back({head, Tone::label});
  }
  const double unit = inches ? base::kKsi : base::kMegapascal;
  for (const sections::Material& m : materials) {
    table.rows.push_back({{m.id},
                          {m.description},
                          {in_unit(m.yield, unit)},
                          {in_unit(m.tensile, unit)},
                          {in_unit(m.haz_yield, unit)},
                          {range_of(m, inches)},
                          {m.mark}});
  }
  out += laid_out(table, style.width, style.color);
  if (style.full) {
    out += heading("Where the strengths come from", style);
    for (const sections::Material& m : materials) {
      out += paragraph(
          fmt::format("{}: {}; {} ({}). Beside a weld {} yield, {} tensile: {}.", m.id, m.basis,
                      m.source, m.mark, shown(m.haz_yield, Measure::stress, inches),
                      shown(m.haz_tensile, Measure::stress, inches), m.haz_basis),
          style.width, 0, 2);
    }
  } else if (!style.command_for_more.empty()) {
    out += paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  out += caution_lines(style);
  if (style.full && !style.program.empty()) out += style.program + "\n";
  return out;
}

}  // namespace report
