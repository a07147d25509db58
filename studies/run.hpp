#pragma once

#include "studies/answer.hpp"
#include "studies/watch.hpp"

namespace studies {

/// A design checked, without its variants.
struct Run {
  Answer answer;
  Figures figures;
};

/// What an answer holds beside its findings; figures alone do not need it.
enum class Extras {
  none,
  order_and_life,
  order_life_and_drawing,
};

/// @param name     of the design among its variants
/// @param only_part  check this part alone (the others are still in the frame); empty = all
/// @throws base::InputError, Stopped
[[nodiscard]] Run run(const parts::Design& design, const std::string& name, const Watch& watch,
                      const std::string& only_part = {}, Extras extras = Extras::none);

/// The same, left at the first stiffness set and load case in which a check is over or undecided:
/// findings are those there alone. Where there is none, they are those of `run`.
/// @param part  whose checks count; empty = all
[[nodiscard]] Run run_until_fails(const parts::Design& design, const std::string& name,
                                  const std::string& part);

/// Whether a part of an answer is what was asked for: "arm, left" is of "arm" and "arm.lower", and
/// every part where nothing was named.
[[nodiscard]] bool belongs(const std::string& part, const std::string& asked);

/// `watch` seen from a part of a longer run: fraction `from` to `to` of it.
[[nodiscard]] Watch part_of(const Watch& watch, double from, double to, const std::string& what);

}  // namespace studies
