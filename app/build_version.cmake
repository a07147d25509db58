# Writes HEADER with VERSION and the commit of SOURCE_DIR, where it is the top of a git tree; touched
# only when it changes, so that nothing is built again without need.
set(commit "unknown commit")
find_program(GIT git)
if(GIT)
  # Reading must not lock or rewrite the index of the tree it looks at.
  set(ENV{GIT_OPTIONAL_LOCKS} 0)
  execute_process(COMMAND ${GIT} -C ${SOURCE_DIR} rev-parse --show-toplevel
                  OUTPUT_VARIABLE top OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET)
  file(REAL_PATH ${SOURCE_DIR} source)
  if(top STREQUAL source)
    execute_process(COMMAND ${GIT} -C ${SOURCE_DIR} describe --always --exclude=* --abbrev=10
                            --dirty=+changes
                    OUTPUT_VARIABLE described OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET
                    RESULT_VARIABLE failed)
    if(NOT failed)
      set(commit "commit ${described}")
    endif()
  endif()
endif()
file(CONFIGURE OUTPUT ${HEADER} @ONLY CONTENT
"#pragma once
namespace app {
inline constexpr const char* kVersion = \"@VERSION@\";
inline constexpr const char* kCommit = \"@commit@\";
}
")
