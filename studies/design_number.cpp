#include "studies/design_number.hpp"

#include <cmath>
#include <optional>

#include "base/input_error.hpp"
#include "cases/validate.hpp"
#include "studies/sized_part.hpp"

namespace studies {
namespace {

/// Where a number inside a phrase stands.
struct InsideNumber {
  double* value = nullptr;
  parts::Dimension dimension = parts::Dimension::length;
};

double* outside_in(sections::Shape& shape) {
  if (auto* tube = std::get_if<sections::RoundTube>(&shape)) return &tube->outside;
  if (auto* bar = std::get_if<sections::RoundBar>(&shape)) return &bar->diameter;
  return nullptr;
}

double* wall_in(sections::Shape& shape) {
  if (auto* tube = std::get_if<sections::RoundTube>(&shape)) return &tube->wall;
  if (auto* box = std::get_if<sections::RectangularTube>(&shape)) return &box->wall;
  return nullptr;
}

std::optional<InsideNumber> of_stick(parts::Stick& stick, const std::string& name) {
  if (name == "yield") return InsideNumber{&stick.material.yield, parts::Dimension::stress};
  double* length = name == "wall"      ? wall_in(stick.shape)
                   : name == "outside" ? outside_in(stick.shape)
                                       : nullptr;
  if (length == nullptr) return std::nullopt;
  return InsideNumber{length};
}

std::optional<InsideNumber> inside(parts::Design& design, const std::string& path) {
  const auto some = [](double& value) -> std::optional<InsideNumber> {
    if (!(value > 0.0)) return std::nullopt;
    return InsideNumber{&value};
  };
  if (path == "bracket.weld_leg" && design.bracket) return some(design.bracket->weld.leg);
  if (design.lateral_link) {
    if (path == "lateral_link.weld_leg") return some(design.lateral_link->end_weld.leg);
    if (path == "lateral_link.off_straight") return some(design.lateral_link->bend.off_straight);
  }
  const std::size_t dot = path.rfind('.');
  if (dot == std::string::npos) return std::nullopt;
  parts::Stick* stick = stick_of(design, path.substr(0, dot));
  return stick == nullptr ? std::nullopt : of_stick(*stick, path.substr(dot + 1));
}

bool is_yield(const std::string& path) {
  constexpr std::string_view kEnd = ".yield";
  return path.size() > kEnd.size() &&
         path.compare(path.size() - kEnd.size(), kEnd.size(), kEnd) == 0;
}

}  // namespace

cases::NumberAt number_of(const parts::Design& design, const std::string& path) {
  parts::Design copy = design;
  const std::optional<InsideNumber> found = inside(copy, path);
  if (!found) return cases::number_at(design, path);
  return cases::shown_number(*found->value, found->dimension, design.inches);
}

parts::Design with_number(const parts::Design& design, const std::string& path, double value) {
  parts::Design changed = design;
  const std::optional<InsideNumber> found = inside(changed, path);
  if (!found) {
    const std::string text = cases::number_at(design, path).text_of(value);
    return cases::apply(design, {text, {{path, text}}});
  }
  if (is_yield(path)) {
    parts::Stick& stick = *stick_of(changed, path.substr(0, path.rfind('.')));
    stick.material.haz_yield *= value / stick.material.yield;
  }
  *found->value = value;
  const std::vector<base::InputError> broken = cases::broken_rules(changed);
  if (!broken.empty()) throw broken.front();
  return changed;
}

std::vector<std::string> numbers_inside_parts(const parts::Design& design) {
  parts::Design copy = design;
  std::vector<std::string> all;
  const auto add = [&](const std::string& path) {
    if (inside(copy, path)) all.push_back(path);
  };
  for (const std::string& part : sized_parts(design)) {
    for (const char* name : {".wall", ".outside", ".yield"}) add(part + name);
  }
  add("lateral_link.weld_leg");
  add("lateral_link.off_straight");
  add("bracket.weld_leg");
  return all;
}

}  // namespace studies
