#pragma once

#include <Eigen/Core>

#include "fea/system.hpp"

/// The ends of a beam, and the two sides of a spring, as plain matrices over their unknowns: what
/// the library does without them, one end and one component at a time, is held against these.
namespace fea_test {

using Matrix6X = Eigen::Matrix<double, 6, Eigen::Dynamic>;

/// Two sides that meet at one point, each side's motion there linear in the same unknowns.
struct Connection {
  Matrix6X near_g;                                 ///< displacement and rotation, global axes
  Matrix6X far_g;                                  ///< the same of the far side
  fea::Vector3 near_arm_g = fea::Vector3::Zero();  ///< from the near node to the point  [m]
  fea::Vector3 far_arm_g = fea::Vector3::Zero();   ///< from the far node to the point  [m]
};

/// Near: the node carried to the end; far: the beam's end.
inline Connection connection_of(const fea::BeamPart& beam, std::size_t which) {
  const fea::EndPart& end = beam.ends[which];
  Connection out;
  out.near_g = Matrix6X::Zero(6, beam.unknowns.size());
  out.near_g.middleCols<6>(6 * static_cast<Eigen::Index>(which)) = fea::carried(end.arm_g);
  out.near_arm_g = end.arm_g;
  out.far_g = out.near_g;
  Eigen::Index own = 12 + (which == 1 ? static_cast<Eigen::Index>(beam.ends[0].n_loose) : 0);
  for (std::size_t k = 0; k < end.n_loose; ++k) {
    fea::Vector6 axis = fea::Vector6::Zero();
    axis.segment<3>(end.loose[k].turns ? 3 : 0) = end.loose[k].axis_g;
    out.far_g -= axis * (axis.transpose() * out.near_g);
    out.far_g.col(own++) += axis;
  }
  return out;
}

/// The freedoms of a beam's ends in its own axes.
inline Eigen::MatrixXd ends_l(const fea::BeamPart& beam) {
  Eigen::MatrixXd out(12, beam.unknowns.size());
  for (const std::size_t end : {0U, 1U}) {
    const Matrix6X far = connection_of(beam, end).far_g;
    const auto row = 6 * static_cast<Eigen::Index>(end);
    out.middleRows<3>(row) = beam.axes_lg * far.topRows<3>();
    out.middleRows<3>(row + 3) = beam.axes_lg * far.bottomRows<3>();
  }
  return out;
}

/// The elastic components of its joints.
inline Eigen::MatrixXd joint_springs(const fea::BeamPart& beam) {
  Eigen::MatrixXd out = Eigen::MatrixXd::Zero(beam.unknowns.size(), beam.unknowns.size());
  for (const std::size_t end : {0U, 1U}) {
    const Connection map = connection_of(beam, end);
    for (std::size_t k = 0; k < beam.ends[end].n_loose; ++k) {
      const fea::EndPart::Loose& loose = beam.ends[end].loose[k];
      const auto rows = loose.turns ? 3 : 0;
      const Eigen::RowVectorXd apart =
          loose.axis_g.transpose() * (map.far_g - map.near_g).middleRows<3>(rows);
      out += loose.stiffness * apart.transpose() * apart;
    }
  }
  return out;
}

/// Second-order terms of a connection whose law is on the relative motion seen from the near side:
/// turn_near . (force x apart + moment x turn_far / 2), and the arms' own.
inline Eigen::MatrixXd connection_geometric(const Connection& connection,
                                            const fea::Vector6& wrench_g) {
  const fea::Vector3 force = wrench_g.head<3>();
  const fea::Vector3 moment = wrench_g.tail<3>();
  const Eigen::MatrixXd turn_near = connection.near_g.bottomRows<3>();
  const Eigen::MatrixXd turn_far = connection.far_g.bottomRows<3>();
  const Eigen::MatrixXd apart = connection.far_g.topRows<3>() - connection.near_g.topRows<3>();
  const Eigen::MatrixXd half =
      turn_near.transpose() *
          (fea::skew(force) * apart + 0.5 * fea::skew(moment) * turn_far +
           0.5 * fea::arm_geometric(-force, connection.near_arm_g) * turn_near) +
      turn_far.transpose() * (0.5 * fea::arm_geometric(force, connection.far_arm_g) * turn_far);
  return half + half.transpose();
}

}  // namespace fea_test
