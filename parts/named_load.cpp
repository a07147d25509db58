#include "parts/named_load.hpp"

#include <cmath>

#include <Eigen/Geometry>

namespace parts {
namespace {

/// A point of a beam's flexible length.
fea::Vector3 place_on(const fea::Model& model, fea::BeamId beam, double at) {
  const fea::Vector3 a = fea::end_a_g(model, model[beam]);
  return a + at * (fea::end_b_g(model, model[beam]) - a).normalized();
}

Resultant resultant_of(const fea::NodeLoad& load, const fea::Model& model) {
  const fea::Vector3 arm_g = model[load.node].at_g + load.offset_g;
  return {load.force_g, load.moment_g + arm_g.cross(load.force_g)};
}
Resultant resultant_of(const fea::BeamPointLoad& load, const fea::Model& model) {
  return {load.force_g, load.moment_g + place_on(model, load.beam, load.at).cross(load.force_g)};
}
Resultant resultant_of(const fea::BeamLineLoad& load, const fea::Model& model) {
  const double to = std::isnan(load.to) ? fea::length(model, model[load.beam]) : load.to;
  const double loaded = to - load.from;
  // Two triangles, each with its whole force at a third of the loaded length from its high end.
  const fea::Vector3 first = 0.5 * loaded * load.at_from_g;
  const fea::Vector3 second = 0.5 * loaded * load.at_to_g;
  return {first + second, place_on(model, load.beam, load.from + loaded / 3.0).cross(first) +
                              place_on(model, load.beam, to - loaded / 3.0).cross(second)};
}
Resultant resultant_of(const fea::BeamStrain&, const fea::Model&) {
  return {};
}
Resultant resultant_of(const fea::SupportMove&, const fea::Model&) {
  return {};
}
Resultant resultant_of(const OwnWeight& load, const fea::Model& model) {
  Resultant sum;
  for (std::size_t i = 0; i < model.beams.size(); ++i) {
    const fea::Beam& beam = model.beams[i];
    if (std::isnan(beam.density)) continue;
    const fea::Vector3 weight_g = beam.density * beam.section.area * load.gravity_g;
    const Resultant one = resultant_of(
        fea::BeamLineLoad{
            .beam = fea::BeamId{static_cast<int>(i)}, .at_from_g = weight_g, .at_to_g = weight_g},
        model);
    sum.force_g += one.force_g;
    sum.moment_g += one.moment_g;
  }
  return sum;
}

}  // namespace

Resultant resultant_of(const NamedLoad& load, const fea::Model& model) {
  return std::visit([&](const auto& kind) { return resultant_of(kind, model); }, load.load);
}

}  // namespace parts
