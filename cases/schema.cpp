#include "cases/schema.hpp"

#include <array>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "cases/quantity.hpp"
#include "cases/shape_words.hpp"
#include "cases/top_keys.hpp"
#include "cases/unit.hpp"
#include "cases/words.hpp"
#include "checks/required_factors.hpp"
#include "loads/case_library.hpp"
#include "parts/design.hpp"
#include "parts/section_fields.hpp"

namespace cases {
namespace {

using parts::FieldInfo;
using parts::Presence;

std::string json_text(std::string_view words) {
  std::string out = "\"";
  for (const char c : words) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + '"';
}

std::string json_list(const std::vector<std::string>& items) {
  return "[" + join(items, ", ") + "]";
}

/// Words that an editor offers; others are left to the reader, which knows more spellings.
std::string words_offered(const std::vector<std::string>& words) {
  std::vector<std::string> all;
  for (const std::string& word : words) all.push_back(json_text(word));
  return fmt::format("\"anyOf\": [{{\"enum\": {}}}, {{\"type\": \"string\"}}]", json_list(all));
}

constexpr std::string_view kScalar = "\"type\": [\"string\", \"number\"]";

/// The properties of one part: a visitor for parts' `fields(visitor, part)`.
class SchemaFields {
 public:
  void quantity(const FieldInfo& info, double&, const parts::Quantity& limits) {
    std::vector<std::string> examples;
    for (const bool inches : {true, false}) {
      examples.push_back(json_text(example_quantity(limits.dimension, inches)));
    }
    if (limits.may_be_unsure) examples.push_back(json_text("not sure"));
    add(info, fmt::format("{}, \"examples\": {}", kScalar, json_list(examples)),
        dimension_name(limits.dimension));
  }
  template <class T>
  void phrase(const FieldInfo& info, T&) {
    add(info, kScalar, "a few words");
  }
  template <class Enum, std::size_t N>
  void choice(const FieldInfo& info, Enum&, const std::array<parts::Word<Enum>, N>& words) {
    std::vector<std::string> all;
    for (const parts::Word<Enum>& word : words) all.emplace_back(word.word);
    add(info, words_offered(all), "a word");
  }
  void flag(const FieldInfo& info, bool&) {
    add(info, "\"enum\": [\"yes\", \"no\", true, false]", "yes or no");
  }
  void text(const FieldInfo& info, std::string&) { add(info, kScalar, "a name or a few words"); }
  void point(const FieldInfo& info, std::string&) { add(info, kScalar, "the name of a point"); }
  void points(const FieldInfo& info, std::vector<std::string>&) {
    add(info, list_or_scalar(), "a list of points");
  }
  void vector(const FieldInfo& info, std::array<double, 3>&, parts::Dimension dimension) {
    add(info, list_or_scalar(),
        fmt::format("three of one kind, each {}", dimension_name(dimension)));
  }
  void outline(const FieldInfo& info, std::vector<std::array<double, 2>>&) {
    add(info, "\"type\": \"array\"", "a list of two lengths each");
  }
  void lengths(const FieldInfo& info, std::vector<double>&) {
    add(info, list_or_scalar(), "a length, or a list of them");
  }

  /// Adds a property that is no field.
  void property(std::string_view key, const std::string& schema, bool required) {
    properties_.push_back(json_text(key) + ": {" + schema + "}");
    if (required) required_.push_back(fmt::format("{{\"required\": [{}]}}", json_text(key)));
  }

  [[nodiscard]] std::string object() const {
    const std::string all =
        required_.empty() ? "" : fmt::format(", \"allOf\": {}", json_list(required_));
    return fmt::format(
        "\"type\": \"object\", \"additionalProperties\": false, \"properties\": {{\n{}}}{}",
        join(properties_, ",\n"), all);
  }

 private:
  static std::string list_or_scalar() { return "\"type\": [\"array\", \"string\", \"number\"]"; }

  void add(const FieldInfo& info, std::string_view kind, std::string_view kind_words) {
    std::string about = fmt::format("{} ({})", info.meaning, kind_words);
    if (info.presence == Presence::required) about += "; required";
    if (!info.basis.empty()) about += fmt::format("; left out: {}", info.basis);
    const std::string schema = fmt::format("{}, \"description\": {}", kind, json_text(about));
    properties_.push_back(json_text(info.key) + ": {" + schema + "}");
    if (!info.other_key.empty()) {
      properties_.push_back(json_text(info.other_key) + ": {" + schema + "}");
    }
    if (info.presence != Presence::required) return;
    std::string need = fmt::format("{{\"required\": [{}]}}", json_text(info.key));
    if (!info.other_key.empty()) {
      need = fmt::format("{{\"anyOf\": [{}, {{\"required\": [{}]}}]}}", need,
                         json_text(info.other_key));
    }
    required_.push_back(need);
  }

  std::vector<std::string> properties_;
  std::vector<std::string> required_;
};

template <class Part>
SchemaFields fields_in(Part part) {
  using parts::fields;
  SchemaFields out;
  fields(out, part);
  return out;
}

template <class Part>
std::string one() {
  return fields_in(Part{}).object();
}

/// Parts by name.
template <class Part>
std::string by_name() {
  return fmt::format("\"type\": \"object\", \"additionalProperties\": {{{}}}", one<Part>());
}

std::string sections_schema() {
  std::vector<std::string> kinds;
  for (const std::string& word : shape_words()) {
    SchemaFields fields =
        std::visit([](const auto& shape) { return fields_in(shape); }, *shape_of_word(word));
    fields.property("shape", fmt::format("\"const\": {}", json_text(word)), true);
    kinds.push_back("{" + fields.object() + "}");
  }
  return fmt::format("\"type\": \"object\", \"additionalProperties\": {{\"anyOf\": {}}}",
                     json_list(kinds));
}

std::string load_cases_schema() {
  std::vector<std::string> names;
  for (const loads::CaseInfo& info : loads::case_library()) names.emplace_back(info.name);
  SchemaFields own = fields_in(parts::CustomCase{});
  own.property("name", "\"type\": \"string\", \"description\": \"of a load case of your own\"",
               true);
  return fmt::format("\"type\": \"array\", \"items\": {{\"anyOf\": [{{{}}}, {{{}}}]}}",
                     words_offered(names), own.object());
}

std::string factors_schema() {
  checks::RequiredFactors usual;
  SchemaFields out;
  std::vector<std::string> presets;
  for (const checks::FactorPreset preset : checks::factor_presets()) {
    presets.push_back(checks::name_of(preset));
  }
  out.property("preset",
               fmt::format("{}, \"description\": {}", words_offered(presets),
                           json_text("the table that the other factors change")),
               false);
  for (const checks::FactorEntry& entry : checks::factor_entries(usual)) {
    out.property(entry.key,
                 fmt::format("{}, \"description\": {}, \"default\": {}", kScalar,
                             json_text(entry.basis), *entry.value),
                 false);
  }
  return out.object();
}

struct KeySchema {
  std::string_view key;
  std::string (*write)();
};

std::string scalar_schema() {
  return std::string(kScalar);
}
std::string units_schema() {
  return words_offered({"inches", "millimeters"});
}
std::string sizes_schema() {
  return words_offered({"nominal", "minimum"});
}
std::string points_schema() {
  return "\"type\": \"object\", \"additionalProperties\": {\"type\": [\"array\", \"string\"], "
         "\"description\": \"[forward, left, up], the last unit serves all three\"}";
}
std::string duty_schema() {
  return fmt::format("\"type\": \"array\", \"items\": {{{}}}", one<parts::DutyEntry>());
}
std::string variants_schema() {
  return "\"type\": \"object\", \"additionalProperties\": {\"type\": \"object\", "
         "\"description\": \"path: value, such as bracket.drop: 7 in\"}";
}
std::string compare_schema() {
  return "\"type\": \"array\", \"items\": {\"type\": [\"string\", \"number\"]}";
}

constexpr std::array kSchemas{KeySchema{"title", scalar_schema},
                              KeySchema{"units", units_schema},
                              KeySchema{"sizes", sizes_schema},
                              KeySchema{"vehicle", one<parts::VehicleEntry>},
                              KeySchema{"points", points_schema},
                              KeySchema{"materials", by_name<sections::Material>},
                              KeySchema{"sections", sections_schema},
                              KeySchema{"joints", by_name<parts::GivenJoint>},
                              KeySchema{"lateral_link", one<parts::LateralLink>},
                              KeySchema{"bracket", one<parts::Bracket>},
                              KeySchema{"brace", one<parts::Brace>},
                              KeySchema{"frame", one<parts::Frame>},
                              KeySchema{"arm", one<parts::Arm>},
                              KeySchema{"axle", one<parts::Axle>},
                              KeySchema{"limit_strap", one<parts::LimitStrap>},
                              KeySchema{"steering", one<parts::Steering>},
                              KeySchema{"members", by_name<parts::Member>},
                              KeySchema{"supports", by_name<parts::PlainSupport>},
                              KeySchema{"springs", by_name<parts::PlainSpring>},
                              KeySchema{"rigid", by_name<parts::RigidSet>},
                              KeySchema{"side_welds", by_name<parts::SideWeld>},
                              KeySchema{"bolt_groups", by_name<parts::BoltedGroup>},
                              KeySchema{"forces", by_name<parts::PlainForce>},
                              KeySchema{"line_loads", by_name<parts::LineLoad>},
                              KeySchema{"strains", by_name<parts::GivenStrain>},
                              KeySchema{"settlements", by_name<parts::Settlement>},
                              KeySchema{"self_weight", by_name<parts::SelfWeight>},
                              KeySchema{"load_cases", load_cases_schema},
                              KeySchema{"duty", duty_schema},
                              KeySchema{"factors", factors_schema},
                              KeySchema{"variants", variants_schema},
                              KeySchema{"compare", compare_schema}};

const KeySchema& schema_of(std::string_view key) {
  for (const KeySchema& known : kSchemas) {
    if (known.key == key) return known;
  }
  INVARIANT(false);  // each key at the top has its line above
  return kSchemas.front();
}

}  // namespace

std::string schema() {
  std::vector<std::string> keys;
  for (const TopKey& top : top_keys()) {
    keys.push_back(fmt::format("{}: {{{}, \"description\": {}}}", json_text(top.key),
                               schema_of(top.key).write(), json_text(top.meaning)));
  }
  return fmt::format(
      "{{\"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n"
      "\"title\": \"linkmargin case file\",\n"
      "\"type\": \"object\", \"required\": [\"title\"], \"additionalProperties\": false,\n"
      "\"properties\": {{\n{}}}}}\n",
      join(keys, ",\n"));
}

}  // namespace cases
