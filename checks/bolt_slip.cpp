#include "checks/bolt_slip.hpp"

#include <cmath>

#include "base/invariant.hpp"
#include "checks/value.hpp"

namespace checks {

double reusable_preload(const sections::BoltThread& thread, const sections::BoltGrade& grade) {
  return 0.75 * grade.proof * thread.tensile_area();
}

double slip_resistance(int planes, double friction, double preload) {
  return planes * friction * preload;
}

Finding bolt_slip(const BoltSlipInput& in) {
  INVARIANT(in.planes == 1 || in.planes == 2);
  constexpr double kFaces = 0.20;
  Finding f{.check = "slip", .capacity = 1.0, .measure = Measure::ratio};
  f.required = in.required;
  f.source =
      "AISC 360-22 J3.9 (slip), from memory; preload 0.75 Sp At: Shigley, eq. 8-31, from memory; "
      "friction 0.20: common practice, no source";
  f.range =
      "faces clamped solid; no rubber, thick paint or tube wall in the grip; drawn to its preload";
  const double preload = reusable_preload(in.thread, in.grade);
  const double holds = slip_resistance(in.planes, kFaces, preload);
  f.lines.push_back(
      {"Fi = 0.75 Sp At",
       "0.75 * {0} * {1} = {2}",
       {stress(in.grade.proof), {in.thread.tensile_area(), Measure::area}, force(preload)}});
  f.lines.push_back({"slips at planes * 0.20 Fi",
                     "{0} * 0.20 * {1} = {2}",
                     {ratio(in.planes), force(preload), force(holds)}});
  f.demand = in.shear / holds + in.tension / preload;
  f.lines.push_back(
      {"V / slip + T / Fi, V across the bolt, T along it",
       "{0} / {1} + {2} / {3} = {4}",
       {force(in.shear), force(holds), force(in.tension), force(preload), ratio(f.demand)}});
  f.notes.emplace_back(
      "a torque wrench meets the preload within a quarter either way (read in a manual): draw it "
      "up "
      "again after the first drive");
  decide(f, std::isnan(in.safety_factor) ? 1.0 / f.demand : in.safety_factor, in.required);
  return f;
}

}  // namespace checks
