#include "fea/model_check.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Eigenvalues>
#include <fmt/format.h>

#include "base/input_error.hpp"
#include "base/invariant.hpp"
#include "fea/labels.hpp"

namespace fea {
namespace {

constexpr double kSamePoint = 1.0e-6;  // two points of a spring may differ by rounding  [m]

/// @param key  gives the name of what is wrong; asked only then
template <class Key>
void require(bool condition, const Key& key, const char* problem) {
  if (!condition) throw base::InputError(key(), problem);
}

bool positive(double value) {
  return value > 0.0 && std::isfinite(value);
}

bool square_axes(const Matrix3& axes) {
  return axes.allFinite() && (axes.transpose() * axes - Matrix3::Identity()).norm() < 1.0e-9 &&
         axes.determinant() > 0.0;
}

template <class Key>
void require_end(const Model& model, const BeamEnd& end, const Key& key) {
  INVARIANT(end.node.index >= 0 && static_cast<std::size_t>(end.node.index) < model.nodes.size());
  require(end.offset_g.allFinite(), key, "an end offset is not a finite number");
  if (!end.joint) return;
  require(square_axes(end.joint->axes_g), key,
          "the joint's axes are not three right-handed unit vectors square to each other");
  for (const double stiffness : end.joint->stiffness) {
    require(stiffness >= 0.0, key, "a joint stiffness is not 0 or more");
  }
}

void require_beam(const Model& model, BeamId id) {
  const Beam& beam = model[id];
  const auto key = [&] { return label(model, id); };
  require_end(model, beam.a, key);
  require_end(model, beam.b, key);
  const sections::AreaProps& s = beam.section;
  require(positive(s.area), key, "the area is not a positive number");
  require(positive(s.iyy) && positive(s.izz), key, "a second moment is not a positive number");
  require(positive(s.torsion), key, "the torsion constant is not a positive number");
  require(positive(s.polar), key, "the polar second moment is not a positive number");
  require(s.shear_y > 0.0 && s.shear_z > 0.0, key, "a shear area is not positive");
  require(positive(beam.elastic.young), key, "Young's modulus is not a positive number");
  require(positive(beam.elastic.shear), key, "the shear modulus is not a positive number");
  require(!(beam.density < 0.0) && !std::isinf(beam.density), key, "the density is not 0 or more");
  if (beam.taper) {
    const TaperGive& give = *beam.taper;
    const auto bends = [](const std::array<double, 3>& of_plane) {
      return positive(of_plane[0]) && positive(of_plane[1]) &&
             positive(of_plane[0] * of_plane[2] - of_plane[1] * of_plane[1]);
    };
    require(positive(give.along) && positive(give.twist) && bends(give.bend_y) &&
                bends(give.bend_z) && give.shear_y >= 0.0 && give.shear_z >= 0.0,
            key, "what it gives as it tapers is not what a bar gives");
  }
  require(!beam.z_toward_g || beam.z_toward_g->allFinite(), key, "its z direction is not finite");
}

void require_station(const Model& model, BeamId id, double at) {
  const double span = length(model, model[id]);
  if (!(at >= -1.0e-9 * span && at <= (1.0 + 1.0e-9) * span)) {
    throw base::InputError(
        label(model, id),
        fmt::format("a load at {} m is not on the beam, which is {} m long", at, span));
  }
}

void require_move(const Model& model, const SupportMove& move) {
  constexpr const char* kFreedoms[] = {"along x", "along y", "along z",
                                       "about x", "about y", "about z"};
  const auto key = [&] { return label(model, move.node); };
  require(move.by_g.allFinite(), key, "how far it is moved is not a finite number");
  for (Eigen::Index i = 0; i < 6; ++i) {
    const auto holds = [&](const Support& s) {
      return s.node == move.node && s.held[static_cast<std::size_t>(i)];
    };
    if (move.by_g(i) == 0.0 || std::any_of(model.supports.begin(), model.supports.end(), holds)) {
      continue;
    }
    throw base::InputError(key(),
                           fmt::format("it is moved {}, where no support holds it", kFreedoms[i]));
  }
}

}  // namespace

void require_valid(const Model& model, SpringId id) {
  const Spring& spring = model[id];
  const auto key = [&] { return label(model, id); };
  const Matrix6& k = spring.stiffness;
  require(k.allFinite(), key, "a stiffness is not a finite number");
  require(spring.preload.allFinite(), key, "its preload is not a finite number");
  const double size = k.cwiseAbs().maxCoeff();
  require((k - k.transpose()).cwiseAbs().maxCoeff() <= 1.0e-9 * size, key,
          "the stiffness is not symmetric");
  // Scaled by the diagonal, so that m and rad can be judged together.
  const Vector6 scale =
      k.diagonal().unaryExpr([](double d) { return d > 0.0 ? 1.0 / std::sqrt(d) : 1.0; });
  const Matrix6 scaled = scale.asDiagonal() * k * scale.asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Matrix6> modes(scaled, Eigen::EigenvaluesOnly);
  require(modes.eigenvalues().minCoeff() >= -1.0e-9, key,
          "the stiffness is negative in some direction");
  require(square_axes(spring.axes_g), key,
          "its axes are not three right-handed unit vectors square to each other");
  require(spring.offset_a_g.allFinite() && spring.offset_b_g.allFinite(), key,
          "an offset is not a finite number");
  if (!spring.b) return;
  const Vector3 apart =
      model[spring.a].at_g + spring.offset_a_g - (model[*spring.b].at_g + spring.offset_b_g);
  require(apart.norm() <= kSamePoint, key, "its two points are not at the same place");
}

void require_valid(const Model& model, GapId id) {
  const Gap& gap = model[id];
  const auto key = [&] { return label(model, id); };
  require(gap.a.node || gap.b.node, key, "both of its points are fixed to the ground");
  require(gap.a.at_g.allFinite() && gap.b.at_g.allFinite(), key, "a point is not a finite number");
  require(std::isfinite(gap.stiffness) && gap.stiffness != 0.0, key,
          "its stiffness in contact is no number, or zero");
  require(gap.clearance >= 0.0 && std::isfinite(gap.clearance), key,
          "its clearance is not 0 or more");
  if (gap.axis_g) {
    require(gap.axis_g->allFinite() && gap.axis_g->norm() > 0.0, key, "its axis has no direction");
  } else {
    require((gap.b.at_g - gap.a.at_g).norm() > kSamePoint, key,
            "its points are at the same place; give the axis it is measured along");
  }
}

void require_valid(const Model& model) {
  require(
      !model.nodes.empty(), [] { return std::string("model"); }, "has no points");
  for (int i = 0; i < static_cast<int>(model.nodes.size()); ++i) {
    require(
        model[NodeId{i}].at_g.allFinite(), [&] { return label(model, NodeId{i}); },
        "its position is not a finite number");
  }
  for (int i = 0; i < static_cast<int>(model.beams.size()); ++i) require_beam(model, BeamId{i});
  for (int i = 0; i < static_cast<int>(model.springs.size()); ++i) {
    require_valid(model, SpringId{i});
  }
  for (int i = 0; i < static_cast<int>(model.gaps.size()); ++i) require_valid(model, GapId{i});
}

void require_valid(const Model& model, const Loads& loads) {
  for (const NodeLoad& load : loads.nodes) {
    require(
        load.offset_g.allFinite() && load.force_g.allFinite() && load.moment_g.allFinite(),
        [&] { return label(model, load.node); }, "a load on it is not a finite number");
  }
  for (const BeamPointLoad& load : loads.points) {
    require(
        load.force_g.allFinite() && load.moment_g.allFinite(),
        [&] { return label(model, load.beam); }, "a load on it is not a finite number");
    require_station(model, load.beam, load.at);
  }
  for (const BeamLineLoad& load : loads.lines) {
    const auto key = [&] { return label(model, load.beam); };
    require(load.at_from_g.allFinite() && load.at_to_g.allFinite(), key,
            "a load on it is not a finite number");
    require_station(model, load.beam, load.from);
    if (std::isnan(load.to)) continue;
    require_station(model, load.beam, load.to);
    require(load.to >= load.from, key, "a line load ends before it begins");
  }
  for (const BeamStrain& strain : loads.strains) {
    require(
        std::isfinite(strain.stretch) && std::isfinite(strain.bend_y) &&
            std::isfinite(strain.bend_z),
        [&] { return label(model, strain.beam); }, "a strain of it is not a finite number");
  }
  for (const SupportMove& move : loads.moves) require_move(model, move);
  require(
      loads.gravity_g.allFinite(), [] { return std::string("model"); },
      "its gravity is not a finite number");
}

}  // namespace fea
