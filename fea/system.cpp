#include "fea/system.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "base/invariant.hpp"
#include "fea/model_check.hpp"

namespace fea {
namespace {

/// A diagonal entry below this part of the largest of its kind (force per m, moment per rad) is
/// scaled as if it were that large: what rounding leaves of zero must not be scaled up to one.
constexpr double kSmallestScaled = 1.0e-14;

Matrix6 twice(const Matrix3& matrix) {
  Matrix6 out = Matrix6::Zero();
  out.topLeftCorner<3, 3>() = matrix;
  out.bottomRightCorner<3, 3>() = matrix;
  return out;
}

Eigen::VectorXi six_of(NodeId node) {
  return Eigen::VectorXi::LinSpaced(6, 6 * node.index, 6 * node.index + 5);
}

BeamPart make_beam(const Model& model, const RigidRoots& roots, const Beam& beam, int first_extra) {
  BeamPart part;
  part.length = length(model, beam);
  part.polar = beam.section.polar / beam.section.area;
  part.axes_lg = member_axes(model, beam);
  part.flex = shear_flex(beam.section, beam.elastic, part.length);
  part.stiffness_l = beam_stiffness(beam.section, beam.elastic, part.length);
  Beam rooted = beam;
  rooted.a = roots.rooted(beam.a);
  rooted.b = roots.rooted(beam.b);
  part.map = end_map(rooted, first_extra);
  part.ends_l.resize(12, part.map.unknowns.size());
  part.ends_l.topRows<6>() = twice(part.axes_lg) * part.map.ends[0].far_g;
  part.ends_l.bottomRows<6>() = twice(part.axes_lg) * part.map.ends[1].far_g;
  return part;
}

SpringPart make_spring(const Spring& spring) {
  SpringPart part;
  part.axes_sg = twice(spring.axes_g.transpose());
  part.stiffness_g = part.axes_sg.transpose() * spring.stiffness * part.axes_sg;
  if (!spring.b) {
    part.unknowns = six_of(spring.a);
    part.connection = {.near_g = Matrix6X::Zero(6, 6),
                       .far_g = carried(spring.offset_a_g),
                       .near_arm_g = Vector3::Zero(),
                       .far_arm_g = spring.offset_a_g};
    part.sign_on_b = 1.0;
    return part;
  }
  part.unknowns.resize(12);
  part.unknowns << six_of(spring.a), six_of(*spring.b);
  part.connection = {.near_g = Matrix6X::Zero(6, 12),
                     .far_g = Matrix6X::Zero(6, 12),
                     .near_arm_g = spring.offset_a_g,
                     .far_arm_g = spring.offset_b_g};
  part.connection.near_g.leftCols<6>() = carried(spring.offset_a_g);
  part.connection.far_g.rightCols<6>() = carried(spring.offset_b_g);
  return part;
}

/// D of the class comment, over the free unknowns.
Eigen::VectorXd diagonal_scale(const Eigen::VectorXd& diagonal, const std::vector<bool>& turns) {
  std::array<double, 2> largest = {0.0, 0.0};
  for (Eigen::Index i = 0; i < diagonal.size(); ++i) {
    double& of_kind = largest[turns[static_cast<std::size_t>(i)] ? 1 : 0];
    of_kind = std::max(of_kind, diagonal(i));
  }
  Eigen::VectorXd scale(diagonal.size());
  for (Eigen::Index i = 0; i < diagonal.size(); ++i) {
    const double floor = kSmallestScaled * largest[turns[static_cast<std::size_t>(i)] ? 1 : 0];
    const double value = std::max(diagonal(i), floor);
    scale(i) = value > 0.0 ? 1.0 / std::sqrt(value) : 1.0;
  }
  return scale;
}

/// D M D with the stored pattern kept as it is.
Sparse scaled(const Sparse& matrix, const Eigen::VectorXd& scale) {
  Sparse out = matrix;
  double* values = out.valuePtr();
  for (int column = 0; column < out.outerSize(); ++column) {
    for (int k = out.outerIndexPtr()[column]; k < out.outerIndexPtr()[column + 1]; ++k) {
      values[k] *= scale(out.innerIndexPtr()[k]) * scale(column);
    }
  }
  return out;
}

}  // namespace

System::System(Model model) : model_(std::move(model)) {
  require_valid(model_);
  roots_ = RigidRoots(model_);
  make_beams();
  make_springs();
  for (int i = 0; i < static_cast<int>(model_.nodes.size()); ++i) {
    unknowns_.push_back(six_of(NodeId{i}));
    stiffness_.emplace_back();
  }
  number_unknowns();
  assembly_ = Assembly(unknowns_, reduced_, n_free_);

  const Sparse stiffness = assembly_.sum(stiffness_);
  std::vector<bool> free_turns;
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) free_turns.push_back(turns(i));
  }
  scale_ = diagonal_scale(Eigen::VectorXd(stiffness.diagonal()), free_turns);
  scaled_ = fea::scaled(stiffness, scale_);
  factor_ = std::make_unique<Ldlt>();
  if (n_free_ > 0) factor_->compute(scaled_);
}

void System::make_beams() {
  int next = 6 * static_cast<int>(model_.nodes.size());
  turns_.assign(static_cast<std::size_t>(next), false);
  for (std::size_t i = 0; i < turns_.size(); ++i) turns_[i] = i % 6 >= 3;
  double total = 0.0;
  for (const Beam& beam : model_.beams) {
    beams_.push_back(make_beam(model_, roots_, beam, next));
    const BeamPart& part = beams_.back();
    for (const bool turn : joint_unknowns_turn(beam)) turns_.push_back(turn);
    next = static_cast<int>(turns_.size());
    unknowns_.push_back(part.map.unknowns);
    stiffness_.push_back(part.ends_l.transpose() * part.stiffness_l * part.ends_l +
                         part.map.springs);
    total += part.length;
  }
  if (!beams_.empty()) typical_length_ = total / static_cast<double>(beams_.size());
}

void System::make_springs() {
  for (const Spring& spring : model_.springs) {
    springs_.push_back(make_spring(roots_.rooted(spring)));
    const SpringPart& part = springs_.back();
    const Matrix6X apart = part.connection.far_g - part.connection.near_g;
    unknowns_.push_back(part.unknowns);
    stiffness_.push_back(apart.transpose() * part.stiffness_g * apart);
  }
}

void System::number_unknowns() {
  reduced_ = Eigen::VectorXi::Zero(static_cast<Eigen::Index>(turns_.size()));
  for (const Support& support : model_.supports) {
    INVARIANT(support.node.index >= 0 &&
              static_cast<std::size_t>(support.node.index) < model_.nodes.size());
    for (int k = 0; k < 6; ++k) {
      if (support.held[static_cast<std::size_t>(k)]) reduced_(6 * support.node.index + k) = -1;
    }
  }
  for (const NodeId node : roots_.carried_nodes()) reduced_.segment<6>(6 * node.index).fill(-1);
  for (int& number : reduced_) {
    if (number == 0) number = n_free_++;
  }
}

Sparse System::scaled_sum(const Blocks& blocks) const {
  return fea::scaled(assembly_.sum(blocks), scale_);
}

Eigen::VectorXd System::to_scaled_force(const Eigen::VectorXd& full) const {
  Eigen::VectorXd out(n_free_);
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) out(reduced_(i)) = full(i) * scale_(reduced_(i));
  }
  return out;
}

Eigen::VectorXd System::to_scaled_motion(const Eigen::VectorXd& full) const {
  Eigen::VectorXd out(n_free_);
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) out(reduced_(i)) = full(i) / scale_(reduced_(i));
  }
  return out;
}

Eigen::VectorXd System::from_scaled_motion(const Eigen::VectorXd& free) const {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(n_unknowns());
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) out(i) = free(reduced_(i)) * scale_(reduced_(i));
  }
  carry(out);
  return out;
}

void System::carry(Eigen::VectorXd& full) const {
  for (const NodeId node : roots_.carried_nodes()) {
    full.segment<6>(first_unknown(node)) =
        carried(roots_.arm_g(node)) * full.segment<6>(first_unknown(roots_.root(node)));
  }
}

}  // namespace fea
