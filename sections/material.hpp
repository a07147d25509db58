#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/units.hpp"

namespace sections {

/// An isotropic steel. `haz_*` are the strengths to use in the heat-affected zone of a weld.
struct Material {
  std::string id;                     ///< "DOM1020_SR"
  std::string description;            ///< "A513 type 5 1020 stress relieved"
  double elastic = base::kUnset;      ///< Young's modulus E  [Pa]
  double poisson = 0.3;               ///< [-]
  double density = base::kUnset;      ///< [kg/m^3]
  double yield = base::kUnset;        ///< [Pa]
  double tensile = base::kUnset;      ///< [Pa]
  double haz_yield = base::kUnset;    ///< [Pa]
  double haz_tensile = base::kUnset;  ///< [Pa]
  double thickness_over = 0.0;        ///< the strengths hold from this thickness  [m]
  double thickness_to = std::numeric_limits<double>::infinity();  ///< up to this one  [m]
  std::string basis;          ///< what the strengths are: "specified minimum", ...
  std::string haz_basis;      ///< where the weld-zone strengths come from
  std::string mark;           ///< "read" or "from memory"
  std::string source;         ///< standard or handbook table
  std::string sizes_by = {};  ///< whose tolerances its sizes have: "a513_5"; empty = not known here
  /// @return E / (2 (1 + nu))  [Pa]
  [[nodiscard]] double shear_modulus() const { return elastic / (2.0 * (1.0 + poisson)); }
  /// Welding lowers its strength: cold drawn, stress relieved or heat treated.
  [[nodiscard]] bool weakened_by_welding() const { return haz_yield < yield; }
  /// The strengths are those of a specification, which end at its thickness limits; otherwise they
  /// are estimates or typical values.
  [[nodiscard]] bool specified() const;
  /// The strengths hold for this thickness; for an unset one too.  [m]
  [[nodiscard]] bool covers(double thickness) const {
    return !(thickness < thickness_over) && !(thickness > thickness_to);
  }
  bool operator==(const Material&) const = default;
};

/// The built-in list, in the order of sections/data/materials.csv.
[[nodiscard]] const std::vector<Material>& materials();

/// Finds by id or by a trade name ("DOM", "mild steel", "A36", "1018", "4130", "S355"), without
/// regard to case, spaces, dashes and underscores.
/// @return nothing when the name is not known
[[nodiscard]] std::optional<Material> find_material(std::string_view name);

/// What a name left to us: "A513 type 5 1020 stress relieved, the usual one of as drawn, ...", for
/// a name that stands for one condition or grade of several; empty for a name that says all.
[[nodiscard]] std::string condition_chosen(std::string_view name);

/// The row of the list with the same description that holds for a thickness, if there is one.
[[nodiscard]] const Material* same_steel_for(const Material& material, double thickness);

/// The known name nearest to one that is not known, for messages.
[[nodiscard]] std::string nearest_material(std::string_view name);

}  // namespace sections
