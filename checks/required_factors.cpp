#include "checks/required_factors.hpp"

#include <cmath>

#include "base/input_error.hpp"

namespace checks {

std::vector<FactorEntry> factor_entries(RequiredFactors& f) {
  return {
      {"yield_routine", &f.yield_routine,
       "yield, routine loads: proposal; ductile steel 1.5 in the FKM guideline, from memory"},
      {"yield_abuse", &f.yield_abuse, "yield, abuse loads: proposal, no source"},
      {"yield_abuse_locating", &f.yield_abuse_locating,
       "yield of lateral link and steering, abuse loads: proposal, no source"},
      {"buckling_routine", &f.buckling_routine,
       "buckling, routine loads: proposal; machine design texts ask 2 to 3, from memory"},
      {"buckling_routine_steering", &f.buckling_routine_steering,
       "buckling of steering links, routine loads: proposal, no source"},
      {"buckling_abuse", &f.buckling_abuse, "buckling, abuse loads: proposal, no source"},
      {"buckling_abuse_locating", &f.buckling_abuse_locating,
       "buckling of lateral link and steering, abuse loads: proposal, no source"},
      {"weld_routine", &f.weld_routine,
       "weld throat, routine loads: 0.60 F_EXX / 2.0 is the static allowable 0.30 F_EXX of "
       "AWS D1.1, from memory"},
      {"weld_abuse", &f.weld_abuse, "weld throat, abuse loads: proposal, no source"},
      {"bolt_routine", &f.bolt_routine,
       "bolts and the plates they bear on, routine loads: Omega 2.00 of AISC 360-22 J3, from "
       "memory"},
      {"bolt_abuse", &f.bolt_abuse, "bolts, abuse loads: proposal, no source"},
      {"tab_routine", &f.tab_routine,
       "tabs at their hole, routine loads: proposal; Omega 2.00 of AISC 360-22 D5, from memory"},
      {"tab_abuse", &f.tab_abuse, "tabs at their hole, abuse loads: proposal, no source"},
      {"rail_wall_routine", &f.rail_wall_routine,
       "rail wall under a bracket, routine loads: proposal; Omega 1.50 of AISC 360-22 J10.2, from "
       "memory"},
      {"rail_wall_abuse", &f.rail_wall_abuse,
       "rail wall under a bracket, abuse loads: proposal, no source"},
      {"tipping_routine", &f.tipping_routine,
       "axle tipping on its springs, routine loads: proposal, no source"},
      {"tipping_abuse", &f.tipping_abuse,
       "axle tipping on its springs, abuse loads: proposal, no source"},
      {"joint_routine_reversing", &f.joint_routine_reversing,
       "static rating of joints whose load reverses, routine loads: a bearing maker's selection "
       "page (maker withheld), read; common practice, no source"},
      {"joint_routine", &f.joint_routine, "static rating of other joints, routine loads: as above"},
      {"joint_abuse", &f.joint_abuse, "static rating of joints, abuse loads: proposal, no source"},
      {"strap_abuse", &f.strap_abuse,
       "limit strap, on 0.6 of its breaking load, every load: proposal, no source"},
  };
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
    case Item::tab:
      return abuse ? f.tab_abuse : f.tab_routine;
    case Item::rail_wall:
      return abuse ? f.rail_wall_abuse : f.rail_wall_routine;
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
