#include "report/vtu.hpp"

#include <array>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "report/drawing_svg.hpp"
#include "report/html_text.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using studies::Drawing;
using studies::DrawnCase;

constexpr int kLine = 3;  // VTK_LINE
// Not every reader of ASCII numbers takes a NaN.
constexpr double kUndecided = -1.0;
constexpr double kNotAsked = -2.0;

double as_number(double utilization) {
  return std::isnan(utilization) ? kUndecided : utilization;
}

/// Two hyphens would end a comment.
std::string xml_comment(const std::string& words) {
  std::string out;
  for (const char c : escaped(words)) {
    if (c == '-' && !out.empty() && out.back() == '-') out += ' ';
    out += c;
  }
  return fmt::format("<!-- {} -->\n", out);
}

std::string data_array(const std::string& type, const std::string& name, int components,
                       const std::string& numbers) {
  return fmt::format(
      "<DataArray type=\"{}\" Name=\"{}\" NumberOfComponents=\"{}\" format=\"ascii\">\n{}"
      "</DataArray>\n",
      type, escaped(name), components, numbers);
}

template <std::size_t N>
std::string number_row(const std::array<double, N>& numbers) {
  std::string out;
  for (std::size_t i = 0; i < N; ++i) out += fmt::format("{}{}", i == 0 ? "" : " ", numbers[i]);
  return out + '\n';
}

std::string point_rows(const Drawing& drawing) {
  std::string out;
  for (const studies::DrawnPiece& piece : drawing.pieces) {
    for (const studies::Place3& p : piece.line) out += number_row(p);
  }
  return out;
}

std::size_t n_points(const Drawing& drawing) {
  std::size_t n = 0;
  for (const studies::DrawnPiece& piece : drawing.pieces) n += piece.line.size();
  return n;
}

/// A number for each segment, the same along a piece.
template <class OfPiece>
std::string of_segments(const Drawing& drawing, const OfPiece& number) {
  std::string out;
  for (std::size_t i = 0; i < drawing.pieces.size(); ++i) {
    const auto value = number(i);
    for (std::size_t k = 1; k < drawing.pieces[i].line.size(); ++k) {
      out += fmt::format("{}\n", value);
    }
  }
  return out;
}

std::string displacement_rows(const DrawnCase& c) {
  std::string out;
  for (const auto& line : c.moved) {
    for (const studies::Place3& p : line) out += number_row(p);
  }
  return out;
}

/// N, Vy, Vz, then T, My, Mz.
std::string resultants_of(const DrawnCase& c) {
  std::string out;
  for (const auto& line : c.forces) {
    for (const sections::Resultants& r : line) {
      out += number_row(std::array<double, 6>{r.n, r.vy, r.vz, r.t, r.my, r.mz});
    }
  }
  return out;
}

double in_case(const Drawing& drawing, const std::string& part, const std::string& load_case) {
  for (const studies::PartInCase& p : drawing.utilization) {
    if (p.part == part && p.load_case == load_case) return as_number(p.utilization);
  }
  return kNotAsked;
}

std::string cell_data(const studies::Answer& answer) {
  const Drawing& drawing = *answer.drawing;
  const auto worst = worst_utilizations(answer.findings);
  std::string out =
      data_array("Float64", "utilization", 1, of_segments(drawing, [&](std::size_t i) {
                   const auto known = worst.find(drawing.pieces[i].part);
                   return known == worst.end() ? kNotAsked : as_number(known->second);
                 }));
  for (const DrawnCase& c : drawing.cases) {
    out += data_array("Float64", "utilization, " + c.load_case, 1,
                      of_segments(drawing, [&](std::size_t i) {
                        return in_case(drawing, drawing.pieces[i].part, c.load_case);
                      }));
  }
  return out +
         data_array("Int32", "piece", 1, of_segments(drawing, [](std::size_t i) { return i; }));
}

std::string line_cells(const Drawing& drawing) {
  std::string connectivity;
  std::string offsets;
  std::string types;
  std::size_t first = 0;
  std::size_t end = 0;
  for (const studies::DrawnPiece& piece : drawing.pieces) {
    for (std::size_t k = 1; k < piece.line.size(); ++k) {
      connectivity += fmt::format("{} {}\n", first + k - 1, first + k);
      end += 2;
      offsets += fmt::format("{}\n", end);
      types += fmt::format("{}\n", kLine);
    }
    first += piece.line.size();
  }
  return data_array("Int64", "connectivity", 1, connectivity) +
         data_array("Int64", "offsets", 1, offsets) + data_array("UInt8", "types", 1, types);
}

std::string head_comments(const studies::Answer& answer) {
  std::string out = xml_comment("CAUTION: " + joined(studies::cautions(), " "));
  out += xml_comment(answer.title);
  out += xml_comment(
      "SI. utilization: 1 = the limit; -1 = not decided; -2 = asked nothing. forces: N Vy Vz "
      "[N], T My Mz [N m], in the member's own axes. Each load case with the stiffness set in "
      "which "
      "it is worst.");
  for (const DrawnCase& c : answer.drawing->cases) {
    if (c.moved.empty() || c.forces.empty()) {
      out += xml_comment("not solved, and left out: " + c.load_case);
    }
  }
  for (std::size_t i = 0; i < answer.drawing->pieces.size(); ++i) {
    const studies::DrawnPiece& piece = answer.drawing->pieces[i];
    out += xml_comment(
        fmt::format("piece {}: {}{}{}", i, piece.part, piece.name.empty() ? "" : ", ", piece.name));
  }
  return out;
}

}  // namespace

std::string vtu(const studies::Answer& answer) {
  const Drawing& drawing = *answer.drawing;
  std::size_t n_cells = 0;
  for (const studies::DrawnPiece& piece : drawing.pieces) n_cells += piece.line.size() - 1;
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + head_comments(answer);
  out += fmt::format(
      "<VTKFile type=\"UnstructuredGrid\" version=\"1.0\" byte_order=\"LittleEndian\">\n"
      "<UnstructuredGrid>\n<Piece NumberOfPoints=\"{}\" NumberOfCells=\"{}\">\n",
      n_points(drawing), n_cells);
  out += "<Points>\n" + data_array("Float64", "Points", 3, point_rows(drawing)) + "</Points>\n";
  out += "<Cells>\n" + line_cells(drawing) + "</Cells>\n<PointData>\n";
  for (const DrawnCase& c : drawing.cases) {
    // What was not solved is left out: zeros would read as an answer.
    if (!c.moved.empty()) {
      out += data_array("Float64", "displacement, " + c.load_case, 3, displacement_rows(c));
    }
    if (!c.forces.empty()) {
      out += data_array("Float64", "forces, " + c.load_case, 6, resultants_of(c));
    }
  }
  out += "</PointData>\n<CellData>\n" + cell_data(answer) + "</CellData>\n";
  return out + "</Piece>\n</UnstructuredGrid>\n</VTKFile>\n";
}

}  // namespace report
