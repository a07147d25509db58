#include "fea/frame_loads.hpp"

namespace fea {
namespace {

template <class Item>
void append(std::vector<Item>& to, const std::vector<Item>& from) {
  to.insert(to.end(), from.begin(), from.end());
}

}  // namespace

Loads Loads::operator*(double factor) const {
  Loads out = *this;
  for (NodeLoad& load : out.nodes) {
    load.force_g *= factor;
    load.moment_g *= factor;
  }
  for (BeamPointLoad& load : out.points) {
    load.force_g *= factor;
    load.moment_g *= factor;
  }
  for (BeamLineLoad& load : out.lines) {
    load.at_from_g *= factor;
    load.at_to_g *= factor;
  }
  for (BeamStrain& strain : out.strains) {
    strain.stretch *= factor;
    strain.bend_y *= factor;
    strain.bend_z *= factor;
  }
  for (SupportMove& move : out.moves) move.by_g *= factor;
  out.gravity_g *= factor;
  return out;
}

Loads Loads::operator+(const Loads& other) const {
  Loads out = *this;
  append(out.nodes, other.nodes);
  append(out.points, other.points);
  append(out.lines, other.lines);
  append(out.strains, other.strains);
  append(out.moves, other.moves);
  out.gravity_g += other.gravity_g;
  return out;
}

}  // namespace fea
