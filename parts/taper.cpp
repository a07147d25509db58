#include "parts/taper.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "parts/section_fields.hpp"

namespace parts {
namespace {

constexpr double kGiveError = 0.005;
constexpr int kFewestPieces = 4;
constexpr int kMostPieces = 64;

/// Collects the sizes of a section: a visitor for `fields(visitor, shape)`.
struct Sizes {
  static constexpr std::size_t kMost = 16;
  std::array<double*, kMost> all{};
  std::size_t n = 0;

  explicit Sizes(sections::Shape& shape) {
    std::visit([this](auto& s) { fields(*this, s); }, shape);
  }
  void quantity(const FieldInfo&, double& value, const Quantity&) {
    INVARIANT(n < kMost);
    all[n++] = &value;
  }
  template <class T>
  void outline(const FieldInfo&, const T&) {}
  template <class T>
  void lengths(const FieldInfo&, const T&) {}
  void flag(const FieldInfo&, bool) {}
};

}  // namespace

Taper::Taper(const sections::Shape& shape, double poisson)
    : from_(shape), to_(shape), poisson_(poisson) {}

Taper::Taper(const sections::Shape& from, const sections::Shape& to, double poisson)
    : from_(from), to_(to), poisson_(poisson), pieces_(kFewestPieces) {
  INVARIANT(same_kind(from, to));
  const auto far_apart = [&](int n) {
    const std::vector<double> coarse = gives(n / 2);
    const std::vector<double> fine = gives(n);
    for (std::size_t i = 0; i < fine.size(); ++i) {
      if (std::abs(coarse[i] / fine[i] - 1.0) > kGiveError) return true;
    }
    return false;
  };
  while (pieces_ < kMostPieces && far_apart(pieces_)) pieces_ *= 2;
}

/// Of n pieces: along, in twist, and in bending both ways from either end, per E and G and length.
std::vector<double> Taper::gives(int n) const {
  std::vector<double> sum(6, 0.0);
  for (int i = 0; i < n; ++i) {
    const double a = static_cast<double>(i) / n;
    const double b = static_cast<double>(i + 1) / n;
    const sections::AreaProps s = props(0.5 * (a + b));
    const double from_start = (b * b * b - a * a * a) / 3.0;
    const double from_end = (std::pow(1.0 - a, 3) - std::pow(1.0 - b, 3)) / 3.0;
    const double all[] = {(b - a) / s.area, (b - a) / s.torsion, from_start / s.iyy,
                          from_end / s.iyy, from_start / s.izz,  from_end / s.izz};
    for (std::size_t k = 0; k < sum.size(); ++k) sum[k] += all[k];
  }
  return sum;
}

sections::Shape Taper::shape(double part) const {
  return between(from_, to_, part);
}

namespace {

/// Corner by corner.
sections::ThinWalled between_lines(const sections::ThinWalled& from, const sections::ThinWalled& to,
                                   double part) {
  sections::ThinWalled out = from;
  for (std::size_t i = 0; i < out.points.size(); ++i) {
    for (std::size_t k = 0; k < 2; ++k) {
      out.points[i][k] += part * (to.points[i][k] - from.points[i][k]);
    }
  }
  for (std::size_t i = 0; i < out.walls.size(); ++i) {
    out.walls[i] += part * (to.walls[i] - from.walls[i]);
  }
  return out;
}

}  // namespace

sections::Shape between(const sections::Shape& from, const sections::Shape& to, double part) {
  if (const auto* line = std::get_if<sections::ThinWalled>(&from)) {
    return between_lines(*line, std::get<sections::ThinWalled>(to), part);
  }
  sections::Shape out = from;
  sections::Shape end = to;
  const Sizes sizes(out);
  const Sizes ends(end);
  for (std::size_t i = 0; i < sizes.n; ++i) {
    *sizes.all[i] = (1.0 - part) * *sizes.all[i] + part * *ends.all[i];
  }
  return out;
}

sections::AreaProps Taper::props(double part) const {
  return sections::area_props(shape(part), poisson_);
}

std::string Taper::note() const {
  return fmt::format(
      "tapered: {} pieces to a straight, whose give is within {:g} % of that of half "
      "as many",
      pieces_, 100.0 * kGiveError);
}

bool changes_evenly(const sections::Shape& a, const sections::Shape& b) {
  const auto* one = std::get_if<sections::ThinWalled>(&a);
  const auto* other = std::get_if<sections::ThinWalled>(&b);
  if (one == nullptr || other == nullptr) return same_kind(a, b);
  return one->points.size() == other->points.size() && one->walls.size() == other->walls.size() &&
         one->closed == other->closed;
}

bool same_kind(const sections::Shape& a, const sections::Shape& b) {
  // Where the walls of a section are drawn, which corner goes where is not told.
  return a.index() == b.index() && !std::holds_alternative<sections::ThinWalled>(a);
}

}  // namespace parts
