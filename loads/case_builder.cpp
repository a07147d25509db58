#include "loads/case_builder.hpp"

#include <cmath>

#include <fmt/format.h>

#include "base/input_error.hpp"

namespace loads {

double needed(double value, const char* key, std::string_view case_name, const char* what) {
  if (std::isfinite(value) && value > 0.0) return value;
  const bool of_vehicle = std::string_view(key).find('.') == std::string_view::npos;
  throw base::InputError(of_vehicle ? std::string("vehicle.") + key : key,
                         fmt::format("the load case {} needs {}; give it, or leave the case out",
                                     case_words(case_name), what));
}

double wheel_weight(const Vehicle& v, std::string_view case_name) {
  return 0.5 * needed(v.axle_weight, "axle_weight", case_name,
                      "the weight under both front tires, over 0");
}

double friction(const Vehicle& v, std::string_view case_name) {
  return needed(v.friction, "friction", case_name, "the friction of the tires, such as 0.9");
}

void need_transfer(const Vehicle& v, std::string_view case_name) {
  (void)needed(v.total_weight, "total_weight", case_name, "the weight of the whole truck");
  (void)needed(v.wheelbase, "wheelbase", case_name, "the wheelbase");
  (void)needed(v.mass_center_height, "mass_center_height", case_name,
               "the height of the truck's mass center");
  if (v.total_weight <= v.axle_weight) {
    throw base::InputError("vehicle.total_weight",
                           "the whole truck must weigh more than its front axle carries");
  }
}

void add_inertia(LoadCase& load_case, const Vehicle& v, const std::array<double, 3>& acceleration) {
  if (std::isnan(v.unsprung_weight)) return;
  Push inertia{.role = Role::axle_center, .what = "axle and wheels, inertia"};
  for (std::size_t i = 0; i < 3; ++i) {
    inertia.force[i] = 0.0 - v.unsprung_weight * acceleration[i];
  }
  load_case.pushes.push_back(inertia);
  load_case.basis += "; inertia of axle and wheels counted (d'Alembert)";
}

LoadCase case_of(std::string_view name) {
  const CaseInfo& info = case_info(name);
  return {.id = std::string(name),
          .name = case_words(name),
          .severity = info.severity,
          .posture = info.posture,
          .needs = info.needs,
          .basis = std::string(info.basis)};
}

std::vector<LoadCase> both_sides(const LoadCase& left) {
  return {left, mirrored(left)};
}

}  // namespace loads
