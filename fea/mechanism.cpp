#include "fea/mechanism.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include <Eigen/Dense>

namespace fea {
namespace {

constexpr double kNil = 1.0e-12;    // Rayleigh quotient of a free motion; rounding leaves 1e-15
constexpr double kShift = 1.0e-13;  // makes a singular matrix factorable
constexpr double kSound = 1.0e-14;  // pivots below this are not trusted
constexpr int kSweeps = 5;
constexpr Eigen::Index kMostMotions = 12;

/// Fixed pseudo-random numbers in (-1, 1): the same answer every time, everywhere.
Eigen::MatrixXd scattered(Eigen::Index rows, Eigen::Index columns) {
  std::uint32_t state = 2463534242U;
  Eigen::MatrixXd out(rows, columns);
  for (double& value : out.reshaped()) {
    state ^= state << 13U;
    state ^= state >> 17U;
    state ^= state << 5U;
    value = static_cast<double>(state) / 2147483648.0 - 1.0;
  }
  return out;
}

/// x'Kx / x'x of the scaled matrix.
double rayleigh(const System& system, const Eigen::VectorXd& x) {
  const Eigen::VectorXd kx = system.scaled().selfadjointView<Eigen::Lower>() * x;
  double energy = 0.0;
  double size = 0.0;
  for (Eigen::Index i = 0; i < x.size(); ++i) {
    energy += x(i) * kx(i);
    size += x(i) * x(i);
  }
  return energy / size;
}

bool sound(const System& system) {
  if (!system.factored()) return false;
  const Eigen::VectorXd& pivots = system.factor().pivots();
  return std::all_of(pivots.begin(), pivots.end(),
                     [](double pivot) { return std::isfinite(pivot) && pivot > kSound; });
}

/// Whether inverse iteration on the sound factor finds no motion below kNil.
bool stiff(const System& system) {
  const Eigen::VectorXd x = softest(system);
  return x.allFinite() && rayleigh(system, x) > kNil;
}

/// The whole model displaced along or turned about an axis through `center_g`; supports hold.
Eigen::VectorXd rigid(const System& system, const Vector3& center_g, Eigen::Index which) {
  Vector6 body = Vector6::Zero();
  body(which) = 1.0;
  Eigen::VectorXd motion = Eigen::VectorXd::Zero(system.n_unknowns());
  for (int i = 0; i < static_cast<int>(system.model().nodes.size()); ++i) {
    motion.segment<6>(first_unknown({i})) =
        carried(system.model()[NodeId{i}].at_g - center_g) * body;
  }
  for (std::size_t b = 0; b < system.beams().size(); ++b) {
    const BeamPart& part = system.beams()[b];
    for (const EndPart& end : part.ends) {
      const Vector6 moved = end_motion(end, motion).near_g;
      for (std::size_t k = 0; k < end.n_loose; ++k) {
        const EndPart::Loose& loose = end.loose[k];
        motion(end.first_of_joint + static_cast<Eigen::Index>(k)) =
            loose.axis_g.dot(loose.turns ? moved.tail<3>() : moved.head<3>());
      }
    }
  }
  return system.from_scaled_motion(system.to_scaled_motion(motion));
}

/// The first support's point, or the first node where nothing is held.
Vector3 center_of(const Model& model) {
  const NodeId node = model.supports.empty() ? NodeId{0} : model.supports.front().node;
  return model[node].at_g;
}

/// A motion of the model as one rigid body, as the plainest thing to say.
std::optional<Eigen::VectorXd> free_body(const System& system) {
  const Vector3 center_g = center_of(system.model());
  for (Eigen::Index which = 0; which < 6; ++which) {
    const Eigen::VectorXd motion = rigid(system, center_g, which);
    const Eigen::VectorXd scaled = system.to_scaled_motion(motion);
    if (scaled.squaredNorm() > 0.0 && rayleigh(system, scaled) < kNil) return motion;
  }
  return std::nullopt;
}

/// Orthonormal basis (columns) of the free motions, by inverse iteration on a block of vectors.
Eigen::MatrixXd null_basis(const System& system) {
  const Eigen::Index n = system.n_free();
  Sparse shifted = system.scaled();
  for (int i = 0; i < n; ++i) shifted.coeffRef(i, i) += kShift;
  Ldlt factor = system.factor();
  factor.factorize(shifted.valuePtr());
  Eigen::MatrixXd block = scattered(n, std::min(n, kMostMotions));
  const auto orthonormal = [&block] {
    const Eigen::HouseholderQR<Eigen::MatrixXd> qr(block);
    block = qr.householderQ() * Eigen::MatrixXd::Identity(block.rows(), block.cols());
  };
  for (int i = 0; i < kSweeps; ++i) {
    for (auto column : block.colwise()) column = factor.solve(column);
    orthonormal();
  }
  const Eigen::MatrixXd k_block = system.scaled().selfadjointView<Eigen::Lower>() * block;
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> ritz(block.transpose() * k_block);
  const auto n_nil = static_cast<Eigen::Index>((ritz.eigenvalues().array() < kNil).count());
  return block * ritz.eigenvectors().leftCols(n_nil);
}

/// Of all free motions the one that is most nearly a single freedom: a mixture of several
/// mechanisms is hard to read.
Eigen::VectorXd plainest(const Eigen::MatrixXd& basis) {
  const Eigen::VectorXd share = basis.rowwise().squaredNorm();
  Eigen::Index freedom = 0;
  // A little tolerance, so that rounding does not choose among equals.
  const double best = share.maxCoeff() * (1.0 - 1.0e-6);
  while (share(freedom) < best) ++freedom;
  return basis * basis.row(freedom).transpose();
}

}  // namespace

Eigen::VectorXd softest(const System& system) {
  Eigen::VectorXd x = scattered(system.n_free(), 1);
  for (int i = 0; i < kSweeps; ++i) {
    system.factor().solve_in_place(x);
    x.normalize();
  }
  return x;
}

std::optional<Mechanism> mechanism_of(const System& system, const System* held) {
  if (system.n_free() == 0) return std::nullopt;
  // What is held by fewer springs is held by more.
  const bool is_held = held != nullptr && system.only_adds_springs_to(*held);
  if (sound(system) && (is_held || stiff(system))) return std::nullopt;
  if (const std::optional<Eigen::VectorXd> motion = free_body(system)) {
    return describe(system, *motion);
  }
  const Eigen::MatrixXd basis = null_basis(system);
  if (basis.cols() == 0) return std::nullopt;
  return describe(system, system.from_scaled_motion(plainest(basis)));
}

std::optional<Mechanism> find_mechanism(const Model& model) {
  return mechanism_of(System(model));
}

}  // namespace fea
