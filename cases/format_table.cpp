#include "cases/format_table.hpp"

#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "cases/phrase.hpp"
#include "cases/quantity.hpp"
#include "cases/shape_words.hpp"
#include "cases/unit.hpp"
#include "cases/words.hpp"
#include "parts/design.hpp"
#include "parts/section_fields.hpp"

namespace cases {
namespace {

using parts::FieldInfo;
using parts::Presence;

/// Where the reference says what a phrase may be.
constexpr std::string_view kind_of(const parts::Stick&) {
  return "[bar or tube](#bars-tubes-and-plates)";
}
constexpr std::string_view kind_of(const parts::Housing&) {
  return "[housing](#axle)";
}
constexpr std::string_view kind_of(const parts::Plates&) {
  return "[plates](#bracket)";
}
constexpr std::string_view kind_of(const parts::Steel&) {
  return "[steel](#materials)";
}
constexpr std::string_view kind_of(const parts::FilletWeld&) {
  return "[fillet](#bracket)";
}
constexpr std::string_view kind_of(const parts::Rail&) {
  return "[rail](#bracket)";
}
constexpr std::string_view kind_of(const parts::RailFaces&) {
  return "[faces](#bracket)";
}
constexpr std::string_view kind_of(const parts::LinkEnds&) {
  return "[ends](#joints-and-ends)";
}
constexpr std::string_view kind_of(const parts::BoltSpec&) {
  return "[bolt](#joints-and-ends)";
}
constexpr std::string_view kind_of(const parts::TabSpec&) {
  return "[tabs](#joints-and-ends)";
}
constexpr std::string_view kind_of(const parts::ThreadSpec&) {
  return "[thread](#joints-and-ends)";
}
constexpr std::string_view kind_of(const parts::EndWeldSpec&) {
  return "[end weld](#joints-and-ends)";
}
constexpr std::string_view kind_of(const parts::Bend&) {
  return "[bend](#lateral_link)";
}
constexpr std::string_view kind_of(const parts::BraceAt&) {
  return "[place](#brace)";
}
constexpr std::string_view kind_of(const parts::JointSpec&) {
  return "[joint](#joints-and-ends)";
}
constexpr std::string_view kind_of(const parts::Held&) {
  return "[directions](#supports)";
}
constexpr std::string_view kind_of(const parts::Freed&) {
  return "[directions](#members)";
}
constexpr std::string_view kind_of(const parts::Toward&) {
  return "[direction](#points-and-axes)";
}
constexpr std::string_view kind_of(const parts::Coupling&) {
  return "[couplings](#springs)";
}

std::string code(std::string_view text) {
  return fmt::format("`{}`", text);
}

/// "a length" -> "length".
std::string_view without_article(std::string_view name) {
  return name.substr(name.find(' ') + 1);
}

std::string kind_of(const parts::Quantity& limits) {
  const auto shown = [&](double si) { return write_quantity(si, limits.dimension, true); };
  std::string text(without_article(dimension_name(limits.dimension)));
  if (std::isfinite(limits.above))
    text += limits.above == 0.0 ? ", over 0" : ", over " + shown(limits.above);
  if (std::isfinite(limits.at_least)) {
    text += limits.at_least == 0.0 ? ", 0 or more" : ", at least " + shown(limits.at_least);
  }
  if (std::isfinite(limits.at_most)) text += ", at most " + shown(limits.at_most);
  if (limits.may_be_unsure) text += ", or `not sure`";
  return text;
}

/// A value in the units that suit it: "50 mm" rather than "1.969 in".
std::string shorter(double si, parts::Dimension dimension) {
  const std::string inches = shown_quantity(si, dimension, true);
  const std::string metric = shown_quantity(si, dimension, false);
  return metric.size() < inches.size() ? metric : inches;
}

/// One row a field: a visitor for parts' `fields(visitor, part)`.
class FieldRows {
 public:
  FieldRows(const FormatExamples& examples, std::string_view part)
      : examples_(examples), part_(part) {}

  void quantity(const FieldInfo& info, double& value, const parts::Quantity& limits) {
    add(info, kind_of(limits), std::isnan(value) ? "" : shorter(value, limits.dimension));
  }
  template <class T>
  void phrase(const FieldInfo& info, T& value) {
    const bool assumed = info.presence == Presence::assumed;
    add(info, kind_of(value), assumed ? write_phrase(value, parts::Design{}) : "");
  }
  template <class Enum, std::size_t N>
  void choice(const FieldInfo& info, Enum& value, const std::array<parts::Word<Enum>, N>& words) {
    std::vector<std::string> all;
    std::string usual;
    for (const parts::Word<Enum>& word : words) {
      all.push_back(code(word.word));
      if (word.value == value) usual = word.word;
    }
    add(info, join(all, all.size() > 2 ? ", " : " or "), usual);
  }
  void flag(const FieldInfo& info, bool& value) {
    FieldInfo shown = info;
    if (info.presence == Presence::optional && info.basis.empty()) shown.basis = "`no`";
    add(shown, "`yes` or `no`", value ? "yes" : "no");
  }
  void text(const FieldInfo& info, std::string& value) { add(info, "name, or a few words", value); }
  void point(const FieldInfo& info, std::string&) { add(info, "name of a [point](#points)", ""); }
  void points(const FieldInfo& info, std::vector<std::string>&) {
    add(info, "list of [points](#points)", "");
  }
  void vector(const FieldInfo& info, std::array<double, 3>&, parts::Dimension dimension) {
    add(info, fmt::format("three of one kind: {}", without_article(dimension_name(dimension))), "");
  }
  void outline(const FieldInfo& info, std::vector<std::array<double, 2>>&) {
    add(info, "list of two lengths each", "");
  }
  void lengths(const FieldInfo& info, std::vector<double>&) {
    add(info, "length, or a list of them", "");
  }

  [[nodiscard]] std::string table() const {
    return "| key | what it is | kind | example | left out |\n| --- | --- | --- | --- | --- |\n" +
           rows_;
  }

 private:
  /// @param usual  what an assumed field has in its place
  void add(const FieldInfo& info, std::string_view kind, std::string_view usual) {
    std::vector<std::string> examples;
    for (const std::string& text : examples_.of(part_, info)) examples.push_back(code(text));
    INVARIANT(!examples.empty());  // every key stands in one of the files
    const std::string other = info.other_key.empty() ? "" : " or " + code(info.other_key);
    rows_ += fmt::format("| {}{} | {} | {} | {} | {} |\n", code(info.key), other, info.meaning,
                         kind, join(examples, "; "), left_out(info, usual));
  }

  static std::string left_out(const FieldInfo& info, std::string_view usual) {
    switch (info.presence) {
      case Presence::required:
        return "**required**";
      case Presence::assumed:
        return fmt::format("{}: {}", code(usual), info.basis);
      case Presence::optional:
        break;
    }
    return info.basis.empty() ? "may be" : std::string(info.basis);
  }

  const FormatExamples& examples_;
  std::string_view part_;
  std::string rows_;
};

template <class Part>
std::string table_of(const FormatExamples& examples, std::string_view name, Part part) {
  using parts::fields;
  FieldRows rows(examples, name);
  fields(rows, part);
  return rows.table();
}

template <class Part>
std::string table_for(const FormatExamples& examples, std::string_view name) {
  return table_of(examples, name, Part{});
}

struct PartTable {
  std::string_view name;
  std::string (*write)(const FormatExamples& examples, std::string_view name);
};

constexpr std::array kTables{PartTable{"vehicle", table_for<parts::VehicleEntry>},
                             PartTable{"lateral_link", table_for<parts::LateralLink>},
                             PartTable{"bracket", table_for<parts::Bracket>},
                             PartTable{"brace", table_for<parts::Brace>},
                             PartTable{"frame", table_for<parts::Frame>},
                             PartTable{"arm", table_for<parts::Arm>},
                             PartTable{"axle", table_for<parts::Axle>},
                             PartTable{"limit_strap", table_for<parts::LimitStrap>},
                             PartTable{"steering", table_for<parts::Steering>},
                             PartTable{"materials", table_for<sections::Material>},
                             PartTable{"joints", table_for<parts::GivenJoint>},
                             PartTable{"members", table_for<parts::Member>},
                             PartTable{"supports", table_for<parts::PlainSupport>},
                             PartTable{"springs", table_for<parts::PlainSpring>},
                             PartTable{"rigid", table_for<parts::RigidSet>},
                             PartTable{"side_welds", table_for<parts::SideWeld>},
                             PartTable{"bolt_groups", table_for<parts::BoltedGroup>},
                             PartTable{"forces", table_for<parts::PlainForce>},
                             PartTable{"line_loads", table_for<parts::LineLoad>},
                             PartTable{"strains", table_for<parts::GivenStrain>},
                             PartTable{"settlements", table_for<parts::Settlement>},
                             PartTable{"self_weight", table_for<parts::SelfWeight>},
                             PartTable{"load_cases", table_for<parts::CustomCase>},
                             PartTable{"duty", table_for<parts::DutyEntry>}};

}  // namespace

std::string format_table(const FormatExamples& examples, std::string_view part) {
  for (const PartTable& table : kTables) {
    if (table.name == part) return table.write(examples, part);
  }
  const std::optional<sections::Shape> shape = shape_of_word(part.substr(part.find('.') + 1));
  INVARIANT(shape.has_value());
  return std::visit([&](const auto& s) { return table_of(examples, part, s); }, *shape);
}

}  // namespace cases
