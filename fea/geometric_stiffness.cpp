#include "fea/geometric_stiffness.hpp"

#include <Eigen/Geometry>

namespace fea {
namespace {

// Freedoms of the beam, named as in the energy: a twist, b = ry, c = rz.
constexpr int kU1 = 0, kV1 = 1, kW1 = 2, kA1 = 3, kB1 = 4, kC1 = 5;
constexpr int kU2 = 6, kV2 = 7, kW2 = 8, kA2 = 9, kB2 = 10, kC2 = 11;

class Symmetric {
 public:
  void add(int i, int j, double value) {
    matrix_(i, j) += value;
    if (i != j) matrix_(j, i) += value;
  }
  [[nodiscard]] const Matrix12& matrix() const { return matrix_; }

 private:
  Matrix12 matrix_ = Matrix12::Zero();
};

/// Such a matrix times a motion, entry by entry as it comes.
class Product {
 public:
  Product(const Vector12& motion, Vector12& out) : motion_(motion), out_(out) {}
  void add(int i, int j, double value) {
    out_(i) += value * motion_(j);
    if (i != j) out_(j) += value * motion_(i);
  }

 private:
  const Vector12& motion_;
  Vector12& out_;
};

/// 1/2 N int v'^2 in one plane; `turn` is +1 where the rotation is dv/dx and -1 where it is -dw/dx.
template <class Terms>
void add_axial(Terms& k, double n, double length, double phi, double turn, int v1, int r1, int v2,
               int r2) {
  const double c = n / ((1.0 + phi) * (1.0 + phi));
  const double vv = c * (1.2 + 2.0 * phi + phi * phi) / length;
  const double vr = turn * c / 10.0;
  const double shear = phi / 6.0 + phi * phi / 12.0;
  k.add(v1, v1, vv);
  k.add(v2, v2, vv);
  k.add(v1, v2, -vv);
  for (const int r : {r1, r2}) {
    k.add(v1, r, vr);
    k.add(v2, r, -vr);
    k.add(r, r, c * length * (2.0 / 15.0 + shear));
  }
  k.add(r1, r2, -c * length * (1.0 / 30.0 + shear));
}

/// Shear with axial displacement, and bending moments with twist.
template <class Terms>
void add_bending(Terms& k, const Vector12& ends_l, double length) {
  const double my1 = ends_l(kB1);
  const double mz1 = ends_l(kC1);
  const double my2 = ends_l(kB2);
  const double mz2 = ends_l(kC2);
  const double shear_v = (mz1 + mz2) / (length * length);
  const double shear_w = (my1 + my2) / (length * length);
  k.add(kU1, kV1, shear_v);
  k.add(kU2, kV2, shear_v);
  k.add(kU1, kV2, -shear_v);
  k.add(kV1, kU2, -shear_v);
  k.add(kU1, kW1, -shear_w);
  k.add(kU2, kW2, -shear_w);
  k.add(kU1, kW2, shear_w);
  k.add(kW1, kU2, shear_w);

  k.add(kV1, kA1, my1 / length);
  k.add(kV1, kA2, my2 / length);
  k.add(kA1, kV2, -my1 / length);
  k.add(kV2, kA2, -my2 / length);
  k.add(kW1, kA1, mz1 / length);
  k.add(kW1, kA2, mz2 / length);
  k.add(kA1, kW2, -mz1 / length);
  k.add(kW2, kA2, -mz2 / length);

  const double z = (mz1 + mz2) / 6.0;
  const double y = (my1 + my2) / 6.0;
  k.add(kA1, kB1, z);
  k.add(kA2, kB2, z);
  k.add(kA1, kB2, -z);
  k.add(kB1, kA2, -z);
  k.add(kA1, kC1, -y);
  k.add(kA2, kC2, -y);
  k.add(kA1, kC2, y);
  k.add(kC1, kA2, y);
}

template <class Terms>
void add_torque(Terms& k, double torque, double length) {
  const double t = torque / length;
  k.add(kV1, kB1, t);
  k.add(kV1, kB2, -t);
  k.add(kW1, kC1, t);
  k.add(kW1, kC2, -t);
  k.add(kB1, kV2, -t);
  k.add(kC1, kW2, -t);
  k.add(kV2, kB2, t);
  k.add(kW2, kC2, t);
  k.add(kB1, kC2, 0.5 * torque);
  k.add(kC1, kB2, -0.5 * torque);
}

/// Makes the bending moments, quasi-tangential in the beam's energy, semi-tangential at the ends.
template <class Terms>
void add_joint_correction(Terms& k, const Vector12& ends_l) {
  k.add(kA1, kC1, 0.5 * ends_l(kB1));
  k.add(kA1, kB1, -0.5 * ends_l(kC1));
  k.add(kA2, kC2, 0.5 * ends_l(kB2));
  k.add(kA2, kB2, -0.5 * ends_l(kC2));
}

template <class Terms>
void add_all(Terms& k, const Vector12& ends_l, const ShearFlex& flex, double length, double polar) {
  const double n = ends_l(kU2);
  add_axial(k, n, length, flex.xy, 1.0, kV1, kC1, kV2, kC2);
  add_axial(k, n, length, flex.xz, -1.0, kW1, kB1, kW2, kB2);
  const double twist = n * polar / length;
  k.add(kA1, kA1, twist);
  k.add(kA2, kA2, twist);
  k.add(kA1, kA2, -twist);
  add_bending(k, ends_l, length);
  add_torque(k, ends_l(kA2), length);
  add_joint_correction(k, ends_l);
}

}  // namespace

Matrix3 skew(const Vector3& v) {
  Matrix3 s;
  s << 0.0, -v.z(), v.y(), v.z(), 0.0, -v.x(), -v.y(), v.x(), 0.0;
  return s;
}

Matrix6 carried(const Vector3& arm_g) {
  Matrix6 out = Matrix6::Identity();
  out.topRightCorner<3, 3>() = -skew(arm_g);
  return out;
}

Matrix12 beam_geometric(const Vector12& ends_l, const ShearFlex& flex, double length,
                        double polar) {
  Symmetric k;
  add_all(k, ends_l, flex, length, polar);
  return k.matrix();
}

void add_beam_geometric_force(const Vector12& ends_l, const ShearFlex& flex, double length,
                              double polar, const Vector12& motion_l, Vector12& out) {
  Product k(motion_l, out);
  add_all(k, ends_l, flex, length, polar);
}

Matrix3 arm_geometric(const Vector3& force_g, const Vector3& arm_g) {
  const Matrix3 outer = force_g * arm_g.transpose();
  return 0.5 * (outer + outer.transpose()) - force_g.dot(arm_g) * Matrix3::Identity();
}

void add_end_geometric(const EndPart& end, const Vector6& wrench_g, Eigen::Index node,
                       Eigen::Index joint, Eigen::Ref<Eigen::MatrixXd> block) {
  const Vector3 force = wrench_g.head<3>();
  const Vector3 half_moment = 0.5 * wrench_g.tail<3>();
  const auto add_both = [&block](Eigen::Index row, Eigen::Index column, const Matrix3& term) {
    block.block<3, 3>(row, column) += term;
    block.block<3, 3>(column, row) += term.transpose();
  };
  // A component of the joint moves by its unknown less what its node moves along it.
  for (std::size_t k = 0; k < end.n_loose; ++k) {
    const EndPart::Loose& loose = end.loose[k];
    const Vector3 on_turn = (loose.turns ? half_moment : force).cross(loose.axis_g);
    const Eigen::Index own = joint + static_cast<Eigen::Index>(k);
    block.col(own).segment<3>(node + 3) += on_turn;
    block.row(own).segment<3>(node + 3) += on_turn;
    if (loose.turns) {
      add_both(node + 3, node + 3, -on_turn * loose.axis_g.transpose());
    } else {
      add_both(node + 3, node, -on_turn * loose.axis_g.transpose());
      add_both(node + 3, node + 3, -on_turn * end.arm_g.cross(loose.axis_g).transpose());
    }
  }
  block.block<3, 3>(node + 3, node + 3) += arm_geometric(-force, end.arm_g);
}

Sides connection_force(const Sides& motion, const Vector3& near_arm_g, const Vector3& far_arm_g,
                       const Vector6& wrench_g) {
  const Vector3 force = wrench_g.head<3>();
  const Vector3 half_moment = 0.5 * wrench_g.tail<3>();
  const Vector3 turn_near = motion.near.tail<3>();
  const Vector3 turn_far = motion.far.tail<3>();
  // The gradient of turn_near . (force x apart + half_moment x turn_far) and of the arms' terms.
  const Vector3 on_apart = turn_near.cross(force);
  Sides on;
  on.near << -on_apart, force.cross((motion.far - motion.near).head<3>()) +
                            half_moment.cross(turn_far) +
                            arm_geometric(-force, near_arm_g) * turn_near;
  on.far << on_apart, turn_near.cross(half_moment) + arm_geometric(force, far_arm_g) * turn_far;
  return on;
}

}  // namespace fea
