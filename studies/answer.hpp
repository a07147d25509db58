#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "fea/condition.hpp"
#include "parts/design.hpp"
#include "studies/beyond_travel.hpp"
#include "studies/drawing.hpp"
#include "studies/posture.hpp"
#include "studies/scope.hpp"

namespace studies {

enum class Verdict { within, over, not_decided };

/// Lowest and highest over the stiffness sets.
struct Range {
  double low = base::kUnset;
  double high = base::kUnset;
};

/// A multiple of a load case at which something buckles, and what.
struct CriticalFactor {
  double factor = base::kUnset;
  std::string what;        ///< "brace", "the axle tips on its springs"
  bool axle_tips = false;  ///< the springs and bushings hold most of the strain energy
  bool own = false;        ///< a member's own factor between its joints, not the assembly's
  std::string load_case;
  std::string set;
};

/// One piece of a part in one solved case: what acts on its two ends, in its own axes (x from end a
/// to end b): force x y z, then moment x y z, at a, then at b.  [N, N m]
struct PieceEnds {
  std::string part;
  std::string piece;
  std::array<double, 12> ends = {};
};

/// Force and moment, or displacement and rotation, at a named point, in the axes of the case.
struct AtPoint {
  std::string point;
  std::array<double, 6> value = {};
};

/// One load case solved with one stiffness set.
struct SolvedCase {
  std::string load_case;
  std::string set;
  bool converged = false;
  std::string trouble;             ///< why not, in words
  std::string method;              ///< "second order" or "large displacement"
  std::string posture;             ///< "ride height", "bump", "droop", "crossed", "as imposed"
  std::optional<AxlePlace> place;  ///< with an axle that is in equilibrium
  double residual = base::kUnset;
  double condition = base::kUnset;  ///< estimate of the stiffness's condition number
  std::string condition_cause;      ///< what spoils it, when it is poor
  fea::FactorSize factor;           ///< of the stiffness
  std::vector<PieceEnds> pieces;
  std::vector<AtPoint> reactions;
  std::vector<AtPoint> displacements;
  std::vector<AtPoint> first_order;      ///< the same displacements in first order
  std::vector<CriticalFactor> critical;  ///< lowest three of the assembly
  std::vector<double> reversed;          ///< negative factors nearest to zero: the load reversed
  bool cannot_buckle = false;            ///< nothing is compressed
};

/// How near one part comes to its limit.
struct PartUtilization {
  std::string part;
  double utilization = base::kUnset;  ///< worst of its checks; unset = one is not decided
  std::string check = {};             ///< that governs it: "column"
};

/// The largest root moment with one end of what the rail's stiffness may be.
struct RootMoment {
  std::string rail;              ///< "soft rail", "stiff rail", "rail"
  double moment = base::kUnset;  ///< [N m]
};

/// What `compare` shows of one design.
struct Figures {
  std::string name;
  Verdict verdict = Verdict::not_decided;
  std::string worst;  ///< "bracket, root weld" of the worst finding
  double worst_utilization = base::kUnset;
  std::vector<PartUtilization> parts;
  Range tip_deflection;                       ///< bracket bolt across the truck, largest case  [m]
  Range root_moment;                          ///< bracket root about the rail, largest case  [N m]
  std::vector<RootMoment> root_moments = {};  ///< the same by the rail's stiffness
  double weld_utilization = base::kUnset;
  double worst_stress = base::kUnset;  ///< largest von Mises stress of any part  [Pa]
  std::string worst_stress_part;
  double critical_factor = base::kUnset;  ///< lowest; unset = nothing is compressed
  double mass = base::kUnset;             ///< of all parts in the design  [kg]
  std::vector<std::string> beware = {};   ///< of a variant as it is put together, not of the base
};

struct Comparison {
  std::string title;
  bool inches = true;
  Scope scope = {};
  Figures base;
  std::vector<Figures> variants;
  std::vector<std::string> failures;         ///< variants that could not be run, and why
  std::vector<std::string> unfinished = {};  ///< variants that were stopped before their end
};

struct PartMass {
  std::string part;
  double mass = base::kUnset;  ///< [kg]
};

/// One force on the parts, and its moment about the point that its balance names.
struct BalanceRow {
  std::string what;  ///< "left wheel", "left coil", "arm, left frame joint"
  std::array<double, 3> force = {0.0, 0.0, 0.0};   ///< [N]
  std::array<double, 3> moment = {0.0, 0.0, 0.0};  ///< [N m]
};

/// A load case as what acts on the parts from outside and what holds them, in equilibrium.
struct Balance {
  std::string load_case;
  std::string set;
  std::string about;  ///< "the middle of the axle, at hub height"
  std::vector<BalanceRow> acts;
  std::vector<BalanceRow> holds;
  double open = 0.0;  ///< largest sum left over, over the largest force or moment  [-]
};

/// One thing that gives, and at about what multiple of its load case.
struct GivesAt {
  enum class How { bends, buckles, breaks, tips };
  std::string part;
  std::string check;  ///< whose capacity it is: "yield", "weld"
  How how = How::bends;
  double multiple = base::kUnset;
  bool bar = false;  ///< a bar or tube, or the frame of them
};

/// What gives in a load case with one stiffness set, first to last, up to where the frame itself
/// gives way.
struct FailureOrder {
  std::string load_case;
  std::string set;
  std::vector<GivesAt> order = {};
  std::vector<std::string> left_out = {};  ///< "brace, joint rating": not decided
  bool breaks_first = false;  ///< a weld, bolt, joint or hole gives before any bar or tube
};

/// The life of one place under the duty, at its worst stiffness set.
struct LifeAtPlace {
  std::string part;
  std::string where;               ///< "root weld at the rail, toe"
  std::string detail;              ///< of a table of categories
  double category = base::kUnset;  ///< range that it stands 2e6 times  [Pa]
  std::string stress;              ///< what the nominal stress is, in symbols
  std::string set;
  double damage_limit = 1.0;       ///< Miner's sum that ends its life
  double distance = base::kUnset;  ///< at that sum; infinite = no damage  [m]
  std::string source;              ///< of the category, and how many survive
  std::vector<checks::WorkedLine> lines = {};
};

/// The band is the shortest life over this and times this: proposal, no source.
inline constexpr double kLifeBand = 3.0;

/// How far the parts go under the duty: an indication, no verdict rests on it.
struct Life {
  std::vector<LifeAtPlace> places;  ///< shortest life first
  std::string duty_basis;
  std::vector<std::string> left_out;  ///< blocks of the duty whose load cases are not solved
  std::vector<std::string> without_category;  ///< places that are not in it, in words

  /// Of the shortest life.  [m]
  [[nodiscard]] Range band() const {
    return places.empty()
               ? Range{}
               : Range{places.front().distance / kLifeBand, places.front().distance * kLifeBand};
  }
};

inline constexpr const char* kDamperEnds = "damper at full length";

/// One thing that ends the axle's drop.
struct DroopEnd {
  std::string what;            ///< "damper at full length"
  double drop = base::kUnset;  ///< of the axle, from ride height  [m]
};

/// What ends the axle's drop, by geometry alone, nearest first.
struct Droop {
  std::vector<DroopEnd> ends;
  double free_travel = base::kUnset;  ///< drop that the straps must stop short of  [m]
  double advised = base::kUnset;      ///< drop at which the straps should come tight  [m]
  double strap = base::kUnset;        ///< drop at which they do  [m]
  double stretched = base::kUnset;  ///< drop when one strap has caught the axle; unset = not known
  // Of the solved equilibrium in droop; unset = none was solved.
  double hangs = base::kUnset;  ///< farthest drop of the axle's middle  [m]
  double joint_at_tilt =
      base::kUnset;   ///< drop, in proportion, at which the first joint's tilt ends
  std::string joint;  ///< that joint: "arm, left, frame end"
};

inline constexpr const char* kCoilCarriesNothing = "coil carries nothing";
inline constexpr const char* kCoilLeavesSeat = "coil leaves its seat";
inline constexpr const char* kStrapTight = "limit strap tight";
inline constexpr const char* kBumpStopMet = "bump stop met";
inline constexpr const char* kDamperShortest = "damper at its shortest";
inline constexpr const char* kFullBump = "bump stop fully crushed";

/// What ends the axle's rise, by geometry alone, nearest first.
struct Bump {
  std::vector<DroopEnd> ends;    ///< each with its rise from ride height
  double full = base::kUnset;    ///< with the bump stop crushed; unset = not known  [m]
  double solved = base::kUnset;  ///< farthest rise of the axle's middle in a load case  [m]
};

/// What was tried against a check that is over, by solving the design with it.
struct Remedy {
  std::string part = {};    ///< as its finding names it
  std::string check = {};   ///< "column"
  std::string where = {};   ///< of its finding
  std::string change = {};  ///< smallest one tried that mends it, in words; empty = none does
  double utilization = base::kUnset;  ///< of that check with it; unset = it is no longer asked
  std::string most = {};              ///< the farthest that was tried, where none mends it
  std::string spoils = {};  ///< what would mend it, but puts something else over; in words
  std::size_t tried = 0;  ///< changes that were solved; 0 = no one size of the case is known to do
  bool in_full = true;    ///< in all load cases and stiffness sets, else in those that govern
  bool left = false;      ///< not tried, to keep a large case short
};

/// Every change that mends something, made at once.
struct RemediesTogether {
  Verdict verdict = Verdict::not_decided;
  std::string worst;                  ///< "brace, combined forces"
  double utilization = base::kUnset;  ///< of that
};

/// The answer to `check`.
struct Answer {
  std::string title;
  bool inches = true;
  Verdict verdict = Verdict::not_decided;
  /// Worst of each part and kind of check over load cases and stiffness sets, worst first
  /// (undecided ones before all others).
  std::vector<checks::Finding> findings;
  std::vector<SolvedCase> solved;
  std::vector<CriticalFactor> critical;   ///< lowest three of the assembly over all, ascending
  std::vector<CriticalFactor> own;        ///< lowest own factor of each member, ascending
  std::vector<std::string> load_cases;    ///< names, in order, with their basis after ": "
  std::vector<Balance> balances;          ///< one a load case, with the first stiffness set
  std::vector<std::string> sets;          ///< stiffness sets that were solved
  std::vector<PostureExtremes> postures;  ///< with an axle
  std::vector<PartMass> masses;
  /// One a load case, with the stiffness set that tells most; studies/failure_order.hpp
  std::vector<FailureOrder> failure_orders;
  std::vector<Remedy> remedies;  ///< one a check that is over, where they were asked for
  std::optional<RemediesTogether> together;  ///< of several changes that mend something
  std::optional<Life> life;                  ///< where a block of the duty could be used
  std::optional<Droop> droop;                ///< with limit straps
  std::optional<Bump> bump;                  ///< where a limit of the axle's rise is given
  std::vector<BeyondTravel> beyond_travel;
  std::optional<Comparison> comparison;  ///< when the case names variants
  std::optional<Drawing> drawing;        ///< only where it was asked for
  std::vector<parts::Assumption> assumed;
  std::vector<std::string> not_checked;  ///< load cases and things this answer leaves out
  Scope scope = {};
  std::vector<std::string> not_offered;  ///< kinds of check this version does not offer
};

/// Over where a finding is, else not decided where one is not, else within.
[[nodiscard]] Verdict verdict_of(const std::vector<checks::Finding>& findings);

/// The cautions that every output carries.
[[nodiscard]] const std::vector<std::string>& cautions();

/// How the note of a finding starts that is judged in second order at ride height although its load
/// case is solved with large displacements too.
inline constexpr const char* kAtRideHeight = "second order at ride height is used";
[[nodiscard]] bool judged_at_ride_height(const checks::Finding& finding);

/// Kinds of check that this version does not offer yet, named in every verdict line.
[[nodiscard]] const std::vector<std::string>& checks_not_offered();

}  // namespace studies
