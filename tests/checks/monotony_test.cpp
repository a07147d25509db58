// More of what carries never makes a check worse: property of each, no source. Checks whose own
// tests hold such a property (sections, columns' welds, rail, saddles, tabs, welds) are not here.
#include <functional>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "checks/bolt_group.hpp"
#include "checks/bolt_hole.hpp"
#include "checks/bolt_shear.hpp"
#include "checks/bolt_slip.hpp"
#include "checks/column.hpp"
#include "checks/joint_rating.hpp"
#include "checks/local_buckling.hpp"
#include "checks/plug_weld.hpp"
#include "checks/rated_load.hpp"
#include "checks/strap.hpp"
#include "checks/tab_root.hpp"
#include "checks/threaded_end.hpp"
#include "checks/tube_net_section.hpp"
#include "checks/warped_channel.hpp"
#include "checks/yield.hpp"

namespace monotony_test {
namespace {

struct Property {
  std::string check;
  std::string what;
  std::function<double(double)> utilization;  ///< with so many times of it
};

/// Utilization with one number of an input multiplied.
template <class Input, class Check>
std::function<double(double)> multiplied(const Input& input, double Input::*number,
                                         const Check& check) {
  return [=](double times) {
    Input more = input;
    more.*number *= times;
    const checks::Finding f = check(more);
    INFO(f.reason);
    REQUIRE(f.state != checks::State::undecided);
    return f.utilization();
  };
}

sections::BoltThread m16() {
  return {.name = "M16 x 2", .inch = false, .diameter = 0.016, .pitch = 0.002, .mark = "invented"};
}

/// A round tube as a member, its size multiplied.
checks::Finding column(double outside, double wall) {
  return *checks::column({.shape = sections::RoundTube{.outside = outside, .wall = wall},
                          .elastic = 200e9,
                          .yield = 350e6,
                          .strength_basis = {},
                          .length = 1.1,
                          .compression = 60e3,
                          .required = 3.0});
}

checks::Finding yields(double outside, double wall) {
  const sections::Shape shape = sections::RoundTube{.outside = outside, .wall = wall};
  const sections::Resultants cut = {.n = -2e4, .vy = 1e3, .t = 300.0, .my = 500.0, .mz = 200.0};
  const sections::PointStress worst = sections::worst_point(shape, cut);
  return checks::yield({.shape = shape,
                        .resultants = cut,
                        .worst = worst,
                        .strength = 350e6,
                        .strength_basis = {},
                        .safety_factor = 350e6 / worst.von_mises,
                        .required = 1.5,
                        .at_limit = {}});
}

checks::Finding thin_wall(double wall) {
  return checks::local_buckling({.shape = sections::RoundTube{.outside = 0.150, .wall = wall},
                                 .elastic = 200e9,
                                 .yield = 350e6,
                                 .length = 1.0,
                                 .resultants = {.n = -2e4, .my = 3e3},
                                 .required = 1.5});
}

/// A channel under bending, torque and bimoment.
double warped(double wall) {
  const sections::Channel shape{.depth = 0.150, .width = 0.080, .web = wall, .flange = wall};
  checks::WarpedCut cut;
  cut.resultants = {.n = -1e4, .vz = 2e3, .t = 200.0, .my = 900.0};
  cut.st_venant = 150.0;
  cut.bimoment = 60.0;
  return checks::WarpedChannel(shape).von_mises(cut);
}

/// Three bolts beside what pushes them, of so many times the diameter.
double group(double times, checks::Finding (*check)(const checks::BoltGroupInput&)) {
  sections::BoltThread thread = m16();
  thread.diameter *= times;
  return check({.group = {.at = {{0, 0, 0}, {0, 0.06, 0}, {0, 0.02, 0.08}}},
                .wrench = {.force = {2e3, 4e3, 3e3}, .moment = {90, 50, 20}, .at = {0.1, 0, 0}},
                .bolt = {.thread = thread,
                         .grade = *sections::find_bolt_grade("10.9", m16()),
                         .planes = 1},
                .required = 2.0})
      .utilization();
}

std::vector<Property> properties() {
  const checks::TubeNetSectionInput net = {.outside = 0.050,
                                           .wall = 0.004,
                                           .holes = 4,
                                           .hole = 0.012,
                                           .tensile = 400e6,
                                           .axial = 30e3,
                                           .bending = 200.0,
                                           .required = 2.0};
  const checks::BoltHoleInput hole = {.force = 30e3,
                                      .bolt = 0.016,
                                      .hole = 0.017,
                                      .edge = 0.025,
                                      .thickness = 0.006,
                                      .tensile = 400e6,
                                      .required = 2.0};
  const checks::TabRootInput root = {.thickness = 0.006,
                                     .width = 0.060,
                                     .height = 0.040,
                                     .force = 9e3,
                                     .side = 500.0,
                                     .yield = 250e6,
                                     .required = 1.5};
  const checks::ThreadedShankInput shank = {.thread = m16(),
                                            .yield = 400e6,
                                            .axial = 20e3,
                                            .across = 500.0,
                                            .out = 0.025,
                                            .required = 1.5};
  const checks::ThreadEngagementInput engaged = {
      .thread = m16(), .engaged = 0.017, .tensile = 400e6, .axial = 20e3, .required = 2.0};
  const checks::JointRatingInput joint = {
      .force = 10e3, .along = 1e3, .static_rating = 40e3, .axial_rating = 9e3, .required = 3.0};
  const checks::StrapInput strap = {.weight = 3e3,
                                    .rate = 4e5,
                                    .energy = 600.0,
                                    .force = 20e3,
                                    .breaking_load = 50e3,
                                    .required = 1.0};
  const checks::RatedLoadInput seat = {
      .preload = 5e3, .rate = 5e4, .travel = 0.05, .force = 7.5e3, .rating = 20e3, .required = 1.0};
  const checks::RosetteInput rosettes = {.count = 3,
                                         .hole = 0.012,
                                         .outside = 0.050,
                                         .wall = 0.004,
                                         .filler_tensile = 480e6,
                                         .axial = 20e3,
                                         .bending = 50.0,
                                         .required = 2.0};
  const auto bolt = [](const checks::BoltInput& in) { return checks::bolt_shear(in); };
  const checks::BoltInput of_bolt = {.thread = m16(),
                                     .grade = *sections::find_bolt_grade("10.9", m16()),
                                     .shear = 40e3,
                                     .tension = 20e3,
                                     .required = 2.0};
  return {
      {"bolt hole", "thickness",
       multiplied(hole, &checks::BoltHoleInput::thickness, checks::bolt_hole)},
      {"bolt hole", "edge", multiplied(hole, &checks::BoltHoleInput::edge, checks::bolt_hole)},
      {"tab root", "thickness",
       multiplied(root, &checks::TabRootInput::thickness, checks::tab_root)},
      {"tab root", "width", multiplied(root, &checks::TabRootInput::width, checks::tab_root)},
      {"threaded shank", "strength",
       multiplied(shank, &checks::ThreadedShankInput::yield, checks::threaded_shank)},
      {"thread engagement", "length",
       multiplied(engaged, &checks::ThreadEngagementInput::engaged, checks::thread_engagement)},
      {"joint rating", "radial",
       [joint](double times) {
         // With the axial rating in proportion.
         checks::JointRatingInput more = joint;
         more.static_rating *= times;
         more.axial_rating *= times;
         return checks::joint_rating(more).utilization();
       }},
      {"joint rating", "axial",
       multiplied(joint, &checks::JointRatingInput::axial_rating, checks::joint_rating)},
      {"strap", "breaking load",
       multiplied(strap, &checks::StrapInput::breaking_load, checks::strap)},
      {"rated load", "rating",
       multiplied(seat, &checks::RatedLoadInput::rating, checks::rated_load)},
      {"rosettes", "hole", multiplied(rosettes, &checks::RosetteInput::hole, checks::rosettes)},
      {"bolt", "less shear",
       [of_bolt, bolt](double times) {
         checks::BoltInput less = of_bolt;
         less.shear /= times;
         return bolt(less).utilization();
       }},
      {"slip", "diameter",
       [](double times) {
         sections::BoltThread thread = m16();
         thread.diameter *= times;
         return checks::bolt_slip({.thread = thread,
                                   .grade = *sections::find_bolt_grade("10.9", m16()),
                                   .shear = 9e3,
                                   .tension = 5e3,
                                   .required = 1.5})
             .utilization();
       }},
      {"column", "wall", [](double times) { return column(0.050, 0.003 * times).utilization(); }},
      {"column", "outside",
       [](double times) { return column(0.050 * times, 0.003).utilization(); }},
      {"yield", "wall", [](double times) { return yields(0.050, 0.003 * times).utilization(); }},
      {"yield", "outside", [](double times) { return yields(0.050 * times, 0.003).utilization(); }},
      {"net section", "wall",
       multiplied(net, &checks::TubeNetSectionInput::wall, checks::tube_net_section)},
      {"net section", "outside",
       multiplied(net, &checks::TubeNetSectionInput::outside, checks::tube_net_section)},
      {"warped channel", "walls", [](double times) { return warped(0.006 * times); }},
      {"bolt group", "diameter", [](double times) { return group(times, checks::bolt_group); }},
      {"group slip", "diameter",
       [](double times) { return group(times, checks::bolt_group_slip); }},
      {"thin wall", "wall", [](double times) { return thin_wall(0.0016 * times).utilization(); }},
  };
}

}  // namespace

TEST_CASE("more of what carries never makes a check worse", "[checks]") {
  for (const Property& property : properties()) {
    INFO(property.check << ", " << property.what);
    double last = property.utilization(1.0);
    for (const double times : {1.02, 1.05, 1.1, 1.2}) {
      const double now = property.utilization(times);
      CHECK(now <= last * (1.0 + 1e-12));
      last = now;
    }
    CHECK(last < property.utilization(1.0));
  }
}

}  // namespace monotony_test
