#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "parts/design.hpp"
#include "parts/section_fields.hpp"

/// Every field of a design to the last bit, written by nothing that the program itself uses, so
/// that two designs can be compared where unset numbers equal each other.
namespace design_dump {

inline std::string text_of(double value) {
  return fmt::format("{:a} ", value);
}
inline std::string text_of(const std::string& value) {
  return value + "|";
}

template <std::size_t N>
std::string text_of(const std::array<double, N>& values) {
  std::string all;
  for (const double value : values) all += text_of(value);
  return all;
}

struct Dump {
  std::string all;
  void quantity(const parts::FieldInfo& info, double& value, const parts::Quantity&) {
    all += std::string(info.key) + "=" + text_of(value);
  }
  template <class T>
  void phrase(const parts::FieldInfo& info, T& value);
  template <class Enum, class Words>
  void choice(const parts::FieldInfo& info, Enum& value, const Words&) {
    all += fmt::format("{}={} ", info.key, static_cast<int>(value));
  }
  void flag(const parts::FieldInfo& info, bool& value) {
    all += fmt::format("{}={} ", info.key, value);
  }
  void text(const parts::FieldInfo& info, std::string& value) {
    all += std::string(info.key) + "=" + text_of(value);
  }
  void point(const parts::FieldInfo& info, std::string& value) { text(info, value); }
  void vector(const parts::FieldInfo& info, std::array<double, 3>& value, parts::Dimension) {
    all += std::string(info.key) + "=" + text_of(value);
  }
  void points(const parts::FieldInfo& info, std::vector<std::string>& values) {
    for (std::string& value : values) text(info, value);
  }
  void outline(const parts::FieldInfo& info, std::vector<std::array<double, 2>>& values) {
    for (const auto& value : values) all += std::string(info.key) + "=" + text_of(value);
  }
  void lengths(const parts::FieldInfo& info, std::vector<double>& values) {
    for (const double value : values) all += std::string(info.key) + "=" + text_of(value);
  }
};

inline std::string text_of(sections::Shape shape) {
  Dump dump;
  std::visit([&](auto& s) { parts::fields(dump, s); }, shape);
  return fmt::format("shape {} {}", shape.index(), dump.all);
}
inline std::string text_of(sections::Material m) {
  Dump dump;
  parts::fields(dump, m);
  return m.id + dump.all + m.basis + m.haz_basis + m.mark + m.source;
}
inline std::string text_of(const parts::Stick& s) {
  return text_of(s.shape) + text_of(s.material);
}
inline std::string text_of(const parts::Housing& h) {
  std::string all;
  for (const parts::HousingTube& tube : h.tubes) all += text_of(tube.stick) + text_of(tube.to);
  return all;
}
inline std::string text_of(const parts::Plates& p) {
  return fmt::format("{} {}{}{}", p.count, text_of(p.thickness), text_of(p.fold_radius),
                     text_of(p.material));
}
inline std::string text_of(const parts::FilletWeld& w) {
  return fmt::format("{} {}{}", w.both_sides + 2 * w.directional, text_of(w.leg),
                     text_of(w.groove));
}
inline std::string text_of(const parts::Rail& r) {
  return fmt::format("{} ", r.boxed) +
         text_of(std::array<double, 4>{r.width, r.height, r.wall, r.frame_plate});
}
inline std::string text_of(const parts::RailFaces& f) {
  return fmt::format("{} {} {} ", f.bottom, f.inner_side, f.outer_side);
}
inline std::string text_of(const parts::JointSpec& j) {
  return fmt::format("{} {} {} {}", static_cast<int>(j.kind), static_cast<int>(j.grade),
                     static_cast<int>(j.axis), text_of(j.rates) + (j.own_axes ? "own" : ""));
}
inline std::string text_of(const parts::LinkEnds& e) {
  return fmt::format("{} {}", e.welded, text_of(e.joint));
}
inline std::string text_of(const parts::BoltSpec& b) {
  return fmt::format("{} {} {} {} {} {}", b.thread.name, b.grade.name, text_of(b.grade.tensile),
                     b.double_shear, b.threads_in_plane, b.loose_stack + 2 * b.must_not_slip);
}
inline std::string text_of(const parts::Bend& b) {
  return fmt::format("{} {}", static_cast<int>(b.toward), text_of(b.off_straight));
}
inline std::string text_of(const parts::BraceAt& b) {
  return text_of(b.above_bolt);
}
inline std::string text_of(const parts::Held& h) {
  std::string all;
  for (const bool held : h.freedoms) all += held ? "1" : "0";
  return all;
}
inline std::string text_of(const parts::TabSpec& t) {
  return fmt::format("{} {} {} {} {} {} {} {} {}", t.plates.count, text_of(t.plates.thickness),
                     t.plates.material.id, text_of(t.edge), text_of(t.height), text_of(t.width),
                     text_of(t.off),
                     text_of(t.weld.leg) + text_of(t.weld.groove) + text_of(t.gap) +
                         (t.on_tube() ? text_of(t.on) : "") + (t.across ? "across" : ""),
                     t.weld.both_sides + 2 * t.weld.directional) +
         text_of(t.side_force);
}
inline std::string text_of(const parts::ThreadSpec& t) {
  return t.thread.name + text_of(t.engaged) + text_of(t.out) + text_of(t.yield);
}
inline std::string text_of(const parts::EndWeldSpec& w) {
  return text_of(w.leg) + text_of(w.groove) + text_of(w.around) + std::to_string(w.rosettes) +
         text_of(w.rosette);
}
inline std::string text_of(const parts::Steel& s) {
  return s.material.id;
}
inline std::string text_of(const parts::Freed& f) {
  return text_of(parts::Held{f.freedoms});
}
inline std::string text_of(const parts::Toward& t) {
  return fmt::format("{} {} {}{}", static_cast<int>(t.kind), static_cast<int>(t.axis), t.point,
                     text_of(t.vector));
}
inline std::string text_of(const parts::Coupling& c) {
  std::string all;
  for (const auto& term : c.terms) {
    all += fmt::format("{} {} {}", term.row, term.column, text_of(term.value));
  }
  return all;
}

template <class T>
void Dump::phrase(const parts::FieldInfo& info, T& value) {
  all += std::string(info.key) + "=" + text_of(value);
}

template <class T>
std::string part(std::string_view name, const std::optional<T>& value) {
  if (!value) return {};
  Dump dump;
  T copy = *value;
  fields(dump, copy);
  return fmt::format("{}: {}\n", name, dump.all);
}

template <class T>
std::string named(std::string_view group, const std::vector<parts::Named<T>>& list) {
  std::string all;
  for (const parts::Named<T>& item : list) {
    all += part(fmt::format("{}.{}", group, item.name), std::optional<T>(item.value));
  }
  return all;
}

inline std::string design_text(const parts::Design& d) {
  std::string all = fmt::format("{} {}\n", d.title, d.inches);
  for (const auto& p : d.points) all += p.name + ": " + text_of(p.value) + "\n";
  for (const auto& m : d.materials) all += m.name + ": " + text_of(m.value) + "\n";
  for (const auto& s : d.sections) all += s.name + ": " + text_of(s.value) + "\n";
  all += part("vehicle", d.vehicle) + named("joints", d.joints) +
         part("lateral_link", d.lateral_link) + part("bracket", d.bracket) +
         part("brace", d.brace) + part("frame", d.frame) + part("arm", d.arm) +
         part("axle", d.axle) + named("members", d.members) + named("supports", d.supports) +
         named("springs", d.springs) + named("rigid", d.rigid) + named("side_welds", d.side_welds) +
         named("bolt_groups", d.bolt_groups) + named("forces", d.forces) +
         named("line_loads", d.line_loads) + named("strains", d.strains) +
         named("settlements", d.settlements) + named("self_weight", d.self_weight);
  for (const std::string& name : d.load_cases) all += name + " ";
  all += named("load_cases", d.custom_cases) + named("duty", d.duty);
  all += checks::name_of(d.factor_preset);
  checks::RequiredFactors factors = d.factors;
  for (const auto& entry : checks::factor_entries(factors)) all += text_of(*entry.value);
  for (const parts::Variant& v : d.variants) {
    all += "\nvariant " + text_of(v.name);
    for (const parts::Patch& p : v.patches) all += text_of(p.path) + text_of(p.value);
  }
  return all;
}

}  // namespace design_dump
