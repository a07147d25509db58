#pragma once

#include <array>
#include <vector>

#include "sections/remembered.hpp"
#include "sections/wall_line.hpp"

/// What the properties and the stresses of thin-walled shapes share; not for use outside this
/// folder.
namespace sections {

/// Integrals over an area about the axes they are taken in.
struct AreaIntegrals {
  double area = 0.0;
  double sy = 0.0;   ///< integral z dA  [m^3]
  double sz = 0.0;   ///< integral y dA  [m^3]
  double iyy = 0.0;  ///< integral z^2 dA  [m^4]
  double izz = 0.0;  ///< integral y^2 dA  [m^4]
  double iyz = 0.0;  ///< integral y z dA  [m^4]
};

/// A wall in the principal axes through the centroid, with the shear flow of a force of one along
/// each axis, positive along the wall.
struct FlowWall {
  Point start;      ///< of the middle line  [m]
  Point direction;  ///< unit vector
  double length = 0.0;
  double thickness = 0.0;
  WallCorners corners;
  std::array<double, 2> flow_start = {0.0, 0.0};  ///< of forces along y and z, at the start  [1/m]
  /// Normal stress grows along the member by load . (distance from `pole`).
  std::array<Point, 2> load = {};
  Point pole = {0.0, 0.0};  ///< centroid of the middle lines

  /// @param axis  0: of a force along y, 1: along z
  [[nodiscard]] double flow(std::size_t axis, double along) const;  ///< [1/m]
  [[nodiscard]] Point at(double along) const;
};

/// A line of thin walls about its principal axes.
class ThinWall {
 public:
  explicit ThinWall(const WallLine& line);

  [[nodiscard]] double area() const { return drawn_.area; }
  [[nodiscard]] double iyy() const { return iyy_; }
  [[nodiscard]] double izz() const { return izz_; }
  [[nodiscard]] const AreaIntegrals& drawn() const { return drawn_; }  ///< about the centroid
  [[nodiscard]] const Point& centroid() const { return centroid_; }    ///< axes as drawn
  [[nodiscard]] double axes_angle() const { return angle_; }
  [[nodiscard]] const std::vector<FlowWall>& walls() const { return walls_; }
  [[nodiscard]] const Point& shear_center() const { return shear_center_; }
  [[nodiscard]] double torsion() const { return torsion_; }
  /// Bredt's shear flow for a torque of one; 0 in an open line.  [1/m^2]
  [[nodiscard]] double torsion_flow() const { return torsion_flow_; }
  /// Farthest fiber along y and along z.  [m]
  [[nodiscard]] std::array<double, 2> reach() const;
  /// For Vy and Vz, by the energy of the shear flow.  [m^2]
  [[nodiscard]] std::array<double, 2> shear_areas() const;
  /// @param axis  0: of bending along y (Mz), 1: along z (My)
  [[nodiscard]] double plastic_modulus(std::size_t axis) const;
  /// Of the middle lines: integral r (y^2 + z^2) dA / integral r^2 dA, r along the axis, less twice
  /// the shear center.  [m]
  /// @param axis  0: along y, 1: along z
  [[nodiscard]] double asymmetry(std::size_t axis) const;

 private:
  void turn_to_principal_axes(const WallLine& line, const std::vector<WallCorners>& corners);
  void find_flows(bool closed);
  void find_torsion(bool closed);
  [[nodiscard]] double halving_level(std::size_t axis) const;  ///< [m]
  /// Area and first moment of what lies above a level along an axis.
  [[nodiscard]] std::array<double, 2> above(std::size_t axis, double level) const;

  AreaIntegrals drawn_;
  Point centroid_ = {0.0, 0.0};
  double angle_ = 0.0;
  double iyy_ = 0.0;
  double izz_ = 0.0;
  std::vector<FlowWall> walls_;
  Point shear_center_ = {0.0, 0.0};
  double torsion_ = 0.0;
  double torsion_flow_ = 0.0;
};

/// The walls of a shape, and what comes of them.
struct WalledSection {
  WallLine line;
  ThinWall section;
};
/// Of a channel, an angle, a boxed channel or walls in a line; those of this thread's last shapes
/// are remembered, since each is asked for at one place after another.
/// @return good until the next call
template <class Walled>
[[nodiscard]] const WalledSection& walled_section(const Walled& shape) {
  thread_local Remembered<Walled, WalledSection> remembered;
  return remembered(shape, [&shape] {
    WallLine line = wall_line(shape);
    ThinWall section(line);
    return WalledSection{std::move(line), std::move(section)};
  });
}

}  // namespace sections
