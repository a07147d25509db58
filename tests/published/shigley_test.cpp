// Sections, stresses, columns, welds and steels of Shigley.

#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "checks/bolt_group.hpp"
#include "checks/column_strength.hpp"
#include "checks/weld.hpp"
#include "sections/area_props.hpp"
#include "sections/bolt.hpp"
#include "sections/material.hpp"
#include "sections/stress.hpp"
#include "tests/published/verification.hpp"

namespace shigley_test {
using Catch::Matchers::WithinAbs;
using checks::WeldLine;
using Eigen::Vector3d;
using published::Basis;
using published::Source;
using published::verify;
using published::within;
using namespace sections;

namespace {

constexpr double in = base::kInch;
constexpr double lbf = base::kPoundForce;
constexpr double psi = base::kPsi;
const double kRoot2 = std::sqrt(2.0);

WeldLine line(double x1, double y1, double x2, double y2, double leg) {
  return {{x1, y1, 0.0}, {x2, y2, 0.0}, leg};
}

}  // namespace

TEST_CASE("2 x 1/4 in tubing has the properties of Shigley's table A-8", "[sections][area_props]") {
  const Source source{"Shigley, Mechanical Engineering Design, 9th ed., table A-8 (2 x 1/4 in)",
                      Basis::from_memory};
  const AreaProps p = area_props(RoundTube{.outside = 2.0 * in, .wall = 0.25 * in});
  // The table's steel is a little lighter than 7850 kg/m3.
  verify(source, "w", "4.673 lb/ft", 7850.0 * p.area * 12.0 * in / base::kPoundMass, within(0.002));
  verify(source, "A", "1.374 in2", p.area / (in * in));
  verify(source, "I", "0.537 in4", p.iyy / std::pow(in, 4));
  verify(source, "k", "0.625 in", p.radius_y / in);
  verify(source, "Z (elastic)", "0.537 in3", p.modulus_y / std::pow(in, 3));
  verify(source, "J", "1.074 in4", p.torsion / std::pow(in, 4));
}

TEST_CASE("a tube bent both ways and twisted has 21701 psi", "[sections][stress]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., sec. 3-10, resultant moment "
      "(tube 2 x 0.25 in; 9000 and 6000 lb in, torque 5000 lb in)",
      Basis::formula_from_memory};
  const double unit = lbf * in;
  const PointStress p = worst_point(RoundTube{.outside = 2.0 * in, .wall = 0.25 * in},
                                    {.t = 5000 * unit, .my = 9000 * unit, .mz = 6000 * unit});
  verify(source, "bending stress", "20147 psi", std::abs(p.bending) / psi, within(5e-5));
  verify(source, "shear stress", "4656.4 psi", p.torsion / psi, within(5e-5));
  verify(source, "von Mises stress", "21701 psi", p.von_mises / psi, within(5e-5));
}

// The other cases of the example have two normal stresses, which no bar has.
TEST_CASE("one normal stress and shear give Shigley's distortion energy factor",
          "[sections][stress]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., example 5-1, case c (sigma "
      "40, tau 45, Sy 100 kpsi)",
      Basis::read};
  const ByNumbers unit{.area = 1.0,
                       .iyy = 1.0,
                       .izz = 1.0,
                       .torsion = 1.0,
                       .modulus_y = 1.0,
                       .modulus_z = 1.0,
                       .modulus_t = 1.0};
  verify(source, "factor, distortion energy", "1.14",
         100.0 / worst_point(unit, {.n = 40.0, .t = 45.0}).von_mises);
}

// Inputs read, answers from memory. Each size printed carries 20 kip.
TEST_CASE("Shigley's rectangular link needs the sizes of example 4-19", "[checks][column]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., example 4-19 (4 x 5000 lbf; "
      "less sure)",
      Basis::from_memory};
  verify(source, "slenderness at which Johnson ends", "88.9", checks::johnson_limit(30e6, 75e3));
  // Both loads are linear in the width.
  verify(source, "width, 15 in long, 0.625 in thick (Euler)", "0.747 in",
         20000.0 / checks::euler_load(30e6, std::pow(0.625, 3) / 12.0, 15.0));
  verify(source, "width, 8 in long, 0.5 in thick (Johnson)", "0.66 in",
         20000.0 / checks::johnson_load(30e6, 75e3, 0.5, 8.0 / (0.5 / std::sqrt(12.0))));
}

TEST_CASE("Shigley's channel-shaped weld group carries 25 kN as in example 9-1", "[checks][weld]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., example 9-1 (leg 6 mm, 190 "
      "and 56 mm, 25 kN)",
      Basis::from_memory};
  // Web 190 and flanges 56: the flanges run from the web toward +x.
  const checks::WeldGroup group{
      {line(56, 0, 0, 0, 6), line(0, 0, 0, 190, 6), line(0, 190, 56, 190, 6)}, 482.6};
  const auto p = checks::weld_properties(group.lines);
  verify(source, "throat area", "1280 mm2", p.area, within(2e-3));
  verify(source, "centroid", "10.4 mm", p.centroid.x());
  verify(source, "J", "7.07e6 mm4", p.inertia(2, 2));
  const auto worst =
      checks::worst_throat_stress(group, {{0, -25e3, 0}, Vector3d::Zero(), {-100, 95, 0}});
  REQUIRE(worst);
  verify(source, "stress at the corner of the web", "43.9 MPa", worst->resultant);
  CHECK_THAT(worst->point.x(), WithinAbs(0.0, 1e-9));
  // The free tip by hand: direct stress and the moment over J; one step was rounded in print.
  const Vector3d r = Vector3d(56, 190, 0) - p.centroid;
  verify(source, "distance of the free tip", "105 mm", r.norm());
  const double moment = 25e3 * (100 + p.centroid.x());
  verify(source, "moment", "2760 N m", moment / 1000.0, within(1e-3));
  verify(source, "direct stress", "19.5 MPa", 25e3 / p.area);
  verify(source, "stress at the free tip", "37.0 MPa",
         std::hypot(-moment / p.inertia(2, 2) * r.y(),
                    -25e3 / p.area + moment / p.inertia(2, 2) * r.x()),
         within(5e-3));
}

// Inputs read, answers from memory; 0.30 F_EXX on the throat.
TEST_CASE("Shigley's two fillets of example 9-2 allow 22.3 kip", "[checks][weld]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., example 9-2 (two fillets of "
      "3/8 x 2 in, E70)",
      Basis::from_memory};
  checks::WeldInput input;
  input.group.lines = {{{0, 0, 0}, {2 * in, 0, 0}, 0.375 * in},
                       {{0, 2 * in, 0}, {2 * in, 2 * in, 0}, 0.375 * in}};
  input.group.filler_tensile = 70.0 * base::kKsi;
  input.wrench = {{16.5e3 * lbf, 0, 0}, Vector3d::Zero(), {0, in, 0}};
  input.required = 2.0;
  const double allowed = checks::weld(input).safety_factor / 2.0 * 16.5;
  verify(source, "allowable load", "22.28 kip", allowed, within(1e-3));
  verify(source, "allowable load per length", "5.57 kip/in", allowed / 4.0);
}

// The bending and the direct stress are printed apart; their resultant is 8510 psi.
TEST_CASE("Shigley's welded cantilever bends its welds as in example 9-4", "[checks][weld]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., example 9-4 (legs 3/8 in, "
      "500 lbf at 6 in; less sure)",
      Basis::from_memory};
  const checks::WeldGroup group{{line(-0.5, -1, -0.5, 1, 0.375), line(0.5, -1, 0.5, 1, 0.375)},
                                62e3};
  const auto p = checks::weld_properties(group.lines);
  verify(source, "A", "1.06 in2", p.area);
  verify(source, "I", "0.353 in4", p.inertia(0, 0), within(2e-3));
  verify(source, "Iu", "1.33 in3", p.inertia(0, 0) / (0.375 / kRoot2));
  const auto worst =
      checks::worst_throat_stress(group, {{0, -500, 0}, Vector3d::Zero(), {0, 0, 6}});
  REQUIRE(worst);
  verify(source, "direct stress", "472 psi", std::abs(worst->stress.y()), within(3e-3));
  verify(source, "bending stress", "8500 psi", std::abs(worst->stress.z()), within(3e-3));
  verify(source, "resultant", "8510 psi", worst->resultant, within(3e-3));
}

TEST_CASE("two parallel fillets allow the load of Shigley's problem 9-5", "[checks][weld]") {
  const Source source{
      "Shigley, 8th ed., solutions manual, problem 9-5 (two welds of 2 in, 2 in "
      "apart, legs 5/16 in, arm 7 in)",
      Basis::read};
  const checks::WeldGroup group{{line(-1, -1, -1, 1, 0.3125), line(1, -1, 1, 1, 0.3125)}, 70.0};
  const auto p = checks::weld_properties(group.lines);
  verify(source, "Ju", "5.333 in3", p.inertia(2, 2) / (0.3125 / kRoot2));
  verify(source, "J", "1.18 in4", p.inertia(2, 2));
  verify(source, "direct stress for 1 kip", "1.13 kpsi", 1.0 / p.area);
  const auto worst = checks::worst_throat_stress(group, {{0, -1, 0}, Vector3d::Zero(), {7, 0, 0}});
  REQUIRE(worst);
  verify(source, "largest stress for 1 kip", "9.22 kpsi", worst->resultant, within(3e-3));
  verify(source, "allowable load at 20 kpsi", "2.17 kip", 20.0 / worst->resultant);
}

TEST_CASE("weld groups have the unit second moments of Shigley's table 9-2", "[checks][weld]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., table 9-2 (b 3, d 5, leg "
      "1/4 in)",
      Basis::read};
  const auto unit = [](const std::vector<WeldLine>& lines) {
    return checks::weld_properties(lines).inertia(0, 0) / (0.25 / kRoot2);
  };
  const std::vector<WeldLine> upright = {line(0, 0, 0, 5, 0.25), line(3, 0, 3, 5, 0.25)};
  const std::vector<WeldLine> level = {line(0, 0, 3, 0, 0.25), line(0, 5, 3, 5, 0.25)};
  std::vector<WeldLine> box = upright;
  box.insert(box.end(), level.begin(), level.end());
  verify(source, "Iu, one upright weld", "10.42 in3", unit({upright.front()}));
  verify(source, "Iu, two upright welds", "20.83 in3", unit(upright));
  verify(source, "Iu, two level welds", "37.5 in3", unit(level));
  verify(source, "Iu, box", "58.33 in3", unit(box));
  verify(source, "A, box", "2.828 in2", checks::weld_properties(box).area);
}

// Estimated minimum values of bars of 3/4 to 1-1/4 in.
TEST_CASE("bar steels have the strengths of Shigley's table A-20", "[sections][material]") {
  const auto has = [](Basis basis, const std::string& id, const char* yield, const char* tensile) {
    const Source source{"Shigley, Mechanical Engineering Design, table A-20", basis};
    const auto m = find_material(id);
    REQUIRE(m);
    verify(source, id + ", Sy", yield, m->yield / base::kKsi, within(1e-6));
    verify(source, id + ", Sut", tensile, m->tensile / base::kKsi, within(1e-6));
  };
  has(Basis::read, "1018_HR", "32 kpsi", "58 kpsi");
  has(Basis::read, "1018_CD", "54 kpsi", "64 kpsi");
  has(Basis::read, "1020_HR", "30 kpsi", "55 kpsi");
  has(Basis::from_memory, "1045_HR", "45 kpsi", "82 kpsi");
  has(Basis::from_memory, "1045_CD", "77 kpsi", "91 kpsi");
}

TEST_CASE("threads have the stress areas of Shigley's table", "[sections][bolt]") {
  const Source source{"Shigley, Mechanical Engineering Design, 9th ed., table 8-2", Basis::read};
  const auto area = [](const std::string& name) {
    for (const BoltThread& thread : bolt_threads()) {
      if (thread.name == name) return thread.tensile_area() / (base::kInch * base::kInch);
    }
    FAIL("no thread " << name);
    return 0.0;
  };
  verify(source, "At, 3/8-16", "0.0775 in2", area("3/8-16"));
  verify(source, "At, 1/2-13", "0.1419 in2", area("1/2-13"));
  verify(source, "At, 5/8-11", "0.226 in2", area("5/8-11"));
  verify(source, "At, 3/4-10", "0.334 in2", area("3/4-10"));
  // The table cuts its last digit.
  verify(source, "At, 1/2-20", "0.1599 in2", area("1/2-20"), within(5e-4));
  verify(source, "At, 5/8-18", "0.256 in2", area("5/8-18"));
  verify(source, "At, 3/4-16", "0.373 in2", area("3/4-16"));
}

TEST_CASE("four bolts of Shigley beside their load carry 21.0 and 14.8 kN",
          "[checks][bolt_group]") {
  const Source source{
      "Shigley, Mechanical Engineering Design, 9th ed., example 8-7 (16 kN, 425 mm from four M16)",
      Basis::read};
  const checks::BoltGroup group{
      .at = {{0.075, 0.060, 0}, {0.075, -0.060, 0}, {-0.075, -0.060, 0}, {-0.075, 0.060, 0}},
      .along = Vector3d::UnitZ()};
  const auto shares = checks::bolt_shares(
      group, {.force = {0, -16e3, 0}, .moment = Vector3d::Zero(), .at = {0.425, 0, 0}});
  verify(source, "bolts nearer to the load", "21.0 kN", shares[0].shear / 1e3);
  verify(source, "bolts farther from it", "14.8 kN", shares[2].shear / 1e3);
  verify(source, "shear of the shank", "146 MPa", shares[1].shear / 144.0);
}

}  // namespace shigley_test
