#include "report/markdown.hpp"

#include <cmath>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/comparison_text.hpp"
#include "report/conclusion_text.hpp"
#include "report/failure_order_text.hpp"
#include "report/life_text.hpp"
#include "report/remedy_text.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Answer;

/// A text that stays one: no mark of the language, no line of its own.
std::string plain_markdown(std::string_view text) {
  constexpr std::string_view kMarks = "\\`*_{}[]<>()#+!|~&$";
  std::string out;
  for (const char c : without_controls(text)) {
    if (kMarks.find(c) != kMarks.npos) out += '\\';
    out += c;
  }
  return out;
}

std::string pipe_row(const std::vector<std::string>& cells) {
  std::string out = "|";
  for (const std::string& cell : cells) out += fmt::format(" {} |", plain_markdown(cell));
  return out + "\n";
}

std::string rule(std::string_view alignments) {
  std::string out = "|";
  for (const char c : alignments) out += c == 'n' ? " ---: |" : " --- |";
  return out + "\n";
}

std::string md_heading(const std::string& words) {
  return fmt::format("\n## {}\n\n", words);
}

std::string md_list(const std::vector<std::string>& items) {
  std::string out;
  for (const std::string& item : items) out += fmt::format("- {}\n", plain_markdown(item));
  return out;
}

std::string md_findings(const Answer& answer) {
  std::string out =
      pipe_row({"part", "what", "load case", "safety factor", "asked", "utilization", "state"}) +
      rule("tttnnnt");
  for (const checks::Finding& f : answer.findings) {
    const bool decided = f.state != checks::State::undecided;
    out += pipe_row({part_words(f.part), what_gives_briefly(f), f.load_case,
                     decided ? multiple(f.safety_factor) : "?", number(f.required),
                     decided ? percent(f.utilization()) : "?",
                     decided ? state_word(f.state) : state_word(f.state) + ": " + f.reason});
  }
  return out;
}

std::string md_variants(const studies::Comparison& c) {
  std::string out = pipe_row({"design", "verdict", "worst", "utilization", "root moment", "mass"}) +
                    rule("tttntn");
  const auto add = [&](const studies::Figures& f) {
    const bool decided = std::isfinite(f.worst_utilization);
    const bool has_root = std::isfinite(f.root_moment.low) && std::isfinite(f.root_moment.high);
    out += pipe_row({f.name, verdict_word(f.verdict), part_words(f.worst),
                     decided ? percent(f.worst_utilization) : "?",
                     has_root ? shown_range(f.root_moment, checks::Measure::moment, c.inches) : "-",
                     shown_mass(f.mass, c.inches)});
  };
  add(c.base);
  for (const studies::Figures& f : c.variants) add(f);
  if (const auto benefit = brace_benefit(c)) out += "\n" + plain_markdown(*benefit) + "\n";
  if (!c.failures.empty()) out += "\n" + md_list(c.failures);
  return out;
}

}  // namespace

std::string markdown(const Answer& answer) {
  const std::string head = verdict_head(answer.verdict);
  std::string out = fmt::format("# {}\n\n", plain_markdown(answer.title));
  out += fmt::format("**{}**{}\n", head,
                     plain_markdown(verdict_sentence(answer, "").substr(head.size())));
  out += fmt::format("\n**CAUTION:** {}\n", plain_markdown(joined(studies::cautions(), " ")));
  if (const std::vector<std::string> caveats = caveats_of(answer); !caveats.empty()) {
    out += md_heading("Beware") + md_list(caveats);
  }
  out += md_heading("Checks, worst first") + md_findings(answer);
  out +=
      "\nutilization: 100 % = the limit; safety factor: multiple of the load at which it just "
      "holds; asked: factor required\n";
  std::vector<std::string> mends;
  for (const checks::Finding& f : answer.findings) {
    const std::string words = remedy_words(answer, f);
    if (!words.empty()) {
      mends.push_back(part_words(f.part) + ", " + what_gives_briefly(f) + ": " + words);
    }
  }
  if (const std::string both = together_words(answer); !both.empty()) mends.push_back(both);
  if (!mends.empty()) out += md_heading("What would mend it") + md_list(mends);
  std::vector<std::string> buckling;
  for (const studies::CriticalFactor& c : answer.critical) buckling.push_back(buckling_words(c));
  if (!buckling.empty()) out += md_heading("Buckling, assembled") + md_list(buckling);
  std::vector<std::string> orders;
  for (const studies::FailureOrder& order : answer.failure_orders) {
    orders.push_back(order.load_case + ": " + order_words(order));
  }
  if (!orders.empty()) out += md_heading("Order of failure, about") + md_list(orders);
  const std::string life = answer.life ? life_sentence(*answer.life, answer.inches) : "";
  if (!life.empty()) out += "\n" + plain_markdown(life) + "\n";
  if (answer.comparison) out += md_heading("Variants") + md_variants(*answer.comparison);
  std::vector<std::string> assumed;
  for (const parts::Assumption& a : answer.assumed) {
    assumed.push_back(fmt::format("{}: {} [{}]", a.key, a.value, a.basis));
  }
  if (!assumed.empty()) out += md_heading("Assumed") + md_list(assumed);
  if (!answer.not_checked.empty()) {
    out += md_heading("Not checked") + md_list(answer.not_checked);
  }
  return out;
}

}  // namespace report
