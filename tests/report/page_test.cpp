#include "report/page.hpp"

#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "report/digest.hpp"
#include "report/html_text.hpp"
#include "report/json.hpp"
#include "report/section_outline.hpp"
#include "sections/area_props.hpp"
#include "tests/report/small_answer.hpp"

using Catch::Matchers::Contains;

namespace {

/// The invented answer with a drawing of one straight piece in one load case.
studies::Answer drawn() {
  studies::Answer a = invented::answer();
  studies::Drawing d;
  d.pieces = {{.part = "lateral_link",
               .name = "",
               .line = {{0.0, 0.4, 0.5}, {0.0, -0.4, 0.45}},
               .along = {0.0, 0.8},
               .shapes = {sections::RoundTube{0.038, 0.006}, sections::RoundTube{0.038, 0.006}},
               .y_axes = {{1.0, 0.0, 0.0}, {1.0, 0.0, 0.0}},
               .z_axes = {{0.0, 0.0, 1.0}, {0.0, 0.0, 1.0}}}};
  const std::string load_case = "slid into a curb, left wheel";
  d.cases = {{.load_case = load_case,
              .set = "soft rail",
              .moved = {{{0.0, 0.001, 0.0}, {0.0, 0.002, 0.0}}},
              .forces = {{{.n = -40.0e3}, {.n = -40.0e3}}},
              .loads = {{"axle, across the truck", {0.0, -0.4, 0.45}, {0.0, 40.0e3, 0.0}, false}},
              .modes = {}}};
  d.utilization = {{"bracket", load_case, 1.18, true}, {"brace", load_case, base::kUnset, false}};
  a.drawing = d;
  return a;
}

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

}  // namespace

TEST_CASE("the numbers of the page are those of the JSON", "[report][page]") {
  const studies::Answer answer = drawn();
  const std::string page = report::page(answer, sheet());
  const auto json = nlohmann::json::parse(report::json(answer, {"0.1.0", "abc"}));
  for (const auto& f : json["findings"]) {
    CHECK_THAT(page, Contains("data-utilization=\"" + f["utilization"].dump() + "\""));
    CHECK_THAT(page, Contains("data-safety-factor=\"" + f["safety_factor"].dump() + "\""));
    CHECK_THAT(page, Contains("data-capacity=\"" + f["capacity"].dump() + "\""));
    for (const auto& line : f["worked"]) {
      CHECK_THAT(page, Contains(report::escaped(line["text"].get<std::string>())));
    }
  }
  for (const auto& m : json["masses"]) {
    CHECK_THAT(page, Contains("data-mass=\"" + m["mass_kg"].dump() + "\""));
  }
}

TEST_CASE("what a case file says stays text on the page", "[report][page]") {
  const std::string hostile = "</title><script>alert(1)</script>\"'&{{data}}";
  studies::Answer answer = drawn();
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
  CHECK_THAT(page, Contains("&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39;&amp;{{data}}"));
  CHECK_THAT(page, !Contains("alert(1)</"));
}

TEST_CASE("the page refers to nothing outside itself", "[report][page]") {
  const std::string page = report::page(drawn(), sheet());
  // The name of a namespace is no address that anything is fetched from.
  CHECK(count(page, "http://") == count(page, "\"http://www.w3.org/2000/svg\""));
  for (const char* word : {"https:", "src=", "url(", "@import", "<link", "<iframe", "fetch(",
                           "XMLHttpRequest", "import("}) {
    INFO(word);
    CHECK(count(page, word) == 0);
  }
  CHECK_THAT(page, Contains("default-src 'none'"));
}

TEST_CASE("the page is the same each time, and carries every caution", "[report][page]") {
  const std::string page = report::page(drawn(), sheet());
  CHECK(page == report::page(drawn(), sheet()));
  for (const std::string& caution : studies::cautions()) {
    CHECK_THAT(page, Contains(report::escaped(caution)));
  }
  CHECK_THAT(page, !Contains(" safe "));
}

TEST_CASE("what is not decided stands as such on the page", "[report][page]") {
  studies::Answer answer = drawn();
  checks::leave_undecided(answer.findings.front(), "the wall is not known");
  answer.verdict = studies::Verdict::not_decided;
  const std::string page = report::page(answer, sheet());
  CHECK_THAT(page, Contains("NOT DECIDED</h2>"));
  CHECK_THAT(page, Contains("not decided: the wall is not known"));
  CHECK_THAT(page, !Contains("nan"));
}

TEST_CASE("an answer without findings or load cases still gives a page", "[report][page]") {
  studies::Answer answer;
  answer.drawing = studies::Drawing{};
  CHECK_THAT(report::page(answer, sheet()), Contains("nothing was checked"));
}

TEST_CASE("bytes that are no UTF-8 and controls become replacement characters", "[report][page]") {
  const std::string replaced = "\xEF\xBF\xBD";
  CHECK(report::escaped("a\x01z") == "a" + replaced + "z");
  CHECK(report::escaped("a\xFFz") == "a" + replaced + "z");
  CHECK(report::escaped("a\xC3") == "a" + replaced);
  CHECK(report::escaped("\xC3\xA4<") == "\xC3\xA4&lt;");
  CHECK(report::css_string("a\"\\\n") == "a\\000022\\00005C\\00000A");
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
