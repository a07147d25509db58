#include "report/page.hpp"

#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "report/digest.hpp"
#include "report/html_table.hpp"
#include "report/html_text.hpp"
#include "report/json.hpp"
#include "report/section_outline.hpp"
#include "sections/area_props.hpp"
#include "tests/report/small_drawing.hpp"

namespace page_test {
namespace {

report::Sheet sheet() {
  return {.case_name = "link.yaml",
          .case_text = "title: a link\n",
          .date = "2001-02-03",
          .factors = {},
          .program = {"0.1.0", "abc"}};
}

std::size_t count(const std::string& text, const std::string& words) {
  std::size_t n = 0;
  for (std::size_t at = text.find(words); at != text.npos; at = text.find(words, at + 1)) ++n;
  return n;
}

bool has(const std::string& page, const std::string& words) {
  UNSCOPED_INFO("looked for: " << words);
  return page.find(words) != page.npos;
}

std::string exact_of(const nlohmann::json& value) {
  return report::exact(value.get<double>());
}

}  // namespace

TEST_CASE("the numbers of the page are those of the JSON", "[report][page]") {
  const studies::Answer answer = invented::drawn_answer();
  const std::string page = report::page(answer, sheet());
  const auto json = nlohmann::json::parse(report::json(answer, {"0.1.0", "abc"}));
  for (const auto& f : json["findings"]) {
    CHECK(has(page, "data-utilization=\"" + exact_of(f["utilization"]) + "\""));
    CHECK(has(page, "data-safety-factor=\"" + exact_of(f["safety_factor"]) + "\""));
    CHECK(has(page, "data-capacity=\"" + exact_of(f["capacity"]) + "\""));
    for (const auto& line : f["worked"]) {
      CHECK(has(page, report::escaped(line["text"].get<std::string>())));
    }
  }
  for (const auto& m : json["masses"]) {
    CHECK(has(page, "data-mass=\"" + exact_of(m["mass_kg"]) + "\""));
  }
}

TEST_CASE("what a case file says stays text on the page", "[report][page]") {
  const std::string hostile = "</title><script>alert(1)</script>\"'&{{data}}";
  studies::Answer answer = invented::drawn_answer();
  answer.title = hostile;
  answer.findings.front().part = hostile;
  answer.findings.front().notes = {hostile};
  answer.drawing->pieces.front().part = hostile;
  answer.drawing->cases.front().load_case = hostile;
  answer.comparison->variants.front().name = hostile;
  answer.assumed.front().value = hostile;
  report::Sheet input = sheet();
  input.case_name = hostile;
  input.case_text = "title: " + hostile;
  input.date = hostile;
  const std::string page = report::page(answer, input);
  // Its own two scripts, the JSON and the code, open and close; nothing else does.
  CHECK(count(page, "<script") == 2);
  CHECK(count(page, "</script") == 2);
  CHECK(count(page, "</title") == 1);
  CHECK(has(page, "&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39;&amp;{{data}}"));
  CHECK(!has(page, "alert(1)</"));
}

TEST_CASE("the page refers to nothing outside itself", "[report][page]") {
  const std::string page = report::page(invented::drawn_answer(), sheet());
  // The name of a namespace is no address that anything is fetched from.
  CHECK(count(page, "http://") == count(page, "\"http://www.w3.org/2000/svg\""));
  for (const char* word : {"https:", "src=", "url(", "@import", "<link", "<iframe", "fetch(",
                           "XMLHttpRequest", "import("}) {
    INFO(word);
    CHECK(count(page, word) == 0);
  }
  CHECK(has(page, "default-src 'none'"));
}

TEST_CASE("the page is the same each time, and carries every caution", "[report][page]") {
  const std::string page = report::page(invented::drawn_answer(), sheet());
  CHECK(page == report::page(invented::drawn_answer(), sheet()));
  for (const std::string& caution : studies::cautions()) {
    CHECK(has(page, report::escaped(caution)));
  }
  CHECK(!has(page, " safe "));
}

TEST_CASE("what is not decided stands as such on the page", "[report][page]") {
  studies::Answer answer = invented::drawn_answer();
  checks::leave_undecided(answer.findings.front(), "the wall is not known");
  answer.verdict = studies::Verdict::not_decided;
  const std::string page = report::page(answer, sheet());
  CHECK(has(page, "NOT DECIDED</h2>"));
  CHECK(has(page, "not decided: the wall is not known"));
  CHECK(!has(page, "nan"));
}

TEST_CASE("an answer without findings or load cases still gives a page", "[report][page]") {
  studies::Answer answer;
  answer.drawing = studies::Drawing{};
  CHECK(has(report::page(answer, sheet()), "nothing was checked"));
}

TEST_CASE("bytes that are no UTF-8 and controls become replacement characters", "[report][page]") {
  const std::string replaced = "\xEF\xBF\xBD";
  CHECK(report::escaped("a\x01z") == "a" + replaced + "z");
  CHECK(report::escaped("a\xFFz") == "a" + replaced + "z");
  CHECK(report::escaped("a\xC3") == "a" + replaced);
  CHECK(report::escaped("\xC3\xA4<") == "\xC3\xA4&lt;");
  CHECK(report::css_string("a\"\\\n") == "a\\000022 \\00005C \\00000A ");
}

TEST_CASE("a section is drawn with its own outside, about its centroid", "[report][page]") {
  const sections::Channel channel{0.1, 0.05, 0.006, 0.008};
  double area = 0.0;
  double moment = 0.0;
  for (const report::Outline& box : report::outlines(channel)) {
    const double its = (box[2][0] - box[0][0]) * (box[2][1] - box[0][1]);
    area += its;
    moment += its * 0.5 * (box[2][0] + box[0][0]);
  }
  CHECK(area == Approx(sections::area_props(channel).area));
  CHECK(moment == Approx(0.0).margin(1e-12));
}

// FIPS PUB 180-4's worked examples: the empty text, "abc" and the one of 448 bits (from memory).
TEST_CASE("the digest is SHA-256", "[report][page]") {
  CHECK(report::digest("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(report::digest("abc") ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(report::digest("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

}  // namespace page_test
