#include "checks/required_factors.hpp"

#include <cmath>

#include "base/input_error.hpp"
#include "base/units.hpp"

namespace checks {

namespace {

/// One entry of the table of presets.
struct PresetRow {
  const char* key;
  double RequiredFactors::*value;
  const char* basis;          ///< of the usual preset, whose values are the struct's own
  double asd = base::kUnset;  ///< of AISC ASD; unset = the usual one
  const char* asd_basis = "";
};

const std::vector<PresetRow>& rows() {
  using F = RequiredFactors;
  constexpr const char* kMembers = "Omega 1.67 of AISC 360-22 D2, F1 and H, from memory";
  constexpr const char* kColumns = "Omega 1.67 of AISC 360-22 E1, from memory";
  constexpr const char* kWelds = "Omega 2.00 of AISC 360-22 J2.4, from memory";
  constexpr const char* kBolts = "Omega 2.00 of AISC 360-22 J3, from memory";
  constexpr const char* kSlip = "Omega 1.50 of AISC 360-22 J3.9, from memory";
  constexpr const char* kTabs = "Omega 2.00 of AISC 360-22 D5 and J4.1, from memory";
  constexpr const char* kWall = "Omega 1.50 of AISC 360-22 J10.2, from memory";
  constexpr const char* kPunching = "Omega 1.58 of AISC 360-10 table K1.2, from memory";
  constexpr const char* kCrippling = "Omega 2.00 of AISC 360-22 J10.3, from memory";
  static const std::vector<PresetRow> kRows = {
      {"yield_routine", &F::yield_routine,
       "yield, routine loads: proposal; ductile steel 1.5 in the FKM guideline, from memory", 1.67,
       kMembers},
      {"yield_abuse", &F::yield_abuse, "yield, abuse loads: proposal, no source", 1.67, kMembers},
      {"yield_abuse_locating", &F::yield_abuse_locating,
       "yield of the lateral link and all that holds it (bracket, brace, tabs), of steering and of "
       "threaded shanks, abuse loads: proposal, no source",
       1.67, kMembers},
      {"buckling_routine", &F::buckling_routine,
       "buckling, routine loads: proposal; machine design texts ask 2 to 3, from memory", 1.67,
       kColumns},
      {"buckling_routine_steering", &F::buckling_routine_steering,
       "buckling of steering links, routine loads: proposal, no source", 1.67, kColumns},
      {"buckling_abuse", &F::buckling_abuse, "buckling, abuse loads: proposal, no source", 1.67,
       kColumns},
      {"buckling_abuse_locating", &F::buckling_abuse_locating,
       "buckling of lateral link, its brace and steering, abuse loads: proposal, no source", 1.67,
       kColumns},
      {"weld_routine", &F::weld_routine,
       "weld throat, routine loads: 0.60 F_EXX / 2.0 is the static allowable 0.30 F_EXX of "
       "AWS D1.1, from memory",
       2.0, kWelds},
      {"weld_abuse", &F::weld_abuse, "weld throat, abuse loads: proposal, no source", 2.0, kWelds},
      {"bolt_routine", &F::bolt_routine,
       "bolts and the plates they bear on, routine loads: Omega 2.00 of AISC 360-22 J3, from "
       "memory",
       2.0, kBolts},
      {"bolt_abuse", &F::bolt_abuse, "bolts, abuse loads: proposal, no source", 2.0, kBolts},
      {"slip_routine", &F::slip_routine,
       "slip of a joint that friction is to hold, routine loads: Omega 1.50 of AISC 360-22 J3.9, "
       "from memory",
       1.5, kSlip},
      {"slip_abuse", &F::slip_abuse,
       "slip of a joint that friction is to hold, abuse loads: proposal, no source (its bolt holds "
       "by bearing then)",
       1.5, kSlip},
      {"tab_routine", &F::tab_routine,
       "tabs at their hole, routine loads: proposal; Omega 2.00 of AISC 360-22 D5, from memory",
       2.0, kTabs},
      {"tab_abuse", &F::tab_abuse, "tabs at their hole, abuse loads: proposal, no source", 2.0,
       kTabs},
      {"rail_wall_routine", &F::rail_wall_routine,
       "rail wall under a bracket, yielding, routine loads: proposal; Omega 1.50 of AISC 360-22 "
       "J10.2, from memory",
       1.5, kWall},
      {"rail_wall_abuse", &F::rail_wall_abuse,
       "rail wall under a bracket, yielding, abuse loads: proposal, no source", 1.5, kWall},
      {"rail_punching_routine", &F::rail_punching_routine,
       "rail wall, punching and uneven load, routine loads: Omega 1.58 of AISC 360-10 table K1.2, "
       "from memory",
       1.58, kPunching},
      {"rail_punching_abuse", &F::rail_punching_abuse,
       "rail wall, punching and uneven load, abuse loads: 1.25 x 1.58 / 1.50; proposal", 1.58,
       kPunching},
      {"rail_crippling_routine", &F::rail_crippling_routine,
       "rail wall, crippling, routine loads: Omega 2.00 of AISC 360-22 J10.3, from memory", 2.0,
       kCrippling},
      {"rail_crippling_abuse", &F::rail_crippling_abuse,
       "rail wall, crippling, abuse loads: 1.25 x 2.00 / 1.50; proposal", 2.0, kCrippling},
      {"tipping_routine", &F::tipping_routine,
       "axle tipping on its springs, routine loads: proposal, no source"},
      {"tipping_abuse", &F::tipping_abuse,
       "axle tipping on its springs, abuse loads: proposal, no source"},
      {"joint_routine_reversing", &F::joint_routine_reversing,
       "static rating of joints whose load reverses, routine loads: a bearing maker's selection "
       "page (maker withheld), read; common practice, no source"},
      {"joint_routine", &F::joint_routine,
       "static rating of other joints, routine loads: as above"},
      {"joint_abuse", &F::joint_abuse, "static rating of joints, abuse loads: proposal, no source"},
      {"strap_abuse", &F::strap_abuse,
       "limit strap, on 0.6 of its breaking load, every load: proposal, no source"},
  };
  return kRows;
}

}  // namespace

std::string name_of(FactorPreset preset) {
  return preset == FactorPreset::usual ? "usual" : "AISC ASD";
}

const std::vector<FactorPreset>& factor_presets() {
  static const std::vector<FactorPreset> kAll = {FactorPreset::usual, FactorPreset::aisc_asd};
  return kAll;
}

RequiredFactors factors_of(FactorPreset preset) {
  RequiredFactors factors;
  if (preset == FactorPreset::usual) return factors;
  for (const PresetRow& row : rows()) {
    if (!std::isnan(row.asd)) factors.*row.value = row.asd;
  }
  return factors;
}

std::vector<FactorEntry> factor_entries(RequiredFactors& factors, FactorPreset preset) {
  std::vector<FactorEntry> entries;
  for (const PresetRow& row : rows()) {
    const bool usual = preset == FactorPreset::usual || std::isnan(row.asd);
    entries.push_back({row.key, &(factors.*row.value), usual ? row.basis : row.asd_basis});
  }
  return entries;
}

void require_valid(const RequiredFactors& factors) {
  RequiredFactors copy = factors;
  for (const FactorEntry& entry : factor_entries(copy)) {
    if (!(std::isfinite(*entry.value) && *entry.value > 0.0)) {
      throw base::InputError(entry.key, "a required factor must be a number over 0, such as 1.5");
    }
  }
}

double required(const RequiredFactors& f, Item item, bool abuse, Duty duty) {
  const bool locating = duty != Duty::ordinary;
  switch (item) {
    case Item::yield:
      if (!abuse) return f.yield_routine;
      return locating ? f.yield_abuse_locating : f.yield_abuse;
    case Item::buckling:
      if (!abuse) {
        return duty == Duty::steering ? f.buckling_routine_steering : f.buckling_routine;
      }
      return locating ? f.buckling_abuse_locating : f.buckling_abuse;
    case Item::weld:
      return abuse ? f.weld_abuse : f.weld_routine;
    case Item::bolt:
      return abuse ? f.bolt_abuse : f.bolt_routine;
    case Item::slip:
      return abuse ? f.slip_abuse : f.slip_routine;
    case Item::tab:
      return abuse ? f.tab_abuse : f.tab_routine;
    case Item::rail_wall:
      return abuse ? f.rail_wall_abuse : f.rail_wall_routine;
    case Item::rail_punching:
      return abuse ? f.rail_punching_abuse : f.rail_punching_routine;
    case Item::rail_crippling:
      return abuse ? f.rail_crippling_abuse : f.rail_crippling_routine;
    case Item::reversing_joint:
      return abuse ? f.joint_abuse : f.joint_routine_reversing;
    case Item::joint:
      return abuse ? f.joint_abuse : f.joint_routine;
    case Item::strap:
      return f.strap_abuse;
    case Item::tipping:
      break;
  }
  return abuse ? f.tipping_abuse : f.tipping_routine;
}

}  // namespace checks
