#pragma once

#include <memory>

#include "fea/beam_part.hpp"
#include "fea/ldlt.hpp"
#include "fea/matrix_assembly.hpp"
#include "fea/rigid_roots.hpp"
#include "fea/solver.hpp"
#include "fea/spring_part.hpp"

namespace fea {

/// Number of a node's first unknown.
[[nodiscard]] inline Eigen::Index first_unknown(NodeId node) {
  return 6 * static_cast<Eigen::Index>(node.index);
}

/// The assembled and factored equations. Unknowns: six for each node (global axes), then the
/// joints' own. `full` vectors hold all of them, the motion of carried nodes included; `free`
/// vectors those that neither a support holds nor a rigid body carries, in their order of
/// elimination. The scaled matrix is D K D with D = 1 / sqrt(diagonal), since m and rad, bushings
/// and tubes differ by many orders.
class System {
 public:
  /// Assembles and factors; says nothing of mechanisms (see mechanism.hpp).
  /// @param like  of a model made before: what it has in common with this one is shared, such as
  /// the
  ///              order of the unknowns where it has the same, springs to the ground aside. Saves
  ///              time, and has no say in the equations.
  /// @throws base::InputError as require_valid
  explicit System(Model model, const System* like = nullptr);
  /// Another frame with more added to it; all else is shared.
  /// @throws base::InputError as require_valid
  System(const System& other, const Added& added);

  [[nodiscard]] const Model& model() const { return model_; }
  [[nodiscard]] const BeamParts& beams() const { return *beams_; }
  [[nodiscard]] std::shared_ptr<const BeamParts> share_beams() const { return beams_; }
  [[nodiscard]] const SpringParts& springs() const { return springs_; }
  [[nodiscard]] int n_unknowns() const { return static_cast<int>(reduced_.size()); }
  [[nodiscard]] int n_free() const { return n_free_; }
  [[nodiscard]] const RigidRoots& roots() const { return roots_; }
  /// Whether it is another frame with springs added, if any.
  [[nodiscard]] bool only_adds_springs_to(const System& other) const;
  /// Fills the motion of carried nodes in from that of their roots.
  void carry(Eigen::VectorXd& full) const;
  /// Whether an unknown is held by a support or carried by a rigid body.
  [[nodiscard]] bool held(int unknown) const { return reduced_(unknown) < 0; }
  /// Place of each unknown among the free ones; -1 = held.
  [[nodiscard]] const Eigen::VectorXi& places() const { return reduced_; }
  /// Diagonal of D, over the free unknowns.
  [[nodiscard]] const Eigen::VectorXd& scale() const { return scale_; }
  /// Whether an unknown is a rotation.
  [[nodiscard]] bool turns(int unknown) const { return turns_[static_cast<std::size_t>(unknown)]; }

  /// Beams, springs, then nodes: each has a block of the stiffness.
  [[nodiscard]] std::size_t n_blocks() const {
    return beams_->size() + springs_.size() + nodes_->size();
  }
  /// A block of the elastic stiffness; empty for a node.
  [[nodiscard]] const Eigen::MatrixXd& stiffness(std::size_t block) const;
  /// Its unknowns.
  [[nodiscard]] const Eigen::VectorXi& unknowns(std::size_t block) const;
  /// D (sum of the blocks) D over the free unknowns, lower triangle.
  [[nodiscard]] Sparse scaled_sum(const Blocks& blocks) const;
  /// Where the entries of those blocks go.
  [[nodiscard]] const Assembly& assembly() const { return assembly_; }

  /// D K D, lower triangle.
  [[nodiscard]] Eigen::Map<const Sparse> scaled() const;
  /// Its values, in their stored order.
  [[nodiscard]] const Eigen::VectorXd& scaled_values() const { return scaled_; }
  [[nodiscard]] const Ldlt& factor() const { return factor_; }
  /// Whether every pivot of the factor is finite and not zero.
  [[nodiscard]] bool factored() const { return factored_; }

  [[nodiscard]] Eigen::VectorXd to_scaled_force(const Eigen::VectorXd& full) const;
  [[nodiscard]] Eigen::VectorXd to_scaled_motion(const Eigen::VectorXd& full) const;
  [[nodiscard]] Eigen::VectorXd from_scaled_motion(const Eigen::VectorXd& free) const;
  // The same into memory that is there.
  void to_scaled_force(const Eigen::VectorXd& full, Eigen::VectorXd& out) const;
  void to_scaled_motion(const Eigen::VectorXd& full, Eigen::VectorXd& out) const;
  void from_scaled_motion(const Eigen::VectorXd& free, Eigen::VectorXd& out) const;

  /// A length that makes moments comparable with forces: the mean of the beams, or 1 m.  [m]
  [[nodiscard]] double typical_length() const { return typical_length_; }

 private:
  [[nodiscard]] Eigen::VectorXd diagonal() const;
  void make_beams(const System* alike);
  void make_springs(const System* alike);
  void number_and_factor(const System* like);
  [[nodiscard]] Eigen::VectorXi held_unknowns() const;
  void number_unknowns(const Eigen::VectorXi& fixed);
  [[nodiscard]] bool number_like(const System& like, const Eigen::VectorXi& fixed);

  Model model_;
  RigidRoots roots_;
  std::shared_ptr<const BeamParts> beams_;
  SpringParts springs_;
  std::shared_ptr<const std::vector<Eigen::VectorXi>> nodes_;  // unknowns of each
  std::vector<bool> turns_;
  Eigen::VectorXi reduced_;
  int n_free_ = 0;
  double typical_length_ = 1.0;
  Assembly assembly_;
  Eigen::VectorXd scale_;
  Eigen::VectorXd scaled_;
  Ldlt factor_;
  bool factored_ = false;
};

/// All blocks of the elastic stiffness, from the sections and axes.
void elastic_stiffness(const System& system, Blocks& blocks);

}  // namespace fea
