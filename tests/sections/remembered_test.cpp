#include "sections/remembered.hpp"

#include <string>

#include <catch2/catch.hpp>

namespace remembered_test {

TEST_CASE("what was worked out last is not worked out again, and the oldest goes first",
          "[sections]") {
  sections::Remembered<int, std::string, 3> remembered;
  int n_made = 0;
  const auto of = [&](int number) {
    return remembered(number, [&] {
      ++n_made;
      return std::to_string(number);
    });
  };
  for (const int number : {1, 2, 3, 3, 2, 1}) CHECK(of(number) == std::to_string(number));
  CHECK(n_made == 3);
  CHECK(of(4) == "4");  // in place of 1
  CHECK(of(3) == "3");
  CHECK(of(2) == "2");
  CHECK(n_made == 4);
  CHECK(of(1) == "1");
  CHECK(n_made == 5);
}

}  // namespace remembered_test
