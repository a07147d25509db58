#include "checks/wall_slenderness.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

#include <fmt/format.h>

#include "checks/column_strength.hpp"
#include "checks/value.hpp"
#include "sections/area_props.hpp"

namespace checks {
namespace {

// Rows of AISC 360-22 tables B4.1a and E7.1, from memory: lambda_r over sqrt(E/Fy), c1, c2.
struct WallRow {
  double slender_over;
  double c1;
  double c2;
};
constexpr WallRow kBoxWall = {1.40, 0.20, 1.38};
constexpr WallRow kHeldWall = {1.49, 0.18, 1.31};
constexpr WallRow kChannelFlange = {0.56, 0.22, 1.49};
constexpr WallRow kLeg = {0.45, 0.22, 1.49};

constexpr double kRoundSlender = 0.11;  // D/t over E/Fy
constexpr double kRoundMost = 0.45;     // where E7 and F8 end

FlatWall flat_wall(const char* what, double width, double thickness, int count,
                   const WallRow& row) {
  return {.what = what,
          .width = width,
          .thickness = thickness,
          .count = count,
          .slender_over = row.slender_over,
          .c1 = row.c1,
          .c2 = row.c2};
}

std::vector<FlatWall> walls_of_line(const sections::ThinWalled& line) {
  std::vector<FlatWall> all;
  for (std::size_t i = 0; i < line.walls.size(); ++i) {
    const auto& from = line.points[i];
    const auto& to = line.points[(i + 1) % line.points.size()];
    const bool free = !line.closed && (i == 0 || i + 1 == line.walls.size());
    all.push_back(flat_wall("wall", std::hypot(to[0] - from[0], to[1] - from[1]), line.walls[i], 1,
                            free ? kLeg : kBoxWall));
  }
  return all;
}

/// lambda_r of a wall.
double slender_limit(const FlatWall& wall, double elastic, double yield) {
  return wall.slender_over * std::sqrt(elastic / yield);
}

/// Effective width of one wall, with its lines when it is less than the whole.
double effective_width(const FlatWall& wall, double elastic, double yield, double at_stress,
                       std::vector<WorkedLine>& lines) {
  const double limit = slender_limit(wall, elastic, yield);
  if (wall.slenderness() <= limit * std::sqrt(yield / at_stress)) return wall.width;
  const double local = std::pow(wall.c2 * limit / wall.slenderness(), 2) * yield;
  const double root = std::sqrt(local / at_stress);
  const double width = std::min(wall.width, wall.width * (1.0 - wall.c1 * root) * root);
  lines.push_back(
      {fmt::format("Fel = ({:.2f} lambda_r / (b/t))^2 Fy of the {}, lambda_r = {:.2f} sqrt(E/Fy), "
                   "as b/t > lambda_r sqrt(Fy/Fn)",
                   wall.c2, wall.what, wall.slender_over),
       fmt::format("({} * {} * sqrt({{0}} / {{1}}) * {{3}} / {{2}})^2 * {{1}} = {{4}}", wall.c2,
                   wall.slender_over),
       {stress(elastic), stress(yield), length(wall.width), length(wall.thickness),
        stress(local)}});
  lines.push_back(
      {fmt::format("be = b (1 - {:.2f} sqrt(Fel/Fn)) sqrt(Fel/Fn), b at most", wall.c1),
       fmt::format("{{0}} * (1 - {} * sqrt({{1}} / {{2}})) * sqrt({{1}} / {{2}}) = {{3}}", wall.c1),
       {length(wall.width), stress(local), stress(at_stress), length(width)}});
  return width;
}

EffectiveArea round_area(const sections::RoundTube& tube, double elastic, double yield) {
  EffectiveArea area{.ratio = round_tube_e7(elastic, yield, tube.outside / tube.wall)};
  if (area.ratio < 1.0) {
    area.lines.push_back({"Ae/Ag = 0.038 E / (Fy D/t) + 2/3, as D/t > 0.11 E/Fy",
                          "0.038 * {0} / ({1} * {2} / {3}) + 2/3 = {4}",
                          {stress(elastic), stress(yield), length(tube.outside), length(tube.wall),
                           ratio(area.ratio)}});
  }
  return area;
}

}  // namespace

std::vector<FlatWall> flat_walls(const sections::Shape& shape) {
  if (const auto* tube = std::get_if<sections::RectangularTube>(&shape)) {
    const double upright = tube->depth - 3.0 * tube->wall;
    const double level = tube->width - 3.0 * tube->wall;
    return {flat_wall("upright wall", upright, tube->wall, 2, kBoxWall),
            flat_wall("level wall", level, tube->wall, 2, kBoxWall)};
  }
  if (const auto* channel = std::get_if<sections::Channel>(&shape)) {
    return {flat_wall("flange", channel->width, channel->flange, 2, kChannelFlange),
            flat_wall("web", channel->depth - 2.0 * channel->flange, channel->web, 1, kHeldWall)};
  }
  if (const auto* angle = std::get_if<sections::Angle>(&shape)) {
    return {flat_wall("upright leg", angle->depth, angle->wall, 1, kLeg),
            flat_wall("level leg", angle->width, angle->wall, 1, kLeg)};
  }
  if (const auto* boxed = std::get_if<sections::BoxedChannel>(&shape)) {
    const double clear = boxed->depth - 2.0 * boxed->flange;
    return {flat_wall("flange", boxed->width - boxed->web, boxed->flange, 2, kBoxWall),
            flat_wall("web", clear, boxed->web, 1, kBoxWall),
            flat_wall("plate", clear, boxed->plate, 1, kBoxWall)};
  }
  if (const auto* line = std::get_if<sections::ThinWalled>(&shape)) return walls_of_line(*line);
  return {};
}

bool has_slender_wall(const sections::Shape& shape, double elastic, double yield) {
  if (const auto* tube = std::get_if<sections::RoundTube>(&shape)) {
    return tube->outside / tube->wall > kRoundSlender * elastic / yield;
  }
  const std::vector<FlatWall> walls = flat_walls(shape);
  return std::any_of(walls.begin(), walls.end(), [&](const FlatWall& wall) {
    return wall.slenderness() > slender_limit(wall, elastic, yield);
  });
}

std::string wall_words(const sections::Shape& shape, double elastic, double yield) {
  constexpr const char* kYields = "walls yield before they buckle: ";
  constexpr const char* kBuckles = "a wall may buckle before it yields, see the thin wall check: ";
  constexpr const char* kSource = " (AISC 360-22 table B4.1a, from memory)";
  if (const auto* tube = std::get_if<sections::RoundTube>(&shape)) {
    const double limit = kRoundSlender * elastic / yield;
    const double wall = tube->outside / tube->wall;
    return fmt::format("{}D/t of {:.3g} is {}over 0.11 E/Fy = {:.3g}{}",
                       wall > limit ? kBuckles : kYields, wall, wall > limit ? "" : "not ", limit,
                       kSource);
  }
  const std::vector<FlatWall> walls = flat_walls(shape);
  if (walls.empty()) return {};
  const auto use = [&](const FlatWall& wall) {
    return wall.slenderness() / slender_limit(wall, elastic, yield);
  };
  const FlatWall& nearest =
      *std::max_element(walls.begin(), walls.end(),
                        [&](const FlatWall& a, const FlatWall& b) { return use(a) < use(b); });
  const bool over = use(nearest) > 1.0;
  return fmt::format("{}the {}'s b/t of {:.3g} is {}over {:.2f} sqrt(E/Fy) = {:.3g}{}",
                     over ? kBuckles : kYields, nearest.what, nearest.slenderness(),
                     over ? "" : "not ", nearest.slender_over,
                     slender_limit(nearest, elastic, yield), kSource);
}

std::string wall_outside_method(const sections::Shape& shape, double elastic, double yield) {
  const auto* tube = std::get_if<sections::RoundTube>(&shape);
  if (tube == nullptr) return {};
  const double limit = kRoundMost * elastic / yield;
  const double wall = tube->outside / tube->wall;
  if (wall < limit) return {};
  return fmt::format("outside the method: D/t of {:.0f} is not under 0.45 E/Fy = {:.0f}", wall,
                     limit);
}

EffectiveArea effective_area(const sections::Shape& shape, double elastic, double yield,
                             double at_stress) {
  if (const auto* tube = std::get_if<sections::RoundTube>(&shape)) {
    return round_area(*tube, elastic, yield);
  }
  EffectiveArea area;
  double lost = 0.0;
  for (const FlatWall& wall : flat_walls(shape)) {
    const double width = effective_width(wall, elastic, yield, at_stress, area.lines);
    lost += wall.count * (wall.width - width) * wall.thickness;
  }
  if (!(lost > 0.0)) return area;
  const double gross = sections::area_props(shape).area;
  area.ratio = 1.0 - lost / gross;
  area.lines.push_back({"Ae/Ag = 1 - sum (b - be) t / Ag",
                        "1 - {0} / {1} = {2}",
                        {{lost, Measure::area}, {gross, Measure::area}, ratio(area.ratio)}});
  return area;
}

}  // namespace checks
