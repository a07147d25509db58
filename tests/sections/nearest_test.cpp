#include "sections/nearest.hpp"

#include <catch2/catch.hpp>

namespace nearest_test {
using sections::edit_distance;
using sections::nearest;

TEST_CASE("edit distance counts letters added, dropped, changed and swapped",
          "[sections][nearest]") {
  CHECK(edit_distance("wall", "wall") == 0);
  CHECK(edit_distance("wal", "wall") == 1);
  CHECK(edit_distance("walll", "wall") == 1);
  CHECK(edit_distance("well", "wall") == 1);
  CHECK(edit_distance("wlal", "wall") == 1);
  CHECK(edit_distance("", "wall") == 4);
  CHECK(edit_distance("wall", "") == 4);
  CHECK(edit_distance("kitten", "sitting") == 3);
  CHECK(edit_distance("WALL", "wall") == 0);
}

TEST_CASE("edit distance is the same both ways", "[sections][nearest]") {
  CHECK(edit_distance("diameter", "daimeters") == edit_distance("daimeters", "diameter"));
}

TEST_CASE("the nearest name is the first with the least distance", "[sections][nearest]") {
  CHECK(nearest("widht", {"depth", "width", "wall"}) == "width");
  CHECK(nearest("c", {"a", "b"}) == "a");
  CHECK(nearest("wall", {}).empty());
}

}  // namespace nearest_test
