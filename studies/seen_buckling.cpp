#include "studies/seen_buckling.hpp"

namespace studies {
namespace {

constexpr double kInSpin = 0.1;  // of a mode's strain energy
// Of a factor: linear theory may be too low by some tenths for a mode that is one.
constexpr double kPast = 1.5;
constexpr int kMostModes = 12;

bool may_be_none(const ModeOf& mode) {
  return mode.in_spin > kInSpin;
}

/// How many of the lowest modes are none.
std::size_t n_false(const Cell& cell, const std::vector<ModeOf>& modes) {
  std::size_t count = 0;
  while (count < modes.size() && may_be_none(modes[count]) &&
         carried(cell.at(kPast * modes[count].critical.factor))) {
    ++count;
  }
  return count;
}

}  // namespace

SeenBuckling seen_buckling(const Cell& cell, int n_reversed, const fea::BucklingResult* beside) {
  fea::BucklingOptions options{.n_reversed = n_reversed, .start = beside};
  SeenBuckling out;
  while (true) {
    out.result = cell.model().buckle(cell.load_case(), cell.kept(1.0), options);
    out.modes = modes_of(out.result, cell.assembly());
    const std::size_t left_out = n_false(cell, out.modes);
    if (left_out == 0) return out;
    out.passed = out.modes[left_out - 1].critical.factor;
    const bool all = out.modes.size() < static_cast<std::size_t>(options.n_modes);
    if (left_out < out.modes.size() || all || options.n_modes >= kMostModes) {
      out.modes.erase(out.modes.begin(), out.modes.begin() + static_cast<std::ptrdiff_t>(left_out));
      return out;
    }
    options.n_modes *= 2;
  }
}

std::optional<SeenBuckling> buckling_by_first_order(const Cell& cell,
                                                    const fea::BucklingResult* beside) {
  SeenBuckling out;
  out.result = cell.model().buckle(cell.load_case(), cell.first_order(), {.start = beside});
  out.modes = modes_of(out.result, cell.assembly());
  if (!out.modes.empty() && may_be_none(out.modes.front())) return std::nullopt;
  return out;
}

}  // namespace studies
