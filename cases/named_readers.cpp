#include "cases/named_readers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "cases/number.hpp"
#include "cases/shape_words.hpp"
#include "parts/section_fields.hpp"

namespace cases {

using base::InputError;

bool require_mapping(const Entry& entry, const std::string& path, ReadingContext& context) {
  if (entry.value.kind == Value::Kind::mapping) return true;
  context.problem(entry.place, path, "it needs `key: value` lines below it");
  return false;
}

void read_materials(const Value& mapping, ReadingContext& context) {
  for (const Entry& entry : mapping.entries) {
    const std::string path = "materials." + entry.key;
    context.places.add(path, entry.place);
    if (!require_mapping(entry, path, context)) continue;
    sections::Material steel;
    steel.id = entry.key;
    steel.basis = "as entered";
    steel.haz_basis = "as entered";
    steel.mark = "as entered";
    steel.source = "the case file";
    FieldReader reader(context, entry.value, entry.place, path);
    parts::fields(reader, steel);
    reader.finish();
    context.design.materials.push_back({entry.key, steel});
  }
}

void read_sections(const Value& mapping, ReadingContext& context) {
  for (const Entry& entry : mapping.entries) {
    const std::string path = "sections." + entry.key;
    context.places.add(path, entry.place);
    if (!require_mapping(entry, path, context)) continue;
    const Entry* word = entry.value.find("shape");
    const std::optional<sections::Shape> kind =
        word == nullptr ? std::nullopt : shape_of_word(squeeze(word->value.text));
    if (!kind) {
      context.problem(word == nullptr ? entry.place : word->value.place, path + ".shape",
                      fmt::format("{}; `shape:` is one of: {}",
                                  word == nullptr ? "`shape` is missing"
                                                  : quoted(word->value.text) + " is no shape",
                                  join(shape_words(), ", ")));
      continue;
    }
    sections::Shape shape = *kind;
    Value rest = entry.value;
    rest.entries.erase(std::find_if(rest.entries.begin(), rest.entries.end(),
                                    [](const Entry& e) { return e.key == "shape"; }));
    const std::size_t before = context.problems.size();
    FieldReader reader(context, rest, entry.place, path);
    std::visit([&](auto& s) { parts::fields(reader, s); }, shape);
    reader.finish();
    if (context.problems.size() > before) continue;
    try {
      sections::require_valid(shape);
      context.design.sections.push_back({entry.key, shape});
    } catch (const InputError& error) {
      const Entry* field = rest.find(error.where().key);
      context.problem(field == nullptr ? entry.place : field->value.place,
                      path + "." + error.where().key, error.problem());
    }
  }
}

void read_joints(const Value& mapping, ReadingContext& context) {
  for (const Entry& entry : mapping.entries) {
    read_named_part(entry, "joints", context, context.design.joints);
  }
}

namespace {

/// `[0, 17, 22 in]`: the last unit serves the numbers before it.
std::array<double, 3> read_coordinates(const Value& list) {
  if (list.kind != Value::Kind::list || list.items.size() != 3) {
    throw InputError("", "a point is [x, y, z], e.g. [0, 17, 22 in]");
  }
  const std::string last = squeeze(list.items.back().text);
  const std::optional<NumberStart> number = number_at_start(last);
  const std::string unit = number ? last.substr(number->length) : std::string();
  std::array<double, 3> at{};
  for (std::size_t i = 0; i < 3; ++i) {
    std::string text = squeeze(list.items[i].text);
    const std::optional<NumberStart> own = number_at_start(text);
    if (own && own->length == text.size()) text += " " + unit;
    at[i] = read_quantity(text, parts::Dimension::length).si;
  }
  return at;
}

double distance(const std::array<double, 3>& a, const std::array<double, 3>& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

}  // namespace

void read_points(const Value& mapping, ReadingContext& context) {
  constexpr double kSamePlace = 1.0e-6;  // [m]
  for (const Entry& entry : mapping.entries) {
    const std::string path = "points." + entry.key;
    context.places.add(path, entry.place);
    std::array<double, 3> at{};
    try {
      at = read_coordinates(entry.value);
    } catch (const InputError& error) {
      context.problem(entry.value.kind == Value::Kind::empty ? entry.place : entry.value.place,
                      path, error.problem());
      continue;
    }
    for (const parts::Named<std::array<double, 3>>& other : context.design.points) {
      if (distance(at, other.value) < kSamePlace) {
        context.problem(entry.place, path,
                        fmt::format("it is at the same place as `{}`; use one point for both",
                                    other.name));
      }
    }
    context.design.points.push_back({entry.key, at});
  }
}

void read_factors(const Value& mapping, ReadingContext& context) {
  std::vector<checks::FactorEntry> known = checks::factor_entries(context.design.factors);
  std::vector<std::string> names;
  for (const checks::FactorEntry& factor : known) names.push_back(factor.key);
  for (const Entry& entry : mapping.entries) {
    const std::string path = "factors." + entry.key;
    context.places.add(path, entry.place);
    const auto factor = std::find_if(known.begin(), known.end(), [&](const auto& f) {
      return f.key == entry.key;
    });
    if (factor == known.end()) {
      context.problem(entry.place, path,
                      fmt::format("unknown key {}{}", quoted(entry.key),
                                  did_you_mean(entry.key, names)));
      continue;
    }
    try {
      const double value = read_quantity(entry.value.text, parts::Dimension::ratio).si;
      if (!(value > 0.0)) throw InputError("", "a required factor must be over 0, e.g. 1.5");
      *factor->value = value;
    } catch (const InputError& error) {
      context.problem(entry.value.place, path, error.problem());
    }
  }
}

}  // namespace cases
