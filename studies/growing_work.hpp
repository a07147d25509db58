#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <mutex>

#include "studies/spread.hpp"

namespace studies {

using Piece = std::function<void()>;

/// Pieces of work of which some come up while others are done. Which are done does not hang on how
/// they are spread; in which order, does.
class GrowingWork {
 public:
  /// At any time, by a piece that is being done too.
  void add(Piece piece);
  /// Comes back when there is none left. What a piece throws ends the rest and is thrown on.
  void do_all(const Spread& spread);

 private:
  // Done at a time.
  static constexpr std::size_t kMost = 8;

  [[nodiscard]] Piece next();
  void end_one();
  void do_as_they_come();

  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<Piece> left_;
  std::size_t n_being_done_ = 0;
};

}  // namespace studies
