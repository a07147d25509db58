#pragma once

#include <string>

#include "studies/answer.hpp"
#include "studies/case_list.hpp"
#include "studies/pick_grid.hpp"
#include "studies/scatter.hpp"

/// Answers written by hand, with invented numbers, for the tests of the writers.
namespace invented {

inline checks::Finding root_weld() {
  using checks::Measure;
  constexpr double kMpa = base::kMegapascal;
  checks::Finding f;
  f.check = "weld";
  f.part = "bracket";
  f.where = "root weld at the rail";
  f.load_case = "slid into a curb, left wheel";
  f.set = "soft rail, brace end 10 kN/mm, bushings as given";
  f.demand = 330.9 * kMpa;
  f.capacity = 289.6 * kMpa;
  f.measure = Measure::stress;
  f.source = "elastic line method on the throat; nominal 0.60 F_EXX (AISC 360-22 J2.4)";
  f.lines = {
      {"tau = F / A",
       "{0} / {1} = {2}",
       {{40.0e3, Measure::force}, {120.9e-6, Measure::area}, {330.9 * kMpa, Measure::stress}}},
      {"capacity = 0.60 F_EXX",
       "0.60 * {0} = {1}",
       {{482.6 * kMpa, Measure::stress}, {289.6 * kMpa, Measure::stress}}}};
  f.notes = {"the leg decides, not the plate"};
  checks::decide(f, 1.271, 1.5);
  return f;
}

inline checks::Finding column(const std::string& part, double safety_factor, double required) {
  checks::Finding f;
  f.check = "column";
  f.part = part;
  f.where = "between its joints";
  f.load_case = "slid into a curb, right wheel";
  f.set = "stiff rail, brace end rigid, bushings as given";
  f.demand = 40.0e3;
  f.capacity = 40.0e3 * safety_factor;
  f.measure = checks::Measure::force;
  f.source = "AISC 360-22 E3";
  checks::decide(f, safety_factor, required);
  return f;
}

inline checks::Finding yield(const std::string& part, const std::string& where,
                             double safety_factor, double required) {
  checks::Finding f = column(part, safety_factor, required);
  f.check = "yield";
  f.where = where;
  f.measure = checks::Measure::stress;
  f.demand = 200.0e6;
  f.capacity = 200.0e6 * safety_factor;
  f.source = "von Mises";
  return f;
}

inline studies::Figures figures(const std::string& name, studies::Verdict verdict) {
  studies::Figures f;
  f.name = name;
  f.verdict = verdict;
  f.worst = "bracket, weld";
  f.worst_utilization = 1.18;
  f.tip_deflection = {0.0012, 0.0048};
  f.root_moment = {1000.0, 4000.0};
  f.root_moments = {{"soft rail", 1000.0}, {"stiff rail", 4000.0}};
  f.weld_utilization = 1.18;
  f.worst_stress = 331.0e6;
  f.worst_stress_part = "bracket";
  f.critical_factor = 7.9;
  f.mass = 11.3;
  return f;
}

inline studies::Comparison comparison() {
  studies::Comparison c;
  c.title = "lateral link, 9 in drop, braced";
  c.base = figures("as drawn", studies::Verdict::over);
  studies::Figures bare = figures("no brace", studies::Verdict::over);
  bare.root_moment = {4400.0, 4500.0};
  bare.root_moments = {{"soft rail", 4400.0}, {"stiff rail", 4500.0}};
  bare.worst_utilization = 3.62;
  bare.weld_utilization = 3.62;
  studies::Figures bar = figures("1-1/2 in solid bar", studies::Verdict::over);
  bar.mass = 16.0;
  c.variants = {bare, bar};
  return c;
}

/// Shaped like the answer to a lateral link with a braced bracket: three parts, two variants,
/// fourteen assumptions.
inline studies::Answer answer() {
  studies::Answer a;
  a.title = "lateral link, 9 in drop, braced";
  a.verdict = studies::Verdict::over;
  a.findings = {root_weld(),
                yield("bracket", "plates at the rail", 1.31, 1.25),
                column("lateral_link", 2.21, 2.0),
                yield("lateral_link", "frame end", 2.6, 1.5),
                column("brace", 4.02, 1.5),
                yield("brace", "at its first end", 5.1, 1.25)};
  studies::SolvedCase solved;
  solved.load_case = "slid into a curb, left wheel";
  solved.set = "soft rail, brace end 10 kN/mm, bushings as given";
  solved.converged = true;
  solved.residual = 3.0e-12;
  solved.pieces = {{"lateral_link", "", {{-40.0e3, 1.0, 2.0, 3.0, 4.0, 5.0, 40.0e3}}}};
  solved.reactions = {{"bracket root", {{0.0, 40.0e3, 0.0, 4000.0, 0.0, 0.0}}}};
  solved.displacements = {{"bracket bolt", {{0.0, 0.0048, 0.0, 0.001, 0.0, 0.0}}}};
  solved.critical = {{7.9, "lateral_link", false, false, solved.load_case, solved.set}};
  a.solved = {solved};
  a.critical = {{7.9, "lateral_link", false, false, "slid into a curb, right wheel", solved.set}};
  a.own = {{8.1, "lateral_link", false, true, "slid into a curb, right wheel", solved.set},
           {11.0, "brace", false, true, "slid into a curb, left wheel", solved.set}};
  a.load_cases = {"hard corner, turning left: 0.9 x the axle's weight sideways",
                  "slid into a curb, left wheel: 1.75 x the axle's weight sideways"};
  a.balances = {{.load_case = "slid into a curb, left wheel",
                 .set = solved.set,
                 .about = "the middle of the axle, at hub height",
                 .acts = {{"left wheel", {0.0, -42812.5, 24465.0}, {-2000.0, 0.0, 0.0}}},
                 .holds = {{"bracket root", {0.0, 42812.5, -24465.0}, {12.0, 0.0, 0.0}}},
                 .open = 2.0e-12}};
  a.sets = {solved.set, "stiff rail, brace end rigid, bushings as given"};
  a.masses = {{"lateral_link", 4.1}, {"bracket", 4.7}, {"brace", 2.5}};
  a.comparison = comparison();
  a.assumed = {{"vehicle.friction", "0.9", "upper end of dry pavement, from memory"},
               {"vehicle.hub_height", "17.85 in", "0.965 of half the printed tire size"},
               {"vehicle.mass_center_height", "unknown", "full 1.75 x axle weight"},
               {"vehicle.axle_weight", "5500 lb as force", "lb where a force is due"},
               {"lateral_link.tube", "DOM A513", "yield 70 ksi, from memory"},
               {"lateral_link.ends", "weld-on bushing, rubber", "1 and 5 kN/mm"},
               {"bracket.filler", "E70", "common practice, no source"},
               {"bracket.depth_at_bolt", "2.5 in", "half of the depth at the rail"},
               {"bracket.up_the_side", "3 in", "half of the rail's height"},
               {"bracket.rail_stiffness", "15 and 2000 kN m/rad", "proposal, no source"},
               {"bracket plates", "across the truck, bolt along it", "common practice"},
               {"brace.end_mount", "10 kN/mm and rigid", "proposal, no source"},
               {"link bushings", "soft and stiff end of their range", "common practice"},
               {"model", "brace meets the bracket's center line", "this version"}};
  a.not_checked = {"steering and parking loads",
                   "load cases not run: both wheels hit hard, dragged over a rock, hard stop, one "
                   "wheel hits hard",
                   "clearances, travel, steering geometry",
                   "the frame itself, and what holds the parts to the axle"};
  a.not_offered = studies::checks_not_offered();
  return a;
}

/// Two kinds of load case, one that runs and one that does not.
inline studies::CaseList cases() {
  studies::CaseList list;
  list.title = "lateral link, 9 in drop, braced";
  list.of_design = true;
  list.kinds = {{.name = "hard stop",
                 .key = "hard_stop",
                 .routine = true,
                 .posture = "ride height",
                 .factors = "both wheels W",
                 .checks = "arms",
                 .basis = "proposal, no source",
                 .not_run = {},
                 .cases = {{.name = "hard stop",
                            .pushes = {{loads::Role::left_contact, {-8000.0, 0.0, 8000.0}}},
                            .figures = {{"tie rod", 4558.0, loads::Figure::Kind::force}},
                            .others = {},
                            .basis = "stop at 1 g",
                            .runs = true}}},
                {.name = "dry park, lock to lock",
                 .key = "dry_park_lock_to_lock",
                 .routine = true,
                 .posture = "ride height",
                 .factors = "both wheels W",
                 .checks = "tie rod",
                 .basis = "proposal, no source",
                 .not_run = "needs `steering:`",
                 .cases = {}}};
  list.duty = loads::default_duty(false);
  list.duty_basis = loads::default_duty_basis(false);
  return list;
}

inline studies::Candidate candidate(const std::string& label, double mass_per_length,
                                    double utilization) {
  studies::Candidate c;
  c.item.label = label;
  c.item.list = "round tube, inch";
  c.item.inches = true;
  c.item.mark = "common practice";
  c.steel = "DOM";
  c.mass_per_length = mass_per_length;
  c.judged = {.verdict = utilization <= 1.0 ? studies::Verdict::within : studies::Verdict::over,
              .utilization = utilization,
              .part = "lateral_link",
              .check = "column",
              .load_case = "slid into a curb, left wheel"};
  return c;
}

inline studies::Picked picked() {
  studies::Picked p;
  p.title = "lateral link, 9 in drop, braced";
  p.part = "lateral_link";
  p.now = "tube 1.5 x 0.25 in, DOM";
  p.tried = {candidate("1 x 0.120 in tube", 1.68, 3.1),
             candidate("1-1/4 x 0.188 in tube", 3.17, 1.31),
             candidate("1-1/2 x 0.188 in tube", 3.92, 0.93),
             candidate("1-1/2 x 0.250 in tube", 4.97, 0.74)};
  p.next_down = p.tried[1];
  p.lightest = p.tried[2];
  p.next_up = p.tried[3];
  p.n_sizes = p.n_done = 4;
  p.length = 0.8636;
  p.others_over = {"bracket"};
  p.assumed = answer().assumed;
  return p;
}

inline studies::PickedGrid grid() {
  studies::PickedGrid g;
  g.title = "lateral link, 9 in drop, braced";
  g.parts = {"lateral_link", "brace"};
  g.now = {"tube 1.5 x 0.25 in, DOM", "tube 1.75 x 0.156 in, DOM"};
  g.n_designs = 1600;
  g.in_full = 90;
  g.in_part = 1508;
  g.no_sense = 2;
  const auto add = [&](const std::string& link, const std::string& brace, double mass,
                       double utilization) {
    g.best.push_back({.sizes = {link, brace},
                      .steels = {"DOM", "DOM"},
                      .mass = mass,
                      .judged = candidate(link, 1.0, utilization).judged});
  };
  add("1-1/2 x 0.120 in tube", "1-1/2 x 0.120 in tube", 5.2, 0.98);
  add("1-1/2 x 0.120 in tube", "1-3/4 x 0.120 in tube", 5.6, 0.975);
  add("1-3/4 x 0.188 in tube", "1-3/4 x 0.120 in tube", 8.1, 0.61);
  return g;
}

inline studies::Scattered scattered() {
  studies::Scattered s;
  s.title = "lateral link, 9 in drop, braced";
  s.seed = 7;
  s.n_samples = 3;
  s.inputs = {{"lateral_link.wall",
               {studies::Distribution::Kind::normal, 1.0, 0.03},
               "proposal, no source"},
              {"load", {studies::Distribution::Kind::uniform, 0.8, 1.2}, "as asked"}};
  for (const double load : {0.9, 1.0, 1.1}) {
    s.samples.push_back({{1.0, load}, candidate("", 1.0, load).judged});
  }
  s.n_over = 1;
  s.share_over = studies::share_interval(1, 3);
  s.as_drawn = candidate("", 1.0, 1.0).judged;
  s.ranks = {{"load", 1.0}, {"lateral_link.wall", base::kUnset}};
  return s;
}

}  // namespace invented
