#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "fea/frame_loads.hpp"
#include "sections/stress.hpp"

namespace fea {

/// A motion that nothing resists.
struct Mechanism {
  NodeId node;        ///< the point that moves most
  Vector6 motion;     ///< its displacement [m] and rotation [rad], scaled to a largest of 1
  std::string words;  ///< "point `tip` can move along y" or "point `tip` can turn about x"
};

/// The free motion of a model that is not held, if there is one.
[[nodiscard]] std::optional<Mechanism> find_mechanism(const Model& model);

class System;  // the assembled, factored equations; see fea/system.hpp

/// A model with its stiffness assembled and factored once, for any number of load cases.
/// Cheap to copy: copies share the factor, which never changes.
class Factored {
 public:
  explicit Factored(std::shared_ptr<const System> system) : system_(std::move(system)) {}
  [[nodiscard]] const Model& model() const;
  [[nodiscard]] const System& system() const { return *system_; }
  [[nodiscard]] std::shared_ptr<const System> share() const { return system_; }

 private:
  std::shared_ptr<const System> system_;
};

/// Assembles and factors.
/// @throws base::InputError when a beam has no length, a number is not finite, or the model is a
///         mechanism (the words of find_mechanism).
[[nodiscard]] Factored factor(const Model& model);

enum class Method {
  linear,        ///< equilibrium in the undeformed position
  second_order,  ///< equilibrium in the deformed position, small rotations: (K + Kg(f)) u = F
};

enum class SolveStatus {
  converged,
  unstable,       ///< second order: the load is at or above a critical one
  not_converged,  ///< second order: forces did not settle
};

/// The answer to one load case. A value: it keeps what it needs of the model alive. Unless it
/// converged, every number in it is base::kUnset.
class Solution {
 public:
  struct Data;
  explicit Solution(std::shared_ptr<const Data> data) : data_(std::move(data)) {}

  [[nodiscard]] SolveStatus status() const;
  /// Largest unbalanced force over the largest force, after the solve  [-]
  [[nodiscard]] double residual() const;
  /// Displacement [m] and rotation [rad] of a node, global axes.
  [[nodiscard]] Vector6 placement(NodeId node) const;
  /// Displacement of the flexible end itself, beyond its joint (end 0 = a, 1 = b), global axes.
  [[nodiscard]] Vector6 end_placement(BeamId beam, int end) const;
  /// Forces [N] and moments [N m] that supports and springs to the ground put on a node, about
  /// the node, global axes; zero in freedoms that neither holds.
  [[nodiscard]] Vector6 reaction(NodeId node) const;
  /// What a spring puts on node b's side (on the ground when there is none): spring axes.
  [[nodiscard]] Vector6 spring_force(SpringId spring) const;
  /// What acts on the beam at its two ends: (force, moment) at a, then at b, in the member's axes
  /// before it moved. In a second-order solution these balance at each node; the moments are the
  /// semi-tangential ones, which differ from moments about fixed axes by half the end's rotation
  /// times the moment.
  [[nodiscard]] Vector12 end_forces(BeamId beam) const;
  /// Resultants on the cut at `x` from end a; just right of a point load that acts at x.
  /// Linear: exact. Second order: in axes turned with the chord of the deformed beam (so that
  /// dMy/dx = Vz and dMz/dx = -Vy hold), right at both ends, with the deflection between the ends
  /// of this beam left out: subdivide.
  [[nodiscard]] sections::Resultants forces_at(BeamId beam, double x) const;
  /// Stations at which a resultant or a stress along a beam can be largest, ascending, from 0 to
  /// its length: its ends, both sides of each load between them, and quarters under line loads. [m]
  [[nodiscard]] std::vector<double> stations(BeamId beam) const;
  [[nodiscard]] const Data& data() const { return *data_; }

 private:
  std::shared_ptr<const Data> data_;
};

struct SolveOptions {
  Method method = Method::second_order;
  int max_iterations = 50;
  double tolerance = 1e-10;  ///< relative change of the forces between iterations
};

[[nodiscard]] Solution solve(const Factored& factored, const Loads& loads,
                             const SolveOptions& options = {});

}  // namespace fea
