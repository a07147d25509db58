#include "studies/design_change.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "parts/length_words.hpp"
#include "sections/stock.hpp"
#include "studies/run.hpp"
#include "studies/sized_part.hpp"

namespace studies {
namespace {

using parts::Design;

// How far above what is there is looked. Proposal: beyond that it is another design.
constexpr double kMostMass = 4.0;
constexpr int kSteps = 6;

using LengthOf = std::function<double&(Design&)>;

ChangeLadder lengths(const Design& design, const std::string& what, const LengthOf& of,
                     const std::vector<double>& values) {
  ChangeLadder out;
  for (const double value : values) {
    out.push_back({what + " " + parts::length_words(value, design.inches),
                   [of, value](Design& changed) { of(changed) = value; }});
  }
  return out;
}

/// The same length some steps longer.
ChangeLadder longer(const Design& design, const std::string& what, const LengthOf& of, double inch,
                    double metric) {
  Design copy = design;
  const double now = of(copy);
  if (!(now > 0.0)) return {};
  std::vector<double> values;
  for (int i = 1; i <= kSteps; ++i) values.push_back(now + i * (design.inches ? inch : metric));
  return lengths(design, what, of, values);
}

/// Plate in stock, thicker than what is there and no thinner than `least`.
ChangeLadder thicker(const Design& design, const std::string& what, const LengthOf& of,
                     double least = 0.0) {
  constexpr double kThickest = 0.0255;
  constexpr double kRounding = 1.0e-5;
  Design copy = design;
  const double now = std::max(of(copy), least - 2.0 * kRounding);
  const std::string unit = design.inches ? " in" : " mm";
  std::vector<double> values;
  for (const sections::PlateList& list : sections::plate_lists()) {
    for (const sections::PlateSize& size : list.sizes) {
      const bool own = size.label.size() > unit.size() &&
                       size.label.compare(size.label.size() - unit.size(), unit.size(), unit) == 0;
      if (own && size.thickness > now + kRounding && size.thickness < kThickest) {
        values.push_back(size.thickness);
      }
    }
  }
  std::sort(values.begin(), values.end());
  return lengths(design, what, of, values);
}

/// Fillets by their leg, grooves by their throat.
ChangeLadder larger_weld(const Design& design, const std::string& what,
                         const std::function<parts::FilletWeld&(Design&)>& of) {
  Design copy = design;
  const bool fillet = of(copy).leg > 0.0;
  const auto size = [of, fillet](Design& d) -> double& {
    return fillet ? of(d).leg : of(d).groove;
  };
  return longer(design, what + (fillet ? " leg" : " groove"), size, base::kInch / 16.0,
                base::kMillimeter);
}

ChangeLadder larger_end_weld(const Design& design, const std::string& what,
                             const std::function<parts::EndWeldSpec&(Design&)>& of) {
  Design copy = design;
  const bool fillet = of(copy).leg > 0.0;
  if (!fillet && !std::isfinite(of(copy).groove)) return {};
  const auto size = [of, fillet](Design& d) -> double& {
    return fillet ? of(d).leg : of(d).groove;
  };
  return longer(design, what + (fillet ? " fillet" : " groove"), size, base::kInch / 16.0,
                base::kMillimeter);
}

using BoltOf = std::function<parts::BoltSpec&(Design&)>;

/// The next sizes of its series in its grade; before them, where its own strength is what is asked
/// for, stronger grades of its size.
/// @param all  that name one bolt; those that are not given stay so
ChangeLadder other_bolts(const Design& design, const std::string& what, std::vector<BoltOf> all,
                         bool grades) {
  Design copy = design;
  all.erase(
      std::remove_if(all.begin(), all.end(), [&](const BoltOf& of) { return !of(copy).given(); }),
      all.end());
  if (all.empty()) return {};
  const parts::BoltSpec now = all.front()(copy);
  ChangeLadder out;
  const auto add = [&](const sections::BoltThread& thread, const sections::BoltGrade& grade) {
    out.push_back({fmt::format("{} {} {}", what, thread.name, grade.name),
                   [all, thread, grade](Design& changed) {
                     for (const BoltOf& of : all) {
                       of(changed).thread = thread;
                       of(changed).grade = grade;
                     }
                   }});
  };
  for (const sections::BoltGrade& grade : sections::bolt_grades()) {
    const sections::BoltGrade* fits = sections::find_bolt_grade(grade.name, now.thread);
    if (grades && fits != nullptr && *fits == grade && grade.tensile > now.grade.tensile) {
      add(now.thread, grade);
    }
  }
  for (const sections::BoltThread& thread : sections::bolt_threads()) {
    if (thread.inch != now.thread.inch || thread.coarse != now.thread.coarse) continue;
    if (!(thread.diameter > now.thread.diameter)) continue;
    const sections::BoltGrade* grade = sections::find_bolt_grade(now.grade.name, thread);
    if (grade != nullptr) add(thread, *grade);
  }
  return out;
}

ChangeLadder stronger_bolt(const Design& design, const std::string& what, std::vector<BoltOf> all) {
  return other_bolts(design, what, std::move(all), true);
}

/// For what it bears on.
ChangeLadder wider_bolt(const Design& design, const std::string& what, std::vector<BoltOf> all) {
  return other_bolts(design, what, std::move(all), false);
}

/// Joints of a higher rating, all ratings alike.
ChangeLadder higher_rating(const Design& design, const std::string& what,
                           const std::function<std::vector<double*>(Design&)>& of) {
  Design copy = design;
  ChangeLadder out;
  for (const double times : {1.1, 1.25, 1.5, 2.0, 3.0}) {
    if (!(*of(copy).front() > 0.0)) continue;
    out.push_back(
        {fmt::format("{} rated {:.3g} times as high", what, times), [of, times](Design& changed) {
           for (double* rating : of(changed)) *rating *= times;
         }});
  }
  return out;
}

template <class Part>
std::vector<double*> ratings(Part& part) {
  return {&part.static_rating, &part.ultimate_rating, &part.axial_rating};
}

ChangeLadder larger_thread(const Design& design) {
  const parts::ThreadSpec& now = design.lateral_link->thread;
  ChangeLadder out;
  for (const sections::BoltThread& thread : sections::bolt_threads()) {
    if (thread.inch != now.thread.inch || thread.coarse != now.thread.coarse) continue;
    if (!(thread.diameter > now.thread.diameter)) continue;
    out.push_back({"rod end thread " + thread.name,
                   [thread](Design& changed) { changed.lateral_link->thread.thread = thread; }});
  }
  return out;
}

/// Sections in stock that are nowhere smaller than what is there.
ChangeLadder larger_section(const Design& design, const std::string& what,
                            const std::function<parts::Stick&(Design&)>& of) {
  Design copy = design;
  const parts::Stick now = of(copy);
  const auto wall = [](const sections::Shape& shape) {
    return sections::governing_thickness(shape);
  };
  const double own = SizeChoice{{.shape = now.shape}, now.material}.mass_per_length();
  constexpr double kRounding = 1.0e-5;
  ChangeLadder out;
  for (const SizeChoice& size : sizes_like(now, design.inches)) {
    const bool larger = outside_of(size.item.shape) >= outside_of(now.shape) - kRounding &&
                        wall(size.item.shape) >= wall(now.shape) - kRounding &&
                        size.mass_per_length() > 1.001 * own &&
                        size.mass_per_length() < kMostMass * own;
    if (!larger) continue;
    out.push_back({what + size.item.label, [of, stick = parts::Stick{size.item.shape, size.steel}](
                                               Design& changed) { of(changed) = stick; }});
  }
  return out;
}

bool starts(const std::string& text, std::string_view start) {
  return text.rfind(start, 0) == 0;
}

bool is_one_of(const std::string& word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool is_of_tabs(const checks::Finding& f) {
  return is_one_of(f.check, {"tab", "tab root", "tab weld"});
}

bool is_of_section(const checks::Finding& f) {
  return is_one_of(f.check, {"yield", "column", "combined forces", "thin wall", "frame stability",
                             "net section"});
}

/// A tab's plates or its weld, whichever the check is about.
ChangeLadder better_tabs(const Design& design, const std::string& check,
                         const std::function<parts::TabSpec&(Design&)>& of) {
  Design copy = design;
  if (!of(copy).given()) return {};
  if (check == "tab weld") {
    return larger_weld(design, "weld of its tabs,",
                       [of](Design& d) -> parts::FilletWeld& { return of(d).weld; });
  }
  return thicker(design, "tabs of", [of](Design& d) -> double& { return of(d).plates.thickness; });
}

/// A brace of a common tube to the opposite rail.
ChangeLadder with_brace(const Design& design) {
  if (!design.bracket || design.brace) return {};
  parts::Brace brace;
  const double unit = design.inches ? base::kInch : base::kMillimeter;
  const bool inches = design.inches;
  brace.stick = {sections::RoundTube{.outside = (inches ? 1.75 : 45.0) * unit,
                                     .wall = (inches ? 0.156 : 4.0) * unit},
                 *sections::find_material(inches ? "DOM" : "E355_C")};
  std::string where = "to the opposite rail";
  if (!design.frame) {
    brace.length = (inches ? 34.0 : 860.0) * unit;
    brace.slope = 15.0 * base::kDegree;
    where = fmt::format("{} long at 15 deg", parts::length_words(brace.length, inches));
  }
  return {{fmt::format("a brace of {}, {}", sections::describe(brace.stick.shape, inches), where),
           [brace](Design& changed) { changed.brace = brace; }}};
}

ChangeLadder more_faces(const Design& design) {
  ChangeLadder out;
  const parts::RailFaces now = design.bracket->welded_to;
  const auto add = [&](const char* words, const parts::RailFaces& faces) {
    if (!(faces == now)) {
      out.push_back({words, [faces](Design& d) { d.bracket->welded_to = faces; }});
    }
  };
  if (!now.outer_side) {
    add("welded to bottom and inner side too", {.bottom = true, .inner_side = true});
  }
  add("welded to bottom and both sides", {.bottom = true, .inner_side = true, .outer_side = true});
  return out;
}

parts::BoltSpec& link_bolt(Design& d) {
  return d.lateral_link->bolt;
}
parts::BoltSpec& brace_bolt(Design& d) {
  return d.brace->bolt;
}

/// What names the bolt of one of the two: where they are on one, the other may too.
std::vector<BoltOf> bolt_of(const Design& design, const BoltOf& own, const BoltOf& other) {
  return parts::on_one_bolt(design) ? std::vector<BoltOf>{own, other} : std::vector<BoltOf>{own};
}

std::vector<ChangeLadder> of_bracket(const Design& design, const checks::Finding& f) {
  std::vector<ChangeLadder> out;
  if (f.check == "weld") {
    out.push_back(larger_weld(design, "root weld,",
                              [](Design& d) -> parts::FilletWeld& { return d.bracket->weld; }));
    out.push_back(more_faces(design));
  } else if (f.check == "rail wall") {
    out.push_back(more_faces(design));
    out.push_back(thicker(
        design, "a frame plate of",
        [](Design& d) -> double& { return d.bracket->rail.frame_plate; },
        design.bracket->rail.wall));
  } else {
    out.push_back(thicker(design, "plates of",
                          [](Design& d) -> double& { return d.bracket->plates.thickness; }));
  }
  if (is_one_of(f.check, {"bolt hole", "tab"})) {
    if (design.lateral_link) {
      out.push_back(wider_bolt(design, "bolt", bolt_of(design, link_bolt, brace_bolt)));
    }
  } else {
    out.push_back(longer(
        design, "plates deep at the rail",
        [](Design& d) -> double& { return d.bracket->depth_at_rail; }, base::kInch,
        25.0 * base::kMillimeter));
  }
  out.push_back(with_brace(design));
  return out;
}

std::vector<ChangeLadder> of_link(const Design& design, const checks::Finding& f) {
  if (f.check == "bolt" || f.check == "slip") {
    return {stronger_bolt(design, "bolt", bolt_of(design, link_bolt, brace_bolt))};
  }
  if (is_of_tabs(f)) {
    return {better_tabs(design, f.check,
                        [](Design& d) -> parts::TabSpec& { return d.lateral_link->axle_tabs; })};
  }
  if (f.check == "end weld" || f.check == "rosettes") {
    return {larger_end_weld(design, "end weld,", [](Design& d) -> parts::EndWeldSpec& {
      return d.lateral_link->end_weld;
    })};
  }
  if (f.check == "threaded shank" || f.check == "thread engagement") {
    return {larger_thread(design)};
  }
  if (f.check == "joint rating") {
    return {higher_rating(design, "joints", [](Design& d) { return ratings(*d.lateral_link); })};
  }
  if (!is_of_section(f)) return {};
  std::vector<ChangeLadder> out = {
      larger_section(design, "", [](Design& d) -> parts::Stick& { return d.lateral_link->stick; })};
  if (design.lateral_link->bend.off_straight > 0.0) {
    out.push_back({{"a straight link", [](Design& d) { d.lateral_link->bend = {}; }}});
  }
  out.push_back(with_brace(design));
  return out;
}

std::vector<ChangeLadder> of_brace(const Design& design, const checks::Finding& f) {
  if (f.check == "bolt" || f.check == "slip") {
    const bool far = f.where.find("far") != std::string::npos;
    if (far && design.brace->far_bolt.given()) {
      return {stronger_bolt(design, "bolt",
                            {[](Design& d) -> parts::BoltSpec& { return d.brace->far_bolt; }})};
    }
    return {stronger_bolt(design, "bolt", bolt_of(design, brace_bolt, link_bolt))};
  }
  if (is_of_tabs(f)) {
    return {better_tabs(design, f.check,
                        [](Design& d) -> parts::TabSpec& { return d.brace->far_tabs; })};
  }
  if (f.check == "end weld" || f.check == "rosettes") {
    return {larger_end_weld(design, "end weld,",
                            [](Design& d) -> parts::EndWeldSpec& { return d.brace->end_weld; })};
  }
  if (!is_of_section(f)) return {};
  return {larger_section(design, "", [](Design& d) -> parts::Stick& { return d.brace->stick; })};
}

std::vector<ChangeLadder> of_arm(const Design& design, const checks::Finding& f) {
  if (f.check == "bolt" || f.check == "slip") {
    return {stronger_bolt(design, "bolts",
                          {[](Design& d) -> parts::BoltSpec& { return d.arm->bolt; }})};
  }
  if (is_of_tabs(f)) {
    const bool frame = f.where.find("frame") != std::string::npos;
    return {better_tabs(design, f.check, [frame](Design& d) -> parts::TabSpec& {
      return frame ? d.arm->frame_tabs : d.arm->axle_tabs;
    })};
  }
  if (f.check == "end weld" || f.check == "rosettes") {
    return {larger_end_weld(design, "end weld,",
                            [](Design& d) -> parts::EndWeldSpec& { return d.arm->end_weld; })};
  }
  if (f.check == "joint rating") {
    return {higher_rating(design, "joints", [](Design& d) { return ratings(*d.arm); })};
  }
  if (!is_of_section(f)) return {};
  if (!parts::has_upper_arm(*design.arm)) {
    return {larger_section(design, "", [](Design& d) -> parts::Stick& { return d.arm->lower; })};
  }
  if (starts(f.where, "upper")) {
    return {larger_section(design, "upper arm ",
                           [](Design& d) -> parts::Stick& { return d.arm->upper; })};
  }
  return {larger_section(design, "lower tube ",
                         [](Design& d) -> parts::Stick& { return d.arm->lower; })};
}

std::vector<ChangeLadder> of_limit_strap(const Design& design, const checks::Finding& f) {
  if (f.check == "bolt" || f.check == "slip") {
    return {stronger_bolt(design, "bolt",
                          {[](Design& d) -> parts::BoltSpec& { return d.limit_strap->bolt; }})};
  }
  if (f.check == "strap") {
    return {higher_rating(design, "straps", [](Design& d) {
      return std::vector<double*>{&d.limit_strap->breaking_load};
    })};
  }
  return {better_tabs(design, f.check,
                      [](Design& d) -> parts::TabSpec& { return d.limit_strap->tabs; })};
}

/// Of the steering and of what a case file builds itself.
std::vector<ChangeLadder> of_named(const Design& design, const checks::Finding& f) {
  if (f.check == "bolt" && design.steering && f.part.find("gear") != std::string::npos) {
    return {stronger_bolt(design, "gear bolts",
                          {[](Design& d) -> parts::BoltSpec& { return d.steering->gear_bolts; }})};
  }
  if (f.check == "joint rating" && design.steering) {
    return {higher_rating(design, "joints", [](Design& d) { return ratings(*d.steering); })};
  }
  if (!is_of_section(f)) return {};
  for (const std::string& name : sized_parts(design)) {
    if (!belongs(f.part, name)) continue;
    return {larger_section(design, "",
                           [name](Design& d) -> parts::Stick& { return *stick_of(d, name); })};
  }
  return {};
}

}  // namespace

parts::Design DesignChange::on(const parts::Design& design) const {
  parts::Design out = design;
  out.variants.clear();
  make(out);
  return out;
}

std::vector<ChangeLadder> changes_for(const parts::Design& design, const checks::Finding& over) {
  std::vector<ChangeLadder> out;
  if (belongs(over.part, "lateral_link") && design.lateral_link) {
    out = of_link(design, over);
  } else if (belongs(over.part, "bracket") && design.bracket) {
    out = of_bracket(design, over);
  } else if (belongs(over.part, "brace") && design.brace) {
    out = of_brace(design, over);
  } else if (belongs(over.part, "arm") && design.arm) {
    out = of_arm(design, over);
  } else if (belongs(over.part, "limit_strap") && design.limit_strap) {
    out = of_limit_strap(design, over);
  } else if (belongs(over.part, "frame") && design.frame) {
    if (over.where.find("cross member") != std::string::npos) {
      out = {larger_section(design, "cross members ",
                            [](Design& d) -> parts::Stick& { return d.frame->cross_member; })};
    }
    out.push_back(with_brace(design));
  } else {
    out = of_named(design, over);
  }
  out.erase(std::remove_if(out.begin(), out.end(),
                           [](const ChangeLadder& ladder) { return ladder.empty(); }),
            out.end());
  return out;
}

}  // namespace studies
