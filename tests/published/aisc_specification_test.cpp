// What the AISC specification, its manual and its design examples print of columns, welds and
// steels.

#include <cmath>
#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "checks/bending_strength.hpp"
#include "checks/bolt_hole.hpp"
#include "checks/bolt_shear.hpp"
#include "checks/bolt_slip.hpp"
#include "checks/column_strength.hpp"
#include "checks/combined_forces.hpp"
#include "checks/saddle_weld.hpp"
#include "checks/tab.hpp"
#include "checks/tube_torsion.hpp"
#include "checks/wall_slenderness.hpp"
#include "checks/weld.hpp"
#include "fea/buckling.hpp"
#include "sections/area_props.hpp"
#include "sections/material.hpp"
#include "tests/fea/build_frames.hpp"
#include "tests/published/verification.hpp"

namespace aisc_specification_test {
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

constexpr double in = base::kInch;
constexpr double kip = 1000.0 * base::kPoundForce;

/// Effective length factor of a column whose ends turn against a spring each, in units of EI / L.
double effective_length(double turning, bool sways) {
  fea::Model model;
  const fea_test::Chain post =
      fea_test::chain(model, fea::Vector3::Zero(), {0.0, 0.0, 1.0}, 8,
                      fea_test::section(1.0e5, 1.0, 50.0, 50.0), {.young = 1.0, .shear = 0.4});
  fea_test::keep_in_xz(model);
  fea_test::hold(model, post.nodes.front(), {true, true, true, true, false, true});
  fea_test::hold(model, post.nodes.back(), {!sways, true, false, true, false, true});
  for (const fea::NodeId end : {post.nodes.front(), post.nodes.back()}) {
    fea::Spring spring{.a = end};
    spring.stiffness(4, 4) = turning;
    model.add(spring);
  }
  const fea::BucklingResult result =
      fea::buckle(fea::factor(model), fea_test::push(post.nodes.back(), {0.0, 0.0, -1.0}));
  REQUIRE(result.status == fea::BucklingStatus::found);
  return base::kPi / std::sqrt(result.modes.front().factor);
}

/// The slenderness from which on `passed` says yes, which grows from no to yes.
template <typename Passed>
double limit_of(const Passed& passed) {
  double below = 10.0;
  double above = 1000.0;
  REQUIRE_FALSE(passed(below));
  REQUIRE(passed(above));
  while (above - below > 1e-9 * below) {
    const double middle = 0.5 * (below + above);
    (passed(middle) ? above : below) = middle;
  }
  return below;
}

constexpr double kElastic = 29000.0 * base::kKsi;
constexpr double kYield = 46.0 * base::kKsi;

sections::Shape thin_tube(double slenderness) {
  return sections::RoundTube{.outside = 0.002 * slenderness, .wall = 0.002};
}

/// The flat width is the outside less three walls.
sections::RectangularTube thin_box(double slenderness) {
  return {.depth = 0.030, .width = 0.002 * (slenderness + 3.0), .wall = 0.002, .corner = 0.004};
}

/// Lines behind the nominal moment: one more for each limit state that lowers it.
std::size_t moment_lines(const sections::Shape& shape) {
  return checks::bending_strength({shape, kElastic, kYield, 0.5}).y.lines.size();
}

}  // namespace

TEST_CASE("column between elastic end restraints", "[fea][buckling]") {
  // A column and the beams at its ends, all as stiff as each other (G = 1): each end turns against
  // 2 EI / (G L) when the beams bend to one side, against 6 EI / (G L) when the frame sways.
  const Source source{"AISC 360-10, commentary appendix 7, alignment charts (C-A-7-1, C-A-7-2)",
                      Basis::from_memory};
  verify(source, "K, GA = GB = 1, sway inhibited", "0.77", effective_length(2.0, false));
  verify(source, "K, GA = GB = 1, sway uninhibited", "1.32", effective_length(6.0, true));
}

// Inputs and Lc/r read in two reproductions; the example rounds step by step.
TEST_CASE("a pipe column of 30 ft carries what AISC Design Example E.11 prints",
          "[checks][column]") {
  const Source source{"AISC Design Examples v14.0, example E.11 (Pipe 10 Std, 30 ft)",
                      Basis::from_memory};
  const double slenderness = 30.0 * 12.0 / 3.68;
  const double fn = checks::column_e3(29000.0, 35.0, slenderness);
  verify(source, "KL/r", "97.8", slenderness);
  verify(source, "Fe", "29.9 ksi", checks::euler_load(29000.0, 1.0, slenderness));
  verify(source, "Fcr", "21.4 ksi", fn, within(3e-3));
  verify(source, "Pn", "247 kip", fn * 11.5);
  verify(source, "phi Pn", "222 kip", 0.90 * fn * 11.5);
  verify(source, "Pn / Omega", "148 kip", fn * 11.5 / 1.67);
}

TEST_CASE("the E3 curve for 50 ksi steel passes the points of table 4-22", "[checks][column]") {
  const Source source{
      "AISC 360-10/-16, E3, equations E3-2 to E3-4 (manual table 4-22), Fy = 50 ksi",
      Basis::formula_from_memory};
  for (const auto& [slenderness, printed] :
       {std::pair{40, "40.0 ksi"}, {80, "28.2 ksi"}, {120, "15.7 ksi"}, {150, "10.0 ksi"}}) {
    verify(source, "phi Fcr at KL/r = " + std::to_string(slenderness), printed,
           0.90 * checks::column_e3(29000.0, 50.0, slenderness));
  }
}

TEST_CASE("walls of hollow sections are sorted where AISC sorts them", "[checks][wall]") {
  const Source source{"ANSI/AISC 360-10, tables B4.1a and B4.1b, E7 (Fy = 46 ksi)",
                      Basis::formula_from_memory};
  verify(source, "largest D/t of a round tube", "284", limit_of([](double d) {
           return !checks::wall_outside_method(thin_tube(d), kElastic, kYield).empty();
         }));
  verify(source, "D/t of a round tube, slender in compression", "69.3", limit_of([](double d) {
           return checks::has_slender_wall(thin_tube(d), kElastic, kYield);
         }));
  verify(source, "D/t of a round tube, compact in bending", "44.1",
         limit_of([](double d) { return moment_lines(thin_tube(d)) != 1; }));
  verify(source, "D/t of a round tube, slender in bending", "195", limit_of([](double d) {
           const checks::NominalMoment m =
               checks::bending_strength({thin_tube(d), kElastic, kYield, 0.5}).y;
           return m.lines.empty() || m.lines.back().symbols.find("0.33 E") != std::string::npos;
         }));
  verify(source, "b/t of a flat wall, slender in compression", "35.2", limit_of([](double flat) {
           return checks::has_slender_wall(thin_box(flat), kElastic, kYield);
         }));
  verify(source, "b/t of a flat wall, compact in bending", "28.1",
         limit_of([](double flat) { return moment_lines(thin_box(flat)) > 1; }));
}

TEST_CASE("a pipe in bending carries what the AISC Design Examples print", "[checks][bending]") {
  const Source source{
      "AISC Design Examples v14.0, chapter F, pipe in flexure (Pipe 8 X-Strong, A53 Gr B)",
      Basis::from_memory};
  // 8.625 in outside, design wall 0.93 x 0.500 in.
  const sections::Shape pipe = sections::RoundTube{.outside = 8.625 * in, .wall = 0.465 * in};
  const checks::NominalMoment m =
      checks::bending_strength({pipe, kElastic, 35.0 * base::kKsi, 3.0}).y;
  verify(source, "Mn", "90.4 kip ft", m.value / (kip * 12.0 * in));
  verify(source, "phi Mn", "81.4 kip ft", 0.90 * m.value / (kip * 12.0 * in));
  verify(source, "Mn / Omega", "54.1 kip ft", m.value / 1.67 / (kip * 12.0 * in));
}

TEST_CASE("compression and bending both ways add up as AISC Design Example H.1 prints",
          "[checks][combined]") {
  const Source source{"AISC Design Examples v14.0, example H.1 (W14x99, LRFD)", Basis::from_memory};
  // Moments in kip ft; the example takes design strengths, so that the sum is theirs too.
  checks::SectionStrength strength;
  strength.bending.y.value = 642.0;
  strength.bending.z.value = 311.0;
  const checks::CombinedDemand demand = {.axial = 400.0,
                                         .axial_capacity = 1130.0,
                                         .compressed = true,
                                         .at = {.my = 250.0, .mz = 80.0}};
  const checks::Interaction terms = checks::interaction(strength, demand);
  verify(source, "Pr/Pc", "0.354", terms.axial);
  // It rounds Pr/Pc and the moments on its way.
  verify(source, "Pr/Pc + 8/9 (Mrx/Mcx + Mry/Mcy)", "0.928", terms.sum(), within(1e-3));
}

TEST_CASE("a round tube carries the torque that AISC Design Example H.5B prints",
          "[checks][torsion]") {
  const Source source{
      "AISC Design Examples v14.0, example H.5B (HSS5.000x0.250, A500 Gr B; less sure)",
      Basis::from_memory};
  // 5.000 in outside, design wall 0.93 x 0.250 in; Fy = 42 ksi.
  const sections::Shape tube = sections::RoundTube{.outside = 5.0 * in, .wall = 0.233 * in};
  const auto torsion = checks::tube_torsion(tube, kElastic, 42.0 * base::kKsi, 60.0 * in);
  REQUIRE(torsion);
  verify(source, "Fcr", "25.2 ksi", torsion->lines.at(0).values.at(0).si / base::kKsi);
  verify(source, "Tn", "200 kip in", torsion->torsion / (kip * in));
  verify(source, "phi Tn", "15.0 kip ft", 0.90 * torsion->torsion / (kip * 12.0 * in));
  verify(source, "Tn / Omega", "10.0 kip ft", torsion->torsion / 1.67 / (kip * 12.0 * in));
}

TEST_CASE("a bolt of 3/4 in and 120 ksi carries what the AISC manual lists", "[checks][bolt]") {
  const Source source{"AISC Steel Construction Manual, 14th ed., tables 7-1 and 7-2 (3/4 in A325)",
                      Basis::from_memory};
  checks::BoltInput bolt{.thread = {.name = "3/4-10", .diameter = 0.75 * in, .pitch = in / 10.0},
                         .grade = {.name = "A325", .tensile = 120.0 * base::kKsi},
                         .planes = 1,
                         .shear = kip};
  const auto carries = [&] { return 1.0 / checks::bolt_shear(bolt).demand; };
  verify(source, "phi rn, threads in the plane, single shear", "17.9 kip", 0.75 * carries());
  verify(source, "rn / Omega, threads in the plane, single shear", "11.9 kip", carries() / 2.0);
  bolt.planes = 2;
  verify(source, "phi rn, threads in the plane, double shear", "35.8 kip", 0.75 * carries());
  bolt.planes = 1;
  bolt.threads_in_plane = false;
  // The table rounds 0.563 x 120 to 68 ksi first.
  verify(source, "phi rn, threads out of the plane, single shear", "22.5 kip", 0.75 * carries(),
         within(7e-3));
  bolt.shear = 0.0;
  bolt.tension = kip;
  verify(source, "phi rn, tension", "29.8 kip", 0.75 * carries());
  verify(source, "rn / Omega, tension", "19.9 kip", carries() / 2.0);
}

TEST_CASE("shear takes off tension as AISC Design Example J.3 prints", "[checks][bolt]") {
  const Source source{"AISC Design Examples v14.0, example J.3 (3/4 in A325-N, Vu = 8.00 kip)",
                      Basis::from_memory};
  checks::BoltInput bolt{.thread = {.name = "3/4-10", .diameter = 0.75 * in, .pitch = in / 10.0},
                         .grade = {.name = "A325", .tensile = 120.0 * base::kKsi},
                         .planes = 1,
                         .shear = 8.0 * kip / 0.75};
  // The tension at which it just holds, by halving.
  double holds = 0.0;
  double fails = 60.0 * kip;
  while (fails - holds > 1e-6 * fails) {
    bolt.tension = 0.5 * (holds + fails);
    (checks::bolt_shear(bolt).demand <= 1.0 ? holds : fails) = bolt.tension;
  }
  verify(source, "Rn", "33.9 kip", holds / kip);
  verify(source, "phi Rn", "25.4 kip", 0.75 * holds / kip, within(3e-3));
}

TEST_CASE("a plate at a bolt of 3/4 in carries what the AISC manual lists", "[checks][bolt]") {
  const Source source{
      "AISC Steel Construction Manual, 14th ed., tables 7-4 and 7-5 (3/4 in, Fu = 58 ksi)",
      Basis::from_memory};
  checks::BoltHoleInput plate{.force = kip,
                              .bolt = 0.75 * in,
                              .hole = 13.0 / 16.0 * in,
                              .edge = 1.25 * in,
                              .thickness = in,
                              .plates = 1,
                              .tensile = 58.0 * base::kKsi};
  verify(source, "phi rn for an edge distance of 1-1/4 in", "44.0 kip/in",
         0.75 * checks::bolt_hole(plate).capacity / kip);
  plate.edge = 3.0 * in;
  verify(source, "phi rn in bearing", "78.3 kip/in",
         0.75 * checks::bolt_hole(plate).capacity / kip);
}

TEST_CASE("a pin-connected plate carries what the AISC design examples find", "[checks][tab]") {
  // 1/2 x 4-1/4 in, pin of 1 in in a hole of 1-1/32 in, 2.25 in clear ahead; A36.
  const Source source{"AISC Design Examples, ex. D.7", Basis::from_memory};
  checks::EyePlate plate{.thickness = 0.5 * in,
                         .bolt = in,
                         .hole = 1.03 * in,
                         .ahead = (2.25 + 0.515) * in,
                         .beside = 2.125 * in,
                         .yield = 36.0 * base::kKsi,
                         .tensile = 58.0 * base::kKsi};
  const checks::EyeStrengths s = checks::eye_strengths(plate);
  verify(source, "Pn, tensile rupture", "93.4 kip", s.tension / kip);
  verify(source, "Pn, shear rupture", "95.7 kip", s.shear / kip);
  verify(source, "Rn, bearing", "32.4 kip", s.bearing / kip);
  verify(source, "Pn, yield of the whole section", "76.5 kip", s.gross / kip);
}

TEST_CASE("a lifting lug carries what BTH-1 gives it", "[checks][tab]") {
  // 3/4 in of A36, pin of 3/4 in in a hole of 7/8 in, 1.5 in to the edges; Nd = 3.
  const Source source{"ASME BTH-1-2008, eqs. 3-45 to 3-53 (a page with the formulas read)",
                      Basis::formula_from_memory};
  const checks::EyePlate lug{.thickness = 0.75 * in,
                             .bolt = 0.75 * in,
                             .hole = 0.875 * in,
                             .ahead = 1.5 * in,
                             .beside = 1.5 * in,
                             .yield = 36.0 * base::kKsi,
                             .tensile = 58.0 * base::kKsi};
  const checks::EyeStrengths s = checks::eye_strengths(lug);
  verify(source, "Pt", "19.33 kip", s.bth_tension / 3.0 / kip);
  verify(source, "Pb", "17.03 kip", s.bth_splitting / 3.0 / kip);
  verify(source, "Pv", "20.00 kip", s.bth_shear / 3.0 / kip);
  verify(source, "Pp", "8.438 kip", s.bth_bearing / 3.0 / kip);
}

TEST_CASE("a lug with a large hole and a round end carries what BTH-1 gives it", "[checks][tab]") {
  // 3/4 in of A36, pin of 1-3/8 in in a hole of 1-11/16 in; Nd = 2. Its shear is that of a round
  // end, which is not computed here.
  const Source source{"ASME BTH-1-2005 3-3.3.1, a calculation sheet for a pinned plate",
                      Basis::read};
  const checks::EyePlate lug{.thickness = 0.75 * in,
                             .bolt = 1.375 * in,
                             .hole = 1.6875 * in,
                             .ahead = 4.15625 * in,
                             .beside = (1.66 + 0.84375) * in,
                             .yield = 36.0 * base::kKsi,
                             .tensile = 58.0 * base::kKsi};
  const checks::EyeStrengths s = checks::eye_strengths(lug);
  verify(source, "round end, Pt", "49.30 kip", s.bth_tension / 2.0 / kip);
  verify(source, "round end, Pb", "68.76 kip", s.bth_splitting / 2.0 / kip);
  verify(source, "round end, Pp", "23.20 kip", s.bth_bearing / 2.0 / kip);
}

TEST_CASE("a sixteenth of E70 fillet carries 1.392 kip an inch with phi", "[checks][weld]") {
  const Source source{"AISC Steel Construction Manual, part 8, eq. 8-2 (E70, a sixteenth of leg)",
                      Basis::from_memory};
  checks::WeldInput input;
  input.group.lines = {{{0, 0, 0}, {in, 0, 0}, in / 16.0}};
  input.group.filler_tensile = 70.0 * base::kKsi;
  input.wrench = {{kip, 0, 0}, Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero()};
  input.required = 2.0;
  const checks::Finding f = checks::weld(input);
  verify(source, "strength with phi = 0.75", "1.392 kip/in", 0.75 * f.safety_factor);
  verify(source, "strength with Omega = 2.00", "0.928 kip/in", f.safety_factor / 2.0);
}

// Upper bounds are inclusive. Of the table's legs in inches and in millimeters the smaller passes.
TEST_CASE("the minimum leg follows the thinner part", "[checks][weld]") {
  const Source source{"AISC 360-05, table J2.4, in inches or in millimeters", Basis::read};
  const auto leg = [](double part) { return checks::minimum_leg(part * in); };
  verify(source, "minimum leg, part of 0.25 in", "3 mm", leg(0.25) / base::kMillimeter,
         within(1e-9));
  verify(source, "minimum leg, part of 0.26 in", "0.1875 in", leg(0.26) / in, within(1e-9));
  verify(source, "minimum leg, part of 0.50 in", "0.1875 in", leg(0.5) / in, within(1e-9));
  verify(source, "minimum leg, part of 0.51 in", "6 mm", leg(0.51) / base::kMillimeter,
         within(1e-9));
  verify(source, "minimum leg, part of 0.75 in", "6 mm", leg(0.75) / base::kMillimeter,
         within(1e-9));
  verify(source, "minimum leg, part of 0.76 in", "0.3125 in", leg(0.76) / in, within(1e-9));
}

TEST_CASE("plate, pipe and hollow sections have the strengths of AISC table 2-4",
          "[sections][material]") {
  const Source memory{"AISC Steel Construction Manual, 14th ed., table 2-4", Basis::from_memory};
  const Source read{"AISC Steel Construction Manual, 14th ed., table 2-4, in the Design Examples",
                    Basis::read};
  const auto has = [](const Source& source, const std::string& id, const char* yield,
                      const char* tensile) {
    const auto m = sections::find_material(id);
    REQUIRE(m);
    verify(source, id + ", Fy", yield, m->yield / base::kKsi, within(1e-6));
    verify(source, id + ", Fu", tensile, m->tensile / base::kKsi, within(1e-6));
  };
  has(memory, "A36", "36 ksi", "58 ksi");
  has(read, "A53B", "35 ksi", "60 ksi");
  has(memory, "A500B_round", "42 ksi", "58 ksi");
  has(read, "A500B_rect", "46 ksi", "58 ksi");
}

// Sharp corners and flanges of one thickness; the rolled one's taper and leave more at the web.
TEST_CASE("a channel's warping constant is that of the AISC shapes table", "[checks][bending]") {
  const Source source{"AISC Shapes Database v15, C4x5.4 (a transcription)", Basis::read};
  const sections::Channel c{
      .depth = 4.0 * in, .width = 1.58 * in, .web = 0.184 * in, .flange = 0.296 * in};
  verify(source, "C4x5.4, Cw", "0.921 in6", checks::channel_warping(c) / std::pow(in, 6),
         within(0.03));
}

TEST_CASE("the spans at which a channel gives sideways are those of the design examples",
          "[checks][bending]") {
  const Source source{
      "AISC Design Examples, example F.2-2 (C15x33.9 of A36, with the table's properties)",
      Basis::from_memory};
  const checks::ChannelLimits limits =
      checks::channel_limits({.elastic = 29000.0 * base::kKsi,
                              .yield = 36.0 * base::kKsi,
                              .other_radius = 0.901 * in,
                              .other_inertia = 8.07 * std::pow(in, 4),
                              .torsion = 1.01 * std::pow(in, 4),
                              .warping = 358.0 * std::pow(in, 6),
                              .modulus = 42.0 * std::pow(in, 3),
                              .between = 14.4 * in});
  verify(source, "C15x33.9, Lp", "3.75 ft", limits.plastic_to / (12.0 * in));
  verify(source, "C15x33.9, Lr", "14.5 ft", limits.inelastic_to / (12.0 * in));
}

// The printed values are mean ones over the thicknesses of a size.
TEST_CASE("angles stand as unevenly as the commentary's table says", "[checks][bending]") {
  const Source source{"AISC 360-16, commentary table C-F10.1 (beta_w)", Basis::from_memory};
  struct Row {
    const char* name;
    double depth, width, wall;
    const char* printed;
  };
  for (const Row& row :
       {Row{"L4x3", 4.0, 3.0, 0.25, "1.65 in"}, Row{"L6x4", 6.0, 4.0, 0.375, "3.14 in"},
        Row{"L8x6", 8.0, 6.0, 0.5, "3.31 in"}}) {
    const sections::AreaProps p = sections::area_props(
        sections::Angle{.depth = row.depth * in, .width = row.width * in, .wall = row.wall * in});
    const double stronger = p.iyy > p.izz ? p.asymmetry_y : p.asymmetry_z;
    verify(source, row.name, row.printed, std::abs(stronger) / in, within(0.005));
  }
}

TEST_CASE("a class A joint slips where the guide's example says", "[checks][bolt]") {
  const Source source{
      "A Beginner's Guide to the Steel Construction Manual, example problem 4.1 (11 bolts 3/4 in "
      "A325, one plane; friction 0.35 and D_u 1.13 of AISC 360-05)",
      Basis::read};
  const double one = checks::slip_resistance(1, 0.35 * 1.13, 28.0 * kip);
  verify(source, "one bolt, slip", "11.1 kip", one / kip);
  verify(source, "11 bolts, slip", "122 kip", 11.0 * one / kip);
}

// K = x + y + 3 sqrt(x^2 + y^2), x = 1 / (2 pi), y = (3 - beta^2) / (3 pi (2 - beta^2)); the
// outline itself is longer where the two are nearly as thick.
TEST_CASE("a fishmouth's outline is as long as AWS takes it", "[checks][weld]") {
  const Source source{"AWS D1.1, tubular connections, weld length factor K",
                      Basis::formula_from_memory};
  const auto factor = [](double beta) {
    const double radius = 0.020;
    return checks::saddle_length(radius, radius / beta) / (2.0 * base::kPi * radius);
  };
  verify(source, "K, beta 0.3", "1.001", factor(0.3), within(0.005));
  verify(source, "K, beta 0.6", "1.030", factor(0.6), within(0.005));
}

TEST_CASE("a fillet gains with the angle of its load", "[checks][weld]") {
  const Source source{"ANSI/AISC 360-10, eq. J2-5 (angle of the load to the weld)",
                      Basis::from_memory};
  const auto kds = [](double degrees) {
    const double angle = degrees * base::kDegree;
    return checks::directional_increase(Eigen::Vector3d::UnitX(),
                                        {std::cos(angle), 0.0, std::sin(angle)});
  };
  verify(source, "0 degrees", "1.000", kds(0.0));
  verify(source, "30 degrees", "1.177", kds(30.0));
  verify(source, "45 degrees", "1.297", kds(45.0));
  verify(source, "60 degrees", "1.403", kds(60.0));
  verify(source, "90 degrees", "1.500", kds(90.0));
}

}  // namespace aisc_specification_test
