#include "fea/labels.hpp"

#include <cmath>

#include <fmt/format.h>

namespace fea {
namespace {

std::string named(const char* kind, const std::string& name) {
  return fmt::format("{} `{}`", kind, name);
}

std::string numbered(const char* kind, int index) {
  return fmt::format("{} {}", kind, index);
}

}  // namespace

std::string label(const Model& model, NodeId node) {
  const std::string& name = model[node].name;
  return name.empty() ? numbered("node", node.index) : named("point", name);
}

std::string label(const Model& model, BeamId beam) {
  const std::string& name = model[beam].name;
  return name.empty() ? numbered("beam", beam.index) : named("beam", name);
}

std::string label(const Model& model, SpringId spring) {
  const std::string& name = model[spring].name;
  return name.empty() ? numbered("spring", spring.index) : named("spring", name);
}

std::string label(const Model& model, GapId gap) {
  const std::string& name = model[gap].name;
  return name.empty() ? numbered("gap", gap.index) : named("gap", name);
}

std::string direction_words(const Vector3& direction_g) {
  constexpr double kNearlyAlong = 0.9999;  // within 0.8 degree
  Vector3 unit = direction_g.normalized();
  Eigen::Index largest = 0;
  unit.cwiseAbs().maxCoeff(&largest);
  if (unit(largest) < 0.0) unit = -unit;
  if (unit(largest) > kNearlyAlong) {
    constexpr const char* kAxes[] = {"x", "y", "z"};
    return kAxes[largest];
  }
  // Rounded first, so that no "-0.00" is printed.
  const Vector3 shown = ((unit * 100.0).array().round() / 100.0 + 0.0).matrix();
  return fmt::format("({:.2f}, {:.2f}, {:.2f})", shown.x(), shown.y(), shown.z());
}

}  // namespace fea
