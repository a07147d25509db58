#include "app/commands.hpp"
#include "app/program.hpp"
#include "cases/starters.hpp"

namespace app {

Output new_command(const NewRequest& request) {
  return {.text = std::string(cases::starter(request.layout)), .status = kExitWithin};
}

}  // namespace app
