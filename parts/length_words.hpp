#pragma once

#include <string>

#include <fmt/format.h>

#include "base/units.hpp"

namespace parts {

/// A length in the units of the case file, for messages. @param si  [m]
[[nodiscard]] inline std::string length_words(double si, bool inches) {
  return inches ? fmt::format("{:.4g} in", si / base::kInch)
                : fmt::format("{:.4g} mm", si / base::kMillimeter);
}

}  // namespace parts
