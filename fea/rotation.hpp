#pragma once

#include "fea/vectors.hpp"

/// Finite rotations. A rotation vector t turns by |t| about t; a spin is the small rotation that
/// follows a turn, in fixed axes: R becomes exp(S(spin)) R.
/// Source: Argyris, An excursion into large rotations, Comput. Methods Appl. Mech. Eng. 32 (1982)
/// (from memory); the slopes derived.
namespace fea {

/// exp(S(t)).
[[nodiscard]] Matrix3 rotation_of(const Vector3& vector);

/// The rotation vector of a rotation matrix; its length is at most pi.
[[nodiscard]] Vector3 rotation_vector(const Matrix3& rotation);

/// Nearest rotation matrix to one that has rounding in it.
[[nodiscard]] Matrix3 without_drift(const Matrix3& rotation);

/// Ts: the spin that a change of the rotation vector makes, spin = Ts(t) dt.
[[nodiscard]] Matrix3 spin_map(const Vector3& vector);

/// Ts^-1. Limits: |t| < 2 pi.
[[nodiscard]] Matrix3 inverse_spin_map(const Vector3& vector);

/// d(Ts(t)' m) / dt, m fixed.
[[nodiscard]] Matrix3 spin_map_slope(const Vector3& vector, const Vector3& moment);

/// d(Ts(t)^-T m) / dt, m fixed.
[[nodiscard]] Matrix3 inverse_spin_map_slope(const Vector3& vector, const Vector3& moment);

}  // namespace fea
