#include "cases/patch.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <optional>
#include <type_traits>
#include <utility>

#include <fmt/format.h>

#include "cases/field_reader.hpp"
#include "cases/group_shear.hpp"
#include "cases/named_readers.hpp"
#include "cases/quantity.hpp"
#include "cases/read_fields.hpp"
#include "cases/validate.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Design;
using parts::Patch;

/// A path cut at its dots: "members.left post.section" -> members, left post, section.
struct Path {
  std::string whole;
  std::string group;
  std::string name;   ///< of a list only
  std::string field;  ///< empty when the path ends before it
};

constexpr std::array<std::string_view, 9> kParts = {"vehicle", "lateral_link", "bracket",
                                                    "brace",   "frame",        "arm",
                                                    "axle",    "limit_strap",  "steering"};
constexpr std::array<std::string_view, 13> kLists = {
    "members",    "supports", "springs",     "rigid",       "side_welds", "bolt_groups", "forces",
    "line_loads", "strains",  "settlements", "self_weight", "load_cases", "duty"};

template <std::size_t N>
bool is_one_of(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

Path cut(std::string_view raw) {
  const std::string whole(trim(raw));
  const std::size_t first = whole.find('.');
  Path path{whole, whole.substr(0, first), {}, {}};
  if (first == std::string::npos) return path;
  const std::string rest = whole.substr(first + 1);
  if (!is_one_of(kLists, path.group)) {
    path.field = rest;
    return path;
  }
  const std::size_t last = rest.rfind('.');
  path.name = rest.substr(0, last);
  if (last != std::string::npos) path.field = rest.substr(last + 1);
  return path;
}

/// The value of a patch as a case file would hold it: a list between brackets, else a scalar.
Value value_of(const std::string& text) {
  const std::string_view trimmed = trim(text);
  if (trimmed.size() < 2 || trimmed.front() != '[' || trimmed.back() != ']') {
    return bare_value(text.empty() ? Value::Kind::empty : Value::Kind::scalar, {}, text);
  }
  Value list = bare_value(Value::Kind::list);
  for (const std::string& item : split(trimmed.substr(1, trimmed.size() - 2), ",")) {
    list.items.push_back(bare_value(Value::Kind::scalar, {}, item));
  }
  return list;
}

/// Calls `read` with a reader of `mapping`, as of a case file; what it assumes goes to the design.
/// @throws base::InputError of the first problem
void read_through(Design& design, const std::string& stem, const Value& mapping,
                  FieldReader::Mode mode, const std::function<void(FieldReader&)>& read) {
  ReadingContext context("");
  context.design = design;
  context.design.assumed.clear();
  FieldReader reader(context, mapping, {}, stem, mode);
  read(reader);
  reader.finish();
  if (!context.problems.empty()) {
    const InputError& first = context.problems.front();
    throw InputError(first.where().key, first.problem());
  }
  for (parts::Assumption& a : context.design.assumed) {
    const auto begin = design.assumed.begin();
    if (std::find(begin, design.assumed.end(), a) != design.assumed.end()) continue;
    design.assumed.push_back(std::move(a));
  }
}

/// Reads `mapping` into a part through the reader of case files.
template <class T>
void read_into(Design& design, T& part, const std::string& stem, const Value& mapping,
               FieldReader::Mode mode) {
  T changed = part;
  read_through(design, stem, mapping, mode,
               [&](FieldReader& reader) { read_fields(reader, changed); });
  part = std::move(changed);
}

/// What was assumed about a field no longer is.
void forget_assumed(Design& design, const std::string& path) {
  std::vector<parts::Assumption>& all = design.assumed;
  all.erase(std::remove_if(all.begin(), all.end(),
                           [&](const parts::Assumption& a) {
                             return a.key == path || a.key.rfind(path + ".", 0) == 0;
                           }),
            all.end());
}

/// The one field of a patch as a mapping to read.
Value mapping_of(Design& design, const std::string& stem, const std::string& field,
                 const Patch& patch) {
  Value mapping = bare_value(Value::Kind::mapping);
  mapping.entries.push_back({field, {}, value_of(patch.value)});
  // The second spelling of `tube` names the same field.
  forget_assumed(design, stem + "." + (field == "bar" ? "tube" : field));
  return mapping;
}

/// Whether a patch takes a part away, which must be there for either.
/// @throws base::InputError when it is not, or when the patch is neither
bool takes_away(bool there, const Path& path, const Patch& patch) {
  const bool whole = path.field.empty();
  if (whole && !leaves_out(patch.value)) {
    throw InputError(path.whole, fmt::format("{} is no change of a whole part; `none` leaves it "
                                             "out, and its fields change one by one",
                                             quoted(patch.value)));
  }
  if (!there && whole) {
    throw InputError(path.whole, "the case has none to leave out; delete this entry");
  }
  if (!there) throw InputError(path.whole, "the case has no `" + path.group + "`");
  return whole;
}

template <class T>
void change_part(Design& design, std::optional<T> Design::*member, const Path& path,
                 const Patch& patch) {
  std::optional<T>& part = design.*member;
  if (takes_away(part.has_value(), path, patch)) {
    part.reset();
    forget_assumed(design, path.group);
    return;
  }
  read_into(design, *part, path.group, mapping_of(design, path.group, path.field, patch),
            FieldReader::Mode::patch);
}

/// Where a list of names holds what a path names.
/// @throws base::InputError when it does not
std::size_t place_of(const std::vector<std::string>& known, const Path& path) {
  const auto found = std::find(known.begin(), known.end(), path.name);
  if (found == known.end()) {
    throw InputError(path.whole, fmt::format("there is no {} among `{}:`{}", quoted(path.name),
                                             path.group, did_you_mean(path.name, known)));
  }
  return static_cast<std::size_t>(found - known.begin());
}

template <class T>
std::size_t index_of(const std::vector<parts::Named<T>>& all, const Path& path) {
  std::vector<std::string> known;
  for (const parts::Named<T>& named : all) known.push_back(named.name);
  return place_of(known, path);
}

template <class T>
void change_named(Design& design, std::vector<parts::Named<T>> Design::*member, const Path& path,
                  const Patch& patch) {
  std::vector<parts::Named<T>>& all = design.*member;
  const std::size_t index = index_of(all, path);
  const std::string stem = path.group + "." + path.name;
  if (!path.field.empty()) {
    read_into(design, all[index].value, stem, mapping_of(design, stem, path.field, patch),
              FieldReader::Mode::patch);
    return;
  }
  if (!leaves_out(patch.value)) {
    throw InputError(path.whole, "`none` leaves it out; else name one of its fields");
  }
  all.erase(all.begin() + static_cast<std::ptrdiff_t>(index));
  forget_assumed(design, stem);
}

void change_point(Design& design, const Path& path, const Patch& patch) {
  std::vector<std::string> known;
  for (auto& point : design.points) {
    known.push_back(point.name);
    if (point.name != path.field) continue;
    try {
      point.value = read_coordinates(value_of(patch.value));
      return;
    } catch (const InputError& error) {
      throw InputError(path.whole, error.problem());
    }
  }
  throw InputError(path.whole, fmt::format("there is no point {}{}", quoted(path.field),
                                           did_you_mean(path.field, known)));
}

/// Calls one of the two with the member of Design that a group of paths stands for.
/// @return whether there is such a group
template <class OnPart, class OnList>
bool with_group(const std::string& group, OnPart on_part, OnList on_list) {
  const auto part = [&](std::string_view key, auto member) {
    if (group == key) on_part(member);
    return group == key;
  };
  const auto list = [&](std::string_view key, auto member) {
    if (group == key) on_list(member);
    return group == key;
  };
  return part("vehicle", &Design::vehicle) || part("lateral_link", &Design::lateral_link) ||
         part("bracket", &Design::bracket) || part("brace", &Design::brace) ||
         part("frame", &Design::frame) || part("arm", &Design::arm) ||
         part("axle", &Design::axle) || part("limit_strap", &Design::limit_strap) ||
         part("steering", &Design::steering) || list("members", &Design::members) ||
         list("supports", &Design::supports) || list("springs", &Design::springs) ||
         list("forces", &Design::forces) || list("rigid", &Design::rigid) ||
         list("side_welds", &Design::side_welds) || list("bolt_groups", &Design::bolt_groups) ||
         list("line_loads", &Design::line_loads) || list("strains", &Design::strains) ||
         list("settlements", &Design::settlements) || list("self_weight", &Design::self_weight) ||
         list("load_cases", &Design::custom_cases) || list("duty", &Design::duty);
}

/// Looks for one number among the fields of a part: a visitor for parts' `fields(visitor, part)`.
class NumberFinder {
 public:
  explicit NumberFinder(std::string_view field) : field_(field) {}

  void quantity(const parts::FieldInfo& info, double& value, const parts::Quantity& limits) {
    numbers_.emplace_back(info.key);
    if (info.key == field_) found_ = {value, limits.dimension};
  }
  template <class T>
  void phrase(const parts::FieldInfo&, T&) {}
  template <class Enum, std::size_t N>
  void choice(const parts::FieldInfo&, Enum&, const std::array<parts::Word<Enum>, N>&) {}
  void flag(const parts::FieldInfo&, bool&) {}
  void vector(const parts::FieldInfo&, std::array<double, 3>&, parts::Dimension) {}
  void text(const parts::FieldInfo&, std::string&) {}
  void point(const parts::FieldInfo&, std::string&) {}
  void points(const parts::FieldInfo&, std::vector<std::string>&) {}
  void lengths(const parts::FieldInfo&, std::vector<double>&) {}

  [[nodiscard]] const std::optional<std::pair<double, parts::Dimension>>& found() const {
    return found_;
  }
  [[nodiscard]] const std::vector<std::string>& numbers() const { return numbers_; }

 private:
  std::string_view field_;
  std::optional<std::pair<double, parts::Dimension>> found_;
  std::vector<std::string> numbers_;
};

/// Factors, load cases and sizes, through the reader of their block of a case file.
void change_block(Design& design, const Path& path, const Patch& patch) {
  ReadingContext context("");
  context.design = design;
  if (path.whole == "sizes") {
    const Entry entry{path.whole, {}, value_of(patch.value)};
    read_which_sizes(&entry, context);
    forget_assumed(context.design, path.whole);
  } else if (path.group == "factors") {
    Value mapping = bare_value(Value::Kind::mapping);
    mapping.entries.push_back({path.field, {}, value_of(patch.value)});
    read_factors(mapping, context);
  } else {
    context.design.load_cases.clear();
    read_load_cases({path.whole, {}, value_of(patch.value)}, context);
  }
  if (!context.problems.empty()) {
    throw InputError(path.whole, context.problems.front().problem());
  }
  design = std::move(context.design);
}

/// Whether a part has a field: a visitor for parts' `fields(visitor, part)`.
class FieldFinder {
 public:
  explicit FieldFinder(std::string_view field) : field_(field) {}

  void quantity(const parts::FieldInfo& info, double&, const parts::Quantity&) { look_at(info); }
  template <class T>
  void phrase(const parts::FieldInfo& info, T&) {
    look_at(info);
  }
  template <class Enum, std::size_t N>
  void choice(const parts::FieldInfo& info, Enum&, const std::array<parts::Word<Enum>, N>&) {
    look_at(info);
  }
  void flag(const parts::FieldInfo& info, bool&) { look_at(info); }
  void text(const parts::FieldInfo& info, std::string&) { look_at(info); }
  void point(const parts::FieldInfo& info, std::string&) { look_at(info); }
  void points(const parts::FieldInfo& info, std::vector<std::string>&) { look_at(info); }
  void lengths(const parts::FieldInfo& info, std::vector<double>&) { look_at(info); }

  [[nodiscard]] bool found() const { return found_; }
  /// The names of all its fields.
  [[nodiscard]] const std::vector<std::string>& keys() const { return keys_; }

 private:
  void look_at(const parts::FieldInfo& info) {
    keys_.emplace_back(info.key);
    found_ = found_ || info.key == field_ || info.other_key == field_;
  }

  std::string_view field_;
  bool found_ = false;
  std::vector<std::string> keys_;
};

/// Calls `use(part, finder)` for each part, with a FieldFinder that has seen its fields.
/// @param of  a design whose parts alone count; null = all parts there can be
template <class Use>
void with_fields(const std::string& field, const Design* of, Use use) {
  const auto add = [&](const char* part, auto member) {
    if (of != nullptr && !(of->*member)) return;
    typename std::decay_t<decltype(of->*member)>::value_type value;
    FieldFinder finder(field);
    fields(finder, value);
    use(part, finder);
  };
  add("vehicle", &Design::vehicle);
  add("lateral_link", &Design::lateral_link);
  add("bracket", &Design::bracket);
  add("brace", &Design::brace);
  add("frame", &Design::frame);
  add("arm", &Design::arm);
  add("axle", &Design::axle);
  add("limit_strap", &Design::limit_strap);
  add("steering", &Design::steering);
}

/// The full paths of a field that was given without its part: "vehicle.axle_weight".
std::vector<std::string> full_paths(const std::string& field, const Design* of) {
  std::vector<std::string> all;
  with_fields(field, of, [&](const char* part, const FieldFinder& finder) {
    if (finder.found()) all.push_back(fmt::format("{}.{}", part, field));
  });
  return all;
}

/// "; did you mean `bracket.drop`?" for a misspelled field without its part; empty when none is
/// near.
std::string meant_field(const std::string& field) {
  std::vector<std::string> names;
  std::vector<std::string> paths;
  with_fields(field, nullptr, [&](const char* part, const FieldFinder& finder) {
    for (const std::string& key : finder.keys()) {
      names.push_back(key);
      paths.push_back(fmt::format("{}.{}", part, key));
    }
  });
  const std::string hint = did_you_mean(field, names);
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (hint == "; did you mean `" + names[i] + "`?") return "; did you mean `" + paths[i] + "`?";
  }
  return hint;
}

/// "drop" -> "bracket.drop" where one part of the design has such a field; else as it is.
std::string full_path(const Design& design, std::string_view raw) {
  const std::string path(trim(raw));
  if (path.find('.') != std::string::npos || names_a_part(path)) return path;
  const std::vector<std::string> full = full_paths(path, &design);
  return full.size() == 1 ? full.front() : path;
}

[[noreturn]] void refuse(const Path& path) {
  const std::vector<std::string> full =
      path.field.empty() ? full_paths(path.whole, nullptr) : std::vector<std::string>{};
  if (!full.empty()) {
    throw InputError(path.whole, fmt::format("{} needs its part before it: `{}`",
                                             quoted(path.whole), join(full, "` or `")));
  }
  if (path.group == "materials" || path.group == "sections" || path.group == "joints") {
    throw InputError(path.whole, fmt::format("what `{}:` holds is shared by the parts that name "
                                             "it; change the part instead, e.g. lateral_link.tube",
                                             path.group));
  }
  std::vector<std::string> known(kParts.begin(), kParts.end());
  known.insert(known.end(), kLists.begin(), kLists.end());
  known.insert(known.end(), {"points", "factors", "sizes", "title"});
  std::string hint = did_you_mean(path.group, known);
  if (hint.empty() && path.field.empty()) hint = meant_field(path.group);
  throw InputError(path.whole, fmt::format("unknown key {}{}", quoted(path.group), hint));
}

template <class T>
void add_part(Design& design, std::optional<T> Design::*member, const std::string& key,
              const parts::Variant& variant) {
  if (design.*member) return;
  Value mapping = bare_value(Value::Kind::mapping);
  for (const Patch& patch : variant.patches) {
    const Path path = cut(patch.path);
    if (path.group != key || path.field.empty()) continue;
    mapping.entries.push_back({path.field, {}, value_of(patch.value)});
  }
  if (mapping.entries.empty()) return;
  T part;
  read_into(design, part, key, mapping, FieldReader::Mode::whole);
  design.*member = std::move(part);
}

}  // namespace

void set(Design& design, const Patch& given) {
  const Patch patch = {full_path(design, given.path), given.value};
  const Path path = cut(patch.path);
  if (path.group == "points") return change_point(design, path, patch);
  if (path.group == "factors" || path.whole == "load_cases" || path.whole == "sizes") {
    return change_block(design, path, patch);
  }
  const bool known = with_group(
      path.group, [&](auto member) { change_part(design, member, path, patch); },
      [&](auto member) { change_named(design, member, path, patch); });
  if (path.group == "bolt_groups") assume_group_shear(design);
  if (known) return;
  if (path.whole != "title") refuse(path);
  design.title = squeeze(patch.value);
}

std::string NumberAt::text_of(double value) const {
  return unit.empty() ? fmt::format("{:.17g}", value)
                      : fmt::format("{:.17g} {}", value / factor, unit);
}

NumberAt shown_number(double si, parts::Dimension dimension, bool inches) {
  const CustomaryUnit unit = customary_unit(dimension, inches);
  return {si, std::string(unit.name), unit.factor, dimension};
}

NumberAt number_at(const Design& design, std::string_view raw) {
  const Path path = cut(full_path(design, raw));
  NumberFinder finder(path.field);
  Design looked_at = design;  // visitors may write
  const bool known = with_group(
      path.group,
      [&](auto member) {
        if (!(looked_at.*member))
          throw InputError(path.whole, "the case has no `" + path.group + "`");
        fields(finder, *(looked_at.*member));
      },
      [&](auto member) {
        fields(finder, (looked_at.*member)[index_of(looked_at.*member, path)].value);
      });
  if (!known) refuse(path);
  if (!finder.found()) {
    throw InputError(path.whole,
                     fmt::format("it is no number; there is {}{}", join(finder.numbers(), ", "),
                                 did_you_mean(path.field, finder.numbers())));
  }
  const auto [si, dimension] = *finder.found();
  if (std::isnan(si)) {
    throw InputError(path.whole,
                     fmt::format("the case does not give it, or says `not sure`: give a "
                                 "value to start from, e.g. {}",
                                 example_quantity(dimension, design.inches)));
  }
  if (path.group == "vehicle" && dimension == parts::Dimension::force) {
    return design.inches ? NumberAt{si, "lb", base::kPoundForce, dimension}
                         : NumberAt{si, "kg", base::kGravity, dimension};
  }
  return shown_number(si, dimension, design.inches);
}

Design apply(const Design& design, const parts::Variant& variant) {
  Design changed = design;
  changed.variants.clear();
  add_part(changed, &Design::vehicle, "vehicle", variant);
  add_part(changed, &Design::axle, "axle", variant);
  add_part(changed, &Design::lateral_link, "lateral_link", variant);
  add_part(changed, &Design::bracket, "bracket", variant);
  add_part(changed, &Design::brace, "brace", variant);
  add_part(changed, &Design::frame, "frame", variant);
  add_part(changed, &Design::arm, "arm", variant);
  add_part(changed, &Design::limit_strap, "limit_strap", variant);
  add_part(changed, &Design::steering, "steering", variant);
  for (const Patch& patch : variant.patches) set(changed, patch);
  const std::vector<InputError> broken = broken_rules(changed);
  if (!broken.empty()) throw broken.front();
  return changed;
}

bool leaves_out(std::string_view value) {
  return trim(value).empty() || same_words(value, "none") || same_words(value, "left out") ||
         same_words(value, "no");
}

bool names_a_part(std::string_view raw) {
  const Path path = cut(raw);
  const bool part = is_one_of(kParts, path.group) || is_one_of(kLists, path.group);
  return part && path.field.empty();
}

}  // namespace cases
