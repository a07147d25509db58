#include "cases/writer.hpp"

#include <fstream>
#include <sstream>

#include <catch2/catch.hpp>

#include "cases/small_case.hpp"
#include "cases/yaml_text.hpp"
#include "tests/cases/case_texts.hpp"
#include "tests/cases/design_dump.hpp"
#include "tests/cases/rich_case.hpp"

namespace writer_test {
using case_texts::design;
using design_dump::design_text;

TEST_CASE("a written case reads back to the same design, to the last bit", "[cases][writer]") {
  for (const std::string& text : {case_texts::kLink, case_texts::kCantilever, case_texts::kRich,
                                  std::string(cases::small_case())}) {
    for (const bool inches : {true, false}) {
      parts::Design first = design(text);
      first.inches = inches;
      const std::string written = cases::write(first);
      INFO(written);
      CHECK(design_text(design(written)) == design_text(first));
    }
  }
}

TEST_CASE("the example cases survive writing and reading", "[cases][writer]") {
  for (const char* name : {"channel-frame-metric", "front-axle-metric", "front-axle-us",
                           "lateral-link-only", "plain-frame"}) {
    std::ifstream file(std::string(LINKMARGIN_SOURCE_DIR) + "/cases/examples/" + name + ".yaml");
    std::stringstream text;
    text << file.rdbuf();
    INFO(name << "\n" << case_texts::problems(text.str()));
    const parts::Design first = design(text.str());
    CHECK(design_text(design(cases::write(first))) == design_text(first));
  }
}

// A verdict may hang on whether a bolt's stack is clamped: nothing says so but the user.
TEST_CASE("a written case leaves nothing to assume but a clamp", "[cases][writer]") {
  for (const std::string& text : {case_texts::kLink, case_texts::kCantilever, case_texts::kRich}) {
    for (const parts::Assumption& a : design(cases::write(design(text))).assumed) {
      CHECK(a.value == "clamped stack");
    }
  }
}

TEST_CASE("any title survives writing and reading", "[cases][writer]") {
  for (const char* title : {"plain",
                            "null",
                            "~",
                            "a: b",
                            "- dash",
                            "# hash",
                            "'quote' \"quote\"",
                            "back\\slash",
                            "two\nlines",
                            " spaces ",
                            "*star",
                            "{brace}",
                            "34\"",
                            "\xC3\xA9t\xC3\xA9",
                            "yes",
                            "1.5",
                            "?",
                            "tab\tinside",
                            "@at",
                            "%"}) {
    parts::Design changed = design(case_texts::kLink);
    changed.title = title;
    INFO(cases::yaml_text(title));
    CHECK(design(cases::write(changed)).title == title);
  }
}

}  // namespace writer_test
