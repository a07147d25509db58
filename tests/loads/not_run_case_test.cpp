// Which load cases a design runs, and what is said of the others.
#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "studies/check.hpp"
#include "tests/loads/read_design.hpp"

namespace not_run_case_test {
using Catch::Matchers::Contains;
using loads_tests::read_design;

namespace {

std::string link_alone(const std::string& more) {
  return loads_tests::kVehicle +
         "lateral_link:\n"
         "  bolt_to_bolt: 0.9 m\n"
         "  rise: 0.1 m\n"
         "  tube: 60 x 10 mm E355\n"
         "  ends: weld-on bushing\n" +
         more;
}

/// The axle without the numbers that only some cases need.
std::string bare_axle(const std::string& vehicle, const std::string& more) {
  return "title: invented\n"
         "vehicle: {axle_weight: 16 kN, tire: 830 mm, track: 1.6 m" +
         vehicle + "}\n" + loads_tests::axle_on_balls("0.1") + more;
}

std::vector<std::string> names_run(const std::string& text) {
  std::vector<std::string> names;
  for (const parts::DesignCase& c : parts::design_cases(read_design(text))) names.push_back(c.name);
  return names;
}

std::string reason(const std::string& text, const std::string& name) {
  for (const parts::CaseNotRun& c : parts::cases_not_run(read_design(text))) {
    if (c.name == name) return c.reason;
  }
  return "it runs";
}

}  // namespace

TEST_CASE("a link without an axle runs corner and curb, and says so of the rest", "[loads]") {
  CHECK(names_run(link_alone("")) ==
        std::vector<std::string>{"hard corner, turning left", "hard corner, turning right",
                                 "slid into a curb, left wheel", "slid into a curb, right wheel"});
  CHECK(parts::cases_not_run(read_design(link_alone(""))).size() == 14);
  CHECK(reason(link_alone(""), "hard stop") == "not in the default set without `axle:`");
}

TEST_CASE("a case that would load nothing of the design is not run, and not passed over",
          "[loads]") {
  const std::string text = link_alone("load_cases: [hard corner, both wheels hit hard]\n");
  CHECK(names_run(text).size() == 2);
  CHECK(reason(text, "both wheels hit hard") == "needs `axle:`");
  const std::string none = link_alone("load_cases: [both wheels hit hard, full cross-up]\n");
  CHECK_THROWS_WITH(studies::check(read_design(none)),
                    Contains("load_cases: none of these can be solved") &&
                        Contains("both wheels hit hard: needs `axle:`"));
}

TEST_CASE("a case whose posture is not ride height moves there by itself, or is not run",
          "[loads]") {
  const std::string text = link_alone("load_cases: [hard corner, corner plus hole]\n");
  CHECK_THAT(reason(text, "corner plus hole"), Contains("its posture is bump"));
  const std::string crossed = bare_axle(", articulation: 10 deg", "");
  CHECK(reason(crossed, "full cross-up") == "it runs");
  CHECK_THAT(reason(crossed, "strap catch"), Contains("needs `limit_strap:`"));
  const std::string strap = "limit_strap: {rate: 400 N/mm, breaking_load: 90 kN}\n";
  CHECK_THAT(reason(bare_axle(", unsprung_weight: 2 kN, droop_speed: 1 m/s", strap), "strap catch"),
             Contains("needs limit_strap.slack and limit_strap.rate"));
  CHECK(reason(crossed, "one wheel hits hard") == "it runs");
}

TEST_CASE("steering that a case needs is named as what is missing, whatever its numbers",
          "[loads]") {
  const std::string text = bare_axle("", "load_cases: [hard corner, dry park lock to lock]\n");
  CHECK(names_run(text).size() == 2);
  CHECK_THAT(reason(text, "dry park, lock to lock"), Contains("needs `steering:`"));
}

TEST_CASE(
    "a number that a case lacks leaves it out of the default set, and is an error where the "
    "file names the case",
    "[loads]") {
  CHECK_THAT(reason(bare_axle("", ""), "hard stop"),
             Contains("needs the weight of the whole truck"));
  CHECK_THAT(reason(bare_axle("", ""), "wheel wedged, low range"),
             Contains("needs the engine's torque"));
  CHECK_THROWS_WITH(parts::design_cases(read_design(bare_axle("", "load_cases: [hard stop]\n"))),
                    Contains("vehicle.total_weight: the load case hard stop needs"));
}

TEST_CASE("numbers that clash are an error in the default set too", "[loads]") {
  const std::string tall =
      bare_axle(", total_weight: 30 kN, wheelbase: 2.8 m, mass_center_height: 2 m", "");
  CHECK_THROWS_WITH(parts::design_cases(read_design(tall)), Contains("lifts the rear axle"));
}

TEST_CASE("a bump stop that is not given leaves its case out", "[loads]") {
  std::string text = bare_axle(", slam_speed: 1 m/s, stop_crush: 60 mm", "");
  CHECK(reason(text, "bump stop slammed") == "it runs");
  const std::string stop = "  bump_travel: 20 mm\n  stop_rate: 1500 N/mm\n";
  text.erase(text.find(stop), stop.size());
  CHECK(reason(text, "bump stop slammed") == "needs axle.bump_travel and axle.stop_rate");
}

}  // namespace not_run_case_test
