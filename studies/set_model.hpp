#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "fea/buckling.hpp"
#include "fea/condition.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"
#include "parts/put_loads.hpp"
#include "studies/built_frames.hpp"
#include "studies/linear_solution.hpp"

namespace studies {

/// What of a frame is closed or held, as bits: bit i is bump stop or limit strap i of the assembly,
/// the two highest are the ground that holds the axle's heave or its roll.
using Contacts = unsigned;
inline constexpr Contacts kHeaveHeld = 1U << 30U;
inline constexpr Contacts kRollHeld = 1U << 31U;

/// One load case solved at one multiple.
struct CaseSolution {
  fea::Solution solution;  ///< by `method`
  /// Equilibrium in the undeformed position, stops as below. In droop and where the ground holds
  /// the axle a coil that has nothing left to give pushes no more.
  LinearSolution linear;
  Contacts closed_stops = 0;
  bool contact_settled = true;
  fea::Method method = fea::Method::second_order;
  double ground_moment = 0.0;  ///< large displacement: that rolls the axle as far as given  [N m]
  /// Where it was looked for, its change over that of the roll: in small rotations [N m/rad], and
  /// as found over that [-].
  double roll_rate = base::kUnset;
  double roll_rate_found = base::kUnset;
};

/// A load case solved at another multiple.
struct NearSolution {
  const CaseSolution* solved = nullptr;  ///< may be null
  double multiple = 1.0;
};

/// A design's frame for one stiffness set, factored at first use, ready for any load case.
class SetModel {
 public:
  /// @param built  of other sets, or of a design that differs in the size of a part; gets this one
  ///               when it is factored. Saves time, and has no say in the answers. May be null.
  SetModel(const parts::Design& design, parts::StiffnessSet set, BuiltFrames* built = nullptr);

  /// With no stop or strap closed.
  /// @throws base::InputError when a part is not held, with the key of the case file; so does all
  ///         that solves
  [[nodiscard]] const fea::Factored& factored() const { return ready(0).factored; }

  [[nodiscard]] const parts::StiffnessSet& set() const { return set_; }
  [[nodiscard]] const parts::Design& design() const { return design_; }
  [[nodiscard]] const parts::Assembly& assembly() const { return assembly_; }

  /// Second order, with the whole load multiplied before the solve; bump stops and straps close and
  /// open until they settle. A place the axle is held at is not multiplied.
  /// @param near  where to look first: saves time, and has no say in the answer
  /// @param touching  the stops and straps tried first, where near has none
  [[nodiscard]] CaseSolution solve(const parts::DesignCase& load_case, double multiple,
                                   const NearSolution& near = {}, Contacts touching = 0) const;

  /// The same with large displacements: equilibrium in the place reached, bump stops and straps as
  /// gaps. In droop and where the ground holds the axle a coil that has nothing left to give leaves
  /// its seat; elsewhere, where multiples of the load are looked at, it pulls.
  /// @param near  solved so too: where to start; else its stops and straps are tried first
  [[nodiscard]] CaseSolution solve_moved(const parts::DesignCase& load_case, double multiple,
                                         const NearSolution& near) const;
  /// The load itself by first order, stops and straps as they are found by that; its answer is the
  /// linear one.
  /// @param touching  tried first
  [[nodiscard]] CaseSolution first_order(const parts::DesignCase& load_case,
                                         Contacts touching = 0) const;
  /// Whether that can start from a solution of another set: one with large displacements too, of as
  /// many joints.
  [[nodiscard]] bool can_start_from(const CaseSolution& solved) const;
  /// Whether nothing in the loads is beyond the large-displacement solution.
  [[nodiscard]] bool can_move(const parts::DesignCase& load_case) const;

  /// Critical multiples of the load, stops and straps as they are in `at`.
  [[nodiscard]] fea::BucklingResult buckle(const parts::DesignCase& load_case,
                                           const CaseSolution& at,
                                           const fea::BucklingOptions& options) const;
  /// Whether it is proved that none of them is lower than this.
  [[nodiscard]] bool none_below(const parts::DesignCase& load_case, const CaseSolution& at,
                                double factor) const;
  /// Lets go of what solving and buckling have worked in, a good part of a set's memory, for the
  /// next one to use; it is made again where it is asked for.
  void give_memory_back() const;

  /// Of the equations with these bump stops closed; found at first use, then kept.
  [[nodiscard]] const fea::Condition& condition(Contacts closed_stops) const;
  [[nodiscard]] fea::FactorSize factor_size(Contacts closed_stops) const;

 private:
  struct Ready {
    fea::Factored factored;
    fea::Workspace workspace;
    std::optional<fea::Buckling> buckling;  ///< made at first use
  };
  [[nodiscard]] Ready& ready(Contacts closed_stops) const;
  [[nodiscard]] fea::Factored factor_open() const;
  [[nodiscard]] fea::Buckling& buckling(Contacts closed_stops) const;
  [[nodiscard]] fea::Solution solve(const fea::Loads& loads, double multiple, Contacts closed_stops,
                                    const NearSolution& near = {}) const;
  [[nodiscard]] CaseSolution solve_from(const parts::DesignCase& load_case, double multiple,
                                        Contacts held, const NearSolution& near,
                                        Contacts touching) const;
  /// What touches in small rotations in the undeformed place, where that settles soon.
  struct Touching {
    Contacts closed = 0;
    bool settled = false;
    fea::Solution linear;  ///< of what is closed
  };
  [[nodiscard]] Touching touching_at_first(const parts::DesignCase& load_case, double multiple,
                                           Contacts held, Contacts tried = 0) const;
  [[nodiscard]] CaseSolution settle(const parts::DesignCase& load_case, double multiple,
                                    Contacts held, Contacts closed, std::vector<Contacts> untried,
                                    const NearSolution& near) const;
  [[nodiscard]] std::vector<bool> touching(const fea::Model& moved,
                                           const parts::DesignCase& load_case,
                                           const CaseSolution& second_order) const;
  [[nodiscard]] Ready& moved_model(const parts::DesignCase& load_case, Contacts held) const;
  [[nodiscard]] CaseSolution rolled(const parts::DesignCase& load_case, double multiple,
                                    Contacts held, const NearSolution& near,
                                    fea::SolveOptions options) const;
  [[nodiscard]] double roll_rate(const parts::DesignCase& load_case, Contacts held) const;
  [[nodiscard]] CaseSolution finish_moved(fea::Solution solution,
                                          const parts::DesignCase& load_case, double multiple,
                                          Contacts held) const;
  [[nodiscard]] CaseSolution solve_moved_from(const parts::DesignCase& load_case, double multiple,
                                              Contacts held, const NearSolution& near) const;
  [[nodiscard]] CaseSolution first_order_from(const parts::DesignCase& load_case, Contacts held,
                                              Contacts touching) const;
  [[nodiscard]] CaseSolution with_linear(fea::Solution solution, const fea::Loads& loads,
                                         Contacts closed_stops, bool settled,
                                         bool coils_only_push) const;
  [[nodiscard]] fea::Loads loads(const parts::DesignCase& load_case, double multiple,
                                 Contacts closed_stops) const;
  /// Bit i: stop i is of this kind, its travel and rate known.
  [[nodiscard]] Contacts known_stops(parts::TravelStop::Kind kind) const;
  /// The bit of the stop that is farthest from being open or closed as it should; 0 = all are
  /// right.
  [[nodiscard]] Contacts most_wrong_stop(const fea::Solution& solution, Contacts closed) const;

  const parts::Design& design_;
  parts::StiffnessSet set_;
  parts::Assembly assembly_;
  BuiltFrames* built_;
  mutable std::map<Contacts, Ready> ready_;
  // by the heave that is held (infinite = none), and whether coils only push
  mutable std::map<std::pair<double, bool>, Ready> moved_;
  mutable std::map<Contacts, fea::Condition> conditions_;
  mutable std::map<Contacts, double> roll_rates_;  ///< [N m/rad]
};

/// What the ground puts on the axle to hold it in its place: force up, moment about x (left wheel
/// up), at the axle's middle; zero where it holds nothing.
struct GroundHold {
  double force = 0.0;   ///< [N]
  double moment = 0.0;  ///< [N m]
};
/// @param solution  small rotations
[[nodiscard]] GroundHold ground_hold(const parts::Assembly& assembly, const loads::Place& place,
                                     Contacts closed, const fea::Solution& solution);
/// Of the solution by its own method.
[[nodiscard]] GroundHold ground_hold(const parts::Assembly& assembly, const loads::Place& place,
                                     const CaseSolution& solved);

/// Movement of a point carried by a node, along the case's axes.  [m]
[[nodiscard]] fea::Vector3 shift_of(fea::NodeId node, const fea::Vector3& offset_g,
                                    const fea::Solution& solution);
/// How far it goes up.  [m]
[[nodiscard]] double rise_of(fea::NodeId node, const fea::Vector3& offset_g,
                             const fea::Solution& solution);
/// How far the axle is past where a stop or strap is met; negative before.  [m]
[[nodiscard]] double overlap_of(const parts::TravelStop& stop, const fea::Solution& solution);
/// A closed stop or strap, as one that holds from ride height on.
[[nodiscard]] fea::Spring spring_of(const parts::TravelStop& stop);
/// What takes back the part of that spring's force that it has before it is met.
[[nodiscard]] fea::NodeLoad gap_load_of(const parts::TravelStop& stop);
/// What takes the springs of the ground that holds the axle from ride height to its place.
[[nodiscard]] std::vector<fea::NodeLoad> ground_loads(const parts::Assembly& assembly,
                                                      const loads::Place& place, Contacts closed);
/// What a stop or strap carries; none where its travel or rate is not known.  [N]
[[nodiscard]] double force_of(const parts::TravelStop& stop, const fea::Solution& solution);

}  // namespace studies
