#include "report/text_style.hpp"

#include "report/tone.hpp"
#include "report/wrap.hpp"
#include "studies/answer.hpp"

namespace report {

std::string caution_lines(const TextStyle& style) {
  return paragraph("CAUTION: " + joined(studies::cautions(), " "), style.width, 0, 2);
}

std::string heading(const std::string& words, const TextStyle& style) {
  return "\n" + toned(words, Tone::label, style.color) + "\n";
}

}  // namespace report
