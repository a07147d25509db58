#pragma once

#include <limits>
#include <vector>

#include "studies/criterion.hpp"

namespace studies {

/// What has been worked out of each check so far, by its kind and number.
class KnownRatios {
 public:
  /// @return null where it is not known
  [[nodiscard]] const double* find(const Criterion& criterion) const {
    const auto kind = static_cast<std::size_t>(criterion.kind);
    if (kind >= by_kind_.size() || criterion.index >= by_kind_[kind].size()) return nullptr;
    const double& ratio = by_kind_[kind][criterion.index];
    return ratio == kUnknown ? nullptr : &ratio;
  }
  /// @return ratio
  double put(const Criterion& criterion, double ratio) {
    const auto kind = static_cast<std::size_t>(criterion.kind);
    if (kind >= by_kind_.size()) by_kind_.resize(kind + 1);
    std::vector<double>& of_kind = by_kind_[kind];
    if (criterion.index >= of_kind.size()) of_kind.resize(criterion.index + 1, kUnknown);
    return of_kind[criterion.index] = ratio;
  }

 private:
  static constexpr double kUnknown = -std::numeric_limits<double>::infinity();
  std::vector<std::vector<double>> by_kind_;
};

}  // namespace studies
