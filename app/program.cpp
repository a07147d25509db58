#include "app/program.hpp"

#include <fmt/format.h>

#include "app/build_version.hpp"

namespace app {

std::string program_line() {
  return fmt::format("linkmargin {}, {}", kVersion, kCommit);
}

report::Program program() {
  return {kVersion, kCommit};
}

int exit_status(studies::Verdict verdict) {
  return verdict == studies::Verdict::within ? kExitWithin : kExitOver;
}

}  // namespace app
