#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "sections/stress_points.hpp"

namespace sections {
namespace {

constexpr std::size_t kSteps = 72;  // of 5 degrees: between them the stress is off by 0.1 % at most
// Turned by so much to either side of the worst of them, one after the other.  [rad]
constexpr std::array kTurns = {base::kPi / 72.0, base::kPi / 720.0};
// Of a square: what may be missed of the stress where that cannot be more anywhere is 0.01 %.
constexpr double kAsLarge = 1.0 + 2.0e-4;

struct Direction {
  double cosine;
  double sine;
};

Direction direction(double angle) {
  return {std::cos(angle), std::sin(angle)};
}

/// Directions all around.
struct Sweep {
  std::array<double, kSteps> cosines;
  std::array<double, kSteps> sines;

  [[nodiscard]] Direction operator[](std::size_t i) const { return {cosines[i], sines[i]}; }
};

const Sweep& sweep() {
  static const Sweep all_around = [] {
    Sweep all{};
    for (std::size_t i = 0; i < kSteps; ++i) {
      const Direction d = direction(2.0 * base::kPi * static_cast<double>(i) / kSteps);
      all.cosines[i] = d.cosine;
      all.sines[i] = d.sine;
    }
    return all;
  }();
  return all_around;
}

/// A stress on the outside: constant + along_y x cosine + along_z x sine.
struct Around {
  double constant;
  double along_y;
  double along_z;
};

/// The direction of the sweep in which sigma^2 + 3 tau^2 is largest.
Direction foremost_of_sweep(const Around& sigma, const Around& tau) {
  const Sweep& all = sweep();
  std::array<double, kSteps> squares;
  for (std::size_t i = 0; i < kSteps; ++i) {
    const double normal =
        sigma.constant + sigma.along_y * all.cosines[i] + sigma.along_z * all.sines[i];
    const double shear = tau.constant + tau.along_y * all.cosines[i] + tau.along_z * all.sines[i];
    squares[i] = normal * normal + 3.0 * shear * shear;
  }
  return all[static_cast<std::size_t>(std::max_element(squares.begin(), squares.end()) -
                                      squares.begin())];
}

Direction turned(const Direction& from, double by) {
  const Direction turn = direction(by);
  return {from.cosine * turn.cosine - from.sine * turn.sine,
          from.sine * turn.cosine + from.cosine * turn.sine};
}

/// A place on the outside.
struct RoundPlace {
  enum class Kind { outer_fiber, beside_shear, elsewhere, end_of_part };
  Kind kind = Kind::outer_fiber;
  Direction at = {1.0, 0.0};
};

std::string name(const RoundPlace& place) {
  switch (place.kind) {
    case RoundPlace::Kind::outer_fiber:
      return "outer fiber";
    case RoundPlace::Kind::beside_shear:
      return "outside, at right angles to the shear force";
    case RoundPlace::Kind::end_of_part:
      return "edge of the weld's zone on the outside";
    case RoundPlace::Kind::elsewhere:
      break;
  }
  const double angle = std::atan2(place.at.sine, place.at.cosine) / base::kDegree;
  return fmt::format("outside, {:.0f} deg from y toward z", angle < 0.0 ? angle + 360.0 : angle);
}

/// Whether a place on the outside lies on the part; its ends do.
bool lies_on(const OutlinePart& part, const Direction& at) {
  const Direction middle = direction(part.middle);
  return middle.cosine * at.cosine + middle.sine * at.sine >= std::cos(part.half) - 1.0e-9;
}

/// @param within  null = all of the outside
/// @param from    what is less than this is not looked for
Worst<RoundPlace> search(double outside, double inside, const Resultants& r,
                         const OutlinePart* within, double from) {
  const double ro = 0.5 * outside;
  const double ri = 0.5 * inside;
  const double area = base::kPi * (ro * ro - ri * ri);
  const double modulus = 0.25 * area * (ro * ro + ri * ri) / ro;
  const double axial = r.n / area;
  const double torsion = r.t / (2.0 * modulus);
  // V Q / (I t) on the neutral axis. The stress on the free outside runs along it, and falls off
  // as the sine of the angle from the line of the force: in a bar because the stress along the
  // force is V Q / (I t) and the outside is inclined to it, in a tube because Q does.
  const double shear_factor =
      4.0 / 3.0 * (ro * ro + ro * ri + ri * ri) / (ro * ro + ri * ri) / area;
  const double moment = std::sqrt(r.my * r.my + r.mz * r.mz);
  const double force = std::sqrt(r.vy * r.vy + r.vz * r.vz);

  using Kind = RoundPlace::Kind;
  Worst<RoundPlace> worst;
  const auto stress_at = [&](const Direction& d) -> StressParts {
    return {.axial = axial,
            .bending = (r.my * d.sine - r.mz * d.cosine) / modulus,
            .torsion = torsion,
            .shear = shear_factor * (r.vz * d.cosine - r.vy * d.sine)};
  };
  const auto offer = [&](const Direction& d, Kind kind) {
    if (within == nullptr || lies_on(*within, d)) worst.offer(stress_at(d), {kind, d});
  };
  if (!(moment <= 0.0)) {  // NaN goes in, to come out
    const Direction fiber{-r.mz / moment, r.my / moment};
    offer(fiber, Kind::outer_fiber);
    offer({-fiber.cosine, -fiber.sine}, Kind::outer_fiber);
  } else if (force <= 0.0) {
    offer({1.0, 0.0}, Kind::outer_fiber);
  }
  if (!(force <= 0.0)) {
    const Direction beside{r.vz / force, -r.vy / force};
    offer(beside, Kind::beside_shear);
    offer({-beside.cosine, -beside.sine}, Kind::beside_shear);
    // No place sees more than all of the bending and all of the shear.
    const StressParts all{std::abs(axial), moment / modulus, std::abs(torsion),
                          shear_factor * force};
    const double enough = from * from;
    const auto may_be_more = [&] {
      return !(all.squared() <= std::max(enough, kAsLarge * worst.squared()));
    };
    if (within != nullptr) {
      for (std::size_t i = 0; i < kSteps; ++i) offer(sweep()[i], Kind::elsewhere);
    } else if (may_be_more()) {
      offer(foremost_of_sweep({axial, -r.mz / modulus, r.my / modulus},
                              {torsion, shear_factor * r.vz, -shear_factor * r.vy}),
            Kind::elsewhere);
    }
    // The top of a parabola through the worst and what is to either side of it.
    for (const double turn : kTurns) {
      if (!may_be_more()) break;
      const Direction top = worst.place().at;
      const double before = stress_at(turned(top, -turn)).squared();
      const double after = stress_at(turned(top, turn)).squared();
      const double bend = before - 2.0 * worst.squared() + after;
      if (!(bend < 0.0)) break;
      const double by = 0.5 * turn * (before - after) / bend;
      offer(turned(top, std::clamp(by, -turn, turn)), Kind::elsewhere);
    }
  }
  if (within != nullptr) {
    for (const double to : {-within->half, 0.0, within->half}) {
      offer(direction(within->middle + to), Kind::end_of_part);
    }
  }
  return worst;
}

}  // namespace

PointStress worst_of_round(double outside, double inside, const Resultants& r,
                           const OutlinePart* within) {
  const Worst<RoundPlace> worst = search(outside, inside, r, within, 0.0);
  return worst.stress(name(worst.place()));
}

double largest_of_round(double outside, double inside, const Resultants& r, double from) {
  return std::sqrt(search(outside, inside, r, nullptr, from).squared());
}

}  // namespace sections
