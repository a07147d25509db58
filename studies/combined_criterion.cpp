#include "studies/combined_criterion.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "parts/piece_forces.hpp"
#include "parts/weld_zone.hpp"
#include "sections/remembered.hpp"
#include "studies/piece_places.hpp"

namespace studies {
namespace {

/// Strength of a section of a piece. What this thread has worked out last is kept: a piece is
/// looked at in each load case and set, and a strength brings its worked lines with it.
const checks::SectionStrength& strength_of(const parts::Piece& piece, const sections::Shape& shape,
                                           double yield) {
  thread_local sections::Remembered<checks::BendingInput, checks::SectionStrength> remembered;
  const checks::BendingInput member{shape, piece.material.elastic, yield, piece.length};
  return remembered(member, [&member] { return checks::section_strength(member); });
}

/// The largest axial force of one sign in a piece, and what it holds of it.
struct Axial {
  double force = 0.0;
  double capacity = base::kUnset;  ///< unset in tension: that of each section
  bool compressed = false;
};

double tension(const parts::Piece& piece, const fea::Solution& solution) {
  double largest = 0.0;
  for (const parts::PieceBeam& beam : piece.beams) {
    largest = std::max(largest, parts::axial_range(beam, solution).most);
  }
  return largest;
}

/// Its compression and its tension, as far as there are; tension of 0 when there is neither.
/// @return empty when its column check is not decided
std::vector<Axial> axial_forces(const parts::Piece& piece, const fea::Solution& solution) {
  std::vector<Axial> all;
  const double pressing = compression(piece, solution);
  if (pressing > 0.0) {
    const double capacity = checks::column_capacity(column_input(piece, pressing));
    if (std::isnan(capacity)) return {};
    all.push_back({pressing, capacity, true});
  }
  const double pulling = tension(piece, solution);
  if (pulling > 0.0 || all.empty()) all.push_back({pulling, base::kUnset, false});
  return all;
}

constexpr double kFirstYield = 0.999;  // of it: rounding aside

/// One place of a piece with one of its axial forces.
struct Place {
  checks::Interaction shares;
  checks::CombinedDemand demand;
  std::size_t beam = 0;
  double part = 0.0;
  double yield = base::kUnset;

  [[nodiscard]] checks::BendingInput member(const parts::Piece& piece) const {
    return {shape_at(piece.beams[beam], part), piece.material.elastic, yield, piece.length};
  }
};

/// Calls `look` with every place and axial force, until it says that it has seen enough.
template <class Look>
void at_places(const parts::Piece& piece, const fea::Solution& solution, const Look& look) {
  const std::vector<Axial> axials = axial_forces(piece, solution);
  std::vector<double> stations;
  for (std::size_t i = 0; i < piece.beams.size(); ++i) {
    const parts::PieceBeam& beam = piece.beams[i];
    stations_of(piece, beam, solution, stations);
    for (const double at : stations) {
      const double part = at / stations.back();
      const sections::Shape shape = shape_at(beam, part);
      const double yield = piece.least_yield_at(beam.starts_at + at);
      const checks::SectionStrength& strength = strength_of(piece, shape, yield);
      const sections::Resultants cut = parts::forces_at(beam, solution, at);
      for (const Axial& axial : axials) {
        const checks::CombinedDemand demand = {
            .axial = axial.force,
            .axial_capacity = axial.compressed ? axial.capacity : strength.tension,
            .compressed = axial.compressed,
            .at = cut};
        if (look(Place{checks::interaction(strength, demand), demand, i, part, yield})) return;
      }
    }
  }
}

/// Keeps the place and the axial force that use most of the limit; the first that is not known.
void keep_worst(std::optional<Place>& worst, const Place& here) {
  const double used = here.shares.used();
  const double most = worst ? worst->shares.used() : 0.0;
  if (!worst || (!std::isnan(most) && (std::isnan(used) || used > most))) worst = here;
}

std::optional<Place> worst_of(const parts::Piece& piece, const fea::Solution& solution) {
  std::optional<Place> worst;
  at_places(piece, solution, [&](const Place& here) {
    keep_worst(worst, here);
    return std::isnan(worst->shares.used());
  });
  return worst;
}

bool counts(const parts::Piece& piece, const Place& worst) {
  if (worst.shares.counts()) return true;
  const checks::SectionStrength& s =
      strength_of(piece, shape_at(piece.beams[worst.beam], worst.part), worst.yield);
  if (s.tube) return false;  // its walls have a check of their own
  return s.bending.y.value < kFirstYield * s.first_yield_y ||
         s.bending.z.value < kFirstYield * s.first_yield_z;
}

}  // namespace

double combined_used(const parts::Piece& piece, const fea::Solution& solution) {
  const std::optional<Place> worst = worst_of(piece, solution);
  return worst ? worst->shares.used() : 0.0;
}

bool combined_counts(const parts::Piece& piece, const fea::Solution& solution) {
  const std::optional<Place> worst = worst_of(piece, solution);
  return worst && counts(piece, *worst);
}

CombinedUse combined_use(const parts::Piece& piece, const fea::Solution* solution,
                         const checks::RequiredFactors& factors, bool abuse) {
  const double buckling = checks::required(factors, checks::Item::buckling, abuse, piece.duty);
  const double yield = checks::required(factors, checks::Item::yield, abuse, piece.duty);
  CombinedUse out{.asked = {.of_compression = buckling, .of_rest = yield}};
  if (solution == nullptr) {
    out.asked.value = std::max(buckling, yield);
    out.asked.combined = {
        .value = out.asked.value, .of_compression = buckling, .of_rest = yield, .shares = {}};
    return out;
  }
  std::optional<Place> worst;
  std::vector<checks::Interaction> all;
  at_places(piece, *solution, [&](const Place& here) {
    keep_worst(worst, here);
    all.push_back(here.shares);
    return false;
  });
  if (all.empty()) all.emplace_back();
  out.asked.combined = checks::combined_asked(all, buckling, yield);
  out.asked.value = out.asked.combined.value;
  if (worst) {
    out.used = worst->shares.used();
    out.counts = counts(piece, *worst);
  }
  return out;
}

std::optional<checks::Finding> combined_finding(const parts::Piece& piece, const Outcome& outcome) {
  const std::optional<Place> worst = worst_of(piece, *outcome.at_load);
  if (!worst || !counts(piece, *worst)) return std::nullopt;
  checks::Finding found =
      checks::combined_forces({.member = worst->member(piece),
                               .strength_basis = worst->yield < piece.material.yield
                                                     ? parts::weld_zone_words(piece.material)
                                                     : parts::parent_words(piece.material),
                               .place = place_words(piece, worst->beam, worst->part),
                               .demand = worst->demand,
                               .asked = outcome.asked.combined,
                               .safety_factor = outcome.safety_factor});
  found.part = piece.part;
  found.where = piece.name.empty() ? "between its joints" : piece.name;
  return found;
}

}  // namespace studies
