#include "cases/shape_numbers.hpp"

#include <cmath>
#include <variant>
#include <vector>

namespace cases {
namespace {

struct Numbers {
  std::vector<double> all;
  void quantity(const parts::FieldInfo&, double& value, const parts::Quantity&) {
    all.push_back(value);
  }
};

std::vector<double> numbers(sections::Shape shape) {
  Numbers visitor;
  std::visit([&](auto& s) { parts::fields(visitor, s); }, shape);
  return visitor.all;
}

}  // namespace

bool same_shape(const sections::Shape& a, const sections::Shape& b) {
  if (a.index() != b.index()) return false;
  const std::vector<double> left = numbers(a);
  const std::vector<double> right = numbers(b);
  for (std::size_t i = 0; i < left.size(); ++i) {
    const bool both_unset = std::isnan(left[i]) && std::isnan(right[i]);
    if (left[i] != right[i] && !both_unset) return false;
  }
  return true;
}

}  // namespace cases
