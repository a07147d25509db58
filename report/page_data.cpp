#include "report/page_data.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "report/answer_words.hpp"
#include "report/section_outline.hpp"
#include "report/units_shown.hpp"

namespace report {
namespace {

using Json = nlohmann::ordered_json;
using studies::Drawing;
using studies::Place3;

/// To so many significant digits: a page need not be longer than what is seen of it.
double rounded(double value, int digits) {
  if (!std::isfinite(value) || value == 0.0) return 0.0;
  const double step = std::pow(10.0, digits - 1 - std::floor(std::log10(std::abs(value))));
  return std::round(value * step) / step;
}

/// To a tenth of a millimeter.
double length_rounded(double meters) {
  return std::round(meters * 1.0e4) / 1.0e4;
}

Json point(const Place3& p) {
  return {length_rounded(p[0]), length_rounded(p[1]), length_rounded(p[2])};
}

Json direction(const Place3& p) {
  return {rounded(p[0], 4), rounded(p[1], 4), rounded(p[2], 4)};
}

template <class Items, class Writer>
Json array_of(const Items& items, Writer write) {
  Json list = Json::array();
  for (const auto& item : items) list.push_back(write(item));
  return list;
}

Json outline_lists(const std::vector<sections::Shape>& shapes) {
  const auto outlines_of = [](const sections::Shape& shape) {
    return array_of(outlines(shape), [](const Outline& outline) {
      return array_of(outline, [](const std::array<double, 2>& p) {
        return Json{rounded(p[0], 5), rounded(p[1], 5)};
      });
    });
  };
  bool same = true;
  for (const sections::Shape& shape : shapes) same = same && shape == shapes.front();
  if (same) return Json::array({outlines_of(shapes.front())});
  return array_of(shapes, outlines_of);
}

Json piece_object(const studies::DrawnPiece& p) {
  Json out;
  out["part"] = p.part;
  out["name"] = p.name;
  out["line"] = array_of(p.line, point);
  out["along"] = array_of(p.along, length_rounded);
  out["y"] = array_of(p.y_axes, direction);
  out["sections"] = outline_lists(p.shapes);
  return out;
}

/// N, Vy, Vz, T, My, Mz.
Json resultants(const sections::Resultants& r) {
  constexpr int kDigits = 4;
  return {rounded(r.n, kDigits), rounded(r.vy, kDigits), rounded(r.vz, kDigits),
          rounded(r.t, kDigits), rounded(r.my, kDigits), rounded(r.mz, kDigits)};
}

double largest_component(const std::vector<std::vector<Place3>>& shape) {
  double largest = 0.0;
  for (const std::vector<Place3>& line : shape) {
    for (const Place3& p : line) {
      for (const double component : p) largest = std::max(largest, std::abs(component));
    }
  }
  return largest;
}

/// In whole parts of the largest component.
/// @param parts  that it has
Json in_parts(const std::vector<std::vector<Place3>>& shape, double parts) {
  const double largest = largest_component(shape);
  const double scale = largest > 0.0 ? parts / largest : 0.0;
  const auto whole = [scale](double component) {
    return static_cast<int>(std::lround(scale * component));
  };
  return array_of(shape, [&](const std::vector<Place3>& line) {
    return array_of(line, [&](const Place3& p) {
      return Json{whole(p[0]), whole(p[1]), whole(p[2])};
    });
  });
}

Json drawn_case(const studies::DrawnCase& c, bool inches) {
  Json out;
  out["name"] = c.load_case;
  out["set"] = c.set;
  constexpr double kParts = 5000.0;
  out["moved"] = in_parts(c.moved, kParts);
  out["moved_unit"] = largest_component(c.moved) / kParts;
  out["forces"] = array_of(c.forces, [](const std::vector<sections::Resultants>& line) {
    return array_of(line, resultants);
  });
  out["loads"] = array_of(c.loads, [&](const studies::DrawnForce& f) {
    Json one;
    one["what"] = f.what;
    one["at"] = point(f.at);
    one["force"] = {rounded(f.force[0], 6), rounded(f.force[1], 6), rounded(f.force[2], 6)};
    one["shown"] =
        shown(std::hypot(f.force[0], f.force[1], f.force[2]), checks::Measure::force, inches);
    one["holds"] = f.holds;
    return one;
  });
  out["modes"] = array_of(c.modes, [](const studies::DrawnMode& mode) {
    Json one;
    one["factor"] = mode.factor;
    one["what"] = part_words(mode.what);
    // Its size says nothing.
    one["shape"] = in_parts(mode.shape, 1000.0);
    return one;
  });
  return out;
}

Json utilization_or_null(double value) {
  return std::isfinite(value) ? Json(value) : Json(nullptr);
}

/// Of each part: at its worst, and in each load case (-1 = it is not asked anything there).
Json part_objects(const studies::Answer& answer) {
  const Drawing& drawing = *answer.drawing;
  Json out = Json::object();
  for (const auto& known : worst_utilizations(answer.findings)) {
    const std::string& part = known.first;
    Json& one = out[part];
    one["worst"] = utilization_or_null(known.second);
    one["cases"] = array_of(drawing.cases, [&](const studies::DrawnCase& c) {
      for (const studies::PartInCase& p : drawing.utilization) {
        if (p.part == part && p.load_case == c.load_case) return utilization_or_null(p.utilization);
      }
      return Json(-1);
    });
  }
  for (const studies::DrawnPiece& p : drawing.pieces) {
    if (out.contains(p.part)) continue;
    out[p.part] = {{"worst", -1}, {"cases", Json::array()}};
  }
  return out;
}

/// A `<` ends a script element or starts a comment in it.
std::string for_script(const Json& json) {
  const std::string text = json.dump(-1, ' ', false, Json::error_handler_t::replace);
  std::string out;
  for (const char c : text) {
    if (c == '<' || c == '>' || c == '&') {
      out += fmt::format("\\u{:04x}", static_cast<unsigned>(c));
    } else {
      out += c;
    }
  }
  return out;
}

Json unit_object(const char* name, double si) {
  return {{"name", name}, {"si", si}};
}

}  // namespace

std::string page_data(const studies::Answer& answer, const View& view) {
  const Drawing& drawing = *answer.drawing;
  const bool inches = answer.inches;
  Json out;
  out["view"] = {view.yaw, view.pitch};
  out["first"] = answer.findings.empty() ? "" : answer.findings.front().part;
  out["units"]["length"] =
      inches ? unit_object("in", base::kInch) : unit_object("mm", base::kMillimeter);
  out["units"]["force"] =
      inches ? unit_object("lbf", base::kPoundForce) : unit_object("kN", base::kKilonewton);
  out["units"]["moment"] = inches ? unit_object("ft-lbf", base::kPoundForce * 12.0 * base::kInch)
                                  : unit_object("N m", 1.0);
  if (drawing.wheels) {
    out["wheels"] = array_of(*drawing.wheels, point);
    out["tire"] = length_rounded(drawing.tire_radius);
  }
  out["parts"] = part_objects(answer);
  out["pieces"] = array_of(drawing.pieces, piece_object);
  out["cases"] =
      array_of(drawing.cases, [&](const studies::DrawnCase& c) { return drawn_case(c, inches); });
  return for_script(out);
}

}  // namespace report
