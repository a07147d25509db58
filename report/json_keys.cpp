#include "report/json_keys.hpp"

namespace report {

const std::vector<JsonKey>& json_keys() {
  static const std::vector<JsonKey> kKeys = {
      {"format", "number of this format; it grows when a key changes its meaning"},
      {"units_of_the_case", "\"inch\" or \"metric\": of the case file and of every `text`"},
      {"verdict",
       "\"within the limits checked\", \"over the limit\" or \"not decided\"; covers none of "
       "`not_offered`"},
      {"findings", "worst of each part and kind of check over load cases and stiffness sets"},
      {"state", "as `verdict`, of one check; `reason` says why it is not decided"},
      {"demand", "in `unit`, at the load itself"},
      {"capacity", "in `unit`, nominal: no factor is hidden in it"},
      {"unit", "of `demand` and `capacity`, or of the `value` beside it; \"1\" for a ratio"},
      {"safety_factor", "ratio: largest multiple of the load at which the check holds"},
      {"required", "ratio: safety factor asked for"},
      {"utilization", "ratio: required / safety_factor; 1 is the limit"},
      {"worked", "the calculation, line by line: symbols, then numbers"},
      {"numbers", "{n} stands for the n-th of `values`, counted from 0"},
      {"value", "in the `unit` beside it"},
      {"factor", "ratio: multiple of the load case at which `what` buckles"},
      {"axle_tips", "true: springs and bushings hold most of the strain energy, no member goes"},
      {"critical", "lowest factors of the assembly"},
      {"own_critical", "lowest factor of each member alone, between its joints"},
      {"stiffness_set", "the bounds of rail, brace end and bushings the case was solved with"},
      {"residual", "ratio: largest unbalanced force over the largest force after the solve"},
      {"pieces", "what acts on both ends of each piece, in its own axes (x from end a to end b)"},
      {"reactions", "what holds the structure, on the structure, in the axes of the case"},
      {"displacements", "of named points, in the axes of the case: x forward, y left, z up"},
      {"force_N", "N: x, y, z"},
      {"moment_Nm", "N m: about x, y, z"},
      {"displacement_m", "m: along x, y, z"},
      {"rotation_rad", "rad: about x, y, z"},
      {"mass_kg", "kg"},
      {"low", "lowest over the stiffness sets, in the unit of the key above it"},
      {"high", "highest over the stiffness sets, in the unit of the key above it"},
      {"worst_utilization", "ratio, of `worst`"},
      {"parts", "each part of a design compared, with the worst utilization of its checks"},
      {"tip_deflection_m", "m: bracket bolt across the truck, largest load case"},
      {"root_moment_Nm", "N m: bracket root about the rail, largest load case"},
      {"weld_utilization", "ratio, of the bracket's root weld"},
      {"worst_stress_Pa", "Pa: largest von Mises stress of any part"},
      {"critical_factor", "ratio: lowest multiple of a load case at which anything buckles"},
      {"mass_per_length_kg_m", "kg/m"},
      {"stopped_by", "the check, load case and reason for which a size does not pass"},
      {"lightest", "the lightest size that passes; left out when none does"},
      {"next_down", "the next lighter size, which does not pass"},
      {"next_up", "the next heavier size that passes"},
      {"same_outside", "the lightest size that passes of the outside diameter the case has now"},
      {"others_over", "true: another part of the design is over its limit or not decided"},
  };
  return kKeys;
}

}  // namespace report
