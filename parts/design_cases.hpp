#pragma once

#include <string>
#include <vector>

#include "loads/load_case.hpp"
#include "parts/design.hpp"

namespace parts {

/// One load case of a design: built-in, or what the case file gives.
struct DesignCase {
  std::string name;
  bool abuse = false;
  std::string basis;
  std::vector<loads::Push> pushes;        ///< on the axle and link, static load included
  std::vector<Named<PlainForce>> forces;  ///< given in the case file, as all below
  std::vector<Named<LineLoad>> line_loads = {};
  std::vector<Named<GivenStrain>> strains = {};
  std::vector<Named<Settlement>> settlements = {};
  std::vector<Named<SelfWeight>> self_weight = {};
  loads::Posture posture = loads::Posture::ride;
  loads::Place place = {};
};

/// A load case that is not solved, and why.
struct CaseNotRun {
  std::string name;    ///< "dry park, lock to lock"
  std::string reason;  ///< "needs `limit_strap:`"
};

/// What becomes of one built-in kind in a design.
struct KindOutcome {
  std::string kind;                         ///< "hard_stop"
  bool asked = false;                       ///< named by the case file, or part of the default set
  std::string reason = {};                  ///< why none of its cases is solved; empty = some are
  std::vector<loads::LoadCase> built = {};  ///< as far as the vehicle's numbers allow, run or not
  std::vector<loads::LoadCase> run = {};
};

/// Every built-in kind, in order.
/// @throws base::InputError when a kind that the case file names lacks a number of the vehicle, or
///         when numbers do not go together
[[nodiscard]] std::vector<KindOutcome> kind_outcomes(const Design& design);

/// The load cases of a design: built-in ones, its own, and those of its other loads.
/// @throws base::InputError as kind_outcomes
[[nodiscard]] std::vector<DesignCase> design_cases(const Design& design);

/// The cases of the file's own that stand for the whole axle: wheel forces and accelerations.
[[nodiscard]] std::vector<loads::LoadCase> custom_axle_cases(const Design& design);

/// What is not run although it was asked for, and the kinds that were not.
[[nodiscard]] std::vector<CaseNotRun> cases_not_run(const Design& design);

}  // namespace parts
