#include "report/json.hpp"

#include <cmath>
#include <cstddef>
#include <limits>
#include <set>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "report/csv.hpp"
#include "report/slice.hpp"
#include "tests/report/lines_of.hpp"
#include "tests/report/small_answer.hpp"

namespace json_test {
using Json = nlohmann::ordered_json;

namespace {

const report::Program kProgram = {"0.1.0", "commit 0123456789"};

/// Every key whose value is a number or a list of numbers, and whether a null stands anywhere.
void collect(const Json& at, const std::string& key, std::set<std::string>& numeric, bool& null) {
  if (at.is_null()) null = true;
  if (at.is_number()) numeric.insert(key);
  if (at.is_object()) {
    for (const auto& item : at.items()) collect(item.value(), item.key(), numeric, null);
  } else if (at.is_array()) {
    for (const Json& item : at) collect(item, key, numeric, null);
  }
}

std::vector<std::string> every_document() {
  return {report::json(invented::answer(), kProgram),
          report::json(invented::comparison(), kProgram),
          report::json(invented::picked(), kProgram),
          report::json(invented::grid(), kProgram),
          report::json(invented::scattered(), kProgram),
          report::json(invented::cases(), kProgram),
          report::json(studies::explained(invented::answer(), invented::cases(), "bracket", {}),
                       kProgram)};
}

}  // namespace

TEST_CASE("every key that holds a number says its unit", "[report][json]") {
  for (const std::string& text : every_document()) {
    const Json out = Json::parse(text);
    std::set<std::string> numeric;
    bool null = false;
    collect(out, "", numeric, null);
    for (const std::string& key : numeric) {
      INFO(key);
      CHECK(out["about"]["keys"].contains(key));
    }
    CHECK(!null);
  }
}

TEST_CASE("JSON carries the cautions, the version and what is not offered", "[report][json]") {
  for (const std::string& text : every_document()) {
    const Json out = Json::parse(text);
    CHECK(out["about"]["version"] == "0.1.0");
    CHECK(out["about"]["commit"] == "commit 0123456789");
    CHECK(out["cautions"].size() == studies::cautions().size());
    CHECK(out["not_offered"].size() == studies::checks_not_offered().size());
    CHECK(!written::has_word(text, "safe"));
  }
}

TEST_CASE("numbers keep every digit, in SI whatever the units of the case", "[report][json]") {
  studies::Answer a = invented::answer();
  a.solved[0].pieces[0].ends[6] = 12345.678901234567;
  const Json out = Json::parse(report::json(a, kProgram));
  CHECK(out["units_of_the_case"] == "inch");
  CHECK(out["solved"][0]["pieces"][0]["end_b"]["force_N"][0].get<double>() == 12345.678901234567);
  CHECK(out["solved"][0]["reactions"][0]["moment_Nm"][0].get<double>() == 4000.0);
  CHECK(out["solved"][0]["displacements"][0]["displacement_m"][1].get<double>() == 0.0048);
  CHECK(out["solved"][0]["critical"][0]["factor"].get<double>() == 7.9);
  CHECK(out["findings"][0]["demand"].get<double>() == a.findings[0].demand);
  CHECK(out["findings"][0]["unit"] == "Pa");
  CHECK(out["findings"][0]["worked"][0]["values"][1]["value"].get<double>() == 120.9e-6);
  CHECK(out["findings"][0]["worked"][0]["values"][1]["unit"] == "m^2");
  CHECK(out["findings"][0]["worked"][1]["text"] == "0.60 * 70.00 ksi = 42.00 ksi");
}

TEST_CASE("a number that is not known is the text unset, an infinite one unlimited",
          "[report][json]") {
  studies::Answer a = invented::answer();
  checks::leave_undecided(a.findings[0], "it is not known");
  a.findings[1].safety_factor = std::numeric_limits<double>::infinity();
  const Json out = Json::parse(report::json(a, kProgram));
  CHECK(out["findings"][0]["safety_factor"] == "unset");
  CHECK(out["findings"][0]["utilization"] == "unset");
  CHECK(out["findings"][0]["state"] == "not decided");
  CHECK(out["findings"][0]["reason"] == "it is not known");
  CHECK(out["findings"][1]["safety_factor"] == "unlimited");
  CHECK(report::json(a, kProgram).find("null") == std::string::npos);
}

TEST_CASE("the verdict in JSON is one of three words", "[report][json]") {
  studies::Answer a = invented::answer();
  CHECK(Json::parse(report::json(a, kProgram))["verdict"] == "over the limit");
  a.verdict = studies::Verdict::within;
  CHECK(Json::parse(report::json(a, kProgram))["verdict"] == "within the limits checked");
  a.verdict = studies::Verdict::not_decided;
  CHECK(Json::parse(report::json(a, kProgram))["verdict"] == "not decided");
}

TEST_CASE("a load case's balance keeps every digit of what acts and what holds", "[report][json]") {
  const Json out = Json::parse(report::json(invented::answer(), kProgram));
  const Json& balance = out["balances"][0];
  CHECK(balance["moments_about"] == "the middle of the axle, at hub height");
  CHECK(balance["acts"][0]["what"] == "left wheel");
  CHECK(balance["acts"][0]["force_N"][1].get<double>() == -42812.5);
  CHECK(balance["holds"][0]["moment_Nm"][0].get<double>() == 12.0);
  CHECK(balance["left_over"].get<double>() == 2.0e-12);
}

TEST_CASE("load cases in JSON say class, posture, basis, what they lead to and the duty",
          "[report][json]") {
  const Json out = Json::parse(report::json(invented::cases(), kProgram));
  CHECK(out["load_cases"][0]["class"] == "routine");
  CHECK(out["load_cases"][0]["posture"] == "ride height");
  CHECK(out["load_cases"][0]["cases"][0]["pushes"][0]["force_N"][2].get<double>() == 8000.0);
  CHECK(out["load_cases"][0]["cases"][0]["leads_to"][0]["unit"] == "N");
  CHECK(out["load_cases"][1]["not_run"] == "needs `steering:`");
  CHECK(out["duty"][0]["per_1000_km"].get<double>() == 1.0e4);
  CHECK(out["duty"][0]["sizes"] == "straight line");
}

TEST_CASE("a title that is no UTF-8 still gives JSON that can be read", "[report][json]") {
  studies::Answer a = invented::answer();
  a.title = "tube \xFF \"quoted\"";
  CHECK_NOTHROW(Json::parse(report::json(a, kProgram)));
}

TEST_CASE("what was picked stands beside every size that was tried", "[report][json]") {
  studies::Picked p = invented::picked();
  const Json out = Json::parse(report::json(p, kProgram));
  CHECK(out["lightest"]["size"] == "1-1/2 x 0.188 in tube");
  CHECK(out["tried"].size() == 4);
  p.lightest.reset();
  CHECK(!Json::parse(report::json(p, kProgram)).contains("lightest"));
}

TEST_CASE("a slice reads back to the last bit", "[report][json]") {
  report::Slice slice{.program = "linkmargin 1, commit 2",
                      .arguments = {"pick", "a.yaml", "--part", "b"},
                      .case_file = {"a.yaml", "title: \"x\"\n"},
                      .stock = {},
                      .which = 2,
                      .of = 3,
                      .n_mine = 2,
                      .judged = {},
                      .lanes = {},
                      .rated = {},
                      .compared = {}};
  studies::Judged judged = invented::candidate("a", 1.0, 1.0 / 3.0).judged;
  slice.judged = {{1, judged}, {4, {.open = "yield: it turns too far"}}};
  judged.utilization = std::numeric_limits<double>::infinity();
  slice.lanes = {{1, {.kept = {{7, judged}}, .in_full = 3, .in_part = 5, .no_sense = 1}}};
  const report::Slice back = report::read_slice(report::slice_text(slice), "s.json");
  CHECK(back.arguments == slice.arguments);
  CHECK(back.case_file == slice.case_file);
  CHECK(back.judged.at(1) == slice.judged.at(1));
  CHECK(std::isnan(back.judged.at(4).utilization));
  CHECK(back.judged.at(4).open == "yield: it turns too far");
  CHECK(back.lanes == slice.lanes);
  CHECK_THROWS_WITH(report::read_slice("{\"what\": 1}", "s.json"),
                    Catch::Contains("s.json: is no slice"));
  CHECK_THROWS_WITH(report::read_slice("{\"what\": \"linkmargin slice 1\"}", "s.json"),
                    Catch::Contains("is no slice"));
}

TEST_CASE("the tables of every study have as many cells a line as headings", "[report]") {
  studies::Rating rating;
  rating.span.path = "vehicle.axle_weight";
  rating.designs.resize(1);
  rating.designs[0].name = "as drawn, \"thin\"";
  rating.designs[0].points.resize(1);
  for (const auto& files :
       {report::csv(invented::comparison()), report::csv(invented::picked()),
        report::csv(invented::grid()), report::csv(rating), report::csv(invented::scattered())}) {
    for (const report::CsvFile& file : files) {
      std::istringstream lines(file.content);
      std::string line;
      std::ptrdiff_t commas = -1;
      std::size_t n_lines = 0;
      while (std::getline(lines, line)) {
        if (line[0] == '#') continue;
        bool quoted = false;
        std::ptrdiff_t here = 0;
        for (const char c : line) {
          if (c == '"') quoted = !quoted;
          if (c == ',' && !quoted) ++here;
        }
        if (commas < 0) commas = here;
        INFO(file.name << ": " << line);
        CHECK(here == commas);
        ++n_lines;
      }
      CHECK(n_lines >= 2);
    }
  }
}

}  // namespace json_test
