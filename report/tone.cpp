#include "report/tone.hpp"

namespace report {
namespace {

/// Parameters of the select-graphic-rendition sequence, ECMA-48 8.3.117.
const char* rendition(Tone tone) {
  switch (tone) {
    case Tone::label:
      return "1";
    case Tone::within:
      return "1;32";
    case Tone::over:
      return "1;31";
    case Tone::undecided:
      return "1;33";
    case Tone::plain:
      break;
  }
  return "0";
}

}  // namespace

std::string toned(const std::string& text, Tone tone, bool color) {
  if (!color || tone == Tone::plain || text.empty()) return text;
  return std::string("\x1b[") + rendition(tone) + "m" + text + "\x1b[0m";
}

}  // namespace report
