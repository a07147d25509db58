#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "parts/bracket_weld.hpp"
#include "parts/builder.hpp"
#include "parts/length_words.hpp"

namespace parts {
namespace {

/// A point of the axle as a place on the node that carries it.
struct OnAxle {
  fea::NodeId node;
  fea::Vector3 offset_g;
};

OnAxle on_axle(const Assembly& out, const fea::Vector3& from_middle_g) {
  const fea::NodeId node = axle_near(out, from_middle_g.y());
  return {node, out.model[*out.axle].at_g + from_middle_g - out.model[node].at_g};
}

/// Coil and bump stop on one seat.
void add_seat(Builder& builder, const fea::Vector3& from_middle_g, const std::string& side) {
  const Axle& axle = *builder.design().axle;
  const loads::Vehicle vehicle = vehicle_of(builder.design());
  Assembly& out = builder.out();
  const auto [node, offset_g] = on_axle(out, from_middle_g);
  fea::Spring coil{.a = node, .b = {}, .offset_a_g = offset_g, .name = side + " coil"};
  coil.stiffness(2, 2) = axle.coil_rate;
  out.model.add(coil);
  const double unsprung = std::isnan(vehicle.unsprung_weight) ? 0.0 : vehicle.unsprung_weight;
  out.coil_seats.push_back({node,
                            offset_g,
                            0.5 * (vehicle.axle_weight - unsprung),
                            axle.coil_rate,
                            side + " coil",
                            axle.seat_rating,
                            {axle.seat_diameter, axle.seat_weld, filler_of(builder.design())}});
  out.stops.push_back({TravelStop::Kind::bump_stop,
                       node,
                       offset_g,
                       stop_travel(axle),
                       axle.stop_rate,
                       side + " bump stop",
                       axle.stop_rating,
                       {axle.pad_diameter, axle.pad_weld, filler_of(builder.design())}});
}

/// Where the tubes of a housing begin and end, from the left arm to the right one.  [m]
std::vector<double> housing_stations(const Housing& housing, double half, bool inches) {
  std::vector<double> stations = {half};
  for (std::size_t i = 0; i + 1 < housing.tubes.size(); ++i) {
    const double to = housing.tubes[i].to;
    if (!(to < stations.back()) || !(to > -half)) {
      throw base::InputError(
          "axle.housing",
          fmt::format(
              "its tubes run from the left arm, {0} left of the middle, to the right one at {1}: "
              "tube {2} cannot end at {3}",
              length_words(half, inches), length_words(-half, inches), i + 1,
              length_words(to, inches)));
    }
    stations.push_back(to);
  }
  stations.push_back(-half);
  return stations;
}

/// One tube after the other, with the axle's middle on the way.
void add_tubes(Builder& builder, const std::vector<double>& stations) {
  constexpr double kAtMiddle = 1.0e-6;  // [m]
  const std::vector<HousingTube>& tubes = builder.design().axle->housing.tubes;
  Assembly& out = builder.out();
  const fea::Vector3 middle_g = out.model[*out.axle].at_g;
  const auto node_at = [&](std::size_t i) {
    if (i == 0) return *out.axle_sides[0];
    if (i == tubes.size()) return *out.axle_sides[1];
    if (std::abs(stations[i]) < kAtMiddle) return *out.axle;
    return builder.add_node(middle_g + fea::Vector3(0.0, stations[i], 0.0), "axle housing",
                            "axle.housing");
  };
  fea::NodeId last = node_at(0);
  for (std::size_t i = 0; i < tubes.size(); ++i) {
    const fea::NodeId next = node_at(i + 1);
    std::vector<RunStop> through;
    if (stations[i] > kAtMiddle && stations[i + 1] < -kAtMiddle) through.push_back({*out.axle});
    RunSpec spec{.part = "axle", .name = "housing", .key = "axle.housing", .stick = tubes[i].stick};
    if (tubes.size() > 1) spec.name = fmt::format("housing, tube {} from the left", i + 1);
    spec.pieces = 2;
    Piece& piece = out.pieces[builder.add_run(spec, {last, fea::Vector3::Zero(), {}}, through,
                                              {next, fea::Vector3::Zero(), {}})];
    // Judged as a column as if each tube reached from arm to arm.
    piece.column = true;
    piece.length = stations.front() - stations.back();
    piece.column_from = stations.front() - stations[i];
    last = next;
  }
}

/// The axle's sides, joined by its housing.
void add_housing(Builder& builder) {
  const Axle& axle = *builder.design().axle;
  if (!axle.housing.given() || !builder.design().arm) return;
  const Arm& arm = *builder.design().arm;
  const double half = std::abs(builder.point(arm.axle_lower, "arm.axle_lower").y());
  if (!(half > 0.0)) {
    throw base::InputError("axle.housing",
                           "the arms hold the axle in its middle: between them "
                           "there is no housing");
  }
  Assembly& out = builder.out();
  const fea::Vector3 middle_g = out.model[*out.axle].at_g;
  for (const int i : {0, 1}) {
    const fea::Vector3 side_g(0.0, i == 0 ? half : -half, 0.0);
    const std::string name = i == 0 ? "left side of the axle" : "right side of the axle";
    const fea::NodeId node = builder.add_node(middle_g + side_g, name, "axle.housing");
    out.axle_sides[static_cast<std::size_t>(i)] = node;
    out.held.push_back({name + ", by its coil, bump stop and strap", node});
  }
  add_tubes(builder, housing_stations(axle.housing, half, out.inches));
}

}  // namespace

fea::NodeId axle_near(const Assembly& assembly, double y) {
  const std::optional<fea::NodeId> side = assembly.axle_sides[y > 0.0 ? 0 : 1];
  if (!side) return *assembly.axle;
  return std::abs(y) > 0.5 * std::abs(assembly.model[*side].at_g.y()) ? *side : *assembly.axle;
}

StrapJoint strap_joint(const Design& design, const TravelStop& stop, std::size_t bolt) {
  const LimitStrap& strap = *design.limit_strap;
  StrapJoint joint;
  joint.bolt.part = joint.tabs.part = "limit_strap";
  joint.bolt.where = "bolts of the " + stop.name;
  joint.tabs.where = "tabs of the " + stop.name;
  joint.bolt.bolt = strap.bolt;
  joint.bolt.strap = stop;
  joint.tabs.bolt = bolt;
  joint.tabs.tabs = strap.tabs;
  joint.tabs.filler = filler_of(design);
  joint.tabs.en_weld = design.factor_preset == checks::FactorPreset::en;
  if (strap.tabs.given()) joint.bolt.stack = stack_of_tabs(strap.tabs, strap.bolt);
  return joint;
}

void add_axle(Builder& builder) {
  if (!builder.design().axle) return;
  const Axle& axle = *builder.design().axle;
  Assembly& out = builder.out();
  const double hub = to_vehicle(*builder.design().vehicle).tire_radius;
  const fea::NodeId node = builder.add_node({0.0, 0.0, hub}, "axle", "axle");
  out.axle = node;
  out.points.push_back({"axle", node});
  out.held.push_back({"axle, by coils, bump stops and straps", node});
  add_housing(builder);
  const double seat = (std::isnan(axle.seat_height) ? hub : axle.seat_height) - hub;
  for (const double side : {1.0, -1.0}) {
    add_seat(builder, {0.0, side * 0.5 * axle.coil_spacing, seat}, side > 0.0 ? "left" : "right");
  }
  if (!builder.design().limit_strap) return;
  const LimitStrap& strap = *builder.design().limit_strap;
  out.strap_breaking_load = strap.breaking_load;
  const double spacing = std::isnan(strap.spacing) ? axle.coil_spacing : strap.spacing;
  for (const double side : {1.0, -1.0}) {
    const OnAxle at = on_axle(out, {0.0, side * 0.5 * spacing, 0.0});
    out.stops.push_back({TravelStop::Kind::limit_strap, at.node, at.offset_g,
                         slack_of(builder.design()), strap.rate,
                         side > 0.0 ? "left limit strap" : "right limit strap"});
    if (!strap.bolt.given() || !out.stops.back().known()) continue;
    const StrapJoint joint = strap_joint(builder.design(), out.stops.back(), out.bolts.size());
    out.bolts.push_back(joint.bolt);
    if (strap.tabs.given()) out.tabs.push_back(joint.tabs);
  }
}

}  // namespace parts
