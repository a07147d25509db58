#include "studies/design_caveats.hpp"

#include <algorithm>

#include "checks/caveat.hpp"
#include "parts/assembly.hpp"
#include "parts/stiffness_set.hpp"

namespace studies {
namespace {

std::vector<std::string> caveats_of(const parts::Design& design) {
  const parts::Assembly assembly = parts::assemble(design, parts::stiffness_sets(design).front());
  std::vector<std::string> out;
  for (const parts::Piece& piece : assembly.pieces) {
    for (const std::string& note : piece.notes) {
      if (!checks::is_caveat(note)) continue;
      out.push_back(piece.part + ": " + checks::caveat_words(note));
    }
  }
  return out;
}

}  // namespace

std::vector<std::string> more_caveats(const parts::Design& design, const parts::Design& than) {
  const std::vector<std::string> known = caveats_of(than);
  std::vector<std::string> out = caveats_of(design);
  const auto is_known = [&](const std::string& words) {
    return std::find(known.begin(), known.end(), words) != known.end();
  };
  out.erase(std::remove_if(out.begin(), out.end(), is_known), out.end());
  return out;
}

}  // namespace studies
