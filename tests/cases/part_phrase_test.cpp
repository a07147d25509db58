#include <cmath>

#include <catch2/catch.hpp>

#include "cases/phrase.hpp"
#include "tests/cases/case_texts.hpp"

namespace part_phrase_test {
using case_texts::thrown;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;

namespace {

parts::Design with_joint() {
  parts::Design design;
  design.joints.push_back({"soft mount", {{1e6, 2e6, 3e6, 0, 10, 10}}});
  return design;
}

template <class T>
T read(std::string_view text) {
  return cases::read_phrase<T>(text, with_joint()).value;
}

template <class T>
std::string refused(std::string_view text) {
  return thrown([&] { (void)cases::read_phrase<T>(text, with_joint()); });
}

/// What is written after reading, in inches.
template <class T>
std::string rewritten(std::string_view text) {
  return cases::write_phrase(read<T>(text), with_joint());
}

}  // namespace

TEST_CASE("plates read and write", "[cases][phrase]") {
  const auto plates = read<parts::Plates>("Two of  5/16 in mild steel");
  CHECK(plates.count == 2);
  CHECK_THAT(plates.thickness, WithinRel(0.0079375, 1e-12));
  CHECK(plates.material.id == "A36");
  CHECK(rewritten<parts::Plates>("2 of 5/16 in mild steel") == "2 of 0.3125 in A36");
  CHECK(read<parts::Plates>("2 of 0.3125 in A36") == plates);
  CHECK_THAT(
      refused<parts::Plates>("5/16 in mild steel"),
      Contains("does not say how many plates") && Contains("e.g. `2 of 5/16 in mild steel`"));
  CHECK_THAT(refused<parts::Plates>("3 of 5/16 in mild steel"), Contains("is not 1 or 2 plates"));
  CHECK_THAT(refused<parts::Plates>("2 of 5/16 in"), Contains("does not name its steel"));
  CHECK(refused<parts::Plates>("2 of 5/16 in mild stel") ==
        "unknown steel `mild stel`; did you mean `mild steel`?");
  CHECK_THAT(refused<parts::Plates>("2 of 5/16 mild steel"), Contains("has no unit of length"));
}

TEST_CASE("bolts read and write", "[cases][phrase]") {
  const auto bolt = read<parts::BoltSpec>("5/8 in Grade 8, single shear");
  CHECK(bolt.thread.name == "5/8-11");
  CHECK(bolt.grade.name == "grade 8");
  CHECK_FALSE(bolt.double_shear);
  CHECK(bolt.threads_in_plane);
  CHECK(read<parts::BoltSpec>("0.625 in fine bolt grade 8").thread.name == "5/8-18");
  CHECK(read<parts::BoltSpec>("5/8-18 grade 5").thread.name == "5/8-18");
  CHECK(read<parts::BoltSpec>("m16 10.9").thread.name == "M16 x 2");
  CHECK(read<parts::BoltSpec>("M16x1.5 class 10.9").thread.name == "M16 x 1.5");
  const std::string all =
      "M16 x 2 class 10.9, double shear, threads out of the shear plane, loose stack";
  CHECK(rewritten<parts::BoltSpec>(all) == all);
  CHECK(cases::read_phrase<parts::BoltSpec>(all, with_joint()).assumed.empty());
  CHECK(cases::read_phrase<parts::BoltSpec>("5/8 in grade 8", with_joint()).assumed.size() == 4);
  CHECK(rewritten<parts::BoltSpec>(all + ", spacers of 6 mm") == all + ", spacers of 6 mm");
}

TEST_CASE("bolts that are not known are refused", "[cases][phrase]") {
  CHECK_THAT(refused<parts::BoltSpec>("5/8 in"), Contains("does not end with a grade"));
  CHECK_THAT(refused<parts::BoltSpec>("5/8 in grade 7"), Contains("grade 2, 5 or 8"));
  CHECK_THAT(refused<parts::BoltSpec>("2 in x grade 8"), Contains("no thread known here"));
  CHECK_THAT(refused<parts::BoltSpec>("grade8"), Contains("does not say size and grade"));
  CHECK_THAT(refused<parts::BoltSpec>("2 in grade 8"), Contains("names no thread known here"));
  CHECK_THAT(refused<parts::BoltSpec>("M17 class 10.9"),
             Contains("or M8, M10, M12, M14, M16, M18, M20, M24"));
  CHECK_THAT(refused<parts::BoltSpec>("5/8 in class 10.9"),
             Contains("grade 2, 5 or 8 of SAE J429"));
  CHECK_THAT(refused<parts::BoltSpec>("M16 grade 8"), Contains("class 8.8, 10.9 or 12.9"));
  CHECK_THAT(refused<parts::BoltSpec>("5/8 in grade 8, triple shear"),
             Contains("`triple shear`") && Contains("double shear"));
  CHECK_THAT(refused<parts::BoltSpec>("5/8 in grade 8, spacers of brass"), Contains("spacers of"));
}

TEST_CASE("fillet welds read and write", "[cases][phrase]") {
  CHECK_THAT(read<parts::FilletWeld>("1/4 in fillet, both sides of each plate").leg,
             WithinRel(0.00635, 1e-12));
  CHECK(rewritten<parts::FilletWeld>("1/4 in Fillet, one side of each plate") ==
        "0.25 in fillet, one side of each plate");
  CHECK(read<parts::FilletWeld>("6 mm fillet both sides").both_sides);
  CHECK_FALSE(read<parts::FilletWeld>("6 mm fillet both sides").directional);
  CHECK(read<parts::FilletWeld>("6 mm fillet, both sides, directional strength").directional);
  CHECK_THAT(refused<parts::FilletWeld>("6 mm fillet, both sides, directional"),
             Contains("write `directional strength`"));
  CHECK_THAT(refused<parts::FilletWeld>("6 mm groove, both sides, directional strength"),
             Contains("is a fillet's"));
  CHECK_THAT(refused<parts::FilletWeld>("1/4 in fillet"),
             Contains("does not say `both sides` or `one side`"));
  CHECK(rewritten<parts::FilletWeld>("1/4 in groove, one side of each plate") ==
        "0.25 in groove, one side of each plate");
  CHECK_THAT(refused<parts::FilletWeld>("1/4 in bead, both sides"),
             Contains("is not the leg of a fillet"));
}

TEST_CASE("what tabs stand on reads and writes", "[cases][phrase]") {
  const std::string tabs = "2 of 6 mm S355, edge 25 mm, height 40 mm, gap 50 mm";
  const auto on = read<parts::TabSpec>(tabs + ", on 80 x 8 mm S355H, across the tube");
  CHECK(on.on_tube());
  CHECK(on.across);
  CHECK_THAT(on.gap, WithinRel(0.050, 1e-12));
  CHECK_THAT(rewritten<parts::TabSpec>(tabs + ", on 80 x 8 mm S355H, along the tube"),
             Contains("gap 50 mm, on 80 x 8 mm S355H, along the tube"));
  CHECK_FALSE(read<parts::TabSpec>(tabs).on_tube());
  CHECK_THAT(refused<parts::TabSpec>(tabs + ", on 80 x 8 mm S355H"), Contains("`along the tube`"));
  CHECK_THAT(refused<parts::TabSpec>(tabs + ", along the tube"), Contains("what tube"));
  CHECK_THAT(refused<parts::TabSpec>(tabs + ", on 80 x 40 x 4 mm S355H, along the tube"),
             Contains("no round tube"));
  CHECK_THAT(refused<parts::TabSpec>("1 of 6 mm S355, edge 25 mm, height 40 mm, gap 50 mm"),
             Contains("goes with two"));
}

TEST_CASE("tabs read and write", "[cases][phrase]") {
  const auto tabs =
      read<parts::TabSpec>("2 of 1/4 in A36, Edge 1 in, height 2 in, 3/16 in fillet both sides");
  CHECK(tabs.plates.count == 2);
  CHECK_THAT(tabs.edge, WithinRel(0.0254, 1e-12));
  CHECK_THAT(tabs.root_width(), WithinRel(0.0508, 1e-12));
  CHECK(tabs.weld.both_sides);
  CHECK(tabs.side_force == 0.05);
  const std::string all =
      "1 of 8 mm A36, edge 30 mm, height 40 mm, width 70 mm, off 12 mm, 6 mm fillet one side, side "
      "force 0.03";
  CHECK(rewritten<parts::TabSpec>(all) == all);
  CHECK(
      read<parts::TabSpec>("2 of 1/4 in A36, edge 1 in, height 2 in, side force 0 %").side_force ==
      0.0);
  CHECK_THAT(refused<parts::TabSpec>("2 of 1/4 in A36, height 2 in"), Contains("nearest edge"));
  CHECK_THAT(refused<parts::TabSpec>("2 of 1/4 in A36, edge 1 in"),
             Contains("how far the weld is"));
  CHECK_THAT(refused<parts::TabSpec>("2 of 1/4 in A36, edge 0 in, height 2 in"),
             Contains("is not over 0"));
  CHECK_THAT(refused<parts::TabSpec>("2 of 1/4 in A36, edge 1 in, tall 2 in"),
             Contains("`tall 2 in`"));
  CHECK_THAT(refused<parts::TabSpec>("2 of 1/4 in A36, edge 1 in, height 2 in, off 1 in"),
             Contains("goes with one tab"));
}

TEST_CASE("threads of rod ends read and write", "[cases][phrase]") {
  const auto thread = read<parts::ThreadSpec>("3/4-16, 1-1/8 in engaged, 1 in out, 60 ksi shank");
  CHECK(thread.thread.name == "3/4-16");
  CHECK_THAT(thread.engaged, WithinRel(0.028575, 1e-12));
  CHECK(rewritten<parts::ThreadSpec>("M20x1.5, 400 MPa shank, 30 mm engaged, 25 mm out") ==
        "M20 x 1.5, 30 mm engaged, 25 mm out, 400 MPa shank");
  CHECK_THAT(refused<parts::ThreadSpec>("3/4-17, 1 in engaged"), Contains("no thread known here"));
  CHECK_THAT(refused<parts::ThreadSpec>("3/4-16, 1 in out, 60 ksi shank"), Contains("engaged"));
  CHECK_THAT(refused<parts::ThreadSpec>("3/4-16, 1 in engaged, 60 ksi shank"), Contains("out"));
  CHECK_THAT(refused<parts::ThreadSpec>("3/4-16, 1 in engaged, 1 in out"),
             Contains("yield strength of its shank"));
  CHECK_THAT(refused<parts::ThreadSpec>("3/4-16, 1 in deep"), Contains("`1 in deep`"));
}

TEST_CASE("welds at ends read and write", "[cases][phrase]") {
  CHECK_THAT(read<parts::EndWeldSpec>("3/16 in").leg, WithinRel(0.0047625, 1e-12));
  CHECK_THAT(read<parts::EndWeldSpec>("1/4 in Fillet, fishmouth on 2 in sleeve").around,
             WithinRel(0.0508, 1e-12));
  const auto rosettes = read<parts::EndWeldSpec>("4 rosettes of 12 mm");
  CHECK(rosettes.rosettes == 4);
  CHECK(std::isnan(rosettes.leg));
  CHECK(rewritten<parts::EndWeldSpec>("5 mm, fishmouth on 50 mm, 2 rosettes of 12 mm") ==
        "5 mm fillet, fishmouth on 50 mm, 2 rosettes of 12 mm");
  CHECK_THAT(refused<parts::EndWeldSpec>("fishmouth on 50 mm"), Contains("no leg"));
  CHECK(rewritten<parts::EndWeldSpec>("1/8 in groove") == "0.125 in groove");
  CHECK(rewritten<parts::EndWeldSpec>("Full groove, 2 rosettes of 1/2 in") ==
        "full groove, 2 rosettes of 0.5 in");
  CHECK_THAT(refused<parts::EndWeldSpec>("5 mm groove, 4 mm fillet"), Contains("the one that"));
  CHECK_THAT(refused<parts::EndWeldSpec>("5 mm groove, fishmouth on 50 mm"), Contains("no leg"));
  CHECK_THAT(refused<parts::EndWeldSpec>("5 mm bead"), Contains("none of"));
  CHECK_THAT(refused<parts::EndWeldSpec>("9 rosettes of 12 mm"), Contains("2 to 8"));
  CHECK_THAT(refused<parts::EndWeldSpec>("5 mm fillet, fishmouth on a sleeve"), Contains("e.g."));
}

TEST_CASE("a bolt that friction is to hold reads and writes, and cannot be loose",
          "[cases][phrase]") {
  CHECK(read<parts::BoltSpec>("5/8-18 grade 8, held by friction").must_not_slip);
  CHECK_FALSE(read<parts::BoltSpec>("5/8-18 grade 8").must_not_slip);
  CHECK_THAT(rewritten<parts::BoltSpec>("5/8-18 grade 8, held by friction"),
             Contains("clamped stack, held by friction"));
  CHECK_THAT(refused<parts::BoltSpec>("5/8-18 grade 8, loose stack, held by friction"),
             Contains("friction cannot hold"));
}

TEST_CASE("rails read and write", "[cases][phrase]") {
  const auto rail = read<parts::Rail>("boxed, 3 x 6 x 3/16 in, 1/4 in frame plate");
  CHECK(rail.boxed);
  CHECK_THAT(rail.width, WithinRel(0.0762, 1e-12));
  CHECK_THAT(rail.height, WithinRel(0.1524, 1e-12));
  CHECK_THAT(rail.frame_plate, WithinRel(0.00635, 1e-12));
  CHECK(rewritten<parts::Rail>("Open, 70 x 160 x 5 mm") == "open, 70 x 160 x 5 mm");
  CHECK(read<parts::Rail>("open, 3 x 6 x 3/16 in, no frame plate").frame_plate == 0.0);
  CHECK_THAT(refused<parts::Rail>("3 x 6 x 3/16 in"),
             Contains("does not start with boxed or open"));
  CHECK_THAT(refused<parts::Rail>("boxed, 3 x 6 in"), Contains("width x height x wall"));
  CHECK_THAT(refused<parts::Rail>("boxed, 3 x 6 x 1.5 in"),
             Contains("has a wall of 1.5 in, too thick for a rail of 3 in x 6 in"));
  CHECK_THAT(refused<parts::Rail>("boxed, 3 x 6 x 3/16 in, 1/4 in plate"),
             Contains("which is no frame plate"));
}

TEST_CASE("rail faces read and write", "[cases][phrase]") {
  for (const char* text : {"bottom", "inner side", "bottom and inner side", "bottom and both sides",
                           "both sides", "bottom and outer side"}) {
    CHECK(rewritten<parts::RailFaces>(text) == text);
  }
  CHECK(read<parts::RailFaces>("Bottom, inner side and outer side").wraps_both_corners());
  CHECK_THAT(refused<parts::RailFaces>("top"), Contains("names no faces of the rail"));
}

TEST_CASE("ends of a link read and write", "[cases][phrase]") {
  for (const char* text : {"weld-on rubber bushing", "weld-on hard bushing", "weld-on ball joint",
                           "weld-on pin", "weld-on hard bushing along y", "weld-on soft mount",
                           "tapped ball joint", "clamped rubber bushing"}) {
    INFO(text);
    CHECK(rewritten<parts::LinkEnds>(text) == text);
  }
  CHECK(read<parts::LinkEnds>("Threaded rod end").welded);
  CHECK_FALSE(read<parts::LinkEnds>("tapped rod end").welded);
  CHECK(read<parts::LinkEnds>("threaded rod end").joint.kind == parts::JointKind::ball);
  CHECK_THAT(refused<parts::LinkEnds>("glued bushing"),
             Contains("`glued bushing` is no kind of end; would do: weld-on bushing"));
  CHECK_THAT(refused<parts::LinkEnds>("weld-on welded"), Contains("is no kind of end"));
}

TEST_CASE("joints read and write", "[cases][phrase]") {
  for (const char* text : {"welded", "ball joint", "pin along y", "rubber bushing along z",
                           "hard bushing along x", "soft mount"}) {
    INFO(text);
    CHECK(rewritten<parts::JointSpec>(text) == text);
  }
  CHECK(read<parts::JointSpec>("Rod End").kind == parts::JointKind::ball);
  CHECK(read<parts::JointSpec>("soft mount").rates[2] == 3e6);
  CHECK_THAT(refused<parts::JointSpec>("soft mont"), Contains("did you mean `soft mount`?"));
  CHECK_THAT(refused<parts::JointSpec>("welded along y"), Contains("unknown joint"));
}

TEST_CASE("bends, places on a bracket and held freedoms read and write", "[cases][phrase]") {
  for (const char* text : {"none", "2 in off straight", "2 in off straight, forward",
                           "2 in off straight, down", "2 in off straight, rearward"}) {
    CHECK(rewritten<parts::Bend>(text) == text);
  }
  CHECK(read<parts::Bend>("straight").off_straight == 0.0);
  CHECK_THAT(refused<parts::Bend>("2 in"), Contains("would do: `none`, `2 in off straight`"));
  CHECK_THAT(refused<parts::Bend>("2 in off straight, left"), Contains("is no bend"));

  CHECK(rewritten<parts::BraceAt>("At the  bolt") == "at the bolt");
  CHECK(rewritten<parts::BraceAt>("2 in above the bolt") == "2 in above the bolt");
  CHECK_THAT(refused<parts::BraceAt>("near the bolt"), Contains("would do: `at the bolt`"));

  for (const char* text : {"all", "x y z", "x z rx"}) CHECK(rewritten<parts::Held>(text) == text);
  CHECK(read<parts::Held>("rx, x, z") == read<parts::Held>("x z rx"));
  CHECK_THAT(refused<parts::Held>("x q"), Contains("would do: `all`, or some of `x y z rx ry rz`"));
}

}  // namespace part_phrase_test
