#include "cases/document.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "tests/cases/case_texts.hpp"

namespace document_test {
using case_texts::problems;
using Catch::Matchers::Contains;

TEST_CASE("every key and value of a document knows its line and column", "[cases][document]") {
  const cases::Document document = cases::read_document(
      "# a comment\n"
      "title: \xC3\xA9 b\n"
      "bracket:\n"
      "  drop: 9 in\n"
      "  list: [0, 17, 22 in]\n"
      "empty:\n"
      "\xC3\xA9: after\n");
  const cases::Entry* bracket = document.root.find("bracket");
  REQUIRE(bracket != nullptr);
  CHECK(bracket->place.line == 3);
  CHECK(bracket->place.column == 1);
  const cases::Entry* drop = bracket->value.find("drop");
  REQUIRE(drop != nullptr);
  CHECK(drop->place.line == 4);
  CHECK(drop->place.column == 3);
  CHECK(drop->value.place.column == 9);
  CHECK(drop->value.text == "9 in");
  const cases::Entry* list = bracket->value.find("list");
  REQUIRE(list != nullptr);
  REQUIRE(list->value.items.size() == 3);
  CHECK(list->value.items[2].place.column == 17);
  CHECK(document.root.find("empty")->value.kind == cases::Value::Kind::empty);
  CHECK(document.root.find("empty")->value.place.line == 6);
  // Columns count characters, so that an accented letter is one.
  CHECK(document.root.find("\xC3\xA9")->value.place.column == 4);
}

TEST_CASE("line ends of other systems and a byte order mark change nothing", "[cases][document]") {
  const cases::Document document =
      cases::read_document("\xEF\xBB\xBFtitle: a\r\nunits: inches\r\n");
  CHECK(document.root.find("title")->value.text == "a");
  CHECK(document.root.find("title")->value.place.column == 8);
  CHECK(document.root.find("units")->value.text == "inches");
}

TEST_CASE("a text that is no YAML is refused at its place", "[cases][document]") {
  CHECK(problems("title: link: braced\n") ==
        "case.yaml:1:12: this is not YAML (illegal map value); check the indent, the space after "
        "each colon (`key: value`) and the quotes");
  CHECK(problems("title: \"invented\nvehicle: 1\n") ==
        "case.yaml:1:8: title: the quote that opens here is never closed");
  CHECK(problems("title: t\n\tvehicle: 1\n") ==
        "case.yaml:2:1: a tab indents this line; YAML takes spaces only");
}

TEST_CASE("a file without a mapping at the top is refused", "[cases][document]") {
  const std::string empty =
      "case.yaml:1:1: the case file is empty; `linkmargin new` prints one to start from";
  CHECK(problems("") == empty);
  CHECK(problems("# only a comment\n\n") == empty);
  CHECK(problems("---\n") == empty);
  const std::string no_mapping =
      "case.yaml:1:1: a case file is a list of `key: value` lines; it starts with e.g. `title:`";
  CHECK(problems("- a\n- b\n") == no_mapping);
  CHECK(problems("just words\n") == no_mapping);
}

TEST_CASE("a second document is refused", "[cases][document]") {
  CHECK(problems("title: a\n---\ntitle: b\n") ==
        "case.yaml:3:1: a second document starts here (`---`); give each case its own file");
}

TEST_CASE("a key that is given twice is refused with both lines", "[cases][document]") {
  CHECK(problems(case_texts::with(case_texts::kLink, "  drop: 9 in\n",
                                  "  drop: 9 in\n  drop: 8 in\n")) ==
        "case.yaml:12:3: bracket.drop: `drop` is given twice, first in line 11");
}

TEST_CASE("anchors, aliases and tags are refused, runaway ones too", "[cases][document]") {
  CHECK(problems("title: t\nbracket:\n  drop: &d 9 in\n") ==
        "case.yaml:3:9: bracket.drop: anchors (&) and aliases (*) are not taken; write the value "
        "out");
  std::string bomb = "a0: &a0 [x, x]\n";
  for (int i = 1; i < 40; ++i) {
    bomb += fmt::format("a{0}: &a{0} [*a{1}, *a{1}]\n", i, i - 1);
  }
  CHECK_THAT(problems(bomb), Contains("case.yaml:1:5: a0: anchors (&) and aliases (*)"));
  CHECK(problems("title: t\nvehicle:\n  tire: !!str 37 in\n") ==
        "case.yaml:3:9: vehicle.tire: tags (!) are not taken; write the value alone");
}

TEST_CASE("a runaway nest is refused and does no harm", "[cases][document]") {
  CHECK(problems("title: " + std::string(100000, '[')) ==
        "case.yaml:1:38: nested over 30 deep; no case needs that");
  CHECK_THAT(problems(std::string(100000, '{')), Contains("nested over 30 deep"));
  std::string dashes;
  for (int i = 0; i < 50000; ++i) dashes += "- ";
  CHECK_THAT(problems(dashes), Contains("nested over 30 deep"));
  std::string steps;
  for (std::size_t i = 0; i < 40; ++i) steps += std::string(i, ' ') + "a:\n";
  CHECK_THAT(problems(steps), Contains("nested over 30 deep"));
  // Brackets in comments do not add up.
  std::string comments = "title: t\n";
  for (int i = 0; i < 100; ++i) comments += "# [see {\n";
  CHECK_THAT(problems(comments), !Contains("nested"));
}

TEST_CASE("what is no plain text is refused", "[cases][document]") {
  CHECK(problems(std::string("title: a\0b\n", 11)) ==
        "case.yaml:1:9: the text holds a control character; save the case file as plain text "
        "(UTF-8)");
  CHECK(problems("title: t\nx: \xFF\n") ==
        "case.yaml:2:4: the text is not UTF-8; save the case file as plain text (UTF-8)");
  CHECK_THAT(problems("title: " + std::string(1100000, 'x')),
             Contains("a case file is under 1000000"));
}

}  // namespace document_test
