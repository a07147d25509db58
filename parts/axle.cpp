#include <cmath>

#include "parts/builder.hpp"

namespace parts {

void add_axle(Builder& builder) {
  if (!builder.design().axle) return;
  const Axle& axle = *builder.design().axle;
  Assembly& out = builder.out();
  const double hub = to_vehicle(*builder.design().vehicle).tire_radius;
  const fea::NodeId node = builder.add_node({0.0, 0.0, hub}, "axle", "axle");
  out.axle = node;
  out.points.push_back({"axle", node});
  out.held.push_back({"axle, by coils and bump stops", node});
  const double seat = (std::isnan(axle.seat_height) ? hub : axle.seat_height) - hub;
  const double slack =
      builder.design().limit_strap ? builder.design().limit_strap->slack : base::kUnset;
  for (const double side : {1.0, -1.0}) {
    const fea::Vector3 offset(0.0, side * 0.5 * axle.coil_spacing, seat);
    fea::Spring coil{
        .a = node, .b = {}, .offset_a_g = offset, .name = side > 0.0 ? "left coil" : "right coil"};
    coil.stiffness(2, 2) = axle.coil_rate;
    out.model.add(coil);
    out.stops.push_back({node, offset, axle.bump_travel, axle.stop_rate,
                         side > 0.0 ? "left bump stop" : "right bump stop", slack});
  }
}

}  // namespace parts
