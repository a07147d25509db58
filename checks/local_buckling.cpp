#include "checks/local_buckling.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

#include "base/invariant.hpp"
#include "checks/bending_strength.hpp"
#include "checks/value.hpp"
#include "checks/wall_slenderness.hpp"

namespace checks {
namespace {

/// Of first yield: what a section too thin for the methods may carry without being judged.
constexpr double kNothing = 1e-3;

bool is_round_tube(const sections::Shape& shape) {
  return std::holds_alternative<sections::RoundTube>(shape);
}

struct Share {
  double value = 0.0;
  std::string reason = {};  ///< why it is not known
};

/// Compression over Fy Ae.
Share compression_share(Finding& f, const LocalBucklingInput& in, double area) {
  const double pressing = std::max(0.0, -in.resultants.n);
  if (!(pressing > kNothing * in.yield * area)) return {};
  std::string outside = wall_outside_method(in.shape, in.elastic, in.yield);
  if (!outside.empty()) return {base::kUnset, outside + " (AISC 360-22 E7, from memory)"};
  const EffectiveArea counts = effective_area(in.shape, in.elastic, in.yield, in.yield);
  f.lines.insert(f.lines.end(), counts.lines.begin(), counts.lines.end());
  const double share = pressing / (in.yield * counts.ratio * area);
  f.lines.push_back({"compression: P / (Fy Ae)",
                     "{0} / ({1} * {2} * {3}) = {4}",
                     {force(pressing),
                      stress(in.yield),
                      ratio(counts.ratio),
                      {area, Measure::area},
                      ratio(share)}});
  return {share, {}};
}

/// A moment over its nominal one.
Share moment_share(Finding& f, const NominalMoment& nominal, double acting, double first_yield,
                   const char* symbols) {
  if (!(acting > kNothing * first_yield)) return {};
  if (std::isnan(nominal.value)) return {base::kUnset, nominal.reason};
  f.lines.insert(f.lines.end(), nominal.lines.begin(), nominal.lines.end());
  const double share = acting / nominal.value;
  f.lines.push_back(
      {symbols, "{0} / {1} = {2}", {moment(acting), moment(nominal.value), ratio(share)}});
  return {share, {}};
}

}  // namespace

Finding local_buckling(const LocalBucklingInput& in) {
  INVARIANT(in.elastic > 0.0 && in.yield > 0.0 && in.length > 0.0);
  Finding f{.check = "thin wall", .measure = Measure::ratio};
  f.capacity = 1.0;
  f.required = in.required;
  f.source =
      "AISC 360-22 B4.1, E7, F7, F8 and F10.3, from memory; compression and bending added up: "
      "proposal, no source";
  f.range = "walls at one section; the member as a whole is the column check";
  f.notes.push_back(wall_words(in.shape, in.elastic, in.yield));
  if (!in.strength_basis.empty()) f.notes.push_back("yield strength: " + in.strength_basis);
  const sections::AreaProps props = sections::area_props(in.shape);
  const BendingStrength nominal = bending_strength({in.shape, in.elastic, in.yield, in.length});
  const Share axial = compression_share(f, in, props.area);
  Share y;
  Share z;
  if (is_round_tube(in.shape)) {
    y = moment_share(f, nominal.y, std::hypot(in.resultants.my, in.resultants.mz),
                     in.yield * props.modulus_y, "bending: sqrt(My^2 + Mz^2) / Mn");
  } else {
    y = moment_share(f, nominal.y, std::abs(in.resultants.my), in.yield * props.modulus_y,
                     "bending: |My| / Mny");
    z = moment_share(f, nominal.z, std::abs(in.resultants.mz), in.yield * props.modulus_z,
                     "bending: |Mz| / Mnz");
  }
  f.demand = axial.value + y.value + z.value;
  for (const Share& share : {axial, y, z}) {
    if (share.reason.empty()) continue;
    leave_undecided(f, share.reason);
    return f;
  }
  f.lines.push_back({"sum, 1 at most",
                     "{0} + {1} + {2} = {3}",
                     {ratio(axial.value), ratio(y.value), ratio(z.value), ratio(f.demand)}});
  decide(f, std::isnan(in.safety_factor) ? 1.0 / f.demand : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
