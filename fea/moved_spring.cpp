#include "fea/moved_spring.hpp"

#include <Eigen/Geometry>

#include "fea/geometric_stiffness.hpp"
#include "fea/rotation.hpp"

namespace fea {
namespace {

using Matrix3x12 = Eigen::Matrix<double, 3, 12>;

/// Where a point carried by a body is, relative to its reference place.
Vector3 shifted(const Placed& body, const Vector3& arm_g) {
  return body.displacement_g + (body.turn_g - Matrix3::Identity()) * arm_g;
}

/// The straight line between a gap's points, or the axis it is measured along.
struct Line {
  Vector3 near_arm_g;  // from node a, reference
  Vector3 far_arm_g;   // from node b, reference
  Vector3 apart_g;     // near point to far point, reference
};

Vector3 arm_of(const Model& model, const GapEnd& end) {
  return end.node ? Vector3(end.at_g - model[*end.node].at_g) : Vector3(Vector3::Zero());
}

Line line_of(const Model& model, const Gap& gap) {
  return {.near_arm_g = arm_of(model, gap.a),
          .far_arm_g = arm_of(model, gap.b),
          .apart_g = gap.b.at_g - gap.a.at_g};
}

/// +1 when lengthening closes the gap.
double sense(const Gap& gap) {
  return gap.contact == Gap::Contact::when_longer ? 1.0 : -1.0;
}

/// Lengthening of the line, or of the distance along the axis.
struct Lengthening {
  double value;
  double length;        // now; unused along an axis
  Vector3 direction_g;  // now, from a to b
  Vector3 apart_g;      // now
};

Lengthening lengthening(const Gap& gap, const Line& line, const Placed& a, const Placed& b) {
  const Vector3 more = shifted(b, line.far_arm_g) - shifted(a, line.near_arm_g);
  Lengthening out;
  out.apart_g = line.apart_g + more;
  out.length = out.apart_g.norm();
  if (gap.axis_g) {
    const Vector3 axis = gap.axis_g->normalized();
    out.direction_g = a.turn_g * axis;
    out.value = out.direction_g.dot(more) + (out.direction_g - axis).dot(line.apart_g);
    return out;
  }
  out.direction_g = out.apart_g / out.length;
  out.value = more.dot(2.0 * line.apart_g + more) / (out.length + line.apart_g.norm());
  return out;
}

}  // namespace

PairForce pair_force(const PairLaw& law, const Placed& near, const Placed& far) {
  const Matrix3 axes = near.turn_g * law.axes_g;
  const Vector3 more = shifted(far, law.far_arm_g) - shifted(near, law.near_arm_g);
  const Vector3 far_arm = far.turn_g * law.far_arm_g;
  const Vector3 near_arm = near.turn_g * law.near_arm_g + law.apart_g + more;  // to the far point
  const Vector3 turn =
      law.axes_g.transpose() * rotation_vector(near.turn_g.transpose() * far.turn_g);
  const Matrix3 inverse = inverse_spin_map(turn);

  Vector6 g;
  g << axes.transpose() * (law.apart_g + more) - law.axes_g.transpose() * law.apart_g, turn;
  const Vector6 w = law.stiffness * g + law.initial;
  const Vector3 force_s = w.head<3>();
  const Vector3 moment_s = inverse.transpose() * w.tail<3>();
  const Vector3 force = axes * force_s;
  const Vector3 moment = axes * moment_s;

  PairForce out;
  out.true_s << force_s, moment_s;
  out.terms.force_g << -force, -moment - near_arm.cross(force), force,
      moment + far_arm.cross(force);

  // Columns: displacement and spin of the near node, then of the far.
  Matrix3x12 near_spin = Matrix3x12::Zero();
  near_spin.middleCols<3>(3).setIdentity();
  Matrix3x12 far_spin = Matrix3x12::Zero();
  far_spin.middleCols<3>(9).setIdentity();
  Matrix3x12 d_near_arm = Matrix3x12::Zero();
  d_near_arm.middleCols<3>(0) = -Matrix3::Identity();
  d_near_arm.middleCols<3>(6).setIdentity();
  const Matrix3x12 d_far_arm = -skew(far_arm) * far_spin;
  d_near_arm += d_far_arm;

  Eigen::Matrix<double, 6, 12> d_g;
  d_g.topRows<3>() = axes.transpose() * (d_near_arm + skew(near_arm) * near_spin);
  const Matrix3x12 d_turn = axes.transpose() * (far_spin - near_spin);
  d_g.bottomRows<3>() = inverse * d_turn;
  const Eigen::Matrix<double, 6, 12> d_w = law.stiffness.lazyProduct(d_g);
  const Matrix3x12 d_moment_s = inverse.transpose() * d_w.bottomRows<3>() +
                                inverse_spin_map_slope(turn, w.tail<3>()) * d_g.bottomRows<3>();
  const Matrix3x12 d_force = axes * d_w.topRows<3>() - skew(force) * near_spin;
  const Matrix3x12 d_moment = axes * d_moment_s - skew(moment) * near_spin;
  out.terms.tangent_g << -d_force, -d_moment + skew(force) * d_near_arm - skew(near_arm) * d_force,
      d_force, d_moment - skew(force) * d_far_arm + skew(far_arm) * d_force;
  return out;
}

PairLaw law_of(const Spring& spring) {
  if (spring.b) {
    return {.axes_g = spring.axes_g,
            .near_arm_g = spring.offset_a_g,
            .far_arm_g = spring.offset_b_g,
            .stiffness = spring.stiffness,
            .initial = -spring.preload};
  }
  return {.axes_g = spring.axes_g,
          .far_arm_g = spring.offset_a_g,
          .stiffness = spring.stiffness,
          .initial = spring.preload};
}

double overlap(const Model& model, const Gap& gap, const Placed& a, const Placed& b) {
  return sense(gap) * lengthening(gap, line_of(model, gap), a, b).value - gap.clearance;
}

Vector12 overlap_slope(const Model& model, const Gap& gap, const Placed& a, const Placed& b) {
  const Line line = line_of(model, gap);
  const Lengthening now = lengthening(gap, line, a, b);
  const Vector3& n = now.direction_g;
  const Vector3 near_arm = a.turn_g * line.near_arm_g;
  const Vector3 far_arm = b.turn_g * line.far_arm_g;
  // An axis turns with a: the force acts on a's body where it acts on b's. On the line between the
  // points there is no difference.
  Vector12 out;
  out << -n, -(near_arm + now.apart_g).cross(n), n, far_arm.cross(n);
  return sense(gap) * out;
}

PairTerms gap_terms(const Model& model, const Gap& gap, const Placed& a, const Placed& b) {
  const Line line = line_of(model, gap);
  const Lengthening now = lengthening(gap, line, a, b);
  const double pull = gap.stiffness * (now.value - sense(gap) * gap.clearance);
  if (gap.axis_g) {
    const Vector3 x = gap.axis_g->normalized();
    const Vector3 y = x.unitOrthogonal();
    PairLaw law{
        .near_arm_g = line.near_arm_g, .far_arm_g = line.far_arm_g, .apart_g = line.apart_g};
    law.axes_g << x, y, x.cross(y);
    law.stiffness(0, 0) = gap.stiffness;
    law.initial(0) = -sense(gap) * gap.stiffness * gap.clearance;
    return pair_force(law, a, b).terms;
  }
  const Vector3& n = now.direction_g;
  const Vector3 near_arm = a.turn_g * line.near_arm_g;
  const Vector3 far_arm = b.turn_g * line.far_arm_g;
  const Vector3 force = pull * n;
  const Matrix3 rate = gap.stiffness * n * n.transpose() +
                       pull / now.length * (Matrix3::Identity() - n * n.transpose());
  Matrix3x12 d_near_arm = Matrix3x12::Zero();
  d_near_arm.middleCols<3>(3) = -skew(near_arm);
  Matrix3x12 d_far_arm = Matrix3x12::Zero();
  d_far_arm.middleCols<3>(9) = -skew(far_arm);
  Matrix3x12 d_apart = d_far_arm - d_near_arm;
  d_apart.middleCols<3>(0) -= Matrix3::Identity();
  d_apart.middleCols<3>(6) += Matrix3::Identity();
  const Matrix3x12 d_force = rate * d_apart;
  PairTerms out;
  out.force_g << -force, -near_arm.cross(force), force, far_arm.cross(force);
  out.tangent_g << -d_force, skew(force) * d_near_arm - skew(near_arm) * d_force, d_force,
      -skew(force) * d_far_arm + skew(far_arm) * d_force;
  return out;
}

}  // namespace fea
