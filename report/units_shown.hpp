#pragma once

#include <string>

#include "checks/finding.hpp"
#include "studies/answer.hpp"

/// Writers of answers: values in, text out. They open no file and know no terminal.
namespace report {

/// A number with `significant` digits, plain decimals and commas at the thousands: "1,230",
/// "0.0123". "not known" for an unset number, "no limit" for an infinite one.
[[nodiscard]] std::string number(double value, int significant = 3);

/// A quantity in the units of the case, three digits. Inches: in, lbf (kip from 10,000 lbf), ksi,
/// ft-lbf, lb/in, deg; else mm, kN, MPa, N m, N/mm, deg.
/// @param si  [m, N, Pa, N m, ...]
[[nodiscard]] std::string shown(double si, checks::Measure measure, bool inches);

/// "1,230-4,100 ft-lbf"; one number when both ends read the same.
[[nodiscard]] std::string shown_range(const studies::Range& range, checks::Measure measure,
                                      bool inches);

/// A quantity inside a worked line, four digits or more, in units that fit together without
/// conversion: kip, in, ksi, kip-in or N, mm, MPa, N mm.
[[nodiscard]] std::string shown_worked(const checks::Value& value, bool inches);

/// The `numbers` of a worked line with each `{n}` replaced by the n-th value.
[[nodiscard]] std::string numbers_of(const checks::WorkedLine& line, bool inches);

[[nodiscard]] std::string shown_mass(double kilograms, bool inches);                ///< lb or kg
[[nodiscard]] std::string shown_mass_per_length(double kg_per_meter, bool inches);  ///< lb/ft, kg/m

/// "93.2 %", with as many digits as tell it from 100 %.
[[nodiscard]] std::string percent(double ratio);

/// A safety factor or a multiple of a load: "1.27"; "over 100" from there on.
[[nodiscard]] std::string multiple(double factor);

/// "1.20" or "0.35-0.90"; for ratios of a range to another.
[[nodiscard]] std::string ratio_range(const studies::Range& range);

}  // namespace report
