#include "report/rated_text.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/stopped_words.hpp"
#include "report/text_table.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Rated;
using studies::RatedPoint;
using studies::Rating;

std::string value_words(const Rating& r, double si) {
  const std::string text = number(si / r.now.factor, 4);
  return r.now.unit.empty() ? text : text + " " + r.now.unit;
}

/// Of a value that does not hold: rounding must not make one of it that does.
std::string outward_words(const Rating& r, const std::optional<RatedPoint>& point, bool up) {
  if (!point) return "";
  const double shown = point->value / r.now.factor;
  if (shown == 0.0) return value_words(r, point->value);
  constexpr double kRounding = 1.0e-9;
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(shown))) - 3.0);
  const double steps =
      up ? std::ceil(shown / step - kRounding) : std::floor(shown / step + kRounding);
  return value_words(r, steps * step * r.now.factor);
}

std::string point_words(const Rating& r, const std::optional<RatedPoint>& point) {
  return point ? value_words(r, point->value) : "";
}

/// "lateral link, column (slid into a curb, right wheel)".
std::string what_stops(const RatedPoint& point) {
  if (!point.refused.empty()) return "the case makes no sense there: " + point.refused;
  if (!point.worst) return "";
  const checks::Finding& f = *point.worst;
  std::string words = fmt::format("{}, {}", part_words(f.part), what_gives_briefly(f));
  if (!f.load_case.empty()) words += fmt::format(" ({})", f.load_case);
  return f.state == checks::State::undecided ? words + ": not decided: " + f.reason : words;
}

/// What the user reads first, of the design as drawn.
struct Headline {
  std::string head;
  Tone tone = Tone::plain;
  std::string rest;
};

Headline headline(const Rating& r) {
  const Rated& drawn = r.designs.front();
  const std::string number_name = key_words(r.span.path);
  const std::string now = fmt::format("the case has {}", value_words(r, r.now.si));
  const std::string searched =
      fmt::format("between {} and {}", value_words(r, r.span.from), value_words(r, r.span.to));
  if (drawn.stopped) return {"NOT RATED", Tone::undecided, ": stopped before its limit was found"};
  if (!drawn.failure.empty()) return {"NOT RATED", Tone::undecided, ": " + drawn.failure};
  const bool open = !drawn.points.empty() &&
                    std::all_of(drawn.points.begin(), drawn.points.end(), [](const RatedPoint& p) {
                      return p.refused.empty() && p.verdict == studies::Verdict::not_decided;
                    });
  if (open) {
    return {
        "NOT DECIDED", Tone::undecided,
        fmt::format(" at any {} {}: {}", number_name, searched, what_stops(drawn.points.front()))};
  }
  if (!drawn.holds_to) {
    return {"THE CHECKS MADE DO NOT HOLD", Tone::over,
            fmt::format(" at any {} {}; {}", number_name, searched, now)};
  }
  const bool holds_now = r.now.si <= drawn.holds_to->value &&
                         (!drawn.holds_from || r.now.si >= drawn.holds_from->value);
  const std::string from =
      drawn.holds_from ? fmt::format("from {} ", value_words(r, drawn.holds_from->value)) : "";
  return {
      "THE CHECKS MADE HOLD", holds_now ? Tone::within : Tone::over,
      fmt::format(" {}up to {} of {}, as drawn{}, with the thinnest tubes a mill may deliver; {}{}",
                  from, value_words(r, drawn.holds_to->value), number_name,
                  drawn.to_the_end ? " (the search ends there)" : "", now,
                  drawn.fails_at && drawn.fails_at->worst
                      ? "; what governs at the limit: " + what_stops(*drawn.fails_at)
                      : "")};
}

/// Of the values tried the one nearest to that of the case; null = none was.
const RatedPoint* nearest_to_the_case(const Rating& r, const Rated& design) {
  const auto off = [&](const RatedPoint& p) { return std::abs(p.value - r.now.si); };
  const auto nearest =
      std::min_element(design.points.begin(), design.points.end(),
                       [&](const RatedPoint& a, const RatedPoint& b) { return off(a) < off(b); });
  return nearest == design.points.end() ? nullptr : &*nearest;
}

/// What is over where the values begin that do not hold below those that do.
std::string below_words(const Rating& r, const Rated& design) {
  if (!design.holds_from || !design.fails_below) return "";
  return fmt::format("; below, at {}: {}", outward_words(r, design.fails_below, false),
                     what_stops(*design.fails_below));
}

std::string table_of_designs(const Rating& r, const TextStyle& style) {
  const bool from = std::any_of(r.designs.begin(), r.designs.end(),
                                [](const Rated& d) { return d.holds_from.has_value(); });
  TextTable table;
  table.columns = {{.least_width = 12}, {.numbers = true, .gap = 1}, {.numbers = true, .gap = 1}};
  table.head = {{"", Tone::label}, {"holds up to", Tone::label}, {"no more at", Tone::label}};
  if (from) {
    table.columns.insert(table.columns.begin() + 1, {.numbers = true, .gap = 1});
    table.head.insert(table.head.begin() + 1, {"holds from", Tone::label});
  }
  table.columns.push_back({.least_width = 20});
  table.head.push_back({"what stops it there", Tone::label});
  for (const Rated& d : r.designs) {
    const RatedPoint* stop = d.fails_at ? &*d.fails_at : nullptr;
    if (!d.holds_to) stop = nearest_to_the_case(r, d);
    std::vector<TableCell> row = {
        {d.name},
        {d.holds_to           ? value_words(r, d.holds_to->value)
         : d.stopped          ? "not known"
         : !d.failure.empty() ? "not rated"
                              : "nowhere",
         d.holds_to ? Tone::plain : Tone::over},
        {outward_words(r, d.fails_at, true)},
        {d.stopped            ? "stopped before its limit was found"
         : !d.failure.empty() ? d.failure
         : stop == nullptr    ? "the search ends there" + below_words(r, d)
         : !d.holds_to
             ? fmt::format("at {}, found first: {}", value_words(r, stop->value), what_stops(*stop))
             : what_stops(*stop) + below_words(r, d)}};
    if (from) row.insert(row.begin() + 1, {point_words(r, d.holds_from)});
    table.rows.push_back(std::move(row));
  }
  return laid_out(table, style.width, style.color);
}

/// Of the designs that have an upper limit: whether each was run a thousandth beside it.
std::string proof_words(const Rating& r) {
  const auto has_limit = [](const Rated& d) { return !std::isnan(d.limit); };
  if (std::none_of(r.designs.begin(), r.designs.end(), has_limit)) return "";
  const bool all = std::all_of(r.designs.begin(), r.designs.end(),
                               [&](const Rated& d) { return !has_limit(d) || d.proved; });
  return all ? "; each was run at 0.999 and 1.001 of the limit found, where the checks hold and no "
               "longer hold"
             : "";
}

std::string notes(const Rating& r, const TextStyle& style) {
  std::string out;
  for (const Rated& d : r.designs) {
    if (!std::isnan(d.limit) && !d.proved) {
      out += paragraph(fmt::format("{}: near its limit the checks hold, fail and hold again within "
                                   "0.1 %; take a lower value",
                                   d.name),
                       style.width, 0, 2);
    }
    for (const std::string& words : d.beware) {
      const double at = d.holds_to ? d.holds_to->value : r.now.si;
      out += paragraph(fmt::format("beware, {}, with {} of {}: {}", d.name, value_words(r, at),
                                   key_words(r.span.path), words),
                       style.width, 0, 2);
    }
    if (!d.holds_again) continue;
    out += paragraph(fmt::format("{}: the checks hold in another range of the search too, which is "
                                 "not counted (--all lists it)",
                                 d.name),
                     style.width, 0, 2);
  }
  out += paragraph(
      fmt::format(
          "searched from {} to {}, the ends closed in to 0.05 % and rounded inward{}; what lies "
          "between two values tried that hold is taken to hold (--all lists them); all else "
          "stays as in the case; bars and tubes as thin as the mill may deliver them (sizes: "
          "minimum), plates and rails as entered. What `linkmargin check` assumes, "
          "says to beware of and does not check holds here too: no promise for any truck.",
          value_words(r, r.span.from), value_words(r, r.span.to), proof_words(r)),
      style.width, 0, 2);
  const auto n_stopped = static_cast<std::size_t>(
      std::count_if(r.designs.begin(), r.designs.end(), [](const Rated& d) { return d.stopped; }));
  return out + stopped_words(r.designs.size() - n_stopped, r.designs.size(), "designs", style);
}

std::string all_points(const Rating& r, const TextStyle& style) {
  std::string out;
  for (const Rated& d : r.designs) {
    TextTable table;
    table.columns = {{.numbers = true, .least_width = 12},
                     {.least_width = 12},
                     {.numbers = true, .gap = 1},
                     {.least_width = 30}};
    table.head = {{key_words(r.span.path), Tone::label},
                  {"checks", Tone::label},
                  {"found", Tone::label},
                  {"of", Tone::label}};
    for (const RatedPoint& p : d.points) {
      const bool decided = p.worst && p.worst->state != checks::State::undecided;
      table.rows.push_back(
          {{value_words(r, p.value)},
           {p.refused.empty() ? verdict_word(p.verdict) : "refused", verdict_tone(p.verdict)},
           {decided ? percent(p.worst->utilization()) : ""},
           {what_stops(p)}});
    }
    if (table.rows.empty()) continue;
    out += heading(fmt::format("Values tried, {}", d.name), style) +
           laid_out(table, style.width, style.color);
  }
  return out + paragraph(
                   "a value at which not all holds is followed only to the first check found "
                   "that does not; values between them at which only the load cases near a limit "
                   "were looked at, and held, are not listed",
                   style.width, 0, 2);
}

}  // namespace

std::string rated_text(const Rating& r, const TextStyle& style) {
  const Headline first = headline(r);
  const std::string sentence =
      first.head + first.rest + ". " + scope_sentence(r.scope, studies::checks_not_offered());
  std::string out = paragraph(sentence, style.width);
  out = toned(first.head, first.tone, style.color) + out.substr(first.head.size());
  out += table_of_designs(r, style) + notes(r, style);
  if (style.full) out += all_points(r, style);
  out += stacks_line(r.scope, style) + caution_lines(style);
  if (!style.full && !style.command_for_more.empty()) {
    out += paragraph("more: " + style.command_for_more, style.width, 0, 2);
  }
  return out;
}

}  // namespace report
