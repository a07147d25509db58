#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>

#include "fea/buckling.hpp"
#include "fea/condition.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"
#include "parts/put_loads.hpp"

namespace studies {

/// One load case solved at one multiple.
struct CaseSolution {
  fea::Solution solution;     ///< by `method`
  fea::Solution linear;       ///< equilibrium in the undeformed position, stops as below
  unsigned closed_stops = 0;  ///< bit i: bump stop i is closed
  bool contact_settled = true;
  fea::Method method = fea::Method::second_order;
};

/// A load case solved at another multiple.
struct NearSolution {
  const CaseSolution* solved = nullptr;  ///< may be null
  double multiple = 1.0;
};

/// A design's frame for one stiffness set, factored, ready for any load case.
class SetModel {
 public:
  /// @throws base::InputError when a part is not held, with the key of the case file
  SetModel(const parts::Design& design, parts::StiffnessSet set);

  [[nodiscard]] const parts::StiffnessSet& set() const { return set_; }
  [[nodiscard]] const parts::Design& design() const { return design_; }
  [[nodiscard]] const parts::Assembly& assembly() const { return assembly_; }

  /// Second order, with the whole load multiplied before the solve; bump stops close and open until
  /// they settle.
  /// @param near  where to look first: saves time, and has no say in the answer
  [[nodiscard]] CaseSolution solve(const parts::DesignCase& load_case, double multiple,
                                   const NearSolution& near = {}) const;

  /// Critical multiples of the load, bump stops as they are in `at`.
  /// The same with large displacements: equilibrium in the place reached, bump stops as gaps.
  /// @param near  solved so too: where to start; others have no say
  [[nodiscard]] CaseSolution solve_moved(const parts::DesignCase& load_case, double multiple,
                                         const NearSolution& near) const;
  /// Whether nothing in the loads is beyond the large-displacement solution.
  [[nodiscard]] bool can_move(const parts::DesignCase& load_case) const;

  [[nodiscard]] fea::BucklingResult buckle(const parts::DesignCase& load_case,
                                           const CaseSolution& at,
                                           const fea::BucklingOptions& options) const;

  /// Of the equations with these bump stops closed; found at first use, then kept.
  [[nodiscard]] const fea::Condition& condition(unsigned closed_stops) const;
  [[nodiscard]] fea::FactorSize factor_size(unsigned closed_stops) const;

 private:
  struct Ready {
    fea::Factored factored;
    fea::Workspace workspace;
  };
  [[nodiscard]] Ready& ready(unsigned closed_stops) const;
  [[nodiscard]] fea::Solution solve(const fea::Loads& loads, double multiple, unsigned closed_stops,
                                    const NearSolution& near = {}) const;
  [[nodiscard]] CaseSolution with_linear(fea::Solution solution, const fea::Loads& loads,
                                         unsigned closed_stops, bool settled) const;
  [[nodiscard]] fea::Loads loads(const parts::DesignCase& load_case, double multiple,
                                 unsigned closed_stops) const;
  /// Bit i: the travel and rate of bump stop i are known.
  [[nodiscard]] unsigned usable_stops() const;
  /// The bit of the stop that is farthest from being open or closed as it should; 0 = all are
  /// right.
  [[nodiscard]] unsigned most_wrong_stop(const fea::Solution& solution, unsigned closed) const;

  const parts::Design& design_;
  parts::StiffnessSet set_;
  parts::Assembly assembly_;
  mutable std::map<unsigned, Ready> ready_;  // by the stops that are closed
  mutable std::optional<fea::Factored> with_gaps_;
  mutable std::map<unsigned, fea::Condition> conditions_;
};

/// Upward movement of a bump stop's seat.  [m]
[[nodiscard]] double seat_travel(const parts::BumpStop& stop, const fea::Solution& solution);

}  // namespace studies
