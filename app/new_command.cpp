#include "app/commands.hpp"
#include "app/program.hpp"
#include "cases/small_case.hpp"

namespace app {

Output new_command() {
  return {.text = std::string(cases::small_case()), .status = kExitWithin};
}

}  // namespace app
