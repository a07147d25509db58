#pragma once

namespace app {

/// From now on an interrupt (SIGINT) is remembered, for long runs to end themselves and tell what
/// they have; a second one ends the program at once.
void remember_interrupts();
[[nodiscard]] bool interrupted();

}  // namespace app
