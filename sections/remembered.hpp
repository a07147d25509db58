#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace sections {

/// What has been worked out last, by what it was worked out of; the oldest is let go of first. Not
/// to be shared by threads.
template <class Of, class Value, std::size_t kMost = 64>
class Remembered {
 public:
  /// @param make  called for a value that is not there
  /// @return good until the next call
  template <class Make>
  const Value& operator()(const Of& of, const Make& make) {
    const auto found = std::find_if(known_.begin(), known_.end(),
                                    [&of](const auto& one) { return one.first == of; });
    if (found != known_.end()) return found->second;
    Value value = make();
    if (known_.size() < kMost) return known_.emplace_back(of, std::move(value)).second;
    auto& replaced = known_[oldest_];
    oldest_ = (oldest_ + 1) % kMost;
    replaced = {of, std::move(value)};
    return replaced.second;
  }

 private:
  std::vector<std::pair<Of, Value>> known_;
  std::size_t oldest_ = 0;
};

}  // namespace sections
