#pragma once

#include <fstream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "cases/reader.hpp"

namespace studies_tests {

/// The design of a case file. The test fails when the file cannot be read.
inline parts::Design read_case(const std::string& text) {
  cases::Reading reading = cases::read(text, "case.yaml");
  for (const base::InputError& problem : reading.problems) UNSCOPED_INFO(problem.what());
  REQUIRE(reading.design.has_value());
  return *reading.design;
}

/// The design of a file of cases/examples.
inline parts::Design read_example(const std::string& name) {
  std::ifstream file(std::string(LINKMARGIN_SOURCE_DIR "/cases/examples/") + name);
  std::stringstream text;
  text << file.rdbuf();
  return read_case(text.str());
}

}  // namespace studies_tests
