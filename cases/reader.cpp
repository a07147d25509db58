#include "cases/reader.hpp"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include <fmt/format.h>

#include "cases/field_reader.hpp"
#include "cases/group_shear.hpp"
#include "cases/named_readers.hpp"
#include "cases/patch.hpp"
#include "cases/read_fields.hpp"
#include "cases/top_keys.hpp"
#include "cases/unit_system.hpp"
#include "cases/validate.hpp"

namespace cases {
namespace {

std::vector<std::string> known_keys() {
  std::vector<std::string> keys;
  for (const TopKey& top : top_keys()) keys.emplace_back(top.key);
  return keys;
}

class CaseReader {
 public:
  CaseReader(const Value& root, ReadingContext& context) : root_(root), context_(context) {}

  void read() {
    for (const Entry& entry : root_.entries) context_.places.add(entry.key, entry.place);
    unknown_keys();
    title_and_units();
    read_which_sizes(root_.find("sizes"), context_);
    if (const Value* v = mapping("materials")) read_materials(*v, context_);
    if (const Value* v = mapping("sections")) read_sections(*v, context_);
    if (const Value* v = mapping("joints")) read_joints(*v, context_);
    if (const Value* v = mapping("points")) read_points(*v, context_);
    part("vehicle", context_.design.vehicle);
    part("axle", context_.design.axle);
    part("lateral_link", context_.design.lateral_link);
    part("bracket", context_.design.bracket);
    part("brace", context_.design.brace);
    part("frame", context_.design.frame);
    part("arm", context_.design.arm);
    part("limit_strap", context_.design.limit_strap);
    part("steering", context_.design.steering);
    named("members", context_.design.members);
    named("supports", context_.design.supports);
    named("springs", context_.design.springs);
    named("rigid", context_.design.rigid);
    named("side_welds", context_.design.side_welds);
    named("bolt_groups", context_.design.bolt_groups);
    named("forces", context_.design.forces);
    named("line_loads", context_.design.line_loads);
    named("strains", context_.design.strains);
    named("settlements", context_.design.settlements);
    named("self_weight", context_.design.self_weight);
    assume_group_shear(context_.design);
    if (const Value* v = mapping("factors")) read_factors(*v, context_);
    if (const Entry* entry = root_.find("load_cases")) read_load_cases(*entry, context_);
    if (const Entry* entry = root_.find("duty")) read_duty(*entry, context_);
    rules();
    sound_ = context_.problems.empty();
    variants();
  }

 private:
  void unknown_keys() {
    const std::vector<std::string> known = known_keys();
    for (const Entry& entry : root_.entries) {
      if (std::find(known.begin(), known.end(), entry.key) != known.end()) continue;
      const std::string hint = did_you_mean(entry.key, known);
      context_.problem(entry.place, entry.key,
                       fmt::format("unknown key {}{}", quoted(entry.key), hint));
      hints_ += hint;
    }
  }

  /// The value of a key that must hold `key: value` lines.
  const Value* mapping(const std::string& key) {
    const Entry* entry = root_.find(key);
    if (entry == nullptr) return nullptr;
    if (entry->value.kind == Value::Kind::mapping) return &entry->value;
    context_.problem(entry->value.place, key, "it needs `key: value` lines below it");
    return nullptr;
  }

  void title_and_units() {
    const Entry* title = root_.find("title");
    if (title == nullptr && hints_.find("`title`") != std::string::npos) {
      // Said already: the key is misspelled.
    } else if (title == nullptr) {
      context_.problem({1, 1}, "", "`title` is missing: what this case is, in a few words");
    } else if (trim(title->value.text).empty()) {
      context_.problem(title->value.place, "title", "a few words are needed here");
    } else {
      context_.design.title = title->value.text;
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
    read_fields(reader, *out);
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

  /// `variants:` by name, then the short words of `compare:`; each is tried on the design.
  void variants() {
    if (const Value* value = mapping("variants")) {
      for (const Entry& entry : value->entries) variant(entry);
    }
    const Entry* compare = root_.find("compare");
    if (compare == nullptr) return;
    if (compare->value.kind != Value::Kind::list) {
      context_.problem(compare->value.place, "compare",
                       "a list is needed, e.g. [no brace, 1-1/2 in solid bar]");
      return;
    }
    for (const Value& item : compare->value.items) compared(item);
  }

  void compared(const Value& words) {
    if (words.kind != Value::Kind::scalar) {
      context_.problem(words.place, "compare", "a few words are needed, e.g. no brace");
      return;
    }
    // Without a sound base case there is nothing to try them on.
    if (!sound_) return;
    try {
      for (parts::Variant& v : variants_from_words(context_.design, words.text)) {
        add_variant(std::move(v), words.place, "compare");
      }
    } catch (const base::InputError& error) {
      context_.problem(words.place, "compare", error.what());
    }
  }

  void variant(const Entry& entry) {
    const std::string path = "variants." + entry.key;
    context_.places.add(path, entry.place);
    if (entry.value.kind != Value::Kind::mapping) {
      context_.problem(entry.place, path,
                       "it needs `path: value` lines, e.g. lateral_link.tube: 2 x 0.250 in DOM");
      return;
    }
    parts::Variant out{entry.key, {}};
    for (const Entry& change : entry.value.entries) {
      context_.places.add(path + "." + change.key, change.value.place);
      out.patches.push_back({change.key, patch_text(change)});
    }
    if (!sound_) return;
    try {
      (void)apply(context_.design, out);
      add_variant(std::move(out), entry.place, path);
    } catch (const base::InputError& error) {
      const std::string key = path + "." + error.where().key;
      context_.problem(context_.places.find(key), key, error.problem());
    }
  }

  static std::string patch_text(const Entry& change) {
    if (change.value.kind == Value::Kind::list) {
      std::vector<std::string> items;
      for (const Value& item : change.value.items) items.push_back(item.text);
      return fmt::format("[{}]", join(items, ", "));
    }
    return names_a_part(change.key) && leaves_out(change.value.text) ? "" : change.value.text;
  }

  void add_variant(parts::Variant variant, const Place& place, const std::string& key) {
    for (const parts::Variant& other : context_.design.variants) {
      if (other.name != variant.name) continue;
      context_.problem(place, key, quoted(variant.name) + " is given twice");
      return;
    }
    context_.design.variants.push_back(std::move(variant));
  }

  /// The part a key is about: "bracket", or "members.left post" in a list.
  static std::string part_of(const std::string& key) {
    const std::size_t first = key.find('.');
    const std::string group = key.substr(0, first);
    constexpr std::array<std::string_view, 14> kGroups = {
        "materials",   "members",     "supports",   "springs",    "rigid",
        "side_welds",  "bolt_groups", "forces",     "line_loads", "strains",
        "settlements", "self_weight", "load_cases", "duty"};
    const bool in_list = std::find(kGroups.begin(), kGroups.end(), group) != kGroups.end();
    return in_list && first != std::string::npos ? key.substr(0, key.find('.', first + 1)) : group;
  }

  /// A part with a problem of its own is not blamed for values that clash because of it.
  void rules() {
    const auto n_before = static_cast<std::ptrdiff_t>(context_.problems.size());
    // A part under a misspelled key is not missing as well.
    if (hints_.empty()) {
      for (const base::InputError& e : missing_parts(context_.design)) report(e);
    }
    for (const base::InputError& e : clashing_values(context_.design)) {
      const std::string part = part_of(e.where().key);
      const auto begin = context_.problems.begin();
      const bool blamed = std::any_of(begin, begin + n_before, [&](const base::InputError& other) {
        return part_of(other.where().key) == part;
      });
      if (!blamed) report(e);
    }
  }

  void report(const base::InputError& error) {
    const Place place = context_.places.find(error.where().key);
    context_.problem(place.line == 0 ? Place{1, 1} : place, error.where().key, error.problem());
  }

  std::string hints_;   ///< what unknown keys at the top may have meant
  bool sound_ = false;  ///< the base case has no problem
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
    context.problem({error.where().line, error.where().column}, error.where().key, error.problem());
  }
  out.problems = std::move(context.problems);
  std::stable_sort(out.problems.begin(), out.problems.end(), earlier);
  out.places = std::move(context.places);
  if (out.problems.empty()) out.design = std::move(context.design);
  return out;
}

}  // namespace cases
