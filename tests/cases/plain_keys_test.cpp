// Every key of a frame without a suspension: read, written, patched, and refused where it is wrong.

#include <catch2/catch.hpp>

#include "cases/patch.hpp"
#include "cases/writer.hpp"
#include "tests/cases/case_texts.hpp"
#include "tests/cases/design_dump.hpp"
#include "tests/cases/plain_case.hpp"

namespace plain_keys_test {
using case_texts::design;
using case_texts::kPlain;
using case_texts::problems;
using case_texts::with;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinRel;
using design_dump::design_text;

namespace {

std::string plain_with(const char* piece, const char* instead) {
  return problems(with(kPlain, piece, instead));
}

}  // namespace

TEST_CASE("the whole frame is read as it says", "[cases][plain]") {
  CHECK(problems(kPlain).empty());
  const parts::Design d = design(kPlain);
  REQUIRE(d.members.size() == 3);
  const parts::Member& boom = d.members[1].value;
  CHECK(boom.through == std::vector<std::string>{"bend"});
  CHECK(boom.bend_radius == 0.15);
  CHECK(boom.z_toward.kind == parts::Toward::Kind::point);
  CHECK(boom.z_toward.point == "mast");
  CHECK(boom.to_joint.own_axes);
  CHECK_THAT(std::get<sections::RoundTube>(boom.section_at_end.shape).outside,
             WithinRel(0.036, 1e-12));
  CHECK(d.members[2].value.from_free.freedoms ==
        std::array<bool, 6>{false, false, false, false, true, true});
  CHECK(d.members[2].value.z_toward.vector == std::array<double, 3>{0.6, 0.8, 0.0});
  REQUIRE(d.springs.front().value.coupled.terms.size() == 1);
  CHECK(d.springs.front().value.coupled.terms.front() == parts::Coupling::Term{0, 4, -20.0e3});
  CHECK(d.rigid.front().value.points.size() == 4);
  CHECK(d.forces[1].value.on == "boom");
  CHECK(d.line_loads.front().value.end_force[2] == -2000.0);
  CHECK(d.strains.front().value.expansion == 12.0e-6);
  CHECK_THAT(d.settlements.front().value.about[0], WithinRel(0.1 * base::kDegree, 1e-12));
  CHECK(d.self_weight.front().value.times == std::array<double, 3>{0.1, 0.0, -1.0});
}

TEST_CASE("the whole frame is written so that it reads back", "[cases][plain][writer]") {
  for (const bool inches : {true, false}) {
    parts::Design first = design(kPlain);
    first.inches = inches;
    const std::string written = cases::write(first);
    INFO(written);
    CHECK(design_text(design(written)) == design_text(first));
  }
}

TEST_CASE("any of its keys can be patched", "[cases][plain][patch]") {
  const auto changed = [](const char* path, const char* value) {
    parts::Design d = design(kPlain);
    cases::set(d, {path, value});
    return d;
  };
  CHECK(changed("members.boom.bend_radius", "200 mm").members[1].value.bend_radius == 0.2);
  CHECK(changed("line_loads.wind.force_x", "2 N/mm").line_loads[1].value.force[0] == 2000.0);
  CHECK(changed("strains.sun.warmer", "36 degF").strains[0].value.warmer == Approx(20.0));
  CHECK(changed("settlements.sinking", "none").settlements.empty());
  CHECK(changed("self_weight.dead.along_z", "-3").self_weight[0].value.times[2] == -3.0);
  CHECK(changed("rigid.axle.points", "[hub, far]").rigid[0].value.points.size() == 2);
  CHECK(changed("springs.ground.coupled", "y rx 2 kN").springs[0].value.coupled.terms[0] ==
        parts::Coupling::Term{1, 3, 2000.0});
}

TEST_CASE("members that cannot be built are refused", "[cases][plain][problems]") {
  CHECK(plain_with("through: [bend]", "through: [far]") ==
        "case.yaml:25:5: members.boom.through: the member comes to `far` twice; name each point "
        "once");
  CHECK(plain_with("    through: [bend]\n", "") ==
        "case.yaml:25:5: members.boom.bend_radius: the member is straight: name the points where "
        "it bends in `through`");
  CHECK(plain_with("section_at_end: 36 x 4 mm S355H", "section_at_end: 36 x 36 x 4 mm S355H") ==
        "case.yaml:24:5: members.boom.section_at_end: a member tapers between two sections of one "
        "kind; give the kind of `section`");
  CHECK_THAT(plain_with("from_free: ry rz", "from_free: ry rz, from_joint: ball joint"),
             Contains("members.prop.from_free: give either `from_joint` or `from_free`, not both"));
  CHECK_THAT(plain_with("z_toward: y", "z_toward: sideways"),
             Contains("case.yaml:19:15: members.post.z_toward: `sideways` is no direction; would "
                      "do: up, x, y, z"));
  CHECK_THAT(plain_with("z_toward: point mast", "z_toward: point mats"),
             Contains("there is no point `mats`; did you mean `mast`?"));
  CHECK_THAT(plain_with("from_free: ry rz", "from_free: around"),
             Contains("`around` does not say what is let go"));
}

TEST_CASE("springs that push along are refused", "[cases][plain][problems]") {
  CHECK(plain_with("coupled: x ry -20 kN", "coupled: x ry -50 kN") ==
        "case.yaml:39:5: springs.ground.coupled: the spring would push along with some motion "
        "instead of against it: what links two directions must be under the square root of their "
        "two rates multiplied");
  CHECK_THAT(plain_with("coupled: x ry -20 kN", "coupled: x x 20 kN/mm"),
             Contains("case.yaml:39:14: springs.ground.coupled: `x x 20 kN/mm` links x to itself"));
  CHECK_THAT(plain_with("coupled: x ry -20 kN", "coupled: x ry 1 kN, ry x 1 kN"),
             Contains("links two directions that are linked already"));
  CHECK_THAT(plain_with("coupled: x ry -20 kN", "coupled: x ry 20 N/mm"), Contains("force"));
  CHECK_THAT(plain_with("coupled: x ry -20 kN", "coupled: soft"),
             Contains("`soft` does not link two of x y z rx ry rz"));
}

TEST_CASE("rigid pieces that cannot be exact are refused", "[cases][plain][problems]") {
  CHECK(plain_with("foot: {at: foot}", "foot: {at: foot}\n  more: {at: hub}\n  m2: {at: far}") ==
        "case.yaml:45:10: rigid.axle.points: it is held at `hub` and at `far`: a rigid piece "
        "cannot tell how they share its load; hold it at one of them, and let springs hold the "
        "other");
  CHECK_THAT(plain_with("points: [hub, left wheel, right wheel, far]", "points: [hub]"),
             Contains("rigid.axle.points: one piece needs two points or more"));
  CHECK_THAT(plain_with("points: [hub, left wheel, right wheel, far]",
                        "points: [hub, far]}\n  again: {points: [far, left wheel]"),
             Contains("rigid.again.points: `far` is in `rigid.axle` already"));
  CHECK_THAT(plain_with("points: [hub, left wheel,", "points: [hub, nave,"),
             Contains("rigid.axle.points: there is no point `nave`"));
}

TEST_CASE("loads on nothing, or that are nothing, are refused", "[cases][plain][problems]") {
  CHECK_THAT(plain_with("hook: {on: boom,", "hook: {on: bom,"),
             Contains("forces.hook.on: there is no `bom` among `members:`; did you mean `boom`?"));
  CHECK_THAT(plain_with("from_start: 300 mm, ", ""),
             Contains("forces.hook: `from_start` is missing: how far along the member"));
  CHECK_THAT(plain_with("hook: {on: boom,", "hook: {on: boom, at: hub,"),
             Contains("forces.hook: give either `at` or `on`, not both"));
  CHECK_THAT(plain_with("push: {at: hub,", "push: {from_start: 1 mm,"),
             Contains("forces.push: where it acts is missing"));
  CHECK_THAT(plain_with("wind: {on: post, force_x: 0.3 N/mm,", "wind: {on: post,"),
             Contains("line_loads.wind: it is 0; give a force per length"));
  CHECK_THAT(plain_with("to: 700 mm", "to: 50 mm"),
             Contains("line_loads.snow.to: it ends before it starts"));
  CHECK_THAT(plain_with("warmer: 40 K, warmer_on_top: 10 K, ", "warmer: 0 K, "),
             !Contains("it is 0"));  // it is too long besides
  CHECK_THAT(plain_with("warmer: 40 K", "warmer: 40 mm"), Contains("a difference of temperature"));
  CHECK_THAT(plain_with("expansion: 12e-6 /K", "expansion: 12e-6"), Contains("/K"));
  CHECK_THAT(plain_with("about_x: 0.1 deg", "about_y: 0.1 deg"),
             Contains("settlements.sinking.about_y: no support holds `other foot` in this "
                      "direction"));
  CHECK_THAT(plain_with("{along_z: -1, along_x: 0.1,", "{along_z: 0,"),
             Contains("self_weight.dead: it pulls nowhere"));
}

TEST_CASE("welds on a side and groups of bolts are refused where they are wrong",
          "[cases][plain]") {
  const auto with_more = [](const std::string& lines) { return problems(kPlain + lines); };
  CHECK(with_more("side_welds: {tab: {on: boom, from_start: 0.3 m, length: 40 mm, width: 20 mm}}\n")
            .empty());
  CHECK_THAT(with_more("side_welds: {tab: {on: bom, from_start: 0.3 m, length: 40 mm, "
                       "width: 20 mm}}\n"),
             Contains("did you mean `boom`?"));
  const auto group = [&](const std::string& at, const std::string& more) {
    return with_more("bolt_groups: {foot: {holds: prop, end: start, at: " + at +
                     ", along: x, bolt: M12 class 8.8" + more + "}}\n");
  };
  CHECK(group("[other foot, far]", "").empty());
  CHECK_THAT(group("[other foot]", ""), Contains("two bolts or more"));
  CHECK_THAT(group("[foot, foot]", ""), Contains("given twice"));
  CHECK_THAT(group("[foot, far]", ", plates: 1 of 8 mm S355"), Contains("`plates`"));
  CHECK_THAT(group("[foot, far]", ", edge: 20 mm"), Contains("they are missing"));
  CHECK_THAT(group("[foot, far]", ", plates: 1 of 8 mm S355, edge: 6 mm"), Contains("runs out"));
}

TEST_CASE("bolts of a group are sheared in two planes only between two plates", "[cases][plain]") {
  const auto group = [](const std::string& more) {
    return design(kPlain +
                  "bolt_groups: {foot: {holds: prop, end: start, at: [foot, far], "
                  "along: x, bolt: \"M12 class 8.8" +
                  more + ", edge: 20 mm}}\n");
  };
  const auto planes = [](const parts::Design& d) {
    for (const parts::Assumption& a : d.assumed) {
      if (a.key == "bolt_groups.foot.bolt.shear") return a.value;
    }
    return std::string(d.bolt_groups[0].value.bolt.double_shear ? "said: double" : "said: single");
  };
  parts::Design one = group("\", plates: 1 of 8 mm S355");
  CHECK(planes(one) == "single shear");
  CHECK_FALSE(one.bolt_groups[0].value.bolt.double_shear);
  cases::set(one, {"bolt_groups.foot.plates", "2 of 8 mm S355"});
  CHECK(planes(one) == "double shear");
  CHECK(one.bolt_groups[0].value.bolt.double_shear);
  cases::set(one, {"bolt_groups.foot.plates", "1 of 8 mm S355"});
  cases::set(one, {"bolt_groups.foot.bolt", "M16 class 8.8"});
  CHECK_FALSE(one.bolt_groups[0].value.bolt.double_shear);
  CHECK(planes(group("\", plates: 2 of 8 mm S355")) == "double shear");
  CHECK(planes(group(", double shear\", plates: 1 of 8 mm S355")) == "said: double");
}

}  // namespace plain_keys_test
