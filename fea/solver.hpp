#pragma once

#include <memory>
#include <optional>
#include <string>
#include <variant>
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
/// @param like  of a model made before, such as one with other sections or fewer springs to the
///              ground: what the two have in common is shared. Saves time, and has no say in the
///              answers.
/// @throws base::InputError when a beam has no length, a number is not finite, or the model is a
///         mechanism (the words of find_mechanism).
[[nodiscard]] Factored factor(Model model, const Factored* like = nullptr);

/// The same, or the free motion of a model that is not held.
/// @throws base::InputError as above, but for a mechanism
[[nodiscard]] std::variant<Factored, Mechanism> factor_if_held(Model model,
                                                               const Factored* like = nullptr);

/// A model with more added to it, which shares all else with it.
/// @throws base::InputError as factor
[[nodiscard]] Factored with_added(const Factored& factored, const Added& added);

/// Whether the nodes and beams of two models have the same unknowns: the one is made sooner with
/// the other as `like` then.
[[nodiscard]] bool have_like_unknowns(const Model& a, const Model& b);

enum class Method {
  linear,              ///< equilibrium in the undeformed position
  second_order,        ///< equilibrium in the deformed position, small rotations: (K + Kg(f)) u = F
  large_displacement,  ///< equilibrium in the place reached, finite rotations, gaps and preloads
};

enum class SolveStatus {
  converged,
  unstable,       ///< the load is at or above a critical one, or its equilibrium is not stable
  not_converged,  ///< second order: forces did not settle, or rotations are beyond small; large
                  ///< displacement: no equilibrium found
};

struct MovedState;  // where everything has gone; see fea/moved_frame.hpp

/// The answer to one load case. A value: it keeps what it needs of the model alive. Unless it
/// converged, every number in it is base::kUnset.
class Solution {
 public:
  struct Data;
  explicit Solution(std::shared_ptr<const Data> data) : data_(std::move(data)) {}

  [[nodiscard]] SolveStatus status() const;
  /// Largest unbalanced force over the largest force, after the solve  [-]
  [[nodiscard]] double residual() const;
  /// Displacement [m] and rotation [rad] of a node, global axes; a finite rotation is given by its
  /// rotation vector, at most half a turn.
  [[nodiscard]] Vector6 placement(NodeId node) const;
  /// Displacement of the flexible end itself, beyond its joint (end 0 = a, 1 = b), global axes.
  [[nodiscard]] Vector6 end_placement(BeamId beam, int end) const;
  /// Forces [N] and moments [N m] that supports and springs to the ground put on a node, about
  /// the node, global axes; zero in freedoms that neither holds.
  [[nodiscard]] Vector6 reaction(NodeId node) const;
  /// What a spring puts on node b's side (on the ground when there is none): spring axes.
  [[nodiscard]] Vector6 spring_force(SpringId spring) const;
  /// What a gap carries; zero while it is open, or not a large displacement.  [N]
  [[nodiscard]] double gap_force(GapId gap) const;
  /// What acts on the beam at its two ends: (force, moment) at a, then at b, in axes(beam). In a
  /// second-order solution these balance at each node; the moments are the semi-tangential ones,
  /// which differ from moments about fixed axes by half the end's rotation times the moment.
  /// Large displacement: they balance in the place reached.
  [[nodiscard]] Vector12 end_forces(BeamId beam) const;
  /// Axes of a beam's end_forces, rows in global components. Large displacement: moved, x along the
  /// chord between its ends; else the member's own before it moved.
  [[nodiscard]] Matrix3 axes(BeamId beam) const;
  /// Resultants on the cut at `x` from end a; just right of a point load that acts at x.
  /// Linear: exact. Second order and large displacement: in axes turned with the chord of the
  /// deformed beam (so that dMy/dx = Vz and dMz/dx = -Vy hold), right at both ends, with the
  /// deflection between the ends of this beam left out: subdivide.
  [[nodiscard]] sections::Resultants forces_at(BeamId beam, double x) const;
  [[nodiscard]] double length(BeamId beam) const;  ///< undeformed  [m]
  /// Stations at which a resultant or a stress along a beam can be largest, ascending, from 0 to
  /// its length: its ends, both sides of each load between them, and quarters under line loads.
  /// @param all  gets them, in memory that may be there  [m]
  void stations(BeamId beam, std::vector<double>& all) const;
  /// Whether a load acts between its ends: else its forces are the same all along it.
  [[nodiscard]] bool is_loaded_between(BeamId beam) const;
  /// Largest rotation of a beam's end from its chord; some 0.3 is the most that large displacement
  /// is good for, else more beams a member. Unset unless large displacement.  [rad]
  [[nodiscard]] double local_rotation() const;
  /// Why there is no answer: which point moves on. Large displacement only, else empty.
  [[nodiscard]] const std::string& words() const;
  /// Where everything is, for SolveOptions::start. Large displacement only, else none.
  [[nodiscard]] std::shared_ptr<const MovedState> state() const;
  /// Whether `state` is there and can be a start for another model: as many nodes and joints.
  [[nodiscard]] bool can_start(const Factored& other) const;
  [[nodiscard]] const Data& data() const { return *data_; }

 private:
  std::shared_ptr<const Data> data_;
};

/// Memory for second-order solutions of one factored model, and for those with large displacements,
/// used again from one load case to the next; with another model it starts anew. Not to be shared
/// by threads.
class Workspace {
 public:
  Workspace();
  ~Workspace();
  Workspace(Workspace&&) noexcept;
  Workspace& operator=(Workspace&&) noexcept;

  struct Memory;
  /// Made when it is first asked for.
  [[nodiscard]] Memory& memory();

 private:
  std::unique_ptr<Memory> memory_;
};

struct SolveOptions {
  Method method = Method::second_order;
  int max_iterations = 50;
  /// Second order: relative change of the forces between iterations. Large displacement:
  /// unbalanced over largest force.  [-]
  double tolerance = 1e-10;
  /// Where to look first, such as the answer to nearly the same loads (of the same model, springs
  /// to the ground aside); with large displacements from the reference place, one of small
  /// rotations. Saves iterations, and has no say in the answer.
  const Solution* near = nullptr;
  double near_factor = 1.0;        ///< multiple of `near`
  Workspace* workspace = nullptr;  ///< not linear; none = memory is asked for in each call
  /// Large displacement: where to start, a state of the same model in equilibrium under other
  /// loads; none = the reference place. The answer does not depend on it unless there are several.
  std::shared_ptr<const MovedState> start = nullptr;
  /// Large displacement: which gaps are likely to act, each by its number; none = as at the start.
  /// Saves steps, and has no say in the answer unless there are several.
  std::vector<bool> touching = {};
  double largest_step = 1.0;  ///< large displacement: part of the load  [-]
  /// Large displacement: tries after which no equilibrium is said to be found. One that is there
  /// takes a few; where there is none, ever shorter steps come near the last one.
  int most_steps = 100000;
  double shortest_step = 1.0e-5;  ///< and this part of the load, the shortest one tried
};

[[nodiscard]] Solution solve(const Factored& factored, const Loads& loads,
                             const SolveOptions& options = {});

}  // namespace fea
