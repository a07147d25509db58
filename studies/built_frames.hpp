#pragma once

#include <vector>

#include "fea/solver.hpp"

namespace studies {

/// Frames that were factored, one of each numbering: one that is made later shares with one of them
/// what they have in common.
class BuiltFrames {
 public:
  void add(const fea::Factored& frame);
  void add(const BuiltFrames& frames);
  /// @return null where none has the unknowns of this model
  [[nodiscard]] const fea::Factored* alike(const fea::Model& model) const;

 private:
  std::vector<fea::Factored> all_;
};

}  // namespace studies
