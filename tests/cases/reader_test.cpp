#include "cases/reader.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

#include "cases/small_case.hpp"
#include "tests/cases/case_texts.hpp"
#include "tests/cases/rich_case.hpp"

namespace reader_test {
using case_texts::design;
using case_texts::kCantilever;
using case_texts::kLink;
using case_texts::with;
using Catch::Matchers::WithinRel;

namespace {

/// "value (basis)" of an assumption; empty when the key is not assumed.
std::string assumed(const parts::Design& d, const std::string& key) {
  for (const parts::Assumption& a : d.assumed) {
    if (a.key == key) return a.value + " (" + a.basis + ")";
  }
  return {};
}

}  // namespace

TEST_CASE("the small case reads to what its words say", "[cases][reader]") {
  const parts::Design d = design(std::string(cases::small_case()));
  CHECK(d.title == "lateral link, 9 in drop, braced");
  CHECK(d.inches);
  CHECK_THAT(d.vehicle->axle_weight, WithinRel(5500 * 4.4482216152605, 1e-12));
  CHECK_THAT(d.lateral_link->bolt_to_bolt, WithinRel(0.8636, 1e-12));
  CHECK(d.lateral_link->stick.material.id == "DOM1020_SR");
  CHECK(d.lateral_link->ends.joint.kind == parts::JointKind::bushing);
  CHECK(d.bracket->plates.count == 2);
  CHECK(d.bracket->rail.boxed);
  CHECK(d.bracket->welded_to.inner_side);
  CHECK_FALSE(d.bracket->welded_to.outer_side);
  CHECK(std::isnan(d.bracket->rail_stiffness));
  CHECK_THAT(d.brace->slope, WithinRel(15 * base::kPi / 180, 1e-12));
  REQUIRE(d.variants.size() == 2);
  CHECK(d.variants[0] == parts::Variant{"no brace", {{"brace", ""}}});
  CHECK(d.variants[1].patches[0] == parts::Patch{"lateral_link.tube", "1-1/2 in solid bar"});
}

TEST_CASE("every default that was used is listed with its basis", "[cases][reader]") {
  const parts::Design d = design(kLink);
  CHECK(assumed(d, "vehicle.friction") ==
        "0.9 (upper end of dry pavement; Wong, Theory of Ground Vehicles (from memory))");
  CHECK(assumed(d, "bracket.gap").find("1.969 in (") == 0);
  CHECK(assumed(d, "lateral_link.bend").find("none (") == 0);
  CHECK(assumed(d, "weights").find("lb read as the force of its weight") == 0);
  CHECK(assumed(d, "lateral_link.tube.steel").find("DOM1020_SR (`DOM` alone, also as drawn") == 0);
  CHECK(assumed(d, "bracket.plates.steel").find("A36 (`mild steel` alone") == 0);
  CHECK(assumed(d, "sizes").find("nominal (") == 0);
  const parts::Design given = design(with(kLink, "track: 66 in", "track: 66 in\n  friction: 0.7"));
  CHECK(given.vehicle->friction == 0.7);
  CHECK(assumed(given, "vehicle.friction").empty());
  const parts::Design bar = design(with(kLink, "1-1/2 x 0.250 in DOM", "1-1/2 in solid bar"));
  CHECK(assumed(bar, "lateral_link.tube.steel").find("1018_CD (") == 0);
}

TEST_CASE("units are those most used, unless they are said", "[cases][reader]") {
  CHECK(design(kLink).inches);
  CHECK_FALSE(design("units: millimeters\n" + kLink).inches);
  std::string metric = kCantilever;
  for (const char* size : {"0, 0, 0 in", "0, 10, 0 in"}) {
    metric = with(metric, size, size == std::string("0, 0, 0 in") ? "0, 0, 0 mm" : "0, 250, 0 mm");
  }
  metric = with(with(metric, "1 in", "25 mm"), "-100 lb", "-2 kN");
  CHECK_FALSE(design(metric).inches);
}

TEST_CASE("not sure leaves a bounded value unset", "[cases][reader]") {
  const std::string text = with(kLink, "slope: 15 deg", "slope: 15 deg\n  end_mount: Not sure");
  CHECK(std::isnan(design(text).brace->end_mount));
}

TEST_CASE("the last unit of a point serves the numbers before it", "[cases][reader]") {
  const parts::Design d = design(case_texts::kRich);
  CHECK_THAT(d.points[0].value[1], WithinRel(17 * 0.0254, 1e-12));
  CHECK_THAT(d.points[2].value[0], WithinRel(0.1, 1e-12));
  CHECK_THAT(d.points[2].value[2], WithinRel(0.508, 1e-12));
  CHECK_THAT(d.points[6].value[0], WithinRel(-0.001 / 3, 1e-12));
}

TEST_CASE("a joint whose axis is not said keeps the one usual for its part", "[cases][reader]") {
  const std::string arm = with(case_texts::kRich, "hard bushing along z", "hard bushing");
  CHECK(design(arm).arm->frame_joint.axis == parts::Axis::y);
  CHECK(design(arm).arm->frame_joint.grade == parts::BushingGrade::hard);
}

TEST_CASE("a problem found after reading is placed at its key or the nearest above",
          "[cases][reader]") {
  const cases::Reading reading = cases::read(kLink, "case.yaml");
  const auto located = [&](const char* key) {
    return std::string(reading.locate(base::InputError(key, "wrong")).what());
  };
  CHECK(located("bracket.plates") == "case.yaml:12:3: bracket.plates: wrong");
  CHECK(located("vehicle.wheelbase") == "case.yaml:2:1: vehicle.wheelbase: wrong");
  CHECK(located("nothing") == "case.yaml: nothing: wrong");
}

TEST_CASE("a damaged case file is read or refused, never worse", "[cases][reader]") {
  std::mt19937 random(11);
  for (const std::string& whole : {kLink, case_texts::kRich}) {
    for (int i = 0; i < 1500; ++i) {
      std::string text = whole;
      for (int n = 0; n < 1 + i % 3; ++n) {
        const std::size_t at = random() % text.size();
        const std::size_t length = 1 + random() % 8;
        if (random() % 2 == 0) text.erase(at, length);
        const std::string piece = text.substr(std::min(at, text.size() - 1), length);
        if (random() % 2 == 0) text.insert(random() % text.size(), piece);
      }
      const cases::Reading reading = cases::read(text, "case.yaml");
      CHECK(reading.design.has_value() == reading.problems.empty());
      for (const base::InputError& problem : reading.problems) {
        INFO(problem.what());
        CHECK(problem.where().line > 0);
        CHECK(problem.where().column > 0);
      }
    }
  }
}

}  // namespace reader_test
