#include "cases/group_shear.hpp"

#include <algorithm>

namespace cases {

void assume_group_shear(parts::Design& design) {
  for (parts::Named<parts::BoltedGroup>& group : design.bolt_groups) {
    const std::string key = "bolt_groups." + group.name + ".bolt.shear";
    const auto assumed =
        std::find_if(design.assumed.begin(), design.assumed.end(),
                     [&](const parts::Assumption& assumption) { return assumption.key == key; });
    if (assumed == design.assumed.end()) continue;
    const parts::Plates& plates = group.value.plates;
    const bool around = !plates.material.id.empty() && plates.count == 2;
    group.value.bolt.double_shear = around;
    assumed->value = around ? "double shear" : "single shear";
    assumed->basis = around ? "two plates around it; common practice"
                            : "no two plates around it are said: the weaker; common practice";
  }
}

}  // namespace cases
