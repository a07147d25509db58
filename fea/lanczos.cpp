#include "fea/lanczos.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>

#include <Spectra/SymEigsSolver.h>

namespace fea {
namespace {

constexpr Eigen::Index kMostRestarts = 300;
constexpr Eigen::Index kLongest = 40;    // of the basis without restarts
constexpr Eigen::Index kFirstLook = 10;  // at whether the pairs have settled
constexpr double kCancelled = 0.1;     // of the length: rounding is no longer small beside the rest
constexpr double kRestarted = 1.0e-4;  // of the residual: restarts pay for accuracy with little
constexpr double kLarge = 1.0e100;
constexpr double kSmall = 1.0e-2;     // of the norm: below it a mu is as good as this one
constexpr double kUnseen = 5.0e-2;    // of a mu: a basis from a given start may not see one so near
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
  Basis(const Deflated& c, const PairsWanted& wanted, LanczosMemory& memory)
      : c_(c),
        wanted_(wanted),
        m_(memory),
        longest_(std::min(kLongest, c.size())),
        norm_(c.norm_of_known()) {
    m_.basis.resize(c.size(), longest_ + 1);
    m_.diagonal.resize(longest_);
    m_.beside.resize(longest_);
    m_.next.resize(c.size());
  }

  /// Starts in the range of C: what it does not move is never looked at.
  /// @return whether C does anything
  bool start() {
    m_.here.resize(c_.size());
    if (wanted_.start != nullptr) {
      m_.next = *wanted_.start;
    } else {
      spread();
      c_.apply(m_.start, m_.next);
    }
    const double length = m_.next.norm();
    if (!(length > kNothing * norm_)) return false;
    m_.basis.col(0) = m_.next / length;
    return true;
  }

  /// One vector more.
  void extend() {
    m_.here = m_.basis.col(size_);
    c_.apply(m_.here, m_.next);
    const double length = m_.next.norm();
    double& diagonal = m_.diagonal(size_);
    diagonal = take_out();
    double& beside = m_.beside(size_);
    beside = m_.next.norm();
    if (beside < kCancelled * length) {
      diagonal += take_out();
      beside = m_.next.norm();
    }
    norm_ = std::max({norm_, std::abs(diagonal), beside});
    exhausted_ = !(beside > kNothing * norm_);
    if (!exhausted_) m_.basis.col(size_ + 1) = m_.next / beside;
    ++size_;
  }

  /// Looks at T.
  void look() {
    m_.ritz.computeFromTridiagonal(m_.diagonal.head(size_), m_.beside.head(size_ - 1),
                                   Eigen::EigenvaluesOnly);
    const Eigen::VectorXd& mu = m_.ritz.eigenvalues();
    norm_ = std::max({norm_, std::abs(mu(0)), std::abs(mu(size_ - 1))});
  }
  /// How far the largest values of T looked at last are from being pairs of C to the tolerance, and
  /// the smallest: 1 or less when they are.
  [[nodiscard]] double unsettled_largest() const {
    return unsettled(size_ - wanted_.n_largest, size_);
  }
  [[nodiscard]] double unsettled_smallest() const { return unsettled(0, wanted_.n_smallest); }
  /// The k-th largest of those looked at last.
  [[nodiscard]] EigenPair pair(Eigen::Index k) const {
    EigenPair out{m_.ritz.eigenvalues()(size_ - 1 - k), {}};
    out.vector.noalias() = m_.basis.leftCols(size_) * vector_of_t(out.mu);
    out.vector.normalize();
    return out;
  }

  [[nodiscard]] Eigen::Index size() const { return size_; }
  [[nodiscard]] double norm() const { return norm_; }
  [[nodiscard]] bool exhausted() const { return exhausted_; }
  [[nodiscard]] bool full() const { return size_ == longest_; }

 private:
  /// A start spread over all directions, and the same every time.
  void spread() {
    if (m_.start.size() == c_.size()) return;
    m_.start.resize(c_.size());
    for (Eigen::Index i = 0; i < c_.size(); ++i) {
      m_.start(i) = std::sin(1.0 + 2.3 * static_cast<double>(i));
    }
    m_.start.normalize();
  }

  /// Of the values from `begin` to before `end`.
  [[nodiscard]] double unsettled(Eigen::Index begin, Eigen::Index end) const {
    if (exhausted_ || begin == end) return 0.0;
    if (size_ <= end - begin) return std::numeric_limits<double>::infinity();
    const Eigen::VectorXd& mu = m_.ritz.eigenvalues();
    double worst = 0.0;
    for (Eigen::Index k = begin; k < end; ++k) {
      const double size = std::max(std::abs(mu(k)), kSmall * norm_);
      double apart = wanted_.start != nullptr ? kUnseen * size : kLarge;
      if (k > 0) apart = std::min(apart, mu(k) - mu(k - 1));
      if (k + 1 < size_) apart = std::min(apart, mu(k + 1) - mu(k));
      // Near another the error is the residual itself, else its square over the distance.
      const double allowed =
          std::min(std::sqrt(wanted_.tolerance) * size,
                   std::max(std::sqrt(wanted_.tolerance * size * apart), wanted_.tolerance * size));
      worst =
          std::max(worst, m_.beside(size_ - 1) * std::abs(vector_of_t(mu(k))(size_ - 1)) / allowed);
    }
    return worst;
  }

  /// Makes the next vector square to the basis.
  /// @return its part along the last of the basis
  double take_out() {
    const auto basis = m_.basis.leftCols(size_ + 1);
    auto parts = m_.here.head(size_ + 1);
    parts.noalias() = basis.transpose() * m_.next;
    m_.next.noalias() -= basis * parts;
    return parts(size_);
  }

  /// The unit vector of T that belongs to mu: by T's rows from the first one down and from the last
  /// one up, each as far as the vector grows; they meet where the product of the two is largest.
  /// Source: Parlett and Dhillon, Linear Algebra and its Applications 267 (1997), 247 (from
  /// memory).
  [[nodiscard]] Eigen::VectorXd vector_of_t(double mu) const {
    const Eigen::Index last = size_ - 1;
    Eigen::VectorXd down = Eigen::VectorXd::Ones(size_);
    Eigen::VectorXd up = down;
    for (Eigen::Index i = 0; i < last; ++i) {
      const double behind = i > 0 ? m_.beside(i - 1) * down(i - 1) : 0.0;
      down(i + 1) = ((mu - m_.diagonal(i)) * down(i) - behind) / m_.beside(i);
      if (std::abs(down(i + 1)) > kLarge) down.head(i + 2) /= kLarge;
    }
    for (Eigen::Index i = last; i > 0; --i) {
      const double behind = i < last ? m_.beside(i) * up(i + 1) : 0.0;
      up(i - 1) = ((mu - m_.diagonal(i)) * up(i) - behind) / m_.beside(i - 1);
      if (std::abs(up(i - 1)) > kLarge) up.tail(size_ - i + 1) /= kLarge;
    }
    Eigen::Index meet = 0;
    down.cwiseProduct(up).cwiseAbs().maxCoeff(&meet);
    down.tail(last - meet) = up.tail(last - meet) * (down(meet) / up(meet));
    return down.normalized();
  }

  const Deflated& c_;
  const PairsWanted& wanted_;
  LanczosMemory& m_;
  Eigen::Index longest_;
  double norm_;
  Eigen::Index size_ = 0;
  bool exhausted_ = false;
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

EndPairs restarted(const Deflated& c, double norm, Eigen::Index count, double tolerance) {
  Shifted op(c, norm);
  const Eigen::Index wanted = std::min(count, c.size() - 1);
  const Eigen::Index basis = std::min(c.size(), std::max<Eigen::Index>(2 * wanted + 12, 24));
  EndPairs out;
  out.norm = norm;
  try {
    Spectra::SymEigsSolver<Shifted> solver(op, wanted, basis);
    solver.init();
    solver.compute(Spectra::SortRule::LargestAlge, kMostRestarts, tolerance);
    const Eigen::VectorXd values = solver.eigenvalues();
    const Eigen::MatrixXd vectors = solver.eigenvectors();
    for (Eigen::Index i = 0; i < values.size(); ++i) {
      out.largest.push_back({(values(i) - 1.0) * norm, vectors.col(i).normalized()});
    }
    out.all = solver.info() == Spectra::CompInfo::Successful;
  } catch (const std::runtime_error&) {
    out.largest.clear();  // its tridiagonal step did not converge: nothing was found
  }
  return out;
}

/// Vectors to add before it pays to look again: a digit takes about three, or two from a start near
/// what is looked for, and a look costs as much as a vector.
Eigen::Index steps_to_go(double unsettled, bool started) {
  const double digits = std::log10(std::max(unsettled, 1.0));
  const double steps = (started ? 2.0 : 3.0) * digits;
  return std::isfinite(digits) ? std::max<Eigen::Index>(2, static_cast<Eigen::Index>(steps)) : 2;
}

}  // namespace

EndPairs end_pairs(const Pencil& pencil, const std::vector<EigenPair>& known,
                   const PairsWanted& wanted, LanczosMemory& memory) {
  const Deflated c(pencil, known);
  Basis basis(c, wanted, memory);
  EndPairs out;
  out.all = !basis.start();
  out.norm = basis.norm();
  if (out.all) return out;
  bool largest_settled = false;
  bool smallest_settled = false;
  Eigen::Index next_look =
      wanted.start == nullptr ? kFirstLook : wanted.n_largest + wanted.n_smallest + 2;
  while (!(largest_settled && smallest_settled) && !basis.full() && !basis.exhausted()) {
    basis.extend();
    if (basis.size() < next_look && !basis.exhausted() && !basis.full()) continue;
    basis.look();
    const double largest = basis.unsettled_largest();
    const double smallest = basis.unsettled_smallest();
    largest_settled = largest <= 1.0;
    smallest_settled = smallest <= 1.0;
    next_look = basis.size() + steps_to_go(std::max(largest, smallest), wanted.start != nullptr);
  }
  out.norm = basis.norm();
  if (smallest_settled) {
    for (Eigen::Index k = 1; k <= std::min(wanted.n_smallest, basis.size()); ++k) {
      out.smallest.push_back(basis.pair(basis.size() - k));
    }
  }
  if (largest_settled) {
    const Eigen::Index found = basis.exhausted() ? basis.size() : wanted.n_largest;
    for (Eigen::Index k = 0; k < found; ++k) out.largest.push_back(basis.pair(k));
    out.all = found >= wanted.n_largest;
  } else if (wanted.start == nullptr) {
    const std::vector<EigenPair> smallest = std::move(out.smallest);
    out =
        restarted(c, out.norm, wanted.n_largest, std::min(std::sqrt(wanted.tolerance), kRestarted));
    out.smallest = smallest;
  }
  return out;
}

}  // namespace fea
