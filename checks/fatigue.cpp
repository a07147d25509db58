#include "checks/fatigue.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kCategoryCycles = 2.0e6;
constexpr double kUnlimited = std::numeric_limits<double>::infinity();
constexpr const char* kEnSurvival = "95 % survive (at 75 % confidence), from memory";
constexpr const char* kIiwSurvival =
    "97.7 % survive (the mean less two standard deviations), from memory";

FatigueDetail en_detail(std::string what, const FatigueCurve& curve, const std::string& table) {
  return {std::move(what), curve,
          fmt::format("EN 1993-1-9:2005 {}, from memory; {}", table, kEnSurvival)};
}

/// Appends the lines of one kind of stress in one block, and gives its damage.
double add_block(FatigueResult& out, const FatigueDetail& detail, const FatigueBlock& block,
                 double range, const char* kind) {
  if (!(range > 0.0)) return 0.0;
  const double damage = miner_sum(detail.curve, {range, block.cycles, block.shape});
  out.lines.push_back(
      {fmt::format("{}, {}: largest range", block.what, kind), "{0}", {stress(range)}});
  if (!(damage > 0.0)) {
    out.lines.push_back({"no damage: all of it is below the cut-off of the curve",
                         "{0}",
                         {stress(range_at(detail.curve, detail.curve.cut_off))}});
    return 0.0;
  }
  const double slope = detail.curve.slope;
  const double equal =
      detail.curve.category * std::pow(kCategoryCycles * damage / block.cycles, 1.0 / slope);
  out.lines.push_back(
      {"S, the range at which all n cycles would do as much damage", "{0}", {stress(equal)}});
  out.lines.push_back(
      {fmt::format("n / 2e6 (S / category)^{:.0f} = damage", slope),
       fmt::format("{{0}} / 2000000 * ({{1}} / {{2}})^{:.0f} = {{3}}", slope),
       {ratio(block.cycles), stress(equal), stress(detail.curve.category), ratio(damage)}});
  return damage;
}

}  // namespace

FatigueCurve en_direct(double category) {
  return {.category = category, .slope = 3.0, .knee = 5.0e6, .slope_beyond = 5.0, .cut_off = 1.0e8};
}

FatigueCurve en_shear(double category) {
  return {.category = category, .slope = 5.0, .knee = kUnlimited, .cut_off = 1.0e8};
}

FatigueCurve iiw_direct(double category) {
  return {.category = category, .slope = 3.0, .knee = 1.0e7, .slope_beyond = 5.0};
}

double range_at(const FatigueCurve& curve, double cycles) {
  if (cycles <= curve.knee) {
    return curve.category * std::pow(kCategoryCycles / cycles, 1.0 / curve.slope);
  }
  return range_at(curve, curve.knee) * std::pow(curve.knee / cycles, 1.0 / curve.slope_beyond);
}

double cycles_at(const FatigueCurve& curve, double range) {
  INVARIANT(curve.category > 0.0);
  if (!(range > 0.0)) return kUnlimited;
  const double steep = kCategoryCycles * std::pow(curve.category / range, curve.slope);
  const double cycles =
      steep <= curve.knee
          ? steep
          : curve.knee * std::pow(range_at(curve, curve.knee) / range, curve.slope_beyond);
  // A range typed in as the cut-off is at it.
  return cycles > curve.cut_off * (1.0 + 1e-9) ? kUnlimited : cycles;
}

double miner_sum(const FatigueCurve& curve, const Spectrum& spectrum) {
  if (!std::isfinite(spectrum.shape) || spectrum.cycles <= 1.0) {
    return spectrum.cycles / cycles_at(curve, spectrum.largest);
  }
  // By the part v of the logarithm of how often: cycles^v exceed (1 - v)^(1/shape) of the largest.
  constexpr int kSteps = 400;
  const double grows = std::log(spectrum.cycles);
  double sum = 0.0;
  for (int i = 0; i < kSteps; ++i) {
    const double v = (i + 0.5) / kSteps;
    const double range = spectrum.largest * std::pow(1.0 - v, 1.0 / spectrum.shape);
    sum += std::exp(grows * v) * grows / cycles_at(curve, range) / kSteps;
  }
  return sum;
}

FatigueDetail tube_end_toe() {
  return en_detail("end welded all round, toe", en_direct(40.0e6), "table 8.5 detail 12");
}

FatigueDetail attachment_toe() {
  return en_detail("part welded onto its side, toe", en_direct(56.0e6),
                   "table 8.4 detail 1, over 100 mm long");
}

FatigueDetail plate_toe() {
  return {"plate held by fillets, toe", iiw_direct(63.0e6),
          fmt::format("IIW Recommendations (2016), load-carrying fillet, toe, from memory; {}",
                      kIiwSurvival)};
}

FatigueDetail fillet_root() {
  return en_detail("fillet weld, root", en_direct(36.0e6), "table 8.5 detail 3");
}

FatigueDetail fillet_root_shear() {
  return en_detail("fillet weld, root, shear along it", en_shear(80.0e6), "table 8.5 detail 8");
}

FatigueDetail bolt_thread(double diameter) {
  constexpr double kLargest = 0.030;  // [m]
  const double size = std::min(1.0, std::pow(kLargest / diameter, 0.25));
  return en_detail("thread in tension", en_direct(size * 50.0e6), "table 8.1 detail 14");
}

FatigueDetail bolt_shank() {
  return en_detail("bolt in shear", en_shear(100.0e6), "table 8.1 detail 15");
}

FatigueDetail bolted_hole() {
  return en_detail("net section at the bolt hole", en_direct(50.0e6),
                   "table 8.1 detail 13 (without reversal)");
}

FatigueDetail plain_tube() {
  return en_detail("tube away from welds", en_direct(112.0e6),
                   "table 8.2 for its seam, as a proposal");
}

FatigueDetail plain_bar() {
  return en_detail("bar away from welds", en_direct(160.0e6), "table 8.1 detail 1");
}

double damage_limit(const std::vector<FatigueBlock>& blocks) {
  constexpr double kMixed = 0.5;
  return blocks.size() == 1 && !std::isfinite(blocks.front().shape) ? 1.0 : kMixed;
}

FatigueResult fatigue(const FatigueInput& input) {
  FatigueResult out;
  for (const FatigueBlock& block : input.blocks) {
    out.damage += add_block(out, input.detail, block, block.range, "direct stress");
    if (input.shear_detail) {
      out.damage += add_block(out, *input.shear_detail, block, block.shear, "shear stress");
    }
  }
  return out;
}

}  // namespace checks
