#include "fea/lanczos.hpp"

#include <algorithm>
#include <stdexcept>

#include <Spectra/SymEigsSolver.h>

namespace fea {
namespace {

constexpr Eigen::Index kMostRestarts = 300;

/// C / norm + 1, with what is known taken out. The shift moves the many mu = 0 of a pencil whose
/// Kg is not of full rank away from zero, where a relative tolerance cannot be met.
class Operator {
 public:
  using Scalar = double;

  Operator(const Pencil& pencil, double norm, const std::vector<EigenPair>& known)
      : pencil_(pencil), norm_(norm), known_(known), in_(pencil.size()), out_(pencil.size()) {}

  [[nodiscard]] Eigen::Index rows() const { return pencil_.size(); }
  [[nodiscard]] Eigen::Index cols() const { return pencil_.size(); }

  void perform_op(const double* in, double* out) const {
    in_ = Eigen::Map<const Eigen::VectorXd>(in, rows());
    pencil_.apply(in_, out_);
    out_ = out_ / norm_ + in_;
    for (const EigenPair& pair : known_) {
      out_ -= (pair.mu / norm_ + 1.0) * pair.vector.dot(in_) * pair.vector;
    }
    Eigen::Map<Eigen::VectorXd>(out, rows()) = out_;
  }

 private:
  const Pencil& pencil_;
  double norm_;
  const std::vector<EigenPair>& known_;
  mutable Eigen::VectorXd in_;
  mutable Eigen::VectorXd out_;
};

}  // namespace

LargestPairs largest_pairs(const Pencil& pencil, double norm, const std::vector<EigenPair>& known,
                           Eigen::Index count, double tolerance) {
  Operator op(pencil, norm, known);
  const Eigen::Index basis = std::min(pencil.size(), std::max<Eigen::Index>(2 * count + 12, 24));
  LargestPairs out;
  try {
    Spectra::SymEigsSolver<Operator> solver(op, count, basis);
    solver.init();
    solver.compute(Spectra::SortRule::LargestAlge, kMostRestarts, tolerance);
    const Eigen::VectorXd values = solver.eigenvalues();
    const Eigen::MatrixXd vectors = solver.eigenvectors();
    for (Eigen::Index i = 0; i < values.size(); ++i) {
      out.pairs.push_back({(values(i) - 1.0) * norm, vectors.col(i).normalized()});
    }
    out.all = solver.info() == Spectra::CompInfo::Successful;
  } catch (const std::runtime_error&) {
    return {};  // its tridiagonal step did not converge: nothing was found
  }
  return out;
}

}  // namespace fea
