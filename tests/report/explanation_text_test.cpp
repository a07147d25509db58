#include "report/explanation_text.hpp"

#include <catch2/catch.hpp>

#include "base/input_error.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace explanation_text_test {
using Catch::Matchers::Contains;

namespace {

/// The invented answer, its bracket's weld traced to where it comes from.
studies::Answer traced() {
  studies::Answer a = invented::answer();
  a.findings[0].range = "fillet welds between stiff parts";
  a.findings[0].origin = {.method = "second order",
                          .multiple = 1.0,
                          .forces = {{"plates at the bolt",
                                      "force ({0}, {1}, {2}), moment ({3}, {4}, {5})",
                                      {{1000.0, checks::Measure::force},
                                       {2000.0, checks::Measure::force},
                                       {3000.0, checks::Measure::force},
                                       {4.0, checks::Measure::moment},
                                       {5.0, checks::Measure::moment},
                                       {6.0, checks::Measure::moment}}}}};
  checks::Finding left = invented::yield("arm, left", "lower tube, 10 % along", 2.0, 1.5);
  checks::Finding right = left;
  right.part = "arm, right";
  a.findings.push_back(left);
  a.findings.push_back(right);
  return a;
}

studies::CaseList cases() {
  studies::CaseList list = invented::cases();
  list.kinds[0].cases[0].name = "slid into a curb, left wheel";
  return list;
}

studies::Explanation asked(const std::string& part, const std::string& check = {}) {
  return studies::explained(traced(), cases(), part, check);
}

std::string problem(const std::string& part, const std::string& check = {}) {
  try {
    return asked(part, check).part;
  } catch (const base::InputError& error) {
    return error.what();
  }
}

}  // namespace

TEST_CASE("a finding is explained from its forces to its source", "[report][explain]") {
  studies::Explanation e = asked("bracket", "weld");
  e.inches = false;
  const std::string out = report::explanation_text(e, {.full = true});
  CHECK_THAT(out, Contains(R"(
bracket: root weld at the rail                                       118 %  OVER
  in slid into a curb, left wheel; soft rail, brace end 10 kN/mm, bushings as
    given
  solved by second order, at the load itself
  what acts on its ends, in its own axes (x along it from its first end, y and z
    across; beyond first order the lines below have them turned with it):
    plates at the bolt: force (1000 N, 2000 N, 3000 N), moment (4000 N mm,
      5000 N mm, 6000 N mm)
  tau = F / A
    = 40000 N / 120.9 mm^2 = 330.9 MPa
  capacity = 0.60 F_EXX
    = 0.60 * 482.6 MPa = 289.6 MPa
  demand 330.9 MPa, capacity 289.6 MPa; safety factor 1.27, asked 1.50;
    utilization 118 %
  note: the leg decides, not the plate
  source: elastic line method on the throat; nominal 0.60 F_EXX (AISC 360-22
    J2.4)
  holds for: fillet welds between stiff parts
)"));
  // The load case it names, with the wheel forces of the design, and none that it does not.
  CHECK_THAT(written::flat(out), Contains("slid into a curb, left wheel: left wheel, at the ground "
                                          "(-8.00, 0, 8.00 kN)"));
  CHECK_THAT(out, !Contains("dry park"));
  for (const std::string& c : studies::cautions()) CHECK_THAT(written::flat(out), Contains(c));
  CHECK(written::widest(out) <= 80);
  CHECK(written::is_clean(out));
}

TEST_CASE("a part goes by the names of the answer, of the case file and of plain words",
          "[report][explain]") {
  CHECK(asked("lateral_link").findings.size() == 2);
  CHECK(asked("Lateral link").part == "lateral_link");
  CHECK(asked("arm, left").findings.size() == 1);
  CHECK(asked("arm").findings.size() == 2);
  CHECK(asked("arm.lower").part == "arm.lower");
  CHECK(asked("bracket", "Weld").findings.size() == 1);
  CHECK(asked("bracket").verdict == studies::Verdict::over);
  CHECK(asked("brace").verdict == studies::Verdict::within);
}

TEST_CASE("a check goes by the beginning of a word of it, and by its place", "[report][explain]") {
  studies::Answer answer = traced();
  checks::Finding both = answer.findings[0];
  both.check = "combined forces";
  both.where = "plates";
  answer.findings.push_back(both);
  both.check = "tab weld";
  both.where = "tabs at the axle bolt";
  answer.findings.push_back(both);
  const auto found = [&](const std::string& check) {
    return studies::explained(answer, cases(), "bracket", check).findings.at(0).check;
  };
  CHECK(found("combined") == "combined forces");
  CHECK(found("Forces") == "combined forces");
  CHECK(found("root weld") == "weld");
  CHECK(found("weld") == "weld");
  CHECK(found("combined forces at its weld") == "combined forces");
  CHECK(found("tab") == "tab weld");
  both.check = "tab root";
  answer.findings.push_back(both);
  CHECK_THROWS_WITH(found("tab"), Contains("more than one") && Contains("tab weld; tab root"));
}

TEST_CASE("an unknown part or check is answered with the nearest and all there are",
          "[report][explain]") {
  CHECK_THAT(problem("lateral_lnk"),
             Contains("lateral_lnk: ") && Contains("the nearest is `lateral_link`") &&
                 Contains("bracket; lateral_link; brace; arm, left; arm, right"));
  CHECK_THAT(problem("bracket", "wield"),
             Contains("wield: ") && Contains("no such check") && Contains("weld; yield"));
  CHECK_THAT(problem("bracket", "fatigue"), Contains("no verdict rests on it"));
}

}  // namespace explanation_text_test
