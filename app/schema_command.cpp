#include "app/commands.hpp"
#include "app/program.hpp"
#include "cases/schema.hpp"

namespace app {

Output schema_command() {
  return {.text = cases::schema(), .status = kExitWithin};
}

}  // namespace app
