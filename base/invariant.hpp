#pragma once

#include <cstdio>
#include <cstdlib>

/// Our own assumptions, checked in every build. It never guards what a user typed: that is
/// base::InputError.
#define INVARIANT(condition)                                                               \
  (static_cast<bool>(condition)                                                            \
       ? static_cast<void>(0)                                                              \
       : (std::fprintf(stderr, "linkmargin: broken invariant `%s` at %s:%d\n", #condition, \
                       __FILE__, __LINE__),                                                \
          std::abort()))
