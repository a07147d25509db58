#include "report/stock_text.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "report/json.hpp"
#include "tests/report/lines_of.hpp"

namespace stock_text_test {
using Catch::Contains;

namespace {

std::string stock(bool full) {
  return report::stock_text(sections::stock_lists(), sections::plate_lists(), {.full = full});
}

void check_width(const std::string& text) {
  for (const std::string& line : written::lines(text)) {
    INFO(line);
    CHECK(report::display_width(line) <= 80);
  }
}

}  // namespace

TEST_CASE("the stock lists name their sources and carry the cautions", "[report][stock]") {
  for (const bool full : {false, true}) {
    const std::string text = stock(full);
    check_width(text);
    const std::string flat = written::flat(text);
    CHECK_THAT(text, Contains("CAUTION"));
    CHECK_THAT(flat, Contains("licensed engineer"));
    for (const sections::StockList& list : sections::stock_lists()) {
      CHECK_THAT(text, Contains(list.name));
      CHECK_THAT(flat, Contains(list.source.substr(0, 20)));
    }
    CHECK_THAT(flat, Contains(full ? "1-1/2 x 0.250 in" : "1-1/2 x 0.065, 0.083, 0.095"));
    CHECK_THAT(text, Contains("plate, "));
  }
}

// AISC Shapes Database, table 1-12, HSS2x2x1/4 (read, in a transcription): A 1.51 in^2, Z 0.964
// in^3, 5.41 lb/ft at the nominal wall.
TEST_CASE("a full list has the properties of each size", "[report][stock]") {
  const std::string text = stock(true);
  const std::size_t at = text.find("\nHSS2x2x1/4 ");
  REQUIRE(at != std::string::npos);
  const std::string row = text.substr(at + 1, text.find('\n', at + 1) - at - 1);
  CHECK_THAT(row, Contains("1.507") && Contains("0.9639") && Contains("from memory"));
}

TEST_CASE("the list of steels has strengths, limits and sources", "[report][stock]") {
  for (const bool inches : {true, false}) {
    for (const bool full : {false, true}) {
      const std::string text =
          report::materials_text(sections::materials(), inches, {.full = full});
      check_width(text);
      CHECK_THAT(text, Contains("CAUTION"));
      for (const sections::Material& m : sections::materials()) CHECK_THAT(text, Contains(m.id));
    }
  }
  const std::string text = report::materials_text(sections::materials(), true, {.full = true});
  CHECK_THAT(written::flat(text),
             Contains("DOM1020_SR: minimum when ordered; A513 strength table (read)"));
}

TEST_CASE("the lists come as JSON too, every key explained", "[report][stock]") {
  const report::Program program{"1", "c"};
  const auto out = nlohmann::json::parse(
      report::json(sections::stock_lists(), sections::plate_lists(), program));
  CHECK(out["lists"].size() == sections::stock_lists().size());
  CHECK(out["cautions"].size() > 2);
  const auto size = out["lists"][0]["sizes"][0];
  for (const auto& item : size.items()) {
    INFO(item.key());
    if (item.value().is_number()) CHECK(out["about"]["keys"].contains(item.key()));
  }
  const auto steels = nlohmann::json::parse(report::json(sections::materials(), program));
  CHECK(steels["materials"].size() == sections::materials().size());
  for (const auto& item : steels["materials"][0].items()) {
    INFO(item.key());
    if (item.value().is_number()) CHECK(steels["about"]["keys"].contains(item.key()));
  }
}

}  // namespace stock_text_test
