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
  return out;
}

Loads Loads::operator+(const Loads& other) const {
  Loads out = *this;
  append(out.nodes, other.nodes);
  append(out.points, other.points);
  append(out.lines, other.lines);
  return out;
}

}  // namespace fea
