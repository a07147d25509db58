#pragma once

#include <cstddef>
#include <functional>
#include <thread>

namespace studies_tests {

/// Every other piece on a second thread.
inline void on_two_threads(std::size_t n, const std::function<void(std::size_t)>& piece) {
  const auto half = [&](std::size_t first) {
    for (std::size_t i = first; i < n; i += 2) piece(i);
  };
  std::thread other(half, 1);
  half(0);
  other.join();
}

}  // namespace studies_tests
