#include "cases/validate.hpp"

#include <cmath>

#include <fmt/format.h>

namespace cases {
namespace {

class Validator {
 public:
  explicit Validator(ReadingContext& context) : context_(context), design_(context.design) {}

  void run() {
    if (design_.lateral_link) link();
    if (design_.arm) arm();
    if (design_.bracket) bracket();
    if (design_.bracket && !design_.lateral_link) {
      say("bracket", "a bracket carries a lateral link's bolt: add `lateral_link:`");
    }
    if (design_.brace && !design_.bracket) say("brace", "a brace holds a bracket: add `bracket:`");
    if (design_.axle && !design_.vehicle) say("axle", "the axle needs `vehicle:` for its wheels");
    if (design_.arm && !design_.axle) say("arm", "an arm holds an axle: add `axle:`");
    if (design_.axle && (!design_.lateral_link || !design_.arm)) {
      say("axle", "the axle needs `lateral_link:` and `arm:` to hold it");
    }
    if (design_.axle) stops();
    if (!design_.load_cases.empty() && !design_.vehicle) {
      say("load_cases", "the built-in load cases need `vehicle:`");
    }
    for (const parts::Named<parts::Member>& m : design_.members) {
      if (m.value.from == m.value.to) {
        say("members." + m.name, "it has no length: it starts and ends at the same point");
      }
    }
    for (const parts::Named<parts::PlainSpring>& s : design_.springs) {
      bool soft = true;
      for (const double rate : s.value.rates) soft = soft && !(rate > 0.0);
      if (soft) say("springs." + s.name, "it has no rate; give one, e.g. along_z: 35 N/mm");
    }
  }

 private:
  void say(const std::string& key, const std::string& what) {
    context_.problem(context_.places.find(key), key, what);
  }

  void link() {
    const parts::LateralLink& l = *design_.lateral_link;
    const bool lengths = !std::isnan(l.bolt_to_bolt) || !std::isnan(l.rise);
    const bool points = !l.frame_bolt.empty() || !l.axle_bolt.empty();
    if (lengths == points) {
      say("lateral_link", lengths ? "give either bolt_to_bolt and rise, or frame_bolt and "
                                    "axle_bolt, not both"
                                  : "where it is is missing: give bolt_to_bolt and rise, e.g. 34 "
                                    "in and 4 in, or the points frame_bolt and axle_bolt");
      return;
    }
    if (lengths && (std::isnan(l.bolt_to_bolt) || std::isnan(l.rise))) {
      say("lateral_link", fmt::format("`{}` is missing, e.g. {}",
                                      std::isnan(l.rise) ? "rise" : "bolt_to_bolt",
                                      std::isnan(l.rise) ? "4 in" : "34 in"));
    } else if (lengths && !(std::abs(l.rise) < l.bolt_to_bolt)) {
      say("lateral_link.rise", "the rise is not under the length from bolt to bolt");
    }
    if (points && (l.frame_bolt.empty() || l.axle_bolt.empty())) {
      say("lateral_link",
          fmt::format("`{}` is missing", l.frame_bolt.empty() ? "frame_bolt" : "axle_bolt"));
    } else if (points && l.frame_bolt == l.axle_bolt) {
      say("lateral_link.axle_bolt", "it has no length: both bolts are at the same point");
    }
    if (design_.axle && lengths) {
      say("lateral_link", "with an `axle:` it is placed by the points frame_bolt and axle_bolt");
    }
    if (l.bend.off_straight > 0.0 && !l.through.empty()) {
      say("lateral_link.bend", "give either `bend` or `through`, not both");
    }
  }

  void arm() {
    const parts::Arm& a = *design_.arm;
    const bool upper = !a.axle_upper.empty();
    if (upper && std::isnan(a.joins_at)) {
      say("arm", "`joins_at` is missing: where the upper arm joins, along the lower tube from its "
                 "axle bolt, e.g. 16 in");
    }
    if (upper && !(a.upper.material.yield > 0.0)) {
      say("arm", "`upper` is missing: the upper arm, e.g. 1-1/4 x 0.188 in DOM");
    }
    if (!upper && (!std::isnan(a.joins_at) || a.upper.material.yield > 0.0)) {
      say("arm", "`axle_upper` is missing: the point of the upper arm's bolt at the axle");
    }
    if (a.axle_lower == a.frame) {
      say("arm.frame", "it has no length: axle bolt and frame joint are at the same point");
    }
  }

  void bracket() {
    const parts::Bracket& b = *design_.bracket;
    if (!(b.rail.wall < 0.5 * std::fmin(b.rail.width, b.rail.height))) {
      say("bracket.rail", "the wall is not under half of the rail's width and height");
    }
    if (!(parts_up_the_side(b) <= b.rail.height)) {
      say("bracket.up_the_side", "the weld is longer than the rail is high");
    }
    if (!b.welded_to.bottom && !b.welded_to.inner_side && !b.welded_to.outer_side) {
      say("bracket.welded_to", "no face of the rail is welded");
    }
  }

  static double parts_up_the_side(const parts::Bracket& b) {
    return std::isnan(b.up_the_side) ? 0.0 : b.up_the_side;
  }

  void stops() {
    const parts::Axle& a = *design_.axle;
    if (std::isnan(a.bump_travel) != std::isnan(a.stop_rate)) {
      say("axle", fmt::format("`{}` is missing: a bump stop needs its travel and its rate",
                              std::isnan(a.stop_rate) ? "stop_rate" : "bump_travel"));
    }
  }

  ReadingContext& context_;
  const parts::Design& design_;
};

}  // namespace

void validate(ReadingContext& context) { Validator(context).run(); }

}  // namespace cases
