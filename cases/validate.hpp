#pragma once

#include "cases/reading_context.hpp"

namespace cases {

/// What no single field can tell: parts that need each other, lengths that cannot be.
void validate(ReadingContext& context);

}  // namespace cases
