#include "fea/system.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <Eigen/Geometry>

#include "base/invariant.hpp"
#include "fea/elimination_order.hpp"
#include "fea/model_check.hpp"

namespace fea {
namespace {

/// A diagonal entry below this part of the largest of its kind (force per m, moment per rad) is
/// scaled as if it were that large: what rounding leaves of zero must not be scaled up to one.
constexpr double kSmallestScaled = 1.0e-14;

Eigen::VectorXi six_of(NodeId node) {
  return Eigen::VectorXi::LinSpaced(6, 6 * node.index, 6 * node.index + 5);
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

template <class Item>
std::vector<Item> joined(const std::vector<Item>& some, const std::vector<Item>& more) {
  std::vector<Item> out;
  out.reserve(some.size() + more.size());
  out.insert(out.end(), some.begin(), some.end());
  out.insert(out.end(), more.begin(), more.end());
  return out;
}

Model with(const Model& model, const Added& added) {
  return {.nodes = model.nodes,
          .beams = model.beams,
          .springs = joined(model.springs, added.springs),
          .supports = model.supports,
          .rigid = model.rigid,
          .gaps = joined(model.gaps, added.gaps)};
}

bool same_end(const BeamEnd& a, const BeamEnd& b) {
  if (a.node != b.node || a.offset_g != b.offset_g || a.joint.has_value() != b.joint.has_value()) {
    return false;
  }
  return !a.joint ||
         (a.joint->axes_g == b.joint->axes_g && a.joint->stiffness == b.joint->stiffness);
}

/// Whether all that a BeamPart is made of is the same.
bool same_beam(const Beam& a, const Beam& b) {
  const auto stiff = [](const Beam& beam) {
    const sections::AreaProps& s = beam.section;
    return std::array{s.area,
                      s.iyy,
                      s.izz,
                      s.torsion,
                      s.polar,
                      s.shear_y,
                      s.shear_z,
                      beam.elastic.young,
                      beam.elastic.shear};
  };
  return same_end(a.a, b.a) && same_end(a.b, b.b) && a.z_toward_g == b.z_toward_g &&
         stiff(a) == stiff(b) && a.taper == b.taper;
}

/// Whether the joints of two beams have the same components that are not rigid.
bool loose_alike(const Beam& a, const Beam& b) {
  const auto rigid_in = [](const BeamEnd& end, std::size_t k) {
    return !end.joint || std::isinf(end.joint->stiffness[k]);
  };
  for (std::size_t k = 0; k < 6; ++k) {
    if (rigid_in(a.a, k) != rigid_in(b.a, k) || rigid_in(a.b, k) != rigid_in(b.b, k)) return false;
  }
  return a.a.node == b.a.node && a.b.node == b.b.node;
}

bool same_body(const RigidBody& a, const RigidBody& b) {
  return a.master == b.master && a.carried == b.carried;
}

/// Whether beams that are the same are of the same parts: nodes, rigid bodies and unknowns are the
/// same.
bool same_between_beams(const Model& a, const Model& b) {
  const auto same_place = [](const Node& one, const Node& other) { return one.at_g == other.at_g; };
  const auto same_support = [](const Support& one, const Support& other) {
    return one.node == other.node && one.held == other.held;
  };
  // Supports have a say in what the roots of rigid bodies are.
  return std::equal(a.nodes.begin(), a.nodes.end(), b.nodes.begin(), b.nodes.end(), same_place) &&
         std::equal(a.rigid.begin(), a.rigid.end(), b.rigid.begin(), b.rigid.end(), same_body) &&
         std::equal(a.supports.begin(), a.supports.end(), b.supports.begin(), b.supports.end(),
                    same_support) &&
         have_like_unknowns(a, b);
}

bool same_spring(const Spring& a, const Spring& b) {
  return a.a == b.a && a.b == b.b && a.offset_a_g == b.offset_a_g && a.offset_b_g == b.offset_b_g &&
         a.axes_g == b.axes_g && a.stiffness == b.stiffness;
}

}  // namespace

bool have_like_unknowns(const Model& a, const Model& b) {
  return a.nodes.size() == b.nodes.size() &&
         std::equal(a.beams.begin(), a.beams.end(), b.beams.begin(), b.beams.end(), loose_alike);
}

void elastic_stiffness(const System& system, Blocks& blocks) {
  const Model& model = system.model();
  for (std::size_t i = 0; i < model.beams.size(); ++i) {
    const Beam& beam = model.beams[i];
    const BeamPart& part = system.beams()[i];
    elastic_block(part, stiffness_of(beam, part.length), blocks[i]);
  }
  for (std::size_t i = 0; i < model.springs.size(); ++i) {
    elastic_block(system.springs()[i], blocks[model.beams.size() + i]);
  }
}

System::System(Model model, const System* like) : model_(std::move(model)) {
  require_valid(model_);
  roots_ = RigidRoots(model_);
  const bool comparable = like != nullptr && same_between_beams(model_, like->model_);
  const System* alike = comparable ? like : nullptr;
  make_beams(alike);
  make_springs(alike);
  if (alike != nullptr) {
    nodes_ = alike->nodes_;
  } else {
    std::vector<Eigen::VectorXi> nodes;
    for (int i = 0; i < static_cast<int>(model_.nodes.size()); ++i) {
      nodes.push_back(six_of(NodeId{i}));
    }
    nodes_ = std::make_shared<const std::vector<Eigen::VectorXi>>(std::move(nodes));
  }
  number_and_factor(like);
}

System::System(const System& other, const Added& added)
    : model_(with(other.model_, added)),
      roots_(other.roots_),
      beams_(other.beams_),
      springs_(other.springs_),
      nodes_(other.nodes_),
      turns_(other.turns_),
      typical_length_(other.typical_length_) {
  for (std::size_t i = other.model_.gaps.size(); i < model_.gaps.size(); ++i) {
    require_valid(model_, GapId{static_cast<int>(i)});
  }
  for (std::size_t i = springs_.size(); i < model_.springs.size(); ++i) {
    require_valid(model_, SpringId{static_cast<int>(i)});
    springs_.push_back(
        std::make_shared<const SpringPart>(spring_part(roots_.rooted(model_.springs[i]))));
  }
  if (added.springs.empty()) {
    reduced_ = other.reduced_;
    n_free_ = other.n_free_;
    assembly_ = other.assembly_;
    scale_ = other.scale_;
    scaled_ = other.scaled_;
    factor_ = other.factor_;
    factored_ = other.factored_;
    return;
  }
  number_and_factor(&other);
}

/// @param like  whose order of the unknowns is taken where it has the same; may be null
void System::number_and_factor(const System* like) {
  const Eigen::VectorXi fixed = held_unknowns();
  if (like == nullptr || !number_like(*like, fixed)) number_unknowns(fixed);
  std::vector<bool> free_turns(static_cast<std::size_t>(n_free_));
  for (int i = 0; i < n_unknowns(); ++i) {
    if (!held(i)) free_turns[static_cast<std::size_t>(reduced_(i))] = turns(i);
  }
  scale_ = diagonal_scale(diagonal(), free_turns);
  assembly_.scale_by(scale_);
  scaled_ = Eigen::VectorXd::Zero(assembly_.pattern().nonZeros());
  assembly_.add([this](std::size_t b) -> const Eigen::MatrixXd& { return stiffness(b); }, 1.0,
                scaled_.data());
  factored_ = factor_.factorize(scaled_.data());
}

Eigen::Map<const Sparse> System::scaled() const {
  const Sparse& pattern = assembly_.pattern();
  return {pattern.rows(),          pattern.cols(),          pattern.nonZeros(),
          pattern.outerIndexPtr(), pattern.innerIndexPtr(), scaled_.data()};
}

const Eigen::MatrixXd& System::stiffness(std::size_t block) const {
  static const Eigen::MatrixXd kOfNode;
  if (block < beams_->size()) return (*beams_)[block].elastic;
  const std::size_t spring = block - beams_->size();
  return spring < springs_.size() ? springs_[spring].elastic : kOfNode;
}

const Eigen::VectorXi& System::unknowns(std::size_t block) const {
  if (block < beams_->size()) return (*beams_)[block].unknowns;
  const std::size_t spring = block - beams_->size();
  return spring < springs_.size() ? springs_[spring].unknowns : (*nodes_)[spring - springs_.size()];
}

/// Of the sum of the blocks, over the free unknowns.
Eigen::VectorXd System::diagonal() const {
  Eigen::VectorXd out = Eigen::VectorXd::Zero(n_free_);
  const auto add = [&](int unknown, double value) {
    if (!held(unknown)) out(reduced_(unknown)) += value;
  };
  for (std::size_t b = 0; b < n_blocks(); ++b) {
    const Eigen::MatrixXd& block = stiffness(b);
    const Eigen::VectorXi& unknowns = this->unknowns(b);
    for (Eigen::Index i = 0; i < block.rows(); ++i) add(unknowns(i), block(i, i));
    // Both ends at one rigid body.
    const bool twice = block.rows() >= 12 && unknowns(0) == unknowns(6);
    for (Eigen::Index i = 0; twice && i < 6; ++i) add(unknowns(i), 2.0 * block(i, i + 6));
  }
  return out;
}

/// @param alike  the same between its beams; may be null
void System::make_beams(const System* alike) {
  const std::size_t n_beams = model_.beams.size();
  const auto is_same = [&](std::size_t i) {
    return alike != nullptr && same_beam(model_.beams[i], alike->model_.beams[i]);
  };
  std::size_t n_same = 0;
  while (n_same < n_beams && is_same(n_same)) ++n_same;
  if (alike != nullptr && n_same == n_beams) {
    beams_ = alike->beams_;
    turns_ = alike->turns_;
    typical_length_ = alike->typical_length_;
    return;
  }
  int next = 6 * static_cast<int>(model_.nodes.size());
  turns_.assign(static_cast<std::size_t>(next), false);
  for (std::size_t i = 0; i < turns_.size(); ++i) turns_[i] = i % 6 >= 3;
  double total = 0.0;
  BeamParts beams;
  beams.reserve(n_beams);
  for (std::size_t i = 0; i < n_beams; ++i) {
    const bool as_there = i < n_same || is_same(i);
    beams.push_back(as_there ? alike->beams().shared(i)
                             : std::make_shared<const BeamPart>(
                                   beam_part(model_, roots_, model_.beams[i], next)));
    const BeamPart& part = beams[i];
    for (const EndPart& end : part.ends) {
      for (std::size_t k = 0; k < end.n_loose; ++k) turns_.push_back(end.loose[k].turns);
    }
    next = static_cast<int>(turns_.size());
    total += part.length;
  }
  if (n_beams > 0) typical_length_ = total / static_cast<double>(beams.size());
  beams_ = std::make_shared<const BeamParts>(std::move(beams));
}

bool System::only_adds_springs_to(const System& other) const {
  const std::vector<Spring>& there = other.model_.springs;
  const std::vector<Spring>& here = model_.springs;
  return beams_ == other.beams_ && there.size() <= here.size() &&
         std::equal(there.begin(), there.end(), here.begin(), same_spring);
}

void System::make_springs(const System* alike) {
  springs_.reserve(model_.springs.size());
  for (std::size_t i = 0; i < model_.springs.size(); ++i) {
    const Spring& spring = model_.springs[i];
    const bool as_there = alike != nullptr && i < alike->springs_.size() &&
                          same_spring(spring, alike->model_.springs[i]);
    springs_.push_back(
        as_there ? alike->springs_.shared(i)
                 : std::make_shared<const SpringPart>(spring_part(roots_.rooted(spring))));
  }
}

/// -1 where an unknown is held, else 0.
Eigen::VectorXi System::held_unknowns() const {
  Eigen::VectorXi out = Eigen::VectorXi::Zero(static_cast<Eigen::Index>(turns_.size()));
  for (const Support& support : model_.supports) {
    INVARIANT(support.node.index >= 0 &&
              static_cast<std::size_t>(support.node.index) < model_.nodes.size());
    for (int k = 0; k < 6; ++k) {
      if (support.held[static_cast<std::size_t>(k)]) out(6 * support.node.index + k) = -1;
    }
  }
  for (const NodeId node : roots_.carried_nodes()) out.segment<6>(6 * node.index).fill(-1);
  return out;
}

void System::number_unknowns(const Eigen::VectorXi& fixed) {
  std::vector<Eigen::VectorXi> all;
  for (std::size_t b = 0; b < n_blocks(); ++b) all.push_back(unknowns(b));
  reduced_ = elimination_order(all, fixed);
  n_free_ = static_cast<int>((reduced_.array() >= 0).count());
  assembly_ = Assembly(all, reduced_, n_free_);
  factor_ = Ldlt(assembly_.pattern());
}

/// Where each block has its like. A spring to the ground may be new: it has the unknowns of its
/// node's own block.
/// @return false where one has none, or other unknowns are held
bool System::number_like(const System& like, const Eigen::VectorXi& fixed) {
  const std::size_t n_beams = model_.beams.size();
  const std::size_t n_nodes = model_.nodes.size();
  const std::size_t like_nodes = like.n_blocks() - like.model_.nodes.size();
  const std::size_t n_like_springs = like.springs_.size();
  if (like.model_.beams.size() != n_beams || like.model_.nodes.size() != n_nodes) return false;
  if (like.turns_ != turns_) return false;
  if (((like.reduced_.array() < 0) != (fixed.array() < 0)).any()) return false;
  std::vector<std::size_t> same_as;
  same_as.reserve(n_blocks());
  const auto has_like = [&](std::size_t block) {
    const Eigen::VectorXi& there = like.unknowns(block);
    const Eigen::VectorXi& here = unknowns(same_as.size());
    if (&here == &there) {
      same_as.push_back(block);
      return true;
    }
    if (here.size() != there.size() || here != there) return false;
    same_as.push_back(block);
    return true;
  };
  for (std::size_t i = 0; i < n_beams; ++i) {
    if (!has_like(i)) return false;
  }
  for (std::size_t i = 0; i < springs_.size(); ++i) {
    if (i < n_like_springs && has_like(n_beams + i)) continue;
    const auto node = static_cast<std::size_t>(springs_[i].unknowns(0) / 6);
    if (!has_like(like_nodes + node)) return false;
  }
  for (std::size_t i = 0; i < n_nodes; ++i) {
    if (!has_like(like_nodes + i)) return false;
  }
  reduced_ = like.reduced_;
  n_free_ = like.n_free_;
  assembly_ = Assembly(like.assembly_, same_as);
  factor_ = like.factor_.empty_like();
  return true;
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
