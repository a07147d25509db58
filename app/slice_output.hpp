#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <type_traits>

#include <fmt/format.h>

#include "app/commands.hpp"
#include "app/interrupt.hpp"
#include "app/program.hpp"
#include "base/input_error.hpp"
#include "report/slice.hpp"
#include "studies/share.hpp"

namespace app {

/// "2/8" -> share 2 of 8.
struct WhichShare {
  std::size_t which = 1;
  std::size_t of = 1;
};
/// @throws base::InputError when it is no such thing
[[nodiscard]] WhichShare which_share(const std::string& words);

/// The pieces of a sweep that are computed here or known from slices.
template <class Piece>
class SharedPieces {
 public:
  SharedPieces(const ShareWords& words, const std::map<std::size_t, Piece>& known)
      : words_(words), gathered_(!known.empty()) {
    if (!words.share.empty()) {
      const WhichShare which = which_share(words.share);
      share_.which = which.which;
      share_.of = which.of;
    } else if (gathered_) {
      share_.which = 0;  // none is computed here
      share_.known = known;
    }
  }

  /// Null where all of the sweep is computed here.
  [[nodiscard]] studies::Share<Piece>* share() {
    return is_slice() || gathered_ ? &share_ : nullptr;
  }
  [[nodiscard]] bool is_slice() const { return !words_.share.empty(); }

  /// @param n  pieces of the whole sweep
  [[nodiscard]] Output output(const Gathered& files, const std::string& stock_name,
                              std::size_t n) const {
    report::Slice slice{.program = program_line(),
                        .arguments = words_.arguments,
                        .case_file = {files.case_text.name, files.case_text.text},
                        .stock = {stock_name, files.stock_text},
                        .which = share_.which,
                        .of = share_.of,
                        .n_mine = 0,
                        .judged = {},
                        .lanes = {},
                        .rated = {},
                        .compared = {}};
    for (std::size_t i = 0; i < n; ++i) {
      if (share_.is_mine(i)) ++slice.n_mine;
    }
    if constexpr (std::is_same_v<Piece, studies::Judged>) {
      slice.judged = share_.known;
    } else if constexpr (std::is_same_v<Piece, studies::Rated>) {
      slice.rated = share_.known;
    } else if constexpr (std::is_same_v<Piece, studies::Compared>) {
      slice.compared = share_.known;
    } else {
      slice.lanes = share_.known;
    }
    return {.text = report::slice_text(slice),
            .status = interrupted() ? kExitInterrupted : kExitWithin};
  }

  /// @throws base::InputError when slices hold less than all
  void require_all(std::size_t done, std::size_t all) const {
    if (!gathered_ || done >= all) return;
    throw base::InputError("gather", fmt::format("the slices hold {} of {} pieces", done, all));
  }

 private:
  const ShareWords& words_;
  bool gathered_;
  studies::Share<Piece> share_;
};

}  // namespace app
