#include "report/json.hpp"

#include <limits>
#include <set>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

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
          report::json(invented::picked(), kProgram), report::json(invented::cases(), kProgram),
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

}  // namespace json_test
