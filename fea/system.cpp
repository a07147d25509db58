#include "fea/system.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "base/invariant.hpp"
#include "fea/elimination_order.hpp"
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

/// Whether a beam's unknowns are the six of each of its two ends, in global axes.
bool only_turns_axes(const BeamPart& part) {
  const Eigen::VectorXi& unknowns = part.map.unknowns;
  if (unknowns.size() != 12) return false;
  Matrix12 axes = Matrix12::Zero();
  for (Eigen::Index i = 0; i < 12; i += 3) axes.block<3, 3>(i, i) = part.axes_lg;
  for (Eigen::Index i = 1; i < 12; ++i) {
    if (i != 6 && unknowns(i) != unknowns(i - 1) + 1) return false;
  }
  return part.ends_l == axes;
}

BeamPart make_beam(const Model& model, const RigidRoots& roots, const Beam& beam, int first_extra) {
  BeamPart part;
  part.length = length(model, beam);
  part.polar = beam.section.polar / beam.section.area;
  part.axes_lg = member_axes(model, beam);
  part.flex = shear_flex(beam.section, beam.elastic, part.length);
  part.stiffness_l = beam_stiffness(beam.section, beam.elastic, part.length);
  const std::array rotations = {3, 4, 5, 9, 10, 11};
  part.bending_l = part.stiffness_l(rotations, rotations);
  Beam rooted = beam;
  rooted.a = roots.rooted(beam.a);
  rooted.b = roots.rooted(beam.b);
  part.map = end_map(rooted, first_extra);
  part.ends[0] = end_part(rooted.a, first_extra);
  part.ends[1] = end_part(rooted.b, first_extra + static_cast<int>(part.ends[0].n_loose));
  part.ends_l.resize(12, part.map.unknowns.size());
  part.ends_l.topRows<6>() = twice(part.axes_lg) * part.map.ends[0].far_g;
  part.ends_l.bottomRows<6>() = twice(part.axes_lg) * part.map.ends[1].far_g;
  part.plain = only_turns_axes(part);
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

}  // namespace

void to_unknowns(const BeamPart& part, const Matrix12& between_l, Eigen::MatrixXd& out) {
  if (!part.plain) {
    const Eigen::Index size = part.ends_l.cols();
    out.resize(size, size);
    for (Eigen::Index column = 0; column < size; ++column) {
      const Vector12 half = between_l * part.ends_l.col(column);
      for (Eigen::Index row = column; row < size; ++row) {
        out(row, column) = part.ends_l.col(row).dot(half);
        out(column, row) = out(row, column);
      }
    }
    return;
  }
  // Four times the member's axes: 3 x 3 by 3 x 3.
  out.resize(12, 12);
  const Matrix3 back = part.axes_lg.transpose();
  for (Eigen::Index column = 0; column < 12; column += 3) {
    for (Eigen::Index row = column; row < 12; row += 3) {
      const Matrix3 half = between_l.block<3, 3>(row, column) * part.axes_lg;
      const Matrix3 block = back * half;
      out.block<3, 3>(row, column) = block;
      if (row > column) out.block<3, 3>(column, row) = block.transpose();
    }
  }
}

Vector12 seen_by_member(const BeamPart& part, const std::array<EndMotion, 2>& ends) {
  Vector12 out;
  for (std::size_t end = 0; end < 2; ++end) {
    const auto first = 6 * static_cast<Eigen::Index>(end);
    out.segment<3>(first) = part.axes_lg * ends[end].far_g.head<3>();
    out.segment<3>(first + 3) = part.axes_lg * ends[end].far_g.tail<3>();
  }
  return out;
}

Vector12 end_freedoms(const BeamPart& part, const Eigen::VectorXd& motion) {
  return seen_by_member(part, {end_motion(part.ends[0], motion), end_motion(part.ends[1], motion)});
}

namespace {

void beam_block(const BeamPart& part, const Matrix12& stiffness_l, Eigen::MatrixXd& block) {
  to_unknowns(part, stiffness_l, block);
  if (!part.plain) block += part.map.springs;
}

void spring_block(const SpringPart& part, Eigen::MatrixXd& block) {
  const OverUnknowns<6> apart = part.connection.far_g - part.connection.near_g;
  const OverUnknowns<6> force = part.stiffness_g * apart;
  block.noalias() = apart.transpose() * force;
}

}  // namespace

void elastic_stiffness(const System& system, Blocks& blocks) {
  const Model& model = system.model();
  for (std::size_t i = 0; i < model.beams.size(); ++i) {
    const Beam& beam = model.beams[i];
    const BeamPart& part = system.beams()[i];
    beam_block(part, beam_stiffness(beam.section, beam.elastic, part.length), blocks[i]);
  }
  for (std::size_t i = 0; i < model.springs.size(); ++i) {
    spring_block(system.springs()[i], blocks[model.beams.size() + i]);
  }
}

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

  scaled_ = assembly_.pattern();
  assembly_.add(stiffness_, 1.0, scaled_.valuePtr());
  std::vector<bool> free_turns(static_cast<std::size_t>(n_free_));
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) free_turns[static_cast<std::size_t>(reduced_(i))] = turns(i);
  }
  scale_ = diagonal_scale(Eigen::VectorXd(scaled_.diagonal()), free_turns);
  assembly_.scale_by(scale_);
  scaled_.coeffs().setZero();
  assembly_.add(stiffness_, 1.0, scaled_.valuePtr());
  factor_ = Ldlt(scaled_);
  factored_ = factor_.factorize(scaled_.valuePtr());
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
    stiffness_.emplace_back();
    beam_block(part, part.stiffness_l, stiffness_.back());
    total += part.length;
  }
  if (!beams_.empty()) typical_length_ = total / static_cast<double>(beams_.size());
}

void System::make_springs() {
  for (const Spring& spring : model_.springs) {
    springs_.push_back(make_spring(roots_.rooted(spring)));
    const SpringPart& part = springs_.back();
    unknowns_.push_back(part.unknowns);
    stiffness_.emplace_back();
    spring_block(part, stiffness_.back());
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
  reduced_ = elimination_order(unknowns_, reduced_);
  n_free_ = static_cast<int>((reduced_.array() >= 0).count());
}

Sparse System::scaled_sum(const Blocks& blocks) const {
  Sparse out = assembly_.pattern();
  assembly_.add(blocks, 1.0, out.valuePtr());
  return out;
}

Eigen::VectorXd System::to_scaled_force(const Eigen::VectorXd& full) const {
  Eigen::VectorXd out(n_free_);
  to_scaled_force(full, out);
  return out;
}

Eigen::VectorXd System::to_scaled_motion(const Eigen::VectorXd& full) const {
  Eigen::VectorXd out(n_free_);
  to_scaled_motion(full, out);
  return out;
}

Eigen::VectorXd System::from_scaled_motion(const Eigen::VectorXd& free) const {
  Eigen::VectorXd out(n_unknowns());
  from_scaled_motion(free, out);
  return out;
}

void System::to_scaled_force(const Eigen::VectorXd& full, Eigen::VectorXd& out) const {
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) out(reduced_(i)) = full(i) * scale_(reduced_(i));
  }
}

void System::to_scaled_motion(const Eigen::VectorXd& full, Eigen::VectorXd& out) const {
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) out(reduced_(i)) = full(i) / scale_(reduced_(i));
  }
}

void System::from_scaled_motion(const Eigen::VectorXd& free, Eigen::VectorXd& out) const {
  for (int i = 0; i < n_unknowns(); ++i) {
    out(i) = held(i) ? 0.0 : free(reduced_(i)) * scale_(reduced_(i));
  }
  carry(out);
}

void System::carry(Eigen::VectorXd& full) const {
  for (const NodeId node : roots_.carried_nodes()) {
    full.segment<6>(first_unknown(node)) =
        carried(roots_.arm_g(node)) * full.segment<6>(first_unknown(roots_.root(node)));
  }
}

}  // namespace fea
