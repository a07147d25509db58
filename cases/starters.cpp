#include "cases/starters.hpp"

#include "cases/case_text.hpp"
#include "cases/small_case.hpp"

namespace cases {

const std::vector<std::string>& layouts() {
  static const std::vector<std::string> kNames = {"link", "radius-arms", "parallel-arms",
                                                  "steering"};
  return kNames;
}

std::string_view starter(std::string_view layout) {
  if (layout == "link") return small_case();
  if (layout == "radius-arms") return data::radius_arms();
  if (layout == "parallel-arms") return data::parallel_arms();
  return layout == "steering" ? data::steering() : std::string_view();
}

}  // namespace cases
