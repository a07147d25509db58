#pragma once

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

}  // namespace studies_tests
