// An axle's housing of several tubes: shafts and cantilevers in series (statics, unit load; no
// published source).
#include <cmath>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "build_design.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"
#include "sections/area_props.hpp"

namespace axle_housing_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kHalf = 0.4;  // arm to the truck's middle

/// An axle on two single-tube arms.
parts::Design axle_of(std::vector<parts::HousingTube> tubes) {
  parts::Design d;
  d.vehicle.emplace();
  d.vehicle->axle_weight = 16.0e3;
  d.vehicle->tire = 0.83;
  d.vehicle->track = 1.6;
  d.points = {{"bolt", {0.0, kHalf, 0.4}}, {"pivot", {-0.9, kHalf, 0.4}}};
  d.arm.emplace();
  d.arm->axle_lower = "bolt";
  d.arm->frame = "pivot";
  d.arm->lower = parts_test::tube(0.05, 0.005);
  d.axle.emplace();
  d.axle->coil_spacing = 0.9;
  d.axle->coil_rate = 40.0e3;
  d.axle->housing = {std::move(tubes)};
  return d;
}

/// The housing alone, clamped at its left end.
parts::Assembly clamped(const parts::Design& design) {
  parts::Assembly a = parts::assemble(design, {});
  std::vector<bool> of_axle(a.model.nodes.size(), false);
  for (std::size_t i = 0; i < a.model.beams.size(); ++i) {
    if (a.beam_part[i] != "axle") continue;
    for (const fea::BeamEnd* end : {&a.model.beams[i].a, &a.model.beams[i].b}) {
      of_axle[static_cast<std::size_t>(end->node.index)] = true;
    }
  }
  a.model.springs.clear();
  a.model.supports.clear();
  for (fea::Beam& beam : a.model.beams) {
    // The arms' bushings give nothing to speak of.
    if (beam.a.joint) beam.a.joint->stiffness.fill(1.0e-3);
  }
  for (std::size_t i = 0; i < of_axle.size(); ++i) {
    const fea::NodeId node{static_cast<int>(i)};
    if (!of_axle[i] || node == *a.axle_sides[0]) a.model.add(fea::Support{node});
  }
  return a;
}

fea::Vector6 pushed(const parts::Assembly& a, const fea::Vector3& force,
                    const fea::Vector3& moment) {
  const fea::NodeId right = *a.axle_sides[1];
  fea::Loads loads;
  loads.nodes.push_back(
      {.node = right, .offset_g = fea::Vector3::Zero(), .force_g = force, .moment_g = moment});
  return fea::solve(fea::factor(a.model), loads, {.method = fea::Method::linear}).placement(right);
}

}  // namespace

TEST_CASE("a stepped housing twists and bends as its tubes in series", "[parts][axle]") {
  const parts::Stick thin = parts_test::tube(0.070, 0.006);
  const parts::Stick thick = parts_test::tube(0.120, 0.012);
  const double first = GENERATE(0.25, 0.0, -0.1);
  INFO(first);
  const parts::Design d = axle_of({{thin, first}, {thick, -0.2}, {thin}});
  const parts::Assembly a = clamped(d);
  const std::vector<double> ends = {kHalf, first, -0.2, -kHalf};
  double turn = 0.0;
  double drop = 0.0;
  for (std::size_t i = 0; i < 3; ++i) {
    const sections::AreaProps p = sections::area_props((i == 1 ? thick : thin).shape);
    const double from = ends[i] + kHalf;  // from the right end
    const double to = ends[i + 1] + kHalf;
    const double g = parts_test::steel().shear_modulus();
    turn += (from - to) / (g * p.torsion);
    drop += (std::pow(from, 3) - std::pow(to, 3)) / (3.0 * 205.0e9 * p.iyy) +
            (from - to) / (g * p.shear_z);
  }
  const fea::Vector6 twisted = pushed(a, fea::Vector3::Zero(), {0.0, 1.0e3, 0.0});
  CHECK_THAT(twisted[4], WithinRel(1.0e3 * turn, 1e-6));
  const fea::Vector6 bent = pushed(a, {0.0, 0.0, 1.0e3}, fea::Vector3::Zero());
  CHECK_THAT(bent[2], WithinRel(1.0e3 * drop, 1e-6));

  std::vector<std::string> names;
  for (const parts::Piece& piece : a.pieces) {
    if (piece.part == "axle") names.push_back(piece.name);
  }
  CHECK(names.size() == 3);
  CHECK(names.front() == "housing, tube 1 from the left");
}

TEST_CASE("tubes that do not run from arm to arm are refused", "[parts][axle]") {
  const parts::Stick tube = parts_test::tube(0.070, 0.006);
  const auto refused = [&](double first, double second) -> std::string {
    try {
      parts::Design d = axle_of({{tube, first}, {tube, second}, {tube}});
      d.inches = false;
      (void)parts::assemble(d, {});
    } catch (const base::InputError& error) {
      return error.what();
    }
    return "";
  };
  CHECK_THAT(refused(0.1, 0.2),
             Contains("axle.housing") && Contains("tube 2 cannot end at 200 mm"));
  CHECK_THAT(refused(0.5, 0.2), Contains("tube 1 cannot end at 500 mm"));
  CHECK_THAT(refused(0.1, -0.4), Contains("tube 2 cannot end at -400 mm"));
}

}  // namespace axle_housing_test
