# add_folder(NAME SOURCES ... PUBLIC ... PRIVATE ...): the static library of one folder of the tree.
# A folder without sources yet is headers only.
function(add_folder name)
  cmake_parse_arguments(ARG "" "" "SOURCES;PUBLIC;PRIVATE" ${ARGN})
  if(ARG_SOURCES)
    add_library(${name} STATIC ${ARG_SOURCES})
    target_include_directories(${name} PUBLIC ${PROJECT_SOURCE_DIR})
    target_link_libraries(${name} PUBLIC ${ARG_PUBLIC}
                          PRIVATE ${ARG_PRIVATE} $<BUILD_INTERFACE:project_flags>)
    precompile_headers(${name} precompiled)
    join_sources(${name})
  else()
    add_library(${name} INTERFACE)
    target_include_directories(${name} INTERFACE ${PROJECT_SOURCE_DIR})
    target_link_libraries(${name} INTERFACE ${ARG_PUBLIC} ${ARG_PRIVATE})
  endif()
endfunction()

# add_text(TARGET NAMESPACE HEADER FILE...): compiles text files into TARGET, so that no file is
# opened at run time. HEADER declares `std::string_view NAME()` in NAMESPACE for each file NAME.EXT;
# what is neither letter nor digit in NAME becomes `_`. Line ends arrive as \n.
function(add_text target namespace header)
  set(declarations "")
  set(names "")
  foreach(file ${ARGN})
    get_filename_component(name ${file} NAME_WLE)
    string(REGEX REPLACE "[^A-Za-z0-9_]" "_" name ${name})
    if(name IN_LIST names)
      message(FATAL_ERROR "add_text: two files would both be ${name}(): ${ARGN}")
    endif()
    list(APPEND names ${name})
    file(READ ${CMAKE_CURRENT_SOURCE_DIR}/${file} content)
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS
                 ${CMAKE_CURRENT_SOURCE_DIR}/${file})
    set(source ${CMAKE_CURRENT_BINARY_DIR}/text_${name}.cpp)
    file(CONFIGURE OUTPUT ${source} @ONLY CONTENT
"#include <string_view>
namespace @namespace@ {
std::string_view @name@();
std::string_view @name@() { return R\"lm_text(@content@)lm_text\"; }
}
")
    target_sources(${target} PRIVATE ${source})
    string(APPEND declarations "[[nodiscard]] std::string_view ${name}();  // ${file}\n")
  endforeach()
  file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/generated/${header} @ONLY CONTENT
"#pragma once
#include <string_view>
namespace @namespace@ {
@declarations@}
")
  target_include_directories(${target} PRIVATE ${CMAKE_BINARY_DIR}/generated)
endfunction()
