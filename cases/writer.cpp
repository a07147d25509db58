#include "cases/writer.hpp"

#include <array>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "cases/named_readers.hpp"
#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/shape_words.hpp"
#include "cases/words.hpp"
#include "cases/yaml_text.hpp"
#include "parts/section_fields.hpp"

namespace cases {
namespace {

using parts::Design;
using parts::FieldInfo;

std::string line(std::string_view indent, std::string_view key, std::string_view text) {
  return fmt::format("{}{}: {}\n", indent, yaml_text(key), yaml_text(text));
}

std::vector<std::string> written_each(const std::array<double, 3>& values,
                                      parts::Dimension dimension, bool inches) {
  std::vector<std::string> all;
  for (const double x : values) all.push_back(write_quantity(x, dimension, inches));
  return all;
}

/// Writes the fields of one part: a visitor for parts' `fields(visitor, part)`. Numbers that are
/// unset and names that are empty are left out.
class FieldWriter {
 public:
  FieldWriter(const Design& names, std::string_view indent) : names_(names), indent_(indent) {}

  void quantity(const FieldInfo& info, double& value, const parts::Quantity& limits) {
    if (!std::isnan(value)) {
      add(info, write_quantity(value, limits.dimension, names_.inches));
    } else if (limits.may_be_unsure) {
      add(info, "not sure");
    }
  }
  template <class T>
  void phrase(const FieldInfo& info, T& value) {
    // Written even where it is usual, so that nothing is left to assume.
    const bool assumed = info.presence == parts::Presence::assumed;
    if (assumed || is_set(value)) add(info, write_phrase(value, names_));
  }
  template <class Enum, std::size_t N>
  void choice(const FieldInfo& info, Enum& value, const std::array<parts::Word<Enum>, N>& words) {
    for (const parts::Word<Enum>& word : words) {
      if (word.value == value) add(info, word.word);
    }
  }
  void flag(const FieldInfo& info, bool& value) { add(info, value ? "yes" : "no"); }
  void vector(const FieldInfo& info, std::array<double, 3>& value, parts::Dimension dimension) {
    if (std::isnan(value[0])) return;
    text_ += fmt::format("{}{}: [{}]\n", indent_, info.key,
                         join(written_each(value, dimension, names_.inches), ", "));
  }
  void text(const FieldInfo& info, std::string& value) {
    if (!value.empty()) add(info, value);
  }
  void point(const FieldInfo& info, std::string& value) {
    if (!value.empty()) add(info, value);
  }
  void points(const FieldInfo& info, std::vector<std::string>& value) {
    if (value.empty()) return;
    std::vector<std::string> items;
    for (const std::string& name : value) items.push_back(yaml_text(name, true));
    text_ += fmt::format("{}{}: [{}]\n", indent_, info.key, join(items, ", "));
  }

  void outline(const FieldInfo& info, std::vector<std::array<double, 2>>& value) {
    std::vector<std::string> items;
    for (const auto& point : value) {
      items.push_back(fmt::format("[{}, {}]", length(point[0]), length(point[1])));
    }
    text_ += fmt::format("{}{}: [{}]\n", indent_, info.key, join(items, ", "));
  }
  void lengths(const FieldInfo& info, std::vector<double>& value) {
    std::vector<std::string> items;
    for (const double one : value) items.push_back(length(one));
    text_ += fmt::format("{}{}: [{}]\n", indent_, info.key, join(items, ", "));
  }

  [[nodiscard]] const std::string& written() const { return text_; }

 private:
  template <class T>
  static bool is_set(const T&) {
    return true;
  }
  static bool is_set(const parts::Stick& stick) { return !stick.material.id.empty(); }
  [[nodiscard]] std::string length(double si) const {
    return write_quantity(si, parts::Dimension::length, names_.inches);
  }

  static bool is_set(const parts::LinkEnds& ends) { return ends.given(); }
  static bool is_set(const parts::BoltSpec& bolt) { return bolt.given(); }
  static bool is_set(const parts::Housing& housing) { return housing.given(); }
  static bool is_set(const parts::TabSpec& tabs) { return tabs.given(); }
  static bool is_set(const parts::EndWeldSpec& weld) { return weld.given(); }
  static bool is_set(const parts::ThreadSpec& thread) { return thread.given(); }
  static bool is_set(const parts::Freed& freed) { return !(freed == parts::Freed{}); }
  static bool is_set(const parts::Toward& toward) { return !(toward == parts::Toward{}); }
  static bool is_set(const parts::Coupling& coupled) { return !coupled.terms.empty(); }
  void add(const FieldInfo& info, std::string_view text) { text_ += line(indent_, info.key, text); }

  const Design& names_;
  std::string indent_;
  std::string text_;
};

template <class T>
std::string part_lines(T part, const Design& names, std::string_view indent) {
  FieldWriter writer(names, indent);
  fields(writer, part);
  return writer.written();
}

std::string part_lines(sections::Material material, const Design& names, std::string_view indent) {
  FieldWriter writer(names, indent);
  parts::fields(writer, material);
  return writer.written();
}

std::string part_lines(sections::Shape shape, const Design& names, std::string_view indent) {
  FieldWriter writer(names, indent);
  std::visit([&](auto& s) { parts::fields(writer, s); }, shape);
  return line(indent, "shape", shape_words()[shape.index()]) + writer.written();
}

std::string block(std::string_view key, const std::string& lines) {
  return lines.empty() ? std::string() : fmt::format("{}:\n{}", key, lines);
}

template <class T>
std::string part(std::string_view key, const std::optional<T>& value, const Design& names) {
  return value ? block(key, part_lines(*value, names, "  ")) : std::string();
}

template <class T>
std::string named(std::string_view key, const std::vector<parts::Named<T>>& list,
                  const Design& names) {
  std::string lines;
  for (const parts::Named<T>& item : list) {
    lines += fmt::format("  {}:\n{}", yaml_text(item.name), part_lines(item.value, names, "    "));
  }
  return block(key, lines);
}

std::string points(const Design& design) {
  std::string lines;
  for (const auto& point : design.points) {
    const std::string at =
        join(written_each(point.value, parts::Dimension::length, design.inches), ", ");
    lines += fmt::format("  {}: [{}]\n", yaml_text(point.name), at);
  }
  return block("points", lines);
}

std::string load_cases(const Design& design) {
  if (design.custom_cases.empty()) {
    if (design.load_cases.empty()) return {};
    return fmt::format("load_cases: [{}]\n", join(design.load_cases, ", "));
  }
  std::string lines;
  for (const std::string& kind : design.load_cases) lines += "  - " + kind + "\n";
  for (const auto& custom : design.custom_cases) {
    lines += fmt::format("  - name: {}\n{}", yaml_text(custom.name),
                         part_lines(custom.value, design, "    "));
  }
  return block("load_cases", lines);
}

std::string duty(const Design& design) {
  std::string lines;
  for (const auto& entry : design.duty) {
    // The first field stands on the line of the dash.
    std::string item = part_lines(entry.value, design, "    ");
    lines += item.replace(2, 1, "-");
  }
  return block("duty", lines);
}

std::string factors(checks::RequiredFactors values, checks::FactorPreset preset) {
  std::string lines = line("  ", "preset", checks::name_of(preset));
  for (const checks::FactorEntry& entry : checks::factor_entries(values)) {
    lines += line("  ", entry.key, write_quantity(*entry.value, parts::Dimension::ratio, true));
  }
  return block("factors", lines);
}

std::string variants(const Design& design) {
  std::string lines;
  for (const parts::Variant& variant : design.variants) {
    const char* end = variant.patches.empty() ? ": {}\n" : ":\n";
    lines += fmt::format("  {}{}", yaml_text(variant.name), end);
    for (const parts::Patch& patch : variant.patches) {
      lines += line("    ", patch.path, patch.value.empty() ? "none" : patch.value);
    }
  }
  return block("variants", lines);
}

}  // namespace

std::string write(const Design& design) {
  return line("", "title", design.title) +
         line("", "units", design.inches ? "inches" : "millimeters") +
         line("", "sizes", word_of(design.sizes)) + part("vehicle", design.vehicle, design) +
         points(design) + named("materials", design.materials, design) +
         named("sections", design.sections, design) + named("joints", design.joints, design) +
         part("lateral_link", design.lateral_link, design) +
         part("bracket", design.bracket, design) + part("brace", design.brace, design) +
         part("frame", design.frame, design) + part("arm", design.arm, design) +
         part("axle", design.axle, design) + part("limit_strap", design.limit_strap, design) +
         part("steering", design.steering, design) + named("members", design.members, design) +
         named("supports", design.supports, design) + named("springs", design.springs, design) +
         named("rigid", design.rigid, design) + named("side_welds", design.side_welds, design) +
         named("bolt_groups", design.bolt_groups, design) + named("forces", design.forces, design) +
         named("line_loads", design.line_loads, design) + named("strains", design.strains, design) +
         named("settlements", design.settlements, design) +
         named("self_weight", design.self_weight, design) + load_cases(design) + duty(design) +
         factors(design.factors, design.factor_preset) + variants(design);
}

}  // namespace cases
