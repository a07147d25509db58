#include "studies/growing_work.hpp"

#include <utility>

namespace studies {

void GrowingWork::add(Piece piece) {
  const std::lock_guard lock(mutex_);
  left_.push_back(std::move(piece));
  changed_.notify_one();
}

void GrowingWork::do_all(const Spread& spread) {
  spread_out(spread, kMost, [this](std::size_t) { do_as_they_come(); });
}

/// Waits while others may add to what is left; empty when there will be no more.
Piece GrowingWork::next() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !left_.empty() || n_being_done_ == 0; });
  if (left_.empty()) return {};
  Piece piece = std::move(left_.front());
  left_.pop_front();
  ++n_being_done_;
  return piece;
}

void GrowingWork::end_one() {
  const std::lock_guard lock(mutex_);
  --n_being_done_;
  changed_.notify_all();
}

void GrowingWork::do_as_they_come() {
  while (const Piece piece = next()) {
    try {
      piece();
    } catch (...) {
      {
        const std::lock_guard lock(mutex_);
        left_.clear();
      }
      end_one();
      throw;
    }
    end_one();
  }
}

}  // namespace studies
