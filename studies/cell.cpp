#include "studies/cell.hpp"

#include <limits>

namespace studies {

const CaseSolution& Cell::kept(double multiple) const {
  const auto found = kept_.find(multiple);
  if (found != kept_.end()) return found->second;
  return kept_.emplace(multiple, model_->solve(*load_case_, multiple)).first->second;
}

double Cell::ratio_kept(const Criterion& criterion, double multiple) const {
  return ratio_of(criterion, kept(multiple));
}

double Cell::ratio_at(const Criterion& criterion, double multiple) const {
  return ratio_of(criterion, model_->solve(*load_case_, multiple));
}

double Cell::ratio_of(const Criterion& criterion, const CaseSolution& solved) const {
  if (solved.solution.status() != fea::SolveStatus::converged || !solved.contact_settled) {
    return std::numeric_limits<double>::infinity();
  }
  return demand_over_capacity(criterion, assembly(), judged_by(criterion, solved));
}

const fea::Solution& Cell::judged_by(const Criterion& criterion, const CaseSolution& solved) const {
  const bool bracket = criterion.kind == Criterion::Kind::weld ||
                       (criterion.kind == Criterion::Kind::yield && assembly().root &&
                        assembly().pieces[criterion.index].part == assembly().root->part);
  if (!bracket || solved.solution.status() != fea::SolveStatus::converged) return solved.solution;
  const double second = demand_over_capacity(criterion, assembly(), solved.solution);
  const double linear = demand_over_capacity(criterion, assembly(), solved.linear);
  return linear > second ? solved.linear : solved.solution;
}

}  // namespace studies
