#include "checks/fatigue.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kCategoryCycles = 2.0e6;
constexpr double kAtCutOff = 1.0e-9;  // a range typed in as the cut-off is at it
constexpr double kUnlimited = std::numeric_limits<double>::infinity();
constexpr const char* kEnSurvival = "95 % survive (at 75 % confidence), from memory";
constexpr const char* kIiwSurvival =
    "97.7 % survive (the mean less two standard deviations), from memory";

FatigueDetail en_detail(std::string what, const FatigueCurve& curve, const std::string& table) {
  return {std::move(what), curve,
          fmt::format("EN 1993-1-9:2005 {}, from memory; {}", table, kEnSurvival)};
}

constexpr std::size_t kSteps = 400;  // of the sum over a spectrum

double middle_of(std::size_t step) {
  return (static_cast<double>(step) + 0.5) / static_cast<double>(kSteps);
}

/// log(1 - v) at the middle of each step.
const std::array<double, kSteps>& log_of_rest() {
  static const std::array<double, kSteps> kTable = [] {
    std::array<double, kSteps> out{};
    for (std::size_t i = 0; i < kSteps; ++i) out[i] = std::log1p(-middle_of(i));
    return out;
  }();
  return kTable;
}

/// A curve in natural logarithms, in which it is straight lines.
class LogCurve {
 public:
  explicit LogCurve(const FatigueCurve& curve)
      : curve_(curve),
        knee_(std::log(curve.knee)),
        range_at_knee_(std::log(range_at(curve, curve.knee))),
        at_one_(std::log(kCategoryCycles) + curve.slope * std::log(curve.category)),
        cut_off_(std::log(curve.cut_off) + kAtCutOff) {}

  /// How many times it stands a range; infinite below the cut-off.
  [[nodiscard]] double cycles(double range) const {
    const double steep = at_one_ - curve_.slope * range;
    const double cycles =
        steep <= knee_ ? steep : knee_ + curve_.slope_beyond * (range_at_knee_ - range);
    return cycles > cut_off_ ? kUnlimited : cycles;
  }

 private:
  const FatigueCurve& curve_;
  double knee_;
  double range_at_knee_;
  double at_one_;
  double cut_off_;
};

/// Of one kind of stress in one block.
double damage_of(const FatigueDetail& detail, const FatigueBlock& block, double range) {
  return range > 0.0 ? miner_sum(detail.curve, {range, block.cycles, block.shape}) : 0.0;
}

/// Appends the lines of one kind of stress in one block.
void add_block(std::vector<WorkedLine>& lines, const FatigueDetail& detail,
               const FatigueBlock& block, double range, const char* kind) {
  if (!(range > 0.0)) return;
  const double damage = damage_of(detail, block, range);
  lines.push_back({fmt::format("{}, {}: largest range", block.what, kind), "{0}", {stress(range)}});
  if (!(damage > 0.0)) {
    lines.push_back({"no damage: all of it is below the cut-off of the curve",
                     "{0}",
                     {stress(range_at(detail.curve, detail.curve.cut_off))}});
    return;
  }
  const double slope = detail.curve.slope;
  const double equal =
      detail.curve.category * std::pow(kCategoryCycles * damage / block.cycles, 1.0 / slope);
  lines.push_back(
      {"S, the range at which all n cycles would do as much damage", "{0}", {stress(equal)}});
  lines.push_back(
      {fmt::format("n / 2e6 (S / category)^{:.0f} = damage", slope),
       fmt::format("{{0}} / 2000000 * ({{1}} / {{2}})^{:.0f} = {{3}}", slope),
       {ratio(block.cycles), stress(equal), stress(detail.curve.category), ratio(damage)}});
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
  return std::exp(LogCurve(curve).cycles(std::log(range)));
}

double miner_sum(const FatigueCurve& curve, const Spectrum& spectrum) {
  if (!std::isfinite(spectrum.shape) || spectrum.cycles <= 1.0) {
    return spectrum.cycles / cycles_at(curve, spectrum.largest);
  }
  // By the part v of the logarithm of how often: cycles^v exceed (1 - v)^(1/shape) of the largest.
  const double grows = std::log(spectrum.cycles);
  const double largest = std::log(spectrum.largest);
  const LogCurve stood(curve);
  double sum = 0.0;
  for (std::size_t i = 0; i < kSteps; ++i) {
    const double range = largest + log_of_rest()[i] / spectrum.shape;
    sum += std::exp(grows * middle_of(i) - stood.cycles(range));
  }
  return sum * grows / static_cast<double>(kSteps);
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

double damage(const FatigueInput& input) {
  double sum = 0.0;
  for (const FatigueBlock& block : input.blocks) {
    sum += damage_of(input.detail, block, block.range);
    if (input.shear_detail) sum += damage_of(*input.shear_detail, block, block.shear);
  }
  return sum;
}

std::vector<WorkedLine> damage_lines(const FatigueInput& input) {
  std::vector<WorkedLine> lines;
  for (const FatigueBlock& block : input.blocks) {
    add_block(lines, input.detail, block, block.range, "direct stress");
    if (input.shear_detail) {
      add_block(lines, *input.shear_detail, block, block.shear, "shear stress");
    }
  }
  return lines;
}

}  // namespace checks
