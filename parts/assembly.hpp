#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "checks/bolt_shear.hpp"
#include "checks/required_factors.hpp"
#include "checks/weld_group.hpp"
#include "fea/frame_model.hpp"
#include "fea/solver.hpp"
#include "parts/design.hpp"
#include "parts/rail_seat.hpp"
#include "parts/stiffness_set.hpp"
#include "parts/weld_zone.hpp"

/// A design turned into a frame for one stiffness set, and what is to be checked where.
namespace parts {

/// A beam of a piece, with the sections at its two ends (they differ where a plate tapers).
struct PieceBeam {
  fea::BeamId beam;
  sections::Shape at_a;
  sections::Shape at_b;
  /// Where the shear center is not the centroid, `beam` runs through the shear center and carries
  /// shear, bending and torque; this one runs beside it through the centroid and carries the normal
  /// force. piece_forces.hpp puts them together.
  std::optional<fea::BeamId> axial = std::nullopt;
  double starts_at = 0.0;  ///< its end a, along the piece's center line  [m]
  double curved = 1.0;     ///< bending stress at a bend over that of a straight bar
  int parts = 1;           ///< equal ones, between which it is judged too: its section changes
};

/// A force across a bracket's plates at their bolt that no load case names, as a share of what the
/// link brings there. It acts to either side; the frame model knows nothing of it.
struct SideForce {
  double share = 0.0;        ///< [-]
  PieceBeam link;            ///< whose end force that is
  int end = 0;               ///< 0 = a, 1 = b
  double straight_at = 0.0;  ///< from the bolt, where the plates do not bend; 0 = each bends alone,
                             ///< over 0 = a sleeve drawn tight keeps two from turning  [m]
  double spacing = base::kUnset;  ///< of two plates, middle to middle  [m]
};

/// A channel that warps as it twists, its twist held at some places.
struct Warping {
  double length = base::kUnset;       ///< sqrt(E Cw / (G J))  [m]
  bool held = false;                  ///< its warping too is held there; else it is free
  bool any_ends = false;              ///< held or free at either, whichever asks more at each place
  std::vector<double> twist_held_at;  ///< along its center line, start to end  [m]
};

/// A run of beams of one bar, tube or plate, between two joints or junctions.
struct Piece {
  std::string part;  ///< what a row of the answer is about: "lateral_link", "arm, left"
  std::string name;  ///< "lower tube"; empty when the part is one piece
  std::vector<PieceBeam> beams;
  sections::Material material;
  /// Its welds, when they lower its strength and their places are known.
  std::vector<Weld> welds = {};
  /// All of its welds whose places are known, whether they lower its strength or not.
  std::vector<Weld> weld_places = {};
  /// Where the strength beside a weld holds; empty = nowhere. All of it where no place is known.
  std::vector<WeldZone> weld_zones = {};
  checks::Duty duty = checks::Duty::ordinary;
  bool column = false;                ///< between two joints: AISC E3 applies
  bool bent = false;                  ///< between its ends
  double length = base::kUnset;       ///< straight, between the points that hold it sideways  [m]
  double column_from = 0.0;           ///< its start, along that length  [m]
  double center_line = base::kUnset;  ///< along it, bends and all  [m]
  bool reach_assumed = false;  ///< of its welds: how far they lie from its joints is not given
  bool spin_held = false;  ///< free to spin about its own axis; held by a stated small stiffness
  double mass = base::kUnset;                ///< [kg]
  std::vector<std::string> notes = {};       ///< what its yield check says besides: bends, taper
  std::optional<SideForce> side_force = {};  ///< on the plates of a bracket
  std::optional<Warping> warping = {};       ///< of a bar that is a channel

  /// Yield strength at a place along its center line; a zone's edge belongs to the zone. Zones on
  /// one side of it are not looked at.  [Pa]
  [[nodiscard]] double yield_at(double along) const;
  /// The same where a zone on one side counts as one all round.  [Pa]
  [[nodiscard]] double least_yield_at(double along) const;
  /// The strength away from welds holds there, or just beside it.
  [[nodiscard]] bool parent_holds_beside(double along) const;
  /// How far its welds reach into the column from the nearer end; unset when no place is known. [m]
  [[nodiscard]] double farthest_weld() const;
};

/// The weld of a bracket to its rail.
struct RootWeld {
  std::string part;
  fea::NodeId node;                     ///< at the centroid of the weld
  std::optional<fea::SpringId> spring;  ///< to the rail of a frame; else the node is held
  fea::Vector3 at_g;
  checks::WeldGroup group;            ///< in the axes of the case
  BackedWeld backed;                  ///< what of it counts
  bool directional = false;           ///< its strength is by the direction of its load
  RootSeat seat;                      ///< what it stands on
  std::vector<std::string> warnings;  ///< of its place on the rail
  std::string rail_basis;             ///< of the rail's strength
  std::optional<SideForce> side_force = {};
  double plate = base::kUnset;         ///< plate thickness  [m]
  double thinner = base::kUnset;       ///< thinner of the parts joined  [m]
  double base_tensile = base::kUnset;  ///< of the weaker part joined, beside the weld  [Pa]
  std::string base_basis = {};         ///< where that comes from
};

/// A ball joint or rod end with its ratings.
struct RatedJoint {
  std::string part;
  std::string where;
  PieceBeam beam;
  int end = 0;                                  ///< 0 = a, 1 = b
  double static_rating = base::kUnset;          ///< [N]
  double ultimate_rating = base::kUnset;        ///< [N]
  double axial_rating = base::kUnset;           ///< static, along its bolt; unset = not given  [N]
  fea::Vector3 bolt_g = fea::Vector3::UnitX();  ///< direction of its bolt or stud
  bool reversing = true;
  std::optional<fea::SpringId> spring = std::nullopt;  ///< in place of the beam's end
};

/// The fillet all round a seat or pad.
struct RingWeld {
  double diameter = base::kUnset;  ///< of its line  [m]
  double leg = base::kUnset;       ///< [m]
  double filler = base::kUnset;    ///< F_EXX  [Pa]
  [[nodiscard]] bool given() const { return diameter > 0.0 && leg > 0.0; }
  bool operator==(const RingWeld&) const = default;
};

/// What ends the axle's travel on one side, upright: a bump stop when it rises, a limit strap when
/// it drops.
struct TravelStop {
  enum class Kind { bump_stop, limit_strap };

  Kind kind = Kind::bump_stop;
  fea::NodeId node;
  fea::Vector3 offset_g;
  double travel = base::kUnset;  ///< from ride height until it is met; unset = unknown  [m]
  double rate = base::kUnset;    ///< from there on; unset = unknown  [N/m]
  std::string name;
  double rating = base::kUnset;  ///< load it may carry, from its maker; unset = not given  [N]
  RingWeld pad = {};             ///< of a bump stop's pad

  /// +1 where rising meets it, -1 where dropping does.
  [[nodiscard]] double sense() const { return kind == Kind::bump_stop ? 1.0 : -1.0; }
  [[nodiscard]] bool known() const { return travel == travel && rate == rate; }
};

/// A bolt through the end of a part.
struct BoltedJoint {
  std::string part;
  std::string where;
  PieceBeam beam;
  int end = 0;  ///< 0 = a, 1 = b
  BoltSpec bolt;
  std::string one_plane = {};                   ///< why one plane is counted, if not as given
  std::optional<Axis> along = {};               ///< the bolt; unset = all force is across it
  std::optional<checks::BoltStack> stack = {};  ///< unset = not known
  std::optional<std::size_t> beside = {};       ///< the bolt of the other part that is on it too
  std::optional<fea::SpringId> spring = {};     ///< in place of the beam's end
  fea::Matrix3 spring_axes_g = fea::Matrix3::Identity();
  std::optional<TravelStop> strap = {};  ///< whose bolt it is, in place of the beam's end
  /// Where it meets the face, when the bolts of its part that have such a place share alike what
  /// the part puts on them.
  std::optional<fea::Vector3> in_group_g = {};
};

/// Tabs that a bolt goes through.
struct TabbedJoint {
  std::string part;
  std::string where;
  std::size_t bolt = 0;  ///< of Assembly::bolts
  TabSpec tabs;
  double filler = base::kUnset;                ///< of their weld, F_EXX  [Pa]
  checks::Duty duty = checks::Duty::ordinary;  ///< of the part they hold
  bool en_weld = false;                        ///< their weld is judged by EN 1993-1-8
};

/// The weld at one end of a round bar or tube.
struct EndWeld {
  std::string part;
  std::string where;
  PieceBeam beam;
  int end = 0;                    ///< 0 = a, 1 = b
  double at = 0.0;                ///< from that end  [m]
  double radius = base::kUnset;   ///< outside of the bar or tube  [m]
  double thinner = base::kUnset;  ///< its wall  [m]
  EndWeldSpec weld;
  sections::Material material = {};  ///< of the bar or tube
  double filler = base::kUnset;      ///< F_EXX  [Pa]
};

/// The thread of a rod end.
struct ThreadedJoint {
  std::string part;
  std::string where;
  PieceBeam beam;
  int end = 0;  ///< 0 = a, 1 = b
  ThreadSpec thread;
  double tapped_tensile = base::kUnset;  ///< of what it is screwed into  [Pa]
  std::string tapped_basis;
};

/// Bolts that hold an end of a piece together.
struct BoltGroupAt {
  std::string part;
  std::string where;
  PieceBeam beam;
  int end = 0;  ///< 0 = a, 1 = b
  BoltSpec bolt;
  std::vector<Eigen::Vector3d> bolts_from_end_g = {};  ///< from that end, undeformed  [m]
  fea::Vector3 along_g = fea::Vector3::UnitX();        ///< the bolts, undeformed
  fea::Matrix3 axes_lg = fea::Matrix3::Identity();     ///< of the beam, undeformed
  Plates plates = {};                                  ///< without a steel = not given
  double edge = base::kUnset;                          ///< [m]
};

/// The plates of a bracket at its bolt.
struct BoltedPlates {
  std::string part;
  PieceBeam plates;                 ///< its end a is at the bolt
  std::size_t bolt = 0;             ///< of Assembly::bolts, which goes through them
  double edge = base::kUnset;       ///< bolt's center to the nearest edge  [m]
  double thickness = base::kUnset;  ///< of one  [m]
  int count = 2;
  sections::Material material;
};

/// A joint whose turning from ride height is watched.
struct TurningJoint {
  std::string part;
  std::string where;
  fea::BeamId beam = {};
  int end = 0;                                         ///< 0 = a, 1 = b
  std::optional<fea::SpringId> spring = std::nullopt;  ///< in place of the beam's end
  fea::Vector3 bar_g = fea::Vector3::UnitX();          ///< direction of the part on that spring
  JointKind kind = JointKind::bushing;                 ///< a bushing or a ball
  fea::Vector3 bolt_g = fea::Vector3::UnitX();         ///< direction of its bolt or stud
  double most_tilt = base::kUnset;  ///< of its bar against its bolt; unset = not given  [rad]
};

/// A straight line between two points of the structure, whose turning from ride height is watched.
struct Chord {
  std::string part;
  fea::BeamId from;  ///< its end a
  fea::BeamId to;    ///< its end b
};

/// Where a coil stands on the axle.
struct CoilSeat {
  fea::NodeId node;
  fea::Vector3 offset_g;
  double preload = base::kUnset;  ///< of the coil at ride height, down on the axle  [N]
  double rate = base::kUnset;     ///< [N/m]
  std::string name;
  double rating = base::kUnset;  ///< load it may carry, from its maker; unset = not given  [N]
  RingWeld weld = {};

  /// Drop of the seat at which the coil carries nothing.  [m]
  [[nodiscard]] double leaves_at() const { return preload / rate; }
};

/// A point whose movement is reported.
struct NamedNode {
  std::string name;
  fea::NodeId node;
};

/// Nodes of a frame that carry other parts.
struct FrameNodes {
  fea::NodeId rail;                     ///< of the bracket's rail, over its bolt
  fea::NodeId opposite_rail;            ///< across from it
  std::vector<fea::NodeId> arm_joints;  ///< of the cross member that carries them
  std::optional<fea::NodeId> gear;      ///< of the rail that the steering gear is bolted to
};

struct Assembly {
  fea::Model model;
  bool inches = true;                  ///< units of the case file, for words
  bool en_welds = false;               ///< welds are judged by EN 1993-1-8
  std::vector<std::string> node_keys;  ///< key of the case file each node comes from
  std::vector<Piece> pieces;
  std::vector<std::pair<std::string, std::size_t>> members;  ///< name in `members:` and its piece
  std::vector<RatedJoint> rated_joints;
  std::vector<BoltedJoint> bolts;
  std::optional<BoltedPlates> bolted_plates;
  std::vector<BoltGroupAt> bolt_groups;
  std::vector<TabbedJoint> tabs;
  std::vector<ThreadedJoint> threads;
  std::vector<EndWeld> end_welds;
  std::vector<TurningJoint> joints;
  std::vector<Chord> chords;
  std::vector<CoilSeat> coil_seats;
  std::vector<TravelStop> stops;
  double strap_breaking_load = base::kUnset;  ///< rated, of one limit strap  [N]
  std::vector<NamedNode> points;
  std::vector<NamedNode> held;         ///< nodes whose reaction is reported
  std::vector<std::string> beam_part;  ///< part of each beam
  std::optional<RootWeld> root;
  std::optional<FrameNodes> frame;
  std::optional<fea::NodeId> bracket_bolt;
  std::optional<fea::NodeId> axle;  ///< at the wheels' center, hub height
  /// left and right, where its arms hold it; only where its housing is known
  std::array<std::optional<fea::NodeId>, 2> axle_sides = {};
  /// left and right, at the kingpin and hub height; only with steering
  std::array<std::optional<fea::NodeId>, 2> knuckles = {};
  std::optional<fea::NodeId> link_axle_end;  ///< where the axle pushes, when there is no axle
  std::vector<std::string> assumed;          ///< what the model takes for granted, in words
};

/// What the bracket's root puts on its rail, at the root, in axes that turn with the root. [N, N m]
[[nodiscard]] fea::Vector6 root_load(const Assembly& assembly, const fea::Solution& solution);

/// The node of the axle that carries what is at `y`: the one of that side where the axle's housing
/// twists and bends between its sides, and `y` is nearer to it than to the middle; else the middle.
[[nodiscard]] fea::NodeId axle_near(const Assembly& assembly, double y);

/// The bolt and the tabs at an end of a limit strap; both ends are alike.
struct StrapJoint {
  BoltedJoint bolt;
  TabbedJoint tabs;
};
/// @param design  has limit straps
/// @param bolt  place of its bolt in Assembly::bolts
[[nodiscard]] StrapJoint strap_joint(const Design& design, const TravelStop& stop,
                                     std::size_t bolt);

/// Of how many beams a straight bar is made: of as many as it takes (beams_of_straight), or of four
/// whatever its size, so that frames with other sizes of it have the same nodes.
enum class Straights { by_slenderness, in_four };

/// Builds the frame of a design.
/// @throws base::InputError with the key of what is wrong: a part without length, a point missing
[[nodiscard]] Assembly assemble(const Design& design, const StiffnessSet& set,
                                Straights straights = Straights::by_slenderness);

}  // namespace parts
