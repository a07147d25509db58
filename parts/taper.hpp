#pragma once

#include <string>
#include <vector>

#include "sections/area_props.hpp"
#include "sections/shape.hpp"

namespace parts {

/// The section of a bar along its length: the same, or with every size changing evenly.
class Taper {
 public:
  Taper(const sections::Shape& shape, double poisson);
  /// As many equal pieces, each with the section of its middle, as give under every kind of load at
  /// either end by less than 0.5 % other than half as many.
  /// @param to  of the same kind as `from`
  Taper(const sections::Shape& from, const sections::Shape& to, double poisson);

  /// @param part  of the length, 0 to 1
  [[nodiscard]] sections::Shape shape(double part) const;
  [[nodiscard]] sections::AreaProps props(double part) const;
  [[nodiscard]] int pieces() const { return pieces_; }
  /// "tapered: 8 pieces a straight, whose give is within 0.5 % of half as many".
  [[nodiscard]] std::string note() const;

 private:
  [[nodiscard]] std::vector<double> gives(int n) const;

  sections::Shape from_;
  sections::Shape to_;
  double poisson_;
  int pieces_ = 1;
};

/// The section between two that change evenly, every size of them, or every corner of their walls.
/// @param part  0 = `from`, 1 = `to`
[[nodiscard]] sections::Shape between(const sections::Shape& from, const sections::Shape& to,
                                      double part);

/// Whether one goes over into the other size by size, or corner by corner.
[[nodiscard]] bool changes_evenly(const sections::Shape& a, const sections::Shape& b);

/// Whether two sections are of one kind, so that a bar can go from one to the other.
[[nodiscard]] bool same_kind(const sections::Shape& a, const sections::Shape& b);

}  // namespace parts
