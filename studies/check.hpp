#pragma once

#include "studies/answer.hpp"
#include "studies/spread.hpp"
#include "studies/watch.hpp"

namespace studies {

/// Solves every load case with every stiffness set and checks every part.
/// @throws base::InputError when the design is no structure: a part that nothing holds, a part
///         without length
[[nodiscard]] Answer check(const parts::Design& design, const Watch& watch = {},
                           const Spread& spread = {});

/// The same without the numbers of each solved case, for those who do not print them.
[[nodiscard]] Answer check_briefly(const parts::Design& design, const Watch& watch = {},
                                   const Spread& spread = {});

/// The same as `check` with a drawing of it.
[[nodiscard]] Answer check_and_draw(const parts::Design& design, const Watch& watch = {},
                                    const Spread& spread = {});

}  // namespace studies
