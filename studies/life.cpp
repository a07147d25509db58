#include "studies/life.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include "studies/case_list.hpp"
#include "studies/life_places.hpp"

namespace studies {
namespace {

constexpr double kBlockDistance = 1.0e8;  // the duty's spectra are those of 100 000 km  [m]
constexpr double kBlocksIn1000Km = kBlockDistance / 1.0e6;
constexpr const char* kAtRest = "at rest";

/// A block of the duty with its two load cases in one stiffness set.
struct SolvedBlock {
  loads::DutyBlock block;
  const fea::Solution* from = nullptr;
  const fea::Solution* to = nullptr;  ///< null = at rest
};

double shape_of(loads::Spread spread) {
  switch (spread) {
    case loads::Spread::straight:
      return 1.0;
    case loads::Spread::bell:
      return 2.0;
    case loads::Spread::full:
      break;
  }
  return std::numeric_limits<double>::infinity();
}

/// A case file may name a load case with or without its commas.
bool same_name(std::string a, std::string b) {
  a.erase(std::remove(a.begin(), a.end(), ','), a.end());
  b.erase(std::remove(b.begin(), b.end(), ','), b.end());
  return a == b;
}

const Cell* cell_of(const std::vector<const Cell*>& set, const std::string& load_case) {
  const auto found = std::find_if(set.begin(), set.end(), [&](const Cell* cell) {
    return same_name(cell->load_case().name, load_case) && carried(cell->kept(1.0));
  });
  return found == set.end() ? nullptr : *found;
}

/// The blocks of the duty that can be used in a set. `rest` is the end at which nothing acts.
std::vector<SolvedBlock> blocks_in(const std::vector<const Cell*>& set,
                                   const std::vector<loads::DutyBlock>& duty) {
  std::vector<SolvedBlock> out;
  for (const loads::DutyBlock& block : duty) {
    SolvedBlock solved{.block = block};
    const Cell* from = cell_of(set, block.from == kAtRest ? block.to : block.from);
    const Cell* to = cell_of(set, block.to);
    if (from == nullptr || (to == nullptr && block.to != kAtRest)) continue;
    solved.from = &from->kept(1.0).solution;
    const bool rests = block.from == kAtRest || block.to == kAtRest;
    if (!rests) solved.to = &to->kept(1.0).solution;
    out.push_back(solved);
  }
  return out;
}

bool is_used(const std::vector<SolvedBlock>& used, const loads::DutyBlock& block) {
  return std::any_of(used.begin(), used.end(),
                     [&](const SolvedBlock& solved) { return solved.block == block; });
}

/// The cells of each stiffness set, in order.
std::vector<std::vector<const Cell*>> by_set(const std::vector<Cell>& cells) {
  std::vector<std::vector<const Cell*>> sets;
  for (const Cell& cell : cells) {
    if (sets.empty() || &sets.back().front()->model() != &cell.model()) sets.emplace_back();
    sets.back().push_back(&cell);
  }
  return sets;
}

/// A place in one stiffness set.
struct LifeInSet {
  double distance = base::kUnset;
  const SetModel* model = nullptr;
  checks::FatigueInput input;
};

LifeInSet life_in(const SetModel& model, const LifePlace& place,
                  const std::vector<SolvedBlock>& blocks) {
  LifeInSet out;
  out.model = &model;
  out.input = {.detail = place.detail, .shear_detail = place.shear_detail, .blocks = {}};
  bool known = true;
  for (const SolvedBlock& b : blocks) {
    const StressRange range = place.range(model.assembly(), *b.from, b.to);
    known = known && !std::isnan(range.direct) && !std::isnan(range.shear);
    out.input.blocks.push_back({.what = b.block.from + " to " + b.block.to,
                                .range = range.direct,
                                .shear = range.shear,
                                .cycles = b.block.per_1000_km * kBlocksIn1000Km,
                                .shape = shape_of(b.block.spread)});
  }
  if (known) {
    out.distance =
        checks::damage_limit(out.input.blocks) * kBlockDistance / checks::damage(out.input);
  }
  return out;
}

LifeAtPlace life_at(const LifePlace& place, const LifeInSet& in) {
  LifeAtPlace out;
  out.part = place.part;
  out.where = place.where;
  out.detail = place.detail.what;
  out.category = place.detail.curve.category;
  out.stress = place.stress;
  out.set = in.model->set().name;
  out.source = place.detail.source;
  out.damage_limit = checks::damage_limit(in.input.blocks);
  out.distance = in.distance;
  out.lines = checks::damage_lines(in.input);
  return out;
}

}  // namespace

std::optional<Life> life_of(const parts::Design& design, const std::vector<Cell>& cells) {
  const CaseList cases = case_list(design);
  if (cases.duty.empty() || cells.empty()) return std::nullopt;
  const std::vector<std::vector<const Cell*>> sets = by_set(cells);
  const std::vector<LifePlace> places = life_places(cells.front().assembly());
  std::vector<LifeInSet> worst(places.size());
  std::vector<SolvedBlock> used;
  std::vector<bool> unknown(places.size(), false);
  for (const std::vector<const Cell*>& set : sets) {
    const std::vector<SolvedBlock> blocks = blocks_in(set, cases.duty);
    if (blocks.empty()) continue;
    used = blocks;
    for (std::size_t i = 0; i < places.size(); ++i) {
      const SetModel& model = set.front()->model();
      LifeInSet here = life_in(model, places[i], blocks);
      unknown[i] = unknown[i] || std::isnan(here.distance);
      if (!(here.distance >= worst[i].distance)) worst[i] = std::move(here);
    }
  }
  if (used.empty()) return std::nullopt;
  Life life;
  life.without_category = without_category(cells.front().assembly());
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (unknown[i]) {
      life.without_category.push_back(places[i].part + ", " + places[i].where +
                                      " (stress not known)");
    } else {
      life.places.push_back(life_at(places[i], worst[i]));
    }
  }
  std::stable_sort(
      life.places.begin(), life.places.end(),
      [](const LifeAtPlace& a, const LifeAtPlace& b) { return a.distance < b.distance; });
  life.duty_basis = cases.duty_basis;
  for (const loads::DutyBlock& block : cases.duty) {
    if (!is_used(used, block)) life.left_out.push_back(block.from + " to " + block.to);
  }
  return life;
}

}  // namespace studies
