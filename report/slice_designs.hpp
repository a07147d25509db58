#pragma once

#include "report/json_parts.hpp"
#include "studies/compare.hpp"
#include "studies/rate.hpp"

/// What a slice holds of the designs of `rate` and `compare`: all of it, so that it is read back to
/// the last bit.
namespace report {

[[nodiscard]] Json rated_piece(const studies::Rated& rated);
[[nodiscard]] Json compared_piece(const studies::Compared& compared);

/// @throws Json::exception, base::InputError: it is no such thing
[[nodiscard]] studies::Rated rated_from(const Json& in);
[[nodiscard]] studies::Compared compared_from(const Json& in);

}  // namespace report
