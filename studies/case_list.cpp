#include "studies/case_list.hpp"

#include <algorithm>
#include <utility>

#include "loads/case_library.hpp"

namespace studies {
namespace {

ListedKind listed(const loads::CaseInfo& info) {
  return {.name = loads::case_words(info.name),
          .key = std::string(info.name),
          .routine = info.severity == loads::Severity::routine,
          .posture = loads::posture_word(info.posture),
          .factors = std::string(info.factors),
          .checks = std::string(info.checks),
          .basis = std::string(info.basis),
          .not_run = {},
          .cases = {}};
}

ListedCase listed(const loads::LoadCase& c, bool runs) {
  return {.name = c.name,
          .pushes = c.pushes,
          .figures = c.figures,
          .others = {},
          .basis = c.basis,
          .runs = runs};
}

void add_outcome(ListedKind& kind, const parts::KindOutcome& outcome) {
  kind.not_run = outcome.reason;
  for (const loads::LoadCase& c : outcome.built) {
    const bool runs =
        outcome.asked && std::any_of(outcome.run.begin(), outcome.run.end(),
                                     [&](const loads::LoadCase& r) { return r.id == c.id; });
    kind.cases.push_back(listed(c, runs));
  }
}

ListedKind own_kind(const std::string& name, bool routine, const std::string& basis) {
  return {.name = name,
          .key = name,
          .routine = routine,
          .posture = loads::posture_word(loads::Posture::ride),
          .factors = "as the case file says",
          .checks = "what the case file is about",
          .basis = basis,
          .not_run = {},
          .cases = {}};
}

std::vector<std::string> others_of(const parts::DesignCase& c) {
  std::vector<std::string> out;
  for (const auto& l : c.line_loads) out.push_back("line load on " + l.value.on);
  for (const auto& s : c.strains) out.push_back("heat or fit of " + s.value.on);
  for (const auto& m : c.settlements) out.push_back("support moved at " + m.value.at);
  if (!c.self_weight.empty()) out.emplace_back("own weight");
  return out;
}

ListedCase listed_given(const parts::DesignCase& c) {
  ListedCase one{.name = c.name,
                 .pushes = {},
                 .figures = {},
                 .others = others_of(c),
                 .basis = c.basis,
                 .runs = true};
  for (const auto& force : c.forces) {
    const parts::PlainForce& f = force.value;
    one.pushes.push_back(
        {.force = f.force, .moment = f.moment, .what = f.on.empty() ? "at " + f.at : "on " + f.on});
  }
  return one;
}

/// The cases that the file gives in loads of its own.
void add_own(CaseList& out, const parts::Design& design) {
  for (const loads::LoadCase& c : parts::custom_axle_cases(design)) {
    ListedKind kind = own_kind(c.name, c.severity == loads::Severity::routine, c.basis);
    kind.cases.push_back(listed(c, true));
    out.kinds.push_back(std::move(kind));
  }
  for (const parts::DesignCase& c : parts::design_cases(design)) {
    if (!c.pushes.empty()) continue;
    ListedKind kind = own_kind(c.name, !c.abuse, c.basis);
    kind.cases.push_back(listed_given(c));
    out.kinds.push_back(std::move(kind));
  }
}

}  // namespace

CaseList case_list() {
  CaseList out;
  for (const loads::CaseInfo& info : loads::case_library()) out.kinds.push_back(listed(info));
  out.duty = loads::default_duty(false);
  out.duty_basis = loads::default_duty_basis(false);
  return out;
}

CaseList case_list(const parts::Design& design) {
  CaseList out;
  out.title = design.title;
  out.inches = design.inches;
  out.of_design = true;
  for (const parts::KindOutcome& outcome : parts::kind_outcomes(design)) {
    out.kinds.push_back(listed(loads::case_info(outcome.kind)));
    add_outcome(out.kinds.back(), outcome);
  }
  add_own(out, design);
  if (design.duty.empty() && !design.vehicle) {
    out.duty_basis = "none: the case gives no `duty:`, and without `vehicle:` there is no default";
    return out;
  }
  if (design.duty.empty()) {
    const bool off_road = design.vehicle->off_road;
    out.duty = loads::default_duty(off_road);
    out.duty_basis = loads::default_duty_basis(off_road);
    return out;
  }
  for (const auto& entry : design.duty) out.duty.push_back(entry.value.block);
  out.duty_basis = "given in the case file";
  return out;
}

}  // namespace studies
