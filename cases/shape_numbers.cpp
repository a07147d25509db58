#include "cases/shape_numbers.hpp"

#include <array>
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
  void outline(const parts::FieldInfo&, std::vector<std::array<double, 2>>& points) {
    for (const auto& point : points) all.insert(all.end(), point.begin(), point.end());
  }
  void lengths(const parts::FieldInfo&, std::vector<double>& values) {
    all.insert(all.end(), values.begin(), values.end());
  }
  void flag(const parts::FieldInfo&, bool& value) { all.push_back(value ? 1.0 : 0.0); }
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
  if (left.size() != right.size()) return false;
  for (std::size_t i = 0; i < left.size(); ++i) {
    const bool both_unset = std::isnan(left[i]) && std::isnan(right[i]);
    if (left[i] != right[i] && !both_unset) return false;
  }
  return true;
}

}  // namespace cases
