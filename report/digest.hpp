#pragma once

#include <string>
#include <string_view>

namespace report {

/// SHA-256 of a text in hexadecimal, to tell on paper which input a sheet was made from.
/// Source: FIPS PUB 180-4, Secure Hash Standard (2015), 4.1.2, 4.2.2, 5.1.1, 6.2 (from memory).
[[nodiscard]] std::string digest(std::string_view text);

}  // namespace report
