// Strength of fillets by EN 1993-1-8, simplified method.
#include <catch2/catch.hpp>

#include "checks/required_factors.hpp"
#include "checks/weld.hpp"
#include "tests/published/verification.hpp"

namespace en_welds_test {
using published::Basis;
using published::Source;
using published::verify;

TEST_CASE("fillets beside S275 and S355 carry what EN 1993-1-8 lets them", "[checks][weld]") {
  const Source source{"EN 1993-1-8:2005, 4.5.3.3, table 4.1 (gamma_M2 1.25), as in SCI P363",
                      Basis::from_memory};
  constexpr double kGammaM2 = 1.25;
  const auto fvwd = [&](double fu) {
    const double leg = 0.006;
    const checks::WeldInput in{
        .group = {.lines = {{{0, 0, 0}, {0.1, 0, 0}, leg}}, .filler_tensile = 500e6},
        .wrench = {.force = {1e3, 0, 0}, .moment = Eigen::Vector3d::Zero(), .at = {0.05, 0, 0}},
        .base_tensile = fu,
        .en = true};
    return checks::weld(in).capacity / kGammaM2 / base::kMegapascal;
  };
  verify(source, "fvw,d of S275, fu 410 MPa", "223 MPa", fvwd(410e6));
  verify(source, "fvw,d of S355, fu 470 MPa", "241 MPa", fvwd(470e6));
  verify(source, "fvw,d of S235, fu 360 MPa", "207.8 MPa", fvwd(360e6));
  // With gamma_F 1.5 of EN 1990 that is what the preset asks.
  verify(source, "gamma_M2 in the factor asked of a routine weld, gamma_F 1.5", "1.25",
         checks::factors_of(checks::FactorPreset::en).weld_routine / 1.5);
}

}  // namespace en_welds_test
