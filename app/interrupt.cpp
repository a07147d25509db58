#include "app/interrupt.hpp"

#include <csignal>

namespace app {
namespace {

volatile std::sig_atomic_t g_interrupted = 0;

extern "C" void on_interrupt(int) {
  g_interrupted = 1;
  static_cast<void>(std::signal(SIGINT, SIG_DFL));
}

}  // namespace

void remember_interrupts() {
  static_cast<void>(std::signal(SIGINT, on_interrupt));
}

bool interrupted() {
  return g_interrupted != 0;
}

}  // namespace app
