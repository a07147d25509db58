#include "app/commands.hpp"
#include "app/program.hpp"
#include "cases/format_reference.hpp"
#include "report/text_style.hpp"

namespace app {

Output format_command() {
  return {.text = cases::format_reference() + report::caution_lines({.full = true}),
          .status = kExitWithin};
}

}  // namespace app
