#pragma once

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "cases/field_reader.hpp"
#include "cases/read_fields.hpp"
#include "cases/reading_context.hpp"

namespace cases {

void read_materials(const Value& mapping, ReadingContext& context);
void read_sections(const Value& mapping, ReadingContext& context);
void read_joints(const Value& mapping, ReadingContext& context);
void read_points(const Value& mapping, ReadingContext& context);
void read_factors(const Value& mapping, ReadingContext& context);
/// Kinds of built-in cases by name, and cases of the file's own as `key: value` lines.
void read_load_cases(const Entry& entry, ReadingContext& context);
void read_duty(const Entry& entry, ReadingContext& context);

/// `[0, 17, 22 in]`: the last unit serves the numbers before it.
/// @throws base::InputError without a key
/// @return x y z  [m]
[[nodiscard]] std::array<double, 3> read_coordinates(const Value& list);

/// A name that paths can hold: not empty, without `.`, `=`, `[` or `]`; else a problem.
void require_name(const Entry& entry, const std::string& path, ReadingContext& context);

/// Whether a named thing has `key: value` lines below it; else a problem.
[[nodiscard]] bool require_mapping(const Entry& entry, const std::string& path,
                                   ReadingContext& context);

/// One member, support, spring or force.
template <class T>
void read_named_part(const Entry& entry, const std::string& group, ReadingContext& context,
                     std::vector<parts::Named<T>>& out) {
  const std::string path = group + "." + entry.key;
  context.places.add(path, entry.place);
  require_name(entry, path, context);
  if (!require_mapping(entry, path, context)) return;
  parts::Named<T> named{entry.key, {}};
  FieldReader reader(context, entry.value, entry.place, path);
  read_fields(reader, named.value);
  reader.finish();
  out.push_back(std::move(named));
}

/// `sizes: nominal` or `minimum`; nominal is assumed when there is no such key.
/// @param entry  may be null
void read_which_sizes(const Entry* entry, ReadingContext& context);

/// The word of the format for which sizes are used.
[[nodiscard]] std::string_view word_of(sections::Sizes sizes);

}  // namespace cases
