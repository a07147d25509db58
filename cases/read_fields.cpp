#include "cases/read_fields.hpp"

#include "parts/design.hpp"

namespace cases {

template <class T>
void read_fields(FieldReader& reader, T& part) {
  fields(reader, part);
}

template void read_fields(FieldReader&, parts::VehicleEntry&);
template void read_fields(FieldReader&, parts::LateralLink&);
template void read_fields(FieldReader&, parts::Bracket&);
template void read_fields(FieldReader&, parts::Brace&);
template void read_fields(FieldReader&, parts::Frame&);
template void read_fields(FieldReader&, parts::Arm&);
template void read_fields(FieldReader&, parts::Axle&);
template void read_fields(FieldReader&, parts::LimitStrap&);
template void read_fields(FieldReader&, parts::Steering&);
template void read_fields(FieldReader&, parts::Member&);
template void read_fields(FieldReader&, parts::PlainSupport&);
template void read_fields(FieldReader&, parts::PlainSpring&);
template void read_fields(FieldReader&, parts::RigidSet&);
template void read_fields(FieldReader&, parts::SideWeld&);
template void read_fields(FieldReader&, parts::BoltedGroup&);
template void read_fields(FieldReader&, parts::PlainForce&);
template void read_fields(FieldReader&, parts::LineLoad&);
template void read_fields(FieldReader&, parts::GivenStrain&);
template void read_fields(FieldReader&, parts::Settlement&);
template void read_fields(FieldReader&, parts::SelfWeight&);
template void read_fields(FieldReader&, parts::CustomCase&);
template void read_fields(FieldReader&, parts::DutyEntry&);
template void read_fields(FieldReader&, parts::GivenJoint&);

}  // namespace cases
