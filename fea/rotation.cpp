#include "fea/rotation.hpp"

#include <cmath>

#include <Eigen/Geometry>

#include "fea/geometric_stiffness.hpp"

namespace fea {
namespace {

constexpr double kSmall = 0.3;  // below it, series: the closed forms lose digits  [rad]

/// A map I + a S(t) + b S(t)^2 whose a and b depend on |t|; slopes are da/d|t| / |t|.
struct Coefficients {
  double a;
  double b;
  double a_slope;
  double b_slope;
};

/// c0 + c1 s + ... + c4 s^4.
double series(double s, double c0, double c1, double c2, double c3, double c4) {
  return c0 + s * (c1 + s * (c2 + s * (c3 + s * c4)));
}

Coefficients of_spin_map(double t) {
  const double s = t * t;
  if (t < kSmall) {
    return {
        .a = series(s, 1.0 / 2.0, -1.0 / 24.0, 1.0 / 720.0, -1.0 / 40320.0, 1.0 / 3628800.0),
        .b = series(s, 1.0 / 6.0, -1.0 / 120.0, 1.0 / 5040.0, -1.0 / 362880.0, 1.0 / 39916800.0),
        .a_slope = series(s, -1.0 / 12.0, 1.0 / 180.0, -1.0 / 6720.0, 1.0 / 453600.0, 0.0),
        .b_slope = series(s, -1.0 / 60.0, 1.0 / 1260.0, -1.0 / 60480.0, 1.0 / 4989600.0, 0.0)};
  }
  const double versine = 1.0 - std::cos(t);
  const double rest = t - std::sin(t);
  return {.a = versine / s,
          .b = rest / (s * t),
          .a_slope = (t * std::sin(t) - 2.0 * versine) / (s * s),
          .b_slope = (t * versine - 3.0 * rest) / (s * s * t)};
}

Coefficients of_inverse(double t) {
  const double s = t * t;
  if (t < kSmall) {
    return {
        .a = -0.5,
        .b = series(s, 1.0 / 12.0, 1.0 / 720.0, 1.0 / 30240.0, 1.0 / 1209600.0, 1.0 / 47900160.0),
        .a_slope = 0.0,
        .b_slope = series(s, 1.0 / 360.0, 1.0 / 7560.0, 1.0 / 201600.0, 1.0 / 5987520.0, 0.0)};
  }
  const double sine = std::sin(0.5 * t);
  const double c = 0.5 * t * std::cos(0.5 * t) / sine;
  const double c_slope = (std::sin(t) - t) / (4.0 * sine * sine);
  return {.a = -0.5,
          .b = (1.0 - c) / s,
          .a_slope = 0.0,
          .b_slope = (-c_slope * t - 2.0 * (1.0 - c)) / (s * s)};
}

Matrix3 map(const Vector3& vector, const Coefficients& k) {
  const Matrix3 s = skew(vector);
  return Matrix3::Identity() + k.a * s + k.b * s * s;
}

/// d(map' m) / dt, where map' m = m - a t x m + b t x (t x m).
Matrix3 slope(const Vector3& t, const Vector3& m, const Coefficients& k) {
  const Vector3 once = t.cross(m);
  const Vector3 twice = t.cross(once);
  return k.a * skew(m) - k.a_slope * once * t.transpose() +
         k.b * (t.dot(m) * Matrix3::Identity() + t * m.transpose() - 2.0 * m * t.transpose()) +
         k.b_slope * twice * t.transpose();
}

}  // namespace

Matrix3 rotation_of(const Vector3& vector) {
  const double t = vector.norm();
  const Matrix3 s = skew(vector);
  // sin t / t = 1 - b t^2.
  const Coefficients k = of_spin_map(t);
  return Matrix3::Identity() + (1.0 - k.b * t * t) * s + k.a * s * s;
}

Vector3 rotation_vector(const Matrix3& rotation) {
  const Eigen::Quaterniond q(rotation);
  const double half_sine = q.vec().norm();
  if (half_sine == 0.0) return Vector3::Zero();
  const double angle = 2.0 * std::atan2(half_sine, std::abs(q.w()));
  return (q.w() < 0.0 ? -angle : angle) / half_sine * q.vec();
}

Matrix3 without_drift(const Matrix3& rotation) {
  return Eigen::Quaterniond(rotation).normalized().toRotationMatrix();
}

Matrix3 spin_map(const Vector3& vector) {
  return map(vector, of_spin_map(vector.norm()));
}

Matrix3 inverse_spin_map(const Vector3& vector) {
  return map(vector, of_inverse(vector.norm()));
}

Matrix3 spin_map_slope(const Vector3& vector, const Vector3& moment) {
  return slope(vector, moment, of_spin_map(vector.norm()));
}

Matrix3 inverse_spin_map_slope(const Vector3& vector, const Vector3& moment) {
  return slope(vector, moment, of_inverse(vector.norm()));
}

}  // namespace fea
