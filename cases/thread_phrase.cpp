#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::ThreadSpec;

[[noreturn]] void refuse_thread(std::string_view text, std::string_view why) {
  throw InputError(
      "", fmt::format("{} {}; e.g. {}", quoted(text), why, quoted(example_phrase(ThreadSpec{}))));
}

sections::BoltThread thread_of(std::string_view name, std::string_view text) {
  for (const sections::BoltThread& thread : sections::bolt_threads()) {
    if (packed(thread.name) == packed(name)) return thread;
  }
  refuse_thread(text, "starts with no thread known here, such as 3/4-16 or M20 x 1.5");
}

/// The number of a piece such as "1 in engaged", over 0.
std::optional<double> number_before(std::string_view word, const std::string& piece,
                                    parts::Dimension dimension) {
  const std::string ends = " " + std::string(word);
  if (piece.size() <= ends.size() || lower(piece).substr(piece.size() - ends.size()) != ends) {
    return std::nullopt;
  }
  const double value = read_quantity(piece.substr(0, piece.size() - ends.size()), dimension).si;
  if (!(value > 0.0)) throw InputError("", fmt::format("{} is not over 0", quoted(piece)));
  return value;
}

}  // namespace

template <>
Phrase<ThreadSpec> read_phrase(std::string_view raw, const parts::Design&) {
  using parts::Dimension;
  const std::string text = squeeze(raw);
  const std::vector<std::string> pieces = split(text, ",");
  ThreadSpec spec{.thread = thread_of(pieces[0], text)};
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    if (const auto engaged = number_before("engaged", pieces[i], Dimension::length)) {
      spec.engaged = *engaged;
    } else if (const auto out = number_before("out", pieces[i], Dimension::length)) {
      spec.out = *out;
    } else if (const auto yield = number_before("shank", pieces[i], Dimension::stress)) {
      spec.yield = *yield;
    } else {
      refuse_thread(
          text, fmt::format("has {}, which is none of: engaged, out, shank", quoted(pieces[i])));
    }
  }
  if (std::isnan(spec.engaged)) refuse_thread(text, "does not say how much of it is engaged");
  if (std::isnan(spec.out)) refuse_thread(text, "does not say how far the joint is out");
  if (std::isnan(spec.yield)) {
    refuse_thread(text, "does not give the yield strength of its shank, from its maker's sheet");
  }
  return {spec};
}

std::string write_phrase(const ThreadSpec& spec, const parts::Design& names) {
  if (!spec.given()) return {};
  using parts::Dimension;
  return fmt::format("{}, {} engaged, {} out, {} shank", spec.thread.name,
                     write_quantity(spec.engaged, Dimension::length, names.inches),
                     write_quantity(spec.out, Dimension::length, names.inches),
                     write_quantity(spec.yield, Dimension::stress, names.inches));
}

}  // namespace cases
