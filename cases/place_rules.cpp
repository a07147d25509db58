#include "cases/place_rules.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "cases/quantity.hpp"

namespace cases {
namespace {

using Eigen::Vector3d;
using parts::Design;

Vector3d place_of(const Design& design, const std::string& name) {
  const std::array<double, 3> p = parts::point_of(design, name);
  return {p[0], p[1], p[2]};
}

/// The largest distance of a point from the line through the first and the one farthest from it.
/// [m]
double off_one_line(const std::vector<Vector3d>& points) {
  Vector3d along = Vector3d::Zero();
  for (const Vector3d& at : points) {
    if ((at - points.front()).norm() > along.norm()) along = at - points.front();
  }
  if (!(along.norm() > 0.0)) return 0.0;
  double off = 0.0;
  for (const Vector3d& at : points) {
    off = std::max(off, (at - points.front()).cross(along.normalized()).norm());
  }
  return off;
}

class PlaceRules {
 public:
  explicit PlaceRules(const Design& design) : design_(design) {}

  std::vector<base::InputError> found() {
    if (!design_.axle || !design_.vehicle) return {};
    if (design_.lateral_link) add_link();
    if (design_.arm) add_arm();
    if (design_.steering) add_steering();
    add_spacing("axle.coil_spacing", design_.axle->coil_spacing);
    if (design_.limit_strap) add_spacing("limit_strap.spacing", design_.limit_strap->spacing);
    return std::move(out_);
  }

 private:
  void add(const std::string& key, std::string problem) {
    out_.emplace_back(key, std::move(problem));
  }
  [[nodiscard]] std::string length(double si) const {
    return shown_quantity(si, parts::Dimension::length, design_.inches);
  }

  /// Over the ground, on the truck. @return false where it is not, or is not known
  bool is_on_truck(const std::string& key, const std::string& name) {
    constexpr double kHighest = 2.0;   // [m]
    constexpr double kFarthest = 4.0;  // along the truck  [m]
    const Vector3d at = place_of(design_, name);
    if (name.empty() || std::isnan(at.x())) return false;
    if (at.z() < 0.0 || at.z() > kHighest) {
      add(key, fmt::format("`{}` is {} {}; z is up from the ground: is the point right?", name,
                           length(std::abs(at.z())),
                           at.z() < 0.0 ? "under the ground" : "over the ground"));
      return false;
    }
    if (std::abs(at.y()) > design_.vehicle->track) {
      add(key, fmt::format("`{}` is {} from the middle of the truck, more than the track ({}); is "
                           "the point right?",
                           name, length(std::abs(at.y())), length(design_.vehicle->track)));
      return false;
    }
    if (std::abs(at.x()) <= kFarthest) return true;
    add(key,
        fmt::format("`{}` is {} {} the axle; x is forward from its middle: is the point right?",
                    name, length(std::abs(at.x())), at.x() < 0.0 ? "behind" : "ahead of"));
    return false;
  }

  /// Besides, between the wheels and near the axle.
  bool is_on_axle(const std::string& key, const std::string& name) {
    constexpr double kNearAxle = 0.8;  // [m]
    if (!is_on_truck(key, name)) return false;
    const Vector3d at = place_of(design_, name);
    if (std::abs(at.y()) > 0.5 * design_.vehicle->track) {
      add(key, fmt::format("`{}` is {} from the middle of the truck, outside of the tire's center "
                           "({}); is the point right?",
                           name, length(std::abs(at.y())), length(0.5 * design_.vehicle->track)));
      return false;
    }
    if (std::abs(at.x()) <= kNearAxle) return true;
    add(key, fmt::format("`{}` is on the axle, and {} {} its middle; x is forward: is the point "
                         "right?",
                         name, length(std::abs(at.x())), at.x() < 0.0 ? "behind" : "ahead of"));
    return false;
  }

  void add_spacing(const char* key, double spacing) {
    if (!(spacing > design_.vehicle->track)) return;
    add(key, fmt::format("{} is more than the track ({}); is the unit right?", length(spacing),
                         length(design_.vehicle->track)));
  }

  void add_link() {
    constexpr double kAcross = 0.1;  // [m]
    const parts::LateralLink& link = *design_.lateral_link;
    const bool frame = is_on_truck("lateral_link.frame_bolt", link.frame_bolt);
    const bool axle = is_on_axle("lateral_link.axle_bolt", link.axle_bolt);
    if (!frame || !axle || link.frame_bolt == link.axle_bolt) return;
    const Vector3d chord = place_of(design_, link.axle_bolt) - place_of(design_, link.frame_bolt);
    if (std::abs(chord.y()) >= kAcross) return;
    add("lateral_link.axle_bolt",
        "the link does not run across the truck, so it does not hold the axle sideways; y is to "
        "the "
        "left: is a sign wrong?");
  }

  /// Two points of one arm lie on one side of the truck.
  void add_side(const std::string& key, const std::string& name, const std::string& other) {
    const double y = place_of(design_, name).y();
    if (!(y * place_of(design_, other).y() < 0.0)) return;
    add(key,
        fmt::format("`{}` lies on the other side of the truck than `{}`; y is to the left: is a "
                    "sign wrong?",
                    name, other));
  }

  void add_arm() {
    const parts::Arm& arm = *design_.arm;
    const bool lower = is_on_axle("arm.axle_lower", arm.axle_lower);
    const bool upper = is_on_axle("arm.axle_upper", arm.axle_upper);
    (void)is_on_truck("arm.frame", arm.frame);
    const bool upper_frame = is_on_truck("arm.upper_frame", arm.upper_frame);
    if (!arm.mirror) return;
    if (lower && place_of(design_, arm.axle_lower).y() == 0.0) {
      add("arm.axle_lower",
          "it lies in the middle of the truck, where its mirror image is as well; "
          "move it to one side, or say `mirror: no`");
    }
    if (arm.shared_upper) return;
    if (lower && upper) add_side("arm.axle_upper", arm.axle_upper, arm.axle_lower);
    if (upper && upper_frame) add_side("arm.upper_frame", arm.upper_frame, arm.axle_upper);
  }

  void add_steering() {
    const parts::Steering& s = *design_.steering;
    (void)is_on_truck("steering.pitman_ball", s.pitman_ball);
    (void)is_on_axle("steering.knuckle_ball", s.knuckle_ball);
    (void)is_on_axle("steering.tie_rod_ball", s.tie_rod_ball);
    add_gear_bolts(s);
  }

  /// Three bolts or more that are not in one line hold a steering gear.
  void add_gear_bolts(const parts::Steering& s) {
    constexpr double kOneLine = 0.01;  // [m]
    constexpr double kUpright = 0.03;  // rails draw in a little toward the front  [m]
    constexpr double kNearGear = 0.6;  // of the pitman arm's ball  [m]
    const std::string key = "steering.gear_bolts_at";
    if (s.gear_bolts.given() && s.gear_bolts_at.empty()) {
      add("steering.gear_bolts",
          "where they are is missing: give `gear_bolts_at`, three points or more, e.g. [gear bolt "
          "1, gear bolt 2, gear bolt 3]");
    }
    if (!s.gear_bolts.given() && !s.gear_bolts_at.empty()) {
      add(key, "the bolts are missing: give `gear_bolts`, e.g. 7/16 in grade 8");
    }
    if (!s.gear_bolts.given() || s.gear_bolts_at.empty()) return;
    std::vector<Vector3d> places;
    for (const std::string& name : s.gear_bolts_at) {
      places.push_back(place_of(design_, name));
      const double off = (places.back() - place_of(design_, s.pitman_ball)).norm();
      if (!(off > kNearGear)) continue;
      add(key, fmt::format("`{}` is {} from the pitman arm's ball; is the point right?", name,
                           length(off)));
      return;
    }
    const auto [low, high] =
        std::minmax_element(places.begin(), places.end(),
                            [](const Vector3d& a, const Vector3d& b) { return a.y() < b.y(); });
    if (high->y() - low->y() > kUpright) {
      add(key, fmt::format("they go through the rail's side, which stands upright, but one is {} "
                           "farther left than another; is a point right?",
                           length(high->y() - low->y())));
      return;
    }
    if (off_one_line(places) > kOneLine) return;
    add(key,
        "they lie in one line, about which the gear could turn; give three points or more, not "
        "in one line");
  }

  const Design& design_;
  std::vector<base::InputError> out_;
};

}  // namespace

std::vector<base::InputError> misplaced_points(const Design& design) {
  return PlaceRules(design).found();
}

}  // namespace cases
