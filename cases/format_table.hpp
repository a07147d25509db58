#pragma once

#include <string>
#include <string_view>

#include "cases/format_examples.hpp"

namespace cases {

/// The keys of one part of the case file as a Markdown table: what each is, what kind of value it
/// takes, examples, and what is done without it.
/// @param part  "bracket", "members", "load_cases" (of the case's own), "sections.channel"
[[nodiscard]] std::string format_table(const FormatExamples& examples, std::string_view part);

}  // namespace cases
