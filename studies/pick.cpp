#include "studies/pick.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/validate.hpp"
#include "sections/area_props.hpp"
#include "studies/run.hpp"

namespace studies {
namespace {

/// The stick that `part` names, inside a design.
parts::Stick* stick_of(parts::Design& design, const std::string& part) {
  if (part == "lateral_link" && design.lateral_link) return &design.lateral_link->stick;
  if (part == "brace" && design.brace) return &design.brace->stick;
  if (part == "arm.lower" && design.arm) return &design.arm->lower;
  if (part == "arm" && design.arm && !parts::has_upper_arm(*design.arm)) return &design.arm->lower;
  if (part == "arm.upper" && design.arm && parts::has_upper_arm(*design.arm)) {
    return &design.arm->upper;
  }
  if (part == "steering.drag_link" && design.steering) return &design.steering->drag_link;
  if (part == "steering.tie_rod" && design.steering) return &design.steering->tie_rod;
  for (parts::Named<parts::Member>& member : design.members) {
    if (member.name == part) return &member.value.stick;
  }
  return nullptr;
}

std::string parts_to_pick(const parts::Design& design) {
  std::string names;
  const auto add = [&](const std::string& name) { names += (names.empty() ? "" : ", ") + name; };
  if (design.lateral_link) add("lateral_link");
  if (design.brace) add("brace");
  if (design.arm) add("arm.lower");
  if (design.arm && parts::has_upper_arm(*design.arm)) add("arm.upper");
  if (design.steering) {
    add("steering.drag_link");
    add("steering.tie_rod");
  }
  for (const parts::Named<parts::Member>& member : design.members) add(member.name);
  return names;
}

/// A round shape's outside; nothing for others.
std::optional<double> round_outside(const sections::Shape& shape) {
  if (const auto* tube = std::get_if<sections::RoundTube>(&shape)) return tube->outside;
  if (const auto* bar = std::get_if<sections::RoundBar>(&shape)) return bar->diameter;
  return std::nullopt;
}

bool same_outside(const sections::Shape& a, const sections::Shape& b) {
  // Listed sizes are rounded to a thousandth of an inch or a tenth of a millimeter.
  const auto same = [](double x, double y) { return std::abs(x - y) < 1.0e-5; };
  if (const auto* box_a = std::get_if<sections::RectangularTube>(&a)) {
    const auto* box_b = std::get_if<sections::RectangularTube>(&b);
    if (box_b == nullptr) return false;
    return same(box_a->depth, box_b->depth) && same(box_a->width, box_b->width);
  }
  const std::optional<double> round_a = round_outside(a);
  const std::optional<double> round_b = round_outside(b);
  return round_a && round_b && same(*round_a, *round_b);
}

/// Tubes keep the steel of a tube that is there, bars that of a bar; else the usual one. Each in
/// the row of its list that holds for the thickness.
sections::Material steel_for(const parts::Stick& now, const sections::Shape& shape) {
  const bool bar = std::holds_alternative<sections::RoundBar>(shape);
  const sections::Material steel = now.shape.index() == shape.index()
                                       ? now.material
                                       : *sections::find_material(bar ? "1018" : "DOM");
  const double thickness = sections::governing_thickness(shape);
  if (steel.covers(thickness)) return steel;
  const sections::Material* row = sections::same_steel_for(steel, thickness);
  return row == nullptr ? steel : *row;
}

/// The tube of the same arm that is not picked, as findings name it; empty for other parts.
std::string other_tube(const parts::Design& design, const std::string& part) {
  if (!design.arm || !parts::has_upper_arm(*design.arm)) return "";
  if (part == "arm.lower") return "upper tube";
  return part == "arm.upper" ? "lower tube" : "";
}

enum class Effort {
  until_fails,  ///< as far as the first load case and set in which the part does not pass
  whole,
};

Candidate tried(const parts::Design& design, const std::string& part,
                const sections::StockItem& item, const parts::Stick& now, Effort effort) {
  parts::Design changed = design;
  changed.variants.clear();
  parts::Stick& stick = *stick_of(changed, part);
  stick = {item.shape, steel_for(now, item.shape)};
  Candidate candidate{
      .item = item,
      .steel = stick.material.description,
      .mass_per_length = sections::area_props(item.shape).area * stick.material.density};
  if (const std::vector<base::InputError> broken = cases::broken_rules(changed); !broken.empty()) {
    candidate.stopped_by = broken.front().problem();
    return candidate;
  }
  const Answer answer = effort == Effort::whole ? run(changed, item.label, {}, part).answer
                                                : run_until_fails(changed, item.label, part).answer;
  candidate.verdict = Verdict::within;
  candidate.utilization = 0.0;
  for (const checks::Finding& f : answer.findings) {
    if (!belongs(f.part, part)) continue;
    if (f.state == checks::State::undecided) {
      candidate.verdict = Verdict::not_decided;
      candidate.stopped_by = fmt::format("{}, {}: {}", f.check, f.load_case, f.reason);
      break;
    }
    if (f.utilization() > candidate.utilization) {
      candidate.utilization = f.utilization();
      if (f.state == checks::State::over) {
        candidate.verdict = Verdict::over;
        candidate.stopped_by = fmt::format("{}, {}", f.check, f.load_case);
      }
    }
  }
  return candidate;
}

}  // namespace

Picked pick(const parts::Design& design, const std::string& part, const Watch& watch,
            const std::vector<sections::StockItem>& more, const Spread& spread) {
  parts::Design base = design;
  const parts::Stick* now = stick_of(base, part);
  if (now == nullptr) {
    throw base::InputError(part, fmt::format("there is no such part made of bar or tube; there is "
                                             "{}",
                                             parts_to_pick(design)));
  }
  std::vector<sections::StockItem> stock = sections::stock_like(now->shape, design.inches, more);
  if (stock.empty()) {
    throw base::InputError(
        part,
        fmt::format("no list holds sizes like it ({}); the built-in ones hold bars, round and "
                    "rectangular tubes and flat bars, and --stock FILE adds others",
                    sections::describe(now->shape, design.inches)));
  }
  Picked out{.title = design.title,
             .inches = design.inches,
             .part = part,
             .now = fmt::format("{}, {}", sections::describe(now->shape, design.inches),
                                now->material.description),
             .tried = {},
             .lightest = {},
             .next_down = {},
             .next_up = {},
             .same_outside = {},
             .others_over = false,
             .other_tube_over = {},
             .assumed = {}};
  const auto lighter = [](const sections::StockItem& a, const sections::StockItem& b) {
    return sections::area_props(a.shape).area < sections::area_props(b.shape).area;
  };
  std::stable_sort(stock.begin(), stock.end(), lighter);
  out.tried.resize(stock.size());
  spread_out(spread, stock.size(), [&](std::size_t i) {
    const double fraction = static_cast<double>(i) / static_cast<double>(stock.size());
    if (watch && watch({fraction, stock[i].label}) == Go::stop) throw Stopped{};
    out.tried[i] = tried(design, part, stock[i], *now, Effort::until_fails);
  });
  for (std::size_t i = 0; i < out.tried.size(); ++i) {
    const Candidate& candidate = out.tried[i];
    if (candidate.verdict != Verdict::within) continue;
    if (!out.lightest) {
      out.lightest = candidate;
      if (i > 0) {
        out.tried[i - 1] = tried(design, part, out.tried[i - 1].item, *now, Effort::whole);
        out.next_down = out.tried[i - 1];
      }
    } else if (!out.next_up) {
      out.next_up = candidate;
    }
    if (!out.same_outside && same_outside(candidate.item.shape, now->shape)) {
      out.same_outside = candidate;
    }
  }
  const Answer as_drawn = run(design, "as drawn", {}).answer;
  out.assumed = as_drawn.assumed;
  const std::string other = other_tube(design, part);
  for (const checks::Finding& f : as_drawn.findings) {
    if (f.state == checks::State::within) continue;
    if (!belongs(f.part, part))
      out.others_over = true;
    else if (!other.empty() && f.where.rfind(other, 0) == 0)
      out.other_tube_over = other;
  }
  return out;
}

}  // namespace studies
