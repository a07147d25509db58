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
  double en = base::kUnset;  ///< of EN; unset = the usual one
  const char* en_basis = "";
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
  // Where the nominal strength is AISC's, it may lie over EN's own: by 27 % a column's over curve c
  // of EN 1993-1-1 table 6.2, by 15 % a bolt's of class 10.9 with threads in the plane, by 4 % a
  // wall's in shear.
  constexpr const char* kEnMembers =
      "gamma_M0 1.00 of EN 1993-1-1 6.1, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory";
  constexpr const char* kEnColumns =
      "gamma_M1 1.00 of EN 1993-1-1 6.1, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory; times 1.27, as AISC E3 lies up to 27 % over buckling curve c";
  constexpr const char* kEnWelds =
      "gamma_M2 1.25 of EN 1993-1-8 2.2, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory; on the strength of EN 1993-1-8 4.5.3.3";
  constexpr const char* kEnBolts =
      "gamma_M2 1.25 of EN 1993-1-8 2.2, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory; times 1.16, as AISC's nominal strength lies up to 15 % over EN's (class 10.9)";
  constexpr const char* kEnSlip =
      "gamma_M3 1.25 of EN 1993-1-8 2.2, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory";
  constexpr const char* kEnTabs =
      "gamma_M2 1.25 of EN 1993-1-8 2.2, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory";
  constexpr const char* kEnWall =
      "gamma_M5 1.00 of EN 1993-1-8 2.2, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory";
  constexpr const char* kEnPunching =
      "gamma_M5 1.00 of EN 1993-1-8 2.2, gamma_F 1.5 (accidental loads 1.0) of EN 1990; from "
      "memory; times 1.04, as 0.6 Fy lies 4 % over fy / sqrt(3)";
  static const std::vector<PresetRow> kRows = {
      {"yield_routine", &F::yield_routine,
       "yield, routine loads: proposal; ductile steel 1.5 in the FKM guideline, from memory", 1.67,
       kMembers, 1.5, kEnMembers},
      {"yield_abuse", &F::yield_abuse, "yield, abuse loads: proposal, no source", 1.67, kMembers,
       1.0, kEnMembers},
      {"yield_abuse_locating", &F::yield_abuse_locating,
       "yield of the lateral link and all that holds it (bracket, brace, tabs), of steering and of "
       "threaded shanks, abuse loads: proposal, no source",
       1.67, kMembers, 1.0, kEnMembers},
      {"buckling_routine", &F::buckling_routine,
       "buckling, routine loads: proposal; machine design texts ask 2 to 3, from memory", 1.67,
       kColumns, 1.905, kEnColumns},
      {"buckling_routine_steering", &F::buckling_routine_steering,
       "buckling of steering links, routine loads: proposal, no source", 1.67, kColumns, 1.905,
       kEnColumns},
      {"buckling_abuse", &F::buckling_abuse, "buckling, abuse loads: proposal, no source", 1.67,
       kColumns, 1.27, kEnColumns},
      {"buckling_abuse_locating", &F::buckling_abuse_locating,
       "buckling of lateral link, its brace and steering, abuse loads: proposal, no source", 1.67,
       kColumns, 1.27, kEnColumns},
      {"weld_routine", &F::weld_routine,
       "weld throat, routine loads: 0.60 F_EXX / 2.0 is the static allowable 0.30 F_EXX of "
       "AWS D1.1, from memory",
       2.0, kWelds, 1.875, kEnWelds},
      {"weld_abuse", &F::weld_abuse, "weld throat, abuse loads: proposal, no source", 2.0, kWelds,
       1.25, kEnWelds},
      {"bolt_routine", &F::bolt_routine,
       "bolts and the plates they bear on, routine loads: Omega 2.00 of AISC 360-22 J3, from "
       "memory",
       2.0, kBolts, 2.175, kEnBolts},
      {"bolt_abuse", &F::bolt_abuse, "bolts, abuse loads: proposal, no source", 2.0, kBolts, 1.45,
       kEnBolts},
      {"slip_routine", &F::slip_routine,
       "slip of a joint that friction is to hold, routine loads: Omega 1.50 of AISC 360-22 J3.9, "
       "from memory",
       1.5, kSlip, 1.875, kEnSlip},
      {"slip_abuse", &F::slip_abuse,
       "slip of a joint that friction is to hold, abuse loads: proposal, no source (its bolt holds "
       "by bearing then)",
       1.5, kSlip, 1.25, kEnSlip},
      {"tab_routine", &F::tab_routine,
       "tabs at their hole, routine loads: proposal; Omega 2.00 of AISC 360-22 D5, from memory",
       2.0, kTabs, 1.875, kEnTabs},
      {"tab_abuse", &F::tab_abuse, "tabs at their hole, abuse loads: proposal, no source", 2.0,
       kTabs, 1.25, kEnTabs},
      {"rail_wall_routine", &F::rail_wall_routine,
       "rail wall under a bracket, yielding, routine loads: proposal; Omega 1.50 of AISC 360-22 "
       "J10.2, from memory",
       1.5, kWall, 1.5, kEnWall},
      {"rail_wall_abuse", &F::rail_wall_abuse,
       "rail wall under a bracket, yielding, abuse loads: proposal, no source", 1.5, kWall, 1.0,
       kEnWall},
      {"rail_punching_routine", &F::rail_punching_routine,
       "rail wall, punching and uneven load, routine loads: Omega 1.58 of AISC 360-10 table K1.2, "
       "from memory",
       1.58, kPunching, 1.56, kEnPunching},
      {"rail_punching_abuse", &F::rail_punching_abuse,
       "rail wall, punching and uneven load, abuse loads: 1.25 x 1.58 / 1.50; proposal", 1.58,
       kPunching, 1.04, kEnPunching},
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
  switch (preset) {
    case FactorPreset::aisc_asd:
      return "AISC ASD";
    case FactorPreset::en:
      return "EN";
    case FactorPreset::usual:
      break;
  }
  return "usual";
}

const std::vector<FactorPreset>& factor_presets() {
  static const std::vector<FactorPreset> kAll = {FactorPreset::usual, FactorPreset::aisc_asd,
                                                 FactorPreset::en};
  return kAll;
}

namespace {

/// Of a preset that is not the usual one; its value is unset where the usual one stands.
struct OwnEntry {
  double value = base::kUnset;
  const char* basis = "";
};
OwnEntry own_entry(const PresetRow& row, FactorPreset preset) {
  switch (preset) {
    case FactorPreset::aisc_asd:
      return {row.asd, row.asd_basis};
    case FactorPreset::en:
      return {row.en, row.en_basis};
    case FactorPreset::usual:
      break;
  }
  return {};
}

}  // namespace

RequiredFactors factors_of(FactorPreset preset) {
  RequiredFactors factors;
  for (const PresetRow& row : rows()) {
    const OwnEntry own = own_entry(row, preset);
    if (!std::isnan(own.value)) factors.*row.value = own.value;
  }
  return factors;
}

std::vector<FactorEntry> factor_entries(RequiredFactors& factors, FactorPreset preset) {
  std::vector<FactorEntry> entries;
  for (const PresetRow& row : rows()) {
    const OwnEntry own = own_entry(row, preset);
    entries.push_back(
        {row.key, &(factors.*row.value), std::isnan(own.value) ? row.basis : own.basis});
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
