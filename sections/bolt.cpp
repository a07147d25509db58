#include "sections/bolt.hpp"

#include "sections/csv_table.hpp"
#include "sections/data_text.hpp"

namespace sections {
namespace {

double circle(double diameter) {
  return base::kPi / 4.0 * diameter * diameter;
}

bool is_inch(const CsvRow& row) {
  return row.text("system") == "inch";
}

/// "grade 8" -> "8".
std::string_view number_of(std::string_view name) {
  return name.substr(name.rfind(' ') + 1);
}

}  // namespace

double BoltThread::tensile_area() const {
  return circle(diameter - (inch ? 0.9743 : 0.938194) * pitch);
}

double BoltThread::shank_area() const {
  return circle(diameter);
}

double BoltThread::root_diameter() const {
  return diameter - 1.226869 * pitch;
}

double BoltThread::standard_hole() const {
  constexpr double kRounding = 1e-6;
  if (inch) return diameter + base::kInch / (diameter < base::kInch - kRounding ? 16.0 : 8.0);
  return diameter + base::kMillimeter * (diameter < 0.022 + kRounding ? 2.0 : 3.0);
}

const std::vector<BoltThread>& bolt_threads() {
  static const std::vector<BoltThread> all = [] {
    std::vector<BoltThread> list;
    for_each_row(data::bolt_threads(), [&](const CsvRow& row) {
      list.push_back({.name = std::string(row.text("name")),
                      .inch = is_inch(row),
                      .coarse = row.text("series") == "coarse",
                      .diameter = row.number("diameter_mm") * base::kMillimeter,
                      .pitch = row.number("pitch_mm") * base::kMillimeter,
                      .mark = row.mark()});
    });
    return list;
  }();
  return all;
}

const std::vector<BoltGrade>& bolt_grades() {
  static const std::vector<BoltGrade> all = [] {
    std::vector<BoltGrade> list;
    for_each_row(data::bolt_grades(), [&](const CsvRow& row) {
      list.push_back({.name = std::string(row.text("name")),
                      .standard = std::string(row.text("standard")),
                      .inch = is_inch(row),
                      .diameter_over = row.number("d_over_mm") * base::kMillimeter,
                      .diameter_to = row.number("d_to_mm") * base::kMillimeter,
                      .proof = row.number("proof_mpa") * base::kMegapascal,
                      .yield = row.number("yield_mpa") * base::kMegapascal,
                      .tensile = row.number("tensile_mpa") * base::kMegapascal,
                      .mark = row.mark()});
    });
    return list;
  }();
  return all;
}

const BoltGrade* find_bolt_grade(std::string_view name, const BoltThread& thread) {
  constexpr double kRounding = 1e-6;
  for (const BoltGrade& grade : bolt_grades()) {
    const bool named = name == grade.name || name == number_of(grade.name);
    const bool fits = thread.diameter > grade.diameter_over + kRounding &&
                      thread.diameter < grade.diameter_to + kRounding;
    if (named && fits && grade.inch == thread.inch) return &grade;
  }
  return nullptr;
}

}  // namespace sections
