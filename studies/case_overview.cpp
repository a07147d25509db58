#include "studies/case_overview.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include "checks/required_factors.hpp"
#include "studies/criterion.hpp"

namespace studies {
namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();  // not decided

/// The largest utilization of each part in each load case; infinite = not decided.
using Largest = std::map<std::pair<std::string, std::string>, double>;

void raise(Largest& largest, const std::string& part, const std::string& load_case, double to) {
  double& known = largest.try_emplace({part, load_case}, 0.0).first->second;
  known = std::max(known, to);
}

double utilization_in(const Criterion& criterion, const Cell& cell, const std::string& part) {
  if (cell.trouble_for(part) != nullptr) return kOpen;
  const double ratio = cell.asking_most(criterion).ratio_kept(criterion, 1.0);
  return std::isfinite(ratio) ? ratio * asked_in(criterion, cell).value : kOpen;
}

/// The factor that the frame's stability is asked for where `critical` is its lowest.
double asked_of_stability(const CriticalFactor& critical, const Cell& cell,
                          const std::string& part) {
  const std::vector<parts::Piece>& pieces = cell.assembly().pieces;
  const auto piece = std::find_if(pieces.begin(), pieces.end(),
                                  [&](const parts::Piece& p) { return p.part == part; });
  return checks::required(cell.model().design().factors,
                          critical.axle_tips ? checks::Item::tipping : checks::Item::buckling,
                          cell.load_case().abuse,
                          piece == pieces.end() ? checks::Duty::ordinary : piece->duty);
}

void raise_by_stability(Largest& largest, const Cell& cell,
                        const std::vector<CriticalFactor>& critical,
                        const std::vector<checks::Finding>& findings) {
  for (const checks::Finding& f : findings) {
    if (f.check != "frame stability") continue;
    for (const CriticalFactor& c : critical) {
      if (c.what != f.part && c.what != f.where) continue;
      raise(largest, f.part, cell.load_case().name, asked_of_stability(c, cell, f.part) / c.factor);
    }
  }
}

/// What the findings of a part in a load case say, over what was estimated there.
PartInCase seen_with(const std::vector<checks::Finding>& findings, PartInCase one) {
  // Where the two come so near, the finding is what was taken in proportion.
  constexpr double kSame = 0.995;
  // The findings are the worst of all load cases: what is estimated over them grows less than its
  // load does.
  double worst = 0.0;
  bool all_decided = true;
  for (const checks::Finding& f : findings) {
    if (f.part != one.part) continue;
    all_decided = all_decided && f.state != checks::State::undecided;
    if (f.state != checks::State::undecided) worst = std::max(worst, f.utilization());
  }
  if (all_decided && one.utilization > worst) one.utilization = worst;
  for (const checks::Finding& f : findings) {
    if (f.part != one.part || f.load_case != one.load_case) continue;
    if (f.state == checks::State::undecided) return {f.part, f.load_case, base::kUnset, true};
    if (f.utilization() < (one.found ? 1.0 : kSame) * one.utilization) continue;
    one.utilization = f.utilization();
    one.found = true;
  }
  return one;
}

void add_once(std::vector<std::string>& names, const std::string& name) {
  if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
}

}  // namespace

CaseOverview case_overview(const std::vector<Cell>& cells, const std::vector<SolvedCase>& solved,
                           const std::vector<checks::Finding>& findings) {
  CaseOverview out;
  std::vector<std::string> load_cases;
  std::map<std::string, std::pair<double, const Cell*>> worst;
  Largest largest;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Cell& cell = cells[i];
    const std::string& name = cell.load_case().name;
    add_once(load_cases, name);
    auto& [worst_so_far, worst_cell] = worst.try_emplace(name, 0.0, &cell).first->second;
    for (const Criterion& criterion : criteria(cell.assembly())) {
      const std::string& part = part_judged(criterion, cell.assembly());
      const double utilization = utilization_in(criterion, cell, part);
      raise(largest, part, name, utilization);
      if (!std::isfinite(utilization) || !(utilization > worst_so_far)) continue;
      worst_so_far = utilization;
      worst_cell = &cell;
    }
    raise_by_stability(largest, cell, solved[i].critical, findings);
  }
  std::vector<std::string> parts;
  for (const checks::Finding& f : findings) add_once(parts, f.part);
  for (const std::string& part : parts) {
    for (const std::string& name : load_cases) {
      const auto known = largest.find({part, name});
      if (known == largest.end()) continue;
      const double utilization = known->second == kOpen ? base::kUnset : known->second;
      out.parts.push_back(seen_with(findings, {part, name, utilization, false}));
    }
  }
  for (const std::string& name : load_cases) out.worst.push_back(worst.at(name).second);
  return out;
}

}  // namespace studies
