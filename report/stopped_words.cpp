#include "report/stopped_words.hpp"

#include <fmt/format.h>

#include "report/wrap.hpp"

namespace report {

std::string stopped_words(std::size_t done, std::size_t all, const char* things,
                          const TextStyle& style) {
  if (done >= all) return "";
  const double share = 100.0 * static_cast<double>(done) / static_cast<double>(all);
  return paragraph(fmt::format("INTERRUPTED: {} of {} {} are complete ({:.0f} %); the answer is of "
                               "those alone",
                               done, all, things, share),
                   style.width, 0, 2);
}

}  // namespace report
