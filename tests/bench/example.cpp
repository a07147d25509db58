#include "tests/bench/example.hpp"

#include <fstream>
#include <sstream>

#include "base/invariant.hpp"
#include "cases/reader.hpp"

namespace bench {

std::string example_text(const std::string& name) {
  std::ifstream file(LINKMARGIN_SOURCE_DIR "/cases/examples/" + name);
  INVARIANT(file.good());
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

parts::Design example_design(const std::string& name) {
  const cases::Reading reading = cases::read(example_text(name), name);
  INVARIANT(reading.design.has_value());
  parts::Design design = *reading.design;
  design.variants.clear();
  return design;
}

}  // namespace bench
