// Arms of every layout through the case file, against statics in closed form (our own numbers, no
// published source): a truck of 16 kN on the front axle, hubs 0.4 m up, track 1.6 m.
#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "studies/check.hpp"
#include "tests/loads/read_design.hpp"

namespace arm_layouts_test {
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using loads_tests::held_by;
using loads_tests::read_design;
using loads_tests::SolvedDesign;

namespace {

constexpr double kN = 1000.0;

struct Heights {
  double lower_frame = 0.3;  // [m]
  double upper_frame = 0.55;
};

/// Two lower arms, an upper one and a sloped link on ball joints: with two coils six forces, which
/// the balance of the axle alone tells.
std::string shared_upper_arm(const std::string& cases, const Heights& h = {}) {
  return loads_tests::kVehicle +
         fmt::format(
             "points:\n"
             "  link at frame: [0.1, 0.4, {:.12f} m]\n"
             "  link at axle: [0.1, -0.5, 0.45 m]\n"
             "  lower at axle: [0, 0.4, 0.3 m]\n"
             "  lower at frame: [-0.9, 0.4, {} m]\n"
             "  upper at axle: [0, 0.2, 0.55 m]\n"
             "  upper at frame: [-0.8, 0.2, {} m]\n"
             "lateral_link: {{frame_bolt: link at frame, axle_bolt: link at axle,\n"
             "  tube: 60 x 10 mm E355, ends: weld-on ball joint}}\n"
             "arm: {{axle_lower: lower at axle, frame: lower at frame, axle_upper: upper at axle,\n"
             "  upper_frame: upper at frame, shared_upper: yes, lower: 60 x 10 mm E355,\n"
             "  upper: 60 x 10 mm E355, axle_joint: ball joint, frame_joint: ball joint}}\n"
             "axle: {{coil_spacing: 0.9 m, coil_rate: 400 N/mm}}\n"
             "load_cases:\n{}",
             0.45 + 0.9 * std::tan(10.0 * base::kDegree), h.lower_frame, h.upper_frame, cases);
}

struct Forces {
  double low_left, low_right, upper, bar, left_coil, right_coil;  // tension +, coil pushing +, kN
};

void check_forces(const SolvedDesign& solved, const std::string& name, const Forces& expected) {
  INFO(name);
  CHECK_THAT(solved.tension(name, "arm, left"), WithinAbs(expected.low_left * kN, 10.0));
  CHECK_THAT(solved.tension(name, "arm, right"), WithinAbs(expected.low_right * kN, 10.0));
  CHECK_THAT(solved.tension(name, "arm, upper"), WithinAbs(expected.upper * kN, 10.0));
  CHECK_THAT(solved.tension(name, "lateral_link"), WithinAbs(expected.bar * kN, 10.0));
  const studies::Balance b = solved.balance(name);
  CHECK_THAT(-held_by(b, "left coil").force[2], WithinAbs(expected.left_coil * kN, 10.0));
  CHECK_THAT(-held_by(b, "right coil").force[2], WithinAbs(expected.right_coil * kN, 10.0));
  CHECK(b.open < 1e-7);
}

/// Arms one on each side, the link level, as the points and keys of `arm` say.
std::string pair_of_arms(const std::string& points, const std::string& arm) {
  return loads_tests::kVehicle +
         "points:\n"
         "  link at frame: [0, 0.45, 0.4 m]\n"
         "  link at axle: [0, -0.45, 0.4 m]\n" +
         points +
         "lateral_link: {frame_bolt: link at frame, axle_bolt: link at axle,\n"
         "  tube: 60 x 10 mm E355, ends: weld-on ball joint}\n"
         "arm:\n" +
         arm +
         "  lower: 60 x 10 mm E355\n"
         "axle: {coil_spacing: 0.9 m, coil_rate: 400 N/mm}\n"
         "load_cases: [{name: brake, left_wheel: [-10, 0, 8 kN], right_wheel: [-10, 0, 8 kN]},\n"
         "  {name: drive, left_wheel: [10, 0, 8 kN], right_wheel: [10, 0, 8 kN]}]\n";
}

std::string separate_arms(int way) {
  return pair_of_arms(fmt::format("  lower bolt: [0, 0.4, 0.3 m]\n"
                                  "  upper bolt: [0, 0.4, 0.55 m]\n"
                                  "  lower at frame: [{0}, 0.4, 0.3 m]\n"
                                  "  upper at frame: [{0}, 0.4, 0.55 m]\n",
                                  0.9 * way),
                      "  axle_lower: lower bolt\n"
                      "  axle_upper: upper bolt\n"
                      "  frame: lower at frame\n"
                      "  upper_frame: upper at frame\n"
                      "  upper: 50 x 6 mm E355\n"
                      "  axle_joint: ball joint\n"
                      "  frame_joint: ball joint\n");
}

/// One tube with two bolts 0.2 m apart, fore and aft of the axle, its pivot 0.9 m behind it.
std::string two_bolts(const std::string& joint) {
  return pair_of_arms(
      "  rear bolt: [-0.1, 0.4, 0.4 m]\n"
      "  front bolt: [0.1, 0.4, 0.4 m]\n"
      "  pivot: [-0.9, 0.4, 0.5 m]\n",
      "  axle_lower: rear bolt\n"
      "  axle_upper: front bolt\n"
      "  frame: pivot\n"
      "  axle_joint: " +
          joint +
          "\n"
          "  frame_joint: pin along y\n");
}

double tension_of(const SolvedDesign& solved, const std::string& name, const std::string& piece) {
  const studies::CaseSolution found = solved.solve(name);
  for (const parts::Piece& p : solved.model.assembly().pieces) {
    if (p.part != "arm, left" || p.name != piece) continue;
    return -found.linear().end_forces(p.beams.front().beam)[0];
  }
  FAIL("no piece " << piece);
  return 0.0;
}

std::string refused(const std::string& text) {
  std::string all;
  for (const base::InputError& problem : cases::read(text, "case.yaml").problems) {
    all += problem.where().key + ": " + problem.problem() + "\n";
  }
  return all;
}

}  // namespace

// Six equations of balance, solved outside the program.
TEST_CASE("two lower arms, one upper arm, a link and two coils, wheel forces from the case file",
          "[loads][arm][hand]") {
  const std::string cases =
      "  - {name: static, left_wheel: [0, 0, 8 kN], right_wheel: [0, 0, 8 kN]}\n"
      "  - {name: brake, left_wheel: [-10, 0, 12 kN], right_wheel: [-10, 0, 12 kN]}\n"
      "  - {name: corner, left_wheel: [0, 2.8125, 3 kN], right_wheel: [0, 12.1875, 13 kN]}\n";
  const SolvedDesign solved(shared_upper_arm(cases));
  check_forces(solved, "static", {0, 0, 0, 0, 6.6, 6.6});
  check_forces(solved, "brake", {-28, -16, 24, 0, 10.6, 10.6});
  check_forces(solved, "corner", {1.082, -2.140, 1.058, -15.231, 5.358, 5.197});
  const SolvedDesign curb(
      shared_upper_arm("  - {name: curb, left_wheel: [-16, 0, 8 kN], right_wheel: [0, 0, 8 kN],\n"
                       "     at_hub: yes}\n"));
  check_forces(curb, "curb", {-19.2, 9.6, -6.4, 0, 6.6, 6.6});
  const SolvedDesign sloped(shared_upper_arm(cases, {.lower_frame = 0.4, .upper_frame = 0.6}));
  check_forces(sloped, "brake", {-28.172, -16.099, 24.047, 0, 8.646, 9.165});
}

// Lower z_u / (z_u - z_l) = 2.2 times, upper z_l / (z_u - z_l) = 1.2 times the pull of its wheel.
TEST_CASE("a parallel pair of arms on each side shares the pull by its heights",
          "[loads][arm][hand]") {
  const SolvedDesign solved(separate_arms(-1));
  CHECK_THAT(tension_of(solved, "brake", "lower tube"), WithinAbs(-22.0 * kN, 20.0));
  CHECK_THAT(tension_of(solved, "brake", "upper arm"), WithinAbs(12.0 * kN, 20.0));
  const studies::Balance b = solved.balance("brake");
  CHECK_THAT(held_by(b, "arm, right upper frame joint").force[0], WithinAbs(-12.0 * kN, 20.0));
  CHECK(b.open < 1e-7);
}

TEST_CASE("arms ahead of the axle carry what arms behind it do, pulled the other way",
          "[loads][arm]") {
  const SolvedDesign behind(separate_arms(-1));
  const SolvedDesign ahead(separate_arms(1));
  for (const char* piece : {"lower tube", "upper arm"}) {
    CHECK_THAT(tension_of(ahead, "drive", piece),
               WithinRel(tension_of(behind, "brake", piece), 1e-9));
  }
}

// V = (10 x 0.4 + 10 x 0.1) / 0.9; couple (0.9 V - 0.1 x 10) / 0.2 in the bolts, which share pull
// and V: 5 kN along, 20 +- 2.778 kN upright.
TEST_CASE("one tube with two bolts at the axle holds its pitch by their couple",
          "[loads][arm][hand]") {
  const SolvedDesign solved(two_bolts("mount") +
                            "joints:\n"
                            "  mount: {along_x: 1 kN/mm, along_y: 1 kN/mm, along_z: 1 kN/mm,\n"
                            "    about_x: 0 N m/rad, about_y: 0 N m/rad, about_z: 0 N m/rad}\n");
  const studies::Balance b = solved.balance("brake");
  const studies::BalanceRow pivot = held_by(b, "arm, left frame joint");
  CHECK_THAT(std::hypot(pivot.force[0], pivot.force[2]), WithinAbs(11.44 * kN, 10.0));
  CHECK(b.open < 1e-7);
  const studies::CaseSolution found = solved.solve("brake");
  std::vector<double> bolts;
  const std::vector<fea::Spring>& springs = solved.model.assembly().model.springs;
  for (std::size_t i = 0; i < springs.size(); ++i) {
    if (springs[i].name.rfind("arm, left", 0) != 0) continue;
    bolts.push_back(
        found.linear().spring_force(fea::SpringId{static_cast<int>(i)}).head<3>().norm());
  }
  REQUIRE(bolts.size() == 2);
  CHECK_THAT(*std::max_element(bolts.begin(), bolts.end()), WithinAbs(23.32 * kN, 10.0));
  CHECK_THAT(*std::min_element(bolts.begin(), bolts.end()), WithinAbs(17.93 * kN, 10.0));
}

// The tube begins beside the rear bolt, 0.8 m from the pivot: V x 0.8, and the pull times the rise.
TEST_CASE("the tube of an arm on two bolts begins beside the one nearer to the frame",
          "[loads][arm][hand]") {
  const SolvedDesign solved(two_bolts("pin along y"));
  const studies::CaseSolution found = solved.solve("brake");
  for (const parts::Piece& p : solved.model.assembly().pieces) {
    if (p.part != "arm, left") continue;
    const fea::Vector12 ends = found.linear().end_forces(p.beams.front().beam);
    const double rise = 0.1 * 0.8 / 0.9;  // of the pivot over the start, on the middle line
    const double upright = 10.0 * kN * (0.4 + 0.1) / 0.9;
    CHECK_THAT(std::hypot(ends[4], ends[5]), WithinRel(upright * 0.8 - 10.0 * kN * rise, 5e-3));
    return;
  }
  FAIL("no arm");
}

TEST_CASE("an axle that two tubes with one ball each let pitch is never within", "[loads][arm]") {
  const std::string text = pair_of_arms(
      "  bolt: [0, 0.4, 0.4 m]\n"
      "  pivot: [-0.9, 0.4, 0.4 m]\n",
      "  axle_lower: bolt\n"
      "  frame: pivot\n"
      "  axle_joint: ball joint\n"
      "  frame_joint: ball joint\n");
  CHECK(studies::check(read_design(text)).verdict != studies::Verdict::within);
}

TEST_CASE("keys of an arm that do not go together are refused with what would do", "[loads][arm]") {
  std::string text = separate_arms(-1);
  const auto changed = [&](const std::string& piece, const std::string& instead) {
    std::string out = text;
    const std::size_t at = out.find(piece);
    REQUIRE(at != std::string::npos);
    return out.replace(at, piece.size(), instead);
  };
  CHECK(refused(text).empty());
  CHECK_THAT(refused(changed("  upper: 50 x 6 mm E355\n", "")), Contains("`upper` is missing"));
  CHECK_THAT(refused(changed("  axle_upper: upper bolt\n", "")),
             Contains("`axle_upper` is missing"));
  CHECK_THAT(refused(changed("  upper_frame: upper at frame\n", "")),
             Contains("`joins_at` or `upper_frame` is missing"));
  CHECK_THAT(refused(changed("  upper: 50", "  joins_at: 0.3 m\n  upper: 50")),
             Contains("arm.upper_frame: the upper arm joins the lower tube"));
  CHECK_THAT(refused(changed("upper_frame: upper at frame", "upper_frame: upper bolt")),
             Contains("the upper arm has no length"));
  CHECK_THAT(refused(changed("  upper_frame: upper at frame\n",
                             "  joins_at: 0.3 m\n  shared_upper: yes\n")),
             Contains("arm.shared_upper"));
}

}  // namespace arm_layouts_test
