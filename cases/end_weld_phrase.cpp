#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/phrase.hpp"
#include "cases/sizes.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::EndWeldSpec;

[[noreturn]] void refuse_end_weld(std::string_view text, std::string_view why) {
  throw InputError(
      "", fmt::format("{} {}; e.g. {}", quoted(text), why, quoted(example_phrase(EndWeldSpec{}))));
}

/// The one size at the start of a piece, and what follows it.
Sizes one_size(std::string_view piece, std::string_view text) {
  Sizes sizes = read_sizes(piece, example_phrase(EndWeldSpec{}));
  if (sizes.si.size() != 1) {
    refuse_end_weld(text, fmt::format("has {}, which gives no one size", quoted(piece)));
  }
  sizes.rest = lower(sizes.rest);
  return sizes;
}

/// "4 rosettes of 1/2 in".
bool read_rosettes(const std::string& piece, std::string_view text, EndWeldSpec& weld) {
  const std::vector<std::string> words = words_of(lower(piece));
  if (words.size() < 4 || words[1] != "rosettes" || words[2] != "of") return false;
  constexpr int kMost = 8;
  if (words[0].size() != 1 || words[0][0] < '2' || words[0][0] > '0' + kMost) {
    refuse_end_weld(text, fmt::format("has {} rosettes: 2 to {} would do", words[0], kMost));
  }
  weld.rosettes = words[0][0] - '0';
  const Sizes size = one_size(piece.substr(lower(piece).find(" of ") + 4), text);
  if (!size.rest.empty()) {
    refuse_end_weld(text, fmt::format("has {} after the size of its rosettes", quoted(size.rest)));
  }
  weld.rosette = size.si[0];
  return true;
}

/// "fishmouth on 2 in".
bool read_fishmouth(const std::string& piece, std::string_view text, EndWeldSpec& weld) {
  const std::string start = "fishmouth on ";
  if (lower(piece).rfind(start, 0) != 0) return false;
  const Sizes size = one_size(piece.substr(start.size()), text);
  if (!size.rest.empty() && size.rest != "tube" && size.rest != "sleeve") {
    refuse_end_weld(
        text, fmt::format("has {} after the diameter that its end is cut to", quoted(size.rest)));
  }
  weld.around = size.si[0];
  return true;
}

}  // namespace

template <>
Phrase<EndWeldSpec> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = squeeze(raw);
  EndWeldSpec weld;
  for (const std::string& piece : split(text, ",")) {
    if (read_rosettes(piece, text, weld) || read_fishmouth(piece, text, weld)) continue;
    if (lower(piece) == "full groove") {
      weld.groove = std::numeric_limits<double>::infinity();
      continue;
    }
    const Sizes size = one_size(piece, text);
    if (!size.rest.empty() && size.rest != "fillet" && size.rest != "groove") {
      refuse_end_weld(text, fmt::format("has {}, which is none of: the leg of a fillet, fishmouth "
                                        "on its diameter, the throat of a groove, full groove, "
                                        "rosettes",
                                        quoted(piece)));
    }
    (size.rest == "groove" ? weld.groove : weld.leg) = size.si[0];
  }
  if (weld.groove > 0.0 && weld.leg > 0.0) {
    refuse_end_weld(text, "gives a fillet and a groove; give the one that counts");
  }
  if (weld.around > 0.0 && !(weld.leg > 0.0)) refuse_end_weld(text, "gives no leg of a fillet");
  return {weld};
}

std::string write_phrase(const EndWeldSpec& weld, const parts::Design& names) {
  const auto size = [&](double si) { return write_sizes({si}, names.inches); };
  std::vector<std::string> pieces;
  if (weld.leg > 0.0) pieces.push_back(size(weld.leg) + " fillet");
  if (std::isinf(weld.groove)) {
    pieces.emplace_back("full groove");
  } else if (weld.groove > 0.0) {
    pieces.push_back(size(weld.groove) + " groove");
  }
  if (weld.around > 0.0) pieces.push_back("fishmouth on " + size(weld.around));
  if (weld.rosettes > 0) {
    pieces.push_back(fmt::format("{} rosettes of {}", weld.rosettes, size(weld.rosette)));
  }
  return join(pieces, ", ");
}

}  // namespace cases
