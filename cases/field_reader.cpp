#include "cases/field_reader.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "cases/three_numbers.hpp"
#include "cases/unit.hpp"

namespace cases {
namespace {

/// @throws base::InputError without a key
std::vector<double> lengths_of(const std::vector<std::string>& texts) {
  std::vector<double> all;
  for (const Measured& read : read_with_shared_unit(texts, parts::Dimension::length)) {
    all.push_back(read.si);
  }
  return all;
}

}  // namespace

using base::InputError;
using parts::FieldInfo;
using parts::Presence;

FieldReader::FieldReader(ReadingContext& context, const Value& mapping, const Place& place,
                         std::string path, Mode mode)
    : context_(context), mapping_(mapping), place_(place), path_(std::move(path)), mode_(mode) {
  for (const Entry& entry : mapping_.entries) context_.places.add(path_of(entry.key), entry.place);
}

std::string FieldReader::path_of(std::string_view key) const {
  return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

bool FieldReader::assumes(const FieldInfo& info) const {
  return mode_ == Mode::whole && info.presence == Presence::assumed;
}

bool FieldReader::unsets(const FieldInfo& info, std::string_view found) const {
  return info.presence == Presence::optional && same_words(found, "none");
}

const Entry* FieldReader::take(const FieldInfo& info, const std::string& example) {
  known_.emplace_back(info.key);
  const Entry* entry = mapping_.find(info.key);
  if (!info.other_key.empty()) {
    known_.emplace_back(info.other_key);
    const Entry* other = mapping_.find(info.other_key);
    if (entry != nullptr && other != nullptr) {
      context_.problem(other->place, path_of(info.other_key),
                       fmt::format("it says the same as `{}`; give one of them", info.key));
      taken_.push_back(other->key);
    } else if (other != nullptr) {
      entry = other;
    }
  }
  if (entry == nullptr) {
    if (mode_ == Mode::whole && info.presence == Presence::required) {
      const std::string_view colon = info.meaning.empty() ? "" : ": ";
      missing_.emplace_back(info.key, fmt::format("`{}` is missing{}{}, e.g. {}", info.key, colon,
                                                  info.meaning, example));
    }
    return nullptr;
  }
  taken_.push_back(entry->key);
  if (entry->value.kind == Value::Kind::empty) {
    context_.problem(entry->place, path_of(entry->key),
                     fmt::format("it has no value; give e.g. {}", example));
    return nullptr;
  }
  return entry;
}

void FieldReader::quantity(const FieldInfo& info, double& value, const parts::Quantity& limits) {
  const bool inches = context_.design.inches;
  // The strength that serves as an example of a stress would be a wrong modulus.
  const std::string example(info.key == "young" ? std::string_view("29000 ksi")
                                                : example_quantity(limits.dimension, inches));
  const Entry* entry = take(info, example);
  if (entry == nullptr) {
    if (assumes(info)) {
      context_.assume(path_of(info.key), shown_quantity(value, limits.dimension, inches),
                      info.basis);
    }
    return;
  }
  read_scalar(*entry, info, [&](const std::string& found) {
    const bool unsure =
        limits.may_be_unsure && (same_words(found, "not sure") || same_words(found, "unknown"));
    if (unsure || unsets(info, found)) {
      value = base::kUnset;
      return;
    }
    if (same_words(found, "not sure")) {
      throw InputError("", fmt::format("`not sure` does not do here; {} is needed, e.g. {}",
                                       dimension_name(limits.dimension), example));
    }
    if (const auto tire = read_tire_size(found)) {
      take_tire(info, found, *tire, value);
      return;
    }
    const Measured measured = read_quantity(found, limits.dimension);
    require_within(measured.si, found, limits, inches);
    context_.note_weight(measured.weight_unit);
    value = measured.si;
  });
}

void FieldReader::take_tire(const FieldInfo& info, const std::string& found, const TireSize& tire,
                            double& value) {
  if (info.key != "tire") {
    throw InputError("", fmt::format("{} is a tire's size; it goes with `vehicle.tire`, and here a "
                                     "number with its unit is needed",
                                     quoted(found)));
  }
  value = tire.outside;
  context_.assume(path_of(info.key),
                  shown_quantity(value, parts::Dimension::length, context_.design.inches),
                  fmt::format("{}: {}, new and not loaded (from memory: ISO 4000-1); the loaded "
                              "radius from it is an estimate, measure `hub_height`",
                              squeeze(found), tire.words));
}

void FieldReader::vector(const FieldInfo& info, std::array<double, 3>& value,
                         parts::Dimension dimension) {
  const std::string three =
      fmt::format("[0, 0, {}]", example_quantity(dimension, context_.design.inches));
  const Entry* entry = take(info, three);
  if (entry == nullptr) return;
  try {
    const ThreeNumbers read =
        read_three(entry->value, dimension, "three numbers are needed, e.g. " + three);
    context_.note_weight(read.weight_unit);
    value = read.si;
  } catch (const InputError& error) {
    context_.problem(entry->value.place, path_of(info.key), error.problem());
  }
}

void FieldReader::flag(const FieldInfo& info, bool& value) {
  const Entry* entry = take(info, "yes");
  if (entry == nullptr) {
    if (assumes(info)) context_.assume(path_of(info.key), value ? "yes" : "no", info.basis);
    return;
  }
  read_scalar(*entry, info, [&](const std::string& found) {
    const bool yes = same_words(found, "yes") || same_words(found, "true");
    if (!yes && !same_words(found, "no") && !same_words(found, "false")) {
      throw InputError("", quoted(found) + " is neither yes nor no");
    }
    value = yes;
  });
}

void FieldReader::text(const FieldInfo& info, std::string& value) {
  const Entry* entry = take(info, "a few words");
  if (entry == nullptr) {
    if (assumes(info)) context_.assume(path_of(info.key), value, info.basis);
    return;
  }
  read_scalar(*entry, info, [&](const std::string& found) { value = squeeze(found); });
}

void FieldReader::require_point(const std::string& name) const {
  std::vector<std::string> known;
  for (const auto& point : context_.design.points) known.push_back(point.name);
  if (context_.design.lateral_link) {
    known.emplace_back("frame bolt");
    if (!context_.design.axle) known.emplace_back("axle bolt");
  }
  if (context_.design.steering) {
    known.emplace_back("left kingpin");
    known.emplace_back("right kingpin");
  }
  if (std::find(known.begin(), known.end(), name) != known.end()) return;
  std::string hint = did_you_mean(name, known);
  if (hint.empty()) hint = "; add it under `points:`";
  throw InputError("", "there is no point " + quoted(name) + hint);
}

void FieldReader::point(const FieldInfo& info, std::string& value) {
  const Entry* entry = take(info, "the name of a point");
  if (entry == nullptr) return;
  read_scalar(*entry, info, [&](const std::string& found) {
    if (unsets(info, found)) {
      value.clear();
      return;
    }
    require_point(squeeze(found));
    value = squeeze(found);
  });
}

void FieldReader::points(const FieldInfo& info, std::vector<std::string>& value) {
  const Entry* entry = take(info, "[point, point]");
  if (entry == nullptr) return;
  if (unsets(info, entry->value.text)) {
    value.clear();
    return;
  }
  if (entry->value.kind != Value::Kind::list) {
    context_.problem(entry->value.place, path_of(info.key),
                     "a list of points is needed, e.g. [point, point]");
    return;
  }
  value.clear();
  for (const Value& item : entry->value.items) {
    read_scalar({entry->key, entry->place, item}, info, [&](const std::string& found) {
      require_point(squeeze(found));
      value.push_back(squeeze(found));
    });
  }
}

void FieldReader::outline(const FieldInfo& info, std::vector<std::array<double, 2>>& value) {
  constexpr const char* kExample = "[[0, 0], [0, 3], [2, 3 in]]";
  const Entry* entry = take(info, kExample);
  if (entry == nullptr) return;
  std::vector<std::string> texts;
  for (const Value& item : entry->value.items) {
    if (item.kind != Value::Kind::list || item.items.size() != 2) {
      context_.problem(item.place, path_of(info.key),
                       std::string("a point is [y, z]; e.g. ") + kExample);
      return;
    }
    for (const Value& number : item.items) texts.push_back(number.text);
  }
  if (texts.empty()) {
    context_.problem(entry->value.place, path_of(info.key),
                     std::string("a list of points is needed, e.g. ") + kExample);
    return;
  }
  try {
    const std::vector<double> numbers = lengths_of(texts);
    value.clear();
    for (std::size_t i = 0; i < numbers.size(); i += 2) {
      value.push_back({numbers[i], numbers[i + 1]});
    }
  } catch (const InputError& error) {
    context_.problem(entry->value.place, path_of(info.key), error.problem());
  }
}

void FieldReader::lengths(const FieldInfo& info, std::vector<double>& value) {
  // Of walls one thickness does; places along a rail are two or more.
  const Entry* entry = take(info, info.key == "walls" ? "1/8 in" : "[20, -30 in]");
  if (entry == nullptr) return;
  std::vector<std::string> texts;
  if (entry->value.kind == Value::Kind::scalar) texts.push_back(entry->value.text);
  for (const Value& item : entry->value.items) texts.push_back(item.text);
  try {
    value = lengths_of(texts);
  } catch (const InputError& error) {
    context_.problem(entry->value.place, path_of(info.key), error.problem());
  }
}

void FieldReader::refuse_word(const std::string& found, const std::vector<std::string>& known) {
  throw InputError(
      "", fmt::format("{} is not known here; it is one of: {}", quoted(found), join(known, ", ")));
}

void FieldReader::keep_axis(const std::string& found, const parts::JointSpec& usual,
                            parts::JointSpec& read) {
  const bool said = lower(found).find(" along ") != std::string::npos;
  const bool own_rates = read.grade == parts::BushingGrade::given;
  const bool has_axis = read.kind != parts::JointKind::welded;
  if (!said && has_axis && !own_rates) read.axis = usual.axis;
}

void FieldReader::finish() {
  for (const Entry& entry : mapping_.entries) {
    if (std::find(taken_.begin(), taken_.end(), entry.key) != taken_.end()) continue;
    const std::string hint = did_you_mean(entry.key, known_);
    context_.problem(entry.place, path_of(entry.key),
                     fmt::format("unknown key {}{}", quoted(entry.key), hint));
    // A misspelled key is one problem, not a missing one as well.
    missing_.erase(std::remove_if(missing_.begin(), missing_.end(),
                                  [&](const auto& missing) {
                                    return hint == "; did you mean `" + missing.first + "`?";
                                  }),
                   missing_.end());
  }
  for (const auto& missing : missing_) context_.problem(place_, path_, missing.second);
}

}  // namespace cases
