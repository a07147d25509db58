#include <algorithm>

#include <catch2/catch.hpp>

#include "tests/loads/read_design.hpp"

namespace mirrored_case_test {
using loads::Push;
using loads::Role;

namespace {

/// Left and right swapped, by hand.
Role other(Role role) {
  switch (role) {
    case Role::left_contact:
      return Role::right_contact;
    case Role::right_contact:
      return Role::left_contact;
    case Role::left_hub:
      return Role::right_hub;
    case Role::right_hub:
      return Role::left_hub;
    case Role::left_arm_midspan:
      return Role::right_arm_midspan;
    case Role::right_arm_midspan:
      return Role::left_arm_midspan;
    default:
      return role;
  }
}

std::string other(std::string name) {
  for (const auto& [a, b, c] : {std::tuple{"left", "#", "left"}, std::tuple{"right", "left", ""},
                                std::tuple{"#", "right", ""}}) {
    const std::string from = a;
    for (std::size_t at = name.find(from); at != std::string::npos; at = name.find(from, at + 1)) {
      name.replace(at, from.size(), b);
    }
  }
  return name;
}

}  // namespace

TEST_CASE("every one-sided case has its mirror image among the cases", "[loads][mirror]") {
  const parts::Design design = loads_tests::read_design(
      loads_tests::whole_axle("load_cases: [{name: ditch, left_wheel: [-8, 1, 20 kN], "
                              "right_wheel: [0, 0, 8 kN], both_sides: yes}]\n"));
  const std::vector<parts::DesignCase> all = parts::design_cases(design);
  int n_sided = 0;
  for (const parts::DesignCase& c : all) {
    std::string name = other(c.name);
    if (c.name == "ditch") name = "ditch, mirrored";
    if (name == c.name || c.name == "ditch, mirrored") continue;
    ++n_sided;
    INFO(c.name);
    const auto image = std::find_if(all.begin(), all.end(),
                                    [&](const parts::DesignCase& o) { return o.name == name; });
    REQUIRE(image != all.end());
    REQUIRE(image->pushes.size() == c.pushes.size());
    for (const Push& p : c.pushes) {
      const auto q = std::find_if(image->pushes.begin(), image->pushes.end(), [&](const Push& o) {
        return o.role == other(p.role) && o.what == p.what;
      });
      REQUIRE(q != image->pushes.end());
      CHECK(q->force[0] == p.force[0]);
      CHECK(q->force[1] == -p.force[1]);
      CHECK(q->force[2] == p.force[2]);
      CHECK(q->moment[0] == -p.moment[0]);
      CHECK(q->moment[1] == p.moment[1]);
      CHECK(q->moment[2] == -p.moment[2]);
    }
  }
  // Corner, hits, hole, edge, curb, corner with hole: 2 each; wedged: 8; rock under an arm: 2.
  CHECK(n_sided == 6 * 2 + 8 + 2 + 1);
}

}  // namespace mirrored_case_test
