#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "studies/known_design.hpp"
#include "studies/run.hpp"
#include "studies/worst_case.hpp"

namespace studies {

/// What is known that tells of the cells of a design that are not solved: the same load case in the
/// first set, and a design that differs in the size of a part.
class LikeCells {
 public:
  /// @param cells  of the design, set by set; cells may be added to it
  /// @param cases  in each set
  LikeCells(const Counted& counted, const std::vector<Cell>& cells,
            const std::vector<parts::DesignCase>& cases)
      : counted_(&counted), cells_(&cells), cases_(&cases) {}

  /// For the set whose cells are added next.
  void begin_set(const SetModel& model);
  /// The cell that was added last.
  void add(const Cell& cell);

  [[nodiscard]] const Cell& same_in_first_set(const Cell& cell) const {
    return (*cells_)[number_of(cell) % cases_->size()];
  }

  /// What says most of a cell.
  [[nodiscard]] std::optional<KnownCell> known_beside(const Cell& cell) const;

  /// Whether all that is asked of a cell may be told from the other design in the same set and the
  /// change from it in the first set, where the two go on alike: no first order is needed then.
  /// @return the lowest critical factor there, at the least; nothing where it cannot be told
  [[nodiscard]] std::optional<double> tell(const Cell& cell);
  [[nodiscard]] bool is_told(const Cell& cell) const { return told_[number_of(cell)]; }
  /// Goes on with first order in it.
  void look_closer(const Cell& cell) { told_[number_of(cell)] = false; }

  /// What a check may ask in a cell that is not solved; nothing where it asks nothing.
  [[nodiscard]] std::optional<Asked> asked(const Criterion& criterion, const Cell& cell,
                                           bool at_ride) const;
  /// The same by all sets of the load case that are solved so far, where first order in the cell
  /// is known.
  [[nodiscard]] std::optional<Asked> asked_beside_all(const Criterion& criterion, const Cell& cell,
                                                      bool at_ride) const;
  /// Where a check was looked at in the other design.
  [[nodiscard]] std::vector<LookedAt> looked_at(const Criterion& criterion) const;

 private:
  using Known = std::vector<const KnownDesign::Known*>;

  [[nodiscard]] std::size_t number_of(const Cell& cell) const {
    return static_cast<std::size_t>(&cell - cells_->data());
  }
  [[nodiscard]] const Known& known(const Cell& cell) const { return known_[number_of(cell)]; }
  /// The other design in the same cell; null where it is known in other sets alone.
  [[nodiscard]] const KnownDesign::Known* known_in_its_set(const Cell& cell) const {
    return known_in_its_set_[number_of(cell)];
  }
  [[nodiscard]] const Cell* solved_in_first_set(const Cell& cell) const;
  [[nodiscard]] std::vector<const Cell*> solved_alike(const Cell& cell) const;
  [[nodiscard]] double at_most_between(const Criterion& criterion, const Cell& cell,
                                       bool at_ride) const;
  [[nodiscard]] const parts::Assembly* sized(const Criterion& criterion) const;
  [[nodiscard]] std::vector<KnownDemand> demands(const Criterion& criterion, const Cell& cell,
                                                 bool at_ride) const;
  [[nodiscard]] std::optional<Asked> asked_beside(const Criterion& criterion, const Cell& cell,
                                                  bool at_ride,
                                                  const std::vector<KnownDemand>& beside) const;
  [[nodiscard]] std::optional<Asked> asked_as_told(const Criterion& criterion, const Cell& cell,
                                                   bool at_ride) const;

  /// A check in a load case of the first set, beside the other design.
  struct InFirst {
    bool is_known = false;
    bool is_silent = false;       ///< another check says all of it
    double at_load = 1.0;         ///< what the size makes of the demand there, by the same forces
    double by_first_order = 1.0;  ///< the same by first order
    double change = 1.0;          ///< of first order, by the change of forces
    double changed_by = 0.0;      ///< the same, as a difference
    AskedFactor factor;
  };
  [[nodiscard]] static double changed(double demand, const InFirst& first);
  [[nodiscard]] const InFirst& in_first_set(const Criterion& criterion, const Cell& first,
                                            bool at_ride) const;

  const Counted* counted_;
  const std::vector<Cell>* cells_;
  const std::vector<parts::DesignCase>* cases_;
  std::vector<Known> known_;  // of each cell
  std::vector<const KnownDesign::Known*> known_in_its_set_;
  std::vector<bool> told_;
  std::vector<int> apart_;
  std::optional<parts::Assembly> resized_;
  mutable std::optional<Criterion> of_;  // which check in_first_ is of
  mutable std::vector<std::optional<InFirst>> in_first_;
};

}  // namespace studies
