#include "report/case_list_text.hpp"

#include <cstddef>
#include <string_view>

#include <fmt/format.h>

#include "report/balance_text.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::CaseList;
using studies::ListedCase;
using studies::ListedKind;

std::string measured(const loads::Figure& figure, bool inches) {
  switch (figure.kind) {
    case loads::Figure::Kind::moment:
      return shown(figure.value, checks::Measure::moment, inches);
    case loads::Figure::Kind::length:
      return shown(figure.value, checks::Measure::length, inches);
    case loads::Figure::Kind::force:
      break;
  }
  return shown(figure.value, checks::Measure::force, inches);
}

std::string push_words(const loads::Push& push, bool inches) {
  std::string words = loads::push_words(push);
  if (is_any(push.force)) words += " " + three_shown(push.force, checks::Measure::force, inches);
  if (is_any(push.moment)) {
    words += " turned by " + three_shown(push.moment, checks::Measure::moment, inches);
  }
  return words;
}

std::string case_lines(const ListedCase& c, bool inches, const TextStyle& style) {
  std::vector<std::string> words;
  for (const loads::Push& push : c.pushes) words.push_back(push_words(push, inches));
  words.insert(words.end(), c.others.begin(), c.others.end());
  for (const loads::Figure& f : c.figures) words.push_back(f.what + " " + measured(f, inches));
  return paragraph(fmt::format("{}{}: {}", c.name, c.runs ? "" : " (not run)", joined(words, "; ")),
                   style.width, 2, 4);
}

}  // namespace

std::string named_case_lines(const ListedKind& kind, bool inches, const TextStyle& style) {
  std::string out;
  for (const ListedCase& c : kind.cases) {
    out += case_lines(c, inches, style);
    out += paragraph(fmt::format("{}, {}; loads: {}; basis: {}", kind.routine ? "routine" : "abuse",
                                 kind.posture, kind.factors, c.basis),
                     style.width, 4, 2);
  }
  return out;
}

namespace {

/// What the head of a kind says at the right margin.
std::string state_of(const ListedKind& kind, bool of_design) {
  const std::string what = fmt::format("{}, {}", kind.routine ? "routine" : "abuse", kind.posture);
  if (!of_design) return what;
  return what + (kind.not_run.empty() ? ", runs" : ", not run");
}

std::string kind_lines(const ListedKind& kind, const CaseList& list, const TextStyle& style) {
  const std::string state = state_of(kind, list.of_design);
  const int gap = style.width - display_width(kind.name) - display_width(state);
  std::string out = "\n";
  if (gap < 2) {
    out += paragraph(kind.name, style.width) + "  " + state + "\n";
  } else {
    out += without_controls(kind.name) + std::string(static_cast<std::size_t>(gap), ' ') + state +
           "\n";
  }
  if (!kind.not_run.empty()) out += paragraph("not run: " + kind.not_run, style.width, 2, 2);
  if (kind.key != kind.name && !list.of_design) {
    out += paragraph("in a case file: " + kind.key, style.width, 2, 2);
  }
  out += paragraph("loads: " + kind.factors, style.width, 2, 2);
  out += paragraph("checks: " + kind.checks, style.width, 2, 2);
  out += paragraph("basis: " + (kind.cases.empty() ? kind.basis : kind.cases.front().basis),
                   style.width, 2, 2);
  for (const ListedCase& c : kind.cases) out += case_lines(c, list.inches, style);
  return out;
}

const char* sizes_words(loads::Spread spread) {
  switch (spread) {
    case loads::Spread::full:
      return "all full";
    case loads::Spread::straight:
      return "sizes on a straight line";
    case loads::Spread::bell:
      break;
  }
  return "sizes on a bell curve";
}

std::string duty_lines(const CaseList& list, const TextStyle& style) {
  std::string out = heading("Duty, for estimates of life (cycles in 1000 km)", style);
  for (const loads::DutyBlock& block : list.duty) {
    out += paragraph(fmt::format("{} to {}: {}, {}", block.from, block.to,
                                 number(block.per_1000_km), sizes_words(block.spread)),
                     style.width, 2, 2);
  }
  return out + paragraph(list.duty_basis, style.width, 2, 2);
}

std::string opening(const CaseList& list) {
  const std::string words =
      "W: static load of one front wheel. Routine: happens again and again. Abuse: rare, must not "
      "break or buckle. A screening set, not a certification set.";
  if (!list.of_design) return "Built-in load cases. " + words;
  return fmt::format("Load cases of {}. {} Forces and moments: forward, left, up.", list.title,
                     words);
}

}  // namespace

std::string case_list_text(const CaseList& list, const TextStyle& style) {
  std::string out = paragraph(opening(list), style.width);
  for (const ListedKind& kind : list.kinds) out += kind_lines(kind, list, style);
  out += duty_lines(list, style);
  out += caution_lines(style);
  return out;
}

}  // namespace report
