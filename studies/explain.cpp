#include "studies/explain.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "sections/nearest.hpp"
#include "studies/run.hpp"

namespace studies {
namespace {

using checks::Finding;

/// Small letters, and a space for each underscore.
std::string plain(std::string words) {
  for (char& c : words) {
    c = c == '_' ? ' ' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return words;
}

/// The axle that tips is "axle" in the tables.
bool is_part(const std::string& part, const std::string& asked) {
  return plain(part) == asked || belongs(plain(part), asked) ||
         plain(part).rfind("the " + asked + " ", 0) == 0;
}

void add_once(std::vector<std::string>& names, const std::string& name) {
  if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
}

/// The names that hold what was asked as a word ("link" of "lateral_link"), else the nearest one.
std::vector<std::string> near_names(const std::string& asked,
                                    const std::vector<std::string>& names) {
  std::vector<std::string> near;
  for (const std::string& name : names) {
    if ((" " + plain(name)).find(" " + plain(asked)) != std::string::npos) near.push_back(name);
  }
  return near.empty() ? std::vector<std::string>{sections::nearest(asked, names)} : near;
}

[[noreturn]] void refuse(const std::string& asked, const std::string& no_such,
                         const std::vector<std::string>& names) {
  const std::string list = fmt::format("{}", fmt::join(names, "; "));
  if (asked.empty()) throw base::InputError("", "say which part; there is: " + list);
  throw base::InputError(asked, fmt::format("{}; the nearest is `{}`; there is: {}", no_such,
                                            fmt::join(near_names(asked, names), "` or `"), list));
}

std::vector<Finding> of_part(const Answer& answer, const std::string& asked) {
  std::vector<Finding> found;
  std::vector<std::string> names;
  for (const Finding& f : answer.findings) {
    if (!asked.empty() && is_part(f.part, plain(asked))) found.push_back(f);
    add_once(names, f.part);
  }
  if (names.empty()) throw base::InputError(asked, "nothing was checked in this case");
  if (found.empty()) refuse(asked, "no part of that name was checked", names);
  return found;
}

/// The names of checks that are asked for: by the whole of one, alone or with its place as in
/// "column at its weld", else by how it or a word of it begins.
std::vector<std::string> meant_by(const std::string& asked, const std::vector<std::string>& names) {
  if (std::find(names.begin(), names.end(), asked) != names.end()) return {asked};
  std::vector<std::string> meant;
  for (const std::string& name : names) {
    if (asked.rfind(name + " at ", 0) == 0) return {name};
    if ((" " + name).find(" " + asked) != std::string::npos) meant.push_back(name);
  }
  return meant;
}

std::vector<Finding> of_check(std::vector<Finding> all, const std::string& asked) {
  if (asked.empty()) return all;
  if (plain(asked) == "fatigue") {
    throw base::InputError(asked,
                           "no verdict rests on it, so it is no check: it stands at the end "
                           "of what is explained of a part without CHECK");
  }
  std::vector<std::string> names;
  for (const Finding& f : all) add_once(names, f.check);
  std::vector<std::string> meant = meant_by(plain(asked), names);
  if (meant.empty()) {
    // The table calls some by their place: "root weld".
    for (const Finding& f : all) {
      if (plain(f.where).rfind(plain(asked), 0) == 0) add_once(meant, f.check);
    }
  }
  if (meant.empty()) refuse(asked, "the part has no such check", names);
  if (meant.size() > 1) refuse(asked, "the part has more than one such check", meant);
  std::vector<Finding> found;
  for (Finding& f : all) {
    if (f.check == meant.front()) found.push_back(std::move(f));
  }
  return found;
}

bool is_named(const std::string& load_case, const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [&](const Finding& f) { return f.load_case == load_case; });
}

/// The kinds of which a finding names a case, with those cases alone.
std::vector<ListedKind> kinds_of(const CaseList& cases, const std::vector<Finding>& findings) {
  std::vector<ListedKind> out;
  for (ListedKind kind : cases.kinds) {
    const auto unnamed = [&](const ListedCase& c) { return !is_named(c.name, findings); };
    kind.cases.erase(std::remove_if(kind.cases.begin(), kind.cases.end(), unnamed),
                     kind.cases.end());
    if (!kind.cases.empty()) out.push_back(std::move(kind));
  }
  return out;
}

/// The lives of a part's places, shortest first.
std::optional<Life> life_of_part(const Answer& answer, const std::string& asked) {
  if (!answer.life) return std::nullopt;
  Life life = *answer.life;
  life.places.erase(
      std::remove_if(life.places.begin(), life.places.end(),
                     [&](const LifeAtPlace& place) { return !is_part(place.part, plain(asked)); }),
      life.places.end());
  if (life.places.empty()) return std::nullopt;
  return life;
}

}  // namespace

Explanation explained(const Answer& answer, const CaseList& cases, const std::string& part,
                      const std::string& check) {
  Explanation out;
  out.title = answer.title;
  out.inches = answer.inches;
  out.part = part;
  out.findings = of_check(of_part(answer, part), check);
  if (check.empty()) out.life = life_of_part(answer, part);
  const std::string& first = out.findings.front().part;
  if (std::all_of(out.findings.begin(), out.findings.end(),
                  [&](const Finding& f) { return f.part == first; })) {
    out.part = first;
  }
  out.verdict = verdict_of(out.findings);
  out.kinds = kinds_of(cases, out.findings);
  for (const FailureOrder& order : answer.failure_orders) {
    if (is_named(order.load_case, out.findings)) out.failure_orders.push_back(order);
  }
  return out;
}

Explanation explain(const parts::Design& design, const std::string& part, const std::string& check,
                    const Watch& watch) {
  return explained(run(design, "as drawn", watch, {}, Extras::order_and_life).answer,
                   case_list(design), part, check);
}

}  // namespace studies
