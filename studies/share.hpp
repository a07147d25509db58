#pragma once

#include <cstddef>
#include <map>
#include <string>

namespace studies {

/// Which pieces of a long study are computed here, and which are known from elsewhere: share 2 of 3
/// computes pieces 1, 4, 7 ... (counted from 0). The answer of a study that knows all pieces is the
/// same as if it had computed them.
template <class Piece>
struct Share {
  std::size_t which = 1;  ///< from 1
  std::size_t of = 1;
  std::map<std::size_t, Piece> known = {};

  [[nodiscard]] bool is_mine(std::size_t i) const { return i % of == which - 1; }
  /// Null where it is not known.
  [[nodiscard]] const Piece* find(std::size_t i) const {
    const auto found = known.find(i);
    return found == known.end() ? nullptr : &found->second;
  }
};

}  // namespace studies
