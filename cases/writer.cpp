#include "cases/writer.hpp"

#include "cases/field_writer.hpp"
#include "cases/shape_words.hpp"
#include "cases/words.hpp"
#include "parts/section_fields.hpp"

namespace cases {
namespace {

constexpr int kIndent = 2;

template <class T>
std::string lines_of(T part, const parts::Design& design, int indent) {
  FieldWriter writer(design, indent);
  fields(writer, part);
  return writer.lines();
}

template <class T>
std::string part_lines(const std::string& key, const std::optional<T>& part,
                       const parts::Design& design) {
  return part ? key + ":\n" + lines_of(*part, design, kIndent) : std::string();
}

template <class T>
std::string named_lines(const std::string& key, const std::vector<parts::Named<T>>& all,
                        const parts::Design& design) {
  if (all.empty()) return {};
  std::string out = key + ":\n";
  for (const parts::Named<T>& named : all) {
    const std::string inside = lines_of(named.value, design, 2 * kIndent);
    out += "  " + yaml_text(named.name) + ":\n" + inside;
  }
  return out;
}

std::string section_lines(const parts::Design& design) {
  if (design.sections.empty()) return {};
  std::string out = "sections:\n";
  for (const parts::Named<sections::Shape>& named : design.sections) {
    out += "  " + yaml_text(named.name) + ":\n    shape: " +
           shape_words()[named.value.index()] + "\n";
    sections::Shape shape = named.value;
    FieldWriter writer(design, 2 * kIndent);
    std::visit([&](auto& s) { parts::fields(writer, s); }, shape);
    out += writer.lines();
  }
  return out;
}

std::string material_lines(const parts::Design& design) {
  if (design.materials.empty()) return {};
  std::string out = "materials:\n";
  for (const parts::Named<sections::Material>& named : design.materials) {
    sections::Material steel = named.value;
    FieldWriter writer(design, 2 * kIndent);
    parts::fields(writer, steel);
    out += "  " + yaml_text(named.name) + ":\n" + writer.lines();
  }
  return out;
}

std::string point_lines(const parts::Design& design) {
  if (design.points.empty()) return {};
  std::string out = "points:\n";
  for (const parts::Named<std::array<double, 3>>& named : design.points) {
    std::vector<std::string> at;
    for (const double x : named.value) {
      at.push_back(write_quantity(x, parts::Dimension::length, design.inches));
    }
    out += "  " + yaml_text(named.name) + ": [" + join(at, ", ") + "]\n";
  }
  return out;
}

std::string factor_lines(const parts::Design& design) {
  checks::RequiredFactors factors = design.factors;
  std::string out = "factors:\n";
  for (const checks::FactorEntry& factor : checks::factor_entries(factors)) {
    out += "  " + factor.key + ": " +
           write_quantity(*factor.value, parts::Dimension::ratio, design.inches) + "\n";
  }
  return out;
}

std::string variant_lines(const parts::Design& design) {
  if (design.variants.empty()) return {};
  std::string out = "variants:\n";
  for (const parts::Variant& variant : design.variants) {
    out += "  " + yaml_text(variant.name) + ":\n";
    for (const parts::Patch& patch : variant.patches) {
      out += "    " + yaml_text(patch.path) + ": " +
             (patch.value.empty() ? std::string("left out") : yaml_text(patch.value)) + "\n";
    }
  }
  return out;
}

}  // namespace

std::string yaml_text(std::string_view text) {
  const std::string_view kRisky = ":#{}[],&*!|>'\"%@`?";
  const bool plain = !text.empty() && text.front() != '-' && text.front() != ' ' &&
                     text.back() != ' ' && text.find_first_of(kRisky) == std::string_view::npos;
  if (plain) return std::string(text);
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

void FieldWriter::line(std::string_view key, const std::string& value) {
  lines_ += std::string(static_cast<std::size_t>(indent_), ' ') + std::string(key) + ": " + value +
            "\n";
}

void FieldWriter::points(const parts::FieldInfo& info, std::vector<std::string>& value) {
  if (value.empty()) return;
  std::vector<std::string> items;
  for (const std::string& name : value) items.push_back(yaml_text(name));
  line(info.key, "[" + join(items, ", ") + "]");
}

std::string write(const parts::Design& design) {
  std::string out = "title: " + yaml_text(design.title) + "\n";
  out += std::string("units: ") + (design.inches ? "inches" : "millimeters") + "\n";
  out += part_lines("vehicle", design.vehicle, design);
  out += material_lines(design) + section_lines(design);
  out += named_lines("joints", design.joints, design) + point_lines(design);
  out += part_lines("lateral_link", design.lateral_link, design);
  out += part_lines("bracket", design.bracket, design);
  out += part_lines("brace", design.brace, design);
  out += part_lines("arm", design.arm, design);
  out += part_lines("axle", design.axle, design);
  out += named_lines("members", design.members, design);
  out += named_lines("supports", design.supports, design);
  out += named_lines("springs", design.springs, design);
  out += named_lines("forces", design.forces, design);
  if (!design.load_cases.empty()) {
    out += "load_cases: [" + join(design.load_cases, ", ") + "]\n";
  }
  return out + factor_lines(design) + variant_lines(design);
}

}  // namespace cases
