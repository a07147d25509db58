#include "studies/life_places.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

#include <Eigen/Geometry>
#include <fmt/format.h>

#include "checks/weld_group.hpp"
#include "parts/piece_forces.hpp"
#include "parts/side_force.hpp"
#include "sections/area_props.hpp"
#include "studies/joint_criterion.hpp"
#include "studies/piece_places.hpp"

namespace studies {
namespace {

using sections::Resultants;

/// Resultants at a place of a piece's center line.
struct Cut {
  Resultants forces;
  std::size_t beam = 0;
  double part = 0.0;  ///< of that beam's length
};

Cut cut_at(const parts::Piece& piece, const fea::Solution& solution, double along) {
  std::size_t index = 0;
  while (index + 1 < piece.beams.size() && piece.beams[index + 1].starts_at <= along) ++index;
  const parts::PieceBeam& beam = piece.beams[index];
  const double length = solution.length(beam.beam);
  const double at = std::clamp(along - beam.starts_at, 0.0, length);
  return {parts::forces_at(beam, solution, at), index, at / length};
}

/// What a bracket's root weld carries, in its own axes, which have turned with the bracket.
checks::Wrench weld_wrench(const parts::Assembly& assembly, const fea::Solution& solution) {
  const fea::Vector6 load = parts::root_load(assembly, solution);
  return {.force = load.head<3>(), .moment = load.tail<3>(), .at = assembly.root->at_g};
}

/// Force on a bolt, axes of the case.  [N]
fea::Vector3 on_bolt_g(const parts::BoltedJoint& joint, const parts::Assembly& assembly,
                       const fea::Solution& solution) {
  if (joint.spring) {
    return joint.spring_axes_g * solution.spring_force(*joint.spring).head<3>();
  }
  const fea::Vector12 ends = parts::end_forces(joint.beam, solution);
  const fea::Matrix3 axes = fea::member_axes(assembly.model, assembly.model[joint.beam.beam]);
  return axes.transpose() * ends.segment<3>(6 * joint.end);
}

/// How the force on a bolt changes from one solution to another.
struct BoltChange {
  double along = 0.0;   ///< the bolt; 0 where its direction is not known  [N]
  double across = 0.0;  ///< [N]
};
BoltChange bolt_change(const parts::Assembly& assembly, std::size_t bolt, const fea::Solution& from,
                       const fea::Solution* to) {
  const parts::BoltedJoint& joint = assembly.bolts[bolt];
  fea::Vector3 force_g = on_bolt_g(joint, assembly, from);
  if (to != nullptr) force_g -= on_bolt_g(joint, assembly, *to);
  const double along = joint.along ? force_g[static_cast<int>(*joint.along)] : 0.0;
  return {along, std::sqrt(std::max(0.0, force_g.squaredNorm() - along * along))};
}

/// The most that shear and pull of a bolt of a group change; unset where the bolts cannot hold it.
checks::BoltShare group_change(const parts::BoltGroupAt& group, const fea::Solution& from,
                               const fea::Solution* to) {
  checks::BoltGroupInput change = group_input(group, from);
  if (to != nullptr) {
    const checks::Wrench other = group_input(group, *to).wrench;
    change.wrench.force -= other.force;
    change.wrench.moment -= other.moment;
  }
  const std::vector<checks::BoltShare> shares = checks::bolt_shares(change.group, change.wrench);
  if (shares.empty()) return {base::kUnset, base::kUnset};
  checks::BoltShare most;
  for (const checks::BoltShare& share : shares) {
    most.shear = std::max(most.shear, share.shear);
    most.tension = std::max(most.tension, share.tension);
  }
  return most;
}

/// How what one of the tabs at a bolt carries changes; the side force turns around with the rest.
struct TabChange {
  double in_plane = 0.0;  ///< [N]
  double across = 0.0;    ///< [N]
};
TabChange tab_change(const parts::Assembly& assembly, std::size_t index, const fea::Solution& from,
                     const fea::Solution* to) {
  const parts::TabbedJoint& joint = assembly.tabs[index];
  const BoltChange d = bolt_change(assembly, joint.bolt, from, to);
  const double count = tabs_that_carry(joint, assembly.bolts[joint.bolt].bolt);
  return {d.across / count, (std::abs(d.along) + joint.tabs.side_force * d.across) / count};
}

checks::TabRootInput one_tab_root(const parts::TabSpec& tabs) {
  return {.plates = 1,
          .thickness = tabs.plates.thickness,
          .width = tabs.root_width(),
          .height = tabs.height,
          .off = tabs.plates.count == 1 ? tabs.off : 0.0,
          .yield = tabs.plates.material.haz_yield,
          .required = 1.0};
}

bool is_round(const sections::Shape& shape) {
  return std::holds_alternative<sections::RoundBar>(shape) ||
         std::holds_alternative<sections::RoundTube>(shape);
}

bool is_tube(const sections::Shape& shape) {
  return std::holds_alternative<sections::RoundTube>(shape) ||
         std::holds_alternative<sections::RectangularTube>(shape);
}

/// |dN| / A + |dM| / S, both ways added where the section is not round.
double direct_range(const parts::Piece& piece, const Cut& cut, const Resultants& d) {
  const parts::PieceBeam& beam = piece.beams[cut.beam];
  const sections::Shape shape = shape_at(beam, cut.part);
  const sections::AreaProps props = sections::area_props(shape);
  const double bending = is_round(shape)
                             ? std::hypot(d.my, d.mz) / props.modulus_y
                             : std::abs(d.my) / props.modulus_y + std::abs(d.mz) / props.modulus_z;
  return std::abs(d.n) / props.area + beam.curved * bending;
}

/// Of a round tube |dT| / (2 S) + 2 |dV| / A; of others |dV| / A alone, their torsion left out.
double shear_range(const parts::Piece& piece, const Cut& cut, const Resultants& d) {
  const sections::Shape shape = shape_at(piece.beams[cut.beam], cut.part);
  const sections::AreaProps props = sections::area_props(shape);
  const double across = std::hypot(d.vy, d.vz) / props.area;
  return is_round(shape) ? std::abs(d.t) / (2.0 * props.modulus_y) + 2.0 * across : across;
}

Resultants difference(const Resultants& a, const Resultants& b) {
  Resultants d;
  d.n = a.n - b.n;
  d.vy = a.vy - b.vy;
  d.vz = a.vz - b.vz;
  d.t = a.t - b.t;
  d.my = a.my - b.my;
  d.mz = a.mz - b.mz;
  return d;
}

/// How the side force on a bracket changes: it is a share of the link's force, misalignment and
/// friction, and turns around with it.  [N]
double side_range(const parts::SideForce& side, const fea::Solution& from,
                  const fea::Solution* to) {
  fea::Vector3 change = parts::end_forces(side.link, from).segment<3>(6 * side.end);
  if (to != nullptr) change -= parts::end_forces(side.link, *to).segment<3>(6 * side.end);
  return side.share * change.norm();
}

StressRange piece_range(const parts::Piece& piece, const fea::Solution& from,
                        const fea::Solution* to, double along) {
  const Cut cut = cut_at(piece, from, along);
  const Resultants other = to == nullptr ? Resultants{} : cut_at(piece, *to, along).forces;
  Resultants d = difference(cut.forces, other);
  if (piece.side_force) {
    d = parts::with_side_force(d, *piece.side_force, along,
                               side_range(*piece.side_force, from, to));
  }
  return {direct_range(piece, cut, d), shear_range(piece, cut, d)};
}

/// The place along a piece, from one to another, where the direct range is largest.
StressRange largest_between(const parts::Piece& piece, const fea::Solution& from,
                            const fea::Solution* to, double first, double last) {
  constexpr int kPlaces = 24;
  StressRange most;
  for (int i = 0; i <= kPlaces; ++i) {
    const StressRange here = piece_range(piece, from, to, first + (last - first) * i / kPlaces);
    if (here.direct > most.direct) most = here;
  }
  return most;
}

/// Where along the piece a weld lies: its reach to both sides, as far as the piece goes.
struct Stretch {
  double from;
  double to;
};
Stretch stretch_of(const parts::Piece& piece, const parts::Weld& weld) {
  const double reach = std::isnan(weld.reach) ? 0.0 : weld.reach;
  return {std::max(0.0, weld.at - reach), std::min(piece.center_line, weld.at + reach)};
}

bool is_at_end(const parts::Piece& piece, const parts::Weld& weld) {
  constexpr double kAtEnd = 1e-6;
  return weld.at < kAtEnd || weld.at > piece.center_line - kAtEnd;
}

/// One end of a piece: the node, and the way into the piece from there.
struct PieceEnd {
  fea::NodeId node;
  fea::Vector3 inward;  ///< of length 1
  sections::Shape shape;
};
PieceEnd end_of(const parts::Assembly& assembly, const parts::Piece& piece, bool first) {
  const parts::PieceBeam& at = first ? piece.beams.front() : piece.beams.back();
  const fea::Beam& beam = assembly.model[at.beam];
  const fea::Vector3 way = assembly.model[beam.b.node].at_g + beam.b.offset_g -
                           assembly.model[beam.a.node].at_g - beam.a.offset_g;
  const fea::Vector3 along = way.normalized();
  if (first) return {beam.a.node, along, at.at_a};
  return {beam.b.node, -along, at.at_b};
}

/// Whether the bar goes on beyond the end of a piece, in another piece: it does not end there.
bool goes_on(const parts::Assembly& assembly, const parts::Piece& piece, bool first) {
  constexpr double kStraight = -0.98;
  const PieceEnd here = end_of(assembly, piece, first);
  return std::any_of(
      assembly.pieces.begin(), assembly.pieces.end(), [&](const parts::Piece& other) {
        if (&other == &piece || other.part != piece.part) return false;
        const auto meets = [&](const PieceEnd& there) {
          return there.node == here.node && there.shape == here.shape &&
                 there.inward.dot(here.inward) < kStraight;
        };
        return meets(end_of(assembly, other, true)) || meets(end_of(assembly, other, false));
      });
}

/// A weld that holds the very end of a bar or tube.
bool holds_end(const parts::Assembly& assembly, const parts::Piece& piece,
               const parts::Weld& weld) {
  return is_at_end(piece, weld) && !goes_on(assembly, piece, weld.at < 0.5 * piece.center_line);
}

std::string weld_words(const parts::Piece& piece, const parts::Weld& weld) {
  if (is_at_end(piece, weld)) {
    return weld.at < 0.5 * piece.center_line ? place_words(piece, 0, 0.0)
                                             : place_words(piece, piece.beams.size() - 1, 1.0);
  }
  return fmt::format("{}weld {:.0f} % along", piece.name.empty() ? "" : piece.name + ", ",
                     100.0 * weld.at / piece.center_line);
}

class PlaceWriter {
 public:
  explicit PlaceWriter(const parts::Assembly& assembly) : assembly_(assembly) {}

  std::vector<LifePlace> result() {
    for (std::size_t i = 0; i < assembly_.pieces.size(); ++i) {
      if (!assembly_.pieces[i].warping) add_piece(i);
    }
    if (assembly_.root) add_root_weld();
    // Straps catch an axle now and then: no block of a duty tells how often.
    for (std::size_t i = 0; i < assembly_.bolts.size(); ++i) {
      if (!assembly_.bolts[i].strap) add_bolt(i);
    }
    if (assembly_.bolted_plates) add_hole();
    for (std::size_t i = 0; i < assembly_.bolt_groups.size(); ++i) add_group(i);
    for (std::size_t i = 0; i < assembly_.tabs.size(); ++i) {
      if (!assembly_.bolts[assembly_.tabs[i].bolt].strap) add_tabs(i);
    }
    for (std::size_t i = 0; i < assembly_.threads.size(); ++i) add_thread(i);
    return std::move(places_);
  }

 private:
  void add_piece(std::size_t index) {
    const parts::Piece& piece = assembly_.pieces[index];
    const bool plates = assembly_.root && piece.part == assembly_.root->part;
    for (const parts::Weld& weld : piece.weld_places) {
      add_toe(index, weld, plates);
      if (!plates && is_tube(piece.beams.front().at_a) && holds_end(assembly_, piece, weld)) {
        add_tube_root(index, weld);
      }
    }
    if (!plates) add_plain(index);
  }

  void add_toe(std::size_t index, const parts::Weld& weld, bool plates) {
    const parts::Piece& piece = assembly_.pieces[index];
    const Stretch stretch = stretch_of(piece, weld);
    places_.push_back(
        {.part = piece.part,
         .where = weld_words(piece, weld) + ", toe",
         .detail = plates                              ? checks::plate_toe()
                   : holds_end(assembly_, piece, weld) ? checks::tube_end_toe()
                                                       : checks::attachment_toe(),
         .stress = "|dN| / A + |dM| / S beside the weld",
         .range = [index, stretch](const parts::Assembly& assembly, const fea::Solution& from,
                                   const fea::Solution* to) {
           return largest_between(assembly.pieces[index], from, to, stretch.from, stretch.to);
         }});
  }

  /// The weld at a tube's end, if it is given.
  [[nodiscard]] parts::EndWeldSpec weld_at(const parts::Piece& piece,
                                           const parts::Weld& weld) const {
    const bool first = weld.at < 0.5 * piece.center_line;
    const fea::BeamId beam = (first ? piece.beams.front() : piece.beams.back()).beam;
    for (const parts::EndWeld& end : assembly_.end_welds) {
      if (end.beam.beam == beam && (end.end == 0) == first) return end.weld;
    }
    return {};
  }

  /// A fillet all round: its throat has leg / sqrt(2).
  void add_tube_root(std::size_t index, const parts::Weld& weld) {
    const parts::Piece& piece = assembly_.pieces[index];
    const Stretch stretch = stretch_of(piece, weld);
    const parts::EndWeldSpec spec = weld_at(piece, weld);
    const double leg = spec.leg;
    const double wall = sections::governing_thickness(piece.beams.front().at_a);
    // Through the wall there is no root that is not melted.
    if (spec.groove >= wall) return;
    const double factor =
        spec.groove > 0.0 ? wall / spec.groove : std::sqrt(2.0) * (leg > 0.0 ? wall / leg : 1.0);
    places_.push_back(
        {.part = piece.part,
         .where = weld_words(piece, weld) + ", root",
         .detail = checks::fillet_root(),
         .shear_detail = checks::fillet_root_shear(),
         .stress = spec.groove > 0.0 ? "stress of the tube x wall / throat: a groove all round"
                   : leg > 0.0       ? "stress of the tube x sqrt(2) wall / leg: a fillet all round"
                               : "stress of the tube x sqrt(2): a fillet all round, leg = wall "
                                 "(assumed; proposal, no source)",
         .range = [index, stretch, factor](const parts::Assembly& assembly,
                                           const fea::Solution& from, const fea::Solution* to) {
           StressRange range =
               largest_between(assembly.pieces[index], from, to, stretch.from, stretch.to);
           range.direct *= factor;
           range.shear *= factor;
           return range;
         }});
  }

  void add_plain(std::size_t index) {
    const parts::Piece& piece = assembly_.pieces[index];
    places_.push_back(
        {.part = piece.part,
         .where = piece.name.empty() ? "plain metal" : piece.name + ", plain metal",
         .detail = is_tube(piece.beams.front().at_a) ? checks::plain_tube() : checks::plain_bar(),
         .stress = "|dN| / A + |dM| / S, a bend's curvature in it",
         .range = [index](const parts::Assembly& assembly, const fea::Solution& from,
                          const fea::Solution* to) {
           const parts::Piece& it = assembly.pieces[index];
           StressRange range = largest_between(it, from, to, 0.0, it.center_line);
           range.shear = 0.0;
           return range;
         }});
  }

  void add_root_weld() {
    places_.push_back(
        {.part = assembly_.root->part,
         .where = "root weld, root",
         .detail = checks::fillet_root(),
         .shear_detail = checks::fillet_root_shear(),
         .stress = "throat stress of the weld group, across and along the line",
         .range = [](const parts::Assembly& assembly, const fea::Solution& from,
                     const fea::Solution* to) {
           const parts::RootWeld& root = *assembly.root;
           checks::Wrench wrench = weld_wrench(assembly, from);
           if (to != nullptr) {
             const checks::Wrench other = weld_wrench(assembly, *to);
             wrench.force -= other.force;
             wrench.moment -= other.moment;
           }
           if (root.side_force) {
             wrench = parts::with_side_force(wrench, assembly.model[*assembly.bracket_bolt].at_g,
                                             side_range(*root.side_force, from, to));
           }
           if (!root.backed.why_not.empty()) {
             return StressRange{base::kUnset, base::kUnset};
           }
           const checks::WeldGroup& group = root.backed.group;
           const auto worst = checks::worst_throat_stress(group, wrench);
           if (!worst) return StressRange{base::kUnset, base::kUnset};
           const checks::WeldLine& line = group.lines[worst->line];
           const Eigen::Vector3d stress = checks::weld_properties(group.lines).axes * worst->stress;
           const double along = std::abs(stress.dot((line.to - line.from).normalized()));
           return StressRange{std::sqrt(std::max(0.0, stress.squaredNorm() - along * along)),
                              along};
         }});
  }

  void add_bolt(std::size_t index) {
    const parts::BoltedJoint& joint = assembly_.bolts[index];
    const sections::BoltThread thread = joint.bolt.thread;
    if (joint.along) {
      places_.push_back(
          {.part = joint.part,
           .where = joint.where + ", thread",
           .detail = checks::bolt_thread(thread.diameter),
           .stress = "|dT| / At, its preload left out",
           .range = [index, thread](const parts::Assembly& assembly, const fea::Solution& from,
                                    const fea::Solution* to) {
             const BoltChange d = bolt_change(assembly, index, from, to);
             return StressRange{std::abs(d.along) / thread.tensile_area(), 0.0};
           }});
    }
    if (joint.bolt.threads_in_plane) return;
    const double planes = joint.bolt.double_shear && joint.one_plane.empty() ? 2.0 : 1.0;
    places_.push_back(
        {.part = joint.part,
         .where = joint.where + ", shank",
         .detail = checks::bolt_shank(),
         .stress = "|dV| / (planes x A)",
         .range = [index, thread, planes](const parts::Assembly& assembly,
                                          const fea::Solution& from, const fea::Solution* to) {
           const BoltChange d = bolt_change(assembly, index, from, to);
           return StressRange{d.across / (planes * thread.shank_area()), 0.0};
         }});
  }

  /// Threads and shanks of the worst bolt of a group, and the holes of the plates it bears on.
  void add_group(std::size_t index) {
    const parts::BoltGroupAt& group = assembly_.bolt_groups[index];
    const sections::BoltThread& thread = group.bolt.thread;
    const auto add = [&](const char* what, checks::FatigueDetail detail, const char* stress,
                         double area, bool pulled) {
      places_.push_back(
          {.part = group.part,
           .where = group.where + what,
           .detail = std::move(detail),
           .stress = stress,
           .range = [index, area, pulled](const parts::Assembly& assembly,
                                          const fea::Solution& from, const fea::Solution* to) {
             const checks::BoltShare most = group_change(assembly.bolt_groups[index], from, to);
             return StressRange{(pulled ? most.tension : most.shear) / area, 0.0};
           }});
    };
    add(", thread", checks::bolt_thread(thread.diameter), "|dT| / At, its preload left out",
        thread.tensile_area(), true);
    const double planes = group.bolt.double_shear ? 2.0 : 1.0;
    if (!group.bolt.threads_in_plane) {
      add(", shank", checks::bolt_shank(), "|dV| / (planes x A)", planes * thread.shank_area(),
          false);
    }
    if (group.plates.material.id.empty()) return;
    const int count = group.bolt.double_shear ? group.plates.count : 1;
    const double net = 2.0 * group.edge - thread.standard_hole();
    add(", hole", checks::bolted_hole(), "|dV| / (plates x t (2 edge - hole))",
        count * group.plates.thickness * net, false);
  }

  void add_hole() {
    places_.push_back({.part = assembly_.bolted_plates->part,
                       .where = "plates at the bolt hole",
                       .detail = checks::bolted_hole(),
                       .stress = "|dF| / (plates x t (2 edge - hole))",
                       .range = [](const parts::Assembly& assembly, const fea::Solution& from,
                                   const fea::Solution* to) {
                         const parts::BoltedPlates& plates = *assembly.bolted_plates;
                         const parts::BoltedJoint& bolt = assembly.bolts[plates.bolt];
                         const int count = bolt.bolt.double_shear ? plates.count : 1;
                         const double net = 2.0 * plates.edge - bolt.bolt.thread.standard_hole();
                         const BoltChange d = bolt_change(assembly, plates.bolt, from, to);
                         return StressRange{d.across / (count * plates.thickness * net), 0.0};
                       }});
  }

  /// Holes of tabs, their roots beside the weld and the root of that weld.
  void add_tabs(std::size_t index) {
    const parts::TabbedJoint& joint = assembly_.tabs[index];
    places_.push_back({.part = joint.part,
                       .where = joint.where + ", hole",
                       .detail = checks::bolted_hole(),
                       .stress = "|dF| / (tabs x t (2 edge - hole))",
                       .range = [index](const parts::Assembly& assembly, const fea::Solution& from,
                                        const fea::Solution* to) {
                         const TabChange d = tab_change(assembly, index, from, to);
                         const parts::TabSpec& tabs = assembly.tabs[index].tabs;
                         const sections::BoltThread& thread =
                             assembly.bolts[assembly.tabs[index].bolt].bolt.thread;
                         const double net = 2.0 * tabs.edge - thread.standard_hole();
                         return StressRange{d.in_plane / (tabs.plates.thickness * net), 0.0};
                       }});
    places_.push_back({.part = joint.part,
                       .where = joint.where + ", toe",
                       .detail = checks::plate_toe(),
                       .stress = "bending and pull at the root as in the check of it",
                       .range = [index](const parts::Assembly& assembly, const fea::Solution& from,
                                        const fea::Solution* to) {
                         const TabChange d = tab_change(assembly, index, from, to);
                         checks::TabRootInput root = one_tab_root(assembly.tabs[index].tabs);
                         root.force = d.in_plane;
                         root.side = d.across;
                         return StressRange{checks::tab_root(root).demand, 0.0};
                       }});
    if (!joint.tabs.weld.given()) return;
    places_.push_back(
        {.part = joint.part,
         .where = joint.where + ", root of the weld",
         .detail = checks::fillet_root(),
         .stress = "throat stress of the weld group, all taken as across the line",
         .range = [index](const parts::Assembly& assembly, const fea::Solution& from,
                          const fea::Solution* to) {
           const TabChange d = tab_change(assembly, index, from, to);
           const checks::WeldInput weld = tab_weld_of(assembly.tabs[index], {d.across, d.in_plane});
           const auto worst = checks::worst_throat_stress(weld.group, weld.wrench);
           return StressRange{worst ? worst->resultant : base::kUnset, 0.0};
         }});
  }

  /// The thread of a rod end where the jam nut holds it.
  void add_thread(std::size_t index) {
    const parts::ThreadedJoint& joint = assembly_.threads[index];
    places_.push_back(
        {.part = joint.part,
         .where = joint.where + ", thread",
         .detail = checks::bolt_thread(joint.thread.thread.diameter),
         .stress = "|dF| / At + 32 |dV| out / (pi d3^3), the jam nut left out",
         .range = [index](const parts::Assembly& assembly, const fea::Solution& from,
                          const fea::Solution* to) {
           const parts::ThreadedJoint& it = assembly.threads[index];
           fea::Vector3 d = parts::end_forces(it.beam, from).segment<3>(6 * it.end);
           if (to != nullptr) d -= parts::end_forces(it.beam, *to).segment<3>(6 * it.end);
           const double root = it.thread.thread.root_diameter();
           const double bent =
               32.0 * std::hypot(d.y(), d.z()) * it.thread.out / (base::kPi * std::pow(root, 3));
           return StressRange{std::abs(d.x()) / it.thread.thread.tensile_area() + bent, 0.0};
         }});
  }

  const parts::Assembly& assembly_;
  std::vector<LifePlace> places_;
};

}  // namespace

std::vector<LifePlace> life_places(const parts::Assembly& assembly) {
  return PlaceWriter(assembly).result();
}

std::vector<std::string> without_category(const parts::Assembly& assembly) {
  std::vector<std::string> out = {"eyes and housings of links, and what tabs are welded to"};
  const auto in_plane = [](const auto& b) { return b.bolt.threads_in_plane; };
  if (std::any_of(assembly.bolts.begin(), assembly.bolts.end(), in_plane) ||
      std::any_of(assembly.bolt_groups.begin(), assembly.bolt_groups.end(), in_plane)) {
    out.emplace_back("shear of bolts with threads in the plane (no category)");
  }
  const bool roots_missing =
      std::any_of(assembly.pieces.begin(), assembly.pieces.end(), [&](const parts::Piece& p) {
        const bool plates = assembly.root && p.part == assembly.root->part;
        return std::any_of(p.weld_places.begin(), p.weld_places.end(), [&](const parts::Weld& w) {
          return !plates && !(is_tube(p.beams.front().at_a) && holds_end(assembly, p, w));
        });
      });
  if (roots_missing) {
    out.emplace_back("roots of welds on solid bars and on the sides of tubes (size not given)");
  }
  const auto warps = [](const parts::Piece& p) { return p.warping.has_value(); };
  if (std::any_of(assembly.pieces.begin(), assembly.pieces.end(), warps)) {
    out.emplace_back("bars of channel section, which warp");
  }
  const auto unplaced = [&](const parts::Piece& p) { return !warps(p) && p.weld_places.empty(); };
  if (std::any_of(assembly.pieces.begin(), assembly.pieces.end(), unplaced)) {
    out.emplace_back("welds whose place is not known");
  }
  return out;
}

}  // namespace studies
