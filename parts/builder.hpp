#pragma once

#include <string>
#include <vector>

#include "parts/assembly.hpp"

/// What the builders of single parts share. Internal to parts/.
namespace parts {

/// A way point of a run of beams: a node, and the end of the flexible length rigidly away from it.
struct RunEnd {
  fea::NodeId node;
  fea::Vector3 offset_g = fea::Vector3::Zero();
  std::optional<fea::Joint> joint;
  bool own_axes = false;  ///< the joint's axes become those of the beam that ends there
};

/// A node on the way of a run.
struct RunStop {
  fea::NodeId node;
  bool arc = false;                           ///< the beam that ends here is a chord of a bend
  std::optional<double> weld = std::nullopt;  ///< reach of a weld there; nothing = none  [m]
};

/// A weld on the side of a run, at a place along its center line.
struct SideWeldOnRun {
  double at = 0.0;                                ///< its middle  [m]
  double reach = 0.0;                             ///< half of its length along the run  [m]
  double width = base::kUnset;                    ///< of what stands there, around the run  [m]
  fea::Vector3 toward_g = fea::Vector3::UnitZ();  ///< from the center line to it
  std::string key = {};  ///< of the case file; empty = it is where it can be
};

/// Reach of the welds at the two ends of a run; nothing = none there.  [m]
struct EndWelds {
  std::optional<double> start;
  std::optional<double> end;
};

/// What one run of beams is made of.
struct RunSpec {
  std::string part;
  std::string name;
  std::string key;  ///< of the case file
  Stick stick;
  bool welded = true;  ///< weld heat reaches it: at `welds` and its stops, or no place is known
  EndWelds welds = {};
  std::vector<SideWeldOnRun> side_welds = {};
  checks::Duty duty = checks::Duty::ordinary;
  std::optional<fea::Vector3> z_toward_g = std::nullopt;
  /// Beams of each straight between way points; left out, as many as it takes.
  std::optional<int> pieces = std::nullopt;
  double bend_radius = base::kUnset;                 ///< of its arcs  [m]
  std::optional<sections::Shape> shape_at_end = {};  ///< of a tapered run: of the kind of its stick
  double torsion_share = 1.0;  ///< twist stiffness over that by St. Venant  [-]
};

/// How far the weld of an eye, housing or insert lies from its bolt at most: as given, else as far
/// as the part is wide, or twice that of a ball joint or rod end, whose shank stands out of it. [m]
/// Proposal, no source.
[[nodiscard]] double eye_reach(double bolt_to_weld, const sections::Shape& shape, JointKind kind);

/// Fills in the zones of a piece from its welds, when its steel is weakened by them.
/// @param thickest  its section of the thickest wall
void set_weld_zones(Piece& piece, std::vector<Weld> welds, const sections::Shape& thickest);

/// A design on its way to an Assembly.
class Builder {
 public:
  Builder(const Design& design, const StiffnessSet& set, Straights straights)
      : design_(design), set_(set), straights_(straights) {
    out_.inches = design.inches;
  }

  [[nodiscard]] const Design& design() const { return design_; }
  [[nodiscard]] const StiffnessSet& set() const { return set_; }
  Assembly& out() { return out_; }

  fea::NodeId add_node(const fea::Vector3& at_g, const std::string& name, const std::string& key);
  fea::BeamId add_beam(const fea::Beam& beam, const std::string& part);
  /// Beams of one section between two ends on its centroid: one, or two where its shear center
  /// lies elsewhere. `beam.z_toward_g` is where the section's z axis as drawn points; the beam's
  /// own axes are the principal ones.
  PieceBeam add_section_beam(fea::Beam beam, const sections::Shape& at_a,
                             const sections::Shape& at_b, const std::string& part);
  /// The position of a point of the case file. @throws base::InputError when there is none
  [[nodiscard]] fea::Vector3 point(const std::string& name, const std::string& key) const;
  /// The node at a point of the case file, or of a part ("frame bolt"), made at first use.
  fea::NodeId point_node(const std::string& name, const std::string& key);
  /// How a bushing group stands in this set.
  [[nodiscard]] Bound bound_of(const std::string& group) const;
  /// The connection a joint makes, in the axes of a run that leaves along `along_g`.
  [[nodiscard]] std::optional<fea::Joint> connection(const JointSpec& joint,
                                                     const std::string& group,
                                                     const fea::Vector3& along_g) const;
  /// Beams of one stick along way points. Where the run turns, its section turns with it and is not
  /// twisted, as a bar that is bent. The first and last ends may be offset and jointed.
  /// @return index of the new piece in out().pieces
  std::size_t add_run(const RunSpec& spec, const RunEnd& from, const std::vector<RunStop>& through,
                      const RunEnd& to);
  /// Nodes where a run bends. With a radius its corners become arcs, as chords of at most 5
  /// degrees with their ends on the arc (0.2 % of the give of a quarter circle).
  /// @param corners  between `from_g` and `to_g`
  /// @throws base::InputError when a bend does not fit between its neighbors
  std::vector<RunStop> bends(const fea::Vector3& from_g, const std::vector<fea::Vector3>& corners,
                             const fea::Vector3& to_g, const RunSpec& spec);
  /// The direction a case file gives; nothing where it leaves the usual one.
  /// @param at_g  where it is used, for one toward a point
  [[nodiscard]] std::optional<fea::Vector3> direction(const Toward& toward,
                                                      const fea::Vector3& at_g,
                                                      const std::string& key) const;

 private:
  const Design& design_;
  const StiffnessSet& set_;
  Straights straights_;
  Assembly out_;
};

/// A ball-ended bar's free spin about its own axis is held by this much, stated under assumed.
inline constexpr double kSpinStiffness = 1.0;  // [N m/rad]

/// The shear center and the centroid are two points.
[[nodiscard]] bool has_offset_shear_center(const sections::AreaProps& section);

/// The ratings of the ball joint or rod end at one end of a bar whose load reverses.
/// @param end    0 = its first end, 1 = its far one
/// @param where  in words
/// @param like   its ratings and the direction of its bolt; the place in it is not looked at
void rate_end(Assembly& out, const Piece& piece, int end, const std::string& where,
              const RatedJoint& like);

/// The stack of a bolt through two plates.
[[nodiscard]] checks::BoltStack stack_between(double plate, double gap, const BoltSpec& bolt);

/// The stack of a bolt through two tabs, where the gap between them is given.
[[nodiscard]] std::optional<checks::BoltStack> stack_of_tabs(const TabSpec& tabs,
                                                             const BoltSpec& bolt);

/// The tabs that the bolt added last goes through, if they are given; `before` bolts were there
/// before it. @param duty  of the part they hold
void tab_end(Assembly& out, std::size_t before, checks::Duty duty, const TabSpec& tabs,
             const std::string& where, double filler);

/// The weld at one end of a round piece, `at` from its joint, when it is given.
/// @param end  0 = its first end, 1 = its far one
void weld_end(Assembly& out, const Piece& piece, int end, double at, const EndWeldSpec& weld,
              const std::string& where, double filler);

/// The thread of the rod end at one end of a piece, if it is given.
/// @param end  0 = its first end, 1 = its far one
/// @param insert  welded in, of a steel that is not given; else it is screwed into the piece
void thread_end(Assembly& out, const Piece& piece, int end, const ThreadSpec& thread, bool insert);

/// A bushing or ball at one end of a piece, to be watched.
/// @param end  0 = its first end, 1 = its far one
/// @param most_tilt  of its bar against its bolt; may be unset  [rad]
void watch_end(Assembly& out, const Piece& piece, int end, const std::string& where,
               const JointSpec& joint, double most_tilt);

/// The bolt at one end of a piece, when it is given.
/// @param end  0 = its first end, 1 = its far one
void bolt_end(Assembly& out, const Piece& piece, int end, const std::string& where,
              const BoltSpec& bolt, const JointSpec& joint);

/// The bolt of a joint that is a spring of its own, when it is given.
void bolt_spring(Assembly& out, fea::SpringId spring, const std::string& part,
                 const std::string& where, const BoltSpec& bolt, const JointSpec& joint);

/// The design's frame about a bracket's bolt, when it is given. @param inward_y  toward the other
/// rail: -1 or +1
void add_frame(Builder& builder, const fea::Vector3& bolt_g, double inward_y);
/// The bracket's root on its rail: what the wall gives is in between.
fea::SpringId add_root_to_frame(Builder& builder, fea::NodeId root);
void add_axle(Builder& builder);
void add_link_and_bracket(Builder& builder);
void add_arms(Builder& builder);
void add_steering(Builder& builder);
void add_plain_parts(Builder& builder);
/// What hangs on pieces that are there: groups of bolts at their ends.
void add_bolt_groups(Builder& builder);
/// The welds on the side of a part, with places in the axes of the case.
/// @param start_g  where it starts, for a side toward a point
[[nodiscard]] std::vector<SideWeldOnRun> side_welds_on(const Builder& builder,
                                                       const std::string& part,
                                                       const fea::Vector3& start_g);

}  // namespace parts
