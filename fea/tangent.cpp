#include "fea/tangent.hpp"

namespace fea {
namespace {

constexpr double kTrusted = 1.0e-14;  // a pivot nearer to zero may have either sign

}  // namespace

Tangent::Tangent(const System& system)
    : system_(system),
      values_(system.scaled_values().size()),
      factor_(system.factor().empty_like()) {}

std::optional<int> Tangent::n_negative(const Eigen::Ref<const Eigen::VectorXd>& geometric,
                                       double factor) {
  values_ = system_.scaled_values() + factor * geometric;
  if (!factor_.factorize(values_.data())) return std::nullopt;
  const Eigen::VectorXd& pivots = factor_.pivots();
  if (pivots.cwiseAbs().minCoeff() < kTrusted) return std::nullopt;
  return static_cast<int>((pivots.array() < 0.0).count());
}

}  // namespace fea
