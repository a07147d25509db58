#include "fea/frame_model.hpp"

#include <cmath>
#include <utility>

#include <Eigen/Geometry>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "base/units.hpp"

namespace fea {
namespace {

constexpr double kShortest = 1.0e-9;  // a beam below this has no direction  [m]

template <class Item>
const Item& item(const std::vector<Item>& items, int index) {
  INVARIANT(index >= 0 && static_cast<std::size_t>(index) < items.size());
  return items[static_cast<std::size_t>(index)];
}

std::string called(const Beam& beam) {
  return beam.name.empty() ? "beam" : "beam `" + beam.name + "`";
}

}  // namespace

NodeId Model::add(Node node) {
  nodes.push_back(std::move(node));
  return {static_cast<int>(nodes.size()) - 1};
}

BeamId Model::add(Beam beam) {
  beams.push_back(std::move(beam));
  return {static_cast<int>(beams.size()) - 1};
}

SpringId Model::add(Spring spring) {
  springs.push_back(std::move(spring));
  return {static_cast<int>(springs.size()) - 1};
}

void Model::add(RigidBody body) {
  rigid.push_back(std::move(body));
}

GapId Model::add(Gap gap) {
  gaps.push_back(std::move(gap));
  return {static_cast<int>(gaps.size()) - 1};
}

const Node& Model::operator[](NodeId id) const {
  return item(nodes, id.index);
}
const Beam& Model::operator[](BeamId id) const {
  return item(beams, id.index);
}
const Spring& Model::operator[](SpringId id) const {
  return item(springs, id.index);
}
const Gap& Model::operator[](GapId id) const {
  return item(gaps, id.index);
}

Vector3 end_a_g(const Model& model, const Beam& beam) {
  return model[beam.a.node].at_g + beam.a.offset_g;
}

Vector3 end_b_g(const Model& model, const Beam& beam) {
  return model[beam.b.node].at_g + beam.b.offset_g;
}

double length(const Model& model, const Beam& beam) {
  return (end_b_g(model, beam) - end_a_g(model, beam)).norm();
}

Matrix3 member_axes(const Model& model, const Beam& beam) {
  const Vector3 span = end_b_g(model, beam) - end_a_g(model, beam);
  if (!(span.norm() > kShortest)) throw base::InputError(called(beam), "has no length");
  const Vector3 x = span.normalized();
  const bool vertical = std::hypot(x.x(), x.y()) < std::sin(0.1 * base::kDegree);
  const Vector3 toward =
      beam.z_toward_g ? *beam.z_toward_g : (vertical ? Vector3::UnitX() : Vector3::UnitZ());
  const Vector3 square = toward - toward.dot(x) * x;
  if (!(square.norm() > 1.0e-6 * toward.norm())) {
    throw base::InputError(called(beam), "its z direction is along the member; give one across it");
  }
  Matrix3 axes;
  axes.row(0) = x;
  axes.row(2) = square.normalized();
  axes.row(1) = axes.row(2).transpose().cross(x);
  return axes;
}

}  // namespace fea
