#include "sections/tolerance.hpp"

#include <catch2/catch.hpp>

#include "sections/straightness.hpp"

namespace tolerance_test {
using Catch::Contains;
using Catch::WithinAbs;
using namespace sections;

namespace {

constexpr double in = base::kInch;

MinimumShape least(const Shape& shape, const char* steel) {
  return minimum_material(shape, find_material(steel).value());
}

double least_wall(double outside, double wall, const char* steel) {
  return std::get<RoundTube>(least(RoundTube{outside * in, wall * in}, steel).shape).wall / in;
}

double least_diameter(double diameter, const char* steel) {
  return std::get<RoundBar>(least(RoundBar{diameter * in}, steel).shape).diameter / in;
}

}  // namespace

// ASTM A513 type 5, wall tolerance for outside diameters over 0.875 to 1.875 in (read, in a
// distributor's reproduction), and its outside diameter tolerance, which takes nothing off (read).
TEST_CASE("drawn tube has the minimum walls of A513 type 5", "[sections][tolerance][published]") {
  CHECK_THAT(least_wall(1.5, 0.065, "DOM"), WithinAbs(0.065 - 0.003, 1e-9));
  CHECK_THAT(least_wall(1.5, 0.083, "DOM"), WithinAbs(0.083 - 0.003, 1e-9));
  CHECK_THAT(least_wall(1.5, 0.095, "DOM"), WithinAbs(0.095 - 0.003, 1e-9));
  CHECK_THAT(least_wall(1.5, 0.109, "DOM"), WithinAbs(0.109 - 0.004, 1e-9));
  CHECK_THAT(least_wall(1.5, 0.120, "DOM"), WithinAbs(0.120 - 0.004, 1e-9));
  CHECK_THAT(least_wall(1.5, 0.134, "DOM"), WithinAbs(0.134 - 0.004, 1e-9));
  const MinimumShape tube = least(RoundTube{1.5 * in, 0.12 * in}, "DOM");
  CHECK(tube.known);
  CHECK_THAT(std::get<RoundTube>(tube.shape).outside / in, WithinAbs(1.5, 1e-12));
  CHECK_THAT(tube.basis, Contains("ASTM A513 type 5: wall less 0.1016 mm (0.004 in) (read)"));
}

// Heavy walls, whose rows are recalled: at least 5 % (common practice, no source).
TEST_CASE("a heavy wall loses 5 % at least", "[sections][tolerance]") {
  CHECK_THAT(least_wall(1.5, 0.250, "DOM"), WithinAbs(0.95 * 0.250, 1e-9));
  CHECK_THAT(least_wall(20.0, 0.250, "DOM"), WithinAbs(0.95 * 0.250, 1e-9));
  CHECK_THAT(least(RoundTube{1.5 * in, 0.25 * in}, "DOM").basis,
             Contains("common practice, no source"));
}

// ASTM A513 type 1, outside diameter and wall tolerances (read, in a distributor's reproduction).
TEST_CASE("welded tube loses wall and outside by A513 type 1", "[sections][tolerance][published]") {
  const MinimumShape tube = least(RoundTube{1.0 * in, 0.083 * in}, "A513_1_1020");
  CHECK_THAT(std::get<RoundTube>(tube.shape).outside / in, WithinAbs(1.0 - 0.0035, 1e-9));
  CHECK_THAT(std::get<RoundTube>(tube.shape).wall / in, WithinAbs(0.083 - 0.010, 1e-9));
  const MinimumShape larger = least(RoundTube{1.75 * in, 0.065 * in}, "A513_1_1020");
  CHECK_THAT(std::get<RoundTube>(larger.shape).outside / in, WithinAbs(1.75 - 0.005, 1e-9));
}

// ASTM A108-03, table A1.1, and the bar table of A29/A6 in inches (read, in reproductions).
TEST_CASE("bars have the minimum diameters of A108 and A29", "[sections][tolerance][published]") {
  CHECK_THAT(least_diameter(1.5, "1018_CD"), WithinAbs(1.498, 1e-9));
  CHECK_THAT(least_diameter(2.0, "1018_CD"), WithinAbs(1.997, 1e-9));
  CHECK_THAT(least_diameter(1.5, "1045_CD"), WithinAbs(1.497, 1e-9));
  CHECK_THAT(least_diameter(1.0, "1018_HR"), WithinAbs(0.991, 1e-9));
  CHECK_THAT(least_diameter(1.5, "A36"), WithinAbs(1.486, 1e-9));
}

// EN 10305-1: wall 10 %, not under 0.1 mm (read, in a tube handbook's sheet).
TEST_CASE("precision tube has the minimum walls of EN 10305-1",
          "[sections][tolerance][published]") {
  const MinimumShape tube = least(RoundTube{0.040, 0.003}, "E355");
  CHECK_THAT(std::get<RoundTube>(tube.shape).wall, WithinAbs(0.0027, 1e-9));
  CHECK(std::get<RoundTube>(tube.shape).outside < 0.040);
  const MinimumShape thin = least(RoundTube{0.012, 0.0008}, "E355");
  CHECK_THAT(std::get<RoundTube>(thin.shape).wall, WithinAbs(0.0007, 1e-9));
}

// Square and rectangular mechanical tube, and A500: 10 % of the wall (read, in a data book).
TEST_CASE("rectangular tube loses a tenth of its wall", "[sections][tolerance][published]") {
  const MinimumShape box = least(RectangularTube{0.05, 0.05, 0.004, 0.008}, "A500C_rect");
  CHECK_THAT(std::get<RectangularTube>(box.shape).wall, WithinAbs(0.0036, 1e-12));
}

TEST_CASE("what no table covers stays as it is, and says so", "[sections][tolerance]") {
  const Shape flat = FlatBar{0.05, 0.006};
  const MinimumShape same = least(flat, "A36");
  CHECK_FALSE(same.known);
  CHECK(same.shape == flat);
  CHECK_THAT(same.basis, Contains("nothing is taken off"));
  CHECK_FALSE(least(RoundBar{10.0 * in}, "1018_CD").known);
  CHECK(used_shape(RoundBar{in}, find_material("1018").value(), Sizes::nominal) ==
        Shape(RoundBar{in}));
}

TEST_CASE("minimum sizes of everything in the tables can exist", "[sections][tolerance]") {
  for (const Material& steel : materials()) {
    for (const double outside : {0.25, 0.5, 0.999, 1.5, 1.7, 2.2, 3.9, 8.0}) {
      for (const double wall : {0.02, 0.049, 0.1, 0.12}) {
        const MinimumShape tube = least(RoundTube{outside * in, wall * in}, steel.id.c_str());
        CHECK_NOTHROW(require_valid(tube.shape));
      }
      CHECK_NOTHROW(require_valid(least(RoundBar{outside * in}, steel.id.c_str()).shape));
    }
  }
}

// ASTM A513, A500, A108, A29 and EN 10305-1, all from memory.
TEST_CASE("bars and tubes are as straight as their standard asks", "[sections][tolerance]") {
  const auto share = [](const char* steel) {
    return sections::straightness(find_material(steel).value()).share;
  };
  CHECK_THAT(share("DOM"), WithinAbs(0.030 / 36.0, 1e-12));
  CHECK_THAT(share("A500C_rect"), WithinAbs(1.0 / 480.0, 1e-12));
  CHECK_THAT(share("1018_CD"), WithinAbs(1.0 / 960.0, 1e-12));
  CHECK_THAT(share("1018_HR"), WithinAbs(1.0 / 240.0, 1e-12));
  CHECK_THAT(share("E355"), WithinAbs(0.0015, 1e-12));
  CHECK_THAT(share("S355H"), WithinAbs(0.001, 1e-12));
  CHECK_THAT(std::string(sections::straightness(find_material("S355H").value()).basis),
             Contains("L/1000"));
}

}  // namespace tolerance_test
