#include "cases/patch.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "cases/field_reader.hpp"
#include "cases/validate.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;

constexpr std::array<std::string_view, 6> kParts = {"vehicle", "lateral_link", "bracket",
                                                    "brace",   "arm",          "axle"};

/// A path cut at its dots: "members.left post.section" -> members, left post, section.
struct Path {
  std::string group;
  std::string name;
  std::string field;
};

Path cut(const std::string& path) {
  const std::size_t first = path.find('.');
  if (first == std::string::npos) return {path, {}, {}};
  const std::size_t last = path.rfind('.');
  if (first == last) return {path.substr(0, first), {}, path.substr(first + 1)};
  return {path.substr(0, first), path.substr(first + 1, last - first - 1), path.substr(last + 1)};
}

/// One field changed, through the same reader as a case file's.
template <class T>
void change(parts::Design& design, T& part, const Path& path, const parts::Patch& patch) {
  ReadingContext context("");
  context.design = std::move(design);
  Value mapping{.kind = Value::Kind::mapping};
  mapping.entries.push_back(
      {path.field, {}, Value{.kind = Value::Kind::scalar, .text = patch.value}});
  const std::string stem = patch.path.substr(0, patch.path.rfind('.'));
  FieldReader reader(context, mapping, {}, stem, FieldReader::Mode::patch);
  T changed = part;
  fields(reader, changed);
  reader.finish();
  design = std::move(context.design);
  if (!context.problems.empty()) throw InputError(patch.path, context.problems.front().problem());
  part = std::move(changed);
}

template <class T>
void change_part(parts::Design& design, std::optional<T> parts::Design::*member, const Path& path,
                 const parts::Patch& patch) {
  if (path.field.empty()) {
    if (!patch.value.empty()) {
      throw InputError(patch.path, fmt::format("a part is changed field by field, e.g. {}.{}, or "
                                               "left out with `none`",
                                               patch.path, "..."));
    }
    if (!(design.*member)) throw InputError(patch.path, "there is none to leave out");
    (design.*member).reset();
    return;
  }
  if (!(design.*member)) throw InputError(patch.path, "the case has no such part");
  T part = *(design.*member);
  change(design, part, path, patch);
  design.*member = std::move(part);
}

template <class T>
void change_named(parts::Design& design, std::vector<parts::Named<T>> parts::Design::*member,
                  const Path& path, const parts::Patch& patch) {
  std::vector<parts::Named<T>>& all = design.*member;
  const std::string name = path.name.empty() ? path.field : path.name;
  std::vector<std::string> known;
  for (const parts::Named<T>& named : all) known.push_back(named.name);
  const auto found = std::find(known.begin(), known.end(), name);
  if (found == known.end()) {
    throw InputError(patch.path,
                     fmt::format("there is no {} of {}{}", quoted(name), path.group,
                                 did_you_mean(name, known)));
  }
  const auto index = static_cast<std::size_t>(found - known.begin());
  if (path.name.empty()) {
    if (!patch.value.empty()) throw InputError(patch.path, "name one of its fields");
    all.erase(all.begin() + static_cast<std::ptrdiff_t>(index));
    return;
  }
  T part = all[index].value;
  change(design, part, path, patch);
  (design.*member)[index].value = std::move(part);
}

void change_factor(parts::Design& design, const Path& path, const parts::Patch& patch) {
  std::vector<std::string> known;
  for (const checks::FactorEntry& factor : checks::factor_entries(design.factors)) {
    known.push_back(factor.key);
    if (factor.key != path.field) continue;
    try {
      const double value = read_quantity(patch.value, parts::Dimension::ratio).si;
      if (!(value > 0.0)) throw InputError("", "a required factor must be over 0, e.g. 1.5");
      *factor.value = value;
      return;
    } catch (const InputError& error) {
      throw InputError(patch.path, error.problem());
    }
  }
  throw InputError(patch.path, fmt::format("unknown key {}{}", quoted(path.field),
                                           did_you_mean(path.field, known)));
}

std::vector<std::string> groups() {
  std::vector<std::string> all(kParts.begin(), kParts.end());
  for (const char* group : {"members", "supports", "springs", "forces", "factors", "title"}) {
    all.emplace_back(group);
  }
  return all;
}

/// The changed design must still make sense as a whole.
void require_sound(const parts::Design& design, const std::string& path) {
  ReadingContext context("");
  context.design = design;
  validate(context);
  if (context.problems.empty()) return;
  const InputError& first = context.problems.front();
  throw InputError(path, fmt::format("{}: {}", first.where().key, first.problem()));
}

/// "1-1/2 x 0.120 or 0.188 or 0.250 in DOM" -> three texts; what stands before the first and after
/// the last choice serves them all.
std::vector<std::string> each_of(const std::string& words) {
  const std::vector<std::string> pieces = split(words, " or ");
  if (pieces.size() == 1) return {words};
  const std::string& first = pieces.front();
  const std::string& last = pieces.back();
  const std::size_t head_end = first.rfind(' ');
  const std::size_t tail_start = last.find(' ');
  const std::string head =
      head_end == std::string::npos ? "" : first.substr(0, head_end + 1);
  const std::string tail = tail_start == std::string::npos ? "" : last.substr(tail_start);
  std::vector<std::string> all = {first + tail};
  for (std::size_t i = 1; i + 1 < pieces.size(); ++i) all.push_back(head + pieces[i] + tail);
  all.push_back(head + last);
  return all;
}

std::vector<parts::Patch> patches_of(const parts::Design& design, const std::string& words) {
  const std::string small = lower(words);
  if (small.rfind("no ", 0) == 0) {
    std::string part = small.substr(3);
    std::replace(part.begin(), part.end(), ' ', '_');
    if (std::find(kParts.begin(), kParts.end(), part) != kParts.end()) return {{part, ""}};
  }
  if (small == "straight") return {{"lateral_link.bend", "none"}};
  const std::string bend = " bend";
  if (small.size() > bend.size() && small.substr(small.size() - bend.size()) == bend) {
    return {{"lateral_link.bend", words.substr(0, words.size() - bend.size()) + " off straight"}};
  }
  if (!design.lateral_link) {
    throw InputError("", fmt::format("{} is not known here; give `path = value`, e.g. "
                                     "`members.NAME.section = 2 x 0.250 in DOM`",
                                     quoted(words)));
  }
  return {{"lateral_link.tube", words}};
}

}  // namespace

void set(parts::Design& design, const parts::Patch& patch) {
  using parts::Design;
  const Path path = cut(patch.path);
  if (path.group == "vehicle") return change_part(design, &Design::vehicle, path, patch);
  if (path.group == "lateral_link") return change_part(design, &Design::lateral_link, path, patch);
  if (path.group == "bracket") return change_part(design, &Design::bracket, path, patch);
  if (path.group == "brace") return change_part(design, &Design::brace, path, patch);
  if (path.group == "arm") return change_part(design, &Design::arm, path, patch);
  if (path.group == "axle") return change_part(design, &Design::axle, path, patch);
  if (path.group == "members") return change_named(design, &Design::members, path, patch);
  if (path.group == "supports") return change_named(design, &Design::supports, path, patch);
  if (path.group == "springs") return change_named(design, &Design::springs, path, patch);
  if (path.group == "forces") return change_named(design, &Design::forces, path, patch);
  if (path.group == "factors") return change_factor(design, path, patch);
  if (patch.path == "title") {
    design.title = squeeze(patch.value);
    return;
  }
  throw InputError(patch.path, fmt::format("there is no such path{}",
                                           did_you_mean(path.group, groups())));
}

parts::Design apply(const parts::Design& design, const parts::Variant& variant) {
  parts::Design changed = design;
  changed.variants.clear();
  for (const parts::Patch& patch : variant.patches) set(changed, patch);
  if (!variant.patches.empty()) require_sound(changed, variant.patches.front().path);
  return changed;
}

bool leaves_out(std::string_view value) {
  return same_words(value, "none") || same_words(value, "left out") || same_words(value, "no");
}

std::vector<parts::Variant> variants_from_words(const parts::Design& design,
                                                std::string_view raw) {
  const std::string words = squeeze(raw);
  const std::size_t equals = words.find('=');
  std::vector<parts::Variant> all;
  if (equals == std::string::npos) {
    for (const std::string& each : each_of(words)) {
      all.push_back({each, patches_of(design, each)});
    }
  } else {
    const std::string path(trim(std::string_view(words).substr(0, equals)));
    const std::string value(trim(std::string_view(words).substr(equals + 1)));
    const bool whole_part = path.find('.') == std::string::npos;
    for (const std::string& each : each_of(value)) {
      const bool out = whole_part && leaves_out(each);
      all.push_back({fmt::format("{} = {}", path, each), {{path, out ? "" : each}}});
    }
  }
  for (const parts::Variant& variant : all) (void)apply(design, variant);
  return all;
}

}  // namespace cases
