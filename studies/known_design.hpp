#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "studies/built_frames.hpp"
#include "studies/cell.hpp"

namespace studies {

/// One load case in one stiffness set.
struct CellName {
  std::string set;
  std::string load_case;

  bool operator==(const CellName&) const = default;
};
[[nodiscard]] CellName name_of(const Cell& cell);

// Of the load. Nearer to a critical one first order says little of what second order makes of it.
inline constexpr double kFarFromCritical = 1.5;

/// What a cell says of one like it that is not solved.
struct KnownCell {
  double lowest_critical_factor = base::kUnset;
  Contacts closed_by_first_order = 0;
  bool is_moved = false;  ///< solved with large displacements

  /// Nothing of one that does not carry its load, is in trouble or near it, or near a critical
  /// load.
  /// @param cell  solved, or going on as one that is
  [[nodiscard]] static std::optional<KnownCell> of(const Cell& cell);
};

/// What a check asks in a solved cell: demand over capacity under the load itself.
struct KnownDemand {
  double at_load = base::kUnset;
  double by_first_order = base::kUnset;
  double lowest_critical_factor = base::kUnset;
  bool is_silent = false;  ///< another check says all of it

  [[nodiscard]] static KnownDemand of(const Criterion& criterion, const Cell& solved);
};

/// What a check came to in a cell where it was looked at: demand over capacity.
struct LookedAt {
  const Cell* cell = nullptr;
  CellName name;
  bool at_ride = false;  ///< by second order at ride height, beside the place reached
  double multiple = 1.0;
  double required = base::kUnset;  ///< factor asked for, of combined forces as found there
  double at_load = base::kUnset;
  double there = base::kUnset;  ///< at that multiple of the load
  double lowest_critical_factor = base::kUnset;
  Contacts closed = 0;    ///< stops and straps that carry there
  bool is_sized = false;  ///< what another size would be asked
};

/// What is known of a design that was solved, by which it is told what one that differs in the size
/// of a part may come to at the most. Nothing in it changes once it is filled: several threads may
/// read it.
class KnownDesign {
 public:
  /// A cell, solved or not.
  struct Known {
    CellName name;
    std::size_t set = 0;     ///< among those of the design
    std::size_t number = 0;  ///< among the cells of the design
    KnownCell cell;
    fea::Solution first_order;
    bool has_ride = false;  ///< looked at by second order at ride height as well
    // Where it is solved: in the place reached, and there.
    std::optional<fea::Solution> reached = {};
    std::optional<fea::Solution> ride = {};
  };
  /// What a check asks in a cell at most, where it is not solved.
  using AtMost =
      std::function<std::optional<double>(const Criterion& criterion, const Cell& cell, bool ride)>;

  /// @param criteria  whose numbers are kept
  /// @param at_most   nothing where a check asks nothing
  /// @param has_ride  of one that is not solved: whether it is looked at at ride height as well
  void add(const Cell& cell, const std::vector<Criterion>& criteria, const AtMost& at_most,
           bool has_ride);
  /// @param part  that the check is about
  void add(const Criterion& criterion, const std::string& part, const std::vector<LookedAt>& all);

  /// What is known of the same design in other load cases.
  void take(KnownDesign other);

  /// Null where it is not known, or says nothing of others.
  [[nodiscard]] const Known* find(const CellName& name) const;
  /// Its frames, one of each numbering of their unknowns.
  [[nodiscard]] const BuiltFrames& built() const { return built_; }
  /// How much another set differs from each of those that are known.
  [[nodiscard]] std::vector<int> apart(const parts::StiffnessSet& set) const;
  /// The cells of a load case in the sets that differ least.
  /// @param apart  as above
  /// @return none where none says anything of others
  [[nodiscard]] std::vector<const Known*> nearest(const std::string& load_case,
                                                  const std::vector<int>& apart) const;

  /// The pieces of another design in place of those of this one, in the beams of this one: what
  /// its forces would ask of them. Nothing where the two are not of one build.
  [[nodiscard]] std::optional<parts::Assembly> resized(const parts::Assembly& other) const;

  /// What a check asks in a cell, or would ask of a piece of another size by the same forces; where
  /// that is softer in bending, what second order adds grows with it.
  /// @param sized  as `resized`; null = as it was solved
  /// @return nothing where it is not known
  [[nodiscard]] std::optional<KnownDemand> demand(const Known& known, const Criterion& criterion,
                                                  bool at_ride, const parts::Assembly* sized) const;
  /// @param only  in that cell; null = in all
  [[nodiscard]] std::vector<LookedAt> looked_at(const Criterion& criterion,
                                                const parts::Assembly* sized,
                                                const CellName* only = nullptr) const;

  /// Where checks of a part come nearest to their limits: the worst cell of each, worst first, and
  /// those before the others that another size changes most.
  [[nodiscard]] std::vector<CellName> worst_cells(
      const std::function<bool(const std::string& part)>& is_asked) const;
  /// The most that a bolt or a rated joint of a part is asked, where it was looked at: another size
  /// changes little of that.
  [[nodiscard]] double most_of_bolts(
      const std::function<bool(const std::string& part)>& is_asked) const;

 private:
  /// What a check asks in a cell at one place.
  struct Demand {
    double at_load = base::kUnset;
    bool is_silent = false;
  };
  /// In the place reached, and at ride height.
  struct Demands {
    double by_first_order = base::kUnset;
    std::array<Demand, 2> at_place = {};
    bool is_known = false;
  };
  /// Of one check, by the number of the cell: cell after cell is asked about the same one.
  [[nodiscard]] std::vector<Demands>& demands_of(const Criterion& criterion);
  [[nodiscard]] const Demands* demands(const Known& known, const Criterion& criterion) const;

  [[nodiscard]] std::size_t number_of(const parts::StiffnessSet& set);
  [[nodiscard]] double softer(const Criterion& criterion, const parts::Assembly& sized) const;

  struct Looked {
    Criterion criterion;
    std::string part;
    LookedAt at;
    fea::Solution at_load;
    fea::Solution there;
    double solved_at = 1.0;  ///< multiple of the load in that; beyond it, in proportion
    fea::Solution first_order;
  };
  std::vector<parts::StiffnessSet> sets_;
  std::map<std::string, std::vector<Known>> cells_;  ///< by load case
  std::size_t n_cells_ = 0;
  std::vector<std::vector<std::vector<Demands>>> demands_;  ///< by kind and number of the check
  std::vector<Looked> looked_;
  std::vector<parts::Piece> pieces_;
  BuiltFrames built_;
};

}  // namespace studies
