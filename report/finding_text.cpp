#include "report/finding_text.hpp"

#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "checks/caveat.hpp"
#include "report/answer_words.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using checks::Finding;

/// The head of a finding: what, then its state at the right margin.
std::string finding_head(const Finding& f, const TextStyle& style) {
  const bool decided = f.state != checks::State::undecided;
  const std::string what = part_words(f.part) + (f.part.empty() ? "" : ": ") + what_gives(f);
  const std::string state =
      decided ? percent(f.utilization()) + "  " + state_word(f.state) : state_word(f.state);
  const std::string clean = without_controls(what);
  const int gap = style.width - display_width(clean) - display_width(state);
  const std::string shown_state = toned(state, state_tone(f.state), style.color);
  if (gap < 2) return paragraph(what, style.width) + "  " + shown_state + "\n";
  return clean + std::string(static_cast<std::size_t>(gap), ' ') + shown_state + "\n";
}

std::string worked_lines(const Finding& f, bool inches, const TextStyle& style) {
  std::string out;
  for (const checks::WorkedLine& line : f.lines) {
    out += paragraph(line.symbols, style.width, 2, 6);
    const std::string numbers = numbers_of(line, inches);
    if (!numbers.empty()) out += paragraph("= " + numbers, style.width, 4, 4);
  }
  return out;
}

std::string result_line(const Finding& f, bool inches) {
  if (f.state == checks::State::undecided) {
    return fmt::format("not decided: {}; safety factor asked {}", f.reason, number(f.required));
  }
  std::string line;
  if (std::isfinite(f.demand) && std::isfinite(f.capacity)) {
    line = fmt::format("demand {}, capacity {}; ", shown_worked({f.demand, f.measure}, inches),
                       shown_worked({f.capacity, f.measure}, inches));
  }
  return line + fmt::format("safety factor {}, asked {}; utilization {}", multiple(f.safety_factor),
                            number(f.required), percent(f.utilization()));
}

/// In which load case and stiffness set.
std::string where_lines(const Finding& f, const TextStyle& style) {
  const std::string separator = f.load_case.empty() || f.set.empty() ? "" : "; ";
  const std::string where = f.load_case + separator + f.set;
  return where.empty() ? "" : paragraph("in " + where, style.width, 2, 2);
}

std::string note_lines(const Finding& f, const TextStyle& style) {
  std::string out;
  for (const std::string& note : f.notes) {
    const bool says_itself = checks::is_caveat(note) || checks::is_warning(note);
    out += paragraph((says_itself ? "" : "note: ") + note, style.width, 2, 2);
  }
  return out;
}

/// How its load case was solved, and what acts on the part there.
std::string origin_lines(const Finding& f, bool inches, const TextStyle& style) {
  const checks::Origin& origin = f.origin;
  if (origin.method.empty()) return "";
  const std::string at = origin.multiple == 1.0
                             ? "at the load itself"
                             : fmt::format("at {} times the load", multiple(origin.multiple));
  std::string out =
      paragraph(fmt::format("solved by {}, {}", origin.method, at), style.width, 2, 2);
  if (origin.forces.empty()) return out;
  out += paragraph(
      "what acts on its ends, in its own axes (x along it from its first end, y and z across; "
      "beyond first order the lines below have them turned with it):",
      style.width, 2, 2);
  for (const checks::WorkedLine& line : origin.forces) {
    out +=
        paragraph(fmt::format("{}: {}", line.symbols, numbers_of(line, inches)), style.width, 4, 2);
  }
  return out;
}

}  // namespace

std::string finding_text(const Finding& finding, bool inches, const TextStyle& style) {
  std::string out = finding_head(finding, style) + where_lines(finding, style);
  out += worked_lines(finding, inches, style);
  out += paragraph(result_line(finding, inches), style.width, 2, 2);
  if (!finding.source.empty()) out += paragraph("source: " + finding.source, style.width, 2, 2);
  return out + note_lines(finding, style);
}

std::string explained_text(const Finding& finding, bool inches, const TextStyle& style) {
  std::string out = finding_head(finding, style) + where_lines(finding, style);
  out += origin_lines(finding, inches, style);
  out += worked_lines(finding, inches, style);
  out += paragraph(result_line(finding, inches), style.width, 2, 2);
  out += note_lines(finding, style);
  if (!finding.source.empty()) out += paragraph("source: " + finding.source, style.width, 2, 2);
  if (!finding.range.empty()) out += paragraph("holds for: " + finding.range, style.width, 2, 2);
  return out;
}

}  // namespace report
