#include "report/json.hpp"

#include <array>
#include <cmath>
#include <cstddef>

#include <nlohmann/json.hpp>

#include "report/conclusion_text.hpp"
#include "report/droop_text.hpp"
#include "report/json_keys.hpp"
#include "report/json_parts.hpp"
#include "report/json_words.hpp"
#include "report/units_shown.hpp"
#include "sections/area_props.hpp"

namespace report {

Json value_of(double number) {
  if (std::isnan(number)) return "unset";
  if (std::isinf(number)) return number > 0.0 ? "unlimited" : "unlimited below";
  return number;
}

Json strings(const std::vector<std::string>& items) {
  Json list = Json::array();
  for (const std::string& item : items) list.push_back(item);
  return list;
}

Json assumed(const std::vector<parts::Assumption>& all) {
  return list_of(all, [](const parts::Assumption& a) {
    Json out;
    out["key"] = a.key;
    out["value"] = a.value;
    out["basis"] = a.basis;
    return out;
  });
}

namespace {

constexpr int kFormat = 1;

/// Three of the numbers, from `first` on.
template <std::size_t N>
Json three(const std::array<double, N>& all, std::size_t first) {
  Json list = Json::array();
  for (std::size_t i = first; i < first + 3; ++i) list.push_back(value_of(all[i]));
  return list;
}

Json about(const Program& program) {
  Json keys = Json::object();
  for (const JsonKey& k : json_keys()) keys[std::string(k.key)] = k.meaning;
  Json out;
  out["program"] = "linkmargin";
  out["version"] = program.version;
  out["commit"] = program.commit;
  out["format"] = kFormat;
  out["numbers"] =
      "SI at full precision; \"unset\" = not known or does not apply, \"unlimited\" = infinite";
  out["keys"] = keys;
  return out;
}

Json worked(const checks::WorkedLine& line, bool inches) {
  Json out;
  out["symbols"] = line.symbols;
  out["numbers"] = line.numbers;
  out["text"] = numbers_of(line, inches);
  out["values"] = list_of(line.values, [](const checks::Value& v) {
    Json value;
    value["value"] = value_of(v.si);
    value["unit"] = unit_in_si(v.measure);
    return value;
  });
  return out;
}

Json origin_block(const checks::Origin& origin, bool inches) {
  Json out;
  out["method"] = origin.method;
  out["multiple"] = value_of(origin.multiple);
  out["forces"] =
      list_of(origin.forces, [&](const checks::WorkedLine& line) { return worked(line, inches); });
  return out;
}

Json finding(const checks::Finding& f, bool inches) {
  Json out;
  out["check"] = f.check;
  out["part"] = f.part;
  out["where"] = f.where;
  out["load_case"] = f.load_case;
  out["stiffness_set"] = f.set;
  out["state"] = state_in_words(f.state);
  if (!f.reason.empty()) out["reason"] = f.reason;
  out["demand"] = value_of(f.demand);
  out["first_order_demand"] = value_of(f.first_order);
  out["capacity"] = value_of(f.capacity);
  out["unit"] = unit_in_si(f.measure);
  out["safety_factor"] = value_of(f.safety_factor);
  out["required"] = value_of(f.required);
  out["utilization"] = value_of(f.utilization());
  out["source"] = f.source;
  if (!f.range.empty()) out["holds_for"] = f.range;
  if (!f.origin.method.empty()) out["solved_by"] = origin_block(f.origin, inches);
  out["worked"] =
      list_of(f.lines, [&](const checks::WorkedLine& line) { return worked(line, inches); });
  out["notes"] = strings(f.notes);
  return out;
}

Json critical(const studies::CriticalFactor& c) {
  Json out;
  out["factor"] = value_of(c.factor);
  out["what"] = c.what;
  out["axle_tips"] = c.axle_tips;
  out["load_case"] = c.load_case;
  out["stiffness_set"] = c.set;
  return out;
}

Json end_of(const studies::PieceEnds& piece, std::size_t first) {
  Json out;
  out["force_N"] = three(piece.ends, first);
  out["moment_Nm"] = three(piece.ends, first + 3);
  return out;
}

Json moved(const studies::AtPoint& at) {
  Json point;
  point["point"] = at.point;
  point["displacement_m"] = three(at.value, 0);
  point["rotation_rad"] = three(at.value, 3);
  return point;
}

const char* words_of(studies::GivesAt::How how) {
  switch (how) {
    case studies::GivesAt::How::bends:
      return "bends";
    case studies::GivesAt::How::buckles:
      return "buckles";
    case studies::GivesAt::How::tips:
      return "tips";
    case studies::GivesAt::How::breaks:
      break;
  }
  return "breaks";
}

Json failure_order(const studies::FailureOrder& order) {
  Json out;
  out["load_case"] = order.load_case;
  out["stiffness_set"] = order.set;
  out["before_any_tube_bends"] = order.breaks_first;
  out["order"] = list_of(order.order, [](const studies::GivesAt& gives) {
    Json one;
    one["part"] = gives.part;
    one["check"] = gives.check;
    one["how"] = words_of(gives.how);
    one["about_at"] = value_of(gives.multiple);
    return one;
  });
  if (!order.left_out.empty()) out["left_out"] = strings(order.left_out);
  return out;
}

Json range(const studies::Range& r) {
  Json out;
  out["low"] = value_of(r.low);
  out["high"] = value_of(r.high);
  return out;
}

Json life(const studies::Life& life, bool inches) {
  Json out;
  out["indicative_only"] = true;
  out["band_m"] = range(life.band());
  out["duty_basis"] = life.duty_basis;
  out["places"] = list_of(life.places, [&](const studies::LifeAtPlace& place) {
    Json one;
    one["part"] = place.part;
    one["where"] = place.where;
    one["detail"] = place.detail;
    one["category_Pa"] = value_of(place.category);
    one["nominal_stress"] = place.stress;
    one["stiffness_set"] = place.set;
    one["damage_limit"] = value_of(place.damage_limit);
    one["distance_m"] = value_of(place.distance);
    one["source"] = place.source;
    one["worked"] =
        list_of(place.lines, [&](const checks::WorkedLine& line) { return worked(line, inches); });
    return one;
  });
  out["left_out"] = strings(life.left_out);
  out["without_category"] = strings(life.without_category);
  return out;
}

Json joint_angles(const studies::JointAngles& j) {
  Json out;
  out["part"] = j.part;
  out["where"] = j.where;
  if (!j.ball) out["twist_rad"] = value_of(j.twist);
  out["tilt_rad"] = value_of(j.tilt);
  out["most_tilt_rad"] = value_of(j.most_tilt);
  out["give_m"] = value_of(j.give);
  return out;
}

Json stop_force(const studies::StopForce& stop) {
  Json out;
  out["what"] = stop.name;
  out["force_along_N"] = value_of(stop.force);
  return out;
}

Json axle_place(const studies::AxlePlace& place) {
  Json out;
  out["displacement_m"] = three(place.moved, 0);
  out["rotation_rad"] = three(place.moved, 3);
  out["held_by_ground_N"] = value_of(place.ground_force);
  out["held_by_ground_Nm"] = value_of(place.ground_moment);
  out["stops"] = list_of(place.stops, stop_force);
  out["joints"] = list_of(place.joints, joint_angles);
  return out;
}

Json posture(const studies::PostureExtremes& p) {
  Json out;
  out["posture"] = p.posture;
  out["lowest_m"] = value_of(p.lowest);
  out["highest_m"] = value_of(p.highest);
  out["sideways_m"] = value_of(p.sideways);
  out["roll_rad"] = value_of(p.roll);
  out["held_by_ground_Nm"] = value_of(p.ground_moment);
  out["stops"] = list_of(p.stops, stop_force);
  out["joints"] = list_of(p.joints, joint_angles);
  return out;
}

Json solved(const studies::SolvedCase& s) {
  Json out;
  out["load_case"] = s.load_case;
  out["stiffness_set"] = s.set;
  out["converged"] = s.converged;
  out["method"] = s.method;
  out["posture"] = s.posture;
  if (s.place) out["axle"] = axle_place(*s.place);
  if (!s.trouble.empty()) out["trouble"] = s.trouble;
  out["residual"] = value_of(s.residual);
  out["condition"] = value_of(s.condition);
  if (!s.condition_cause.empty()) out["condition_cause"] = s.condition_cause;
  out["unknowns"] = s.factor.unknowns;
  out["factor_nonzeros"] = s.factor.nonzeros;
  out["factor_bytes_per_nonzero"] = s.factor.bytes_per_nonzero();
  out["pieces"] = list_of(s.pieces, [](const studies::PieceEnds& p) {
    Json piece;
    piece["part"] = p.part;
    if (!p.piece.empty()) piece["piece"] = p.piece;
    piece["end_a"] = end_of(p, 0);
    piece["end_b"] = end_of(p, 6);
    return piece;
  });
  out["reactions"] = list_of(s.reactions, [](const studies::AtPoint& at) {
    Json point;
    point["point"] = at.point;
    point["force_N"] = three(at.value, 0);
    point["moment_Nm"] = three(at.value, 3);
    return point;
  });
  out["displacements"] = list_of(s.displacements, moved);
  out["first_order_displacements"] = list_of(s.first_order, moved);
  out["critical"] = list_of(s.critical, critical);
  out["reversed_factors"] = list_of(s.reversed, value_of);
  out["cannot_buckle"] = s.cannot_buckle;
  return out;
}

Json balance_row(const studies::BalanceRow& row) {
  Json out;
  out["what"] = row.what;
  out["force_N"] = three(row.force, 0);
  out["moment_Nm"] = three(row.moment, 0);
  return out;
}

Json balance(const studies::Balance& b) {
  Json out;
  out["load_case"] = b.load_case;
  out["stiffness_set"] = b.set;
  out["moments_about"] = b.about;
  out["acts"] = list_of(b.acts, balance_row);
  out["holds"] = list_of(b.holds, balance_row);
  out["left_over"] = value_of(b.open);
  return out;
}

Json figure(const loads::Figure& f) {
  Json out;
  out["what"] = f.what;
  out["value"] = value_of(f.value);
  out["unit"] = f.kind == loads::Figure::Kind::force    ? "N"
                : f.kind == loads::Figure::Kind::moment ? "N m"
                                                        : "m";
  return out;
}

Json listed_case(const studies::ListedCase& c) {
  Json out;
  out["name"] = c.name;
  out["runs"] = c.runs;
  out["pushes"] = list_of(c.pushes, [](const loads::Push& push) {
    Json one;
    one["what"] = loads::push_words(push);
    one["force_N"] = three(push.force, 0);
    one["moment_Nm"] = three(push.moment, 0);
    return one;
  });
  if (!c.others.empty()) out["other_loads"] = strings(c.others);
  out["leads_to"] = list_of(c.figures, figure);
  out["basis"] = c.basis;
  return out;
}

Json listed_kind(const studies::ListedKind& kind) {
  Json out;
  out["name"] = kind.name;
  out["key"] = kind.key;
  out["class"] = kind.routine ? "routine" : "abuse";
  out["posture"] = kind.posture;
  out["loads"] = kind.factors;
  out["checks"] = kind.checks;
  out["basis"] = kind.basis;
  if (!kind.not_run.empty()) out["not_run"] = kind.not_run;
  if (!kind.cases.empty()) out["cases"] = list_of(kind.cases, listed_case);
  return out;
}

Json duty_block(const loads::DutyBlock& block) {
  Json out;
  out["from"] = block.from;
  out["to"] = block.to;
  out["per_1000_km"] = value_of(block.per_1000_km);
  out["sizes"] = block.spread == loads::Spread::full       ? "all full"
                 : block.spread == loads::Spread::straight ? "straight line"
                                                           : "bell curve";
  return out;
}

Json figures(const studies::Figures& f) {
  Json out;
  out["name"] = f.name;
  out["verdict"] = verdict_in_words(f.verdict);
  out["worst"] = f.worst;
  out["worst_utilization"] = value_of(f.worst_utilization);
  out["parts"] = list_of(f.parts, [](const studies::PartUtilization& p) {
    Json of_part;
    of_part["part"] = p.part;
    of_part["utilization"] = value_of(p.utilization);
    of_part["check"] = p.check;
    return of_part;
  });
  out["tip_deflection_m"] = range(f.tip_deflection);
  out["root_moment_Nm"] = range(f.root_moment);
  out["root_moments"] = list_of(f.root_moments, [](const studies::RootMoment& at) {
    Json one;
    one["rail"] = at.rail;
    one["largest_Nm"] = value_of(at.moment);
    return one;
  });
  out["weld_utilization"] = value_of(f.weld_utilization);
  out["worst_stress_Pa"] = value_of(f.worst_stress);
  out["worst_stress_part"] = f.worst_stress_part;
  out["critical_factor"] = value_of(f.critical_factor);
  out["mass_kg"] = value_of(f.mass);
  if (!f.beware.empty()) out["beware"] = strings(f.beware);
  return out;
}

Json designs(const studies::Comparison& c) {
  Json out;
  out["base"] = figures(c.base);
  out["variants"] = list_of(c.variants, figures);
  out["could_not_be_run"] = strings(c.failures);
  if (!c.unfinished.empty()) out["stopped_before_their_end"] = strings(c.unfinished);
  return out;
}

Json stock_size(const sections::StockItem& item) {
  const sections::AreaProps p = sections::area_props(item.shape);
  Json out;
  out["size"] = item.label;
  out["mark"] = item.mark;
  out["area_m2"] = value_of(p.area);
  out["iyy_m4"] = value_of(p.iyy);
  out["izz_m4"] = value_of(p.izz);
  out["torsion_m4"] = value_of(p.torsion);
  out["shear_y_m2"] = value_of(p.shear_y);
  out["shear_z_m2"] = value_of(p.shear_z);
  out["modulus_y_m3"] = value_of(p.modulus_y);
  out["modulus_z_m3"] = value_of(p.modulus_z);
  out["plastic_y_m3"] = value_of(p.plastic_y);
  out["plastic_z_m3"] = value_of(p.plastic_z);
  out["radius_y_m"] = value_of(p.radius_y);
  out["radius_z_m"] = value_of(p.radius_z);
  out["axes_angle_rad"] = value_of(p.axes_angle);
  out["shear_center_m"] = Json::array({value_of(p.shear_center_y), value_of(p.shear_center_z)});
  return out;
}

Json material(const sections::Material& m) {
  Json out;
  out["name"] = m.id;
  out["description"] = m.description;
  out["young_Pa"] = value_of(m.elastic);
  out["poisson"] = value_of(m.poisson);
  out["density_kg_m3"] = value_of(m.density);
  out["yield_Pa"] = value_of(m.yield);
  out["tensile_Pa"] = value_of(m.tensile);
  out["weld_zone_yield_Pa"] = value_of(m.haz_yield);
  out["weld_zone_tensile_Pa"] = value_of(m.haz_tensile);
  out["thickness_over_m"] = value_of(m.thickness_over);
  out["thickness_to_m"] = value_of(m.thickness_to);
  out["basis"] = m.basis;
  out["weld_zone_basis"] = m.haz_basis;
  out["mark"] = m.mark;
  out["source"] = m.source;
  return out;
}

Json droop(const studies::Droop& d) {
  Json out;
  out["ends"] = list_of(d.ends, [](const studies::DroopEnd& end) {
    Json one;
    one["what"] = end.what;
    one["drop_m"] = value_of(end.drop);
    return one;
  });
  out["free_travel_m"] = value_of(d.free_travel);
  out["advised_m"] = value_of(d.advised);
  out["stretched_m"] = value_of(d.stretched);
  out["hangs_m"] = value_of(d.hangs);
  out["joint_at_tilt_m"] = value_of(d.joint_at_tilt);
  return out;
}

Json bump(const studies::Bump& b) {
  Json out;
  out["ends"] = list_of(b.ends, [](const studies::DroopEnd& end) {
    Json one;
    one["what"] = end.what;
    one["rise_m"] = value_of(end.drop);
    return one;
  });
  out["full_m"] = value_of(b.full);
  out["solved_m"] = value_of(b.solved);
  return out;
}

Json rated_point(const studies::RatedPoint& p, bool inches) {
  Json out;
  out["value_SI"] = value_of(p.value);
  if (!p.refused.empty()) {
    out["refused"] = p.refused;
    return out;
  }
  out["verdict"] = verdict_in_words(p.verdict);
  if (p.worst) out["worst_finding"] = finding(*p.worst, inches);
  return out;
}

Json rated(const studies::Rated& d, bool inches) {
  Json out;
  out["name"] = d.name;
  if (!d.failure.empty()) out["failure"] = d.failure;
  const auto add = [&](const char* key, const std::optional<studies::RatedPoint>& point) {
    if (point) out[key] = rated_point(*point, inches);
  };
  add("fails_below", d.fails_below);
  add("holds_from", d.holds_from);
  add("holds_up_to", d.holds_to);
  if (!std::isnan(d.limit)) {
    out["limit_SI"] = value_of(d.limit);
    out["proved"] = d.proved;
  }
  if (d.stopped) out["stopped"] = true;
  add("fails_at", d.fails_at);
  out["to_the_end"] = d.to_the_end;
  out["holds_again"] = d.holds_again;
  if (!d.beware.empty()) out["beware"] = strings(d.beware);
  out["values_tried"] =
      list_of(d.points, [&](const studies::RatedPoint& p) { return rated_point(p, inches); });
  return out;
}

Json remedy(const studies::Remedy& r) {
  Json out;
  out["part"] = r.part;
  out["check"] = r.check;
  out["where"] = r.where;
  out["mended_by"] = r.change;
  out["utilization_then"] = value_of(r.utilization);
  out["changes_solved"] = r.tried;
  out["farthest_tried"] = r.most;
  out["would_but"] = r.spoils;
  out["in_all_load_cases"] = r.in_full;
  out["not_tried"] = r.left;
  return out;
}

}  // namespace

Json opening(const Program& program, const std::string& title, bool inches) {
  Json out;
  out["about"] = about(program);
  out["cautions"] = strings(studies::cautions());
  out["title"] = title;
  out["units_of_the_case"] = inches ? "inch" : "metric";
  out["not_offered"] = strings(studies::checks_not_offered());
  return out;
}

void add_scope(Json& out, const studies::Scope& scope) {
  out["load_cases_run"] = scope.cases_run;
  out["load_cases_known"] = scope.cases_known;
  out["stacks_assumed_clamped"] = strings(scope.stacks_assumed);
}

std::string dumped(const Json& out) {
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string json(const studies::Answer& answer, const Program& program) {
  Json out = opening(program, answer.title, answer.inches);
  out["not_offered"] = strings(answer.not_offered);
  add_scope(out, answer.scope);
  out["verdict"] = verdict_in_words(answer.verdict);
  out["findings"] =
      list_of(answer.findings, [&](const checks::Finding& f) { return finding(f, answer.inches); });
  out["remedies"] = list_of(answer.remedies, remedy);
  if (answer.together) {
    Json& both = out["remedies_together"];
    both["verdict"] = verdict_in_words(answer.together->verdict);
    both["worst"] = answer.together->worst;
    both["utilization"] = value_of(answer.together->utilization);
  }
  out["critical"] = list_of(answer.critical, critical);
  out["own_critical"] = list_of(answer.own, critical);
  out["load_cases"] = strings(answer.load_cases);
  out["balances"] = list_of(answer.balances, balance);
  out["stiffness_sets"] = strings(answer.sets);
  out["solved"] = list_of(answer.solved, solved);
  out["masses"] = list_of(answer.masses, [](const studies::PartMass& m) {
    Json mass;
    mass["part"] = m.part;
    mass["mass_kg"] = value_of(m.mass);
    return mass;
  });
  out["failure_orders"] = list_of(answer.failure_orders, failure_order);
  if (answer.life) out["life"] = life(*answer.life, answer.inches);
  if (!answer.postures.empty()) out["postures"] = list_of(answer.postures, posture);
  if (answer.droop) out["droop"] = droop(*answer.droop);
  if (answer.bump) out["bump"] = bump(*answer.bump);
  if (!answer.beyond_travel.empty()) {
    out["beyond_travel"] = list_of(answer.beyond_travel, [&](const studies::BeyondTravel& beyond) {
      return beyond_travel_words(beyond, answer.inches);
    });
  }
  if (answer.comparison) out["comparison"] = designs(*answer.comparison);
  out["assumed"] = assumed(answer.assumed);
  out["not_checked"] = strings(answer.not_checked);
  return dumped(out);
}

std::string json(const studies::Comparison& comparison, const Program& program) {
  Json out = opening(program, comparison.title, comparison.inches);
  add_scope(out, comparison.scope);
  const Json both = designs(comparison);
  for (const auto& item : both.items()) out[item.key()] = item.value();
  out["conclusions"] = Json::array();
  for (std::size_t i = 0; i < comparison.variants.size(); ++i) {
    out["conclusions"].push_back(conclusion(comparison, i));
  }
  return dumped(out);
}

std::string json(const studies::Rating& rating, const Program& program) {
  Json out = opening(program, rating.title, rating.inches);
  add_scope(out, rating.scope);
  out["over"] = rating.span.path;
  out["now_SI"] = value_of(rating.now.si);
  out["from_SI"] = value_of(rating.span.from);
  out["to_SI"] = value_of(rating.span.to);
  out["shown_unit"] = rating.now.unit;
  out["shown_unit_SI"] = value_of(rating.now.factor);
  out["designs"] =
      list_of(rating.designs, [&](const studies::Rated& d) { return rated(d, rating.inches); });
  return dumped(out);
}

std::string json(const studies::Explanation& explanation, const Program& program) {
  Json out = opening(program, explanation.title, explanation.inches);
  out["part"] = explanation.part;
  out["verdict"] = verdict_in_words(explanation.verdict);
  out["findings"] = list_of(explanation.findings, [&](const checks::Finding& f) {
    return finding(f, explanation.inches);
  });
  out["load_cases"] = list_of(explanation.kinds, listed_kind);
  out["failure_orders"] = list_of(explanation.failure_orders, failure_order);
  if (explanation.life) out["life"] = life(*explanation.life, explanation.inches);
  return dumped(out);
}

std::string json(const std::vector<sections::StockList>& lists,
                 const std::vector<sections::PlateList>& plates, const Program& program) {
  Json out;
  out["about"] = about(program);
  out["cautions"] = strings(studies::cautions());
  out["lists"] = list_of(lists, [](const sections::StockList& list) {
    Json one;
    one["list"] = list.name;
    one["source"] = list.source;
    one["sizes"] = list_of(list.items, stock_size);
    return one;
  });
  out["plates"] = list_of(plates, [](const sections::PlateList& list) {
    Json one;
    one["list"] = list.name;
    one["source"] = list.source;
    one["sizes"] = list_of(list.sizes, [](const sections::PlateSize& size) {
      Json plate;
      plate["size"] = size.label;
      plate["thickness_m"] = value_of(size.thickness);
      plate["mark"] = size.mark;
      return plate;
    });
    return one;
  });
  return dumped(out);
}

std::string json(const std::vector<sections::Material>& materials, const Program& program) {
  Json out;
  out["about"] = about(program);
  out["cautions"] = strings(studies::cautions());
  out["materials"] = list_of(materials, material);
  return dumped(out);
}

std::string json(const studies::CaseList& list, const Program& program) {
  Json out = opening(program, list.title, list.inches);
  out["load_cases"] = list_of(list.kinds, listed_kind);
  out["duty"] = list_of(list.duty, duty_block);
  out["duty_basis"] = list.duty_basis;
  return dumped(out);
}

}  // namespace report
