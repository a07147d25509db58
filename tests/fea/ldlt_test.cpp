// L D L' by fronts against dense matrices drawn by lot, and blocks of a beam's matrices against the
// congruence that defines them. Invented numbers.

#include "fea/ldlt.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>
#include <catch2/catch.hpp>

#include "fea/stress_state.hpp"
#include "fea/system.hpp"
#include "tests/fea/random_frame.hpp"

namespace ldlt_test {

namespace {

/// Symmetric, in blocks of up to `widest` unknowns that are joined by lot; some of it indefinite.
Eigen::MatrixXd drawn(fea_test::Lot& lot, int n, int widest, double joined) {
  Eigen::MatrixXd out = Eigen::MatrixXd::Zero(n, n);
  std::vector<int> begin;
  for (int at = 0; at < n;) {
    begin.push_back(at);
    at += 1 + static_cast<int>(lot.between(0.0, widest));
  }
  begin.push_back(n);
  for (std::size_t a = 0; a + 1 < begin.size(); ++a) {
    for (std::size_t b = 0; b <= a; ++b) {
      if (a != b && lot.between(0.0, 1.0) > joined) continue;
      for (int i = begin[a]; i < begin[a + 1]; ++i) {
        for (int j = begin[b]; j < std::min(i, begin[b + 1]); ++j)
          out(i, j) = lot.between(-1.0, 1.0);
      }
    }
  }
  for (int i = 0; i < n; ++i) out(i, i) = lot.between(-0.4, 1.0) * (2.0 + 0.3 * n);
  return out.selfadjointView<Eigen::Lower>();
}

fea::Sparse lower_of(const Eigen::MatrixXd& full) {
  std::vector<Eigen::Triplet<double>> entries;
  for (int i = 0; i < full.rows(); ++i) {
    for (int j = 0; j <= i; ++j) {
      if (i == j || full(i, j) != 0.0) entries.emplace_back(i, j, full(i, j));
    }
  }
  fea::Sparse out(full.rows(), full.rows());
  out.setFromTriplets(entries.begin(), entries.end());
  return out;
}

}  // namespace

TEST_CASE("a factor solves for what a dense one does, and counts negative eigenvalues",
          "[fea][factor]") {
  fea_test::Lot lot(5);
  for (int trial = 0; trial < 200; ++trial) {
    const int n = 1 + static_cast<int>(lot.between(0.0, 70.0));
    const int widest = 1 + static_cast<int>(lot.between(0.0, 19.0));
    const double joined = lot.between(0.0, 0.5);
    const Eigen::MatrixXd full = drawn(lot, n, widest, joined);
    INFO("trial " << trial << ", n " << n);
    const fea::Sparse lower = lower_of(full);
    fea::Ldlt factor(lower);
    // A second one in the same memory is not touched by the first.
    const fea::Sparse twice = 2.0 * lower;
    REQUIRE(factor.factorize(twice.valuePtr()));
    REQUIRE(factor.factorize(lower.valuePtr()));
    Eigen::VectorXd force(n);
    for (double& value : force) value = lot.between(-1.0, 1.0);
    const Eigen::VectorXd x = factor.solve(force);
    CHECK((full * x - force).norm() <= 1e-9 * full.norm() * x.norm());
    Eigen::VectorXd halves = force;
    factor.solve_lower_in_place(halves);
    halves.array() /= factor.pivots().array();
    factor.solve_upper_in_place(halves);
    CHECK((halves - x).norm() <= 1e-12 * x.norm());
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> modes(full, Eigen::EigenvaluesOnly);
    CHECK((factor.pivots().array() < 0.0).count() == (modes.eigenvalues().array() < 0.0).count());
  }
}

TEST_CASE("a pivot that is zero or no number leaves no factor", "[fea][factor]") {
  Eigen::MatrixXd full(3, 3);
  full << 2.0, 1.0, 0.0, 1.0, 0.5, 0.0, 0.0, 0.0, 1.0;
  const fea::Sparse singular = lower_of(full);
  fea::Ldlt factor(singular);
  CHECK_FALSE(factor.factorize(singular.valuePtr()));
  full(1, 1) = std::nan("");
  const fea::Sparse unset = lower_of(full);
  CHECK_FALSE(factor.factorize(unset.valuePtr()));
  full(1, 1) = 3.0;
  const fea::Sparse good = lower_of(full);
  CHECK(factor.factorize(good.valuePtr()));
}

}  // namespace ldlt_test
