#include "parts/rail_root.hpp"

#include <cmath>
#include <limits>

#include "sections/area_props.hpp"

namespace parts {
namespace {

constexpr double kYoung = 200.0e9;  // AISC 360-22, 29 000 ksi
constexpr double kPoisson = 0.3;
constexpr double kShear = kYoung / (2.0 * (1.0 + kPoisson));

/// A channel between cross members.
struct OpenRail {
  double torsion;  ///< G J  [N m^2]
  double length;   ///< sqrt(E Cw / (G J))  [m]
};

OpenRail open_rail(const Rail& rail) {
  const double t = rail.wall;
  const double b = rail.width - 0.5 * t;
  const double h = rail.height - t;
  const double torsion = kShear * (2.0 * b + h) * t * t * t / 3.0;
  const double warping =
      kYoung * t * h * h * b * b * b / 12.0 * (2.0 * h + 3.0 * b) / (h + 6.0 * b);
  return {torsion, std::sqrt(warping / torsion)};
}

/// One exact element of a twisted open bar, held at its far end: twist and rate of twist at the
/// near end.
struct TwistElement {
  double k11, k12, k22;

  TwistElement(const OpenRail& rail, double s) {
    const double p = s / rail.length;
    const double d = 2.0 - 2.0 * std::cosh(p) + p * std::sinh(p);
    k11 = rail.torsion / rail.length * std::sinh(p) / d;
    k12 = rail.torsion * (std::cosh(p) - 1.0) / d;
    k22 = rail.torsion * rail.length * (p * std::cosh(p) - std::sinh(p)) / d;
  }
};

double warping_held_twist(const OpenRail& rail, double a, double b) {
  const TwistElement before(rail, a);
  const TwistElement after(rail, b);
  const double k12 = before.k12 - after.k12;
  return before.k11 + after.k11 - k12 * k12 / (before.k22 + after.k22);
}

double warping_free_twist(const OpenRail& rail, double a, double b) {
  const double w = rail.length;
  const double give =
      a * b / (a + b) - w * std::sinh(a / w) * std::sinh(b / w) / std::sinh((a + b) / w);
  return rail.torsion / give;
}

}  // namespace

double cross_member_stiffness(const Bracket& bracket) {
  const Stick& member = bracket.cross_member;
  if (member.material.id.empty()) return std::numeric_limits<double>::infinity();
  const double inertia = sections::area_props(member.shape).drawn_iyy;
  return 3.0 * member.material.elastic * inertia / bracket.cross_member_length;
}

double closed_rail_root(const Bracket& bracket) {
  constexpr double kCrossMembersGive = 0.8;
  const Rail& rail = bracket.rail;
  const double b = rail.width - rail.wall;
  const double h = rail.height - rail.wall;
  const double torsion = kShear * 2.0 * b * b * h * h * rail.wall / (b + h);
  const double held = cross_member_stiffness(bracket);
  const auto side = [&](double length) { return 1.0 / (length / torsion + 1.0 / held); };
  const double both = side(bracket.cross_member_ahead) + side(bracket.cross_member_behind);
  return std::isinf(held) ? kCrossMembersGive * both : both;
}

double open_rail_root(const Bracket& bracket, bool warping_held) {
  const OpenRail rail = open_rail(bracket.rail);
  const double a = bracket.cross_member_ahead;
  const double b = bracket.cross_member_behind;
  const double twist =
      warping_held ? warping_held_twist(rail, a, b) : warping_free_twist(rail, a, b);
  const double share = a / (a + b);
  const double ends = share * share + (1.0 - share) * (1.0 - share);
  return 1.0 / (1.0 / twist + ends / cross_member_stiffness(bracket));
}

double wall_root(const Bracket& bracket) {
  const Rail& rail = bracket.rail;
  const double face = bracket.welded_to.bottom ? rail.width : rail.height;
  const double clear = face - 2.0 * rail.wall;
  const double cubed = std::pow(rail.wall, 3) + std::pow(rail.frame_plate, 3);
  const double along = bracket.plates.count * bracket.plates.thickness +
                       (bracket.plates.count > 1 ? bracket.gap : 0.0);
  const double plate_rigidity = kYoung * cubed / (12.0 * (1.0 - kPoisson * kPoisson));
  return 16.0 * plate_rigidity * along / clear;
}

bool reaches_both_corners(const Bracket& bracket) {
  if (bracket.welded_to.wraps_both_corners()) return true;
  return bracket.welded_to.bottom &&
         bracket.depth_at_rail >= bracket.rail.width - 2.0 * bracket.rail.wall;
}

}  // namespace parts
