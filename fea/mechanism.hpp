#pragma once

#include <optional>

#include "fea/system.hpp"

namespace fea {

/// A motion of the scaled system whose energy is nil, or nothing when there is none.
/// Judged by the Rayleigh quotient x'Kx / x'x of the scaled matrix: below 1e-12 is a mechanism.
/// @param held  one that has none; saves time where this one only adds springs to it. May be null.
[[nodiscard]] std::optional<Mechanism> mechanism_of(const System& system,
                                                    const System* held = nullptr);

/// The scaled motion (free, unit length) that the frame resists least, by inverse iteration on a
/// sound factor.
[[nodiscard]] Eigen::VectorXd softest(const System& system);

/// Words for a free motion (full vector): the point that moves most, or the beam whose own end
/// does.
[[nodiscard]] Mechanism describe(const System& system, const Eigen::VectorXd& motion);

}  // namespace fea
