#include "studies/combined_criterion.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "parts/piece_forces.hpp"
#include "parts/weld_zone.hpp"
#include "studies/piece_places.hpp"

namespace studies {
namespace {

/// Strengths of the sections of one piece, each worked out once.
class Strengths {
 public:
  explicit Strengths(const parts::Piece& piece) : piece_(piece) {}

  [[nodiscard]] checks::BendingInput member(const sections::Shape& shape, double yield) const {
    return {shape, piece_.material.elastic, yield, piece_.length};
  }

  const checks::SectionStrength& of(const sections::Shape& shape, double yield) {
    for (const Known& known : known_) {
      if (known.yield == yield && known.shape == shape) return known.strength;
    }
    known_.push_back({shape, yield, checks::section_strength(member(shape, yield))});
    return known_.back().strength;
  }

 private:
  struct Known {
    sections::Shape shape;
    double yield;
    checks::SectionStrength strength;
  };
  const parts::Piece& piece_;
  std::vector<Known> known_;
};

/// The largest axial force of one sign in a piece, and what it holds of it.
struct Axial {
  double force = 0.0;
  double capacity = base::kUnset;  ///< unset in tension: that of each section
  bool compressed = false;
};

double tension(const parts::Piece& piece, const fea::Solution& solution) {
  double largest = 0.0;
  for (const parts::PieceBeam& beam : piece.beams) {
    for (const double at : solution.stations(beam.beam)) {
      largest = std::max(largest, parts::forces_at(beam, solution, at).n);
    }
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
  checks::CombinedInput input;
  std::size_t beam = 0;
  double part = 0.0;
};

/// Calls `look` with every place and axial force, until it says that it has seen enough.
template <class Look>
void at_places(const parts::Piece& piece, const fea::Solution& solution, const Look& look) {
  Strengths strengths(piece);
  const std::vector<Axial> axials = axial_forces(piece, solution);
  for (std::size_t i = 0; i < piece.beams.size(); ++i) {
    const parts::PieceBeam& beam = piece.beams[i];
    const std::vector<double> stations = stations_of(piece, beam, solution);
    for (const double at : stations) {
      const double part = at / stations.back();
      const sections::Shape shape = shape_at(beam, part);
      const double yield = piece.least_yield_at(beam.starts_at + at);
      const checks::SectionStrength& strength = strengths.of(shape, yield);
      const sections::Resultants cut = parts::forces_at(beam, solution, at);
      for (const Axial& axial : axials) {
        const checks::CombinedDemand demand = {
            .axial = axial.force,
            .axial_capacity = axial.compressed ? axial.capacity : strength.tension,
            .compressed = axial.compressed,
            .at = cut};
        const bool enough =
            look(Place{checks::interaction(strength, demand),
                       {.member = strengths.member(shape, yield), .demand = demand, .asked = {}},
                       i,
                       part});
        if (enough) return;
      }
    }
  }
}

/// The place and the axial force that use most of the limit; the first that is not known.
std::optional<Place> worst_of(const parts::Piece& piece, const fea::Solution& solution) {
  std::optional<Place> worst;
  at_places(piece, solution, [&](const Place& here) {
    const double used = here.shares.used();
    if (worst && !std::isnan(used) && !(used > worst->shares.used())) return false;
    worst = here;
    return std::isnan(used);
  });
  return worst;
}

bool counts(const Place& worst) {
  if (worst.shares.counts()) return true;
  const checks::SectionStrength s = checks::section_strength(worst.input.member);
  if (s.tube) return false;  // its walls have a check of their own
  return s.bending.y.value < kFirstYield * s.first_yield_y ||
         s.bending.z.value < kFirstYield * s.first_yield_z;
}

}  // namespace

double combined_used(const parts::Piece& piece, const fea::Solution& solution) {
  const std::optional<Place> worst = worst_of(piece, solution);
  return worst ? worst->shares.used() : 0.0;
}

checks::CombinedAsked combined_factor(const parts::Piece& piece, const fea::Solution& solution,
                                      double buckling, double yield) {
  std::vector<checks::Interaction> all;
  at_places(piece, solution, [&](const Place& here) {
    all.push_back(here.shares);
    return false;
  });
  if (all.empty()) all.emplace_back();
  return checks::combined_asked(all, buckling, yield);
}

bool combined_counts(const parts::Piece& piece, const fea::Solution& solution) {
  const std::optional<Place> worst = worst_of(piece, solution);
  return worst && counts(*worst);
}

std::optional<checks::Finding> combined_finding(const parts::Piece& piece, const Outcome& outcome) {
  std::optional<Place> worst = worst_of(piece, *outcome.at_load);
  if (!worst || !counts(*worst)) return std::nullopt;
  worst->input.strength_basis = worst->input.member.yield < piece.material.yield
                                    ? parts::weld_zone_words(piece.material)
                                    : parts::parent_words(piece.material);
  worst->input.asked = outcome.asked.combined;
  worst->input.place = place_words(piece, worst->beam, worst->part);
  worst->input.safety_factor = outcome.safety_factor;
  checks::Finding found = checks::combined_forces(worst->input);
  found.part = piece.part;
  found.where = piece.name.empty() ? "between its joints" : piece.name;
  return found;
}

}  // namespace studies
