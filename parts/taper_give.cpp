#include "parts/taper_give.hpp"

#include <array>

namespace parts {
namespace {

struct GaussPoint {
  double at;      ///< -1 to 1; there is one at -at too
  double weight;  ///< of 2 in all
};
// Abramowitz and Stegun, table 25.4, n = 8, from memory.
constexpr std::array<GaussPoint, 4> kGauss = {{{0.1834346424956498, 0.3626837833783620},
                                               {0.5255324099163290, 0.3137066458778873},
                                               {0.7966664774136267, 0.2223810344533745},
                                               {0.9602898564975363, 0.1012285362903763}}};

void add_bending(std::array<double, 3>& sums, double x, double part) {
  for (double& sum : sums) {
    sum += part;
    part *= x;
  }
}

}  // namespace

fea::TaperGive taper_give(const std::function<sections::AreaProps(double)>& section_at,
                          double length) {
  fea::TaperGive give;
  give.along = give.twist = 0.0;
  for (const GaussPoint& point : kGauss) {
    for (const double side : {-1.0, 1.0}) {
      const double x = 0.5 * length * (1.0 + side * point.at);
      const double dx = 0.5 * length * point.weight;
      const sections::AreaProps section = section_at(x);
      give.along += dx / section.area;
      give.twist += dx / section.torsion;
      give.shear_y += dx / section.shear_y;
      give.shear_z += dx / section.shear_z;
      add_bending(give.bend_y, x, dx / section.iyy);
      add_bending(give.bend_z, x, dx / section.izz);
    }
  }
  return give;
}

}  // namespace parts
