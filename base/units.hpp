#pragma once

#include <limits>

/// Constants that turn a value in a named unit into SI (multiply) or back (divide).
/// Exact by definition unless a comment says otherwise (NIST SP 811 (2008), appendix B.8).
namespace base {

/// A number that was never set. It poisons whatever uses it, so a forgotten field is seen.
inline constexpr double kUnset = std::numeric_limits<double>::quiet_NaN();

inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kGravity = 9.80665;                    ///< standard gravity  [m/s^2]
inline constexpr double kInch = 0.0254;                        ///< [m]
inline constexpr double kPoundMass = 0.45359237;               ///< [kg]
inline constexpr double kPoundForce = kPoundMass * kGravity;   ///< [N]
inline constexpr double kPsi = kPoundForce / (kInch * kInch);  ///< [Pa]
inline constexpr double kKsi = 1000.0 * kPsi;                  ///< [Pa]
inline constexpr double kMillimeter = 0.001;                   ///< [m]
inline constexpr double kMegapascal = 1.0e6;                   ///< [Pa]
inline constexpr double kKilonewton = 1.0e3;                   ///< [N]
inline constexpr double kDegree = kPi / 180.0;                 ///< [rad]

}  // namespace base
