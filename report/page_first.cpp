#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/html_table.hpp"
#include "report/html_text.hpp"
#include "report/page_parts.hpp"
#include "report/remedy_text.hpp"
#include "report/units_shown.hpp"
#include "report/utilization_band.hpp"

/// The first screen of the page.
namespace report {
namespace {

using checks::Finding;
using studies::Answer;

/// The finding that a part is shown by: its worst that is over, else its first.
std::vector<std::size_t> governing(const Answer& answer) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < answer.findings.size(); ++i) {
    const Finding& f = answer.findings[i];
    const auto same = std::find_if(out.begin(), out.end(), [&](std::size_t other) {
      return answer.findings[other].part == f.part;
    });
    if (same == out.end()) {
      out.push_back(i);
    } else if (answer.findings[*same].state == checks::State::undecided &&
               f.state == checks::State::over) {
      *same = i;
    }
  }
  return out;
}

std::string option_html(const std::string& value, const std::string& words) {
  return fmt::format("<option value=\"{}\">{}</option>", escaped(value), escaped(words));
}

std::string posture_of(const Answer& answer, const std::string& load_case) {
  const auto found =
      std::find_if(answer.solved.begin(), answer.solved.end(),
                   [&](const studies::SolvedCase& s) { return s.load_case == load_case; });
  return found == answer.solved.end() ? "" : found->posture;
}

/// Load cases under the posture they stand in.
std::string case_options(const Answer& answer) {
  std::string out = option_html("-1", "each part at its worst");
  std::vector<std::string> postures;
  for (const studies::DrawnCase& c : answer.drawing->cases) {
    const std::string posture = posture_of(answer, c.load_case);
    if (std::find(postures.begin(), postures.end(), posture) == postures.end()) {
      postures.push_back(posture);
    }
  }
  for (const std::string& posture : postures) {
    out += fmt::format("<optgroup label=\"{}\">",
                       posture.empty() ? "load cases" : "posture: " + escaped(posture));
    for (std::size_t i = 0; i < answer.drawing->cases.size(); ++i) {
      const std::string& name = answer.drawing->cases[i].load_case;
      if (posture_of(answer, name) == posture) out += option_html(fmt::format("{}", i), name);
    }
    out += "</optgroup>";
  }
  return out;
}

std::string part_options(const Answer& answer) {
  std::string out;
  for (const std::size_t i : governing(answer)) {
    out += option_html(answer.findings[i].part, part_words(answer.findings[i].part));
  }
  return out;
}

std::string controls(const Answer& answer) {
  return fmt::format(
      "<div class=\"controls\">\n"
      "<label>load case<select id=\"choose-case\">{}</select></label>\n"
      "<label>shape<select id=\"choose-shape\"></select></label>\n"
      "<label>magnified<select id=\"choose-times\"><option value=\"0\">to be seen</option>"
      "<option value=\"1\">1 time</option><option value=\"10\">10 times</option>"
      "<option value=\"50\">50 times</option><option value=\"200\">200 times</option></select>"
      "</label>\n"
      "<label>part<select id=\"choose-part\">{}</select></label>\n"
      "<label class=\"tick\"><input type=\"checkbox\" id=\"show-arrows\" checked>forces</label>\n"
      "<div class=\"views\" role=\"group\" aria-label=\"look from\">"
      "<button type=\"button\" data-view=\"corner\">corner</button>"
      "<button type=\"button\" data-view=\"front\">front</button>"
      "<button type=\"button\" data-view=\"side\">left side</button>"
      "<button type=\"button\" data-view=\"top\">top</button></div>\n</div>\n",
      case_options(answer), part_options(answer));
}

std::string brief_row(const std::string& name, const std::string& value,
                      const std::string& attributes) {
  return fmt::format("<dt>{}</dt><dd{}>{}</dd>", name, attributes, escaped(value));
}

std::string brief_of(const Answer& answer, std::size_t index, bool chosen) {
  const Finding& f = answer.findings[index];
  const bool decided = f.state != checks::State::undecided;
  std::string out = fmt::format(
      "<article class=\"brief{}\" data-part=\"{}\">\n<h3>{}</h3>\n<p>{} "
      "<span class=\"state {}\">{}</span></p>\n<dl>",
      chosen ? " chosen" : "", escaped(f.part), escaped(part_words(f.part)), escaped(what_gives(f)),
      tone_class(state_tone(f.state)), state_word(f.state));
  if (!f.load_case.empty()) out += brief_row("load case", f.load_case, "");
  if (decided) {
    out += brief_row("safety factor", multiple(f.safety_factor),
                     fmt::format(" data-safety-factor=\"{}\"", exact(f.safety_factor)));
  }
  out += brief_row("asked", number(f.required), "");
  if (decided) {
    out += brief_row("utilization", percent(f.utilization()),
                     fmt::format(" data-utilization=\"{}\"", exact(f.utilization())));
  }
  out += "</dl>\n";
  if (!decided) out += fmt::format("<p>{}</p>\n", escaped(f.reason));
  const std::string remedy = remedy_words(answer, f);
  if (!remedy.empty()) out += fmt::format("<p class=\"mends\">{}</p>\n", escaped(remedy));
  if (!f.set.empty()) out += fmt::format("<p class=\"small\">with {}</p>\n", escaped(f.set));
  return out +
         fmt::format("<p><a href=\"#finding-{}\">worked lines</a></p>\n</article>\n", index + 1);
}

std::string legend() {
  std::string out = "<div class=\"legend\"><span>utilization:</span>";
  for (std::size_t band = 0; band < kBandNames.size(); ++band) {
    out += fmt::format("<span><i class=\"key\" style=\"background:var(--u{})\"></i>{}</span>", band,
                       kBandNames[band]);
  }
  constexpr const char* kArrow =
      "<span><svg width=\"26\" height=\"12\" aria-hidden=\"true\"><path class=\"{0} shaft\" "
      "d=\"M0 6H17\"/><path class=\"{0}\" d=\"M26 6L17 2V10Z\"/></svg>{0}s</span>";
  return out + fmt::format(kArrow, "act") + fmt::format(kArrow, "hold") + "</div>\n";
}

}  // namespace

std::string page_verdict(const Answer& answer) {
  const std::string head = verdict_head(answer.verdict);
  const std::string sentence = verdict_sentence(answer, "").substr(head.size());
  const std::size_t start = sentence.find_first_not_of(":. ");
  std::string beside;
  for (const std::string& caveat : caveats_of(answer)) {
    beside += fmt::format("<li><strong>Beware:</strong> {}</li>\n", escaped(caveat));
  }
  if (!answer.not_checked.empty()) {
    constexpr std::size_t kMost = 3;
    const std::size_t n = std::min(kMost, answer.not_checked.size());
    const std::vector<std::string> first(
        answer.not_checked.begin(), answer.not_checked.begin() + static_cast<std::ptrdiff_t>(n));
    const std::size_t more = answer.not_checked.size() - n;
    beside +=
        fmt::format("<li>Not checked: {}{}</li>\n", escaped(joined(first, "; ")),
                    more > 0 ? fmt::format("; and {} more, at the end of the sheet", more) : "");
  }
  return fmt::format(
      "<div class=\"verdict {}\"><h2 id=\"verdict-head\">{}</h2><p>{}</p></div>\n"
      "<p class=\"caution\"><strong>CAUTION:</strong> these parts can kill when they fail. "
      "Qualified welder, procedure and inspection; local vehicle code; a licensed engineer "
      "decides.</p>\n{}",
      tone_class(verdict_tone(answer.verdict)), head,
      start == sentence.npos ? "" : escaped(sentence.substr(start)),
      beside.empty() ? "" : "<ul class=\"small\">\n" + beside + "</ul>\n");
}

std::string page_assembly(const Answer& answer, const View& view) {
  const Picture picture = picture_of(answer, view);
  std::string out = "<div class=\"stage\">\n" + controls(answer);
  out += fmt::format(
      "<div class=\"view\"><svg id=\"drawing\" viewBox=\"0 0 {} {}\" role=\"application\" "
      "aria-roledescription=\"drawing that can be turned\" aria-label=\"The assembly to scale, "
      "each part in the color of its utilization. Arrow keys turn it, plus and minus zoom, 0 goes "
      "back.\" tabindex=\"0\">\n{}</svg>\n<p id=\"said\" class=\"said\" "
      "aria-live=\"polite\"></p></div>\n",
      picture.width, picture.height, picture.marks);
  out += "<div class=\"side\">\n";
  const std::vector<std::size_t> shown = governing(answer);
  for (const std::size_t i : shown) out += brief_of(answer, i, i == shown.front());
  out += "</div>\n" + legend() + "</div>\n";
  return out +
         "<p class=\"small needs-script on-screen\">Drag to turn, pinch or + and - to zoom, arrow "
         "keys turn "
         "it too; click a part for what governs it. Members and plates to scale; wheels and axle "
         "for orientation.</p>\n"
         "<p class=\"small without-script\">Members and plates to scale, each at its worst over "
         "all "
         "load cases; wheels and axle for orientation.</p>\n";
}

}  // namespace report
