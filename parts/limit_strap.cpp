#include "parts/limit_strap.hpp"

#include <cmath>

#include "parts/design.hpp"

namespace parts {

double coil_unloads_at(const Design& design) {
  if (!design.axle || !design.vehicle) return base::kUnset;
  const VehicleEntry& v = *design.vehicle;
  const double preload = design.axle->coil_preload;
  if (std::isnan(v.unsprung_weight) && !std::isnan(preload))
    return preload / design.axle->coil_rate;
  const double unsprung = std::isnan(v.unsprung_weight) ? 0.0 : v.unsprung_weight;
  return 0.5 * (v.axle_weight - unsprung) / design.axle->coil_rate;
}

double free_travel_of(const Design& design) {
  if (!design.limit_strap) return base::kUnset;
  const LimitStrap& strap = *design.limit_strap;
  if (!std::isnan(strap.free_travel)) return strap.free_travel;
  double least = base::kUnset;
  for (const double given :
       {strap.damper_travel, strap.spring_travel, strap.joint_travel, strap.brake_hose_travel}) {
    least = std::fmin(least, given);
  }
  if (std::isnan(least) || !std::isnan(strap.spring_travel)) return least;
  return std::fmin(least, coil_unloads_at(design));
}

double slack_of(const Design& design) {
  if (!design.limit_strap) return base::kUnset;
  if (!std::isnan(design.limit_strap->slack)) return design.limit_strap->slack;
  const double set = free_travel_of(design) - kStrapShorter;
  return set > 0.0 ? set : base::kUnset;
}

}  // namespace parts
