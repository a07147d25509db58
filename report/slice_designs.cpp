#include "report/slice_designs.hpp"

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "base/input_error.hpp"

namespace report {
namespace {

double number_from(const Json& in) {
  if (in.is_number()) return in.get<double>();
  const auto word = in.get<std::string>();
  if (word == value_of(base::kUnset)) return base::kUnset;
  if (word == value_of(std::numeric_limits<double>::infinity())) {
    return std::numeric_limits<double>::infinity();
  }
  throw base::InputError(word, "is no number");
}

/// @param n  one more than the last of the enumeration
template <class Choice>
Choice choice_from(const Json& in, int n) {
  const int value = in.get<int>();
  if (value < 0 || value >= n) throw base::InputError(in.dump(), "is none of its choices");
  return static_cast<Choice>(value);
}

template <class Item, class Reader>
std::vector<Item> items_from(const Json& in, Reader read) {
  std::vector<Item> out;
  for (const Json& one : in) out.push_back(read(one));
  return out;
}

std::string text_from(const Json& in) {
  return in.get<std::string>();
}

Json line_json(const checks::WorkedLine& line) {
  Json values = list_of(line.values, [](const checks::Value& v) {
    return Json::array({value_of(v.si), static_cast<int>(v.measure)});
  });
  return Json::array({line.symbols, line.numbers, std::move(values)});
}

constexpr int kMeasures = static_cast<int>(checks::Measure::second_moment) + 1;

checks::WorkedLine line_from(const Json& in) {
  return {.symbols = text_from(in.at(0)),
          .numbers = text_from(in.at(1)),
          .values = items_from<checks::Value>(in.at(2), [](const Json& one) {
            return checks::Value{number_from(one.at(0)),
                                 choice_from<checks::Measure>(one.at(1), kMeasures)};
          })};
}

Json finding_json(const checks::Finding& f) {
  Json out;
  out["check"] = f.check;
  out["part"] = f.part;
  out["where"] = f.where;
  out["load_case"] = f.load_case;
  out["set"] = f.set;
  out["demand"] = value_of(f.demand);
  out["capacity"] = value_of(f.capacity);
  out["first_order"] = value_of(f.first_order);
  out["measure"] = static_cast<int>(f.measure);
  out["safety_factor"] = value_of(f.safety_factor);
  out["required"] = value_of(f.required);
  out["state"] = static_cast<int>(f.state);
  out["reason"] = f.reason;
  out["source"] = f.source;
  out["range"] = f.range;
  out["lines"] = list_of(f.lines, line_json);
  out["notes"] = strings(f.notes);
  out["method"] = f.origin.method;
  out["multiple"] = value_of(f.origin.multiple);
  out["forces"] = list_of(f.origin.forces, line_json);
  return out;
}

checks::Finding finding_from(const Json& in) {
  return {.check = text_from(in.at("check")),
          .part = text_from(in.at("part")),
          .where = text_from(in.at("where")),
          .load_case = text_from(in.at("load_case")),
          .set = text_from(in.at("set")),
          .demand = number_from(in.at("demand")),
          .capacity = number_from(in.at("capacity")),
          .first_order = number_from(in.at("first_order")),
          .measure = choice_from<checks::Measure>(in.at("measure"), kMeasures),
          .safety_factor = number_from(in.at("safety_factor")),
          .required = number_from(in.at("required")),
          .state = choice_from<checks::State>(in.at("state"), 3),
          .reason = text_from(in.at("reason")),
          .source = text_from(in.at("source")),
          .range = text_from(in.at("range")),
          .lines = items_from<checks::WorkedLine>(in.at("lines"), line_from),
          .notes = items_from<std::string>(in.at("notes"), text_from),
          .origin = {.method = text_from(in.at("method")),
                     .multiple = number_from(in.at("multiple")),
                     .forces = items_from<checks::WorkedLine>(in.at("forces"), line_from)}};
}

Json point_json(const studies::RatedPoint& p) {
  Json out;
  out["value"] = value_of(p.value);
  out["verdict"] = static_cast<int>(p.verdict);
  if (p.worst) out["worst"] = finding_json(*p.worst);
  out["refused"] = p.refused;
  return out;
}

studies::RatedPoint point_from(const Json& in) {
  studies::RatedPoint out{.value = number_from(in.at("value")),
                          .verdict = choice_from<studies::Verdict>(in.at("verdict"), 3)};
  if (in.contains("worst")) out.worst = finding_from(in.at("worst"));
  out.refused = text_from(in.at("refused"));
  return out;
}

std::optional<studies::RatedPoint> point_at(const Json& in, const char* key) {
  return in.contains(key) ? std::optional(point_from(in.at(key))) : std::nullopt;
}

Json range_json(const studies::Range& range) {
  return Json::array({value_of(range.low), value_of(range.high)});
}

studies::Range range_from(const Json& in) {
  return {number_from(in.at(0)), number_from(in.at(1))};
}

Json figures_json(const studies::Figures& f) {
  Json out;
  out["name"] = f.name;
  out["verdict"] = static_cast<int>(f.verdict);
  out["worst"] = f.worst;
  out["worst_utilization"] = value_of(f.worst_utilization);
  out["parts"] = list_of(f.parts, [](const studies::PartUtilization& p) {
    return Json::array({p.part, value_of(p.utilization), p.check});
  });
  out["tip_deflection"] = range_json(f.tip_deflection);
  out["root_moment"] = range_json(f.root_moment);
  out["root_moments"] = list_of(f.root_moments, [](const studies::RootMoment& m) {
    return Json::array({m.rail, value_of(m.moment)});
  });
  out["weld_utilization"] = value_of(f.weld_utilization);
  out["worst_stress"] = value_of(f.worst_stress);
  out["worst_stress_part"] = f.worst_stress_part;
  out["critical_factor"] = value_of(f.critical_factor);
  out["mass"] = value_of(f.mass);
  out["beware"] = strings(f.beware);
  return out;
}

studies::Figures figures_from(const Json& in) {
  return {.name = text_from(in.at("name")),
          .verdict = choice_from<studies::Verdict>(in.at("verdict"), 3),
          .worst = text_from(in.at("worst")),
          .worst_utilization = number_from(in.at("worst_utilization")),
          .parts = items_from<studies::PartUtilization>(
              in.at("parts"),
              [](const Json& one) {
                return studies::PartUtilization{text_from(one.at(0)), number_from(one.at(1)),
                                                text_from(one.at(2))};
              }),
          .tip_deflection = range_from(in.at("tip_deflection")),
          .root_moment = range_from(in.at("root_moment")),
          .root_moments = items_from<studies::RootMoment>(
              in.at("root_moments"),
              [](const Json& one) {
                return studies::RootMoment{text_from(one.at(0)), number_from(one.at(1))};
              }),
          .weld_utilization = number_from(in.at("weld_utilization")),
          .worst_stress = number_from(in.at("worst_stress")),
          .worst_stress_part = text_from(in.at("worst_stress_part")),
          .critical_factor = number_from(in.at("critical_factor")),
          .mass = number_from(in.at("mass")),
          .beware = items_from<std::string>(in.at("beware"), text_from)};
}

}  // namespace

Json rated_piece(const studies::Rated& rated) {
  Json out;
  out["name"] = rated.name;
  out["points"] = list_of(rated.points, point_json);
  if (rated.holds_from) out["holds_from"] = point_json(*rated.holds_from);
  if (rated.holds_to) out["holds_to"] = point_json(*rated.holds_to);
  out["limit"] = value_of(rated.limit);
  out["proved"] = rated.proved;
  out["to_the_end"] = rated.to_the_end;
  if (rated.fails_at) out["fails_at"] = point_json(*rated.fails_at);
  if (rated.fails_below) out["fails_below"] = point_json(*rated.fails_below);
  out["holds_again"] = rated.holds_again;
  out["beware"] = strings(rated.beware);
  out["failure"] = rated.failure;
  return out;
}

Json compared_piece(const studies::Compared& compared) {
  Json out;
  out["figures"] = figures_json(compared.figures);
  out["failure"] = compared.failure;
  return out;
}

studies::Rated rated_from(const Json& in) {
  return {.name = text_from(in.at("name")),
          .points = items_from<studies::RatedPoint>(in.at("points"), point_from),
          .holds_from = point_at(in, "holds_from"),
          .holds_to = point_at(in, "holds_to"),
          .limit = number_from(in.at("limit")),
          .proved = in.at("proved").get<bool>(),
          .to_the_end = in.at("to_the_end").get<bool>(),
          .fails_at = point_at(in, "fails_at"),
          .fails_below = point_at(in, "fails_below"),
          .holds_again = in.at("holds_again").get<bool>(),
          .beware = items_from<std::string>(in.at("beware"), text_from),
          .failure = text_from(in.at("failure"))};
}

studies::Compared compared_from(const Json& in) {
  return {.figures = figures_from(in.at("figures")), .failure = text_from(in.at("failure"))};
}

}  // namespace report
