#include "report/drawing_svg.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <vector>

#include <Eigen/Dense>
#include <fmt/format.h>

#include "report/answer_words.hpp"
#include "report/html_text.hpp"
#include "report/section_outline.hpp"
#include "report/utilization_band.hpp"
#include "report/wrap.hpp"

namespace report {
namespace {

using Vector3 = Eigen::Vector3d;
using studies::Drawing;
using studies::DrawnPiece;

constexpr int kWidth = 860;
constexpr int kHeight = 540;
constexpr double kMargin = 40.0;
constexpr int kShades = 8;

Vector3 vector(const studies::Place3& p) {
  return {p[0], p[1], p[2]};
}

struct Face {
  std::vector<Vector3> points;
  std::string part;  ///< empty = drawn for orientation alone
  int band = 6;
  bool flat = true;  ///< its edges are drawn; else it is part of something round
};

using Ring = std::vector<Vector3>;

/// A section's outlines where the line has its point `i`, square to the line there.
std::vector<Ring> rings_at(const DrawnPiece& piece, std::size_t i) {
  const std::size_t last = piece.line.size() - 1;
  const Vector3 along =
      (vector(piece.line[std::min(last, i + 1)]) - vector(piece.line[i == 0 ? 0 : i - 1]))
          .normalized();
  const Vector3 toward = vector(piece.y_axes[i]);
  const Vector3 y = (toward - toward.dot(along) * along).normalized();
  const Vector3 z = along.cross(y);
  std::vector<Ring> rings;
  for (const Outline& outline : outlines(piece.shapes[i])) {
    Ring& ring = rings.emplace_back();
    for (const auto& p : outline) ring.push_back(vector(piece.line[i]) + p[0] * y + p[1] * z);
  }
  return rings;
}

void add_faces(std::vector<Face>& faces, const DrawnPiece& piece, int band) {
  constexpr double kShortest = 1.0e-9;
  std::vector<Ring> near = rings_at(piece, 0);
  for (const Ring& ring : near) faces.push_back({{ring.rbegin(), ring.rend()}, piece.part, band});
  for (std::size_t i = 1; i < piece.line.size(); ++i) {
    std::vector<Ring> far = rings_at(piece, i);
    if ((vector(piece.line[i]) - vector(piece.line[i - 1])).norm() > kShortest) {
      for (std::size_t k = 0; k < near.size(); ++k) {
        for (std::size_t j = 0; j < near[k].size(); ++j) {
          const std::size_t m = (j + 1) % near[k].size();
          faces.push_back({{near[k][j], near[k][m], far[k][m], far[k][j]},
                           piece.part,
                           band,
                           near[k].size() < 7});
        }
      }
    }
    near = std::move(far);
  }
  for (const Ring& ring : near) faces.push_back({ring, piece.part, band});
}

/// The axle from wheel to wheel, for orientation.
DrawnPiece axle_drawn(const std::array<studies::Place3, 2>& wheels) {
  constexpr int kPieces = 8;
  constexpr double kAcross = 0.08;  // [m]
  DrawnPiece out;
  for (int i = 0; i <= kPieces; ++i) {
    const Vector3 at =
        vector(wheels[1]) + (vector(wheels[0]) - vector(wheels[1])) * (i / double{kPieces});
    out.line.push_back({at[0], at[1], at[2]});
    out.shapes.emplace_back(sections::RoundBar{kAcross});
    out.y_axes.push_back({1.0, 0.0, 0.0});
  }
  return out;
}

std::vector<Vector3> rim(const studies::Place3& center, double radius) {
  constexpr int kSides = 48;
  std::vector<Vector3> out;
  for (int i = 0; i < kSides; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / kSides;
    out.push_back(vector(center) + radius * Vector3(std::cos(angle), 0.0, std::sin(angle)));
  }
  return out;
}

/// From the scene to the sheet.
class Projection {
 public:
  Projection(const Drawing& drawing, const View& view)
      : toward_(std::cos(view.pitch) * std::cos(view.yaw),
                std::cos(view.pitch) * std::sin(view.yaw), std::sin(view.pitch)),
        right_(-std::sin(view.yaw), std::cos(view.yaw), 0.0),
        up_(toward_.cross(right_)) {
    Eigen::AlignedBox2d seen;
    const auto take = [&](const Vector3& p) {
      seen.extend(Eigen::Vector2d(right_.dot(p), up_.dot(p)));
    };
    for (const DrawnPiece& piece : drawing.pieces) {
      for (std::size_t i = 0; i < piece.line.size(); ++i) {
        for (const Ring& ring : rings_at(piece, i)) {
          for (const Vector3& p : ring) take(p);
        }
      }
    }
    if (drawing.wheels) {
      for (const studies::Place3& center : *drawing.wheels) {
        for (const Vector3& p : rim(center, drawing.tire_radius)) take(p);
      }
    }
    middle_ = seen.center();
    const double least = std::numeric_limits<double>::min();
    scale_ = std::min((kWidth - 2.0 * kMargin) / std::max(least, seen.sizes()[0]),
                      (kHeight - 2.0 * kMargin) / std::max(least, seen.sizes()[1]));
  }

  [[nodiscard]] const Vector3& toward() const { return toward_; }
  [[nodiscard]] Vector3 light() const { return (toward_ - 0.5 * right_ + 0.9 * up_).normalized(); }
  [[nodiscard]] std::string path(const std::vector<Vector3>& points) const {
    std::string out;
    for (const Vector3& p : points) {
      out += fmt::format("{}{:.1f} {:.1f}", out.empty() ? "M" : "L",
                         0.5 * kWidth + scale_ * (right_.dot(p) - middle_[0]),
                         0.5 * kHeight - scale_ * (up_.dot(p) - middle_[1]));
    }
    return out + "Z";
  }

 private:
  Vector3 toward_;
  Vector3 right_;
  Vector3 up_;
  Eigen::Vector2d middle_ = Eigen::Vector2d::Zero();
  double scale_ = 1.0;
};

struct Seen {
  const Face* face;
  double depth;
  int shade;
};

/// The faces turned toward the eye, farthest first.
std::vector<Seen> seen_faces(const std::vector<Face>& faces, const Projection& projection) {
  std::vector<Seen> seen;
  for (const Face& face : faces) {
    const Vector3 normal =
        (face.points[1] - face.points[0]).cross(face.points[2] - face.points[0]).normalized();
    if (!(normal.dot(projection.toward()) > 0.0)) continue;
    double depth = 0.0;
    for (const Vector3& p : face.points) depth += p.dot(projection.toward());
    const double dark = (kShades - 1) * (1.0 - normal.dot(projection.light()));
    seen.push_back({&face, depth / static_cast<double>(face.points.size()),
                    std::clamp(static_cast<int>(std::lround(dark)), 0, kShades - 1)});
  }
  std::stable_sort(seen.begin(), seen.end(),
                   [](const Seen& a, const Seen& b) { return a.depth < b.depth; });
  return seen;
}

// Of the bands, then of what is drawn for orientation; as on a light page.
constexpr std::array<std::array<int, 3>, 7> kColors = {{{227, 235, 238},
                                                        {181, 206, 217},
                                                        {126, 169, 189},
                                                        {63, 120, 147},
                                                        {143, 29, 12},
                                                        {217, 211, 195},
                                                        {213, 216, 214}}};

std::string face_color(std::size_t band, int shade) {
  const double keep = 1.0 - 0.054 * shade;
  const auto part = [&](std::size_t i) {
    return static_cast<int>(std::lround(keep * kColors[band][i]));
  };
  return fmt::format("#{:02x}{:02x}{:02x}", part(0), part(1), part(2));
}

std::string own_style() {
  std::string out =
      ".f{stroke-width:.7;stroke-linejoin:round}"
      ".wheel{fill:none;stroke:#55616a;stroke-dasharray:9 3 2 3}"
      "text{font:14px sans-serif;fill:#1d2428}.small{font-size:12px}";
  for (std::size_t band = 0; band < kColors.size(); ++band) {
    for (int shade = 0; shade < kShades; ++shade) {
      out += fmt::format(".u{0}.k{1}{{fill:{2};stroke:{2}}}", band, shade, face_color(band, shade));
    }
  }
  return out + ".f.flat{stroke:#2c3a42;stroke-width:.5}.f.context{opacity:.75}";
}

std::string text_at(double x, double y, const std::string& words, const char* kind = "") {
  return fmt::format("<text x=\"{:.0f}\" y=\"{:.0f}\"{}>{}</text>\n", x, y, kind, escaped(words));
}

}  // namespace

std::map<std::string, double> worst_utilizations(const std::vector<checks::Finding>& findings) {
  std::map<std::string, double> worst;
  for (const checks::Finding& f : findings) {
    const bool decided = f.state != checks::State::undecided;
    const auto [known, first] = worst.try_emplace(f.part, decided ? f.utilization() : base::kUnset);
    if (first) continue;
    // Findings stand worst first, undecided ones before all.
    if (std::isnan(known->second) && f.state == checks::State::over) {
      known->second = f.utilization();
    }
  }
  return worst;
}

Picture picture_of(const studies::Answer& answer, const View& view) {
  const Drawing& drawing = *answer.drawing;
  const Projection projection(drawing, view);
  const std::map<std::string, double> worst = worst_utilizations(answer.findings);
  std::vector<Face> faces;
  Picture out{kWidth, kHeight, {}};
  if (drawing.wheels) {
    add_faces(faces, axle_drawn(*drawing.wheels), 6);
    for (const studies::Place3& wheel : *drawing.wheels) {
      out.marks += fmt::format("<path class=\"wheel\" d=\"{}\"/>\n",
                               projection.path(rim(wheel, drawing.tire_radius)));
    }
  }
  for (const DrawnPiece& piece : drawing.pieces) {
    const auto known = worst.find(piece.part);
    add_faces(faces, piece, known == worst.end() ? 6 : utilization_band(known->second));
  }
  for (const Seen& seen : seen_faces(faces, projection)) {
    out.marks +=
        fmt::format("<path class=\"f u{}{}{} k{}\" d=\"{}\"/>\n", seen.face->band,
                    seen.face->part.empty() ? " context" : "", seen.face->flat ? " flat" : "",
                    seen.shade, projection.path(seen.face->points));
  }
  return out;
}

std::string drawing_svg(const studies::Answer& answer) {
  constexpr int kLine = 18;
  constexpr int kColumns = 118;
  const Picture picture = picture_of(answer, {});
  std::vector<std::string> above = wrapped_lines(verdict_sentence(answer, ""), kColumns);
  std::vector<std::string> below =
      wrapped_lines("CAUTION: " + joined(studies::cautions(), " "), kColumns);
  const int top = kLine * (static_cast<int>(above.size()) + 2);
  const int legend = top + picture.height + kLine;
  const int height = legend + kLine * (static_cast<int>(below.size()) + 2);
  std::string out = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}\" height=\"{1}\" "
      "viewBox=\"0 0 {0} {1}\" role=\"img\">\n<title>{2}</title>\n<style>{3}</style>\n"
      "<rect width=\"{0}\" height=\"{1}\" fill=\"#fbfaf6\"/>\n",
      kWidth, height, escaped(answer.title), own_style());
  out += text_at(16, kLine + 4, answer.title, " font-weight=\"bold\"");
  for (std::size_t i = 0; i < above.size(); ++i) {
    out += text_at(16, kLine * static_cast<int>(i + 2) + 4, above[i], " class=\"small\"");
  }
  out += fmt::format("<g transform=\"translate(0 {})\">\n{}</g>\n", top, picture.marks);
  int x = 16;
  out += text_at(x, legend, "utilization:", " class=\"small\"");
  x += 76;
  for (std::size_t band = 0; band < kBandNames.size(); ++band) {
    out += fmt::format("<rect class=\"f u{} k0\" x=\"{}\" y=\"{}\" width=\"22\" height=\"12\"/>\n",
                       band, x, legend - 11);
    const std::string name = kBandNames[band];
    out += text_at(x + 28, legend, name, " class=\"small\"");
    x += 44 + 6 * static_cast<int>(name.size());
  }
  for (std::size_t i = 0; i < below.size(); ++i) {
    out += text_at(16, legend + kLine * static_cast<int>(i + 2), below[i], " class=\"small\"");
  }
  return out + "</svg>\n";
}

}  // namespace report
