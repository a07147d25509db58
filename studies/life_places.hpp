#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "checks/fatigue.hpp"
#include "fea/solver.hpp"
#include "parts/assembly.hpp"

namespace studies {

/// A range of nominal stress between two solutions.
struct StressRange {
  double direct = 0.0;  ///< [Pa]
  double shear = 0.0;   ///< [Pa]
};

/// A place whose life is estimated.
struct LifePlace {
  std::string part;
  std::string where;
  checks::FatigueDetail detail;
  std::optional<checks::FatigueDetail> shear_detail = {};
  std::string stress;  ///< what the nominal stress is, in symbols
  /// @param to  null = nothing acts
  std::function<StressRange(const parts::Assembly& assembly, const fea::Solution& from,
                            const fea::Solution* to)>
      range;
};

/// Every place of a design, in the same order for each of its stiffness sets.
[[nodiscard]] std::vector<LifePlace> life_places(const parts::Assembly& assembly);

/// What has no category here, or needs numbers that no case gives, in words.
[[nodiscard]] std::vector<std::string> without_category(const parts::Assembly& assembly);

}  // namespace studies
