#pragma once

#include <cstddef>
#include <deque>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "studies/combined_criterion.hpp"
#include "studies/criterion.hpp"
#include "studies/known_ratios.hpp"
#include "studies/set_model.hpp"

namespace studies {

/// Whether the frame carries the load.
[[nodiscard]] bool carried(const CaseSolution& solved);

/// One load case with one stiffness set, and its solutions at the multiples asked for so far: by
/// second order, or with large displacements where the load itself moves something far, or a
/// multiple leaves small rotations.
class Cell {
 public:
  /// @param beside  the same load case in another set, where the first solution and first order
  ///                start from; may be null, and is not looked at after that
  Cell(const SetModel& model, const parts::DesignCase& load_case, const Cell* beside = nullptr)
      : model_(&model), load_case_(&load_case), beside_(beside) {}

  [[nodiscard]] const SetModel& model() const { return *model_; }
  [[nodiscard]] const parts::Assembly& assembly() const { return model_->assembly(); }
  [[nodiscard]] const parts::DesignCase& load_case() const { return *load_case_; }

  /// Whether the axle is held in a place, or hangs: that is a travel and no load, which cannot be
  /// multiplied. The demand there is taken in proportion, and every multiple has its solution.
  [[nodiscard]] bool in_proportion() const;

  /// Whether it has been solved, at any multiple.
  [[nodiscard]] bool is_solved() const { return !kept_.empty(); }
  /// The load itself by first order; solved at first use, then kept.
  [[nodiscard]] const CaseSolution& first_order() const;
  /// Demand over capacity by that.
  [[nodiscard]] double ratio_by_first_order(const Criterion& criterion) const;
  /// Of combined forces, by that.
  [[nodiscard]] const CombinedUse& combined_by_first_order(const Criterion& criterion) const;
  /// Whether that says that it is to be solved with large displacements.
  [[nodiscard]] bool is_moved_by_first_order() const;
  /// Whether that leaves a part in trouble.
  [[nodiscard]] bool is_in_trouble_by_first_order() const;
  /// Whether that comes so near to it that it may be in it.
  [[nodiscard]] bool is_near_trouble_by_first_order() const;

  /// The solution at a multiple of the load; solved at first use, then kept.
  [[nodiscard]] const CaseSolution& kept(double multiple) const;
  /// Whether that solution is there.
  [[nodiscard]] bool has_kept(double multiple) const {
    return in_proportion() || kept_.find(multiple) != kept_.end();
  }
  /// The multiple over 1 next below another that is solved, where the frame stands there on the
  /// stops and straps of the load itself; else nothing.
  [[nodiscard]] std::optional<double> kept_below(double multiple) const;
  /// The multiples next to one, below and above or itself, that are solved, where the frame stands
  /// on the same stops and straps at both; else nothing.
  [[nodiscard]] std::optional<std::pair<double, double>> kept_around(double multiple) const;
  /// The stops and straps that carry at a multiple.
  [[nodiscard]] Contacts closed_at(double multiple) const { return kept(multiple).closed_stops; }
  /// The solution at a multiple that may not be asked for again: the last few are remembered.
  [[nodiscard]] CaseSolution at(double multiple) const;
  /// Second order at the load itself, where the solutions are moved ones; else none.
  [[nodiscard]] const CaseSolution* second_order() const {
    return second_order_ ? &*second_order_ : nullptr;
  }
  /// The same load case by second order at ride height alone, beside the place reached; null where
  /// this cell is that, in a posture, and where either does not stand.
  [[nodiscard]] const Cell* at_ride() const;
  /// This cell, or that one.
  [[nodiscard]] const Cell* in_place(bool ride) const { return ride ? at_ride() : this; }
  /// This cell, or that, where it asks more of a check at the load itself.
  [[nodiscard]] const Cell& asking_most(const Criterion& criterion) const;
  /// Of that other one: demand over capacity at the load itself in the place reached; else unset.
  [[nodiscard]] double ratio_reached(const Criterion& criterion) const;
  /// Demand over capacity at a multiple, kept or not; infinite where the frame cannot carry it, and
  /// from the lowest multiple seen so on.
  [[nodiscard]] double ratio_kept(const Criterion& criterion, double multiple) const;
  [[nodiscard]] double ratio_at(const Criterion& criterion, double multiple) const;

  /// Of combined forces, under the load itself; worked out at first use.
  [[nodiscard]] const CombinedUse& combined(const Criterion& criterion) const;

  /// Whether a joint's load is no longer followed there (followed_to).
  [[nodiscard]] bool beyond_followed(const Criterion& criterion, double multiple) const;
  /// Demand over capacity at the multiples solved so far, by multiple.
  [[nodiscard]] std::map<double, double> known_ratios(const Criterion& criterion) const;

  /// The solution a criterion is judged by: second order, or the linear one for a bracket where
  /// that asks more. A bracket that leans far shortens its own lever, which small rotations
  /// overstate.
  [[nodiscard]] const fea::Solution& judged_by(const Criterion& criterion,
                                               const CaseSolution& solved) const;

  /// At the load itself; infinite where nothing can buckle, unset where it is not known.
  double lowest_critical_factor = base::kUnset;
  /// The factor asked of the way in which the frame gives way first. Up to that multiple the load
  /// on a rated joint is followed, beyond it in proportion: its factor stands for what the rating
  /// does not know, such as wear and blows, and the frame need not carry so much. AISC 360-22 C2.1
  /// too takes second order at 1.6 times the load, whatever a strength is divided by (from memory).
  double followed_to = std::numeric_limits<double>::infinity();
  std::map<std::string, std::string> trouble;  ///< why findings cannot be decided, by part
  /// Why findings of a part cannot be decided; null = they can.
  [[nodiscard]] const std::string* trouble_for(const std::string& part) const;

 private:
  [[nodiscard]] double ratio_of(const Criterion& criterion, const CaseSolution& solved,
                                double multiple) const;
  [[nodiscard]] double ratio_once(const Criterion& criterion, double multiple) const;
  [[nodiscard]] CaseSolution solve(double multiple) const;
  [[nodiscard]] const CombinedUse& combined_in(
      const CaseSolution& solved, const Criterion& criterion,
      std::vector<std::optional<CombinedUse>>& known) const;
  [[nodiscard]] bool comes_to(const CaseSolution& solved, double multiple) const;
  [[nodiscard]] std::pair<double, const CaseSolution*> carried_below(double multiple) const;
  void choose_method() const;
  [[nodiscard]] Contacts beside_touching() const;
  /// Whether a check is asked by first order too, where that asks more.
  [[nodiscard]] bool is_of_bracket(const Criterion& criterion) const;

  const SetModel* model_;
  const parts::DesignCase* load_case_;
  const Cell* beside_;
  mutable std::optional<fea::Method> method_;
  mutable std::optional<CaseSolution> second_order_;  // of the load itself, beside a moved one
  mutable std::unique_ptr<Cell> at_ride_;             // made at first use
  std::optional<CaseSolution> reached_;  // by large displacements, of one by second order alone
  mutable std::optional<CaseSolution> first_order_;
  mutable KnownRatios first_order_ratios_;
  mutable std::vector<std::optional<CombinedUse>> first_order_combined_;  // by piece
  mutable std::optional<bool> first_order_moves_;
  mutable std::optional<bool> first_order_in_trouble_;
  mutable std::optional<bool> first_order_near_trouble_;
  mutable std::map<double, CaseSolution> kept_;  // by multiple
  mutable std::deque<std::pair<double, CaseSolution>> recent_;
  mutable std::vector<std::optional<CombinedUse>> combined_;            // by piece
  mutable std::map<double, KnownRatios> ratios_;                        // of kept_, by multiple
  mutable double lost_from_ = std::numeric_limits<double>::infinity();  // lowest multiple so far
  // From which small rotations say nothing: lowest multiple so far.
  mutable double turns_far_from_ = std::numeric_limits<double>::infinity();
};

/// Where another check says all of it, a check gives no finding.
[[nodiscard]] bool says_nothing(const Criterion& criterion, const Cell& cell);

/// The factor that a check is asked for in a cell, by its forces at a multiple of the load.
[[nodiscard]] AskedFactor asked_in(const Criterion& criterion, const Cell& cell,
                                   double multiple = 1.0);
/// By its forces in first order.
[[nodiscard]] AskedFactor asked_by_first_order(const Criterion& criterion, const Cell& cell);

}  // namespace studies
