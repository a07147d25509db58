#include <cmath>

#include "report/csv_rows.hpp"
#include "report/json_words.hpp"

namespace report {
namespace {

void add_judged(CsvTable& out, const studies::Judged& j) {
  out.text(verdict_in_words(j.verdict)).number(j.utilization).text(j.part).text(j.check);
  out.text(j.load_case).text(j.open).text(j.other_over).end_row();
}

constexpr const char* kJudged =
    "verdict,utilization,part,check,load case,not decided,another part over";

}  // namespace

std::vector<CsvFile> csv(const studies::Comparison& c) {
  CsvTable out("variants.csv",
               "design,verdict,worst,utilization,root moment low [N m],root moment high [N m],"
               "tip deflection low [m],tip deflection high [m],critical factor,mass [kg]");
  const auto add = [&](const studies::Figures& f) {
    out.text(f.name).text(verdict_in_words(f.verdict)).text(f.worst).number(f.worst_utilization);
    out.number(f.root_moment.low).number(f.root_moment.high);
    out.number(f.tip_deflection.low).number(f.tip_deflection.high);
    out.number(f.critical_factor).number(f.mass).end_row();
  };
  add(c.base);
  for (const studies::Figures& f : c.variants) add(f);
  return {std::move(out).file()};
}

std::vector<CsvFile> csv(const studies::Picked& p) {
  CsvTable out("sizes.csv", std::string("size,list,steel,mass [kg/m],cost,") + kJudged);
  for (const studies::Candidate& c : p.tried) {
    out.text(c.item.label).text(c.item.list).text(c.steel).number(c.mass_per_length);
    out.number(c.item.price * p.length);
    add_judged(out, c.judged);
  }
  return {std::move(out).file()};
}

std::vector<CsvFile> csv(const studies::PickedGrid& g) {
  std::string headings;
  for (const std::string& part : g.parts) headings += csv_cell(part) + ",";
  CsvTable out("combinations.csv", headings + "mass [kg],cost," + kJudged);
  for (const studies::PickedDesign& d : g.best) {
    for (std::size_t p = 0; p < d.sizes.size(); ++p) out.text(d.sizes[p] + ", " + d.steels[p]);
    out.number(d.mass).number(d.cost);
    add_judged(out, d.judged);
  }
  return {std::move(out).file()};
}

std::vector<CsvFile> csv(const studies::Rating& r) {
  CsvTable out("values.csv", "design," + csv_cell(r.span.path) +
                                 " [SI],verdict,utilization,part,check,load case,refused");
  CsvTable limits("limits.csv",
                  "design,holds from [SI],holds up to [SI],limit [SI],no more at "
                  "[SI],proved,could not be run");
  for (const studies::Rated& d : r.designs) {
    const auto value = [](const std::optional<studies::RatedPoint>& point) {
      return point ? point->value : base::kUnset;
    };
    limits.text(d.name).number(value(d.holds_from)).number(value(d.holds_to)).number(d.limit);
    limits.number(value(d.fails_at)).text(d.proved ? "yes" : "no");
    limits.text(d.stopped ? "stopped" : d.failure).end_row();
    for (const studies::RatedPoint& p : d.points) {
      const checks::Finding none;
      const checks::Finding& f = p.worst ? *p.worst : none;
      out.text(d.name).number(p.value);
      out.text(p.refused.empty() ? verdict_in_words(p.verdict) : "refused");
      out.number(f.utilization()).text(f.part).text(f.check).text(f.load_case).text(p.refused);
      out.end_row();
    }
  }
  return {std::move(limits).file(), std::move(out).file()};
}

std::vector<CsvFile> csv(const studies::Scattered& s) {
  std::string headings;
  for (const studies::ScatterInput& input : s.inputs) headings += csv_cell(input.path) + ",";
  CsvTable out("samples.csv", headings + kJudged);
  for (const studies::Sample& sample : s.samples) {
    for (const double factor : sample.factors) out.number(factor);
    add_judged(out, sample.judged);
  }
  CsvTable ranks("inputs.csv", "input,rank correlation,distribution,basis");
  for (const studies::InputRank& rank : s.ranks) {
    ranks.text(rank.path).number(rank.correlation);
    for (const studies::ScatterInput& input : s.inputs) {
      if (input.path != rank.path) continue;
      ranks.text(studies::words_of(input.factor)).text(input.basis);
    }
    ranks.end_row();
  }
  return {std::move(out).file(), std::move(ranks).file()};
}

}  // namespace report
