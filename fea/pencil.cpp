#include "fea/pencil.hpp"

#include <Eigen/Eigenvalues>

namespace fea {

Pencil::Pencil(const System& system, const Sparse& geometric)
    : system_(system),
      geometric_(geometric),
      inverse_roots_(system.factor().pivots().cwiseSqrt().cwiseInverse()) {}

Eigen::VectorXd Pencil::apply(const Eigen::VectorXd& y) const {
  Eigen::VectorXd out(size());
  apply(y, out);
  return out;
}

void Pencil::apply(const Eigen::VectorXd& y, Eigen::VectorXd& out) const {
  motion_ = y.cwiseProduct(inverse_roots_);
  system_.factor().solve_upper_in_place(motion_);
  apply_to_scaled(out);
}

void Pencil::apply_to_motion(const Eigen::VectorXd& motion, Eigen::VectorXd& out) const {
  motion_.resize(size());
  system_.to_scaled_motion(motion, motion_);
  out.resize(size());
  apply_to_scaled(out);
}

void Pencil::apply_to_scaled(Eigen::VectorXd& out) const {
  out.setZero();
  subtract_product(geometric_, motion_, out);
  system_.factor().solve_lower_in_place(out);
  out.array() *= inverse_roots_.array();
}

Eigen::VectorXd Pencil::motion(const Eigen::VectorXd& y) const {
  motion_ = y.cwiseProduct(inverse_roots_);
  system_.factor().solve_upper_in_place(motion_);
  return system_.from_scaled_motion(motion_);
}

std::vector<EigenPair> all_pairs(const Pencil& pencil) {
  const Eigen::Index n = pencil.size();
  Eigen::MatrixXd c(n, n);
  for (Eigen::Index i = 0; i < n; ++i) c.col(i) = pencil.apply(Eigen::VectorXd::Unit(n, i));
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(0.5 * (c + c.transpose()));
  std::vector<EigenPair> pairs;
  for (Eigen::Index i = 0; i < n; ++i) {
    pairs.push_back({solver.eigenvalues()(i), solver.eigenvectors().col(i)});
  }
  return pairs;
}

}  // namespace fea
