#include "base/input_error.hpp"

#include <catch2/catch.hpp>

namespace input_error_test {
TEST_CASE("an input error names key and problem until the reader adds the place", "[base]") {
  const base::InputError bare("wall", "too thick");
  CHECK(std::string(bare.what()) == "wall: too thick");
  const base::InputError placed = bare.at({"case.yaml", 4, 9, "brace.tube"});
  CHECK(std::string(placed.what()) == "case.yaml:4:9: brace.tube: too thick");
  CHECK(placed.where().line == 4);
}

}  // namespace input_error_test
