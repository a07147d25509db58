#pragma once

#include <limits>
#include <string>
#include <vector>

#include "parts/design.hpp"
#include "sections/stock.hpp"

namespace studies {

enum class PartKind { any, tube, bar };

/// Which sizes may stand in for a part.
struct SizeLimits {
  double outside_from = 0.0;                                    ///< diameter or larger side  [m]
  double outside_to = std::numeric_limits<double>::infinity();  ///< [m]
  double wall_from = 0.0;                                       ///< of tubes  [m]
  double wall_to = std::numeric_limits<double>::infinity();     ///< [m]
  PartKind kind = PartKind::any;
  std::vector<sections::Material> steels = {};  ///< each size in each of them; none = as usual
  bool own_alone = false;                       ///< no sizes of the built-in lists
};

/// A part that is bought as bar or tube, by the key of its own: "lateral_link", "brace",
/// "arm.lower", "arm.upper", "steering.drag_link", "steering.tie_rod" or a member's name.
/// @return null when the design has none of that name
[[nodiscard]] parts::Stick* stick_of(parts::Design& design, const std::string& part);

/// The names of all such parts of a design.
[[nodiscard]] std::vector<std::string> sized_parts(const parts::Design& design);

/// One size in one steel.
struct SizeChoice {
  sections::StockItem item;
  sections::Material steel;

  [[nodiscard]] double mass_per_length() const;  ///< [kg/m]
};

/// The sizes that may stand in for a part, by mass: round tubes and bars for a round one, else
/// sizes of its own kind, within the limits. A tube keeps the steel of a tube that is there, a bar
/// that of a bar; else it has the usual one; in the row of its list that holds for the thickness.
/// @param more  sizes of the user's own, beside the built-in lists
/// @throws base::InputError with the part as its key: no such part, or no size
[[nodiscard]] std::vector<SizeChoice> sizes_for(const parts::Design& design,
                                                const std::string& part, const SizeLimits& limits,
                                                const std::vector<sections::StockItem>& more);

/// The sizes in stock that may stand in for a bar or tube, by mass; with the same steels. None
/// where no list holds its kind.
[[nodiscard]] std::vector<SizeChoice> sizes_like(const parts::Stick& now, bool inches);

/// The design with another size for a part; its welds, joints and zones are those of the new size.
[[nodiscard]] parts::Design with_size(const parts::Design& design, const std::string& part,
                                      const SizeChoice& size);

/// How much bar or tube a part takes (an arm's: of both sides).  [m]
[[nodiscard]] double length_of(const parts::Design& design, const std::string& part);

/// Diameter of what is round, else the larger side.  [m]
[[nodiscard]] double outside_of(const sections::Shape& shape);

[[nodiscard]] bool same_outside(const sections::Shape& a, const sections::Shape& b);

}  // namespace studies
