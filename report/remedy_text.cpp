#include "report/remedy_text.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Answer;
using studies::Remedy;

constexpr const char* kNoSize = "no one size of the case is known to mend it";
constexpr const char* kNotTried = "nothing was tried, to keep a large case short";
constexpr const char* kGoverning = "only where some check is over or near its limit";

std::string then_words(const Remedy& r) {
  return std::isnan(r.utilization) ? "" : fmt::format("then {}", percent(r.utilization));
}

std::string nothing_words(const Remedy& r) {
  const std::string out =
      fmt::format("nothing of {} tried one at a time, up to {}", r.tried, r.most);
  return r.spoils.empty() ? out : out + "; " + part_words(r.spoils);
}

/// Parts whose checks one change mends, or nothing does.
struct Mended {
  std::vector<std::string> parts;
  const Remedy* worst;
};

void add_part(std::vector<Mended>& all, const Remedy& r) {
  const auto same = std::find_if(all.begin(), all.end(), [&](const Mended& m) {
    const Remedy& other = *m.worst;
    return other.change == r.change && other.most == r.most && other.left == r.left &&
           (other.tried == 0) == (r.tried == 0);
  });
  const std::string part = part_words(r.part);
  if (same == all.end()) {
    all.push_back({{part}, &r});
    return;
  }
  if (r.utilization > same->worst->utilization) same->worst = &r;
  if (std::find(same->parts.begin(), same->parts.end(), part) == same->parts.end()) {
    same->parts.push_back(part);
  }
}

/// Whether a part of one item is in another too.
/// @param check  of the other; empty = any
bool is_again(const std::vector<Mended>& all, const Mended& one, const std::string& check = {}) {
  return std::any_of(all.begin(), all.end(), [&](const Mended& other) {
    return &other != &one && (check.empty() || other.worst->check == check) &&
           std::any_of(other.parts.begin(), other.parts.end(), [&](const std::string& part) {
             return std::find(one.parts.begin(), one.parts.end(), part) != one.parts.end();
           });
  });
}

/// What tells an item from the others of its parts: the check, and its place where that is the
/// same.
std::string who_words(const std::vector<Mended>& all, const Mended& one) {
  const Remedy& r = *one.worst;
  std::string out = joined(one.parts, " and ");
  if (!is_again(all, one)) return out;
  out += ", " + r.check;
  const std::string where = r.where.substr(0, r.where.find(','));
  return is_again(all, one, r.check) && !where.empty() ? fmt::format("{} of {}", out, where) : out;
}

std::string item(const std::vector<Mended>& all, const Mended& m) {
  const Remedy& r = *m.worst;
  const std::string who = who_words(all, m);
  if (r.left) return fmt::format("{}: not tried (large case)", who);
  if (r.tried == 0) return fmt::format("{}: {}", who, kNoSize);
  if (r.change.empty()) return fmt::format("{}: {}", who, nothing_words(r));
  const std::string then = then_words(r);
  return fmt::format("{}: {}{}", who, r.change, then.empty() ? "" : " (" + then + ")");
}

}  // namespace

std::string remedy_words(const Answer& answer, const checks::Finding& finding) {
  const auto found =
      std::find_if(answer.remedies.begin(), answer.remedies.end(), [&](const Remedy& r) {
        return r.part == finding.part && r.check == finding.check && r.where == finding.where;
      });
  if (found == answer.remedies.end()) return "";
  if (found->left) return kNotTried;
  if (found->tried == 0) return kNoSize;
  if (found->change.empty()) return "what mends it: " + nothing_words(*found);
  const std::string then = then_words(*found);
  return fmt::format("tried, mends it: {}{}{}", found->change, then.empty() ? "" : ", " + then,
                     found->in_full ? "" : fmt::format(" (solved {})", kGoverning));
}

std::string remedy_lines(const Answer& answer, const TextStyle& style) {
  std::vector<Mended> all;
  bool in_full = true;
  for (const Remedy& r : answer.remedies) {
    add_part(all, r);
    in_full = in_full && (r.in_full || r.change.empty());
  }
  if (all.empty()) return "";
  std::vector<std::string> items;
  for (const Mended& m : all) items.push_back(item(all, m));
  const bool none =
      std::all_of(all.begin(), all.end(), [](const Mended& m) { return m.worst->change.empty(); });
  std::string out = (none ? "what mends it: " : "tried, mends it: ") + joined(items, "; ");
  if (const std::string both = together_words(answer); !both.empty()) out += "; " + both;
  if (!in_full) out += fmt::format(" (solved {})", kGoverning);
  return paragraph(out, style.width, 0, 2);
}

std::string together_words(const Answer& answer) {
  if (!answer.together) return "";
  return fmt::format("all at once: {}, worst {}, {}", verdict_word(answer.together->verdict),
                     part_words(answer.together->worst), percent(answer.together->utilization));
}

}  // namespace report
