#include "app/threads.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace app {
namespace {

/// Pieces handed out one by one; the failure that is thrown on is the first in their order among
/// those that ran.
class Crew {
 public:
  Crew(std::size_t n, const std::function<void(std::size_t)>& piece) : n_(n), piece_(piece) {}

  void work() {
    for (std::size_t i = next_++; i < n_; i = next_++) {
      try {
        piece_(i);
      } catch (...) {
        const std::lock_guard lock(mutex_);
        if (i < failed_) failure_ = std::current_exception();
        failed_ = std::min(failed_, i);
        next_ = n_;
      }
    }
  }
  void rethrow() const {
    if (failure_) std::rethrow_exception(failure_);
  }

 private:
  std::size_t n_;
  const std::function<void(std::size_t)>& piece_;
  std::atomic<std::size_t> next_ = 0;
  std::mutex mutex_;
  std::size_t failed_ = static_cast<std::size_t>(-1);
  std::exception_ptr failure_;
};

}  // namespace

studies::Spread threads(int jobs) {
  const unsigned there = std::max(1U, std::thread::hardware_concurrency());
  const std::size_t most = jobs > 0 ? static_cast<std::size_t>(jobs) : there;
  return [most](std::size_t n, const std::function<void(std::size_t)>& piece) {
    Crew crew(n, piece);
    std::vector<std::thread> others;
    for (std::size_t i = 1; i < std::min(n, most); ++i) others.emplace_back([&] { crew.work(); });
    crew.work();
    for (std::thread& other : others) other.join();
    crew.rethrow();
  };
}

}  // namespace app
