#include "report/conclusion_text.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Figures;
using studies::Verdict;

// Below this a change is none that a shop would see.
constexpr double kNoChange = 0.02;

std::string verdict_clause(const Figures& base, const Figures& variant) {
  const bool same = base.verdict == variant.verdict;
  switch (variant.verdict) {
    case Verdict::within:
      return same ? "stays within the limits checked" : "comes within the limits checked";
    case Verdict::over:
      return same ? "stays over the limit" : "goes over the limit";
    case Verdict::not_decided:
      break;
  }
  return "is not decided";
}

std::string worst_clause(const Figures& base, const Figures& variant) {
  if (variant.worst.empty() || base.worst.empty()) return "";
  if (!std::isfinite(variant.worst_utilization) || !std::isfinite(base.worst_utilization)) {
    return fmt::format("its worst check is {}", part_words(variant.worst));
  }
  if (variant.worst == base.worst) {
    const std::string now = percent(variant.worst_utilization);
    const std::string before = percent(base.worst_utilization);
    const std::string what = "its worst check, " + part_words(variant.worst);
    if (now == before) return fmt::format("{}, stays at {}", what, now);
    return fmt::format("{}, {} to {} from {}", what,
                       variant.worst_utilization > base.worst_utilization ? "rises" : "falls", now,
                       before);
  }
  return fmt::format("its worst check is {} at {}, in place of {} at {}", part_words(variant.worst),
                     percent(variant.worst_utilization), part_words(base.worst),
                     percent(base.worst_utilization));
}

struct AtRail {
  std::string rail;
  double ratio;
};

/// Root moment over another's, at each end of the rail's stiffness that both have.
std::vector<AtRail> root_ratios(const Figures& of, const Figures& to) {
  std::vector<AtRail> all;
  for (const studies::RootMoment& here : of.root_moments) {
    for (const studies::RootMoment& there : to.root_moments) {
      if (here.rail == there.rail && there.moment > 0.0) {
        all.push_back({here.rail, here.moment / there.moment});
      }
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const AtRail& a, const AtRail& b) { return a.ratio < b.ratio; });
  return all;
}

bool changes(const std::vector<AtRail>& ratios) {
  return std::any_of(ratios.begin(), ratios.end(),
                     [](const AtRail& r) { return std::abs(r.ratio - 1.0) > kNoChange; });
}

std::string ratios_in_words(const std::vector<AtRail>& ratios) {
  std::vector<std::string> words;
  for (const AtRail& r : ratios) {
    const std::string where = r.rail == "rail" ? "" : fmt::format(" ({})", r.rail);
    words.push_back(percent(r.ratio) + where);
  }
  return joined(words, " to ");
}

std::string root_verb(const std::vector<AtRail>& ratios) {
  if (ratios.back().ratio <= 1.0) return "falls to";
  return ratios.front().ratio >= 1.0 ? "rises to" : "comes to";
}

std::string brace_clause(const Figures& braced) {
  const auto brace = std::find_if(braced.parts.begin(), braced.parts.end(),
                                  [](const auto& part) { return part.part == "brace"; });
  if (brace == braced.parts.end() || !std::isfinite(brace->utilization)) return "";
  return fmt::format("the brace itself is governed by {} at {}", brace->check,
                     percent(brace->utilization));
}

/// The design that is the same but for the brace: "9 in drop" of "9 in drop, no brace"; null when
/// there is none.
const Figures* same_with_brace(const studies::Comparison& c, const std::string& name) {
  if (!leaves_brace_out(name) || leaves_brace_out(c.base.name)) return nullptr;
  const std::size_t comma = name.rfind(',');
  if (comma == std::string::npos) return &c.base;
  const std::string rest = name.substr(0, comma);
  if (!leaves_brace_out(name.substr(comma))) return nullptr;
  const auto found = std::find_if(c.variants.begin(), c.variants.end(),
                                  [&](const Figures& f) { return f.name == rest; });
  return found == c.variants.end() ? nullptr : &*found;
}

std::string mass_clause(const Figures& base, const Figures& variant) {
  const double ratio = variant.mass / base.mass;
  if (!(std::abs(ratio - 1.0) > kNoChange)) return "";
  return fmt::format("{:.3g} times the mass", ratio);
}

}  // namespace

bool leaves_brace_out(const std::string& name) {
  std::string lower = name;
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return lower.find("no brace") != std::string::npos ||
         lower.find("without brace") != std::string::npos ||
         lower.find("without the brace") != std::string::npos;
}

std::optional<std::string> brace_benefit(const studies::Comparison& c) {
  const auto bare = std::find_if(c.variants.begin(), c.variants.end(),
                                 [](const Figures& f) { return leaves_brace_out(f.name); });
  if (bare == c.variants.end()) return std::nullopt;
  const std::vector<AtRail> ratios = root_ratios(c.base, *bare);
  if (ratios.empty()) return std::nullopt;
  return fmt::format("brace: root moment {} of that without it", ratios_in_words(ratios));
}

std::string conclusion(const studies::Comparison& c, std::size_t index) {
  const Figures& base = c.base;
  const Figures& variant = c.variants[index];
  std::vector<std::string> clauses = {variant.name + " " + verdict_clause(base, variant),
                                      worst_clause(base, variant)};
  const Figures* braced = same_with_brace(c, variant.name);
  const std::vector<AtRail> of_brace =
      braced == nullptr ? std::vector<AtRail>() : root_ratios(*braced, variant);
  const std::vector<AtRail> of_base = root_ratios(variant, base);
  if (!of_brace.empty()) {
    clauses.push_back(fmt::format("with the brace the root moment {} {} of that without it",
                                  root_verb(of_brace), ratios_in_words(of_brace)));
    clauses.push_back(brace_clause(*braced));
  } else if (changes(of_base)) {
    clauses.push_back(
        fmt::format("the root moment {} {}", root_verb(of_base), ratios_in_words(of_base)));
  }
  clauses.push_back(mass_clause(base, variant));
  clauses.erase(std::remove(clauses.begin(), clauses.end(), std::string()), clauses.end());
  return joined(clauses, "; ") + ".";
}

}  // namespace report
