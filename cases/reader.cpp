#include "cases/reader.hpp"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include <fmt/format.h>

#include "cases/field_reader.hpp"
#include "cases/named_readers.hpp"
#include "cases/patch.hpp"
#include "cases/unit_system.hpp"
#include "cases/validate.hpp"
#include "loads/vehicle.hpp"

namespace cases {
namespace {

const std::vector<std::string>& top_keys() {
  static const std::vector<std::string> kKeys = {
      "title",   "units",    "vehicle", "points",  "materials", "sections",
      "joints",  "lateral_link", "bracket", "brace", "arm",     "axle",
      "members", "supports", "springs", "forces",  "load_cases", "factors",
      "variants", "compare"};
  return kKeys;
}

class CaseReader {
 public:
  CaseReader(const Value& root, ReadingContext& context) : root_(root), context_(context) {}

  void read() {
    for (const Entry& entry : root_.entries) context_.places.add(entry.key, entry.place);
    unknown_keys();
    title_and_units();
    if (const Value* v = mapping("materials")) read_materials(*v, context_);
    if (const Value* v = mapping("sections")) read_sections(*v, context_);
    if (const Value* v = mapping("joints")) read_joints(*v, context_);
    if (const Value* v = mapping("points")) read_points(*v, context_);
    part("vehicle", context_.design.vehicle);
    part("axle", context_.design.axle);
    part("lateral_link", context_.design.lateral_link);
    part("bracket", context_.design.bracket);
    part("brace", context_.design.brace);
    part("arm", context_.design.arm);
    named("members", context_.design.members);
    named("supports", context_.design.supports);
    named("springs", context_.design.springs);
    named("forces", context_.design.forces);
    if (const Value* v = mapping("factors")) read_factors(*v, context_);
    load_cases();
    if (context_.problems.empty()) validate(context_);
    if (context_.problems.empty()) variants();
  }

 private:
  void unknown_keys() {
    for (const Entry& entry : root_.entries) {
      if (std::find(top_keys().begin(), top_keys().end(), entry.key) != top_keys().end()) continue;
      context_.problem(entry.place, entry.key,
                       fmt::format("unknown key {}{}", quoted(entry.key),
                                   did_you_mean(entry.key, top_keys())));
    }
  }

  /// The value of a key that must hold `key: value` lines.
  const Value* mapping(const std::string& key) {
    const Entry* entry = root_.find(key);
    if (entry == nullptr) return nullptr;
    if (entry->value.kind == Value::Kind::mapping) return &entry->value;
    const Place& place =
        entry->value.kind == Value::Kind::empty ? entry->place : entry->value.place;
    context_.problem(place, key, "it needs `key: value` lines below it");
    return nullptr;
  }

  void title_and_units() {
    const Entry* title = root_.find("title");
    if (title == nullptr) {
      context_.problem({1, 1}, "", "`title` is missing: what this case is, in a few words");
    } else if (title->value.kind != Value::Kind::scalar) {
      context_.problem(title->place, "title", "a few words are needed here");
    } else {
      context_.design.title = squeeze(title->value.text);
    }
    context_.design.inches = uses_inches(root_);
    if (const Entry* units = root_.find("units")) {
      if (same_words(units->value.text, "inches")) {
        context_.design.inches = true;
      } else if (same_words(units->value.text, "millimeters")) {
        context_.design.inches = false;
      } else {
        context_.problem(units->value.place, "units",
                         quoted(units->value.text) + " is neither inches nor millimeters");
      }
    }
  }

  template <class T>
  void part(const std::string& key, std::optional<T>& out) {
    const Value* value = mapping(key);
    if (value == nullptr) return;
    // Set first, so that points of the part itself are known while it is read.
    out.emplace();
    FieldReader reader(context_, *value, root_.find(key)->place, key);
    fields(reader, *out);
    reader.finish();
  }

  template <class T>
  void named(const std::string& key, std::vector<parts::Named<T>>& out) {
    const Value* value = mapping(key);
    if (value == nullptr) return;
    for (const Entry& entry : value->entries) {
      read_named_part(entry, key, context_, out);
    }
  }

  void load_cases() {
    const Entry* entry = root_.find("load_cases");
    if (entry == nullptr) return;
    if (entry->value.kind != Value::Kind::list || entry->value.items.empty()) {
      context_.problem(entry->place, "load_cases",
                       fmt::format("a list is needed, e.g. [{}]", loads::case_names().front()));
      return;
    }
    for (const Value& item : entry->value.items) {
      std::string name = lower(squeeze(item.text));
      std::replace(name.begin(), name.end(), ' ', '_');
      const std::vector<std::string>& known = loads::case_names();
      if (std::find(known.begin(), known.end(), name) == known.end()) {
        context_.problem(item.place, "load_cases",
                         fmt::format("{} is no load case; there is {}", quoted(item.text),
                                     join(known, ", ")));
      } else {
        context_.design.load_cases.push_back(name);
      }
    }
  }

  /// `variants:` by name, then the short words of `compare:`; each is tried on the design.
  void variants() {
    if (const Value* value = mapping("variants")) {
      for (const Entry& entry : value->entries) variant(entry);
    }
    const Entry* compare = root_.find("compare");
    if (compare == nullptr) return;
    if (compare->value.kind != Value::Kind::list) {
      context_.problem(compare->place, "compare", "a list is needed, e.g. [no brace]");
      return;
    }
    for (const Value& item : compare->value.items) {
      try {
        for (parts::Variant& v : variants_from_words(context_.design, item.text)) {
          context_.design.variants.push_back(std::move(v));
        }
      } catch (const base::InputError& error) {
        context_.problem(item.place, "compare", error.what());
      }
    }
  }

  void variant(const Entry& entry) {
    const std::string path = "variants." + entry.key;
    if (entry.value.kind != Value::Kind::mapping) {
      context_.problem(entry.place, path,
                       "it needs `path: value` lines, e.g. lateral_link.tube: 2 x 0.250 in DOM");
      return;
    }
    parts::Variant out{entry.key, {}};
    parts::Design changed = context_.design;
    for (const Entry& change : entry.value.entries) {
      const parts::Patch patch{change.key, leaves_out(change.value.text) ? "" : change.value.text};
      try {
        set(changed, patch);
        out.patches.push_back(patch);
      } catch (const base::InputError& error) {
        context_.problem(change.place, path + "." + change.key, error.problem());
      }
    }
    context_.design.variants.push_back(std::move(out));
  }

  const Value& root_;
  ReadingContext& context_;
};

bool earlier(const base::InputError& a, const base::InputError& b) {
  return std::tie(a.where().line, a.where().column) < std::tie(b.where().line, b.where().column);
}

}  // namespace

base::InputError Reading::locate(const base::InputError& error) const {
  if (error.where().line > 0) return error;
  const Place place = places.find(error.where().key);
  return error.at({file, place.line, place.column, error.where().key});
}

Reading read(std::string_view text, const std::string& file_name) {
  Reading out;
  out.file = file_name;
  ReadingContext context(file_name);
  try {
    Document document = read_document(text);
    for (const base::InputError& twice : document.problems) {
      context.problem({twice.where().line, twice.where().column}, twice.where().key,
                      twice.problem());
    }
    CaseReader(document.root, context).read();
  } catch (const base::InputError& error) {
    context.problem({error.where().line, error.where().column}, error.where().key,
                    error.problem());
  }
  out.problems = std::move(context.problems);
  std::stable_sort(out.problems.begin(), out.problems.end(), earlier);
  out.places = std::move(context.places);
  if (out.problems.empty()) out.design = std::move(context.design);
  return out;
}

}  // namespace cases
