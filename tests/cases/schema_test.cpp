#include "cases/schema.hpp"

#include <fstream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cases/document.hpp"
#include "cases/reader.hpp"
#include "cases/starters.hpp"
#include "cases/top_keys.hpp"

namespace schema_test {
namespace {

using Json = nlohmann::json;

/// A YAML value as JSON has it: what is a number in both is one.
Json as_json(const cases::Value& value) {
  using Kind = cases::Value::Kind;
  if (value.kind == Kind::list) {
    Json list = Json::array();
    for (const cases::Value& item : value.items) list.push_back(as_json(item));
    return list;
  }
  if (value.kind == Kind::mapping) {
    Json object = Json::object();
    for (const cases::Entry& entry : value.entries) object[entry.key] = as_json(entry.value);
    return object;
  }
  const Json number = Json::parse(value.text, nullptr, false);
  return number.is_number() ? number : Json(value.text);
}

bool has_type(const Json& value, const std::string& type) {
  return (type == "object" && value.is_object()) || (type == "array" && value.is_array()) ||
         (type == "string" && value.is_string()) || (type == "number" && value.is_number());
}

/// The words of JSON Schema that cases::schema() uses; empty when the value is valid.
/// Source: JSON Schema Validation, draft 2020-12, sec. 6, and Core, sec. 10 (from memory).
std::string problem(const Json& schema, const Json& value, const std::string& path) {
  if (schema.contains("type")) {
    const Json types = schema["type"].is_array() ? schema["type"] : Json::array({schema["type"]});
    bool fits = false;
    for (const Json& type : types) fits = fits || has_type(value, type);
    if (!fits) return path + ": type of " + value.dump();
  }
  if (schema.contains("const") && schema["const"] != value) return path + ": const";
  if (schema.contains("enum")) {
    bool is_one = false;
    for (const Json& word : schema["enum"]) is_one = is_one || word == value;
    if (!is_one) return path + ": enum of " + value.dump();
  }
  if (schema.contains("anyOf")) {
    std::string all;
    bool fits = false;
    for (const Json& one : schema["anyOf"]) {
      const std::string why = problem(one, value, path);
      fits = fits || why.empty();
      all += why + "; ";
    }
    if (!fits) return path + ": none of: " + all;
  }
  for (const Json& one : schema.value("allOf", Json::array())) {
    if (std::string why = problem(one, value, path); !why.empty()) return why;
  }
  for (const Json& key : schema.value("required", Json::array())) {
    if (!value.contains(key.get<std::string>())) return path + ": lacks " + key.dump();
  }
  if (value.is_array() && schema.contains("items")) {
    for (const Json& item : value) {
      if (std::string why = problem(schema["items"], item, path + "[]"); !why.empty()) return why;
    }
  }
  if (!value.is_object()) return "";
  const Json properties = schema.value("properties", Json::object());
  for (const auto& [key, item] : value.items()) {
    const std::string below = path + "." + key;
    const Json rest = schema.value("additionalProperties", Json(true));
    if (!properties.contains(key) && rest == false) return below + ": unknown";
    const Json& its = properties.contains(key) ? properties[key] : rest;
    if (!its.is_object()) continue;
    if (std::string why = problem(its, item, below); !why.empty()) return why;
  }
  return "";
}

std::string problem_of(const std::string& yaml) {
  static const Json kSchema = Json::parse(cases::schema());
  return problem(kSchema, as_json(cases::read_document(yaml).root), "");
}

std::string file_text(const std::string& name) {
  std::ifstream file(std::string(LINKMARGIN_SOURCE_DIR "/cases/") + name);
  std::stringstream text;
  text << file.rdbuf();
  REQUIRE(!text.str().empty());
  return text.str();
}

}  // namespace

TEST_CASE("the schema takes every case that the reader takes", "[cases][schema]") {
  for (const char* name :
       {"examples/front-axle-us.yaml", "examples/front-axle-metric.yaml",
        "examples/lateral-link-only.yaml", "examples/plain-frame.yaml",
        "examples/channel-frame-metric.yaml", "examples/three-drops.yaml", "format/any-frame.yaml",
        "format/braced-link.yaml", "format/four-links.yaml", "format/whole-axle.yaml"}) {
    INFO(name);
    CHECK(problem_of(file_text(name)) == "");
  }
}

TEST_CASE("the schema knows every key at the top and refuses others", "[cases][schema]") {
  const Json schema = Json::parse(cases::schema());
  for (const cases::TopKey& top : cases::top_keys()) {
    CHECK(schema["properties"].contains(std::string(top.key)));
  }
  CHECK(schema["properties"].size() == cases::top_keys().size());
  CHECK(problem_of("title: a\nbracet: {drop: 4 in}\n") == ".bracet: unknown");
  CHECK(problem_of("title: a\nbracket: {dorp: 4 in}\n") != "");
  CHECK(problem_of("units: inches\n") == ": lacks \"title\"");
}

TEST_CASE("there is a case to start from for every layout, and it can be read", "[cases][schema]") {
  for (const std::string& layout : cases::layouts()) {
    INFO(layout);
    const std::string text(cases::starter(layout));
    const cases::Reading reading = cases::read(text, layout);
    for (const base::InputError& error : reading.problems) INFO(error.what());
    CHECK(reading.design.has_value());
    CHECK(problem_of(text) == "");
  }
  CHECK(cases::starter("five-arms").empty());
}

}  // namespace schema_test
