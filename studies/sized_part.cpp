#include "studies/sized_part.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "parts/assembly.hpp"
#include "sections/area_props.hpp"
#include "sections/tolerance.hpp"

namespace studies {
namespace {

/// A tube's wall; nothing for what has none.
std::optional<double> wall_of(const sections::Shape& shape) {
  if (const auto* tube = std::get_if<sections::RoundTube>(&shape)) return tube->wall;
  if (const auto* box = std::get_if<sections::RectangularTube>(&shape)) return box->wall;
  return std::nullopt;
}

bool is_bar(const sections::Shape& shape) {
  return std::holds_alternative<sections::RoundBar>(shape) ||
         std::holds_alternative<sections::FlatBar>(shape);
}

bool allowed(const sections::Shape& shape, const SizeLimits& limits) {
  // Listed sizes are rounded to a thousandth of an inch or a tenth of a millimeter.
  constexpr double kRounding = 1.0e-6;
  const double outside = outside_of(shape);
  if (outside < limits.outside_from - kRounding || outside > limits.outside_to + kRounding) {
    return false;
  }
  const std::optional<double> wall = wall_of(shape);
  if (limits.kind == PartKind::tube && !wall) return false;
  if (limits.kind == PartKind::bar && !is_bar(shape)) return false;
  return !wall || (*wall >= limits.wall_from - kRounding && *wall <= limits.wall_to + kRounding);
}

/// In the row of its list that holds for the thickness.
sections::Material in_thickness(const sections::Material& steel, double thickness) {
  if (steel.covers(thickness)) return steel;
  const sections::Material* row = sections::same_steel_for(steel, thickness);
  return row == nullptr ? steel : *row;
}

sections::Material usual_steel(const parts::Stick& now, const sections::Shape& shape) {
  if (now.shape.index() == shape.index()) return now.material;
  const bool bar = std::holds_alternative<sections::RoundBar>(shape);
  return *sections::find_material(bar ? "1018" : "DOM");
}

double total_mass(const parts::Design& design) {
  const std::vector<parts::StiffnessSet> sets = parts::stiffness_sets(design);
  double mass = 0.0;
  for (const parts::Piece& piece : parts::assemble(design, sets.front()).pieces) {
    mass += piece.mass;
  }
  return mass;
}

std::vector<SizeChoice> choices(const parts::Stick& now, const SizeLimits& limits,
                                const std::vector<sections::StockItem>& stock) {
  std::vector<SizeChoice> sizes;
  for (const sections::StockItem& item : stock) {
    if (!allowed(item.shape, limits)) continue;
    const double thickness = sections::governing_thickness(item.shape);
    std::vector<sections::Material> steels = limits.steels;
    if (steels.empty()) steels = {usual_steel(now, item.shape)};
    for (const sections::Material& steel : steels) {
      sizes.push_back({item, in_thickness(steel, thickness)});
    }
  }
  std::stable_sort(sizes.begin(), sizes.end(), [](const SizeChoice& a, const SizeChoice& b) {
    return a.mass_per_length() < b.mass_per_length();
  });
  return sizes;
}

std::string named(const std::vector<std::string>& names) {
  return fmt::format("{}", fmt::join(names, ", "));
}

}  // namespace

parts::Stick* stick_of(parts::Design& design, const std::string& part) {
  if (part == "lateral_link" && design.lateral_link) return &design.lateral_link->stick;
  if (part == "brace" && design.brace) return &design.brace->stick;
  if (part == "arm.lower" && design.arm) return &design.arm->lower;
  if (part == "arm" && design.arm && !parts::has_upper_arm(*design.arm)) return &design.arm->lower;
  if (part == "arm.upper" && design.arm && parts::has_upper_arm(*design.arm)) {
    return &design.arm->upper;
  }
  if (part == "steering.drag_link" && design.steering) return &design.steering->drag_link;
  if (part == "steering.tie_rod" && design.steering) return &design.steering->tie_rod;
  for (parts::Named<parts::Member>& member : design.members) {
    if (member.name == part) return &member.value.stick;
  }
  return nullptr;
}

std::vector<std::string> sized_parts(const parts::Design& design) {
  std::vector<std::string> names;
  if (design.lateral_link) names.emplace_back("lateral_link");
  if (design.brace) names.emplace_back("brace");
  if (design.arm) names.emplace_back("arm.lower");
  if (design.arm && parts::has_upper_arm(*design.arm)) names.emplace_back("arm.upper");
  if (design.steering) {
    names.emplace_back("steering.drag_link");
    names.emplace_back("steering.tie_rod");
  }
  for (const parts::Named<parts::Member>& member : design.members) names.push_back(member.name);
  return names;
}

double SizeChoice::mass_per_length() const {
  return sections::area_props(item.shape).area * steel.density;
}

std::vector<SizeChoice> sizes_for(const parts::Design& design, const std::string& part,
                                  const SizeLimits& limits,
                                  const std::vector<sections::StockItem>& more) {
  parts::Design base = design;
  const parts::Stick* now = stick_of(base, part);
  if (now == nullptr) {
    throw base::InputError(part, fmt::format("there is no such part made of bar or tube; there is "
                                             "{}",
                                             named(sized_parts(design))));
  }
  std::vector<sections::StockItem> stock = sections::stock_like(now->shape, design.inches, more);
  if (limits.own_alone) {
    const std::size_t n_built_in = sections::stock_like(now->shape, design.inches, {}).size();
    stock.erase(stock.begin(), stock.begin() + static_cast<std::ptrdiff_t>(n_built_in));
  }
  if (stock.empty()) {
    throw base::InputError(
        part, limits.own_alone
                  ? fmt::format("the list given has no size like it ({})",
                                sections::describe(now->shape, design.inches))
                  : fmt::format(
                        "no list holds sizes like it ({}); the built-in ones hold bars, round and "
                        "rectangular tubes and flat bars, and --stock FILE adds others",
                        sections::describe(now->shape, design.inches)));
  }
  std::vector<SizeChoice> sizes = choices(*now, limits, stock);
  if (sizes.empty()) {
    throw base::InputError(part, fmt::format("none of the {} sizes like it is within the limits "
                                             "given on diameter, wall and kind",
                                             stock.size()));
  }
  return sizes;
}

std::vector<SizeChoice> sizes_like(const parts::Stick& now, bool inches) {
  return choices(now, {}, sections::stock_like(now.shape, inches, {}));
}

parts::Design with_size(const parts::Design& design, const std::string& part,
                        const SizeChoice& size) {
  parts::Design changed = design;
  changed.variants.clear();
  *stick_of(changed, part) = {size.item.shape, size.steel};
  return changed;
}

double length_of(const parts::Design& design, const std::string& part) {
  // By what it weighs more when its steel is twice as heavy.
  parts::Design heavy = design;
  parts::Stick& stick = *stick_of(heavy, part);
  const sections::Shape used = sections::used_shape(stick.shape, stick.material, design.sizes);
  const double per_length = sections::area_props(used).area * stick.material.density;
  stick.material.density *= 2.0;
  return (total_mass(heavy) - total_mass(design)) / per_length;
}

double outside_of(const sections::Shape& shape) {
  if (const auto* tube = std::get_if<sections::RoundTube>(&shape)) return tube->outside;
  if (const auto* bar = std::get_if<sections::RoundBar>(&shape)) return bar->diameter;
  if (const auto* box = std::get_if<sections::RectangularTube>(&shape)) {
    return std::max(box->depth, box->width);
  }
  if (const auto* flat = std::get_if<sections::FlatBar>(&shape)) {
    return std::max(flat->depth, flat->width);
  }
  if (const auto* channel = std::get_if<sections::Channel>(&shape)) {
    return std::max(channel->depth, channel->width);
  }
  if (const auto* angle = std::get_if<sections::Angle>(&shape)) {
    return std::max(angle->depth, angle->width);
  }
  return base::kUnset;
}

bool same_outside(const sections::Shape& a, const sections::Shape& b) {
  const auto same = [](double x, double y) { return std::abs(x - y) < 1.0e-5; };
  const auto* box_a = std::get_if<sections::RectangularTube>(&a);
  const auto* box_b = std::get_if<sections::RectangularTube>(&b);
  if (box_a != nullptr || box_b != nullptr) {
    return box_a != nullptr && box_b != nullptr && same(box_a->depth, box_b->depth) &&
           same(box_a->width, box_b->width);
  }
  const auto round = [](const sections::Shape& shape) {
    return std::holds_alternative<sections::RoundTube>(shape) ||
           std::holds_alternative<sections::RoundBar>(shape);
  };
  return round(a) && round(b) && same(outside_of(a), outside_of(b));
}

}  // namespace studies
