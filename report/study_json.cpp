#include <cmath>

#include "report/json_parts.hpp"
#include "report/json_words.hpp"

namespace report {
namespace {

void add_judged(Json& out, const studies::Judged& j) {
  out["verdict"] = verdict_in_words(j.verdict);
  out["utilization"] = value_of(j.utilization);
  if (!j.check.empty()) {
    out["governed_by"] = {{"part", j.part}, {"check", j.check}, {"load_case", j.load_case}};
  }
  if (!j.open.empty()) out["not_decided"] = j.open;
  if (!j.other_over.empty()) out["other_part_over"] = j.other_over;
}

Json candidate(const studies::Candidate& c, double length) {
  Json out;
  out["size"] = c.item.label;
  out["list"] = c.item.list;
  out["mark"] = c.item.mark;
  out["steel"] = c.steel;
  out["mass_per_length_kg_m"] = value_of(c.mass_per_length);
  if (std::isfinite(c.item.price)) out["cost"] = value_of(c.item.price * length);
  add_judged(out, c.judged);
  if (!c.judged.beware.empty()) out["beware"] = strings(c.judged.beware);
  if (c.at_minimum) add_judged(out["at_minimum_sizes"], *c.at_minimum);
  return out;
}

const char* by_in_words(studies::PickBy by) {
  return by == studies::PickBy::cost ? "cost" : by == studies::PickBy::outside ? "od" : "mass";
}

Json input(const studies::ScatterInput& one) {
  using Kind = studies::Distribution::Kind;
  Json out;
  out["input"] = one.path;
  out["distribution"] = studies::words_of(one.factor);
  if (one.factor.kind == Kind::uniform) {
    out["least"] = value_of(one.factor.a);
    out["most"] = value_of(one.factor.b);
  } else if (one.factor.kind != Kind::fixed) {
    out["mean"] = value_of(one.factor.a);
    out["coefficient_of_variation"] = value_of(one.factor.b);
  }
  out["basis"] = one.basis;
  return out;
}

}  // namespace

std::string json(const studies::Picked& picked, const Program& program) {
  Json out = opening(program, picked.title, picked.inches);
  add_scope(out, picked.scope);
  const auto one = [&](const studies::Candidate& c) { return candidate(c, picked.length); };
  out["part"] = picked.part;
  out["now"] = picked.now;
  out["by"] = by_in_words(picked.by);
  out["length_m"] = value_of(picked.length);
  out["complete"] = picked.n_done >= picked.n_sizes;
  if (picked.lightest) out["lightest"] = one(*picked.lightest);
  if (picked.next_down) out["next_down"] = one(*picked.next_down);
  if (picked.next_up) out["next_up"] = one(*picked.next_up);
  if (picked.same_outside) out["same_outside"] = one(*picked.same_outside);
  out["others_over"] = strings(picked.others_over);
  if (!picked.other_tube_over.empty()) out["other_tube_over"] = picked.other_tube_over;
  if (picked.n_unpriced > 0) out["without_a_price"] = picked.n_unpriced;
  out["tried"] = list_of(picked.tried, one);
  out["assumed"] = assumed(picked.assumed);
  return dumped(out);
}

std::string json(const studies::PickedGrid& grid, const Program& program) {
  Json out = opening(program, grid.title, grid.inches);
  add_scope(out, grid.scope);
  out["parts"] = strings(grid.parts);
  out["now"] = strings(grid.now);
  out["by"] = by_in_words(grid.by);
  out["combinations"] = grid.n_designs;
  out["complete"] = grid.n_done() >= grid.n_designs;
  out["solved_in_full"] = grid.in_full;
  out["solved_in_part"] = grid.in_part;
  out["make_no_sense"] = grid.no_sense;
  out["best"] = list_of(grid.best, [](const studies::PickedDesign& d) {
    Json one;
    one["sizes"] = strings(d.sizes);
    one["steels"] = strings(d.steels);
    one["mass_kg"] = value_of(d.mass);
    if (std::isfinite(d.cost)) one["cost"] = value_of(d.cost);
    add_judged(one, d.judged);
    if (!d.judged.beware.empty()) one["beware"] = strings(d.judged.beware);
    if (d.at_minimum) add_judged(one["at_minimum_sizes"], *d.at_minimum);
    return one;
  });
  out["others_over"] = strings(grid.others_over);
  if (grid.n_unpriced > 0) out["without_a_price"] = grid.n_unpriced;
  out["assumed"] = assumed(grid.assumed);
  return dumped(out);
}

std::string json(const studies::Scattered& s, const Program& program) {
  Json out = opening(program, s.title, s.inches);
  add_scope(out, s.scope);
  out["seed"] = s.seed;
  out["complete"] = s.samples.size() >= s.n_samples;
  out["n_samples"] = s.samples.size();
  out["n_over"] = s.n_over;
  out["n_not_decided"] = s.n_undecided;
  out["share_low"] = value_of(s.share_over.low);
  out["share_high"] = value_of(s.share_over.high);
  Json drawn;
  add_judged(drawn, s.as_drawn);
  out["as_drawn"] = drawn;
  out["inputs"] = list_of(s.inputs, input);
  out["rank_correlations"] = list_of(s.ranks, [](const studies::InputRank& rank) {
    Json one;
    one["input"] = rank.path;
    one["correlation"] = value_of(rank.correlation);
    return one;
  });
  out["samples"] = list_of(s.samples, [](const studies::Sample& sample) {
    Json one;
    one["factors"] = list_of(sample.factors, value_of);
    add_judged(one, sample.judged);
    return one;
  });
  return dumped(out);
}

}  // namespace report
