#include "cases/named_readers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "cases/number.hpp"
#include "cases/phrase.hpp"
#include "cases/shape_words.hpp"
#include "cases/three_numbers.hpp"
#include "loads/case_library.hpp"
#include "parts/section_fields.hpp"

namespace cases {
namespace {

using base::InputError;

/// The shape that `shape:` names, without its sizes; nothing, and a problem, when it names none.
std::optional<sections::Shape> shape_named(const Entry& entry, const std::string& path,
                                           ReadingContext& context) {
  const Entry* word = entry.value.find("shape");
  if (word == nullptr) {
    context.problem(entry.place, path,
                    "`shape` is missing; it is one of: " + join(shape_words(), ", "));
    return std::nullopt;
  }
  const std::string text = squeeze(word->value.text);
  const std::optional<sections::Shape> shape = shape_of_word(text);
  if (!shape) {
    context.problem(word->value.place, path + ".shape",
                    fmt::format("unknown shape {}{}", quoted(text),
                                did_you_mean(text, shape_words()).empty()
                                    ? "; it is one of: " + join(shape_words(), ", ")
                                    : did_you_mean(text, shape_words())));
  }
  return shape;
}

/// One thickness that is given serves all walls.
void use_for_all_walls(sections::ThinWalled& line) {
  const std::size_t walls = line.closed ? line.points.size() : line.points.size() - 1;
  if (line.walls.size() == 1) line.walls.assign(walls, line.walls.front());
}

void read_section(const Entry& entry, const std::string& path, sections::Shape& shape,
                  ReadingContext& context) {
  Value rest = entry.value;
  rest.entries.erase(std::remove_if(rest.entries.begin(), rest.entries.end(),
                                    [](const Entry& e) { return e.key == "shape"; }),
                     rest.entries.end());
  const std::size_t before = context.problems.size();
  FieldReader reader(context, rest, entry.place, path);
  std::visit([&](auto& s) { parts::fields(reader, s); }, shape);
  reader.finish();
  if (context.problems.size() > before) return;
  if (auto* line = std::get_if<sections::ThinWalled>(&shape)) use_for_all_walls(*line);
  try {
    sections::require_valid(shape);
  } catch (const InputError& error) {
    const Entry* field = rest.find(error.where().key);
    context.problem(field == nullptr ? entry.place : field->value.place,
                    path + "." + error.where().key, error.problem());
  }
}

/// The words of joint phrases cannot name a joint of the case.
void require_own_word(const Entry& entry, const std::string& path, ReadingContext& context) {
  try {
    (void)read_phrase<parts::JointSpec>(entry.key, parts::Design{});
  } catch (const InputError&) {
    return;
  }
  context.problem(entry.place, path, "this is a joint of the format; give yours another name");
}

double distance(const std::array<double, 3>& a, const std::array<double, 3>& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/// The name of a kind of built-in case.
void choose_kind(const Value& item, ReadingContext& context) {
  const std::vector<std::string>& known = loads::case_names();
  std::vector<std::string>& chosen = context.design.load_cases;
  std::string name = lower(squeeze(item.text));
  std::replace(name.begin(), name.end(), ' ', '_');
  std::replace(name.begin(), name.end(), '-', '_');
  if (std::find(chosen.begin(), chosen.end(), name) != chosen.end()) {
    context.problem(item.place, "load_cases", quoted(item.text) + " is given twice");
  } else if (std::find(known.begin(), known.end(), name) == known.end()) {
    const std::string hint = did_you_mean(name, known);
    context.problem(item.place, "load_cases",
                    fmt::format("unknown load case {}{}", quoted(item.text),
                                hint.empty() ? "; there is " + join(known, ", ") : hint));
  } else {
    chosen.push_back(name);
  }
}

/// `{name: ditch, left_wheel: [-8, 0, 20 kN]}`.
void read_custom_case(const Value& item, ReadingContext& context) {
  const Entry* name = item.find("name");
  if (name == nullptr || name->value.kind != Value::Kind::scalar) {
    context.problem(item.place, "load_cases",
                    "`name` is missing: a few words for this load case, e.g. name: ditch");
    return;
  }
  const Entry named{squeeze(name->value.text), name->value.place, item};
  const std::string path = "load_cases." + named.key;
  context.places.add(path, item.place);
  require_name(named, path, context);
  Value rest = item;
  rest.entries.erase(std::remove_if(rest.entries.begin(), rest.entries.end(),
                                    [](const Entry& e) { return e.key == "name"; }),
                     rest.entries.end());
  parts::Named<parts::CustomCase> custom{named.key, {}};
  FieldReader reader(context, rest, item.place, path);
  read_fields(reader, custom.value);
  reader.finish();
  context.design.custom_cases.push_back(std::move(custom));
}

}  // namespace

bool require_mapping(const Entry& entry, const std::string& path, ReadingContext& context) {
  if (entry.value.kind == Value::Kind::mapping) return true;
  context.problem(entry.place, path, "it needs `key: value` lines below it");
  return false;
}

void require_name(const Entry& entry, const std::string& path, ReadingContext& context) {
  const bool fits = !trim(entry.key).empty() && trim(entry.key) == entry.key &&
                    entry.key.find_first_of(".=[]") == std::string::npos;
  if (!fits) context.problem(entry.place, path, "a name is a few words without `.`, `=`, `[`, `]`");
}

void read_materials(const Value& mapping, ReadingContext& context) {
  for (const Entry& entry : mapping.entries) {
    const std::string path = "materials." + entry.key;
    context.places.add(path, entry.place);
    require_name(entry, path, context);
    if (sections::find_material(entry.key)) {
      context.problem(entry.place, path, "this is a built-in steel; give yours another name");
    }
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
    require_name(entry, path, context);
    if (number_at_start(entry.key)) {
      context.problem(entry.place, path, "a section's name must not start with a number");
    }
    if (!require_mapping(entry, path, context)) continue;
    std::optional<sections::Shape> shape = shape_named(entry, path, context);
    if (shape) read_section(entry, path, *shape, context);
    // One with problems is kept too, so that the parts that name it do not complain as well.
    context.design.sections.push_back({entry.key, shape.value_or(sections::RoundBar{})});
  }
}

void read_joints(const Value& mapping, ReadingContext& context) {
  for (const Entry& entry : mapping.entries) {
    require_own_word(entry, "joints." + entry.key, context);
    read_named_part(entry, "joints", context, context.design.joints);
  }
}

std::array<double, 3> read_coordinates(const Value& list) {
  return read_three(list, parts::Dimension::length, "a point is [x, y, z], e.g. [0, 17, 22 in]").si;
}

void read_points(const Value& mapping, ReadingContext& context) {
  constexpr double kSamePlace = 1.0e-6;  // [m]
  for (const Entry& entry : mapping.entries) {
    const std::string path = "points." + entry.key;
    context.places.add(path, entry.place);
    require_name(entry, path, context);
    // One with problems is kept too, so that the parts that name it do not complain as well.
    std::array<double, 3> at = {base::kUnset, base::kUnset, base::kUnset};
    try {
      // Not read into `at` itself: g++ 12 at -O1 and -O2 then drops the unset values it began with.
      const std::array<double, 3> read = read_coordinates(entry.value);
      at = read;
    } catch (const InputError& error) {
      context.problem(entry.value.place, path, error.problem());
    }
    for (const auto& other : context.design.points) {
      if (!(distance(at, other.value) < kSamePlace)) continue;
      context.problem(entry.place, path,
                      fmt::format("`{}` is at the same place as `{}`; use one point for both",
                                  entry.key, other.name));
    }
    context.design.points.push_back({entry.key, at});
  }
}

namespace {

/// The table that the other factors of the case change.
void choose_preset(const Entry& entry, const std::string& path, ReadingContext& context) {
  std::vector<std::string> names;
  for (const checks::FactorPreset preset : checks::factor_presets()) {
    names.push_back(checks::name_of(preset));
    if (!same_words(entry.value.text, names.back())) continue;
    context.design.factor_preset = preset;
    context.design.factors = checks::factors_of(preset);
    return;
  }
  context.problem(entry.value.place, path,
                  fmt::format("{} is no table of factors known here: {}",
                              quoted(squeeze(entry.value.text)), join(names, ", ")));
}

}  // namespace

void read_factors(const Value& mapping, ReadingContext& context) {
  constexpr const char* kPreset = "preset";
  // It comes first, wherever it stands.
  for (const Entry& entry : mapping.entries) {
    if (entry.key != kPreset) continue;
    context.places.add("factors.preset", entry.place);
    choose_preset(entry, "factors.preset", context);
  }
  std::vector<checks::FactorEntry> known = checks::factor_entries(context.design.factors);
  std::vector<std::string> names = {kPreset};
  for (const checks::FactorEntry& factor : known) names.push_back(factor.key);
  for (const Entry& entry : mapping.entries) {
    if (entry.key == kPreset) continue;
    const std::string path = "factors." + entry.key;
    context.places.add(path, entry.place);
    const auto factor =
        std::find_if(known.begin(), known.end(), [&](const auto& f) { return f.key == entry.key; });
    if (factor == known.end()) {
      context.problem(entry.place, path,
                      "unknown key " + quoted(entry.key) + did_you_mean(entry.key, names));
      continue;
    }
    try {
      const double value = read_quantity(entry.value.text, parts::Dimension::ratio).si;
      if (!(value >= 1.0)) {
        throw InputError("", squeeze(entry.value.text) +
                                 " is under 1: a part must hold the load itself; e.g. 1.5");
      }
      *factor->value = value;
    } catch (const InputError& error) {
      context.problem(entry.value.place, path, error.problem());
    }
  }
}

void read_load_cases(const Entry& entry, ReadingContext& context) {
  const std::vector<std::string>& known = loads::case_names();
  if (entry.value.kind != Value::Kind::list || entry.value.items.empty()) {
    context.problem(entry.value.place, entry.key,
                    fmt::format("a list is needed, e.g. [{}]", known.front()));
    return;
  }
  for (const Value& item : entry.value.items) {
    if (item.kind == Value::Kind::mapping) {
      read_custom_case(item, context);
    } else {
      choose_kind(item, context);
    }
  }
}

void read_which_sizes(const Entry* entry, ReadingContext& context) {
  if (entry == nullptr) {
    context.assume("sizes", "nominal",
                   "as entered, with nothing taken off for the mill's tolerances; `sizes: minimum` "
                   "takes it off");
    return;
  }
  for (const sections::Sizes sizes : {sections::Sizes::nominal, sections::Sizes::minimum}) {
    if (!same_words(entry->value.text, word_of(sizes))) continue;
    context.design.sizes = sizes;
    return;
  }
  context.problem(entry->value.place, entry->key,
                  quoted(squeeze(entry->value.text)) + " is neither nominal nor minimum");
}

std::string_view word_of(sections::Sizes sizes) {
  return sizes == sections::Sizes::nominal ? "nominal" : "minimum";
}

void read_duty(const Entry& entry, ReadingContext& context) {
  if (entry.value.kind != Value::Kind::list || entry.value.items.empty()) {
    context.problem(entry.value.place, entry.key,
                    "a list is needed, each item such as {from: hard corner turning left, to: hard "
                    "corner turning right, per_1000_km: 500}");
    return;
  }
  for (const Value& item : entry.value.items) {
    const std::string name = std::to_string(context.design.duty.size() + 1);
    const std::string path = "duty." + name;
    context.places.add(path, item.place);
    if (item.kind != Value::Kind::mapping) {
      context.problem(item.place, path, "it needs from, to and per_1000_km");
      continue;
    }
    parts::Named<parts::DutyEntry> block{name, {}};
    FieldReader reader(context, item, item.place, path);
    read_fields(reader, block.value);
    reader.finish();
    context.design.duty.push_back(std::move(block));
  }
}

}  // namespace cases
