#pragma once

#include <cstddef>
#include <functional>

namespace studies {

/// Calls a piece of work with 0, 1 ... n - 1, perhaps several at once and in any order, and comes
/// back when all are done. What the first of them throws ends the rest and is thrown on. Each piece
/// keeps to its own memory, so that the answer does not depend on how they are spread. An empty one
/// means: one after another.
using Spread = std::function<void(std::size_t n, const std::function<void(std::size_t)>& piece)>;

inline void spread_out(const Spread& spread, std::size_t n,
                       const std::function<void(std::size_t)>& piece) {
  if (spread) return spread(n, piece);
  for (std::size_t i = 0; i < n; ++i) piece(i);
}

}  // namespace studies
