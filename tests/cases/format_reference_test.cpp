#include "cases/format_reference.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "cases/patch.hpp"
#include "cases/quantity.hpp"
#include "cases/reader.hpp"
#include "cases/top_keys.hpp"
#include "cases/unit.hpp"
#include "cases/words.hpp"

namespace format_reference_test {
namespace {

const std::string kFolder = LINKMARGIN_SOURCE_DIR "/cases/";

std::string text_of_file(const std::string& path) {
  std::ifstream file(kFolder + path, std::ios::binary);
  INFO(path);
  REQUIRE(file.good());
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

/// The design of a text, or a failure with all of its problems.
parts::Design sound(const std::string& text, const std::string& name) {
  cases::Reading reading = cases::read(text, name);
  for (const base::InputError& problem : reading.problems) UNSCOPED_INFO(problem.what());
  REQUIRE(reading.design.has_value());
  return *reading.design;
}

/// The pieces between pairs of backquotes.
std::vector<std::string> quoted_in(const std::string& cell) {
  std::vector<std::string> found;
  const std::vector<std::string> pieces = cases::split(cell, "`");
  for (std::size_t i = 1; i < pieces.size(); i += 2) found.push_back(pieces[i]);
  return found;
}

struct Row {
  std::string heading;  ///< the `### key` above it
  std::string shape;    ///< the "`shape: channel`" line above it
  std::string title;    ///< what stands over its first cell
  std::vector<std::string> cells;
};

/// Every row of every table.
std::vector<Row> rows_of(const std::string& text) {
  std::vector<Row> rows;
  Row state;
  bool in_table = false;
  for (const std::string& line : cases::split(text, "\n")) {
    if (line.rfind("### `", 0) == 0) state.heading = quoted_in(line).front();
    if (line.rfind("`shape: ", 0) == 0) state.shape = quoted_in(line).front().substr(7);
    if (line.rfind("| ", 0) != 0) {
      in_table = false;
      continue;
    }
    std::vector<std::string> cells = cases::split(line, "|");
    cells.erase(cells.begin());
    cells.pop_back();
    if (!in_table) {
      state.title = cells.front();
      in_table = true;
    } else if (cells.front().rfind("---", 0) != 0) {
      rows.push_back(state);
      rows.back().cells = cells;
    }
  }
  return rows;
}

/// The case files that the examples come from.
std::vector<parts::Design> designs() {
  std::vector<parts::Design> all;
  for (const char* file : {"format/braced-link.yaml", "format/whole-axle.yaml",
                           "format/four-links.yaml", "format/any-frame.yaml"}) {
    all.push_back(sound(text_of_file(file), file));
  }
  return all;
}

/// What `change` throws on every one of the designs; nothing when one of them takes it.
template <class Change>
std::string refused_by_all(const Change& change) {
  std::string problems;
  for (const parts::Design& design : designs()) {
    try {
      change(design);
      return "";
    } catch (const base::InputError& error) {
      problems += std::string(error.what()) + "\n";
    }
  }
  return problems;
}

std::string refused_value(const std::string& path, const std::string& value) {
  return refused_by_all([&](parts::Design design) { cases::set(design, {path, value}); });
}

/// The phrase of a row, and those its second cell gives after "also".
std::vector<std::string> phrases_of(const Row& row) {
  std::vector<std::string> all = {quoted_in(row.cells[0]).front()};
  const std::size_t also = row.cells[1].find("also ");
  if (also == std::string::npos) return all;
  for (const std::string& words : quoted_in(row.cells[1].substr(also))) all.push_back(words);
  return all;
}

std::string refused_phrase(const std::string& path, const std::string& words) {
  if (path != "compare" && path != "--set") {
    return refused_value(path, path == "load_cases" ? "[" + words + "]" : words);
  }
  return refused_by_all([&](const parts::Design& design) {
    if (cases::variants_from_words(design, words).empty()) throw base::InputError("", "no variant");
  });
}

/// A thing of that name under a key of the frame.
std::string refused_in_list(const std::string& group, const std::string& lines) {
  std::string text = text_of_file("format/any-frame.yaml");
  const std::string key = "\n" + group + ":\n";
  const std::size_t at = text.find(key);
  REQUIRE(at != std::string::npos);
  text.insert(at + key.size(), "  from the table:\n" + lines);
  std::string problems;
  for (const base::InputError& problem : cases::read(text, "table").problems) {
    problems += std::string(problem.what()) + "\n";
  }
  return problems;
}

/// The first thing of a list, in any of the files: "members.post".
const std::map<std::string, std::string> kNamed = {{"members", "members.post"},
                                                   {"supports", "supports.other"},
                                                   {"springs", "springs.ground"},
                                                   {"rigid", "rigid.axle"},
                                                   {"side_welds", "side_welds.lamp tab"},
                                                   {"bolt_groups", "bolt_groups.prop foot"},
                                                   {"forces", "forces.hook"},
                                                   {"line_loads", "line_loads.snow"},
                                                   {"strains", "strains.sun"},
                                                   {"settlements", "settlements.sinking"},
                                                   {"self_weight", "self_weight.dead"},
                                                   {"load_cases", "load_cases.winch"},
                                                   {"duty", "duty.1"}};

}  // namespace

TEST_CASE("cases/FORMAT.md says what the reader reads today", "[cases][format]") {
  const std::string file = text_of_file("FORMAT.md");
  const std::string made = cases::format_reference();
  INFO("to write it anew: scripts/run format > cases/FORMAT.md");
  std::istringstream lines_of_file(file);
  std::istringstream lines_made(made);
  std::string in_file;
  for (std::string line; std::getline(lines_made, line);) {
    std::getline(lines_of_file, in_file);
    REQUIRE(in_file == line);
  }
  // What comes after it are the cautions, which the command adds.
  CHECK(file.find("CAUTION", made.size()) != std::string::npos);
}

TEST_CASE("every key at the top of a case file has a heading of the reference", "[cases][format]") {
  const std::string text = cases::format_reference();
  for (const cases::TopKey& top : cases::top_keys()) {
    INFO(top.key);
    CHECK(text.find("\n### `" + std::string(top.key) + "`\n") != std::string::npos);
  }
}

TEST_CASE("the case files of the reference are read without a problem", "[cases][format]") {
  CHECK(designs().size() == 4);
}

TEST_CASE("each block of YAML in the reference stands in one of its case files",
          "[cases][format]") {
  const std::vector<std::string> pieces = cases::split(cases::format_reference(), "```yaml\n");
  REQUIRE(pieces.size() > 20);
  const std::array<std::string, 4> files = {
      text_of_file("format/braced-link.yaml"), text_of_file("format/whole-axle.yaml"),
      text_of_file("format/four-links.yaml"), text_of_file("format/any-frame.yaml")};
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const std::string block = pieces[i].substr(0, pieces[i].find("```"));
    INFO(block);
    CHECK(std::any_of(files.begin(), files.end(), [&](const std::string& file) {
      return ("\n" + file).find("\n" + block) != std::string::npos;
    }));
  }
}

TEST_CASE("each example beside a key of the reference is read there", "[cases][format]") {
  int examples = 0;
  for (const Row& row : rows_of(cases::format_reference())) {
    if (row.title != "key" || row.cells.size() != 5) continue;
    const std::string key = quoted_in(row.cells[0]).front();
    const auto named = kNamed.find(row.heading);
    const std::string stem = named == kNamed.end() ? row.heading : named->second;
    const bool shared =
        row.heading == "materials" || row.heading == "sections" || row.heading == "joints";
    for (const std::string& value : quoted_in(row.cells[3])) {
      ++examples;
      if (shared) continue;  // what parts share is read as a whole, below
      INFO(stem << "." << key << ": " << value);
      CHECK(refused_value(stem + "." + key, value).empty());
    }
  }
  CHECK(examples > 150);
}

TEST_CASE("the examples of sections, steels and joints of the reference are read together",
          "[cases][format]") {
  std::map<std::string, std::string> lines;
  for (const Row& row : rows_of(cases::format_reference())) {
    if (row.title != "key" || row.cells.size() != 5) continue;
    const std::string thing = row.heading == "sections" ? "sections " + row.shape : row.heading;
    lines[thing] +=
        "    " + quoted_in(row.cells[0]).front() + ": " + quoted_in(row.cells[3]).front() + "\n";
  }
  CHECK(refused_in_list("materials", lines["materials"]).empty());
  CHECK(refused_in_list("joints", lines["joints"]).empty());
  int shapes = 0;
  for (const auto& [thing, fields] : lines) {
    if (thing.rfind("sections ", 0) != 0) continue;
    ++shapes;
    INFO(thing);
    CHECK(refused_in_list("sections", "    shape: " + thing.substr(9) + "\n" + fields) == "");
  }
  CHECK(shapes == 10);
}

TEST_CASE("each phrase of the reference is read where its table says", "[cases][format]") {
  int phrases = 0;
  for (const Row& row : rows_of(cases::format_reference())) {
    if (row.title.empty() || row.title[0] != '`') continue;
    const std::string path = quoted_in(row.title).front();
    for (const std::string& words : phrases_of(row)) {
      ++phrases;
      INFO(path << ": " << words);
      CHECK(refused_phrase(path, words) == "");
    }
  }
  CHECK(phrases > 80);
}

TEST_CASE("the reference's examples of units are read, and its factors are known",
          "[cases][format]") {
  int numbers = 0;
  int factors = 0;
  for (const Row& row : rows_of(cases::format_reference())) {
    if (row.title == "kind of number") {
      const auto dimension = static_cast<parts::Dimension>(numbers++);
      CHECK(row.cells[0] == cases::dimension_name(dimension));
      for (const std::size_t column : {1U, 2U}) {
        CHECK_NOTHROW(cases::read_quantity(quoted_in(row.cells[column]).front(), dimension));
      }
    }
    if (row.heading == "factors" && row.title == "key" && row.cells.size() == 7) {
      ++factors;
      for (const std::size_t column : {1U, 3U, 5U}) {
        CHECK(refused_value("factors." + quoted_in(row.cells[0]).front(),
                            quoted_in(row.cells[column]).front()) == "");
      }
    }
  }
  CHECK(numbers == 17);
  CHECK(factors == 27);
}

TEST_CASE("each sketch of the reference is there, and its keys are keys of the format",
          "[cases][format]") {
  const std::string text = cases::format_reference();
  const std::vector<std::string> pieces = cases::split(text, "](sketches/");
  CHECK(pieces.size() == 14);
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const std::string name = pieces[i].substr(0, pieces[i].find(')'));
    const std::string sketch = text_of_file("sketches/" + name);
    INFO(name);
    CHECK(sketch.find("licensed engineer") != std::string::npos);
    const std::vector<std::string> keys = cases::split(sketch, "class=\"key\">");
    CHECK(keys.size() > 3);
    for (std::size_t k = 1; k < keys.size(); ++k) {
      const std::string key = keys[k].substr(0, keys[k].find('<'));
      INFO(key);
      CHECK(text.find("\n| `" + key + "`") != std::string::npos);
    }
  }
}

}  // namespace format_reference_test
