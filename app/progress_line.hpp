#pragma once

#include <chrono>
#include <mutex>

#include "studies/watch.hpp"

namespace app {

/// A line on the terminal that says how far a long run is: "  34 %, 2 min left  load case 3 of 12,
/// soft rail". It appears when standard error is a terminal and the run has taken a second, and is
/// gone when this object is. Its watch also stops the run once it is interrupted.
class ProgressLine {
 public:
  ProgressLine();
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  /// For the studies, from any thread; must not outlive this object.
  [[nodiscard]] studies::Watch watch();

 private:
  using Clock = std::chrono::steady_clock;

  void show(const studies::Progress& progress);

  std::mutex mutex_;
  int columns_ = 0;  // of the terminal; 0 = none
  Clock::time_point start_ = Clock::now();
  Clock::time_point next_;
  double fraction_ = 0.0;  // the farthest seen: threads tell of theirs in any order
  int shown_ = 0;          // columns that the line takes now
};

}  // namespace app
