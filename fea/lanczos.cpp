#include "fea/lanczos.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <Eigen/Eigenvalues>
#include <Spectra/SymEigsSolver.h>

namespace fea {
namespace {

constexpr Eigen::Index kMostRestarts = 300;
constexpr Eigen::Index kLongest = 40;    // of the basis without restarts
constexpr Eigen::Index kFirstLook = 12;  // at whether the pairs have settled
constexpr Eigen::Index kLookEvery = 4;
constexpr double kNothing = 1.0e-13;  // of the norm: no direction is left

/// C with what is known taken out.
class Deflated {
 public:
  Deflated(const Pencil& pencil, const std::vector<EigenPair>& known)
      : pencil_(pencil), known_(known) {}

  [[nodiscard]] Eigen::Index size() const { return pencil_.size(); }
  [[nodiscard]] double norm_of_known() const {
    double norm = 0.0;
    for (const EigenPair& pair : known_) norm = std::max(norm, std::abs(pair.mu));
    return norm;
  }
  void apply(const Eigen::VectorXd& y, Eigen::VectorXd& out) const {
    pencil_.apply(y, out);
    for (const EigenPair& pair : known_) out -= pair.mu * pair.vector.dot(y) * pair.vector;
  }

 private:
  const Pencil& pencil_;
  const std::vector<EigenPair>& known_;
};

/// C Q = Q T + beta q e', T tridiagonal.
class Basis {
 public:
  explicit Basis(const Deflated& c)
      : c_(c),
        longest_(std::min(kLongest, c.size())),
        q_(c.size(), longest_ + 1),
        diagonal_(longest_),
        beside_(longest_),
        norm_(c.norm_of_known()),
        next_(c.size()) {}

  /// Starts in the range of C: what it does not move is never looked at.
  /// @return whether C does anything
  bool start() {
    // Spread over all directions, and the same every time.
    Eigen::VectorXd y(c_.size());
    for (Eigen::Index i = 0; i < y.size(); ++i) y(i) = std::sin(1.0 + 2.3 * static_cast<double>(i));
    c_.apply(y.normalized(), next_);
    const double length = next_.norm();
    if (!(length > kNothing * norm_)) return false;
    q_.col(0) = next_ / length;
    return true;
  }

  /// One vector more.
  void extend() {
    here_ = q_.col(size_);
    c_.apply(here_, next_);
    diagonal_(size_) = next_.dot(here_);
    next_ -= diagonal_(size_) * here_;
    if (size_ > 0) next_ -= beside_(size_ - 1) * q_.col(size_ - 1);
    const auto basis = q_.leftCols(size_ + 1);
    next_ -= basis * (basis.transpose() * next_);
    beside_(size_) = next_.norm();
    norm_ = std::max({norm_, std::abs(diagonal_(size_)), beside_(size_)});
    exhausted_ = !(beside_(size_) > kNothing * norm_);
    if (!exhausted_) q_.col(size_ + 1) = next_ / beside_(size_);
    ++size_;
  }

  /// The pairs of T: values ascending.
  void look() {
    ritz_.computeFromTridiagonal(diagonal_.head(size_), beside_.head(size_ - 1));
    norm_ = std::max(norm_, ritz_.eigenvalues().cwiseAbs().maxCoeff());
  }
  /// |C y - mu y| of the k-th largest pair looked at, relative to the norm.
  [[nodiscard]] double residual(Eigen::Index k) const {
    return exhausted_
               ? 0.0
               : std::abs(beside_(size_ - 1) * ritz_.eigenvectors()(size_ - 1, size_ - 1 - k)) /
                     norm_;
  }
  [[nodiscard]] bool settled(Eigen::Index count, double tolerance) const {
    for (Eigen::Index k = 0; k < std::min(count, size_); ++k) {
      if (residual(k) > tolerance) return false;
    }
    return size_ >= count || exhausted_;
  }
  [[nodiscard]] EigenPair pair(Eigen::Index k) const {
    const Eigen::Index column = size_ - 1 - k;
    return {ritz_.eigenvalues()(column),
            (q_.leftCols(size_) * ritz_.eigenvectors().col(column)).normalized()};
  }

  [[nodiscard]] Eigen::Index size() const { return size_; }
  [[nodiscard]] double norm() const { return norm_; }
  [[nodiscard]] bool exhausted() const { return exhausted_; }
  [[nodiscard]] bool full() const { return size_ == longest_; }

 private:
  const Deflated& c_;
  Eigen::Index longest_;
  Eigen::MatrixXd q_;
  Eigen::VectorXd diagonal_;
  Eigen::VectorXd beside_;
  double norm_;
  Eigen::Index size_ = 0;
  bool exhausted_ = false;
  Eigen::VectorXd here_;
  Eigen::VectorXd next_;
  Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> ritz_;
};

/// C / norm + 1. The shift moves the many mu = 0 of a pencil whose Kg is not of full rank away from
/// zero, where a relative tolerance cannot be met.
class Shifted {
 public:
  using Scalar = double;

  Shifted(const Deflated& c, double norm) : c_(c), norm_(norm), in_(c.size()), out_(c.size()) {}

  [[nodiscard]] Eigen::Index rows() const { return c_.size(); }
  [[nodiscard]] Eigen::Index cols() const { return c_.size(); }

  void perform_op(const double* in, double* out) const {
    in_ = Eigen::Map<const Eigen::VectorXd>(in, rows());
    c_.apply(in_, out_);
    Eigen::Map<Eigen::VectorXd>(out, rows()) = out_ / norm_ + in_;
  }

 private:
  const Deflated& c_;
  double norm_;
  mutable Eigen::VectorXd in_;
  mutable Eigen::VectorXd out_;
};

LargestPairs restarted(const Deflated& c, double norm, Eigen::Index count, double tolerance) {
  Shifted op(c, norm);
  const Eigen::Index wanted = std::min(count, c.size() - 1);
  const Eigen::Index basis = std::min(c.size(), std::max<Eigen::Index>(2 * wanted + 12, 24));
  LargestPairs out;
  out.norm = norm;
  try {
    Spectra::SymEigsSolver<Shifted> solver(op, wanted, basis);
    solver.init();
    solver.compute(Spectra::SortRule::LargestAlge, kMostRestarts, tolerance);
    const Eigen::VectorXd values = solver.eigenvalues();
    const Eigen::MatrixXd vectors = solver.eigenvectors();
    for (Eigen::Index i = 0; i < values.size(); ++i) {
      out.pairs.push_back({(values(i) - 1.0) * norm, vectors.col(i).normalized()});
    }
    out.all = solver.info() == Spectra::CompInfo::Successful;
  } catch (const std::runtime_error&) {
    out.pairs.clear();  // its tridiagonal step did not converge: nothing was found
  }
  return out;
}

}  // namespace

LargestPairs largest_pairs(const Pencil& pencil, const std::vector<EigenPair>& known,
                           Eigen::Index count, double tolerance) {
  const Deflated c(pencil, known);
  Basis basis(c);
  LargestPairs out;
  out.all = !basis.start();
  out.norm = basis.norm();
  if (out.all) return out;
  bool settled = false;
  while (!settled && !basis.full()) {
    basis.extend();
    const bool due = basis.size() >= kFirstLook && (basis.size() - kFirstLook) % kLookEvery == 0;
    if (!due && !basis.exhausted() && !basis.full()) continue;
    basis.look();
    settled = basis.settled(count, tolerance);
    if (basis.exhausted()) break;
  }
  out.norm = basis.norm();
  if (!settled) return restarted(c, out.norm, count, tolerance);
  const Eigen::Index found = basis.exhausted() ? basis.size() : count;
  for (Eigen::Index k = 0; k < found; ++k) out.pairs.push_back(basis.pair(k));
  out.all = found >= count;
  return out;
}

}  // namespace fea
