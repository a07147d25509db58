#include "parts/warped_twist.hpp"

#include <algorithm>
#include <cmath>

#include "base/invariant.hpp"
#include "checks/bending_strength.hpp"
#include "parts/piece_forces.hpp"
#include "sections/area_props.hpp"

namespace parts {
namespace {

/// Of one beam: slopes of u at its ends, times w, from its ends' u less T.
struct TwistBeam {
  double near;  ///< of the end itself
  double far;   ///< of the other end
  explicit TwistBeam(double p) : near(1.0 / std::tanh(p)), far(1.0 / std::sinh(p)) {}
};

/// u at the ends of the beams: no step in its slope between them.
std::vector<double> part_by_st_venant(const std::vector<TwistedBeam>& beams,
                                      const std::vector<TwistBeam>& stiff, HeldEnds held) {
  const std::size_t n = beams.size();
  std::vector<double> diagonal(n + 1, 0.0);
  std::vector<double> right(n + 1, 0.0);
  for (std::size_t i = 0; i < n; ++i) {
    const double of_torque = beams[i].torque * (stiff[i].near - stiff[i].far);
    for (const std::size_t node : {i, i + 1}) {
      diagonal[node] += stiff[i].near;
      right[node] += of_torque;
    }
  }
  std::vector<double> u(n + 1, 0.0);
  const std::size_t first = held.a ? 1 : 0;
  const std::size_t last = held.b ? n - 1 : n;
  for (std::size_t i = first + 1; i <= last; ++i) {
    const double share = stiff[i - 1].far / diagonal[i - 1];
    diagonal[i] -= share * stiff[i - 1].far;
    right[i] += share * right[i - 1];
  }
  for (std::size_t i = last + 1; i-- > first;) {
    const double after = i < last ? stiff[i].far * u[i + 1] : 0.0;
    u[i] = (right[i] + after) / diagonal[i];
  }
  return u;
}

}  // namespace

std::vector<WarpedEnds> warped_torques(const std::vector<TwistedBeam>& beams, double length,
                                       HeldEnds held) {
  INVARIANT(!beams.empty() && length > 0.0);
  std::vector<TwistBeam> stiff;
  stiff.reserve(beams.size());
  for (const TwistedBeam& beam : beams) stiff.emplace_back(beam.length / length);
  const std::vector<double> u = part_by_st_venant(beams, stiff, held);
  std::vector<WarpedEnds> out;
  out.reserve(beams.size());
  for (std::size_t i = 0; i < beams.size(); ++i) {
    const double a = u[i] - beams[i].torque;
    const double b = u[i + 1] - beams[i].torque;
    out.push_back({{u[i], length * (a * stiff[i].near - b * stiff[i].far)},
                   {u[i + 1], length * (a * stiff[i].far - b * stiff[i].near)}});
  }
  return out;
}

double warping_length(const sections::Channel& channel, const sections::Material& steel) {
  const double torsion =
      steel.shear_modulus() * sections::area_props(channel, steel.poisson).torsion;
  return std::sqrt(steel.elastic * checks::channel_warping(channel) / torsion);
}

std::vector<std::vector<WarpedEnds>> warped_ways(const Piece& piece,
                                                 const fea::Solution& solution) {
  constexpr double kSamePlace = 1.0e-6;  // [m]
  INVARIANT(piece.warping.has_value());
  const Warping& warping = *piece.warping;
  std::vector<TwistedBeam> all;
  std::vector<WarpedEnds> by_walls;
  for (const PieceBeam& beam : piece.beams) {
    const double torque = forces_at(beam, solution, 0.0).t;
    all.push_back({solution.length(beam.beam), torque});
    by_walls.push_back({{torque, 0.0}, {torque, 0.0}});
  }
  const auto index_at = [&](double along) {
    std::size_t i = 0;
    while (i < piece.beams.size() && piece.beams[i].starts_at < along - kSamePlace) ++i;
    return static_cast<std::ptrdiff_t>(i);
  };
  std::vector<HeldEnds> ways = {{warping.held, warping.held}};
  if (warping.any_ends) ways = {{false, false}, {true, true}, {true, false}, {false, true}};
  std::vector<std::vector<WarpedEnds>> out;
  for (const HeldEnds held : ways) {
    out.push_back(by_walls);
    for (std::size_t i = 0; i + 1 < warping.twist_held_at.size(); ++i) {
      const std::ptrdiff_t from = index_at(warping.twist_held_at[i]);
      const std::ptrdiff_t to = index_at(warping.twist_held_at[i + 1]);
      const std::vector<TwistedBeam> bay(all.begin() + from, all.begin() + to);
      if (bay.empty()) continue;
      const std::vector<WarpedEnds> torques = warped_torques(bay, warping.length, held);
      std::copy(torques.begin(), torques.end(), out.back().begin() + from);
    }
  }
  return out;
}

}  // namespace parts
