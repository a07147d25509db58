#pragma once

#include <optional>
#include <string>
#include <vector>

#include "parts/design_cases.hpp"

namespace studies {

/// A single load case of a design, with its numbers.
struct ListedCase {
  std::string name;
  std::vector<loads::Push> pushes;
  std::vector<loads::Figure> figures;
  std::vector<std::string> others;  ///< line loads, heat, moved supports and weight, by name
  std::string basis;
  bool runs = false;
};

/// One kind of built-in case, or a case of the file's own.
struct ListedKind {
  std::string name;  ///< "hard stop"
  std::string key;   ///< as `load_cases:` names it
  bool routine = false;
  std::string posture;
  std::string factors;
  std::string checks;
  std::string basis;
  std::string not_run;  ///< why none of its cases is run; empty without a design, or when some are
  std::vector<ListedCase> cases;  ///< with a design: as far as its numbers allow
};

/// The answer to `cases`.
struct CaseList {
  std::string title;  ///< empty without a design
  bool inches = true;
  bool of_design = false;
  std::vector<ListedKind> kinds;
  std::vector<loads::DutyBlock> duty;
  std::string duty_basis;
};

/// The library of load cases and the default duty.
[[nodiscard]] CaseList case_list();

/// The same for a design: which cases run, with their numbers, and its own cases and duty.
/// @throws base::InputError as parts::design_cases
[[nodiscard]] CaseList case_list(const parts::Design& design);

}  // namespace studies
