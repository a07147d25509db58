// Hand calculations of links, arms and brackets: closed-form statics, common practice, no source
// (each number follows from the formula beside it). E = 205 GPa. kN and m in the drawings.

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "checks/column_strength.hpp"
#include "checks/weld.hpp"
#include "fea/solver.hpp"
#include "parts/put_loads.hpp"
#include "sections/stress.hpp"
#include "tests/fea/build_frames.hpp"
#include "tests/parts/build_design.hpp"
#include "tests/published/verification.hpp"

namespace hand_statics_test {
using fea::Vector3;
using published::Basis;
using published::Source;
using published::verify;
using published::within;
using published::within_absolute;

namespace {

constexpr double kYoung = 205.0e9;
constexpr double kN = base::kKilonewton;
constexpr double MPa = base::kMegapascal;

struct Solved {
  parts::Assembly assembly;
  fea::Solution solution;
};

Solved solve(const parts::Design& design, fea::Method method = fea::Method::linear,
             const parts::StiffnessSet& set = {}) {
  parts::Assembly assembly = parts::assemble(design, set);
  const parts::DesignCase load_case = parts::design_cases(design).front();
  fea::Solution solution = fea::solve(fea::factor(assembly.model),
                                      parts::put(assembly, design, load_case), {.method = method});
  REQUIRE(solution.status() == fea::SolveStatus::converged);
  return {std::move(assembly), std::move(solution)};
}

/// Axial force in the first beam of a part.
double axial(const Solved& s, const std::string& part) {
  for (const parts::Piece& piece : s.assembly.pieces) {
    if (piece.part == part) return s.solution.forces_at(piece.beams.front().beam, 0.0).n;
  }
  FAIL("no part " << part);
  return 0.0;
}

checks::Finding root_weld(const Solved& s) {
  const fea::Vector6 held = s.solution.reaction(s.assembly.root->node);
  return checks::weld(
      {.group = s.assembly.root->group,
       .wrench = {.force = -held.head<3>(), .moment = -held.tail<3>(), .at = s.assembly.root->at_g},
       .required = 1.0});
}

sections::AreaProps round_tube(double outside_mm, double wall_mm) {
  return sections::area_props(
      sections::RoundTube{.outside = outside_mm * 1e-3, .wall = wall_mm * 1e-3});
}

}  // namespace

TEST_CASE("a sloped link carries F / cos(slope) and pushes F tan(slope) upward", "[parts]") {
  const Source source{"link statics, F / cos and F tan of the slope, F = 15 kN",
                      Basis::common_practice};
  struct Row {
    int degrees;
    const char *axial, *vertical;
  };
  for (const Row row : {Row{5, "15.057 kN", "1.312 kN"}, Row{10, "15.231 kN", "2.645 kN"},
                        Row{15, "15.529 kN", "4.019 kN"}, Row{20, "15.963 kN", "5.460 kN"},
                        Row{25, "16.551 kN", "6.995 kN"}}) {
    parts::Design d;
    d.lateral_link = parts_test::level_link();
    d.lateral_link->rise = 0.9 * std::sin(row.degrees * base::kDegree);
    d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
    const Solved s = solve(d);
    const std::string at = ", slope " + std::to_string(row.degrees) + " deg";
    verify(source, "compression of the link" + at, row.axial, -axial(s, "lateral_link") / kN);
    verify(source, "vertical force" + at, row.vertical,
           s.solution.reaction(*s.assembly.link_axle_end)[2] / kN);
  }
}

namespace {

/// An axle as one rigid body on two lower arms, an upper arm, a lateral bar and two upright
/// springs: six forces, statically determinate.
struct AxleOnLinks {
  fea::Model model;
  fea::NodeId axle;
  std::vector<fea::BeamId> links;  // lower left, lower right, upper, bar
  std::vector<fea::SpringId> springs;
  std::vector<double> forces;  // kN: links in tension, then springs pushing

  AxleOnLinks(double lower_frame_z, double upper_y, double upper_frame_z) {
    axle = model.add(fea::Node{.at_g = {0.0, 0.0, 0.4}});
    link({0.0, 0.4, 0.3}, {-0.9, 0.4, lower_frame_z});
    link({0.0, -0.4, 0.3}, {-0.9, -0.4, lower_frame_z});
    link({0.0, upper_y, 0.55}, {-0.8, upper_y, upper_frame_z});
    link({0.1, -0.5, 0.45}, {0.1, 0.4, 0.45 + 0.9 * std::tan(10.0 * base::kDegree)});
    for (const double y : {0.45, -0.45}) {
      fea::Spring spring{.a = axle, .offset_a_g = {0.0, y, 0.0}};
      spring.stiffness(2, 2) = 1.0e5;
      springs.push_back(model.add(spring));
    }
  }

  void link(const Vector3& axle_end, const Vector3& frame_end) {
    const fea::NodeId pivot = model.add(fea::Node{.at_g = frame_end});
    fea_test::clamp(model, pivot);
    const Vector3 along = (axle_end - frame_end).normalized();
    const Vector3 across = along.cross(Vector3::UnitZ()).normalized();
    fea::Matrix3 axes;
    axes << along, across, along.cross(across);
    // Held against spinning about its own axis at the frame.
    fea::Joint at_frame{.axes_g = axes,
                        .stiffness = {fea::kRigid, fea::kRigid, fea::kRigid, fea::kRigid, 0, 0}};
    links.push_back(model.add(fea::Beam{
        .a = {.node = pivot, .joint = at_frame},
        .b = {.node = axle, .offset_g = axle_end - model[axle].at_g, .joint = fea_test::ball()},
        .section = fea_test::tube(0.05, 0.005),
        .elastic = {.young = 205.0e6, .shear = 79.0e6}}));
  }

  struct Push {
    Vector3 at;
    Vector3 force;  // kN
  };

  void carry(const std::vector<Push>& pushes) {
    fea::Loads loads;
    for (const Push& p : pushes) {
      loads.nodes.push_back(
          {.node = axle, .offset_g = p.at - model[axle].at_g, .force_g = p.force});
    }
    const fea::Solution s = fea_test::linear(model, loads);
    forces.clear();
    for (const fea::BeamId id : links) forces.push_back(s.forces_at(id, 0.0).n);
    for (const fea::SpringId id : springs) forces.push_back(s.spring_force(id)[2]);
  }
};

const Vector3 kLeft(0.0, 0.8, 0.0);
const Vector3 kRight(0.0, -0.8, 0.0);
const AxleOnLinks::Push kWeight{{0.0, 0.0, 0.4}, {0.0, 0.0, -2.8}};

}  // namespace

TEST_CASE("an axle on two lower arms, one upper arm and a bar has six forces", "[fea]") {
  const Source source{"six equations of equilibrium of an axle on links, axle weight 2.8 kN",
                      Basis::common_practice};
  const std::vector<std::string> names = {"lower arm, left", "lower arm, right", "upper arm",
                                          "lateral bar",     "spring, left",     "spring, right"};
  const auto agree = [&](const AxleOnLinks& axle, const std::string& what,
                         const std::vector<const char*>& printed) {
    for (std::size_t i = 0; i < printed.size(); ++i) {
      verify(source, what + ": " + names[i], printed[i] + std::string(" kN"), axle.forces[i],
             within_absolute(0.001));
    }
  };
  AxleOnLinks level(0.3, 0.2, 0.55);
  level.carry({kWeight, {kLeft, {0, 0, 8}}, {kRight, {0, 0, 8}}});
  agree(level, "at rest", {"0.000", "0.000", "0.000", "0.000", "6.600", "6.600"});
  level.carry({kWeight, {kLeft, {-10, 0, 12}}, {kRight, {-10, 0, 12}}});
  agree(level, "braking", {"-28.000", "-16.000", "24.000", "0.000", "10.600", "10.600"});
  level.carry({kWeight, {kLeft, {0, 2.8125, 3}}, {kRight, {0, 12.1875, 13}}});
  agree(level, "cornering", {"1.082", "-2.140", "1.058", "-15.231", "5.358", "5.197"});
  level.carry({kWeight, {kLeft, {0, 0, 8}}, {kRight, {0, 0, 8}}, {{0, 0.8, 0.4}, {-16, 0, 0}}});
  agree(level, "left curb at hub height",
        {"-19.200", "9.600", "-6.400", "0.000", "6.600", "6.600"});
  AxleOnLinks sloped(0.4, 0.2, 0.6);
  sloped.carry({kWeight, {kLeft, {-10, 0, 12}}, {kRight, {-10, 0, 12}}});
  agree(sloped, "braking, arms sloped",
        {"-28.172", "-16.099", "24.047", "0.000", "8.646", "9.165"});
}

TEST_CASE("separate arms share braking, and one wheel's pull, by their levers", "[fea]") {
  const Source source{"moments about the other arm, Fx = 10 kN", Basis::common_practice};
  AxleOnLinks axle(0.3, 0.4, 0.55);
  axle.carry({{{0.0, 0.4, 0.0}, {-10, 0, 0}}});
  verify(source, "lower arm, arms at 0.30 and 0.55 m, push at the ground", "-22.0 kN",
         axle.forces[0]);
  verify(source, "upper arm", "12.0 kN", axle.forces[2]);
  axle.carry({{{0.0, 0.8, 0.3}, {-10, 0, 0}}});
  verify(source, "near arm, arms 0.8 and wheels 1.6 m apart, one wheel pulled, over Fx", "-1.5",
         axle.forces[0] / 10.0, within(1e-6));
  verify(source, "far arm, over Fx", "0.5", axle.forces[1] / 10.0, within(1e-6));
}

namespace {

/// Axle at 0.40 m; arm pivots 0.90 m behind and 0.50 m high; bolts 0.20 m apart at axle height.
parts::Design braking_design() {
  parts::Design d;
  d.vehicle.emplace();
  d.vehicle->axle_weight = 16.0e3;
  d.vehicle->tire = 0.8;
  d.vehicle->hub_height = 0.4;
  d.vehicle->track = 1.6;
  d.axle.emplace();
  d.axle->coil_spacing = 0.9;
  d.axle->coil_rate = 40.0e3;
  d.points = {{"rear bolt", {-0.1, 0.4, 0.4}},
              {"front bolt", {0.1, 0.4, 0.4}},
              {"pivot", {-0.9, 0.4, 0.5}},
              {"link frame", {0.0, 0.45, 0.4}},
              {"link axle", {0.0, -0.45, 0.4}}};
  d.arm.emplace();
  d.arm->axle_lower = "rear bolt";
  d.arm->axle_upper = "front bolt";
  d.arm->frame = "pivot";
  d.arm->joins_at = 0.2;
  // Far stiffer than the bushings, so that the two bolts share as on a rigid arm.
  d.arm->lower = parts_test::tube(0.120, 0.020);
  d.arm->upper = parts_test::tube(0.120, 0.020);
  parts::JointSpec bushing{.kind = parts::JointKind::bushing,
                           .grade = parts::BushingGrade::given,
                           .axis = parts::Axis::y,
                           .rates = {1.0e6, 1.0e6, 1.0e6, 100.0, 0.0, 100.0}};
  d.arm->axle_joint = bushing;
  d.arm->frame_joint = bushing;
  d.lateral_link = parts_test::level_link();
  d.lateral_link->frame_bolt = "link frame";
  d.lateral_link->axle_bolt = "link axle";
  return d;
}

}  // namespace

TEST_CASE("braking is carried by the arm's pivot and a couple in its axle bolts", "[parts]") {
  const Source source{
      "statics of a radius arm under braking, Fx = 10 kN a wheel, 4 kN m about the "
      "axle",
      Basis::common_practice};
  const parts::Design d = braking_design();
  const parts::Assembly assembly = parts::assemble(d, {});
  const parts::DesignCase braking{.name = "braking",
                                  .abuse = false,
                                  .basis = {},
                                  .pushes = {{loads::Role::left_contact, {-10.0e3, 0.0, 8.0e3}},
                                             {loads::Role::right_contact, {-10.0e3, 0.0, 8.0e3}}},
                                  .forces = {}};
  const fea::Solution s = fea::solve(fea::factor(assembly.model), parts::put(assembly, d, braking),
                                     {.method = fea::Method::linear});
  // V = (Fx R + 0.1 Fx) / 0.9.
  for (const parts::NamedNode& held : assembly.held) {
    if (held.name.find("frame joint") == std::string::npos) continue;
    const std::string at = ", " + held.name;
    const fea::Vector6 r = s.reaction(held.node);
    verify(source, "along the arm" + at, "10 kN", std::abs(r[0]) / kN, within(1e-3));
    verify(source, "vertical" + at, "5.556 kN", std::abs(r[2]) / kN, within(2e-3));
    verify(source, "resultant" + at, "11.44 kN", r.head<3>().norm() / kN, within(2e-3));
  }
  // Bolts: 5 kN along each, 20 +- 2.778 kN vertical. Soft bushings against a stiff arm; the arm's
  // own give leaves under 1 %.
  double largest = 0.0;
  double smallest = 1.0e9;
  for (const parts::Piece& piece : assembly.pieces) {
    if (piece.part != "arm, left") continue;
    if (piece.name.find("behind") != std::string::npos) continue;
    const double force = s.end_forces(piece.beams.front().beam).head<3>().norm();
    largest = std::max(largest, force);
    smallest = std::min(smallest, force);
  }
  verify(source, "axle bolt with the larger force", "23.32 kN", largest / kN, within(0.01));
  verify(source, "axle bolt with the smaller force", "17.93 kN", smallest / kN, within(0.01));
}

TEST_CASE("nothing is loaded at ride height", "[parts]") {
  const parts::Design d = braking_design();
  const parts::Assembly assembly = parts::assemble(d, {});
  const parts::DesignCase rest{.name = "rest",
                               .abuse = false,
                               .basis = {},
                               .pushes = loads::static_pushes(parts::to_vehicle(*d.vehicle)),
                               .forces = {}};
  const fea::Solution s = fea::solve(fea::factor(assembly.model), parts::put(assembly, d, rest));
  CHECK(s.placement(*assembly.axle).norm() < 1e-9);
}

TEST_CASE("a plain bracket's root moment is force times drop, its weld stress by hand", "[parts]") {
  const Source source{
      "bracket of two plates 6 x 100 mm, 15 kN at 0.25 m, fillets of 6 mm on both "
      "sides",
      Basis::common_practice};
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  d.bracket->rail_stiffness = 200.0e3;
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  const Solved s = solve(d);
  verify(source, "moment at the root", "3.75 kN m",
         std::abs(s.solution.reaction(s.assembly.root->node)[3]) / kN, within(1e-9));
  // Bending 132.6, direct 8.8.
  verify(source, "stress on the throat of the root weld", "132.9 MPa", root_weld(s).demand / MPa);
  // M c / I of the two plates.
  const parts::Piece& plates = s.assembly.pieces.front();
  const parts::PieceBeam& top = plates.beams.back();
  const double length = fea::length(s.assembly.model, s.assembly.model[top.beam]);
  const sections::PointStress stress =
      sections::worst_point(top.at_b, s.solution.forces_at(top.beam, length));
  verify(source, "bending stress at the root", "187.5 MPa", std::abs(stress.bending) / MPa,
         within(1e-6));
}

TEST_CASE("a brace at the bolt leaves the bracket 1 / (1 + k_brace / k_bracket)", "[parts]") {
  const Source source{
      "two springs in parallel: bracket 3 kN/mm, brace of 32 x 3 mm, 850 mm, 15 deg, "
      "on a mount of 10 kN/mm; 15 kN",
      Basis::common_practice};
  parts::Design d;
  d.lateral_link = parts_test::level_link();
  d.bracket = parts_test::hand_check_bracket();
  // The bracket's tip rate is 3 kN/mm with the rail's give: the root spring that makes it so.
  const double bending = 0.25 * 0.25 * 0.25 / (3.0 * kYoung * 1.0e-6);
  verify(source, "rate of two plates 6 x 100 mm, 250 mm long", "39.4 kN/mm", 1e-6 / bending);
  const sections::AreaProps plates =
      sections::area_props(sections::TwinPlate{.depth = 0.1, .thickness = 0.006, .gap = 0.05});
  const double shear = 0.25 / (parts_test::steel().shear_modulus() * plates.shear_z);
  d.bracket->rail_stiffness = 0.25 * 0.25 / (1.0 / 3.0e6 - bending - shear);
  d.brace.emplace();
  d.brace->stick = parts_test::tube(0.032, 0.003);
  d.brace->length = 0.85;
  d.brace->slope = 15.0 * base::kDegree;
  d.brace->far_end = parts::BraceEnd::bolted;
  // 10 kN/mm level is 10 / cos^2 along the brace.
  d.brace->end_mount = 10.0e6 / std::pow(std::cos(d.brace->slope), 2);
  d.forces = {parts_test::force_at("axle bolt", 0.0, 15.0e3, 0.0)};
  const Solved s = solve(d);
  const sections::AreaProps tube = round_tube(32, 3);
  verify(source, "rate of the brace along itself", "65.9 kN/mm", kYoung * tube.area / 0.85 * 1e-6);
  // Level 61.5, in series with 10: 8.60; share 0.7414.
  const fea::Vector6 root = s.solution.reaction(s.assembly.root->node);
  verify(source, "moment left at the root", "0.970 kN m", std::abs(root[3]) / kN, within(2e-3));
  verify(source, "force in the brace", "11.51 kN", std::abs(axial(s, "brace")) / kN, within(2e-3));
  verify(source, "vertical kick", "2.98 kN", std::abs(root[2]) / kN, within(2e-3));
  verify(source, "Euler load of the brace", "81.3 kN",
         checks::euler_load(kYoung, tube.iyy, 0.85) / kN);
  // With the brace's own vertical kick in the weld.
  verify(source, "stress on the throat of the root weld", "36.1 MPa", root_weld(s).demand / MPa,
         within(4e-3));
}

TEST_CASE("a prop above the end of a cantilever is pushed by more than the force", "[fea]") {
  const Source source{"cantilever of 250 mm pushed at its end by F, propped at 200 mm",
                      Basis::common_practice};
  const double drop = 0.25;
  const auto propped = [&](const char* quantity_prop, const char* prop, const char* quantity_root,
                           const char* root, double prop_over_tip) {
    // A tip rate of one: EI = D^3 / 3.
    fea::Model model;
    const auto bar = fea_test::section(1.0e6, drop * drop * drop / 3.0, 1.0, 1.0);
    const fea::Elastic unit{.young = 1.0, .shear = 0.4};
    const auto upper = fea_test::chain(model, Vector3::Zero(), {0.2, 0.0, 0.0}, 1, bar, unit);
    const auto lower =
        fea_test::chain(model, {0.2, 0.0, 0.0}, {drop, 0.0, 0.0}, 1, bar, unit, upper.nodes.back());
    fea_test::keep_in_xz(model);
    fea_test::clamp(model, upper.nodes.front());
    fea::Spring spring{.a = upper.nodes.back()};
    spring.stiffness(2, 2) = prop_over_tip;
    model.add(spring);
    const fea::Solution s =
        fea_test::linear(model, fea_test::push(lower.nodes.back(), {0.0, 0.0, 1.0}));
    verify(source, quantity_prop, prop, prop_over_tip * s.placement(upper.nodes.back())(2),
           within_absolute(6e-4));
    verify(source, quantity_root, root, -s.forces_at(upper.beams.front(), 0.0).my / drop,
           within_absolute(5e-3));
  };
  propped("prop of 8.60 against a tip rate of 3.00, over F", "0.818",
          "moment at the root, elastic prop, over F D", "0.346", 8.60 / 3.00);
  propped("rigid prop, over F", "1.375", "moment at the root, rigid prop, over F D", "-0.10",
          1.0e7);
}

TEST_CASE("a bracket's root weld carries its bending and a brace relieves it", "[checks][weld]") {
  const Source source{
      "weld as a line: plates 100 mm wide, fillets of 6 mm on both sides, 15 kN at "
      "250 mm",
      Basis::common_practice};
  // mm, N
  std::vector<checks::WeldLine> lines;
  for (const double x : {-31.0, -25.0, 25.0, 31.0}) {
    lines.push_back({{x, -50.0, 0.0}, {x, 50.0, 0.0}, 6.0});
  }
  const auto stress = [&](double along, double kick) {
    return checks::worst_throat_stress({lines, 482.6},
                                       {{0, along, kick}, Eigen::Vector3d::Zero(), {0, 0, -250}});
  };
  const auto plain = stress(15e3, 0.0);
  verify(source, "bending", "132.6 MPa", std::abs(plain->stress.z()));
  verify(source, "direct", "8.8 MPa", std::abs(plain->stress.y()));
  verify(source, "resultant", "132.9 MPa", plain->resultant);
  // With a brace 0.970 kN m remain; its vertical kick of 2.98 kN adds to the bending.
  verify(source, "resultant, braced", "34.4 MPa", stress(0.970e6 / 250.0, 0.0)->resultant);
  verify(source, "resultant, braced, with the vertical kick", "36.1 MPa",
         stress(0.970e6 / 250.0, 2980.0)->resultant);
}

TEST_CASE("a weld group carries forces in space, box and angle", "[checks][weld]") {
  // mm, N
  const Source source{"weld as a line in three dimensions", Basis::common_practice};
  const double leg = 6.0;
  const checks::WeldGroup box{{{{-40, -60, 0}, {40, -60, 0}, leg},
                               {{40, -60, 0}, {40, 60, 0}, leg},
                               {{40, 60, 0}, {-40, 60, 0}, leg},
                               {{-40, 60, 0}, {-40, -60, 0}, leg}},
                              482.6};
  const auto worst =
      checks::worst_throat_stress(box, {{4e3, -10e3, 3e3}, Eigen::Vector3d::Zero(), {60, 50, 150}});
  REQUIRE(worst);
  verify(source, "box of 80 x 120, leg 6: resultant", "38.76 MPa", worst->resultant);
  CHECK((worst->point - Eigen::Vector3d(-40, 60, 0)).norm() < 1e-9);
  const Eigen::Vector3d per_length = worst->stress * leg / std::sqrt(2.0);
  verify(source, "box: along x, per length", "46.00 N/mm", per_length.x());
  verify(source, "box: along y, per length", "-1.00 N/mm", per_length.y());
  verify(source, "box: along z, per length", "157.9 N/mm", per_length.z());

  // An angle of 60 x 100 bends about its skew axes; M y / Ix would give 388.2.
  const double throat_of_one = std::sqrt(2.0);
  const checks::WeldGroup angle{
      {{{0, 0, 0}, {60, 0, 0}, throat_of_one}, {{0, 0, 0}, {0, 100, 0}, throat_of_one}}, 482.6};
  const auto p = checks::weld_properties(angle.lines);
  CHECK_FALSE(p.given_axes);
  CHECK((p.centroid - Eigen::Vector3d(11.25, 31.25, 0)).norm() < 1e-9);
  verify(source, "angle of 60 x 100, Mx 1 kN m, per length", "487.5 N/mm",
         checks::worst_throat_stress(angle, {.moment = {1e6, 0, 0}})->resultant);
}

TEST_CASE("a bent link's stress is the exact second-order one of the V shape", "[parts][fea]") {
  // Second order, shallow V with pinned ends: M = P e tan(u) / u at the apex, u = (L / 2)
  // sqrt(P / EI).
  const Source source{"P/A + M/Z of a V-shaped bar, tube 38 x 5 mm, 900 mm, 60 mm off, 15.231 kN",
                      Basis::common_practice};
  const double push = 15.231e3;
  const sections::AreaProps tube = round_tube(38, 5);
  verify(source, "A", "518.4 mm2", tube.area / 1e-6);
  verify(source, "I", "72182 mm4", tube.iyy / 1e-12);
  verify(source, "Z (elastic)", "3799 mm3", tube.modulus_y / 1e-9);
  verify(source, "stress when straight", "29.4 MPa", push / tube.area / MPa);
  verify(source, "Euler load", "180.3 kN", checks::euler_load(kYoung, tube.iyy, 0.9) / kN);

  SECTION("as a frame") {
    const sections::AreaProps rigid_in_shear = fea_test::tube(0.038, 0.005);
    const fea::Elastic steel{.young = kYoung, .shear = 79.0e9};
    fea::Model model;
    const auto left =
        fea_test::chain(model, Vector3::Zero(), {0.45, 0.06, 0.0}, 6, rigid_in_shear, steel);
    const auto right = fea_test::chain(model, {0.45, 0.06, 0.0}, {0.9, 0.0, 0.0}, 6, rigid_in_shear,
                                       steel, left.nodes.back());
    fea_test::hold(model, left.nodes.front(), {true, true, true, true, false, false});
    fea_test::hold(model, right.nodes.back(), {false, true, true, false, false, false});
    const fea::Factored factored = fea::factor(model);
    const fea::Loads loads = fea_test::push(right.nodes.back(), {-push, 0.0, 0.0});
    const double piece = fea::length(model, model[left.beams.back()]);
    const auto stress = [&](fea::Method method) {
      const fea::Solution s = fea::solve(factored, loads, {.method = method});
      const double moment = std::abs(s.forces_at(right.beams.front(), 0.0).mz);
      CHECK_THAT(std::abs(s.forces_at(left.beams.back(), piece).mz),
                 Catch::Matchers::WithinRel(moment, 1e-5));
      return (push / tube.area + moment / tube.modulus_z) / MPa;
    };
    verify(source, "largest stress, linear, as a frame", "269.9 MPa", stress(fea::Method::linear));
    verify(source, "largest stress, second order, as a frame", "288.1 MPa",
           stress(fea::Method::second_order), within(1e-3));
    // e^2 L / 3EI beside L / EA; the legs are 0.9 % longer than the chord.
    const fea::Solution s = fea::solve(factored, loads, {.method = fea::Method::linear});
    verify(source, "rate along the chord", "12.28 kN/mm",
           push / -s.placement(right.nodes.back())(0) * 1e-6, within(0.01));
    verify(source, "rate when straight", "118.1 kN/mm", kYoung * tube.area / 0.9 * 1e-6);
  }
  SECTION("as a lateral link") {
    parts::Design d;
    d.lateral_link = parts_test::level_link();
    // A bow of 0.9 mm (length / 1000) is added: 60 mm in all.
    d.lateral_link->bend.off_straight = 0.0591;
    d.forces = {parts_test::force_at("axle bolt", 0.0, push, 0.0)};
    const auto worst = [&](fea::Method method) {
      // The chord stays 0.9 m long, so the force along it is the push itself.
      const Solved s = solve(d, method);
      double stress = 0.0;
      for (const parts::PieceBeam& beam : s.assembly.pieces.front().beams) {
        stress = std::max(
            stress,
            sections::worst_point(beam.at_a, s.solution.forces_at(beam.beam, 0.0)).von_mises);
      }
      return stress / MPa;
    };
    verify(source, "largest stress, linear, as a lateral link", "269.9 MPa",
           worst(fea::Method::linear), within(2e-3));
    verify(source, "largest stress, second order, as a lateral link", "288.1 MPa",
           worst(fea::Method::second_order), within(2e-3));
  }
}

TEST_CASE("a tie rod's column load and stress", "[checks][column]") {
  const Source source{"P/A and Euler's load, tie rod 32 x 4 mm, 1300 mm, 4.558 kN",
                      Basis::common_practice};
  const sections::RoundTube rod{.outside = 0.032, .wall = 0.004};
  const sections::AreaProps p = sections::area_props(rod);
  verify(source, "A", "351.9 mm2", p.area / 1e-6);
  verify(source, "I", "35186 mm4", p.iyy / 1e-12);
  verify(source, "r", "10.0 mm", p.radius_y / 1e-3);
  verify(source, "slenderness at which Johnson ends, Sy = 350 MPa", "107.5",
         checks::johnson_limit(kYoung, 350e6));
  verify(source, "Euler load", "42.12 kN", checks::euler_load(kYoung, p.iyy, 1.3) / kN);
  verify(source, "stress when straight", "13.0 MPa",
         sections::worst_point(rod, {.n = 4558.0}).von_mises / MPa);
}

TEST_CASE("a rock under the middle of a compressed arm", "[fea][second-order]") {
  const Source source{"arm of 50 x 6 mm, 900 mm, 8 kN across its middle, 22 kN compression",
                      Basis::common_practice};
  const sections::AreaProps p = round_tube(50, 6);
  verify(source, "A", "829.4 mm2", p.area / 1e-6);
  verify(source, "I", "204442 mm4", p.iyy / 1e-12);
  verify(source, "Z (elastic)", "8178 mm3", p.modulus_y / 1e-9);
  verify(source, "Euler load", "510.7 kN", checks::euler_load(kYoung, p.iyy, 0.9) / kN);
  verify(source, "Johnson load, Sy = 350 MPa", "249.0 kN",
         checks::johnson_load(kYoung, 350e6, p.area, 0.9 / p.radius_y) / kN);

  const auto arm = fea_test::section(p.area, p.iyy, p.izz, p.torsion);  // no shear give
  const fea::Elastic steel{.young = kYoung, .shear = 79.0e9};
  const auto solved = [&](int first, int rest, double compression) {
    fea::Model model;
    const double at = 0.9 * first / (first + rest);
    const auto left = fea_test::chain(model, Vector3::Zero(), {at, 0.0, 0.0}, first, arm, steel);
    const auto right = fea_test::chain(model, {at, 0.0, 0.0}, {0.9, 0.0, 0.0}, rest, arm, steel,
                                       left.nodes.back());
    fea_test::keep_in_xz(model);
    fea_test::hold(model, left.nodes.front(), {true, true, true, true, false, true});
    fea_test::hold(model, right.nodes.back(), {false, true, true, true, false, true});
    const fea::Loads loads = fea_test::push(left.nodes.back(), {0.0, 0.0, 8.0e3}) +
                             fea_test::push(right.nodes.back(), {-compression, 0.0, 0.0});
    const fea::Solution s = fea::solve(fea::factor(model), loads);
    REQUIRE(s.status() == fea::SolveStatus::converged);
    return std::pair{std::abs(s.forces_at(right.beams.front(), 0.0).my),
                     s.placement(left.nodes.back())(2)};
  };
  const auto [moment, deflection] = solved(4, 4, 0.0);
  verify(source, "moment at the middle, linear", "1.80 kN m", moment / kN);
  verify(source, "bending stress, linear", "220.1 MPa", moment / p.modulus_y / MPa);
  verify(source, "deflection of the middle, linear", "2.90 mm", deflection / 1e-3);
  verify(source, "axial stress", "26.5 MPa", 22.0e3 / p.area / MPa);
  verify(source, "largest stress, exact second order", "254.7 MPa",
         (solved(4, 4, 22.0e3).first / p.modulus_y + 22.0e3 / p.area) / MPa, within(5e-4));
  verify(source, "bending stress, rock at a third", "195.7 MPa",
         solved(3, 6, 0.0).first / p.modulus_y / MPa, within(5e-4));
}

}  // namespace hand_statics_test
