#include <catch2/catch.hpp>

#include "tests/cases/case_texts.hpp"
#include "tests/cases/rich_case.hpp"

namespace reader_problems_test {
using case_texts::kCantilever;
using case_texts::kLink;
using case_texts::problems;
using case_texts::with;
using Catch::Matchers::Contains;

namespace {

std::string link_with(const char* piece, const char* instead) {
  return problems(with(kLink, piece, instead));
}
std::string frame_with(const char* piece, const char* instead) {
  return problems(with(kCantilever, piece, instead));
}
std::string rich_with(const char* piece, const char* instead) {
  return problems(with(case_texts::kRich, piece, instead));
}

}  // namespace

TEST_CASE("the cases the other tests change have no problem", "[cases][problems]") {
  CHECK(problems(kLink).empty());
  CHECK(problems(kCantilever).empty());
  CHECK(problems(case_texts::kRich).empty());
}

TEST_CASE("an unknown key is refused with the nearest known one", "[cases][problems]") {
  CHECK(link_with("plates:", "plats:") ==
        "case.yaml:12:3: bracket.plats: unknown key `plats`; did you mean `plates`?");
  CHECK(link_with("bracket:", "bracet:") ==
        "case.yaml:10:1: bracet: unknown key `bracet`; did you mean `bracket`?");
  CHECK(link_with("title:", "titel:") ==
        "case.yaml:1:1: titel: unknown key `titel`; did you mean `title`?");
  CHECK(link_with("  drop: 9 in", "  color: red\n  drop: 9 in") ==
        "case.yaml:11:3: bracket.color: unknown key `color`");
  CHECK(problems(kLink + "factors:\n  weld_routin: 2\n") ==
        "case.yaml:23:3: factors.weld_routin: unknown key `weld_routin`; did you mean "
        "`weld_routine`?");
  CHECK(problems(kLink + "factors:\n  preset: every day\n") ==
        "case.yaml:23:11: factors.preset: `every day` is no table of factors known here: usual, "
        "AISC ASD, EN");
}

TEST_CASE("a missing key is said at its part, with what would do", "[cases][problems]") {
  CHECK(link_with("  drop: 9 in\n", "") ==
        "case.yaml:10:1: bracket: `drop` is missing: rail bottom to bolt, e.g. 9 in");
  CHECK(link_with("  rise: 4 in\n", "") ==
        "case.yaml:6:1: lateral_link: `rise` is missing: frame bolt above axle bolt, e.g. 4 in");
  CHECK(link_with("title: invented\n", "") ==
        "case.yaml:1:1: `title` is missing: what this case is, in a few words");
  CHECK(link_with("drop: 9 in", "drop:") ==
        "case.yaml:11:3: bracket.drop: it has no value; give e.g. 9 in");
  CHECK(rich_with("shape: round_tube, ", "") ==
        "case.yaml:26:3: sections.tube: `shape` is missing; it is one of: round_bar, round_tube, "
        "rectangular_tube, flat_bar, twin_plate, by_numbers, channel, angle, boxed_channel, "
        "thin_walled");
}

TEST_CASE("a quantity without a unit or with a wrong one is refused", "[cases][problems]") {
  CHECK(link_with("drop: 9 in", "drop: 9") ==
        "case.yaml:11:9: bracket.drop: 9 has no unit; a length needs one, e.g. in or mm");
  CHECK(link_with("drop: 9 in", "drop: 9 lb") ==
        "case.yaml:11:9: bracket.drop: 9 lb is a mass or force; a length is needed, e.g. in or mm");
  CHECK(frame_with("0, 10, 0 in", "0, 10, 0") ==
        "case.yaml:4:8: points.tip: 0 has no unit; a length needs one, e.g. in or mm");
  CHECK(link_with("tire: 37 in", "tire: not sure") ==
        "case.yaml:4:9: vehicle.tire: `not sure` does not do here; a length is needed, e.g. 9 in");
}

TEST_CASE("a wall that leaves no hole is refused with what would do", "[cases][problems]") {
  CHECK(link_with("1-1/2 x 0.250 in DOM", "1-1/2 x 0.75 in DOM") ==
        "case.yaml:9:9: lateral_link.tube: a wall of 0.75 in is not under half of the outside "
        "diameter (1-1/2 in); give a wall under 0.75 in, or a bar, `1-1/2 in solid bar`");
  CHECK_THAT(rich_with("wall: 0.188 in", "wall: 1 in"),
             Contains("case.yaml:26:50: sections.tube.wall: ") && Contains("give a wall under"));
}

TEST_CASE("parts without length are refused", "[cases][problems]") {
  CHECK(link_with("bolt_to_bolt: 34 in", "bolt_to_bolt: 0 in") ==
        "case.yaml:7:17: lateral_link.bolt_to_bolt: 0 in is not over 0");
  CHECK(frame_with("to: tip", "to: wall") ==
        "case.yaml:6:3: members.bar: it has no length: it starts and ends at `wall`");
  CHECK(frame_with("0, 10, 0 in", "0, 0, 0 mm") ==
        "case.yaml:4:3: points.tip: `tip` is at the same place as `wall`; use one point for both");
  CHECK_THAT(rich_with("axle_bolt: link at axle", "axle_bolt: link at frame"),
             Contains("lateral_link.axle_bolt: the link has no length: both bolts are at `link at "
                      "frame`"));
  CHECK_THAT(rich_with("frame: arm at frame", "frame: arm lower bolt"),
             Contains("arm.frame: the arm has no length"));
}

TEST_CASE("unknown names are refused with the nearest known one", "[cases][problems]") {
  CHECK(frame_with("to: tip", "to: tap") ==
        "case.yaml:8:9: members.bar.to: there is no point `tap`; did you mean `tip`?");
  CHECK(frame_with("A36", "A360") ==
        "case.yaml:9:14: members.bar.section: unknown steel `A360`; did you mean `A36`?");
  CHECK_THAT(rich_with("twin A36", "twinn A36"), Contains("did you mean `twin`?"));
  CHECK_THAT(rich_with("to_joint: soft mount", "to_joint: soft mont"),
             Contains("members.strut.to_joint: unknown joint `soft mont`; did you mean `soft "
                      "mount`?"));
  CHECK(problems(kLink + "load_cases: [hard_corner, hard_cornr]\n") ==
        "case.yaml:22:27: load_cases: unknown load case `hard_cornr`; did you mean `hard_corner`?");
  CHECK(
      rich_with("shape: flat_bar", "shape: flat_baar") ==
      "case.yaml:28:17: sections.flat.shape: unknown shape `flat_baar`; did you mean `flat_bar`?");
}

TEST_CASE("numbers that are not finite are refused", "[cases][problems]") {
  CHECK(frame_with("-100 lb", ".nan lb") ==
        "case.yaml:16:14: forces.load.force_z: `.nan lb` is not a finite number");
  CHECK(frame_with("-100 lb", "-.inf lb") ==
        "case.yaml:16:14: forces.load.force_z: `-.inf lb` is not a finite number");
  CHECK(frame_with("-100 lb", "1e400 lb") ==
        "case.yaml:16:14: forces.load.force_z: `1e400 lb` is not a finite number");
  CHECK(frame_with("0, 10, 0 in", "0, .inf, 0 in") ==
        "case.yaml:4:8: points.tip: `.inf` is not a finite number");
}

TEST_CASE("parts that lack another part are refused", "[cases][problems]") {
  const std::string bracket = kLink.substr(kLink.find("bracket:"));
  CHECK(link_with(bracket.substr(0, bracket.find("brace:")).c_str(), "") ==
        "case.yaml:10:1: brace: a brace holds a bracket: add `bracket:`");
  const std::string no_link = kLink.substr(0, kLink.find("lateral_link:")) + bracket;
  CHECK(problems(no_link) ==
        "case.yaml:6:1: bracket: a bracket carries a lateral link's bolt: add `lateral_link:`");
  const std::string no_vehicle = "title: t\n" + kLink.substr(kLink.find("lateral_link:"));
  CHECK(problems(no_vehicle) ==
        "case.yaml:2:1: lateral_link: nothing loads it: add `vehicle:` (axle_weight, tire, track), "
        "or `forces:`");
  CHECK(problems("title: t\n") ==
        "case.yaml:1:1: there is nothing to check: add `lateral_link:` and `vehicle:`, or "
        "`members:`");
  CHECK(problems(kCantilever.substr(0, kCantilever.find("forces:"))) ==
        "case.yaml:5:1: members: nothing loads the frame: add `forces:`");
}

TEST_CASE("values that clash are refused", "[cases][problems]") {
  CHECK(link_with("rise: 4 in", "rise: -34 in") ==
        "case.yaml:8:3: lateral_link.rise: -34 in is not under the length from bolt to bolt (34 "
        "in)");
  CHECK_THAT(rich_with("  axle_bolt: link at axle\n", "  axle_bolt: link at axle\n  rise: 4 in\n"),
             Contains("lateral_link: give either bolt_to_bolt and rise, or the points"));
  CHECK_THAT(rich_with("joins_at: 16 in, ", ""),
             Contains("arm: `joins_at` or `upper_frame` is missing"));
  CHECK_THAT(rich_with("joins_at: 16 in", "joins_at: 50 in"),
             Contains("arm.joins_at: 50 in is beyond the lower tube, which is 36.09 in long"));
  std::string crossed = case_texts::kRich;
  crossed.replace(crossed.find("[-37, 16, 17 in]"), 16, "[-37,-16, 17 in]");
  CHECK(problems(crossed) == "");
  crossed.replace(crossed.find("mirror: no"), 10, "mirror: yes");
  CHECK_THAT(problems(crossed),
             Contains("arm.frame: `arm at frame` lies on the other side of the truck than `arm "
                      "lower bolt`: left and right arm would cross"));
  std::string two_bolts = kLink;
  two_bolts.replace(two_bolts.find("  rise"), 0, "  bolt: 5/8 in grade 8\n");
  CHECK(problems(two_bolts + "  bolt: 3/4 in grade 8\n") ==
        "case.yaml:23:3: brace.bolt: the brace meets the bracket at the link's bolt, and "
        "`lateral_link.bolt` is another one; name the same bolt, or leave one out");
  CHECK(problems(two_bolts + "  bolt: 5/8 in grade 8\n") == "");
  CHECK(link_with("slope: 15 deg", "slope: 15 deg\n  meets_bracket: 9 in above the bolt") ==
        "case.yaml:21:3: brace.meets_bracket: 9 in above the bolt is not below the rail: the drop "
        "is 9 in");
  CHECK(link_with("slope: 15 deg", "slope: 95 deg") ==
        "case.yaml:20:10: brace.slope: 95 deg is over the most that is allowed, 80 deg");
  CHECK_THAT(rich_with("total_weight: 8600 lb", "total_weight: 2000 lb"),
             Contains("vehicle.total_weight: the whole truck weighs less"));
  CHECK_THAT(rich_with("young: 29000 ksi", "young: 29 ksi"),
             Contains("materials.shop steel.young: no structural metal has that modulus"));
  CHECK(
      link_with("track: 66 in", "track: 66 mm") ==
      "case.yaml:5:3: vehicle.track: 2.598 in is not believable here (from 27.56 in to 118.1 in); "
      "is the unit right?");
  CHECK_THAT(link_with("tube: 1-1/2 x 0.120 in DOM", "tube: 1-1/2 in x 0.188 mm DOM"),
             Contains("a wall of 0.007402 in is not believable for a tube"));
  CHECK(frame_with("-100 lb", "0 lb") ==
        "case.yaml:14:3: forces.load: it is 0; give a force or moment, e.g. force_z: -8 kN");
  CHECK_THAT(rich_with("along_x: 1.7 lb/in", "along_x: 0 lb/in"),
             Contains("springs.ground: it has no rate"));
}

TEST_CASE("sizes that no truck has are refused: a slip in a unit or a digit", "[cases][problems]") {
  CHECK(link_with("5500 lb", "55 lb") ==
        "case.yaml:3:3: vehicle.axle_weight: 55 lbf is not believable here (from 400 lbf to 25 "
        "kip); is the unit right?");
  CHECK(link_with("drop: 9 in", "drop: 95 in").find("bracket.drop: 95 in is not believable here") !=
        std::string::npos);
  CHECK(link_with("bolt_to_bolt: 34 in", "bolt_to_bolt: 340 in").find("340 in is not believable") !=
        std::string::npos);
}

TEST_CASE("names that hide the format's own are refused", "[cases][problems]") {
  CHECK_THAT(rich_with("  shop steel:\n", "  A36:\n"),
             Contains("materials.A36: this is a built-in steel; give yours another name"));
  CHECK_THAT(rich_with("  soft mount: {", "  rod end: {"),
             Contains("joints.rod end: this is a joint of the format"));
  CHECK_THAT(frame_with("  bar:", "  a.b:"), Contains("a name is a few words without `.`"));
}

TEST_CASE("two spellings of one key are not both taken", "[cases][problems]") {
  CHECK(link_with("  rise: 4 in\n", "  rise: 4 in\n  bar: 1-1/2 in solid bar\n") ==
        "case.yaml:9:3: lateral_link.bar: it says the same as `tube`; give one of them");
}

TEST_CASE("all independent problems of a file are reported together, by line",
          "[cases][problems]") {
  std::string text = with(kLink, "5500 lb", "5500");
  text = with(text, "34 in", "34 lb");
  text = with(text, "plates: 2 of 5/16 in mild steel", "plats: 2 of 5/16 in mild steel");
  text = with(text, "1-1/2 x 0.120 in DOM", "1-1/2 x 0.120 in DON");
  CHECK(problems(text) ==
        "case.yaml:3:16: vehicle.axle_weight: 5500 has no unit; a force needs one, e.g. lb or kN\n"
        "case.yaml:7:17: lateral_link.bolt_to_bolt: 34 lb is a mass or force; a length is needed, "
        "e.g. in or mm\n"
        "case.yaml:12:3: bracket.plats: unknown key `plats`; did you mean `plates`?\n"
        "case.yaml:18:9: brace.tube: unknown steel `DON`; did you mean `DOM`?");
}

TEST_CASE("a section with a problem of its own is not reported again where it is used",
          "[cases][problems]") {
  CHECK(rich_with("thickness: 1/4 in", "thickness: 1/4") ==
        "case.yaml:29:53: sections.twin.thickness: 1/4 has no unit; a length needs one, e.g. in or "
        "mm");
}

TEST_CASE("problems of variants stand at their line", "[cases][problems]") {
  CHECK(problems(kLink + "variants:\n"
                         "  v:\n"
                         "    bracket.drp: 7 in\n"
                         "  w:\n"
                         "    bracket: none\n"
                         "compare: [no brase, bracket.drop = 7]\n") ==
        "case.yaml:24:18: variants.v.bracket.drp: unknown key `drp`; did you mean `drop`?\n"
        "case.yaml:25:3: variants.w.brace: a brace holds a bracket: add `bracket:`\n"
        "case.yaml:27:11: compare: there is no part `brase`; did you mean `brace`?\n"
        "case.yaml:27:21: compare: bracket.drop: 7 has no unit; a length needs one, e.g. in or mm");
}

TEST_CASE("shapes of thin walls that cannot exist are refused at their key", "[cases][problems]") {
  CHECK_THAT(rich_with("web: 3/16 in, flange: 1/4 in", "web: 3 in, flange: 1/4 in"),
             Contains("sections.rail.web: 76.2 mm (3 in) leaves nothing of the flanges; give a "
                      "thickness under 76.2 mm (3 in)"));
  CHECK_THAT(
      rich_with("depth: 3 in, width: 2 in, wall: 1/4 in", "depth: 3 in, width: 2 in, wall: 2 in"),
      Contains("sections.corner.wall: 50.8 mm (2 in) leaves nothing of a leg"));
  CHECK_THAT(rich_with("    plate: 1/4 in}", "    plat: 1/4 in}"),
             Contains("did you mean `plate`?"));
  CHECK_THAT(rich_with("[10, 0], [30, 0 mm]]", "[10, 0], [10, 0 mm]]"),
             Contains("sections.hat.points: wall 5 has no length: two points are the same"));
  CHECK_THAT(rich_with("[10, 0], [30, 0 mm]]", "[10, 0], [30, 0]]"),
             Contains("sections.hat.points: 0 has no unit; a length needs one"));
  CHECK_THAT(rich_with("[10, 0], [30, 0 mm]]", "[10, 0], [30 mm]]"),
             Contains("sections.hat.points: a point is [y, z]; e.g. "));
  CHECK_THAT(rich_with("walls: [2, 3, 2, 3, 4 mm]", "walls: [2, 3, 2, 3 mm]"),
             Contains("sections.five sided.walls: 4 thicknesses are given for 5 walls"));
  CHECK_THAT(rich_with("walls: 1/8 in}", "walls: -1/8 in}"),
             Contains("sections.hat.walls: -3.175 mm (-0.125 in) is not over 0"));
  CHECK_THAT(rich_with("walls: 1/8 in}", "walls: {a: b}}"), Contains("sections.hat.walls: "));
}

TEST_CASE("a thickness that a steel's strength does not cover is refused", "[cases][problems]") {
  CHECK(link_with("2 of 5/16 in mild steel", "2 of 20 mm S355") ==
        "case.yaml:12:3: bracket.plates: 20 mm is outside the thickness for which S355 (EN 10025-2 "
        "S355) has its strength, 0 in to 16 mm; name S355_40");
  CHECK_THAT(link_with("1-1/2 x 0.250 in DOM", "3 x 0.6 in DOM"),
             Contains("lateral_link.tube: 0.6 in is outside the thickness") &&
                 Contains("name another steel, or give yours under `materials:`"));
}

TEST_CASE("sizes are nominal or minimum", "[cases][problems]") {
  CHECK(problems(kLink + "sizes: minimum\n").empty());
  CHECK_THAT(problems(kLink + "sizes: least\n"),
             Contains("sizes: `least` is neither nominal nor minimum"));
}

}  // namespace reader_problems_test
