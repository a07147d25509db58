#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "cases/document.hpp"
#include "parts/field.hpp"

namespace cases {

/// The case files that the format reference takes its examples from: cases/format/*.yaml.
class FormatExamples {
 public:
  FormatExamples();

  /// What the files give for a field, as they write it: two different values at most.
  /// @param part  "bracket", "members" (any of them), "sections.channel" (one of that shape)
  [[nodiscard]] std::vector<std::string> of(std::string_view part,
                                            const parts::FieldInfo& info) const;

  /// The lines of one key at the top of one file, without the empty lines after them.
  /// @param file  "braced-link"
  [[nodiscard]] static std::string block(std::string_view file, std::string_view key);

 private:
  std::array<Document, 4> documents_;
};

}  // namespace cases
