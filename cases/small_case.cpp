#include "cases/small_case.hpp"

#include "cases/case_text.hpp"

namespace cases {

std::string_view small_case() {
  return data::small_case();
}

}  // namespace cases
