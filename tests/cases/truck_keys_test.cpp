// Frame, brace, axle and shop words of a case file: what they read as, and what is refused.
// Invented numbers, but for pipe sizes.
#include <cmath>

#include <catch2/catch.hpp>

#include "cases/patch.hpp"
#include "cases/phrase.hpp"
#include "cases/writer.hpp"
#include "tests/cases/case_texts.hpp"
#include "tests/cases/design_dump.hpp"
#include "tests/cases/rich_case.hpp"

namespace truck_keys_test {
using case_texts::design;
using case_texts::kLink;
using case_texts::kRich;
using case_texts::problems;
using case_texts::thrown;
using case_texts::with;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using parts::Stick;

namespace {

const std::string kFrame =
    "frame:\n"
    "  rails_apart: 33 in\n"
    "  cross_member: 3 x 2 x 0.125 in A500C_rect\n"
    "  cross_members_at: [20, -30 in]\n"
    "  held_at: [45, -50 in]\n";

const std::string kSpans = "  length: 34 in\n  slope: 15 deg\n";

std::string framed(const std::string& piece = "rails_apart",
                   const std::string& instead = "rails_apart") {
  return problems(with(with(kLink, kSpans, "") + kFrame, piece, instead));
}

std::string names_of(std::string_view words) {
  std::string all;
  for (const parts::Variant& v : cases::variants_from_words(design(kLink), words)) {
    all += v.name + ":";
    for (const parts::Patch& p : v.patches) all += " " + p.path + "=" + p.value;
    all += "\n";
  }
  return all;
}

Stick stick(std::string_view text) {
  return cases::read_phrase<Stick>(text, parts::Design{}).value;
}
std::string refused(std::string_view text) {
  return thrown([&] { (void)cases::read_phrase<Stick>(text, parts::Design{}); });
}

}  // namespace

TEST_CASE("a frame is read, written back, and ends the brace", "[cases][frame]") {
  CHECK(framed().empty());
  parts::Design d = design(with(kLink, kSpans, "") + kFrame);
  CHECK_THAT(d.frame->cross_members_at.at(1), WithinRel(-30.0 * 0.0254, 1e-12));
  CHECK(d.frame->held == parts::RailHold::pinned);
  CHECK(design_dump::design_text(design(cases::write(d))) == design_dump::design_text(d));
  // 33 in less half a rail, 9 in and half a rail up.
  CHECK_THAT(parts::placed_brace(d).length, WithinRel(0.0254 * std::hypot(31.5, 12.0), 1e-12));
  cases::set(d, {"frame.cross_members_at", "[15, -20 in]"});
  CHECK_THAT(d.frame->cross_members_at.at(0), WithinRel(15.0 * 0.0254, 1e-12));
  cases::set(d, {"frame.rails_apart", "30 in"});
  CHECK_THAT(cases::number_at(d, "frame.rails_apart").si, WithinRel(30.0 * 0.0254, 1e-12));
}

TEST_CASE("frames that cannot be are refused", "[cases][frame]") {
  CHECK_THAT(problems(with(kLink, "bracket:", "braket:") + kFrame),
             Contains("unknown key `braket`"));
  CHECK(framed("[20, -30 in]", "[20, 30 in]") ==
        "case.yaml:23:3: frame.cross_members_at: the bracket hangs between two cross members: give "
        "one ahead of it and one behind, e.g. [20, -30 in]");
  CHECK(framed("[45, -50 in]", "[45 in]") ==
        "case.yaml:24:3: frame.held_at: rails that are pinned need two places, e.g. [40, -60 in]; "
        "or `held: clamped`");
  CHECK_THAT(framed("[45, -50 in]", "[]"), Contains("frame.held_at: nothing holds the rails"));
  CHECK_THAT(framed("  held_at: [45, -50 in]\n", ""),
             Contains("frame: `held_at` is missing: where body and rear hold both rails, from the "
                      "bracket's bolt, e.g. [20, -30 in]"));
  CHECK(framed("[45, -50 in]", "[45, -50, 45 in]") ==
        "case.yaml:24:3: frame.held_at: 45 in is given twice");
  CHECK(framed("[45, -50 in]", "[45, -50 ft]") ==
        "case.yaml:24:3: frame.held_at: 540 in from the bracket is off the truck; is the unit "
        "right?");
  CHECK_THAT(
      framed("[20, -30 in]", "[20, -200 in]"),
      Contains("frame.cross_members_at: -200 in lies 150 in beyond the last place that holds "
               "the rails"));
  CHECK_THAT(framed("[20, -30 in]", "[200, -30 in]"),
             Contains("frame.cross_members_at: 200 in from the bracket is off the truck"));
  CHECK_THAT(framed("33 in", "33 mm"), Contains("frame.rails_apart: 1.299 in is not believable"));
  CHECK_THAT(framed("welded_to: bottom", "rail_stiffness: 30 kN m/rad\n  welded_to: bottom"),
             Contains("bracket.rail_stiffness: `frame:` says how the rail gives"));
  CHECK_THAT(framed("held_at", "arm_cross_member: 3 x 2 x 0.125 in A500C_rect\n  held_at"),
             Contains("frame.arm_cross_member: there is no arm to carry"));
  CHECK_THAT(problems(kLink + with(kFrame, "33 in", "28 in")),
             Contains("brace.length: with this length and slope it ends 4.841 in beyond the "
                      "opposite rail's center line and 3.2 in below it; leave out both"));
  CHECK(problems(with(kLink, kSpans, "")) ==
        "case.yaml:17:1: brace: `length` is missing: end to end, e.g. 34 in\n"
        "case.yaml:17:1: brace: `slope` is missing: rise toward the opposite rail, e.g. 15 deg");
}

TEST_CASE("the brace's far bolt, coil preload and spacers have rules", "[cases][problems]") {
  CHECK_THAT(problems(kLink + "  far_bolt: 1/2 in grade 8\n"),
             Contains("brace.far_bolt: its far end is welded"));
  const auto axle = [](const std::string& more) {
    return problems(with(kRich, "stop_rate: 9000 lb/in", "stop_rate: 9000 lb/in, " + more));
  };
  // 1450 kg less 950 lb: 10.0 kN on two coils.
  CHECK(axle("coil_preload: 5 kN").empty());
  CHECK_THAT(axle("coil_preload: 6 kN"),
             Contains("axle.coil_preload: both coils carry 2698 lbf by it, and 2247 lbf by "
                      "vehicle.axle_weight less unsprung_weight"));
  CHECK_THAT(axle("coil_preload: 8 kN"), Contains("both coils would carry 3597 lbf"));
  CHECK_THAT(axle("stop_spacer: 1 in"),
             Contains("axle.stop_spacer: 1 in takes all of bump_travel"));
  CHECK(axle("stop_spacer: 1/4 in").empty());
  parts::Design d = design(with(kRich, "  unsprung_weight: 950 lb, ", "  "));
  d.axle->coil_preload = 5.0e3;
  CHECK_THAT(parts::vehicle_of(d).unsprung_weight,
             WithinAbs(1450.0 * base::kGravity - 10.0e3, 1e-6));
}

TEST_CASE("a housing's tubes stand one after the other", "[cases][phrase]") {
  const auto read = [](std::string_view text) {
    return cases::read_phrase<parts::Housing>(text, parts::Design{}).value;
  };
  const parts::Housing one = read("80 x 8 mm S355H");
  REQUIRE(one.tubes.size() == 1);
  const parts::Housing three =
      read("80 x 8 mm S355H to 250 mm, then 140 x 12 mm S355H to -2 in then 80 x 8 mm S355H");
  REQUIRE(three.tubes.size() == 3);
  CHECK_THAT(three.tubes[0].to, WithinRel(0.25, 1e-12));
  CHECK_THAT(three.tubes[1].to, WithinRel(-0.0508, 1e-12));
  CHECK_THAT(std::get<sections::RoundTube>(three.tubes[1].stick.shape).outside,
             WithinRel(0.14, 1e-12));
  CHECK(read(cases::write_phrase(three, parts::Design{})).tubes[1].stick == three.tubes[1].stick);
  const auto no = [&](std::string_view text) { return thrown([&] { (void)read(text); }); };
  CHECK_THAT(no("80 x 8 mm S355H, then 90 x 8 mm S355H"),
             Contains("`80 x 8 mm S355H` does not say where it ends"));
  CHECK_THAT(no("80 x 8 mm S355H to 20 mm"), Contains("is the last tube, which ends at the right"));
  CHECK_THAT(no("80 x 8 mm S355H to 20, then 90 x 8 mm S355H"), Contains("20 has no unit"));
}

TEST_CASE("one line asks for every drop, braced and unbraced", "[cases][compare]") {
  CHECK(names_of("2 or 4 in drop") ==
        "2 in drop: bracket.drop=2 in\n4 in drop: bracket.drop=4 in\n");
  CHECK(names_of("2 or 4 in drop, no brace") ==
        "2 in drop, no brace: bracket.drop=2 in brace=\n"
        "4 in drop, no brace: bracket.drop=4 in brace=\n");
  CHECK(names_of("2 or 4 in drop, braced and unbraced") ==
        "2 in drop: bracket.drop=2 in\n2 in drop, no brace: bracket.drop=2 in brace=\n"
        "4 in drop: bracket.drop=4 in\n4 in drop, no brace: bracket.drop=4 in brace=\n");
  CHECK_THAT(thrown([] { (void)names_of("2 or 4 drop"); }), Contains("has no unit"));
}

TEST_CASE("a key without its part is that of the one part that has it", "[cases][patch]") {
  parts::Design d = design(kLink);
  cases::set(d, {"drop", "7 in"});
  CHECK(d.bracket->drop == Approx(7.0 * 0.0254));
  CHECK(cases::number_at(d, "axle_weight").si == cases::number_at(d, "vehicle.axle_weight").si);
  CHECK(thrown([&] { (void)cases::number_at(d, "bracket.rail_stiffness"); }) ==
        "bracket.rail_stiffness: the case does not give it, or says `not sure`: give a value to "
        "start from, e.g. 200 ft-lb/deg");
}

TEST_CASE("a key whose part is not there is named in full", "[cases][patch]") {
  parts::Design d = design(kLink);
  d.bracket.reset();
  d.lateral_link.reset();
  d.brace.reset();
  d.vehicle.reset();
  const auto set = [&](const char* path) { return thrown([&] { cases::set(d, {path, "7 in"}); }); };
  CHECK(set("drop") == "drop: `drop` needs its part before it: `bracket.drop`");
  CHECK(set("tube") ==
        "tube: `tube` needs its part before it: `lateral_link.tube` or `brace.tube`");
  CHECK(thrown([&] { (void)cases::number_at(d, "axle_weight"); }) ==
        "axle_weight: `axle_weight` needs its part before it: `vehicle.axle_weight`");
  CHECK(set("dorp") == "dorp: unknown key `dorp`; did you mean `bracket.drop`?");
}

TEST_CASE("an unbelievable height of the mass center is refused", "[cases][problems]") {
  CHECK_THAT(problems(with(kRich, "mass_center_height: 38 in", "mass_center_height: 38 ft")),
             Contains("vehicle.mass_center_height: 456 in is not believable here"));
}

// Outside and wall: ASME B36.10M, from memory.
// Rim and twice the sidewall: 17 in + 2 x 0.70 x 315 mm (ISO 4000-1, from memory).
TEST_CASE("a tire's size is read as it is printed on the sidewall", "[cases][reader]") {
  const auto tire = [](const std::string& size) {
    return design(with(kLink, "tire: 37 in", "tire: " + size)).vehicle->tire;
  };
  CHECK_THAT(tire("315/70R17"), WithinAbs(0.8728, 1e-9));
  CHECK_THAT(tire("LT315/70 R17 121S"), WithinAbs(0.8728, 1e-9));
  CHECK_THAT(tire("P235/75-15"), WithinAbs(15 * 0.0254 + 2 * 0.75 * 0.235, 1e-9));
  CHECK_THAT(tire("37x12.50R17LT"), WithinAbs(37 * 0.0254, 1e-9));
  const std::string hub =
      problems(with(kLink, "tire: 37 in", "tire: 37 in\n  hub_height: 315/70R17"));
  CHECK_THAT(hub, Contains("is a tire's size; it goes with `vehicle.tire`"));
  CHECK_THAT(problems(with(kLink, "tire: 37 in", "tire: 315/70")), Contains("vehicle.tire"));
}

TEST_CASE("sizes that no truck has are refused", "[cases][problems]") {
  CHECK_THAT(problems(with(kLink, "tire: 37 in", "tire: 3 m")),
             Contains("vehicle.tire: 118.1 in is not believable here"));
  CHECK_THAT(problems(with(kLink, "track: 66 in", "track: 10 m")),
             Contains("vehicle.track: 393.7 in is not believable here"));
  CHECK_THAT(problems(with(kLink, "track: 66 in", "track: 66 in\n  wheelbase: 0.2 m")),
             Contains("vehicle.wheelbase: 7.874 in is not believable here"));
  CHECK_THAT(problems(with(kLink, "tire: 37 in", "tire: 37 in\n  hub_height: 34 in")),
             Contains("does not go with a tire of 37 in"));
}

TEST_CASE("`none` is as if a key that may be left out were", "[cases][reader]") {
  const std::string link = "  tube: 1-1/2 x 0.250 in DOM\n";
  const parts::Design d = design(with(kLink, link, link + "  bolt: none\n"));
  CHECK_FALSE(d.lateral_link->bolt.given());
}

TEST_CASE("words of the trade with one meaning are understood", "[cases][phrase]") {
  const Stick plain = stick("1-1/2 x 0.125 in DOM");
  for (const char* text :
       {"1.5 in x 1/8 wall DOM", "1-1/2 in OD x 1/8 in wall DOM", "1-1/2\" O.D. x .125\" wall, DOM",
        "1.5 in od x 0.125 wall DOM tubing"}) {
    INFO(text);
    CHECK(stick(text) == plain);
  }
  CHECK(stick("4 x 2 x 1/4 in C channel A36") == stick("4 x 2 x 1/4 in channel A36"));
  CHECK(stick("1-1/2 in sch 40 pipe A53B") == stick("1.9 x 0.145 in A53B"));
  CHECK(stick("2 sch80 pipe A53B") == stick("2.375 x 0.218 in A53B"));
  CHECK(stick("3/4 in schedule 40 A53B") == stick("1.05 x 0.113 in A53B"));
  const auto read = cases::read_phrase<Stick>("1-1/2 in sch 40 pipe A53B", parts::Design{});
  REQUIRE(!read.assumed.empty());
  CHECK_THAT(read.assumed.front().basis, Contains("ASME B36.10M, from memory"));
}

TEST_CASE("words of the trade that leave something open are refused with what would do",
          "[cases][phrase]") {
  CHECK_THAT(refused("1-1/2 x 0.120 in ERW"), Contains("unknown steel `ERW`; that says how a tube "
                                                       "is welded, not of which steel: e.g. A513"));
  CHECK_THAT(refused("1-1/2 x 0.120 in chromoly"), Contains("that is 4130: say 4130"));
  CHECK_THAT(refused("1-1/2 x 11 ga DOM"), Contains("gauge number is no thickness"));
  CHECK_THAT(refused("1 in sch 160 pipe A53B"), Contains("only schedules 40 and 80"));
  CHECK_THAT(refused("40 mm sch 40 pipe A53B"), Contains("nominal size in inches"));
  CHECK_THAT(refused("1-1/2 in sch 40 pipe"), Contains("does not name its steel"));
  CHECK_THAT(refused("C4 x 5.4 A36"), Contains("a rolled shape is given by its sizes"));
  CHECK_THAT(refused("1-1/2 x 1/8 wall DOM"), Contains("has no unit"));
}

TEST_CASE("a bracket folded or tied is read, written back and has rules", "[cases][bracket]") {
  const std::string fold = "folded from 1/4 in mild steel, 3/8 in inside radius";
  const parts::Design d = design(with(kLink, "2 of 5/16 in mild steel", fold));
  CHECK_THAT(d.bracket->plates.fold_radius, WithinRel(0.375 * 0.0254, 1e-12));
  CHECK(design(cases::write(d)).bracket->plates == d.bracket->plates);
  const auto plates = [](const std::string& phrase) {
    return problems(with(kLink, "2 of 5/16 in mild steel", phrase));
  };
  CHECK_THAT(plates("folded from 1/4 in mild steel"),
             Contains("does not give the thickness, its steel and the inside radius; e.g."));
  CHECK_THAT(plates(fold + "\n  back_plate: 1/4 in"), Contains("has its back already"));
  CHECK_THAT(plates("1 of 1/4 in A36\n  face_plate: 1/4 in"), Contains("joins two plates"));
  CHECK_THAT(plates("folded from 1/4 in A36, 1-1/4 in inside radius"),
             Contains("bracket.plates: two folds of 1.25 in inside radius do not fit in a gap of"));
  CHECK_THAT(plates("2 of 1/4 in A36\n  back_plate: 1 in\n  face_plate: 1 in"),
             Contains("take half or more of the plates' smallest depth (2.5 in)"));
}

}  // namespace truck_keys_test
