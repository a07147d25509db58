#include <cmath>

#include <Eigen/Geometry>

#include "parts/builder.hpp"

/// Beams of sections whose principal axes are turned, or whose shear center is not the centroid.
namespace parts {
namespace {

/// Small beside a stiffness that works in parallel with it, yet far above rounding.
constexpr double kNext = 1.0e-6;
/// Its shear gives so much more than its bending that the beam stays straight between its ends.
constexpr double kStraight = 1.0e-9;

/// What the axis through the centroid carries: the normal force.
sections::AreaProps axial_share(sections::AreaProps s) {
  s.iyy *= kNext;
  s.izz *= kNext;
  s.torsion *= kNext;
  s.shear_y = kStraight * s.area;
  s.shear_z = kStraight * s.area;
  return s;
}

/// What the axis through the shear center carries: shear forces, bending, torque.
sections::AreaProps bending_share(sections::AreaProps s) {
  s.area *= kNext;
  s.polar *= kNext;
  return s;
}

/// A joint for an axis that only a normal force runs along: free turning would leave a freedom that
/// nothing holds.
std::optional<fea::Joint> without_turning(std::optional<fea::Joint> joint,
                                          const fea::Vector3& along_g) {
  if (!joint) return joint;
  for (std::size_t i = 0; i < 3; ++i) {
    joint->stiffness[i + 3] = fea::kRigid;
    const double share = joint->axes_g.col(static_cast<Eigen::Index>(i)).dot(along_g);
    if (joint->stiffness[i] == 0.0 && std::abs(share) < 0.7) joint->stiffness[i] = fea::kRigid;
  }
  return joint;
}

}  // namespace

bool has_offset_shear_center(const sections::AreaProps& section) {
  const double size = std::sqrt(section.polar / section.area);
  return std::hypot(section.shear_center_y, section.shear_center_z) > 1.0e-6 * size;
}

PieceBeam Builder::add_section_beam(fea::Beam beam, const sections::Shape& at_a,
                                    const sections::Shape& at_b, const std::string& part) {
  const sections::AreaProps section = beam.section;
  const fea::Matrix3 drawn = fea::member_axes(out_.model, beam);
  const double c = std::cos(section.axes_angle);
  const double s = std::sin(section.axes_angle);
  const fea::Vector3 y_g = c * drawn.row(1).transpose() + s * drawn.row(2).transpose();
  const fea::Vector3 z_g = c * drawn.row(2).transpose() - s * drawn.row(1).transpose();
  if (section.axes_angle != 0.0) beam.z_toward_g = z_g;
  if (!has_offset_shear_center(section)) {
    return {.beam = add_beam(beam, part), .at_a = at_a, .at_b = at_b, .axial = {}};
  }
  const fea::Vector3 along_g = drawn.row(0);
  const fea::Vector3 offset_g = section.shear_center_y * y_g + section.shear_center_z * z_g;
  beam.z_toward_g = z_g;
  fea::Beam axial = beam;
  axial.section = axial_share(section);
  axial.a.joint = without_turning(axial.a.joint, along_g);
  axial.b.joint = without_turning(axial.b.joint, along_g);
  beam.section = bending_share(section);
  beam.a.offset_g += offset_g;
  beam.b.offset_g += offset_g;
  const fea::BeamId bending_id = add_beam(beam, part);
  return {.beam = bending_id, .at_a = at_a, .at_b = at_b, .axial = add_beam(axial, part)};
}

}  // namespace parts
