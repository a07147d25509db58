# What keeps a build short: most of its time goes into other people's templates.
option(LINKMARGIN_PRECOMPILED "Parse the headers of libraries once" ON)
option(LINKMARGIN_JOINED "Compile the files of a folder in batches, as one" OFF)

add_library(precompiled_headers INTERFACE)
target_link_libraries(precompiled_headers INTERFACE Eigen3::Eigen fmt::fmt)
target_compile_options(precompiled_headers INTERFACE
  # g++ 12 forgets which lines of a precompiled header are a library's, and then warns of those.
  $<$<CXX_COMPILER_ID:GNU>:-Wno-array-bounds>
  $<$<CXX_COMPILER_ID:GNU>:-Wno-stringop-overflow>
  $<$<CXX_COMPILER_ID:GNU>:-Wno-stringop-overread>)

# precompile_headers(TARGET OWNER HEADER...): TARGET starts from the headers parsed for OWNER, which
# the first call makes. Each file still includes what it uses; the tidy preset, which goes without
# this and without batches, proves that.
function(precompile_headers target owner)
  if(NOT LINKMARGIN_PRECOMPILED)
    return()
  endif()
  if(NOT TARGET ${owner})
    file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/generated/${owner}.cpp CONTENT "")
    add_library(${owner} OBJECT ${CMAKE_BINARY_DIR}/generated/${owner}.cpp)
    get_target_property(options ${target} COMPILE_OPTIONS)
    if(options)
      target_compile_options(${owner} PRIVATE ${options})
    endif()
    target_link_libraries(${owner} PRIVATE precompiled_headers project_flags)
    target_precompile_headers(${owner} PRIVATE
      <Eigen/Dense> <Eigen/SparseCore> <fmt/format.h> <algorithm> <array> <cmath> <functional> <map>
      <memory> <optional> <string> <utility> <variant> <vector> ${ARGN})
  endif()
  target_link_libraries(${target} PRIVATE $<BUILD_INTERFACE:precompiled_headers>)
  target_precompile_headers(${target} REUSE_FROM ${owner})
endfunction()

# join_sources(TARGET): with LINKMARGIN_JOINED, templates that files of a folder share are made once.
function(join_sources target)
  set_target_properties(${target} PROPERTIES UNITY_BUILD ${LINKMARGIN_JOINED}
                                             UNITY_BUILD_BATCH_SIZE 9)
endfunction()
