#include "fea/beam_element.hpp"

#include <array>
#include <cmath>

namespace fea {
namespace {

double phi(double bending, double shear, double length) {
  return std::isinf(shear) ? 0.0 : 12.0 * bending / (shear * length * length);
}

/// Deflection (first row) and section rotation (second row) at x from deflection and rotation at
/// the two ends, in one plane with rotation = + d(deflection)/dx where there is no shear.
Eigen::Matrix<double, 2, 4> plane_shape(double phi, double length, double x) {
  const double s = x / length;
  const double s2 = s * s;
  const double s3 = s2 * s;
  Eigen::Matrix<double, 2, 4> out;
  out << 1.0 - 3.0 * s2 + 2.0 * s3 + phi * (1.0 - s),
      length * (s - 2.0 * s2 + s3 + 0.5 * phi * (s - s2)), 3.0 * s2 - 2.0 * s3 + phi * s,
      length * (s3 - s2 + 0.5 * phi * (s2 - s)), 6.0 * (s2 - s) / length,
      1.0 - 4.0 * s + 3.0 * s2 + phi * (1.0 - s), 6.0 * (s - s2) / length,
      3.0 * s2 - 2.0 * s + phi * s;
  return out / (1.0 + phi);
}

/// 4 x 4 bending stiffness of one plane, order as in plane_shape.
Eigen::Matrix4d plane_stiffness(double bending, double phi, double length) {
  const double a = 12.0 / (length * length);
  const double b = 6.0 / length;
  const double c = 4.0 + phi;
  const double d = 2.0 - phi;
  Eigen::Matrix4d k;
  k << a, b, -a, b, b, c, -b, d, -a, -b, a, -b, b, d, -b, c;
  return k * (bending / (length * (1.0 + phi)));
}

/// The same from what the plane gives as a cantilever held at end b: a force and a moment at end a.
/// @param bend   integrals of x^k dx / (E I)
/// @param shear  of dx / (G As)
Eigen::Matrix4d plane_stiffness(const std::array<double, 3>& bend, double shear, double length) {
  const double sway = bend[2] + shear;
  const double both = sway * bend[0] - bend[1] * bend[1];
  const Eigen::Matrix2d held =
      (Eigen::Matrix2d() << bend[0], bend[1], bend[1], sway).finished() / both;
  Eigen::Matrix<double, 2, 4> apart;  // of end a from where end b takes it
  apart << 1.0, 0.0, -1.0, length, 0.0, 1.0, 0.0, -1.0;
  return apart.transpose() * held * apart;
}

constexpr std::array<int, 4> kPlaneXy = {1, 5, 7, 11};  // v, rz
constexpr std::array<int, 4> kPlaneXz = {2, 4, 8, 10};  // w, ry

/// ry = -dw/dx: the rotation in the xz plane is minus the rotation about y.
const Eigen::Vector4d kTurned(1.0, -1.0, 1.0, -1.0);

}  // namespace

ShearFlex shear_flex(const sections::AreaProps& section, const Elastic& elastic, double length) {
  return {.xy = phi(elastic.young * section.izz, elastic.shear * section.shear_y, length),
          .xz = phi(elastic.young * section.iyy, elastic.shear * section.shear_z, length)};
}

Matrix12 beam_stiffness(const sections::AreaProps& section, const Elastic& elastic, double length) {
  const ShearFlex flex = shear_flex(section, elastic, length);
  Matrix12 k = Matrix12::Zero();
  const Eigen::Matrix2d pair = (Eigen::Matrix2d() << 1.0, -1.0, -1.0, 1.0).finished();
  k(std::array{0, 6}, std::array{0, 6}) = pair * (elastic.young * section.area / length);
  k(std::array{3, 9}, std::array{3, 9}) = pair * (elastic.shear * section.torsion / length);
  k(kPlaneXy, kPlaneXy) = plane_stiffness(elastic.young * section.izz, flex.xy, length);
  k(kPlaneXz, kPlaneXz) = kTurned.asDiagonal() *
                          plane_stiffness(elastic.young * section.iyy, flex.xz, length) *
                          kTurned.asDiagonal();
  return k;
}

Matrix12 beam_stiffness(const TaperGive& give, const Elastic& elastic, double length) {
  const auto bending = [&](std::array<double, 3> bend) {
    for (double& integral : bend) integral /= elastic.young;
    return bend;
  };
  Matrix12 k = Matrix12::Zero();
  const Eigen::Matrix2d pair = (Eigen::Matrix2d() << 1.0, -1.0, -1.0, 1.0).finished();
  k(std::array{0, 6}, std::array{0, 6}) = pair * (elastic.young / give.along);
  k(std::array{3, 9}, std::array{3, 9}) = pair * (elastic.shear / give.twist);
  k(kPlaneXy, kPlaneXy) =
      plane_stiffness(bending(give.bend_z), give.shear_y / elastic.shear, length);
  k(kPlaneXz, kPlaneXz) =
      kTurned.asDiagonal() *
      plane_stiffness(bending(give.bend_y), give.shear_z / elastic.shear, length) *
      kTurned.asDiagonal();
  return k;
}

Vector12 beam_elastic_force(const Matrix12& stiffness, const Vector12& motion) {
  Vector12 out;
  for (const Eigen::Index k : {0, 3}) {
    out(k) = stiffness(k, k) * (motion(k) - motion(k + 6));
    out(k + 6) = -out(k);
  }
  const auto bend = [&](Eigen::Index v, Eigen::Index r) {
    const double apart = motion(v) - motion(v + 6);
    const auto on = [&](Eigen::Index row) {
      return stiffness(row, v) * apart + stiffness(row, r) * motion(r) +
             stiffness(row, r + 6) * motion(r + 6);
    };
    out(v) = on(v);
    out(v + 6) = -out(v);
    out(r) = on(r);
    out(r + 6) = on(r + 6);
  };
  bend(1, 5);
  bend(2, 4);
  return out;
}

Eigen::Matrix<double, 6, 12> beam_shape(const ShearFlex& flex, double length, double x) {
  Eigen::Matrix<double, 6, 12> out = Eigen::Matrix<double, 6, 12>::Zero();
  const double s = x / length;
  out(0, 0) = out(3, 3) = 1.0 - s;
  out(0, 6) = out(3, 9) = s;
  out(std::array{1, 5}, kPlaneXy) = plane_shape(flex.xy, length, x);
  out(std::array{2, 4}, kPlaneXz) = Eigen::Vector2d(1.0, -1.0).asDiagonal() *
                                    plane_shape(flex.xz, length, x) * kTurned.asDiagonal();
  return out;
}

Eigen::Vector2d beam_bow(const ShearFlex& flex, double length, const Eigen::Vector2d& about_y,
                         const Eigen::Vector2d& about_z, double x) {
  const double s = x / length;
  const double t = 1.0 - s;
  const auto bow = [&](double phi, const Eigen::Vector2d& turns) {
    return length * s * t / (1.0 + phi) * ((t + 0.5 * phi) * turns(0) - (s + 0.5 * phi) * turns(1));
  };
  // ry = -dw/dx.
  return {bow(flex.xy, about_z), -bow(flex.xz, about_y)};
}

Vector12 equivalent_of_point(const ShearFlex& flex, double length, double at,
                             const Vector3& force_l, const Vector3& moment_l) {
  Vector6 wrench;
  wrench << force_l, moment_l;
  return beam_shape(flex, length, at).transpose() * wrench;
}

Vector12 equivalent_of_line(const ShearFlex& flex, double length, double from, double to,
                            const Vector3& at_from_l, const Vector3& at_to_l) {
  // Three Gauss points integrate degree 5; shape (3) times load (1) is degree 4.
  const double outer = std::sqrt(0.6);
  const std::array<double, 3> points = {-outer, 0.0, outer};
  const std::array<double, 3> weights = {5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};
  Vector12 sum = Vector12::Zero();
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double t = 0.5 * (1.0 + points[i]);
    const Vector3 force = 0.5 * weights[i] * (to - from) * ((1.0 - t) * at_from_l + t * at_to_l);
    sum += equivalent_of_point(flex, length, from + t * (to - from), force, Vector3::Zero());
  }
  return sum;
}

Vector12 equivalent_of_strain(const sections::AreaProps& section, const Elastic& elastic,
                              double stretch, double bend_y, double bend_z) {
  const Vector3 resultants(section.area * stretch, section.iyy * bend_y, section.izz * bend_z);
  Vector12 out = Vector12::Zero();
  out(std::array{6, 10, 11}) = elastic.young * resultants;
  out(std::array{0, 4, 5}) = -elastic.young * resultants;
  return out;
}

}  // namespace fea
