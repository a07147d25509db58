#include "report/failure_order_text.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/units_shown.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::FailureOrder;
using studies::GivesAt;

/// A rail's wall yields, and a joint at its tilt stands: neither is broken.
const char* verb_of(const std::string& check) {
  if (check == "rail wall") return "gives";
  if (check == "joint tilt") return "reaches its limit";
  return check == "joint rating" || check == "rated load" ? "is reached" : "breaks";
}

/// "lateral link bends", "bracket, weld breaks"; a tipping axle's name has its verb already.
std::string what_words(const GivesAt& gives) {
  const std::string part = part_words(gives.part);
  switch (gives.how) {
    case GivesAt::How::bends:
      return part + " bends";
    case GivesAt::How::buckles:
      return part + " buckles";
    case GivesAt::How::tips:
      return part;
    case GivesAt::How::breaks:
      break;
  }
  return fmt::format("{}, {} {}", part, gives.check, verb_of(gives.check));
}

}  // namespace

std::string order_words(const FailureOrder& order) {
  constexpr std::size_t kMost = 4;
  if (order.order.empty()) return "nothing, as far as the load was followed";
  std::string words;
  for (std::size_t i = 0; i < std::min(order.order.size(), kMost); ++i) {
    const GivesAt& gives = order.order[i];
    words += fmt::format("{}{}{} at {} times",
                         i == 0   ? ""
                         : i == 1 ? "; then "
                                  : "; ",
                         what_words(gives), i == 0 ? " first," : "", multiple(gives.multiple));
  }
  return words;
}

std::string failure_order_section(const std::vector<FailureOrder>& orders, const TextStyle& style) {
  if (orders.empty()) return "";
  std::string out = heading("Order of failure (about, in multiples of the load case)", style);
  out += paragraph(
      "bars and tubes with 1.25 x their least yield strength, as real ones are stronger than "
      "their certificate (gamma_ov of EN 1998-1 6.2(3), from memory); welds, bolts, joints and "
      "brackets at their nominal one; it ends where the frame buckles",
      style.width, 2, 2);
  for (const FailureOrder& order : orders) {
    out += paragraph(
        fmt::format("{}{}: {}{}", order.load_case, order.set.empty() ? "" : " (" + order.set + ")",
                    order.breaks_first ? "gives before a tube bends: " : "", order_words(order)),
        style.width, 2, 2);
    if (!order.left_out.empty()) {
      out += paragraph("not decided, so not in it: " + part_words(joined(order.left_out, "; ")),
                       style.width, 4, 2);
    }
  }
  return out;
}

std::string breaks_first_sentence(const std::vector<FailureOrder>& orders) {
  const FailureOrder* worst = nullptr;
  const GivesAt* first = nullptr;
  for (const FailureOrder& order : orders) {
    if (!order.breaks_first) continue;
    const auto broken = std::find_if(order.order.begin(), order.order.end(), [](const GivesAt& g) {
      return g.how == GivesAt::How::breaks;
    });
    if (first != nullptr && !(broken->multiple < first->multiple)) continue;
    worst = &order;
    first = &*broken;
  }
  if (worst == nullptr) return "";
  return fmt::format("{} before a tube ({})", what_words(*first), worst->load_case);
}

}  // namespace report
