#pragma once

/// Textbook formulas in closed form, written anew for the tests: nothing of sections/, fea/ or
/// checks/ is used. Lengths in m, stresses in Pa.
namespace hand {

inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kKsi = 6.894757293168361e6;  // [Pa]
inline constexpr double kPound = 4.4482216152605;    // [N]

// Strengths and moduli as the steel tables give them.
inline constexpr double kS355 = 355.0e6;     // EN 10025-2 table 7, up to 16 mm, read
inline constexpr double kS355H = 355.0e6;    // EN 10219-1, up to 16 mm, from memory
inline constexpr double kYoungEn = 210.0e9;  // EN 1993-1-1, 3.2.6, from memory
inline constexpr double kShearEn = kYoungEn / 2.6;
inline constexpr double kE70 = 70.0 * kKsi;  // F_EXX of E70 filler, AWS A5.1, from memory

struct Section {
  double area;
  double inertia;
  double modulus;
};

/// Round tube; a bar has no hole.
/// Source: Shigley, Mechanical Engineering Design, 9th ed., table A-18, from memory.
[[nodiscard]] Section tube(double outside, double wall);
[[nodiscard]] Section bar(double diameter);

/// Rectangular tube, bent along `depth`; outside corner radius `corner`, inside `corner - wall`.
/// Put together from rectangles and quarter circles (parallel axes); common practice, no source.
[[nodiscard]] Section box(double depth, double width, double wall, double corner);

/// Nominal buckling stress Fn at a slenderness Lc/r.  Source: AISC 360-22 E3, from memory.
[[nodiscard]] double column_stress(double young, double yield, double slenderness);

/// pi^2 E I / L^2, Euler.
[[nodiscard]] double euler_load(double young, double inertia, double length);

}  // namespace hand
