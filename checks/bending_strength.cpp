#include "checks/bending_strength.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

#include <fmt/format.h>

#include "checks/value.hpp"
#include "checks/wall_slenderness.hpp"

namespace checks {
namespace {

/// Limits of AISC 360-22 table B4.1b over sqrt(E/Fy), from memory.
constexpr double kBoxFlangeCompact = 1.12;
constexpr double kBoxFlangeSlender = 1.40;
constexpr double kBoxWebCompact = 2.42;
constexpr double kBoxWebSlender = 5.70;
constexpr double kLegCompact = 0.54;
constexpr double kLegSlender = 0.91;
constexpr double kFlangeCompact = 0.38;
constexpr double kFlangeYields = 0.56;  // of table B4.1a: yields before it buckles when compressed
constexpr double kFlangeSlender = 1.00;
constexpr double kWebCompact = 3.76;
/// Of the yield strength, what residual stresses leave before a member gives sideways elastically.
constexpr double kResidual = 0.7;

Value modulus(double si) {
  return {si, Measure::section_modulus};
}

NominalMoment outside(std::string reason) {
  return {.reason = "outside the method: " + std::move(reason)};
}

/// The modulus that bends, elastic and plastic.
struct Moduli {
  double elastic = base::kUnset;  ///< S  [m^3]
  double plastic = base::kUnset;  ///< Z  [m^3]
};

NominalMoment plastic_moment(double yield, const Moduli& m, const char* symbols) {
  const double value = yield * m.plastic;
  return {
      .value = value,
      .lines = {{symbols, "{0} * {1} = {2}", {stress(yield), modulus(m.plastic), moment(value)}}}};
}

NominalMoment first_yield(double yield, double elastic_modulus, const char* symbols) {
  if (std::isnan(elastic_modulus)) return outside("its section modulus is not given");
  const double value = yield * elastic_modulus;
  return {
      .value = value,
      .lines = {
          {symbols, "{0} * {1} = {2}", {stress(yield), modulus(elastic_modulus), moment(value)}}}};
}

/// rts of F2-7: sqrt(sqrt(Iy Cw) / S).  [m]
double effective_radius(const ChannelSpan& s) {
  return std::sqrt(std::sqrt(s.other_inertia * s.warping) / s.modulus);
}

/// J c / (S ho) of F2, c = ho / 2 sqrt(Iy / Cw).  [-]
double torsion_part(const ChannelSpan& s) {
  return s.torsion * 0.5 * std::sqrt(s.other_inertia / s.warping) / s.modulus;
}

/// A limit state that lowers Mn, where it does.
void lower(NominalMoment& m, double value, WorkedLine line) {
  if (!(value < m.value)) return;
  m.value = value;
  m.lines.push_back(std::move(line));
}

/// F8.
NominalMoment round_tube(const BendingInput& in, const sections::RoundTube& tube,
                         const Moduli& mod) {
  const std::string too_thin = wall_outside_method(in.shape, in.elastic, in.yield);
  if (!too_thin.empty()) return {.reason = too_thin + " (AISC 360-22 F8, from memory)"};
  const double wall = tube.outside / tube.wall;
  const double over = wall * in.yield / in.elastic;  // D/t over E/Fy
  NominalMoment m = plastic_moment(in.yield, mod, "Mp = Fy Z");
  if (over <= 0.07) return m;
  if (over <= 0.31) {
    const double value = (0.021 * in.elastic / wall + in.yield) * mod.elastic;
    lower(m, value,
          {"Mn = (0.021 E / (D/t) + Fy) S, as D/t > 0.07 E/Fy",
           "(0.021 * {0} / ({1} / {2}) + {3}) * {4} = {5}",
           {stress(in.elastic), length(tube.outside), length(tube.wall), stress(in.yield),
            modulus(mod.elastic), moment(value)}});
    return m;
  }
  const double value = 0.33 * in.elastic / wall * mod.elastic;
  lower(m, value,
        {"Mn = 0.33 E / (D/t) S, as D/t > 0.31 E/Fy",
         "0.33 * {0} / ({1} / {2}) * {3} = {4}",
         {stress(in.elastic), length(tube.outside), length(tube.wall), modulus(mod.elastic),
          moment(value)}});
  return m;
}

/// A rectangular tube that bends along `along`.
struct Box {
  double along = base::kUnset;  ///< outside  [m]
  double across = base::kUnset;
  double wall = base::kUnset;
  double inertia = base::kUnset;
  double area = base::kUnset;
  double torsion = base::kUnset;
  double other_radius = base::kUnset;  ///< of gyration, about the other axis  [m]
  Moduli moduli;
};

/// Elastic modulus once the compressed wall counts with its effective width alone (F7-4).
double effective_modulus(const Box& box, double flat, double effective) {
  const double lost = (flat - effective) * box.wall;
  const double arm = 0.5 * (box.along - box.wall);
  const double left = box.area - lost;
  const double shift = lost * arm / left;
  const double inertia =
      box.inertia - lost * (arm * arm + box.wall * box.wall / 12.0) - left * shift * shift;
  return inertia / (0.5 * box.along + shift);
}

void lower_for_flange(NominalMoment& m, const Box& box, const BendingInput& in) {
  const double flat = box.across - 3.0 * box.wall;
  const double root = std::sqrt(in.elastic / in.yield);
  const double wall = flat / box.wall;
  const double plastic = in.yield * box.moduli.plastic;
  const double yields = in.yield * box.moduli.elastic;
  if (wall <= kBoxFlangeCompact * root) return;
  if (wall <= kBoxFlangeSlender * root) {
    const double value = plastic - (plastic - yields) * (3.57 * wall / root - 4.0);
    lower(m, value,
          {"Mn = Mp - (Mp - Fy S) (3.57 (b/t) sqrt(Fy/E) - 4.0), as b/t > 1.12 sqrt(E/Fy)",
           "{0} - ({0} - {1}) * (3.57 * {2} / {3} * sqrt({4} / {5}) - 4.0) = {6}",
           {moment(plastic), moment(yields), length(flat), length(box.wall), stress(in.yield),
            stress(in.elastic), moment(value)}});
    return;
  }
  const double effective = std::min(flat, 1.92 * box.wall * root * (1.0 - 0.38 / wall * root));
  const double left = effective_modulus(box, flat, effective);
  const double value = in.yield * left;
  lower(m, value,
        {fmt::format("Mn = Fy Se, Se with be = 1.92 t sqrt(E/Fy) (1 - 0.38 / (b/t) sqrt(E/Fy)) = "
                     "{:.4g} b of the compressed wall, as b/t > 1.40 sqrt(E/Fy)",
                     effective / flat),
         "{0} * {1} = {2}",
         {stress(in.yield), modulus(left), moment(value)}});
}

void lower_for_web(NominalMoment& m, const Box& box, const BendingInput& in) {
  const double flat = box.along - 3.0 * box.wall;
  const double root = std::sqrt(in.elastic / in.yield);
  const double wall = flat / box.wall;
  if (wall <= kBoxWebCompact * root) return;
  const double plastic = in.yield * box.moduli.plastic;
  const double yields = in.yield * box.moduli.elastic;
  const double value = plastic - (plastic - yields) * (0.305 * wall / root - 0.738);
  lower(m, value,
        {"Mn = Mp - (Mp - Fy S) (0.305 (h/t) sqrt(Fy/E) - 0.738), as h/t > 2.42 sqrt(E/Fy)",
         "{0} - ({0} - {1}) * (0.305 * {2} / {3} * sqrt({4} / {5}) - 0.738) = {6}",
         {moment(plastic), moment(yields), length(flat), length(box.wall), stress(in.yield),
          stress(in.elastic), moment(value)}});
}

/// F7.4: a tube taller than wide may give sideways over a long span.
void lower_for_span(NominalMoment& m, const Box& box, const BendingInput& in) {
  if (!(box.along > box.across)) return;
  const double plastic = in.yield * box.moduli.plastic;
  const double start = kResidual * in.yield * box.moduli.elastic;
  const double stiff = in.elastic * box.other_radius * std::sqrt(box.torsion * box.area);
  const double plastic_to = 0.13 * stiff / plastic;
  const double inelastic_to = 2.0 * stiff / start;
  if (in.length <= plastic_to) return;
  if (in.length <= inelastic_to) {
    const double share = (in.length - plastic_to) / (inelastic_to - plastic_to);
    const double value = plastic - (plastic - start) * share;
    lower(m, value,
          {"Mn = Mp - (Mp - 0.7 Fy S) (Lb - Lp) / (Lr - Lp), as Lb > Lp = 0.13 E ry sqrt(J A) / Mp",
           "{0} - ({0} - {1}) * ({2} - {3}) / ({4} - {3}) = {5}",
           {moment(plastic), moment(start), length(in.length), length(plastic_to),
            length(inelastic_to), moment(value)}});
    return;
  }
  const double value = 2.0 * stiff / in.length;
  lower(m, value,
        {"Mn = 2 E sqrt(J A) / (Lb/ry), as Lb > Lr = 2 E ry sqrt(J A) / (0.7 Fy S)",
         "Lb of {0} over Lr of {1} gives {2}",
         {length(in.length), length(inelastic_to), moment(value)}});
}

/// F7.
NominalMoment box_moment(const Box& box, const BendingInput& in) {
  const double web = (box.along - 3.0 * box.wall) / box.wall;
  const double most = kBoxWebSlender * std::sqrt(in.elastic / in.yield);
  if (web > most) {
    return outside(
        fmt::format("h/t of {:.0f} is over 5.70 sqrt(E/Fy) = {:.0f} (AISC 360-22 F7, "
                    "from memory)",
                    web, most));
  }
  NominalMoment m = plastic_moment(in.yield, box.moduli, "Mp = Fy Z");
  lower_for_flange(m, box, in);
  lower_for_web(m, box, in);
  lower_for_span(m, box, in);
  return m;
}

/// F11: `count` flat bars side by side, each `along` deep where it bends.
NominalMoment flat_moment(double along, double across, const Moduli& mod, const BendingInput& in) {
  NominalMoment m = plastic_moment(in.yield, mod, "Mp = Fy Z");
  if (!(along > across)) return m;
  const double slender = in.length * along / (across * across);
  const double relative = slender * in.yield / in.elastic;
  if (relative <= 0.08) return m;
  const double yields = in.yield * mod.elastic;
  if (relative <= 1.9) {
    const double value = (1.52 - 0.274 * relative) * yields;
    lower(m, value,
          {"Mn = (1.52 - 0.274 (Lb d/t^2) Fy/E) Fy S, as Lb d/t^2 > 0.08 E/Fy",
           "(1.52 - 0.274 * {0} * {1} / {2}^2 * {3} / {4}) * {5} = {6}",
           {length(in.length), length(along), length(across), stress(in.yield), stress(in.elastic),
            moment(yields), moment(value)}});
    return m;
  }
  const double value = 1.9 * in.elastic / slender * mod.elastic;
  lower(m, value,
        {"Mn = 1.9 E / (Lb d/t^2) S, as Lb d/t^2 > 1.9 E/Fy",
         "1.9 * {0} / ({1} * {2} / {3}^2) * {4} = {5}",
         {stress(in.elastic), length(in.length), length(along), length(across),
          modulus(mod.elastic), moment(value)}});
  return m;
}

NominalMoment round_bar(double yield, const Moduli& mod) {
  NominalMoment m = plastic_moment(yield, mod, "Mp = Fy Z");
  const double value = 1.6 * yield * mod.elastic;
  lower(m, value,
        {"at most 1.6 Fy S",
         "1.6 * {0} * {1} = {2}",
         {stress(yield), modulus(mod.elastic), moment(value)}});
  return m;
}

/// F2-2 to F2-4, the moment even all along.
void lower_for_channel_span(NominalMoment& m, const ChannelSpan& span, double over,
                            double plastic) {
  const ChannelLimits limits = channel_limits(span);
  if (over <= limits.plastic_to) return;
  const double start = kResidual * span.yield * span.modulus;
  if (over <= limits.inelastic_to) {
    const double share = (over - limits.plastic_to) / (limits.inelastic_to - limits.plastic_to);
    const double value = plastic - (plastic - start) * share;
    lower(m, value,
          {"Mn = Mp - (Mp - 0.7 Fy S) (Lb - Lp) / (Lr - Lp), as Lb > Lp = 1.76 ry sqrt(E/Fy) (F2)",
           "{0} - ({0} - {1}) * ({2} - {3}) / ({4} - {3}) = {5}",
           {moment(plastic), moment(start), length(over), length(limits.plastic_to),
            length(limits.inelastic_to), moment(value)}});
    return;
  }
  const double reach = over / effective_radius(span);
  const double lever = torsion_part(span);
  const double value = base::kPi * base::kPi * span.elastic / (reach * reach) *
                       std::sqrt(1.0 + 0.078 * lever * reach * reach) * span.modulus;
  lower(m, value,
        {"Mn = pi^2 E / (Lb/rts)^2 sqrt(1 + 0.078 J c / (S ho) (Lb/rts)^2) S, as Lb > Lr (F2-4)",
         "pi^2 * {0} / {1}^2 * sqrt(1 + 0.078 * {2} * {1}^2) * {3} = {4}",
         {stress(span.elastic), ratio(reach), ratio(lever), modulus(span.modulus), moment(value)}});
}

/// F10.2: an open section that gives sideways before it yields.
void lower_for_sideways(NominalMoment& m, const BendingInput& in, double elastic_modulus,
                        double other_inertia, double torsion, double asymmetry) {
  const double yields = in.yield * elastic_modulus;
  const double gives = sideways_moment(in.elastic, other_inertia, torsion, in.length, asymmetry);
  if (yields <= gives) {
    const double value = (1.92 - 1.17 * std::sqrt(yields / gives)) * yields;
    lower(m, value,
          {"Mn = (1.92 - 1.17 sqrt(My / Mcr)) My, Mcr where it gives sideways (F10-4), warping "
           "left out",
           "(1.92 - 1.17 * sqrt({0} / {1})) * {0} = {2}",
           {moment(yields), moment(gives), moment(value)}});
    return;
  }
  const double value = (0.92 - 0.17 * gives / yields) * gives;
  lower(m, value,
        {"Mn = (0.92 - 0.17 Mcr / My) Mcr, Mcr where it gives sideways (F10-4), warping left out",
         "(0.92 - 0.17 * {0} / {1}) * {0} = {2}",
         {moment(gives), moment(yields), moment(value)}});
}

/// F2, for the moment about its level axis, and the flanges' limits.
NominalMoment channel_upright(const sections::Channel& c, const sections::AreaProps& p,
                              const BendingInput& in) {
  const double root = std::sqrt(in.elastic / in.yield);
  const double flange = c.width / c.flange;
  const double web = (c.depth - 2.0 * c.flange) / c.web;
  if (flange > kFlangeYields * root || web > kWebCompact * root) {
    return outside(
        "a channel with walls that buckle before they yield in bending (AISC 360-22 table B4.1b, "
        "from memory)");
  }
  const ChannelSpan span{.elastic = in.elastic,
                         .yield = in.yield,
                         .other_radius = p.radius_z,
                         .other_inertia = p.izz,
                         .torsion = p.torsion,
                         .warping = channel_warping(c),
                         .modulus = p.modulus_y,
                         .between = c.depth - c.flange};
  NominalMoment m =
      flange <= kFlangeCompact * root
          ? plastic_moment(in.yield, {p.modulus_y, p.plastic_y}, "Mp = Fy Z")
          : first_yield(in.yield, p.modulus_y, "Mn = Fy S (first yield), as b/t > 0.38 sqrt(E/Fy)");
  lower_for_channel_span(m, span, in.length, in.yield * p.plastic_y);
  return m;
}

/// F6, for the moment about its upright axis.
NominalMoment channel_level(const sections::Channel& c, const sections::AreaProps& p,
                            const BendingInput& in) {
  const double root = std::sqrt(in.elastic / in.yield);
  const double flange = c.width / c.flange;
  if (flange > kFlangeSlender * root) {
    return outside("a channel with slender flanges (AISC 360-22 table B4.1b, from memory)");
  }
  NominalMoment m = plastic_moment(in.yield, {p.modulus_z, p.plastic_z}, "Mp = Fy Z");
  const double most = 1.6 * in.yield * p.modulus_z;
  lower(m, most,
        {"at most 1.6 Fy S",
         "1.6 * {0} * {1} = {2}",
         {stress(in.yield), modulus(p.modulus_z), moment(most)}});
  if (flange <= kFlangeCompact * root) return m;
  const double start = kResidual * in.yield * p.modulus_z;
  const double top = m.value;
  const double value =
      top - (top - start) * (flange / root - kFlangeCompact) / (kFlangeSlender - kFlangeCompact);
  lower(
      m, value,
      {"Mn = Mp - (Mp - 0.7 Fy S) (b/t - 0.38 sqrt(E/Fy)) / (0.62 sqrt(E/Fy)) (F6-2)",
       "{0} - ({0} - {1}) * ({2} / {3} - 0.38 * sqrt({4} / {5})) / (0.62 * sqrt({4} / {5})) = {6}",
       {moment(top), moment(start), length(c.width), length(c.flange), stress(in.elastic),
        stress(in.yield), moment(value)}});
  return m;
}

/// F10.3: first yield, or a leg that buckles before.
NominalMoment angle_moment(const sections::Angle& angle, double elastic_modulus,
                           const BendingInput& in) {
  NominalMoment m = first_yield(in.yield, elastic_modulus, "Mn = Fy S at most");
  const double leg = std::max(angle.depth, angle.width);
  const double wall = leg / angle.wall;
  const double root = std::sqrt(in.elastic / in.yield);
  if (wall <= kLegCompact * root) return m;
  if (wall <= kLegSlender * root) {
    const double value = (2.43 - 1.72 * wall / root) * in.yield * elastic_modulus;
    lower(m, value,
          {"Mn = (2.43 - 1.72 (b/t) sqrt(Fy/E)) Fy S, as b/t > 0.54 sqrt(E/Fy)",
           "(2.43 - 1.72 * {0} / {1} * sqrt({2} / {3})) * {2} * {4} = {5}",
           {length(leg), length(angle.wall), stress(in.yield), stress(in.elastic),
            modulus(elastic_modulus), moment(value)}});
    return m;
  }
  const double value = 0.71 * in.elastic / (wall * wall) * elastic_modulus;
  lower(m, value,
        {"Mn = 0.71 E / (b/t)^2 S, as b/t > 0.91 sqrt(E/Fy)",
         "0.71 * {0} / ({1} / {2})^2 * {3} = {4}",
         {stress(in.elastic), length(leg), length(angle.wall), modulus(elastic_modulus),
          moment(value)}});
  return m;
}

/// First yield, where neither the walls across the bending are slender as flanges nor those along
/// it as webs.
NominalMoment closed_walls(const std::vector<FlatWall>& flanges, const std::vector<FlatWall>& webs,
                           double elastic_modulus, const BendingInput& in) {
  const double root = std::sqrt(in.elastic / in.yield);
  const auto too_thin = [&](const std::vector<FlatWall>& walls, double limit) {
    return std::any_of(walls.begin(), walls.end(),
                       [&](const FlatWall& w) { return w.slenderness() > limit * root; });
  };
  if (too_thin(flanges, kBoxFlangeSlender) || too_thin(webs, kBoxWebSlender)) {
    return outside("a closed section with walls that buckle before they yield in bending");
  }
  return first_yield(in.yield, elastic_modulus, "Mn = Fy S (first yield)");
}

Box upright(const sections::RectangularTube& tube, const sections::AreaProps& p) {
  return {.along = tube.depth,
          .across = tube.width,
          .wall = tube.wall,
          .inertia = p.iyy,
          .area = p.area,
          .torsion = p.torsion,
          .other_radius = p.radius_z,
          .moduli = {p.modulus_y, p.plastic_y}};
}

Box level(const sections::RectangularTube& tube, const sections::AreaProps& p) {
  return {.along = tube.width,
          .across = tube.depth,
          .wall = tube.wall,
          .inertia = p.izz,
          .area = p.area,
          .torsion = p.torsion,
          .other_radius = p.radius_y,
          .moduli = {p.modulus_z, p.plastic_z}};
}

struct StrengthOf {
  const BendingInput& in;
  sections::AreaProps p;

  [[nodiscard]] Moduli about_y() const { return {p.modulus_y, p.plastic_y}; }
  [[nodiscard]] Moduli about_z() const { return {p.modulus_z, p.plastic_z}; }

  BendingStrength operator()(const sections::RoundBar& /*bar*/) const {
    return {round_bar(in.yield, about_y()), round_bar(in.yield, about_z())};
  }
  BendingStrength operator()(const sections::RoundTube& tube) const {
    return {round_tube(in, tube, about_y()), round_tube(in, tube, about_z())};
  }
  BendingStrength operator()(const sections::RectangularTube& tube) const {
    return {box_moment(upright(tube, p), in), box_moment(level(tube, p), in)};
  }
  BendingStrength operator()(const sections::FlatBar& bar) const {
    return {flat_moment(bar.depth, bar.width, about_y(), in),
            flat_moment(bar.width, bar.depth, about_z(), in)};
  }
  BendingStrength operator()(const sections::TwinPlate& plates) const {
    return {flat_moment(plates.depth, plates.thickness, about_y(), in),
            flat_moment(plates.thickness, plates.depth, about_z(), in)};
  }
  BendingStrength operator()(const sections::ByNumbers& /*numbers*/) const {
    return {first_yield(in.yield, p.modulus_y, "Mn = Fy S (first yield)"),
            first_yield(in.yield, p.modulus_z, "Mn = Fy S (first yield)")};
  }
  BendingStrength operator()(const sections::Channel& channel) const {
    return {channel_upright(channel, p, in), channel_level(channel, p, in)};
  }
  /// Sideways about the stronger axis alone (F10.2).
  BendingStrength operator()(const sections::Angle& angle) const {
    BendingStrength out{angle_moment(angle, p.modulus_y, in), angle_moment(angle, p.modulus_z, in)};
    if (p.iyy >= p.izz) {
      lower_for_sideways(out.y, in, p.modulus_y, p.izz, p.torsion, p.asymmetry_y);
    } else {
      lower_for_sideways(out.z, in, p.modulus_z, p.iyy, p.torsion, p.asymmetry_z);
    }
    return out;
  }
  BendingStrength operator()(const sections::BoxedChannel& /*boxed*/) const {
    const std::vector<FlatWall> walls = flat_walls(in.shape);
    const std::vector<FlatWall> flanges = {walls[0]};
    const std::vector<FlatWall> webs = {walls[1], walls[2]};
    return {closed_walls(flanges, webs, p.modulus_y, in),
            closed_walls(webs, flanges, p.modulus_z, in)};
  }
  BendingStrength operator()(const sections::ThinWalled& line) const {
    if (!line.closed) return open_walls();
    const std::vector<FlatWall> walls = flat_walls(in.shape);
    return {closed_walls(walls, {}, p.modulus_y, in), closed_walls(walls, {}, p.modulus_z, in)};
  }

 private:
  /// F12, about either axis.
  [[nodiscard]] BendingStrength open_walls() const {
    if (has_slender_wall(in.shape, in.elastic, in.yield)) {
      const NominalMoment thin =
          outside("an open section with walls that buckle before they yield in bending");
      return {thin, thin};
    }
    BendingStrength out{first_yield(in.yield, p.modulus_y, "Mn = Fy S (first yield)"),
                        first_yield(in.yield, p.modulus_z, "Mn = Fy S (first yield)")};
    lower_for_sideways(out.y, in, p.modulus_y, p.izz, p.torsion, p.asymmetry_y);
    lower_for_sideways(out.z, in, p.modulus_z, p.iyy, p.torsion, p.asymmetry_z);
    return out;
  }
};

}  // namespace

ChannelLimits channel_limits(const ChannelSpan& s) {
  const double part = torsion_part(s);
  const double residual = kResidual * s.yield / s.elastic;
  return {1.76 * s.other_radius * std::sqrt(s.elastic / s.yield),
          1.95 * effective_radius(s) / residual *
              std::sqrt(part + std::sqrt(part * part + 6.76 * residual * residual))};
}

double channel_warping(const sections::Channel& c) {
  const double high = c.depth - c.flange;
  const double wide = c.width - 0.5 * c.web;
  const double flange = wide * c.flange;
  const double web = high * c.web;
  return c.flange * std::pow(wide, 3) * high * high / 12.0 * (3.0 * flange + 2.0 * web) /
         (6.0 * flange + web);
}

double sideways_moment(double elastic, double other_inertia, double torsion, double length,
                       double asymmetry) {
  constexpr double kPoisson = 0.3;
  const double shear_modulus = elastic / (2.0 * (1.0 + kPoisson));
  const double bends = base::kPi * base::kPi * elastic * other_inertia / (length * length);
  const double half = 0.5 * std::abs(asymmetry);
  return bends * (std::sqrt(half * half + shear_modulus * torsion / bends) - half);
}

BendingStrength bending_strength(const BendingInput& input) {
  return std::visit(StrengthOf{input, sections::area_props(input.shape)}, input.shape);
}

}  // namespace checks
