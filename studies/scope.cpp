#include "studies/scope.hpp"

#include <algorithm>

#include "loads/case_library.hpp"
#include "parts/design_cases.hpp"

namespace studies {

Scope scope_of(const parts::Design& design) {
  Scope out;
  std::vector<parts::GivenCase> given;
  for (const parts::GivenCase& one : parts::given_cases(design)) {
    if (std::find(given.begin(), given.end(), one) == given.end()) given.push_back(one);
  }
  out.own_cases = design.custom_cases.size() + given.size();
  if (design.vehicle) {
    out.cases_known = loads::case_names().size();
    out.cases_run = out.cases_known - parts::cases_not_run(design).size();
  }
  const auto look = [&](const auto& part, const char* name) {
    if (part && part->bolt.given() && part->bolt.clamp_assumed) {
      out.stacks_assumed.emplace_back(name);
    }
  };
  look(design.lateral_link, "lateral link");
  look(design.brace, "brace");
  return out;
}

}  // namespace studies
