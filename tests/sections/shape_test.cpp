#include "sections/shape.hpp"

#include <limits>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"

namespace shape_test {
using namespace sections;

namespace {

constexpr double in = base::kInch;
constexpr double mm = base::kMillimeter;

std::string complaint(const Shape& shape) {
  try {
    require_valid(shape);
  } catch (const base::InputError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("shapes that can exist are accepted", "[sections][shape]") {
  CHECK(complaint(RoundBar{0.03}).empty());
  CHECK(complaint(RoundTube{1.5 * in, 0.25 * in}).empty());
  CHECK(complaint(FlatBar{0.06, 0.01}).empty());
  CHECK(complaint(TwinPlate{0.08, 0.006, 0.05}).empty());
  CHECK(complaint(ByNumbers{.area = 1e-3,
                            .iyy = 1e-7,
                            .izz = 1e-7,
                            .torsion = 1e-7,
                            .modulus_y = 1e-5,
                            .modulus_z = 1e-5})
            .empty());
}

TEST_CASE("a corner radius may be one wall or half the smaller side", "[sections][shape]") {
  CHECK(complaint(RectangularTube{0.06, 0.04, 0.003, 0.003}).empty());
  CHECK(complaint(RectangularTube{0.06, 0.04, 0.003, 0.020}).empty());
}

TEST_CASE("a wall of half the diameter is refused in both units", "[sections][shape]") {
  CHECK(complaint(RoundTube{1.5 * in, 1.0 * in}) ==
        "wall: 25.4 mm (1 in) is half of the outside diameter (38.1 mm (1.5 in)) or more; "
        "give a wall under 19.05 mm (0.75 in), or a round bar");
  CHECK(complaint(RoundTube{0.04, 0.02}).find("wall: 20 mm") == 0);
  CHECK(complaint(RectangularTube{0.06, 0.04, 0.02, 0.02}) ==
        "wall: 20 mm (0.7874 in) is half of the smaller side (40 mm (1.5748 in)) or more; "
        "give a wall under 20 mm (0.7874 in), or a flat bar");
}

TEST_CASE("a corner radius outside its range is refused with the range", "[sections][shape]") {
  CHECK(complaint(RectangularTube{60 * mm, 40 * mm, 3 * mm, 2 * mm}) ==
        "corner: 2 mm (0.07874 in) is not between the wall, 3 mm (0.11811 in), and half of the "
        "smaller side, 20 mm (0.7874 in); give the outside radius of the corner, often twice the "
        "wall");
  CHECK(complaint(RectangularTube{60 * mm, 40 * mm, 3 * mm, 21 * mm}).find("corner: 21 mm") == 0);
}

TEST_CASE("every size of a shape must be given, finite and over zero", "[sections][shape]") {
  const auto check = [](const Shape& shape, const std::string& key) {
    INFO(key);
    CHECK(complaint(shape) == key + ": no value is given; give one over 0");
  };
  check(RoundBar{}, "diameter");
  check(RoundTube{}, "outside");
  check(RoundTube{.outside = 0.05}, "wall");
  check(RectangularTube{}, "depth");
  check(RectangularTube{.depth = 0.06}, "width");
  check(RectangularTube{0.06, 0.04}, "wall");
  check(RectangularTube{0.06, 0.04, 0.003}, "corner");
  check(FlatBar{}, "depth");
  check(FlatBar{.depth = 0.06}, "width");
  check(TwinPlate{}, "depth");
  check(TwinPlate{.depth = 0.06}, "thickness");
  check(TwinPlate{.depth = 0.06, .thickness = 0.005}, "gap");
  check(ByNumbers{}, "area");
  ByNumbers s{.area = 1e-3};
  check(s, "iyy");
  s.iyy = 1e-7;
  check(s, "izz");
  s.izz = 1e-7;
  check(s, "torsion");
  s.torsion = 1e-7;
  check(s, "modulus_y");
  s.modulus_y = 1e-5;
  check(s, "modulus_z");

  CHECK(complaint(RoundBar{-1.0 * in}) ==
        "diameter: -25.4 mm (-1 in) is not over 0; give a value over 0");
  CHECK(complaint(FlatBar{0.0, 0.01}) == "depth: 0 mm (0 in) is not over 0; give a value over 0");
  CHECK(complaint(TwinPlate{0.06, 0.005, std::numeric_limits<double>::infinity()}) ==
        "gap: the value is not finite; give one over 0");
}

TEST_CASE("numbers that may stay unset must be over zero when given", "[sections][shape]") {
  ByNumbers s{.area = 1e-3,
              .iyy = 1e-7,
              .izz = 1e-7,
              .torsion = 1e-7,
              .modulus_y = 1e-5,
              .modulus_z = 1e-5};
  s.shear_y = 0.0;
  CHECK(complaint(s).find("shear_y: 0 mm^2") == 0);
  s.shear_y = base::kUnset;
  s.shear_z = -25.4e-3 * 25.4e-3;
  CHECK(complaint(s).find("shear_z: -645.16 mm^2 (-1 in^2) is not over 0") == 0);
  s.shear_z = base::kUnset;
  s.modulus_t = std::numeric_limits<double>::infinity();
  CHECK(complaint(s) == "modulus_t: the value is not finite; give one over 0");
}

TEST_CASE("shapes are described the way a shop writes them", "[sections][shape]") {
  CHECK(describe(RoundTube{1.5 * in, 0.25 * in}, true) == "1-1/2 x 0.250 in round tube");
  CHECK(describe(RoundTube{1.5 * in, 0.25 * in}, false) == "38.1 x 6.35 mm round tube");
  CHECK(describe(RoundTube{2.0 * in, 0.12 * in}, true) == "2 x 0.120 in round tube");
  CHECK(describe(RoundBar{1.0 * in + in / 64.0}, true) == "1-1/64 in round bar");
  CHECK(describe(RoundBar{5.0 / 16.0 * in}, true) == "5/16 in round bar");
  CHECK(describe(RoundBar{40 * mm}, true) == "1.5748 in round bar");
  CHECK(describe(RoundBar{40 * mm}, false) == "40 mm round bar");
  CHECK(describe(FlatBar{3.0 * in, 0.25 * in}, true) == "3 x 1/4 in flat bar");
  CHECK(describe(FlatBar{3.0 * in, 0.12 * in}, true) == "3 x 0.120 in flat bar");
  CHECK(describe(RectangularTube{4 * in, 2 * in, 0.25 * in, 0.5 * in}, true) ==
        "4 x 2 x 0.250 in rectangular tube");
  CHECK(describe(RectangularTube{50 * mm, 50 * mm, 3 * mm, 6 * mm}, false) ==
        "50 x 50 x 3 mm square tube");
  CHECK(describe(TwinPlate{3.0 * in, 0.25 * in, 2.0 * in}, true) ==
        "two 3 x 1/4 in plates, 2 in apart");
  CHECK(describe(ByNumbers{}, true) == "section given by its numbers");
}

}  // namespace shape_test
