#include <stdexcept>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "report/csv.hpp"
#include "report/drawing_svg.hpp"
#include "report/html_table.hpp"
#include "report/json.hpp"
#include "report/markdown.hpp"
#include "report/vtu.hpp"
#include "tests/report/small_drawing.hpp"

namespace beside_files_test {
using Catch::Matchers::Contains;

namespace {

const report::CsvFile& file_of(const std::vector<report::CsvFile>& files, const std::string& name) {
  for (const report::CsvFile& file : files) {
    if (file.name == name) return file;
  }
  throw std::runtime_error("no file " + name);
}

}  // namespace

TEST_CASE("every file beside the answer carries the cautions and none says safe",
          "[report][beside]") {
  const studies::Answer answer = invented::drawn_answer();
  std::vector<std::string> all = {report::drawing_svg(answer), report::vtu(answer),
                                  report::markdown(answer)};
  for (const report::CsvFile& file : report::csv(answer)) all.push_back(file.content);
  for (const std::string& text : all) {
    INFO(text.substr(0, 300));
    CHECK_THAT(text, Contains("kill when they fail"));
    CHECK_THAT(text, Contains("licensed engineer decides"));
    CHECK_THAT(text, !Contains(" safe "));
    CHECK_THAT(text, !Contains("nan"));
  }
}

TEST_CASE("CSV has the numbers of the JSON", "[report][beside]") {
  const studies::Answer answer = invented::drawn_answer();
  const auto json = nlohmann::json::parse(report::json(answer, {"0.1.0", "abc"}));
  const std::vector<report::CsvFile> files = report::csv(answer);
  const std::string& findings = file_of(files, "findings.csv").content;
  for (const auto& f : json["findings"]) {
    CHECK_THAT(findings, Contains("," + report::exact(f["utilization"].get<double>()) + "," +
                                  report::exact(f["safety_factor"].get<double>()) + ","));
  }
  CHECK_THAT(file_of(files, "masses.csv").content, Contains("\nlateral_link,4.1\n"));
  CHECK_THAT(file_of(files, "forces-on-ends.csv").content, Contains(",a,-40000,1,2,3,4,5\n"));
}

TEST_CASE("a cell of CSV is quoted where it must be and never a formula", "[report][beside]") {
  CHECK(report::csv_cell("plain") == "plain");
  CHECK(report::csv_cell("a, \"b\"") == "\"a, \"\"b\"\"\"");
  CHECK(report::csv_cell("=1+1") == "'=1+1");
  CHECK(report::csv_cell("# no remark") == "\"# no remark\"");
}

TEST_CASE("what a case file says stays text in SVG, VTU and Markdown", "[report][beside]") {
  studies::Answer answer = invented::drawn_answer();
  answer.title = "--><script>|*a*\n# b";
  answer.drawing->cases.front().load_case = "\"/><b>";
  const std::string svg = report::drawing_svg(answer);
  const std::string vtu = report::vtu(answer);
  CHECK_THAT(svg, Contains("--&gt;&lt;script&gt;"));
  CHECK_THAT(svg, !Contains("<script"));
  CHECK_THAT(vtu, !Contains("-->&lt;"));
  CHECK_THAT(vtu, !Contains("--&gt;"));
  CHECK_THAT(vtu, Contains("displacement, &quot;/&gt;&lt;b&gt;"));
  CHECK_THAT(report::markdown(answer), Contains("\\<script\\>\\|\\*a\\*?\\# b"));
}

TEST_CASE("VTU has a segment less than points a piece, and -1 where nothing is decided",
          "[report][beside]") {
  studies::Answer answer = invented::drawn_answer();
  const std::string vtu = report::vtu(answer);
  CHECK_THAT(vtu, Contains("NumberOfPoints=\"2\" NumberOfCells=\"1\""));
  CHECK_THAT(vtu, Contains("\n0 0.4 0.5\n0 -0.4 0.45\n"));
  CHECK_THAT(vtu,
             Contains("Name=\"connectivity\" NumberOfComponents=\"1\" format=\"ascii\">\n0 1\n"));
  // The link is decided at its worst, and asked nothing in the load case drawn.
  CHECK_THAT(vtu, Contains("Name=\"utilization\" NumberOfComponents=\"1\" format=\"ascii\">\n0.9"));
  CHECK_THAT(vtu, Contains("slid into a curb, left wheel\" NumberOfComponents=\"1\" "
                           "format=\"ascii\">\n-2\n"));
  for (checks::Finding& f : answer.findings) checks::leave_undecided(f, "not known");
  CHECK_THAT(report::vtu(answer),
             Contains("Name=\"utilization\" NumberOfComponents=\"1\" format=\"ascii\">\n-1\n"));
}

TEST_CASE("VTU leaves out what was not solved, and says so", "[report][beside]") {
  studies::Answer answer = invented::drawn_answer();
  CHECK_THAT(report::vtu(answer), Contains("\"displacement, slid") && Contains("\"forces, slid"));
  answer.drawing->cases.front().moved.clear();
  answer.drawing->cases.front().forces.clear();
  const std::string vtu = report::vtu(answer);
  CHECK_THAT(vtu, !Contains("\"displacement, ") && !Contains("\"forces, "));
  CHECK_THAT(vtu, Contains("not solved, and left out: slid into a curb, left wheel"));
}

}  // namespace beside_files_test
