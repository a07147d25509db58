#pragma once

#include <memory>

#include "fea/member_loads.hpp"
#include "fea/moved_joint.hpp"

/// A whole frame at a state with finite displacements and rotations: unbalanced forces and tangent.
namespace fea {

/// Where everything is.
struct MovedState {
  std::vector<Placed> nodes;
  Eigen::VectorXd joints;  ///< relative motion in the joints, in the order of their unknowns

  [[nodiscard]] static MovedState at_rest(const System& system);
};

/// A beam where it has gone to, and what acts on its ends there.
struct MovedBeam {
  std::array<Placed, 2> ends;
  Matrix3 axes_gl;               ///< columns: the moved axes, x along the chord
  Vector12 ends_g;               ///< [N, N m]
  std::array<Vector3, 2> local;  ///< rotation vectors of the ends in those axes  [rad]
};

/// Forces at a state. Full vectors; a node's rotational entries are moments about fixed axes (work
/// on spins), except where a support holds one of its three rotations: there they work on its
/// rotation vector, of which the support holds a component.
struct MovedForces {
  Eigen::VectorXd unbalanced;  ///< of the deformation, less factor times the loads
  Blocks tangent;              ///< one block a beam, spring, gap, node; not symmetric
  std::vector<MovedBeam> beams;
  std::vector<Deformation> deformation;            ///< of each beam
  std::vector<OverUnknowns<7>> deformation_slope;  ///< its change with the beam's unknowns
  double force = 0.0;                              ///< largest single contribution  [N]
  double moment = 0.0;                             ///< [N m]
  double rounding_force = 0.0;                     ///< what rounding can make of zero  [N]
  double rounding_moment = 0.0;                    ///< [N m]
  bool usable = true;  ///< false when a beam is bent out of all proportion
};

/// What the solutions of one system share, whatever its loads. Rigid bodies are exact: what is
/// joined to a carried node is joined to its root, at a rigid arm.
struct MovedModel {
  std::shared_ptr<const System> system;
  Model model;                            ///< everything at the roots of rigid bodies
  std::vector<Eigen::VectorXi> unknowns;  ///< of the tangent's blocks
  std::vector<bool> holds_one;            ///< of its three rotations a support holds one; each node
  Assembly assembly;                      ///< of the tangent, scaled
  Ldlt blank;                             ///< for matrices of that pattern

  explicit MovedModel(std::shared_ptr<const System> of);

  /// Of each beam, how its deformation begins to change at rest; found at first use.
  mutable std::vector<OverUnknowns<7>> deformation_slope_at_rest;
};

class MovedFrame {
 public:
  MovedFrame(std::shared_ptr<const MovedModel> shared, const Loads& loads);
  /// @param load_case  of the same system
  MovedFrame(std::shared_ptr<const MovedModel> shared, const LoadCase& load_case);

  [[nodiscard]] const System& system() const { return *shared_->system; }
  [[nodiscard]] const MovedModel& shared() const { return *shared_; }
  [[nodiscard]] const Model& model() const { return shared_->model; }
  [[nodiscard]] const std::vector<std::vector<StationLoad>>& stations() const { return stations_; }
  /// Whether a load keeps a moment about fixed axes: it has no potential, and the tangent no
  /// symmetry even in equilibrium.
  [[nodiscard]] bool has_dead_moment() const;

  /// @param factor  multiplies the loads
  /// @param closed  which gaps act
  [[nodiscard]] MovedForces forces(const MovedState& state, double factor,
                                   const std::vector<bool>& closed) const;
  /// The same into memory that is there.
  /// @param assumed  of each beam, what the tangent is taken at; none = the beam's own
  void forces(const MovedState& state, double factor, const std::vector<bool>& closed,
              MovedForces& out, const std::vector<Deformation>* assumed = nullptr) const;
  /// The beams' deformation after a motion of the unknowns (full), along its slopes.
  void carry_on(const MovedForces& forces, const Eigen::VectorXd& motion,
                std::vector<Deformation>& deformation) const;
  /// The same from rest.
  [[nodiscard]] std::vector<Deformation> deformation_from_rest(const Eigen::VectorXd& motion) const;
  /// What the loads at factor 1 put on the unknowns (full).
  [[nodiscard]] Eigen::VectorXd loads(const MovedState& state) const;

  /// The state after a small motion of the unknowns (full).
  [[nodiscard]] MovedState moved(const MovedState& state, const Eigen::VectorXd& motion) const;

  /// Of each gap: how far past the beginning of contact.  [m]
  [[nodiscard]] std::vector<double> overlaps(const MovedState& state) const;
  /// Change of one overlap with the unknowns (full).
  [[nodiscard]] Eigen::VectorXd overlap_change(const MovedState& state, GapId gap) const;

  [[nodiscard]] Placed placed(const MovedState& state, std::optional<NodeId> node) const;
  /// Whether a support holds one of the node's three rotations.
  [[nodiscard]] bool holds_one_rotation(NodeId node) const {
    return shared_->holds_one[static_cast<std::size_t>(node.index)];
  }

 private:
  class Sum;
  void add_beam(Sum& sum, const MovedState& state, double factor, std::size_t index,
                const Deformation* assumed) const;
  void add_springs(Sum& sum, const MovedState& state) const;
  void add_gaps(Sum& sum, const MovedState& state, const std::vector<bool>& closed) const;
  void add_node_loads(Sum& sum, const MovedState& state, double factor) const;
  void to_rotation_vectors(std::size_t block, const MovedState& state, BlockVector& force,
                           Eigen::MatrixXd& tangent) const;
  void to_rotation_vectors(std::size_t block, const MovedState& state, BlockVector& force) const;
  [[nodiscard]] std::array<MovedEnd, 2> ends_of(const MovedState& state, std::size_t beam) const;
  [[nodiscard]] const double* joints_of(const MovedState& state, std::size_t beam) const;
  void carry(MovedState& state) const;

  std::shared_ptr<const MovedModel> shared_;
  Loads loads_;
  std::vector<std::vector<StationLoad>> stations_;
};

/// The six or twelve unknowns of a pair of nodes, ground left out.
[[nodiscard]] Eigen::VectorXi unknowns_of(std::optional<NodeId> a, std::optional<NodeId> b);

}  // namespace fea
