#include "app/threads.hpp"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <deque>
#include <exception>
#include <memory>
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

  std::size_t n_helpers = 0;  ///< that are at work

 private:
  std::size_t n_;
  const std::function<void(std::size_t)>& piece_;
  std::atomic<std::size_t> next_ = 0;
  std::mutex mutex_;
  std::size_t failed_ = static_cast<std::size_t>(-1);
  std::exception_ptr failure_;
};

/// Threads that stay from one list of pieces to the next, and with them what they remember and the
/// memory that they have asked for. Started when they are first needed.
class Helpers {
 public:
  explicit Helpers(std::size_t most) : most_(most) {}
  ~Helpers() {
    {
      const std::lock_guard lock(mutex_);
      ends_ = true;
    }
    called_.notify_all();
    for (std::thread& one : threads_) one.join();
  }
  Helpers(const Helpers&) = delete;
  Helpers& operator=(const Helpers&) = delete;

  /// The calling thread does its share; a piece may call this too.
  void spread(std::size_t n, const std::function<void(std::size_t)>& piece) {
    Crew crew(n, piece);
    if (n > 1) call(crew, std::min(n - 1, most_));
    crew.work();
    std::unique_lock lock(mutex_);
    calls_.erase(std::remove(calls_.begin(), calls_.end(), &crew), calls_.end());
    left_.wait(lock, [&crew] { return crew.n_helpers == 0; });
    crew.rethrow();
  }

 private:
  void call(Crew& crew, std::size_t n) {
    const std::lock_guard lock(mutex_);
    calls_.insert(calls_.end(), n, &crew);
    while (threads_.size() < most_ && threads_.size() < calls_.size()) {
      threads_.emplace_back([this] { help(); });
    }
    called_.notify_all();
  }

  void help() {
    std::unique_lock lock(mutex_);
    for (;;) {
      called_.wait(lock, [this] { return ends_ || !calls_.empty(); });
      if (ends_) return;
      Crew& crew = *calls_.front();
      calls_.pop_front();
      ++crew.n_helpers;
      lock.unlock();
      crew.work();
      lock.lock();
      --crew.n_helpers;
      left_.notify_all();
    }
  }

  std::size_t most_;
  std::vector<std::thread> threads_;
  std::mutex mutex_;
  std::condition_variable called_;
  std::condition_variable left_;
  std::deque<Crew*> calls_;
  bool ends_ = false;
};

}  // namespace

studies::Spread threads(int jobs) {
  const unsigned there = std::max(1U, std::thread::hardware_concurrency());
  const std::size_t most = jobs > 0 ? static_cast<std::size_t>(jobs) : there;
  return [helpers = std::make_shared<Helpers>(most - 1)](
             std::size_t n, const std::function<void(std::size_t)>& piece) {
    helpers->spread(n, piece);
  };
}

}  // namespace app
