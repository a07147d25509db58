#include "fea/corotational.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Geometry>

#include "fea/geometric_stiffness.hpp"
#include "fea/rotation.hpp"

namespace fea {
namespace {

using Matrix3x6 = Eigen::Matrix<double, 3, 6>;
// Changes of the local state: chord length; spin of end a and of end b seen from the moved axes;
// spin of the moved axes. All in the moved axes.
using Vector10 = Eigen::Matrix<double, 10, 1>;
using Row6 = Eigen::Matrix<double, 1, 6>;
using Row10 = Eigen::Matrix<double, 1, 10>;
using Matrix3x10 = Eigen::Matrix<double, 3, 10>;
using Matrix6x10 = Eigen::Matrix<double, 6, 10>;
using Matrix7x10 = Eigen::Matrix<double, 7, 10>;
using Matrix12x10 = Eigen::Matrix<double, 12, 10>;
using Row12 = Eigen::Matrix<double, 1, 12>;
constexpr Eigen::Index kChord = 0, kSpins = 1, kAxes = 7;
constexpr std::array<int, 6> kRotations = {3, 4, 5, 9, 10, 11};  // of the linear element

StationLoad at_station(const BeamPart& beam, double at, const Vector3& force_g,
                       const Vector3& moment_g) {
  const Matrix6 shape = beam_shape(beam.flex, beam.length, at)(Eigen::all, kRotations);
  return {.part = at / beam.length,
          .force_g = force_g,
          .moment_g = moment_g,
          .deflection_l = shape.topRows<3>(),
          .rotation_l = shape.bottomRows<3>()};
}

/// Second derivatives of the mean of 1/2 (v'^2 + w'^2 + polar rx'^2) in the local rotations.
Matrix6 bow_shortening(const BeamPart& beam) {
  Matrix6 h = Matrix6::Zero();
  const auto add_plane = [&h](double phi, Eigen::Index a, Eigen::Index b) {
    const double c = 1.0 / ((1.0 + phi) * (1.0 + phi));
    const double shear = phi / 6.0 + phi * phi / 12.0;
    h(a, a) = h(b, b) = c * (2.0 / 15.0 + shear);
    h(a, b) = h(b, a) = -c * (1.0 / 30.0 + shear);
  };
  add_plane(beam.flex.xz, 1, 4);
  add_plane(beam.flex.xy, 2, 5);
  h(0, 0) = h(3, 3) = beam.polar / (beam.length * beam.length);
  h(0, 3) = h(3, 0) = -h(0, 0);
  return h;
}

/// Geometry of the moved axes.
struct Chord {
  double length;
  double lengthening;
  Matrix3 axes_gl;
  std::array<Vector3, 2> q_l;    ///< each end's own y axis
  Vector3 mean_l;                ///< their mean; its z component is zero by definition
  std::array<Vector3, 2> local;  ///< rotation vectors of the ends
};

/// In the member's axes before it moved: there a small rotation keeps all its digits.
Chord make_chord(const BeamPart& beam, const std::array<Placed, 2>& ends) {
  Chord out;
  const Vector3 apart = beam.axes_lg * (ends[1].displacement_g - ends[0].displacement_g);
  const Vector3 span = beam.length * Vector3::UnitX();
  const Vector3 now = span + apart;
  out.length = now.norm();
  // From the displacements, not from the lengths, whose difference has no digits left.
  out.lengthening = apart.dot(2.0 * span + apart) / (out.length + beam.length);
  std::array<Matrix3, 2> turns;
  for (std::size_t i = 0; i < 2; ++i) {
    turns[i] = Matrix3::Identity() +
               beam.axes_lg * (ends[i].turn_g - Matrix3::Identity()) * beam.axes_lg.transpose();
  }
  const Vector3 x = now / out.length;
  const Vector3 z = x.cross(turns[0].col(1) + turns[1].col(1)).normalized();
  Matrix3 axes;
  axes << x, z.cross(x), z;
  out.axes_gl = beam.axes_lg.transpose() * axes;
  for (std::size_t i = 0; i < 2; ++i) {
    const Matrix3 seen = axes.transpose() * turns[i];
    out.q_l[i] = seen.col(1);
    out.local[i] = rotation_vector(seen);
  }
  out.mean_l = 0.5 * (out.q_l[0] + out.q_l[1]);
  return out;
}

/// Spin of the moved axes from displacements and spins of the ends, all in the moved axes. About y
/// and z it is that of the chord.
struct SpinOfAxes {
  double about_y;  ///< from a displacement of end a along z; from one of end b the opposite
  double about_z;  ///< likewise, along y
  Row12 about_x;
};

SpinOfAxes spin_of_axes(const Chord& chord) {
  SpinOfAxes out{1.0 / chord.length, -1.0 / chord.length, Row12::Zero()};
  const double tilt = chord.mean_l.x() / chord.mean_l.y();
  out.about_x(2) = tilt * out.about_y;
  out.about_x(8) = -tilt * out.about_y;
  for (const Eigen::Index i : {0, 1}) {
    const Vector3 lever = chord.q_l[static_cast<std::size_t>(i)].cross(Vector3::UnitZ());
    out.about_x.segment<3>(6 * i + 3) = 0.5 / chord.mean_l.y() * lever.transpose();
  }
  return out;
}

/// Changes with the local state as changes with displacements and spins of the ends: the chord's
/// length is theirs along it, and the ends' spins are seen from axes that spin themselves.
template <int Rows>
Eigen::Matrix<double, Rows, 12> with_ends(const Eigen::Matrix<double, Rows, 10>& d_local,
                                          const SpinOfAxes& spin) {
  const Eigen::Matrix<double, Rows, 3> d_axes = d_local.template middleCols<3>(kAxes) -
                                                d_local.template middleCols<3>(kSpins) -
                                                d_local.template middleCols<3>(kSpins + 3);
  Eigen::Matrix<double, Rows, 12> out = d_axes.col(0).lazyProduct(spin.about_x);
  out.col(2) += spin.about_y * d_axes.col(1);
  out.col(8) -= spin.about_y * d_axes.col(1);
  out.col(1) += spin.about_z * d_axes.col(2);
  out.col(7) -= spin.about_z * d_axes.col(2);
  out.col(0) -= d_local.col(kChord);
  out.col(6) += d_local.col(kChord);
  out.template middleCols<3>(3) += d_local.template middleCols<3>(kSpins);
  out.template middleCols<3>(9) += d_local.template middleCols<3>(kSpins + 3);
  return out;
}

/// Forces of the deformation and their changes, in the moved axes.
struct Deformed {
  Deformation deformation;  ///< the beam's own; the rest is taken at what is assumed
  Matrix7x10 d_deformation = Matrix7x10::Zero();
  double axial = 0.0;
  Row10 d_axial;
  Row10 excess = Row10::Zero();    ///< of the beam's own over that, as work on the local changes
  std::array<Vector3, 2> moments;  ///< on the ends' spins
  std::array<Matrix3x10, 2> d_moments;
  Vector3 on_axes;  ///< what a spin of the axes with the ends held loses: sum of the moments and
                    ///< what the loads make about the chord
  Matrix3x10 d_on_axes;
};

Deformed deform(const BeamPart& beam, const Chord& chord, const std::vector<StationLoad>& loads,
                double factor, const Deformation* assumed) {
  const double axial_rate = beam.stiffness_l(6, 6);
  const Matrix6 h = beam.length * bow_shortening(beam);
  Vector6 local;
  local << chord.local[0], chord.local[1];
  const Vector6 own_bow = h * local;
  const std::array<Matrix3, 2> inverse = {inverse_spin_map(chord.local[0]),
                                          inverse_spin_map(chord.local[1])};
  const auto on_spins = [&](const Vector6& on_rotations) -> Row6 {
    Row6 row;
    row << on_rotations.head<3>().transpose() * inverse[0],
        on_rotations.tail<3>().transpose() * inverse[1];
    return row;
  };

  Deformed out;
  out.deformation << axial_rate * (chord.lengthening + 0.5 * local.dot(own_bow)), local;
  out.d_deformation(0, kChord) = axial_rate;
  out.d_deformation.block<1, 6>(0, kSpins) = axial_rate * on_spins(own_bow);
  out.d_deformation.block<3, 3>(1, kSpins) = inverse[0];
  out.d_deformation.block<3, 3>(4, kSpins + 3) = inverse[1];

  const Deformation& at = assumed != nullptr ? *assumed : out.deformation;
  out.axial = at(0);
  const Vector6 bow = h * at.tail<6>();
  out.d_axial.setZero();
  out.d_axial(kChord) = axial_rate;
  out.d_axial.segment<6>(kSpins) = axial_rate * on_spins(bow);
  const Matrix6& bending = beam.bending_l;
  Vector6 v = bending * at.tail<6>() + out.axial * bow;  // conjugate to the rotation vectors
  if (assumed != nullptr) {
    const Vector6 own = bending * local + out.deformation(0) * own_bow;
    out.excess(kChord) = out.deformation(0) - out.axial;
    out.excess.segment<6>(kSpins) = on_spins(own - v);
  }
  Matrix6x10 dv = bow * out.d_axial;
  const Matrix6 held = bending + out.axial * h;
  dv.middleCols<3>(kSpins) += held.leftCols<3>().lazyProduct(inverse[0]);
  dv.middleCols<3>(kSpins + 3) += held.rightCols<3>().lazyProduct(inverse[1]);
  out.on_axes.setZero();
  out.d_on_axes.setZero();
  for (const StationLoad& load : loads) {
    const Vector3 force = factor * (chord.axes_gl.transpose() * load.force_g);
    const Vector3 moment = factor * (chord.axes_gl.transpose() * load.moment_g);
    const Vector3 deflection = load.deflection_l * local;
    v -= load.deflection_l.transpose() * force + load.rotation_l.transpose() * moment;
    dv.middleCols<3>(kAxes) -=
        load.deflection_l.transpose() * skew(force) + load.rotation_l.transpose() * skew(moment);
    out.on_axes += deflection.cross(force) + moment;
    const Matrix3x6 turned = skew(force) * load.deflection_l;
    out.d_on_axes.middleCols<3>(kSpins) -= turned.leftCols<3>() * inverse[0];
    out.d_on_axes.middleCols<3>(kSpins + 3) -= turned.rightCols<3>() * inverse[1];
    out.d_on_axes.middleCols<3>(kAxes) += skew(deflection) * skew(force) + skew(moment);
  }
  for (const Eigen::Index i : {0, 1}) {
    const auto end = static_cast<std::size_t>(i);
    const Matrix3& map = inverse[end];
    const Vector3 part = v.segment<3>(3 * i);
    out.moments[end] = map.transpose() * part;
    out.d_moments[end] = map.transpose() * dv.middleRows<3>(3 * i);
    out.d_moments[end].middleCols<3>(kSpins + 3 * i) +=
        inverse_spin_map_slope(chord.local[end], part) * map;
    out.on_axes += out.moments[end];
    out.d_on_axes += out.d_moments[end];
  }
  return out;
}

}  // namespace

std::vector<std::vector<StationLoad>> station_loads(const System& system, const Loads& loads) {
  std::vector<std::vector<StationLoad>> out(system.beams().size());
  for (const BeamPointLoad& load : loads.points) {
    const auto index = static_cast<std::size_t>(load.beam.index);
    const BeamPart& beam = system.beams()[index];
    const double at = std::clamp(load.at, 0.0, beam.length);
    out[index].push_back(at_station(beam, at, load.force_g, load.moment_g));
  }
  const double outer = std::sqrt(0.6);
  for (const BeamLineLoad& load : loads.lines) {
    const auto index = static_cast<std::size_t>(load.beam.index);
    const BeamPart& beam = system.beams()[index];
    const double from = std::clamp(load.from, 0.0, beam.length);
    const double to = std::isnan(load.to) ? beam.length : std::clamp(load.to, 0.0, beam.length);
    for (const int i : {-1, 0, 1}) {
      const double t = 0.5 * (1.0 + i * outer);
      const double weight = (i == 0 ? 4.0 : 2.5) / 9.0;
      const Vector3 force = weight * (to - from) * ((1.0 - t) * load.at_from_g + t * load.at_to_g);
      out[index].push_back(at_station(beam, from + t * (to - from), force, Vector3::Zero()));
    }
  }
  return out;
}

CorotationalBeam corotational(const BeamPart& beam, const std::vector<StationLoad>& loads,
                              double factor, const std::array<Placed, 2>& ends,
                              const Deformation* assumed) {
  const Chord chord = make_chord(beam, ends);
  const Deformed deformed = deform(beam, chord, loads, factor, assumed);
  const double l = chord.length;
  const double qx = chord.mean_l.x();
  const double qy = chord.mean_l.y();
  const double tilt = qx / qy;
  const Vector3& on_axes = deformed.on_axes;
  const Matrix3x10& d_on_axes = deformed.d_on_axes;

  Matrix3x10 d_mean = Matrix3x10::Zero();
  for (const Eigen::Index i : {0, 1}) {
    d_mean.middleCols<3>(kSpins + 3 * i) = -0.5 * skew(chord.q_l[static_cast<std::size_t>(i)]);
  }
  const Row10 d_tilt = (d_mean.row(0) - tilt * d_mean.row(1)) / qy;
  const double twist = 0.5 * on_axes.x() / qy;
  const Row10 d_twist = 0.5 / qy * d_on_axes.row(0) - twist / qy * d_mean.row(1);

  const Vector3 force(deformed.axial, -on_axes.z() / l, (on_axes.y() + tilt * on_axes.x()) / l);
  Matrix3x10 d_force;
  d_force << deformed.d_axial, -d_on_axes.row(2) / l,
      (d_on_axes.row(1) + tilt * d_on_axes.row(0) + on_axes.x() * d_tilt) / l;
  d_force.block<2, 1>(1, kChord) -= force.tail<2>() / l;

  Vector12 ends_l;
  Matrix12x10 d_ends;
  ends_l.segment<3>(0) = -force;
  ends_l.segment<3>(6) = force;
  d_ends.middleRows<3>(0) = -d_force;
  d_ends.middleRows<3>(6) = d_force;
  for (const Eigen::Index i : {0, 1}) {
    const auto end = static_cast<std::size_t>(i);
    const Vector3 lever = chord.q_l[end].cross(Vector3::UnitZ());
    ends_l.segment<3>(6 * i + 3) = deformed.moments[end] - twist * lever;
    d_ends.middleRows<3>(6 * i + 3) = deformed.d_moments[end] - lever * d_twist;
    // d(q x z) = (spin x q) x z
    d_ends.block<3, 3>(6 * i + 3, kSpins + 3 * i) -=
        twist * skew(Vector3::UnitZ()) * skew(chord.q_l[end]);
  }
  for (const Eigen::Index row : {0, 3, 6, 9}) {
    d_ends.block<3, 3>(row, kAxes) -= skew(ends_l.segment<3>(row));
  }

  CorotationalBeam out;
  out.axes_gl = chord.axes_gl;
  out.local = chord.local;
  out.deformation = deformed.deformation;
  const SpinOfAxes spin = spin_of_axes(chord);
  const Matrix12 tangent_l = with_ends(d_ends, spin);
  const DeformationSlope slope_l = with_ends(deformed.d_deformation, spin);
  const Vector12 excess_l = with_ends(deformed.excess, spin).transpose();
  const Matrix3 back = chord.axes_gl.transpose();
  Matrix12 half;
  for (const Eigen::Index column : {0, 3, 6, 9}) {
    half.middleCols<3>(column) = tangent_l.middleCols<3>(column).lazyProduct(back);
    out.deformation_slope_g.middleCols<3>(column) = slope_l.middleCols<3>(column).lazyProduct(back);
  }
  for (const Eigen::Index row : {0, 3, 6, 9}) {
    out.ends_g.segment<3>(row) = chord.axes_gl * ends_l.segment<3>(row);
    out.excess_g.segment<3>(row) = chord.axes_gl * excess_l.segment<3>(row);
    out.tangent_g.middleRows<3>(row) = chord.axes_gl.lazyProduct(half.middleRows<3>(row));
  }
  out.ends_g += out.excess_g;
  for (const StationLoad& load : loads) {
    out.ends_g.segment<3>(0) -= (1.0 - load.part) * factor * load.force_g;
    out.ends_g.segment<3>(6) -= load.part * factor * load.force_g;
  }
  return out;
}

}  // namespace fea
