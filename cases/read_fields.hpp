#pragma once

#include "cases/field_reader.hpp"

namespace cases {

/// `fields(reader, part)` of a whole part, compiled once: read_fields.cpp lists the parts.
template <class T>
void read_fields(FieldReader& reader, T& part);

}  // namespace cases
