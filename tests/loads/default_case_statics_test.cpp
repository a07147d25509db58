// Every built-in case that runs, from the case file to the forces in the parts, against statics
// that share nothing with the program: an axle on one arm welded to it, with a ball at the frame
// (three forces), a ball-ended lateral link (one) and two coils (two) has six unknown forces for
// six equations of balance. The loads are typed in from the factors; W = 8 kN. With steering there
// are two forces more, of drag link and tie rod, and two equations more, about the kingpins.
#include <cmath>
#include <map>

#include <Eigen/Dense>
#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/loads/read_design.hpp"

namespace default_case_statics_test {
using Eigen::Vector3d;

namespace {

constexpr double kN = 1000.0;
const Vector3d kHub(0.0, 0.0, 0.4);
const Vector3d kBall(-0.9, 0.4, 0.35);
const Vector3d kArmBolt(0.0, 0.4, 0.3);
const Vector3d kLinkAtAxle(0.1, -0.5, 0.45);
const Vector3d kLinkAtFrame(0.1, 0.4, 0.55);

/// The axle of loads_tests::whole_axle on parts that statics alone can solve.
/// @param vehicle, points  more lines of these
std::string determinate_axle(const std::string& vehicle = "", const std::string& points = "") {
  return loads_tests::kVehicle + loads_tests::kDrivelineAndStops + vehicle + "points:\n" + points +
         "  link at frame: [0.1, 0.4, 0.55 m]\n"
         "  link at axle: [0.1, -0.5, 0.45 m]\n"
         "  arm bolt: [0, 0.4, 0.3 m]\n"
         "  ball: [-0.9, 0.4, 0.35 m]\n"
         "lateral_link:\n"
         "  frame_bolt: link at frame\n"
         "  axle_bolt: link at axle\n"
         "  tube: 60 x 10 mm E355\n"
         "  ends: weld-on ball joint\n"
         "arm:\n"
         "  axle_lower: arm bolt\n"
         "  frame: ball\n"
         "  lower: 100 x 16 mm S355H\n"
         "  axle_joint: welded\n"
         "  frame_joint: ball joint\n"
         "  mirror: no\n"
         "axle:\n"
         "  coil_spacing: 0.9 m\n"
         "  coil_rate: 40 N/mm\n"
         "  bump_travel: 20 mm\n"
         "  stop_rate: 1500 N/mm\n";
}

/// What acts on the axle, in kN and kN m.
struct Acting {
  Vector3d left = Vector3d::Zero();
  Vector3d right = Vector3d::Zero();
  bool left_at_hub = false;
  bool right_at_hub = false;
  Vector3d inertia = Vector3d::Zero();
  double shaft = 0.0;                // about x
  Vector3d rock = Vector3d::Zero();  // under the link
  Vector3d rock_on_arm = Vector3d::Zero();
};

Vector3d across(const Vector3d& v) {
  return {v.x(), -v.y(), v.z()};
}

Acting image(const Acting& a) {
  Acting b = a;
  b.left = across(a.right);
  b.right = across(a.left);
  b.left_at_hub = a.right_at_hub;
  b.right_at_hub = a.left_at_hub;
  b.inertia = across(a.inertia);
  b.shaft = -a.shaft;
  return b;
}

void add_pair(std::map<std::string, Acting>& all, const std::string& name, const Acting& a) {
  std::string mirrored = name;
  for (std::size_t at = 0; (at = mirrored.find("left", at)) != std::string::npos; at += 5) {
    mirrored.replace(at, 4, "right");
  }
  all[name] = a;
  all[mirrored] = image(a);
}

std::map<std::string, Acting> expected_loads() {
  std::map<std::string, Acting> all;
  const double w = 8.0;
  const double moved = 0.8 / 2.8 * 30.0;  // per g, on the axle
  const double stop = w + 0.5 * moved;
  all["hard stop"] = {.left = {-stop, 0, stop}, .right = {-stop, 0, stop}, .inertia = {2.8, 0, 0}};
  const double back = w - 0.5 * 0.6 * moved;
  all["hard stop in reverse"] = {
      .left = {0.8 * back, 0, back}, .right = {0.8 * back, 0, back}, .inertia = {-0.6 * 2.8, 0, 0}};
  add_pair(
      all, "hard corner, turning left",
      {.left = {0, 0.2 * w, 0.2 * w}, .right = {0, 1.8 * w, 1.8 * w}, .inertia = {0, -2.8, 0}});
  all["both wheels hit hard"] = {.left = {0, 0, 3 * w}, .right = {0, 0, 3 * w}};
  add_pair(all, "one wheel hits hard, left", {.left = {0, 0, 3 * w}, .right = {0, 0, w}});
  add_pair(all, "hole with brakes on, left wheel",
           {.left = {-2 * w, 0, 2.5 * w}, .right = {0, 0, w}});
  add_pair(all, "square edge, head on, left wheel",
           {.left = {-4.5 / std::tan(std::asin(0.9)) * w, 0, w},
            .right = {0, 0, w},
            .left_at_hub = true});
  add_pair(all, "slid into a curb, left wheel", {.left = {0, -1.75 * 2 * w, 2 * w}});
  add_pair(all, "corner plus hole, turning left",
           {.left = {0, 2 * w * 0.2 / 2.7, 0.2 * w}, .right = {-w, 2 * w * 2.5 / 2.7, 2.5 * w}});
  const double torque = 0.4 * 3.0 * 2.7 * 4.1 * 0.85;
  for (const double forward : {1.0, -1.0}) {
    for (const double turns : {1.0, -1.0}) {
      const Acting a{.left = {forward * torque / 0.4, 0, 1.5 * w},
                     .right = {0, 0, 0.5 * w},
                     .shaft = turns * torque / 4.1};
      const char* way = forward > 0.0 ? "forward" : "backward";
      const std::string name = fmt::format(
          "wheel wedged, low range, {{}} wheel, driving {}, shaft "
          "rolls the axle to the {{}}",
          way);
      const char* to = turns > 0.0 ? "right" : "left";
      const char* fro = turns > 0.0 ? "left" : "right";
      all[fmt::format(fmt::runtime(name), "left", to)] = a;
      all[fmt::format(fmt::runtime(name), "right", fro)] = image(a);
    }
  }
  const double corner_mass = (w - 1.4) / 9.80665;  // t
  const double slam = 3 * w + corner_mass * 1.0 / (2 * 0.45 * 0.060);
  all["bump stop slammed"] = {.left = {0, 0, slam}, .right = {0, 0, slam}};
  const Acting rest{.left = {0, 0, w}, .right = {0, 0, w}};
  all["dragged over a rock"] = rest;
  all["dragged over a rock"].rock = {-w, 0, w};
  all["dragged over a rock, left arm"] = rest;
  all["dragged over a rock, left arm"].rock_on_arm = {-w, 0, w};
  return all;
}

/// Ball x y z, tension of the link, left and right coil pushing down: kN.
Eigen::Matrix<double, 6, 1> by_statics(const Acting& a) {
  Eigen::Matrix<double, 6, 1> load = Eigen::Matrix<double, 6, 1>::Zero();
  const auto add = [&](const Vector3d& at, const Vector3d& force) {
    load.head<3>() += force;
    load.tail<3>() += at.cross(force);
  };
  const Vector3d ground(0.0, 0.0, 0.4);
  add({0.0, 0.8, a.left_at_hub ? ground.z() : 0.0}, a.left);
  add({0.0, -0.8, a.right_at_hub ? ground.z() : 0.0}, a.right);
  add(kHub, a.inertia - Vector3d(0.0, 0.0, 2.8));
  load[3] += a.shaft;
  add(kLinkAtAxle, 0.5 * a.rock);  // each end of the link carries half
  add(0.5 * (kArmBolt + kBall), a.rock_on_arm);

  Eigen::Matrix<double, 6, 6> unit = Eigen::Matrix<double, 6, 6>::Zero();
  const auto column = [&](int i, const Vector3d& at, const Vector3d& along) {
    unit.col(i) << along, at.cross(along);
  };
  for (int i = 0; i < 3; ++i) column(i, kBall, Vector3d::Unit(i));
  column(3, kLinkAtAxle, (kLinkAtFrame - kLinkAtAxle).normalized());
  column(4, {0.0, 0.45, 0.4}, -Vector3d::UnitZ());
  column(5, {0.0, -0.45, 0.4}, -Vector3d::UnitZ());
  return unit.fullPivLu().solve(-load);
}

double coil(const studies::Balance& b, const std::string& side) {
  return -(loads_tests::held_by(b, side + " coil").force[2] +
           loads_tests::held_by(b, side + " bump stop").force[2]);
}

}  // namespace

TEST_CASE("every built-in case reaches the parts as statics says", "[loads][statics]") {
  const loads_tests::SolvedDesign solved(determinate_axle());
  const std::map<std::string, Acting> expected = expected_loads();
  const std::vector<parts::DesignCase> all = parts::design_cases(solved.design);
  CHECK(all.size() == expected.size());
  for (const parts::DesignCase& c : all) {
    INFO(c.name);
    REQUIRE(expected.count(c.name) == 1);
    const Eigen::Matrix<double, 6, 1> f = kN * by_statics(expected.at(c.name));
    const studies::CaseSolution found = solved.model.solve(c, 1.0);
    const studies::Balance b = studies::balance_of(solved.model, c, found);
    // A ball-ended bar's spin is held by 1 N m/rad, and the axle turns by up to half a radian: that
    // is a newton at the coils.
    const double tolerance = 1e-4 * f.cwiseAbs().maxCoeff();
    const studies::BalanceRow ball = loads_tests::held_by(b, "arm frame joint");
    for (std::size_t i = 0; i < 3; ++i) {
      CHECK(ball.force[i] == Approx(f[static_cast<int>(i)]).margin(tolerance));
    }
    const studies::BalanceRow link = loads_tests::held_by(b, "frame bolt");
    const Vector3d half = 0.5 * kN * expected.at(c.name).rock;
    const Vector3d at_frame = -f[3] * (kLinkAtAxle - kLinkAtFrame).normalized() - half;
    for (std::size_t i = 0; i < 3; ++i) {
      CHECK(link.force[i] == Approx(at_frame[static_cast<int>(i)]).margin(tolerance));
    }
    CHECK(coil(b, "left") == Approx(f[4]).margin(tolerance));
    CHECK(coil(b, "right") == Approx(f[5]).margin(tolerance));
    CHECK(b.open < 1e-8);
  }
}

TEST_CASE("in a design that statics cannot solve every case still balances", "[loads][statics]") {
  const loads_tests::SolvedDesign solved(loads_tests::whole_axle(""));
  for (const parts::DesignCase& c : parts::design_cases(solved.design)) {
    INFO(c.name);
    const studies::Balance b = studies::balance_of(solved.model, c, solved.model.solve(c, 1.0));
    CHECK(b.about == "the middle of the axle, at hub height");
    CHECK_FALSE(b.acts.empty());
    CHECK(b.open < 1e-8);
  }
}

namespace {

const Vector3d kPitmanBall(0.2, 0.44, 0.55);
const Vector3d kKnuckleBall(0.15, -0.74, 0.45);  // on the right
const Vector3d kTieRodLeft(-0.15, 0.74, 0.35);
constexpr double kKingpin = 0.74;  // from the middle

std::string steered_axle() {
  return determinate_axle(
             "  tire_width: 250 mm\n  kingpin_offset: 60 mm\n  gear_torque: 1.2 kN m\n"
             "  pitman_arm: 160 mm\n  articulation: 4 deg\n",
             "  pitman ball: [0.2, 0.44, 0.55 m]\n"
             "  knuckle ball: [0.15, -0.74, 0.45 m]\n"
             "  tie rod ball: [-0.15, 0.74, 0.35 m]\n") +
         "limit_strap: {rate: 400 N/mm, free_travel: 150 mm}\n"
         "steering:\n"
         "  pitman_ball: pitman ball\n"
         "  knuckle_ball: knuckle ball\n"
         "  tie_rod_ball: tie rod ball\n"
         "  drag_link: 40 x 6 mm E355\n"
         "  tie_rod: 40 x 6 mm E355\n"
         "load_cases: [full cross-up, strap catch, dry park lock to lock, steering jammed]\n";
}

double about_z(const Vector3d& arm, const Vector3d& force) {
  return arm.cross(force).z();
}

/// What holds an axle at rest whose wheels are turned: ball x y z, tension of the link, left and
/// right coil pushing down, tension of tie rod and drag link: kN.
/// @param left, right  the ground's moment about each kingpin; unset left = the drag link's
///   tension `push` is known instead, and takes the last place as that moment  [kN m]
Eigen::Matrix<double, 8, 1> by_steered_statics(double left, double right, double push) {
  const Vector3d drag = (kPitmanBall - kKnuckleBall).normalized();
  const Vector3d across_axle(0.0, 1.0, 0.0);
  const Vector3d right_pin(0.0, -kKingpin, 0.4);
  const Vector3d left_pin(0.0, kKingpin, 0.4);
  const bool wedged = std::isnan(left);
  Eigen::Matrix<double, 8, 8> unit = Eigen::Matrix<double, 8, 8>::Zero();
  Eigen::Matrix<double, 8, 1> load = Eigen::Matrix<double, 8, 1>::Zero();
  const auto column = [&](int i, const Vector3d& at, const Vector3d& along) {
    unit.col(i).head<6>() << along, at.cross(along);
  };
  for (int i = 0; i < 3; ++i) column(i, kBall, Vector3d::Unit(i));
  column(3, kLinkAtAxle, (kLinkAtFrame - kLinkAtAxle).normalized());
  column(4, {0.0, 0.45, 0.4}, -Vector3d::UnitZ());
  column(5, {0.0, -0.45, 0.4}, -Vector3d::UnitZ());
  // The two knuckles: the tie rod pulls the left ball to the right, the right one to the left.
  unit(6, 6) = about_z(kTieRodLeft - left_pin, -across_axle);
  unit(7, 6) = about_z(across(kTieRodLeft) - right_pin, across_axle);
  Eigen::Matrix<double, 8, 1> of_drag = Eigen::Matrix<double, 8, 1>::Zero();
  of_drag.head<6>() << drag, kKnuckleBall.cross(drag);
  of_drag[7] = about_z(kKnuckleBall - right_pin, drag);
  // Wheels at rest and the axle's weight balance on both sides.
  load[2] = 16.0 - 2.8;
  load[5] = right + (wedged ? 0.0 : left);
  load[7] = right;
  if (wedged) {
    load += push * of_drag;
    unit(5, 7) = 1.0;
    unit(6, 7) = 1.0;
  } else {
    unit.col(7) = of_drag;
    load[6] = left;
  }
  return unit.fullPivLu().solve(-load);
}

double side_of(const studies::Balance& b, const std::string& side) {
  return coil(b, side) - loads_tests::held_by(b, side + " limit strap").force[2];
}

}  // namespace

// Parked, 1.0 x 8 kN x sqrt(0.25^2 / 8 + 0.06^2) about each kingpin; jammed, 1.2 kN m / 0.16 m
// across the truck at the pitman arm's ball, one wheel wedged.
TEST_CASE("parking and a jammed gear reach the parts as statics says", "[loads][statics]") {
  const loads_tests::SolvedDesign solved(steered_axle());
  const double parked = 8.0 * std::sqrt(0.25 * 0.25 / 8.0 + 0.06 * 0.06);
  const Vector3d drag = (kPitmanBall - kKnuckleBall).normalized();
  for (const double to_left : {1.0, -1.0}) {
    const std::string way = to_left > 0.0 ? "to the left" : "to the right";
    for (const bool jammed : {false, true}) {
      const std::string name = (jammed ? "steering jammed, " : "dry park, lock to lock, ") + way;
      INFO(name);
      const auto f =
          (kN * (jammed ? by_steered_statics(std::nan(""), 0.0, to_left * 1.2 / 0.16 / drag.y())
                        : by_steered_statics(-to_left * parked, -to_left * parked, 0.0)))
              .eval();
      const studies::Balance b = solved.balance(name);
      const double tolerance = 1e-4 * f.cwiseAbs().maxCoeff();
      const studies::BalanceRow ball = loads_tests::held_by(b, "arm frame joint");
      const studies::BalanceRow link = loads_tests::held_by(b, "frame bolt");
      const studies::BalanceRow pitman = loads_tests::held_by(b, "pitman arm ball");
      const Vector3d at_frame = f[3] * (kLinkAtFrame - kLinkAtAxle).normalized();
      const double pull = jammed ? kN * to_left * 1.2 / 0.16 / drag.y() : f[7];
      for (std::size_t i = 0; i < 3; ++i) {
        const int k = static_cast<int>(i);
        CHECK(ball.force[i] == Approx(f[k]).margin(tolerance));
        CHECK(link.force[i] == Approx(at_frame[k]).margin(tolerance));
        CHECK(pitman.force[i] == Approx(pull * drag[k]).margin(tolerance));
      }
      CHECK(coil(b, "left") == Approx(f[4]).margin(tolerance));
      CHECK(coil(b, "right") == Approx(f[5]).margin(tolerance));
      CHECK(solved.tension(name, "tie_rod") ==
            Approx((kTieRodLeft.y() > 0.0 ? 1.0 : -1.0) * f[6]).margin(tolerance));
      CHECK(b.open < 1e-8);
    }
  }
}

// Nothing goes across the truck there: link and ball carry nothing, the coils what geometry leaves
// them. Rolled by 4 degrees, seats move 0.45 m x roll and the axle comes down until both sides
// carry what they did; one stop closes after 20 mm.
TEST_CASE("crossed or caught, coils, stops and straps hold the axle as statics says",
          "[loads][statics]") {
  const loads_tests::SolvedDesign solved(steered_axle());
  const double rise = 0.45 * 4.0 * base::kDegree;
  const double down = 1500e3 * (rise - 0.020) / (2.0 * 40e3 + 1500e3);
  const double upper = 6.6e3 + 40e3 * (rise - down) + 1500e3 * (rise - down - 0.020);
  const double lower = 6.6e3 - 40e3 * (rise + down);
  const studies::Balance crossed = solved.balance("full cross-up, left wheel up");
  CHECK(coil(crossed, "left") == Approx(upper).epsilon(1e-3));
  CHECK(coil(crossed, "right") == Approx(lower).epsilon(1e-3));
  CHECK(loads_tests::held_by(crossed, "ground, for the place of the axle").moment[0] ==
        Approx((upper - lower) * 0.45).epsilon(1e-3));

  // m g + coils, and the energy of both over the free drop, 1 in short of 150 mm: on both straps.
  const double slack = 0.150 - 0.0254;
  const double coils = 2.0 * (6.6e3 - 40e3 * slack);
  const double pull = 2.8e3 + coils;
  const double energy = (2.8e3 + 0.5 * (13.2e3 + coils)) * slack;
  // What the coils still push where the straps have stretched comes off what holds the axle.
  const double straps = pull + std::sqrt(pull * pull + 2.0 * 800e3 * energy);
  const double caught = straps - std::fmax(0.0, coils - 2.0 * 40e3 * straps / 800e3);
  const studies::Balance hung = solved.balance("strap catch");
  CHECK(side_of(hung, "left") == Approx(-0.5 * caught).epsilon(1e-3));
  CHECK(side_of(hung, "right") == Approx(-0.5 * caught).epsilon(1e-3));
  for (const studies::Balance* b : {&crossed, &hung}) {
    CHECK(loads_tests::held_by(*b, "frame bolt").force[1] == Approx(0.0).margin(1.0));
    CHECK(loads_tests::held_by(*b, "arm frame joint").force[0] == Approx(0.0).margin(1.0));
    CHECK(b->open < 1e-8);
  }
}

// A coil that is not held to its seat has nothing to give below 6.6 kN / 40 N/mm = 165 mm: the
// straps alone hold what falls 200 mm at 1.5 m/s.
TEST_CASE("straps that catch an axle off its coils hold all of it", "[loads][statics]") {
  std::string text = steered_axle();
  const std::string straps = "rate: 400 N/mm, free_travel: 150 mm";
  text.replace(text.find(straps), straps.size(), "rate: 400 N/mm, slack: 200 mm");
  text.insert(text.find("  tire_width:"), "  droop_speed: 1.5 m/s\n");
  const loads_tests::SolvedDesign solved(text);
  const double caught =
      2.8e3 + std::sqrt(2.8e3 * 2.8e3 + 800e3 * 2.8e3 / base::kGravity * 1.5 * 1.5);
  const studies::Balance hung = solved.balance("strap catch");
  for (const std::string side : {"left", "right"}) {
    CHECK(coil(hung, side) == Approx(0.0).margin(1e-3));
    CHECK(side_of(hung, side) == Approx(-0.5 * caught).epsilon(1e-3));
  }
  CHECK(hung.open < 1e-8);
}

}  // namespace default_case_statics_test
