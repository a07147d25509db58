#include "studies/stability.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <utility>

#include "checks/column_strength.hpp"
#include "studies/piece_places.hpp"

namespace studies {
namespace {

bool has_link(const parts::Assembly& assembly) {
  return std::any_of(assembly.pieces.begin(), assembly.pieces.end(),
                     [](const parts::Piece& piece) { return piece.part == "lateral_link"; });
}

double in_spin(const fea::BucklingMode& mode, const parts::Assembly& assembly) {
  double sum = 0.0;
  for (const parts::Piece& piece : assembly.pieces) {
    if (!piece.spin_held) continue;
    for (const parts::PieceBeam& beam : piece.beams) {
      sum += mode.joint_energy[static_cast<std::size_t>(beam.beam.index)];
    }
  }
  return sum;
}

std::string words_of_sway(const parts::Assembly& assembly) {
  if (assembly.axle) return "the axle tips on its springs and bushings";
  return has_link(assembly) ? "link and bracket sway" : "the frame sways";
}

}  // namespace

std::vector<ModeOf> modes_of(const fea::BucklingResult& buckling, const parts::Assembly& assembly) {
  std::vector<ModeOf> all;
  for (const fea::BucklingMode& mode : buckling.modes) {
    std::map<std::string, double> by_part;
    double in_joints = 0.0;
    for (std::size_t i = 0; i < mode.beam_energy.size(); ++i) {
      by_part[assembly.beam_part[i]] += mode.beam_energy[i];
      in_joints += mode.joint_energy[i];
    }
    const double soft =
        std::accumulate(mode.spring_energy.begin(), mode.spring_energy.end(), in_joints);
    const auto most =
        std::max_element(by_part.begin(), by_part.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    ModeOf found;
    found.critical.factor = mode.factor;
    found.in_spin = in_spin(mode, assembly);
    if (soft > 0.5) {
      found.critical.axle_tips = assembly.axle.has_value();
      found.critical.what = words_of_sway(assembly);
      found.part = assembly.axle || !has_link(assembly) ? found.critical.what : "lateral_link";
      found.energy_in = assembly.axle ? "springs and bushings" : "joints and springs";
      found.share = soft;
    } else if (most != by_part.end()) {
      found.critical.what = most->first;
      found.part = most->first;
      found.energy_in = most->first;
      found.share = most->second;
    }
    if (!found.critical.axle_tips) found.shares = std::move(by_part);
    all.push_back(std::move(found));
  }
  return all;
}

std::vector<CriticalFactor> own_factors(const parts::Assembly& assembly,
                                        const fea::Solution& solution) {
  std::vector<CriticalFactor> all;
  for (const parts::Piece& piece : assembly.pieces) {
    if (!piece.column) continue;
    const double pressing = compression(piece, solution);
    if (!(pressing > 0.0)) continue;
    const sections::AreaProps section = sections::area_props(weaker_end(piece));
    const double weaker = std::min(section.iyy, section.izz);
    all.push_back(
        {.factor = checks::euler_load(piece.material.elastic, weaker, piece.length) / pressing,
         .what = piece.name.empty() ? piece.part : piece.part + ", " + piece.name,
         .axle_tips = false,
         .own = true,
         .load_case = {},
         .set = {}});
  }
  return all;
}

double asked_of(const ModeOf& mode, const parts::Assembly& assembly,
                const checks::RequiredFactors& factors, bool abuse) {
  const auto piece = std::find_if(assembly.pieces.begin(), assembly.pieces.end(),
                                  [&](const parts::Piece& p) { return p.part == mode.part; });
  const checks::Duty duty = piece == assembly.pieces.end() ? checks::Duty::ordinary : piece->duty;
  const checks::Item item =
      mode.critical.axle_tips ? checks::Item::tipping : checks::Item::buckling;
  return checks::required(factors, item, abuse, duty);
}

std::vector<const ModeOf*> first_of_each_way(const std::vector<ModeOf>& modes) {
  std::vector<const ModeOf*> out;
  std::array<bool, 2> seen = {false, false};
  for (const ModeOf& mode : modes) {
    if (!std::exchange(seen.at(mode.critical.axle_tips ? 1 : 0), true)) out.push_back(&mode);
  }
  return out;
}

double most_asked_of(const parts::Assembly& assembly, const checks::RequiredFactors& factors,
                     bool abuse) {
  double most = 0.0;
  for (const checks::Item item : {checks::Item::tipping, checks::Item::buckling}) {
    most = std::max(most, checks::required(factors, item, abuse, checks::Duty::ordinary));
    for (const parts::Piece& piece : assembly.pieces) {
      most = std::max(most, checks::required(factors, item, abuse, piece.duty));
    }
  }
  return most;
}

}  // namespace studies
