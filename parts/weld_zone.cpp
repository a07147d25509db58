#include "parts/weld_zone.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <variant>

#include <fmt/format.h>

#include "parts/assembly.hpp"

namespace parts {
namespace {

// Two places along a piece that differ by less are one.
constexpr double kSamePoint = 1.0e-9;  // [m]

struct Outside {
  double operator()(const sections::RoundBar& s) const { return s.diameter; }
  double operator()(const sections::RoundTube& s) const { return s.outside; }
  double operator()(const sections::RectangularTube& s) const { return std::max(s.depth, s.width); }
  double operator()(const sections::FlatBar& s) const { return std::max(s.depth, s.width); }
  double operator()(const sections::TwinPlate& s) const {
    return std::max(s.depth, s.gap + 2.0 * s.thickness);
  }
  double operator()(const sections::ByNumbers&) const { return base::kUnset; }
  double operator()(const sections::Channel& s) const { return std::max(s.depth, s.width); }
  double operator()(const sections::Angle& s) const { return std::max(s.depth, s.width); }
  double operator()(const sections::BoxedChannel& s) const {
    return std::max(s.depth, s.width + s.plate);
  }
  double operator()(const sections::ThinWalled& s) const {
    double widest = 0.0;
    for (const std::size_t axis : {std::size_t{0}, std::size_t{1}}) {
      double low = std::numeric_limits<double>::infinity();
      double high = -low;
      for (const std::array<double, 2>& point : s.points) {
        low = std::min(low, point[axis]);
        high = std::max(high, point[axis]);
      }
      widest = std::max(widest, high - low);
    }
    return widest + sections::governing_thickness(s);
  }
};

/// The whole of a piece counts as one zone.
std::vector<WeldZone> throughout(double center_line) {
  return {{0.0, center_line}};
}

}  // namespace

double beyond_weld(const sections::Shape& shape) {
  constexpr double kLeast = 0.015;  // [m]
  const double thickness = sections::governing_thickness(shape);
  return std::isnan(thickness) ? base::kUnset : std::max(kLeast, 2.0 * thickness);
}

double half_outside(const sections::Shape& shape) {
  return 0.5 * std::visit(Outside{}, shape);
}

double miter_reach(double half, double turn) {
  return half * std::tan(0.5 * turn);
}

double weld_reach(double half, double other_half, double angle) {
  constexpr double kNearlyInLine = base::kPi / 6.0;
  if (std::isnan(half) || std::isnan(other_half)) return base::kUnset;
  const double turn = base::kPi - angle;
  if (turn <= kNearlyInLine) return miter_reach(std::max(half, other_half), turn);
  return (other_half + half * std::abs(std::cos(angle))) / std::max(std::sin(angle), 1.0e-9);
}

std::vector<WeldZone> weld_zones(const std::vector<Weld>& welds, double beyond,
                                 double center_line) {
  if (welds.empty() || std::isnan(beyond)) return throughout(center_line);
  std::vector<WeldZone> zones;
  for (const Weld& weld : welds) {
    if (std::isnan(weld.reach)) return throughout(center_line);
    zones.push_back({std::max(0.0, weld.at - weld.reach - beyond),
                     std::min(center_line, weld.at + weld.reach + beyond), weld.on_side});
  }
  std::sort(zones.begin(), zones.end(),
            [](const WeldZone& a, const WeldZone& b) { return a.from < b.from; });
  std::vector<WeldZone> apart;
  for (const WeldZone& zone : zones) {
    const auto last = std::find_if(apart.rbegin(), apart.rend(),
                                   [](const WeldZone& other) { return !other.on_side; });
    if (!zone.on_side && last != apart.rend() && zone.from <= last->to + kSamePoint) {
      last->to = std::max(last->to, zone.to);
    } else {
      apart.push_back(zone);
    }
  }
  return apart;
}

bool WeldZone::reaches(double along) const {
  return along >= from - kSamePoint && along <= to + kSamePoint;
}

std::optional<sections::OutlinePart> side_of_outline(const sections::Shape& shape, double width,
                                                     double middle) {
  const bool round = std::holds_alternative<sections::RoundBar>(shape) ||
                     std::holds_alternative<sections::RoundTube>(shape);
  const double radius = half_outside(shape);
  if (!round || !(width < 2.0 * radius)) return std::nullopt;
  const double half = std::asin(0.5 * width / radius) + beyond_weld(shape) / radius;
  if (!(half < base::kPi)) return std::nullopt;
  return sections::OutlinePart{middle, half};
}

std::string parent_words(const sections::Material& steel) {
  return fmt::format("{}, {}{}", steel.description, steel.basis,
                     steel.mark == "from memory" ? ", from memory" : "");
}

std::string weld_zone_words(const sections::Material& steel) {
  return "heat-affected zone of a weld: " + steel.haz_basis;
}

double Piece::yield_at(double along) const {
  const bool beside_weld =
      std::any_of(weld_zones.begin(), weld_zones.end(),
                  [&](const WeldZone& zone) { return !zone.on_side && zone.reaches(along); });
  return beside_weld ? material.haz_yield : material.yield;
}

double Piece::least_yield_at(double along) const {
  const bool beside_weld = std::any_of(weld_zones.begin(), weld_zones.end(),
                                       [&](const WeldZone& zone) { return zone.reaches(along); });
  return beside_weld ? material.haz_yield : material.yield;
}

bool Piece::parent_holds_beside(double along) const {
  return std::none_of(weld_zones.begin(), weld_zones.end(), [&](const WeldZone& zone) {
    if (zone.on_side) return false;
    // A zone goes on over the end of the piece.
    const bool after_from = zone.from <= kSamePoint || along > zone.from + kSamePoint;
    const bool before_to = zone.to >= center_line - kSamePoint || along < zone.to - kSamePoint;
    return after_from && before_to;
  });
}

double Piece::farthest_weld() const {
  if (welds.empty()) return base::kUnset;
  double farthest = 0.0;
  for (const Weld& weld : welds) {
    if (std::isnan(weld.reach)) return base::kUnset;
    const double from = column_from + weld.at - weld.reach;
    const double to = column_from + weld.at + weld.reach;
    const double inmost = std::clamp(0.5 * length, from, to);
    farthest = std::max(farthest, std::min(inmost, length - inmost));
  }
  return std::max(farthest, 0.0);
}

}  // namespace parts
