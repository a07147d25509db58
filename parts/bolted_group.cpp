#include "parts/bolted_group.hpp"

#include <algorithm>
#include <cstddef>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "parts/builder.hpp"
#include "parts/length_words.hpp"

namespace parts {
namespace {

/// @throws base::InputError where the holes of two bolts run into each other
void refuse_overlapping(const BoltGroupAt& group, const std::vector<std::string>& points,
                        const std::string& key, bool inches) {
  const double hole = group.bolt.thread.standard_hole();
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const fea::Vector3 apart = group.bolts_from_end_g[i] - group.bolts_from_end_g[j];
      const double spacing = apart.cross(group.along_g).norm();
      if (spacing > hole) continue;
      throw base::InputError(
          key + ".at",
          fmt::format("`{}` and `{}` are {} apart across the bolts, and a hole for {} is {} wide: "
                      "the holes run into each other; set them farther apart",
                      points[j], points[i], length_words(spacing, inches), group.bolt.thread.name,
                      length_words(hole, inches)));
    }
  }
}

}  // namespace

std::vector<SideWeldOnRun> side_welds_on(const Builder& builder, const std::string& part,
                                         const fea::Vector3& start_g) {
  std::vector<SideWeldOnRun> out;
  for (const Named<SideWeld>& weld : builder.design().side_welds) {
    if (weld.value.on != part) continue;
    const std::string key = "side_welds." + weld.name + ".toward";
    const fea::Vector3 toward_g =
        builder.direction(weld.value.toward, start_g, key).value_or(fea::Vector3::UnitZ());
    out.push_back({weld.value.from_start, 0.5 * weld.value.length, weld.value.width, toward_g,
                   "side_welds." + weld.name});
  }
  return out;
}

void add_bolt_groups(Builder& builder) {
  constexpr double kFarthest = 0.5;  // of a bolt from the end it holds  [m]
  Assembly& out = builder.out();
  for (const Named<BoltedGroup>& named : builder.design().bolt_groups) {
    const BoltedGroup& group = named.value;
    const std::string key = "bolt_groups." + named.name;
    const auto piece = std::find_if(out.pieces.begin(), out.pieces.end(),
                                    [&](const Piece& p) { return p.part == group.holds; });
    if (piece == out.pieces.end()) {
      throw base::InputError(key + ".holds", "there is no such part in this case");
    }
    BoltGroupAt at{.part = group.holds, .where = named.name, .beam = {}, .bolt = group.bolt};
    const bool far_end = group.end == EndOfBar::far_end;
    at.beam = far_end ? piece->beams.back() : piece->beams.front();
    at.end = far_end ? 1 : 0;
    const fea::Beam& beam = out.model[at.beam.beam];
    const fea::BeamEnd& end = far_end ? beam.b : beam.a;
    const fea::Vector3 end_g = out.model[end.node].at_g + end.offset_g;
    for (const std::string& point : group.at) {
      at.bolts_from_end_g.emplace_back(builder.point(point, key + ".at") - end_g);
      const double off = at.bolts_from_end_g.back().norm();
      if (!(off > kFarthest)) continue;
      throw base::InputError(
          key + ".at",
          fmt::format("`{}` is {} from the end that the bolts hold; is the point right?", point,
                      length_words(off, out.inches)));
    }
    at.along_g = builder.direction(group.along, end_g, key + ".along")
                     .value_or(fea::Vector3::UnitZ())
                     .normalized();
    refuse_overlapping(at, group.at, key, out.inches);
    at.axes_lg = fea::member_axes(out.model, beam);
    at.plates = group.plates;
    at.edge = group.edge;
    out.bolt_groups.push_back(std::move(at));
  }
}

}  // namespace parts
