#pragma once

#include <string>
#include <vector>

#include "studies/answer.hpp"
#include "studies/case_list.hpp"
#include "studies/watch.hpp"

namespace studies {

/// The answer to `explain`: the findings of one part, and the load cases they come from.
struct Explanation {
  std::string title;
  bool inches = true;
  std::string part;  ///< as a finding names it; the name asked for where several parts go by it
  Verdict verdict = Verdict::not_decided;    ///< of these findings alone
  std::vector<checks::Finding> findings;     ///< worst first
  std::vector<ListedKind> kinds;             ///< of the load cases named in them, with those alone
  std::vector<FailureOrder> failure_orders;  ///< of those load cases
  std::optional<Life> life;                  ///< with the places of the part alone
};

/// The findings of a part that `check` gives, as they were computed.
/// @param part   as findings, the case file or `pick` name it: "arm, left", "lateral_link",
///               "arm.lower", "lateral link"
/// @param check  "yield", "combined forces", or the beginning of a word of one check alone:
///               "combined", or of its place: "root weld"; empty = all of the part
/// @throws base::InputError with what was asked for as its key when there is no such part or check;
///         with those there are when no part is asked for; else as check
[[nodiscard]] Explanation explain(const parts::Design& design, const std::string& part,
                                  const std::string& check, const Watch& watch = {});

/// The same from an answer that is there.
[[nodiscard]] Explanation explained(const Answer& answer, const CaseList& cases,
                                    const std::string& part, const std::string& check);

}  // namespace studies
