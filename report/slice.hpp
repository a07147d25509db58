#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "report/json.hpp"
#include "studies/compare.hpp"
#include "studies/pick_grid.hpp"
#include "studies/rate.hpp"

namespace report {

/// A file of the user's with what it says.
struct NamedText {
  std::string name;
  std::string text;
  bool operator==(const NamedText&) const = default;
};

/// What one share of a study has computed, and all that is needed to put the shares together
/// elsewhere: the command, the case and the list of sizes themselves.
struct Slice {
  std::string program;                 ///< version and commit: all shares must have the same
  std::vector<std::string> arguments;  ///< of the command line, without the share
  NamedText case_file;
  NamedText stock;  ///< empty = none
  std::size_t which = 1;
  std::size_t of = 1;
  std::size_t n_mine = 0;  ///< pieces of this share; fewer are there when it was stopped
  std::map<std::size_t, studies::Judged> judged;
  std::map<std::size_t, studies::GridLane> lanes;
  std::map<std::size_t, studies::Rated> rated;
  std::map<std::size_t, studies::Compared> compared;

  /// Pieces that are there.
  [[nodiscard]] std::size_t n_known() const {
    return judged.size() + lanes.size() + rated.size() + compared.size();
  }
};

/// JSON; numbers read back to the last bit.
[[nodiscard]] std::string slice_text(const Slice& slice);

/// @throws base::InputError with the file: it holds no slice
[[nodiscard]] Slice read_slice(const std::string& text, const std::string& file);

}  // namespace report
