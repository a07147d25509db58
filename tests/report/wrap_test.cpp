#include "report/wrap.hpp"

#include <catch2/catch.hpp>

namespace wrap_test {
using report::display_width;
using report::wrapped_lines;
using Lines = std::vector<std::string>;

TEST_CASE("lines break at spaces and keep to the width", "[report][wrap]") {
  CHECK(wrapped_lines("one two three", 7) == Lines{"one two", "three"});
  CHECK(wrapped_lines("one two three", 13) == Lines{"one two three"});
  CHECK(wrapped_lines("", 10) == Lines{""});
}

TEST_CASE("a number stays with its unit", "[report][wrap]") {
  CHECK(wrapped_lines("at 118 % of it", 6) == Lines{"at", "118 %", "of it"});
  CHECK(wrapped_lines("is 25.4 mm, or", 10) == Lines{"is", "25.4 mm,", "or"});
}

TEST_CASE("a word longer than a line is cut, none of it lost", "[report][wrap]") {
  CHECK(wrapped_lines("a verylongword b", 5) == Lines{"a", "veryl", "ongwo", "rd b"});
}

TEST_CASE("later lines are indented and no wider", "[report][wrap]") {
  CHECK(report::paragraph("one two three", 9, 0, 2) == "one two\n  three\n");
  CHECK(report::paragraph("one two three", 9, 2, 0) == "  one two\n  three\n");
}

TEST_CASE("width is counted in characters, not in bytes", "[report][wrap]") {
  CHECK(display_width("Gr\xC3\xB6\xC3\x9F"
                      "e") == 5);
  CHECK(display_width("\xE6\xA2\x81") == 2);  // an East Asian character takes two columns
  CHECK(display_width("\xFF\xC3") == 2);      // no UTF-8: a column a byte
  CHECK(wrapped_lines("\xC3\xB6\xC3\xB6\xC3\xB6", 2) == Lines{"\xC3\xB6\xC3\xB6", "\xC3\xB6"});
}

TEST_CASE("what a case file says cannot steer the terminal", "[report][wrap]") {
  CHECK(report::without_controls("a\x1b[31mb\tc\r\n") == "a?[31mb?c??");
  CHECK(report::paragraph("\x1b]0;title\x07", 80).find('\x1b') == std::string::npos);
  CHECK(report::without_controls("\xC2\x9B"
                                 "31m") == "?31m");  // the one-character CSI
}

}  // namespace wrap_test
