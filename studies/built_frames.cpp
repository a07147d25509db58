#include "studies/built_frames.hpp"

#include <algorithm>

namespace studies {

void BuiltFrames::add(const fea::Factored& frame) {
  if (alike(frame.model()) == nullptr) all_.push_back(frame);
}

void BuiltFrames::add(const BuiltFrames& frames) {
  for (const fea::Factored& one : frames.all_) add(one);
}

const fea::Factored* BuiltFrames::alike(const fea::Model& model) const {
  const auto found = std::find_if(all_.begin(), all_.end(), [&](const fea::Factored& one) {
    return fea::have_like_unknowns(one.model(), model);
  });
  return found == all_.end() ? nullptr : &*found;
}

}  // namespace studies
