# Warnings, sanitizers and debug checks, as one target that every folder links privately.
add_library(project_flags INTERFACE)
target_compile_options(project_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast
  -Wnon-virtual-dtor -Woverloaded-virtual -Wdouble-promotion -Wnull-dereference
  -Wimplicit-fallthrough
  # g++ 12 sees overlaps in std::string's operator+ where there are none (its bug 105651).
  $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>
  $<$<BOOL:${LINKMARGIN_WERROR}>:-Werror>)
target_compile_definitions(project_flags INTERFACE
  $<$<CONFIG:Debug>:_GLIBCXX_ASSERTIONS> $<$<CONFIG:Debug>:EIGEN_INITIALIZE_MATRICES_BY_NAN>)
if(LINKMARGIN_SANITIZE)
  # The last four would instrument each reference that Eigen passes on, for a third of the build's
  # time; the address sanitizer stops at what the first and the last of them are about.
  # Poisoning each local variable where its scope ends would take another third.
  add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all
                      -fno-omit-frame-pointer -fno-sanitize=null,alignment,vptr,object-size
                      -fno-sanitize-address-use-after-scope)
  add_link_options(-fsanitize=address,undefined)
endif()
