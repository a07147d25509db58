#pragma once

#include <functional>
#include <map>

namespace studies {

/// Where a search ended.
struct LimitFound {
  double multiple;
  bool gives_way = false;  ///< the frame does so, less than 0.1 % above
};

/// The largest multiple of the load at which a check holds: the root of ratio(multiple) = 1, where
/// ratio(0) = 0 and ratio grows with the load; infinite when the frame cannot carry that multiple.
/// @param ratio     demand over capacity at a multiple > 0  [-]
/// @param at_one    ratio(1), > 0
/// @param highest   search no farther; the answer is then `highest`
/// @param known     ratios at other multiples, of which as many as say where the limit is save one
///                  at a time; they have no say in the answer
/// @return relative accuracy 1e-6; where the frame gives way first, a multiple it still carries
/// Method: inverse interpolation (Neville) on the spare load, multiple / ratio - multiple, and
/// halving where that does not close in.
[[nodiscard]] LimitFound load_limit(const std::function<double(double)>& ratio, double at_one,
                                    double highest, const std::map<double, double>& known);

}  // namespace studies
