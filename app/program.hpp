#pragma once

#include <string>

#include "report/json.hpp"
#include "studies/answer.hpp"

namespace app {

inline constexpr int kExitWithin = 0;         ///< every check that is offered is decided and within
inline constexpr int kExitOver = 1;           ///< something is over its limit, or not decided
inline constexpr int kExitInput = 2;          ///< the case or the command
inline constexpr int kExitFault = 3;          ///< the program
inline constexpr int kExitInterrupted = 130;  ///< 128 + SIGINT: what is told is not all

/// "linkmargin 0.1.0, commit 0123456789".
[[nodiscard]] std::string program_line();

[[nodiscard]] report::Program program();

[[nodiscard]] int exit_status(studies::Verdict verdict);

}  // namespace app
