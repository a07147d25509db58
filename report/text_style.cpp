#include "report/text_style.hpp"

#include <fmt/format.h>

#include "checks/caveat.hpp"
#include "report/wrap.hpp"
#include "studies/answer.hpp"

namespace report {

namespace {

/// What studies::cautions() say, in as few words as keep it.
constexpr const char* kShortCaution =
    "CAUTION: these parts can kill when they fail. Qualified welder, procedure and inspection; "
    "local vehicle code; a licensed engineer decides.";

}  // namespace

std::string caution_lines(const TextStyle& style) {
  if (!style.full) return paragraph(kShortCaution, style.width, 0, 2);
  return fmt::format("\n{}", paragraph(fmt::format("CAUTION: {}", joined(studies::cautions(), " ")),
                                       style.width, 0, 2));
}

std::string stacks_line(const studies::Scope& scope, const TextStyle& style) {
  if (scope.stacks_assumed.empty()) return "";
  return paragraph(
      fmt::format("{}bolts of {}: their stacks are only assumed to be clamped; `check` says which "
                  "of them the load slips, and what that comes to",
                  checks::kCaveat, joined(scope.stacks_assumed, " and ")),
      style.width, 0, 2);
}

std::string opening(const std::string& head, Tone tone, const std::string& sentence,
                    const TextStyle& style) {
  return toned(head, tone, style.color) + paragraph(sentence, style.width).substr(head.size());
}

std::string heading(const std::string& words, const TextStyle& style) {
  return fmt::format("\n{}\n", toned(words, Tone::label, style.color));
}

}  // namespace report
