#include "checks/bolt_shear.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/caveat.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

constexpr double kThreadsIn = 0.450;  // of Fu
constexpr double kThreadsOut = 0.563;
constexpr double kTension = 0.75;
constexpr double kRootShear = 0.60;  // of Fu on the stress area
constexpr double kTogether = 1.3;    // J3.8

Value area(double si) {
  return {si, Measure::area};
}

/// The thread takes more of the shank than the code's factors allow for.
bool small_thread(const BoltInput& in) {
  return in.thread.tensile_area() < kTension * in.thread.shank_area();
}

/// The thread's root holds less than the shank does.
bool shears_at_root(const BoltInput& in) {
  const double shank = kThreadsIn * in.thread.shank_area();
  return in.threads_in_plane && small_thread(in) && kRootShear * in.thread.tensile_area() < shank;
}

/// Rn in shear over all planes.
double shear_capacity(const BoltInput& in) {
  const double part = in.threads_in_plane ? kThreadsIn : kThreadsOut;
  const double plane = shears_at_root(in) ? kRootShear * in.grade.tensile * in.thread.tensile_area()
                                          : part * in.grade.tensile * in.thread.shank_area();
  return in.planes * plane;
}

void add_shear_lines(const BoltInput& in, Finding& f) {
  const double holds = shear_capacity(in);
  if (shears_at_root(in)) {
    f.lines.push_back({"Rv = planes * 0.60 Fu At, threads in the plane, At < 0.75 A",
                       "{0} * 0.60 * {1} * {2} = {3}",
                       {ratio(in.planes), stress(in.grade.tensile), area(in.thread.tensile_area()),
                        force(holds)}});
  } else {
    const double part = in.threads_in_plane ? kThreadsIn : kThreadsOut;
    f.lines.push_back(
        {fmt::format("Rv = planes * {:.3f} Fu A, threads {} the plane, A of the shank", part,
                     in.threads_in_plane ? "in" : "out of"),
         fmt::format("{{0}} * {:.3f} * {{1}} * {{2}} = {{3}}", part),
         {ratio(in.planes), stress(in.grade.tensile), area(in.thread.shank_area()), force(holds)}});
  }
  f.lines.push_back({"V / Rv, V across the bolt",
                     "{0} / {1} = {2}",
                     {force(in.shear), force(holds), ratio(in.shear / holds)}});
}

/// Rn in tension.
double tension_capacity(const BoltInput& in) {
  return small_thread(in) ? in.grade.tensile * in.thread.tensile_area()
                          : kTension * in.grade.tensile * in.thread.shank_area();
}

/// Tension, and shear with it.
void add_tension_lines(const BoltInput& in, Finding& f) {
  const double capacity = tension_capacity(in);
  if (small_thread(in)) {
    f.lines.push_back(
        {"Rt = Fu At, At < 0.75 A",
         "{0} * {1} = {2}",
         {stress(in.grade.tensile), area(in.thread.tensile_area()), force(capacity)}});
  } else {
    f.lines.push_back({"Rt = 0.75 Fu A",
                       "0.75 * {0} * {1} = {2}",
                       {stress(in.grade.tensile), area(in.thread.shank_area()), force(capacity)}});
  }
  const double v = in.shear / shear_capacity(in);
  const double t = in.tension / capacity;
  f.lines.push_back({"T / Rt, T along the bolt",
                     "{0} / {1} = {2}",
                     {force(in.tension), force(capacity), ratio(t)}});
  f.lines.push_back({"both together: (V / Rv + T / Rt) / 1.3",
                     "({0} + {1}) / 1.3 = {2}",
                     {ratio(v), ratio(t), ratio((v + t) / kTogether)}});
}

double eye_alone(const BoltStack& stack) {
  return stack.eye - 2.0 * stack.spacer;
}

/// Moment in a bolt on two plates, under one eye or one plate.  [N m]
double moment_of_one(const BoltInput& in) {
  const BoltStack& stack = *in.stack;
  if (in.planes == 1) return 0.5 * in.shear * (stack.eye + stack.plate);
  return in.shear * (eye_alone(stack) + 4.0 * stack.spacer + 2.0 * stack.plate) / 8.0;
}

void add_moment_of_one(const BoltInput& in, const char* beside, Finding& f) {
  const BoltStack& stack = *in.stack;
  const Value bent = moment(moment_of_one(in));
  if (in.planes == 1) {
    f.lines.push_back(
        {fmt::format("{}M = F (between the plates + plate) / 2, beside one plate", beside),
         "{0} * ({1} + {2}) / 2 = {3}",
         {force(in.shear), length(stack.eye), length(stack.plate), bent}});
  } else if (stack.spacer > 0.0) {
    f.lines.push_back({fmt::format("{}M = F (eye + 4 spacers + 2 plates) / 8", beside),
                       "{0} * ({1} + 4 * {2} + 2 * {3}) / 8 = {4}",
                       {force(in.shear), length(eye_alone(stack)), length(stack.spacer),
                        length(stack.plate), bent}});
  } else {
    f.lines.push_back({fmt::format("{}M = F (eye + 2 plates) / 8", beside),
                       "{0} * ({1} + 2 * {2}) / 8 = {3}",
                       {force(in.shear), length(stack.eye), length(stack.plate), bent}});
  }
}

/// A bolt on two plates with two eyes side by side between them.
struct OnTwoEyes {
  double span;       ///< middles of the plates apart  [m]
  double near;       ///< an eye's middle from its plate's  [m]
  bool first;        ///< whether the part itself bends it more
  AcrossBolt close;  ///< force of the eye that bends it more, and of the other  [N]
  AcrossBolt far;
  double reaction;  ///< of the plate beside that  [N]

  explicit OnTwoEyes(const BoltStack& stack)
      : span(stack.eye + stack.plate), near(0.5 * stack.plate + 0.25 * stack.eye) {
    const AcrossBolt& one = stack.two_eyes->first;
    const AcrossBolt& two = stack.two_eyes->second;
    first = support(one, two) >= support(two, one);
    close = first ? one : two;
    far = first ? two : one;
    reaction = support(close, far);
  }

 private:
  [[nodiscard]] double support(const AcrossBolt& of_close, const AcrossBolt& of_far) const {
    return std::hypot(of_close[0] * (span - near) + of_far[0] * near,
                      of_close[1] * (span - near) + of_far[1] * near) /
           span;
  }
};

void add_moment_of_two(const OnTwoEyes& on, const char* beside, Finding& f) {
  f.lines.push_back(
      {"two eyes side by side: middles of the plates apart, L; eye's middle from the plate's, c",
       "{0}, {1}",
       {length(on.span), length(on.near)}});
  f.lines.push_back({fmt::format("{}R = |F_1 (L - c) + F_2 c| / L, F_1 of the {}", beside,
                                 on.first ? "part itself" : "other part on the bolt"),
                     "sqrt((({0}) * ({4} - {5}) + ({2}) * {5})^2 + (({1}) * ({4} - {5}) + ({3}) * "
                     "{5})^2) / {4} = "
                     "{6}",
                     {force(on.close[0]), force(on.close[1]), force(on.far[0]), force(on.far[1]),
                      length(on.span), length(on.near), force(on.reaction)}});
  f.lines.push_back({fmt::format("{}M = R c", beside),
                     "{0} * {1} = {2}",
                     {force(on.reaction), length(on.near), moment(on.reaction * on.near)}});
}

/// The moment in it by its bending between its plates.  [N m]
double moment_between(const BoltInput& in) {
  if (!in.stack->two_eyes) return moment_of_one(in);
  const OnTwoEyes on(*in.stack);
  return on.reaction * on.near;
}

double bent_diameter(const BoltInput& in) {
  return in.threads_in_plane ? in.thread.root_diameter() : in.thread.diameter;
}

/// What that uses of first yield.
double bending_share(const BoltInput& in) {
  const double modulus = base::kPi / 32.0 * std::pow(bent_diameter(in), 3);
  return moment_between(in) / (in.grade.yield * modulus);
}

void add_bending_lines(const BoltInput& in, Finding& f) {
  const BoltStack& stack = *in.stack;
  const char* beside = stack.loose ? "" : "beside it, were its stack loose: ";
  if (stack.two_eyes) {
    add_moment_of_two(OnTwoEyes(stack), beside, f);
  } else {
    add_moment_of_one(in, beside, f);
  }
  const double bent = bending_share(in);
  f.lines.push_back({fmt::format("{}M / (Fy pi d^3 / 32), d {}", beside,
                                 in.threads_in_plane ? "at the thread's root" : "of the shank"),
                     "{0} / ({1} * pi * {2}^3 / 32) = {3}",
                     {moment(moment_between(in)), stress(in.grade.yield), length(bent_diameter(in)),
                      ratio(bent)}});
  if (!stack.loose) return;
  const double v = in.shear / shear_capacity(in);
  f.lines.push_back({"bending and shear: sqrt((M / My)^2 + (V / Rv)^2)",
                     "sqrt({0}^2 + {1}^2) = {2}",
                     {ratio(bent), ratio(v), ratio(std::hypot(bent, v))}});
}

/// Demand over capacity in shear, in tension and in both together.
double in_its_planes(const BoltInput& in) {
  const double v = in.shear / shear_capacity(in);
  if (!(in.tension > 0.0)) return v;
  const double t = in.tension / tension_capacity(in);
  return std::max({v, t, (v + t) / kTogether});
}

/// In bending and shear.
double bent_too(const BoltInput& in) {
  return std::hypot(bending_share(in), in.shear / shear_capacity(in));
}

/// What the faces of a clamped stack hold by friction.
double held_by_friction(const BoltInput& in) {
  constexpr double kPreload = 0.75;  // of the proof load
  constexpr double kFriction = 0.20;
  return in.planes * kFriction * kPreload * in.grade.proof * in.thread.tensile_area();
}

void add_friction_line(const BoltInput& in, Finding& f) {
  f.lines.push_back({"beside it, friction of the clamped faces: planes * 0.20 * 0.75 Sp At",
                     "{0} * 0.20 * 0.75 * {1} * {2} = {3}",
                     {ratio(in.planes), stress(in.grade.proof), area(in.thread.tensile_area()),
                      force(held_by_friction(in))}});
}

/// Whether the load, times the factor asked, is over the friction of the clamped faces.
bool slips(const BoltInput& in) {
  double most = in.shear;
  if (in.stack && in.stack->two_eyes) {
    for (const AcrossBolt& eye : {in.stack->two_eyes->first, in.stack->two_eyes->second}) {
      most = std::max(most, std::hypot(eye[0], eye[1]));
    }
  }
  return std::fmax(1.0, in.required) * most > held_by_friction(in);
}

/// Of a clamped stack that the load slips: what the bolt's bending makes of it. Where it is only
/// assumed to be clamped, and the bolt would be over in bending, the check is not decided.
void say_what_slipping_makes(const BoltInput& in, Finding& f) {
  const double here = f.utilization() / f.demand * demand_if_slipped(in).value_or(base::kUnset);
  const double slipped = std::fmax(here, in.if_slipped);
  if (!(slipped > f.utilization())) return;
  if (!std::isfinite(slipped)) {
    if (f.state == State::within) {
      leave_undecided(f,
                      "only assumed to be clamped, the load slips it, and what it goes through is "
                      "not known: its bending cannot be told; say `clamped stack`, or give its "
                      "tabs with their gap");
    }
    return;
  }
  const bool elsewhere = !(here >= slipped) && !in.slipped_in.empty();
  const std::string counted =
      fmt::format("with its bending counted about {:.0f} %{}, not {:.0f} %", 100.0 * slipped,
                  elsewhere ? fmt::format(" ({})", in.slipped_in) : "", 100.0 * f.utilization());
  if (!in.clamp_assumed) {
    f.notes.push_back(fmt::format("{}the load slips its clamped stack, which may leave no gap: {}",
                                  kCaveat, counted));
    return;
  }
  const std::string assumed = fmt::format(
      "only assumed to be clamped, and the load slips it: {}; say `clamped stack` or "
      "`loose stack`",
      counted);
  if (slipped > 1.0 && f.state == State::within) {
    leave_undecided(f, assumed);
  } else {
    f.notes.push_back(kCaveat + assumed);
  }
}

}  // namespace

std::optional<double> demand_if_slipped(const BoltInput& input) {
  const bool loose = input.loose || (input.stack && input.stack->loose);
  if (loose || !slips(input)) return std::nullopt;
  if (!input.stack) {
    if (!input.clamp_assumed) return std::nullopt;
    return std::numeric_limits<double>::infinity();
  }
  return std::max(in_its_planes(input), bent_too(input));
}

double bolt_use(const BoltInput& input) {
  const double demand = in_its_planes(input);
  return input.stack && input.stack->loose ? std::max(demand, bent_too(input)) : demand;
}

Finding bolt_shear(const BoltInput& in) {
  INVARIANT(in.planes == 1 || in.planes == 2);
  INVARIANT(in.grade.tensile > 0.0 && in.thread.diameter > 0.0);
  INVARIANT(!in.stack || 2.0 * in.stack->spacer < in.stack->eye);
  Finding f{.check = "bolt", .measure = Measure::ratio};
  f.required = in.required;
  f.source =
      "AISC 360-22 J3.7 and J3.8, from memory; bending as a pin: EN 1993-1-8 3.13 (table 3.10 "
      "read)";
  f.range = "bolts drawn tight or snug; slip, prying and fatigue are not in it";
  add_shear_lines(in, f);
  if (in.tension > 0.0) add_tension_lines(in, f);
  if (in.stack) {
    if (!in.stack->loose) add_friction_line(in, f);
    add_bending_lines(in, f);
  }
  const double demand = bolt_use(in);
  f.demand = demand;
  f.capacity = 1.0;
  f.notes.push_back(fmt::format("{} {}, {} ({}); Fu {:.0f} MPa", in.thread.name, in.grade.name,
                                in.grade.standard, in.grade.mark, in.grade.tensile / 1e6));
  if (small_thread(in)) {
    f.notes.emplace_back(
        "a coarse thread that leaves under 0.75 of the shank: its stress area counts, in shear "
        "with "
        "0.60 Fu; proposal, no source");
  }
  if (in.stack && !in.stack->loose) {
    f.notes.emplace_back(
        "its stack is taken as clamped tight, so that the bolt does not bend: say `loose stack` "
        "where a bushing turns on it or nothing clamps");
    f.notes.emplace_back(
        slips(in) ? "the load, times the factor asked, is over the friction of the clamped faces: "
                    "they slip until the bolt bears, and what bending beside it says may count"
                  : "the friction of the clamped faces holds the load, times the factor asked, by "
                    "itself");
  } else if (!in.stack) {
    f.notes.emplace_back("what it goes through is not known: its bending is not in this");
  }
  if (in.stack && in.stack->spacers_left_out) {
    f.notes.push_back(kCaveat +
                      std::string("two eyes share it, and its spacers, which bend it more, are "
                                  "not counted"));
  }
  if (in.tension > 0.0) {
    f.notes.emplace_back(
        "prying of a thin part, which adds to the bolt's pull, is not in it: look at the part "
        "beside the bolt. None is to be expected from a thickness of sqrt(4 T b' / (p Fu)) on, T "
        "its pull times the factor asked, b' from the edge of the bolt to what pulls the part, p "
        "the length of the part that belongs to one bolt (AISC Manual, part 9, from memory)");
  }
  if (!in.planes_basis.empty()) f.notes.push_back(in.planes_basis);
  if (in.loose && !in.stack) {
    leave_undecided(f,
                    "its stack is loose, and what it goes through is not known: its bending "
                    "cannot be told");
    return f;
  }
  decide(f, std::isnan(in.safety_factor) ? 1.0 / demand : in.safety_factor, in.required);
  say_what_slipping_makes(in, f);
  return f;
}

}  // namespace checks
