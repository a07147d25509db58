#include "report/text_table.hpp"

#include <catch2/catch.hpp>

#include "tests/report/lines_of.hpp"

namespace text_table_test {
namespace {

report::TextTable two_columns() {
  report::TextTable table;
  table.columns = {{.least_width = 4}, {.numbers = true}};
  table.head = {{"what is there"}, {"mass"}};
  table.rows = {{{"bar"}, {"1.2 kg"}}, {{"a long tube"}, {"12.4 kg"}}};
  return table;
}

}  // namespace

TEST_CASE("words stand left, numbers right, and no line ends in a space", "[report][table]") {
  CHECK(report::laid_out(two_columns(), 80, false) ==
        "what is there     mass\n"
        "bar             1.2 kg\n"
        "a long tube    12.4 kg\n");
  CHECK(report::natural_width(two_columns()) == 22);
}

TEST_CASE("a table that is too wide goes on in the next line", "[report][table]") {
  const std::string out = report::laid_out(two_columns(), 17, false);
  CHECK(out ==
        "what is      mass\n"
        "there\n"
        "bar        1.2 kg\n"
        "a long    12.4 kg\n"
        "tube\n");
  CHECK(written::widest(report::laid_out(two_columns(), 10, false)) <= 10);
}

TEST_CASE("colors do not move the columns", "[report][table]") {
  report::TextTable table = two_columns();
  table.rows[0][0].tone = report::Tone::over;
  const std::string out = report::laid_out(table, 80, true);
  CHECK(out.find("\x1b[1;31mbar\x1b[0m             1.2 kg\n") != std::string::npos);
}

}  // namespace text_table_test
