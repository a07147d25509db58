#pragma once

#include <string>

#include <catch2/catch.hpp>

#include "cases/reader.hpp"
#include "parts/put_loads.hpp"
#include "studies/balance.hpp"
#include "studies/case_list.hpp"

/// Case files of invented round numbers, read and solved as the program does.
namespace loads_tests {

inline parts::Design read_design(const std::string& text) {
  cases::Reading reading = cases::read(text, "case.yaml");
  for (const base::InputError& problem : reading.problems) UNSCOPED_INFO(problem.what());
  INFO(text);
  REQUIRE(reading.design.has_value());
  return *reading.design;
}

/// A round truck: 16 of 30 kN on the front axle, wheelbase 2.8 m, mass center 0.8 m up.
inline const std::string kVehicle =
    "title: invented\n"
    "vehicle:\n"
    "  axle_weight: 16 kN\n"
    "  tire: 830 mm\n"
    "  hub_height: 400 mm\n"
    "  track: 1.6 m\n"
    "  total_weight: 30 kN\n"
    "  wheelbase: 2.8 m\n"
    "  mass_center_height: 0.8 m\n"
    "  friction: 1.0\n"
    "  unsprung_weight: 2.8 kN\n";

/// What the remaining cases need.
inline const std::string kDrivelineAndStops =
    "  engine_torque: 400 N m\n"
    "  gear: 3.0\n"
    "  transfer: 2.7\n"
    "  final_drive: 4.1\n"
    "  driveline_efficiency: 0.85\n"
    "  slam_speed: 1 m/s\n"
    "  stop_crush: 60 mm\n";

/// Two radius arms on ball joints, each with its two bolts above each other, and a level link
/// `ahead` of the axle.  [m]
inline std::string axle_on_balls(const std::string& ahead) {
  return "points:\n"
         "  link at frame: [" +
         ahead +
         ", 0.45, 0.4 m]\n"
         "  link at axle: [" +
         ahead +
         ", -0.45, 0.4 m]\n"
         "  lower bolt: [0, 0.4, 0.3 m]\n"
         "  upper bolt: [0, 0.4, 0.55 m]\n"
         "  pivot: [-0.9, 0.4, 0.45 m]\n"
         "lateral_link:\n"
         "  frame_bolt: link at frame\n"
         "  axle_bolt: link at axle\n"
         "  tube: 60 x 10 mm E355\n"
         "  ends: weld-on ball joint\n"
         "arm:\n"
         "  axle_lower: lower bolt\n"
         "  axle_upper: upper bolt\n"
         "  frame: pivot\n"
         "  joins_at: 0.4 m\n"
         "  lower: 60 x 10 mm E355\n"
         "  upper: 60 x 10 mm E355\n"
         "  axle_joint: ball joint\n"
         "  frame_joint: ball joint\n"
         "axle:\n"
         "  coil_spacing: 0.9 m\n"
         "  coil_rate: 40 N/mm\n"
         "  bump_travel: 20 mm\n"
         "  stop_rate: 1500 N/mm\n";
}

inline std::string whole_axle(const std::string& more) {
  return kVehicle + kDrivelineAndStops + axle_on_balls("0.1") + more;
}

/// A load case of a design, solved with its first stiffness set.
struct SolvedDesign {
  parts::Design design;
  studies::SetModel model;
  explicit SolvedDesign(const std::string& text)
      : design(read_design(text)), model(design, parts::stiffness_sets(design).front()) {}

  [[nodiscard]] parts::DesignCase load_case(const std::string& name) const {
    for (const parts::DesignCase& c : parts::design_cases(design)) {
      if (c.name == name) return c;
    }
    FAIL("no load case " << name);
    return {};
  }
  [[nodiscard]] studies::CaseSolution solve(const std::string& name) const {
    return model.solve(load_case(name), 1.0);
  }
  [[nodiscard]] studies::Balance balance(const std::string& name) const {
    return studies::balance_of(model, load_case(name), solve(name));
  }
  /// Tension at the first end of a part, in the linear solution.  [N]
  [[nodiscard]] double tension(const std::string& name, const std::string& part) const {
    const studies::CaseSolution solved = solve(name);
    for (const parts::Piece& piece : model.assembly().pieces) {
      if (piece.part == part) return -solved.linear().end_forces(piece.beams.front().beam)[0];
    }
    FAIL("no part " << part);
    return 0.0;
  }
};

/// A row of a balance; zero when there is none.
inline studies::BalanceRow held_by(const studies::Balance& balance, const std::string& what) {
  for (const studies::BalanceRow& row : balance.holds) {
    if (row.what == what) return row;
  }
  return {};
}

/// A figure that a case leads to.
inline double figure(const std::string& text, const std::string& kind, const std::string& what) {
  for (const studies::ListedKind& k : studies::case_list(read_design(text)).kinds) {
    if (k.key != kind) continue;
    INFO(k.not_run);
    REQUIRE_FALSE(k.cases.empty());
    for (const loads::Figure& f : k.cases.front().figures) {
      if (f.what == what) return f.value;
    }
  }
  FAIL("no figure " << what << " of " << kind);
  return 0.0;
}

}  // namespace loads_tests
