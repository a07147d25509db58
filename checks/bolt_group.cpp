#include "checks/bolt_group.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <fmt/format.h>

#include "base/invariant.hpp"
#include "checks/bolt_slip.hpp"
#include "checks/caveat.hpp"
#include "checks/value.hpp"

namespace checks {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

constexpr double kOnOneLine = 1e-8;
constexpr double kNothing = 1e-9;

/// A group about its centroid, with z along its bolts.
struct TurnedGroup {
  Vector3d centroid = Vector3d::Zero();
  Matrix3d axes = Matrix3d::Identity();  // columns: two principal ones across the bolts, theirs
  std::vector<Vector3d> at;              // from the centroid, in those axes
  double sum_x2 = 0.0;
  double sum_y2 = 0.0;
  double reach = 0.0;
};

TurnedGroup turned_group(const BoltGroup& group) {
  TurnedGroup t;
  for (const Vector3d& at : group.at) t.centroid += at / static_cast<double>(group.at.size());
  const Vector3d e1 = group.along.unitOrthogonal();
  const Vector3d e2 = group.along.cross(e1);
  double xx = 0.0;
  double yy = 0.0;
  double xy = 0.0;
  for (const Vector3d& at : group.at) {
    const double x = (at - t.centroid).dot(e1);
    const double y = (at - t.centroid).dot(e2);
    xx += x * x;
    yy += y * y;
    xy += x * y;
  }
  const double turn = 0.5 * std::atan2(2.0 * xy, xx - yy);
  t.axes.col(0) = std::cos(turn) * e1 + std::sin(turn) * e2;
  t.axes.col(1) = group.along.cross(t.axes.col(0));
  t.axes.col(2) = group.along;
  for (const Vector3d& at : group.at) {
    const Vector3d r = t.axes.transpose() * (at - t.centroid);
    t.at.push_back(r);
    t.sum_x2 += r.x() * r.x();
    t.sum_y2 += r.y() * r.y();
    t.reach = std::max(t.reach, r.head<2>().norm());
  }
  return t;
}

/// The force and the moment about the centroid, in the axes of the group.
Wrench at_centroid(const TurnedGroup& t, const Wrench& w) {
  return {.force = t.axes.transpose() * w.force,
          .moment = t.axes.transpose() * (w.moment + (w.at - t.centroid).cross(w.force)),
          .at = Vector3d::Zero()};
}

std::vector<BoltShare> shares_of(const TurnedGroup& t, const Wrench& w) {
  const double n = static_cast<double>(t.at.size());
  const double flat = kOnOneLine * (t.sum_x2 + t.sum_y2);
  // A moment beside which the force on an arm as long as the group is small counts as none.
  const double none = kNothing * (w.moment.norm() + t.reach * w.force.norm());
  const double polar = t.sum_x2 + t.sum_y2;
  const auto cannot = [&](double moment, double sum) {
    return !(sum > flat) && std::abs(moment) > none;
  };
  if (cannot(w.moment.x(), t.sum_y2) || cannot(w.moment.y(), t.sum_x2) ||
      cannot(w.moment.z(), polar)) {
    return {};
  }
  const auto per = [&](double moment, double sum) { return sum > flat ? moment / sum : 0.0; };
  const double turn = per(w.moment.z(), polar);
  std::vector<BoltShare> shares;
  for (const Vector3d& r : t.at) {
    const double x = w.force.x() / n - turn * r.y();
    const double y = w.force.y() / n + turn * r.x();
    const double pull =
        w.force.z() / n + per(w.moment.x(), t.sum_y2) * r.y() - per(w.moment.y(), t.sum_x2) * r.x();
    shares.push_back({std::hypot(x, y), std::abs(pull)});
  }
  return shares;
}

WorkedLine three(std::string symbols, const Vector3d& v, Measure measure) {
  return {std::move(symbols),
          "({0}, {1}, {2})",
          {{v.x(), measure}, {v.y(), measure}, {v.z(), measure}}};
}

/// T of a bolt; a direction in which all bolts lie on one line has no term.
WorkedLine tension_line(const TurnedGroup& t, const Wrench& w, const Vector3d& r, double tension) {
  WorkedLine line{"T = |F_3 / n", "sqrt((({0}) / {1}", {}};
  line.values = {force(w.force.z()), ratio(static_cast<double>(t.at.size()))};
  const auto add_term = [&](const char* words, const char* sign, double turning, double arm,
                            double sum) {
    if (!(sum > kOnOneLine * (t.sum_x2 + t.sum_y2))) return;
    const std::size_t n = line.values.size();
    line.symbols += words;
    line.numbers += fmt::format(" {} ({{{}}}) * ({{{}}}) / {{{}}}", sign, n, n + 1, n + 2);
    line.values.insert(line.values.end(), {moment(turning), length(arm), {sum, Measure::area}});
  };
  add_term(" + M_1 r_2 / sum r_2^2", "+", w.moment.x(), r.y(), t.sum_y2);
  add_term(" - M_2 r_1 / sum r_1^2", "-", w.moment.y(), r.x(), t.sum_x2);
  line.symbols += "|, pull or push";
  line.numbers += fmt::format(")^2) = {{{}}}", line.values.size());
  line.values.push_back(force(tension));
  return line;
}

std::vector<WorkedLine> lines_of_shares(const TurnedGroup& t, const Wrench& w,
                                        const std::vector<BoltShare>& shares, std::size_t which) {
  constexpr std::size_t kMostListed = 12;
  const double n = static_cast<double>(t.at.size());
  const Vector3d& r = t.at[which];
  const BoltShare& share = shares[which];
  std::vector<WorkedLine> lines = {
      three("centroid of the bolts", t.centroid, Measure::length),
      three("F on the group, 1 and 2 across the bolts, 3 along them", w.force, Measure::force),
      three("M about the centroid, same axes", w.moment, Measure::moment),
      {fmt::format("bolt {}, the one judged: r_1, r_2 from the centroid", which + 1),
       "({0}, {1})",
       {length(r.x()), length(r.y())}}};
  const Value sum{t.sum_x2 + t.sum_y2, Measure::area};
  if (sum.si > 0.0) {
    lines.push_back({"sum r^2 over the bolts", "{0}", {sum}});
    lines.push_back(
        {"V = sqrt((F_1 / n - M_3 r_2 / sum r^2)^2 + (F_2 / n + M_3 r_1 / sum r^2)^2)",
         "sqrt((({0}) / {1} - ({2}) * ({3}) / {4})^2 + (({5}) / {1} + ({2}) * ({6}) / {4})^2) = "
         "{7}",
         {force(w.force.x()), ratio(n), moment(w.moment.z()), length(r.y()), sum,
          force(w.force.y()), length(r.x()), force(share.shear)}});
  } else {
    lines.push_back({"V = sqrt(F_1^2 + F_2^2) / n",
                     "sqrt(({0})^2 + ({1})^2) / {2} = {3}",
                     {force(w.force.x()), force(w.force.y()), ratio(n), force(share.shear)}});
  }
  lines.push_back(tension_line(t, w, r, share.tension));
  for (std::size_t i = 0; i < shares.size() && shares.size() <= kMostListed; ++i) {
    lines.push_back({fmt::format("of bolt {}: r_1, r_2; V, T", i + 1),
                     "({0}, {1}); {2}, {3}",
                     {length(t.at[i].x()), length(t.at[i].y()), force(shares[i].shear),
                      force(shares[i].tension)}});
  }
  return lines;
}

}  // namespace

std::vector<BoltShare> bolt_shares(const BoltGroup& group, const Wrench& wrench) {
  INVARIANT(!group.at.empty());
  const TurnedGroup t = turned_group(group);
  return shares_of(t, at_centroid(t, wrench));
}

std::vector<WorkedLine> share_lines(const BoltGroup& group, const Wrench& wrench,
                                    std::size_t which) {
  INVARIANT(which < group.at.size());
  const TurnedGroup t = turned_group(group);
  const Wrench w = at_centroid(t, wrench);
  const std::vector<BoltShare> shares = shares_of(t, w);
  return shares.empty() ? std::vector<WorkedLine>() : lines_of_shares(t, w, shares, which);
}

namespace {

/// The bolt of the group whose finding has the largest demand, after the lines of its shares.
template <class One>
Finding worst_bolt(const BoltGroupInput& in, const char* check, const One& one) {
  INVARIANT(!in.group.at.empty());
  const TurnedGroup t = turned_group(in.group);
  const Wrench w = at_centroid(t, in.wrench);
  const std::vector<BoltShare> shares = shares_of(t, w);
  if (shares.empty()) {
    Finding f{.check = check, .measure = Measure::ratio};
    f.required = in.required;
    f.capacity = 1.0;
    f.source = "AISC Manual, part 7, elastic method, from memory";
    leave_undecided(f,
                    "its bolts lie on one line, and a moment turns about it: they cannot hold it; "
                    "give a bolt beside that line");
    return f;
  }
  Finding worst;
  std::size_t which = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    Finding f = one(shares[i]);
    if (i > 0 && !(f.demand > worst.demand)) continue;
    worst = std::move(f);
    which = i;
  }
  worst.check = check;
  worst.source =
      "shares by the elastic method: AISC Manual, part 7, from memory, and Shigley, Mechanical "
      "Engineering Design, 9th ed., example 8-7, read; each bolt: " +
      worst.source;
  std::vector<WorkedLine> lines = lines_of_shares(t, w, shares, which);
  lines.insert(lines.end(), worst.lines.begin(), worst.lines.end());
  worst.lines = std::move(lines);
  worst.notes.emplace_back(
      "equal bolts between stiff parts, pull about their centroid as when they are drawn tight. A "
      "push along a bolt counts as a pull: which side the part lies on is not asked");
  return worst;
}

}  // namespace

namespace {

/// What is said of bolts that are nearer to each other than the code wants them.
void warn_of_spacing(const BoltGroupInput& in, Finding& f) {
  constexpr double kLeast = 8.0 / 3.0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < in.group.at.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Vector3d apart = in.group.at[i] - in.group.at[j];
      least = std::min(least, apart.cross(in.group.along).norm());
    }
  }
  const double spacing = least / in.bolt.thread.diameter;
  if (!(spacing < kLeast * (1.0 - kNothing))) return;
  f.notes.push_back(fmt::format(
      "{}bolts {:.2f} d apart, under 2-2/3 d (AISC 360-22 J3.4, from memory): the plate between "
      "their holes may tear out, which is not checked",
      kCaveat, spacing));
}

}  // namespace

Finding bolt_group(const BoltGroupInput& in) {
  Finding worst = worst_bolt(in, "bolt group", [&](const BoltShare& share) {
    BoltInput one = in.bolt;
    one.shear = share.shear;
    one.tension = share.tension;
    one.required = in.required;
    one.safety_factor = in.safety_factor;
    return bolt_shear(one);
  });
  // Said of one bolt in an eye; the parts of a group lie against each other.
  worst.notes.erase(std::remove_if(worst.notes.begin(), worst.notes.end(),
                                   [](const std::string& note) {
                                     return note.rfind("what it goes through", 0) == 0;
                                   }),
                    worst.notes.end());
  worst.notes.emplace_back(
      "the parts lie against each other: bending of the bolts over a gap is not in it");
  worst.notes.emplace_back(
      "not in it: block shear and tear-out between the holes, and the net section of the bar at "
      "them");
  warn_of_spacing(in, worst);
  return worst;
}

Finding bolt_group_slip(const BoltGroupInput& in) {
  return worst_bolt(in, "slip", [&](const BoltShare& share) {
    return bolt_slip({.thread = in.bolt.thread,
                      .grade = in.bolt.grade,
                      .planes = in.bolt.planes,
                      .shear = share.shear,
                      .tension = share.tension,
                      .required = in.required,
                      .safety_factor = in.safety_factor});
  });
}

}  // namespace checks
