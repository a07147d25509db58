// Welds as lines.

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "checks/weld_group.hpp"
#include "tests/published/verification.hpp"

namespace blodgett_test {
using checks::WeldLine;
using Eigen::Vector3d;
using published::Basis;
using published::Source;
using published::verify;
using published::within;

namespace {

const double kRoot2 = std::sqrt(2.0);  // leg whose throat is one

WeldLine line(double x1, double y1, double x2, double y2) {
  return {{x1, y1, 0.0}, {x2, y2, 0.0}, kRoot2};
}

}  // namespace

// At the fiber of largest bending T and V run the same way: sqrt(4527^2 + (1698 + 191)^2) = 4905.
// The chords lie inside the circle: high by up to 0.2 %, never low.
TEST_CASE("the fillet round a tube is Blodgett's weld line", "[checks][weld]") {
  const Source source{
      "Blodgett, Design of Welded Structures, sec. 7.4 (fillet round a tube of 1.5 "
      "in; 8000 and 6000 lb in, 900 lb)",
      Basis::formula_from_memory};
  const auto ring = [&](const char* quantity, const char* printed, const checks::Wrench& w) {
    const checks::WeldGroup group{
        checks::ring_weld(Vector3d::Zero(), Vector3d(0, 0, 1), 0.75, kRoot2), 70e3};
    const double computed = checks::worst_throat_stress(group, w)->resultant;
    verify(source, quantity, printed, computed, within(2.2e-3));
    CHECK(computed > std::stod(printed) * (1.0 - 1e-4));
  };
  ring("from bending", "4527 lb/in", {.moment = {8000, 0, 0}});
  ring("from torsion", "1698 lb/in", {.moment = {0, 0, 6000}});
  ring("from shear", "191 lb/in", {.force = {900, 0, 0}});
  ring("resultant", "4905 lb/in", {.force = {900, 0, 0}, .moment = {8000, 0, 6000}});
}

TEST_CASE("channel and box weld groups have the unit torsion values of the tables",
          "[checks][weld]") {
  const std::vector<WeldLine> channel = {line(60, 0, 0, 0), line(0, 0, 0, 100),
                                         line(0, 100, 60, 100)};
  const std::vector<WeldLine> box = {line(0, 0, 60, 0), line(60, 0, 60, 100), line(60, 100, 0, 100),
                                     line(0, 100, 0, 0)};
  const auto unit = [](const std::vector<WeldLine>& lines) {
    return checks::weld_properties(lines).inertia(2, 2);
  };
  // The last term of the channel's formula is from memory.
  verify({"Design of Modern Steel Railway Bridges, table 9.1 (b 60, d 100)",
          Basis::formula_from_memory},
         "Jw of a channel", "4.684e5 mm3", unit(channel));
  verify({"Design of Modern Steel Railway Bridges, table 9.1 (b 60, d 100), box", Basis::read},
         "Jw of a box", "6.827e5 mm3", unit(box));
}

}  // namespace blodgett_test
