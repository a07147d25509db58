// A frame that a load overcomes is not found standing under more of it.
#include <string>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "cases/starters.hpp"
#include "parts/design_cases.hpp"
#include "studies/cell.hpp"
#include "tests/studies/read_case.hpp"

namespace gives_way_test {

namespace {

/// A truck to start from that tips: tall and soft on its coils.
parts::Design tall_truck(const std::string& layout, double coil_rate, double axle_weight) {
  std::string text(cases::starter(layout));
  const auto set = [&](const std::string& key, const std::string& value) {
    const std::size_t at = text.find("  " + key + ": ");
    REQUIRE(at != std::string::npos);
    const std::size_t from = at + key.size() + 4;
    text.replace(from, text.find_first_of("#\n", from) - from, value + " ");
  };
  set("coil_rate", fmt::format("{} lb/in", coil_rate));
  set("axle_weight", fmt::format("{} lb", axle_weight));
  return studies_tests::read_case(text + "load_cases: [slid into a curb]\n");
}

}  // namespace

TEST_CASE("a frame that has given way does not stand under more load", "[studies][property]") {
  int n_lost = 0;
  for (const std::string layout : {"radius-arms", "parallel-arms"}) {
    for (const double coil_rate : {180.0, 220.0, 260.0}) {
      const parts::Design design = tall_truck(layout, coil_rate, 3000.0);
      for (const parts::StiffnessSet& set : parts::stiffness_sets(design)) {
        const studies::SetModel model(design, set);
        for (const parts::DesignCase& load_case : parts::design_cases(design)) {
          double lost_at = 0.0;
          for (double multiple = 1.0; multiple < 3.0; multiple *= 1.04) {
            const studies::Cell afresh(model, load_case);
            if (!studies::carried(afresh.kept(1.0))) break;
            const bool stands = studies::carried(afresh.at(multiple));
            INFO(layout << ", " << coil_rate << ", " << set.name << ", " << load_case.name
                        << ": at " << multiple << ", lost at " << lost_at);
            CHECK_FALSE((stands && lost_at > 0.0));
            if (!stands && lost_at == 0.0) lost_at = multiple;
          }
          n_lost += lost_at > 0.0 ? 1 : 0;
        }
      }
    }
  }
  CHECK(n_lost > 10);
}

}  // namespace gives_way_test
