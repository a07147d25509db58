#include "cases/plain_rules.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>

#include "cases/words.hpp"
#include "parts/spring_axes.hpp"
#include "parts/taper.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::Design;
using Problems = std::vector<InputError>;

template <std::size_t N>
bool all_zero(const std::array<double, N>& values) {
  return std::all_of(values.begin(), values.end(), [](double x) { return x == 0.0; });
}

void add_bends(Problems& out, const parts::Member& m, const std::string& key) {
  if (!std::isnan(m.bend_radius) && m.through.empty()) {
    out.emplace_back(key + ".bend_radius",
                     "the member is straight: name the points where it bends in `through`");
  }
  for (const std::string& name : m.through) {
    const bool end = name == m.from || name == m.to;
    if (!end && std::count(m.through.begin(), m.through.end(), name) == 1) continue;
    out.emplace_back(key + ".through",
                     "the member comes to `" + name + "` twice; name each point once");
    return;
  }
}

void add_member(Problems& out, const parts::Member& m, const std::string& key) {
  if (!m.from.empty() && m.from == m.to) {
    out.emplace_back(key, "it has no length: it starts and ends at `" + m.from + "`");
  }
  const auto both = [&](const parts::JointSpec& joint, const parts::Freed& freed,
                        const std::string& end) {
    if (joint.kind == parts::JointKind::welded || freed == parts::Freed{}) return;
    out.emplace_back(key + "." + end + "_free",
                     "give either `" + end + "_joint` or `" + end + "_free`, not both");
  };
  both(m.from_joint, m.from_free, "from");
  both(m.to_joint, m.to_free, "to");
  add_bends(out, m, key);
  if (m.section_at_end.material.id.empty() || m.stick.material.id.empty()) return;
  if (!parts::same_kind(m.stick.shape, m.section_at_end.shape)) {
    out.emplace_back(
        key + ".section_at_end",
        "a member tapers between two sections of one kind; give the kind of `section`");
  } else if (m.section_at_end.material.id != m.stick.material.id) {
    out.emplace_back(key + ".section_at_end", "it is of another steel than `section`");
  }
}

void add_spring(Problems& out, const parts::PlainSpring& s, const std::string& key) {
  if (!s.from.empty() && s.from == s.to) {
    out.emplace_back(key, "it starts and ends at `" + s.from + "`");
  }
  if (std::none_of(s.rates.begin(), s.rates.end(), [](double rate) { return rate > 0.0; })) {
    out.emplace_back(key, "it has no rate; give one, e.g. along_z: 35 N/mm");
  } else if (parts::pushes_along(s)) {
    out.emplace_back(key + ".coupled",
                     "the spring would push along with some motion instead of against it: what "
                     "links two directions must be under the square root of their two rates "
                     "multiplied");
  }
}

void add_rigid(Problems& out, const Design& design) {
  std::map<std::string, std::string> owner;
  for (const auto& r : design.rigid) {
    const std::string key = "rigid." + r.name + ".points";
    if (r.value.points.size() < 2) {
      out.emplace_back(key, "one piece needs two points or more, e.g. [left hub, right hub]");
    }
    std::string held;
    for (const std::string& point : r.value.points) {
      const auto [other, fresh] = owner.emplace(point, r.name);
      if (!fresh) {
        out.emplace_back(key, other->second == r.name
                                  ? "`" + point + "` is given twice"
                                  : "`" + point + "` is in `rigid." + other->second +
                                        "` already; make them one piece");
      }
      const bool supported =
          std::any_of(design.supports.begin(), design.supports.end(),
                      [&](const auto& support) { return support.value.at == point; });
      if (!supported) continue;
      if (!held.empty() && held != point) {
        out.emplace_back(key, "it is held at `" + held + "` and at `" + point +
                                  "`: a rigid piece cannot tell how they share its load; hold it "
                                  "at one of them, and let springs hold the other");
      }
      held = point;
    }
  }
}

/// What `on` and `holds` may name.
std::vector<std::string> bars_of(const Design& design) {
  std::vector<std::string> bars;
  if (design.lateral_link) bars.emplace_back("lateral_link");
  if (design.brace) bars.emplace_back("brace");
  for (const auto& member : design.members) bars.push_back(member.name);
  return bars;
}

void require_bar(Problems& out, const std::vector<std::string>& bars, const std::string& name,
                 const std::string& key) {
  if (std::find(bars.begin(), bars.end(), name) != bars.end()) return;
  out.emplace_back(key, "there is no " + quoted(name) +
                            " here: lateral_link, brace or a member would do" +
                            did_you_mean(name, bars));
}

void add_on_bars(Problems& out, const Design& design) {
  const std::vector<std::string> bars = bars_of(design);
  for (const auto& w : design.side_welds) {
    require_bar(out, bars, w.value.on, "side_welds." + w.name + ".on");
  }
  constexpr double kLongest = 1.0;  // of what is welded to a side  [m]
  for (const auto& w : design.side_welds) {
    const std::string key = "side_welds." + w.name;
    if (w.value.length > kLongest)
      out.emplace_back(key + ".length", "it is over 1 m; is the unit right?");
    if (w.value.width > kLongest)
      out.emplace_back(key + ".width", "it is over 1 m; is the unit right?");
  }
  for (const auto& g : design.bolt_groups) {
    const std::string key = "bolt_groups." + g.name;
    require_bar(out, bars, g.value.holds, key + ".holds");
    std::vector<std::string> at = g.value.at;
    std::sort(at.begin(), at.end());
    if (at.size() < 2) {
      out.emplace_back(key + ".at",
                       "a group is of two bolts or more, e.g. [upper bolt, lower bolt]");
    } else if (std::adjacent_find(at.begin(), at.end()) != at.end()) {
      out.emplace_back(key + ".at", "one of its points is given twice");
    }
    if (g.value.bolt.spacer > 0.0) {
      out.emplace_back(key + ".bolt",
                       "spacers are for a bolt through an eye; the parts of a group lie against "
                       "each other");
    }
    const bool bears = !g.value.plates.material.id.empty();
    if (bears && std::isnan(g.value.edge)) {
      out.emplace_back(key + ".edge",
                       "it is missing: a bolt's center to the nearest edge of `plates`, e.g. 1 in");
    } else if (bears && !(g.value.edge > 0.5 * g.value.bolt.thread.standard_hole())) {
      out.emplace_back(key + ".edge", "the bolt's hole runs out of the plates there");
    } else if (!bears && !std::isnan(g.value.edge)) {
      out.emplace_back(key + ".plates",
                       "they are missing: how many, how thick, which steel, e.g. "
                       "1 of 1/4 in mild steel");
    }
  }
}

class Loads {
 public:
  Loads(Problems& out, const Design& design) : out_(out), design_(design) {
    for (const auto& member : design.members) members_.push_back(member.name);
  }

  void add_all() {
    for (const auto& f : design_.forces) force(f.value, "forces." + f.name);
    for (const auto& l : design_.line_loads) line(l.value, "line_loads." + l.name);
    for (const auto& s : design_.strains) strain(s.value, "strains." + s.name);
    for (const auto& s : design_.settlements) settlement(s.value, "settlements." + s.name);
    for (const auto& w : design_.self_weight) {
      if (!all_zero(w.value.times)) continue;
      out_.emplace_back("self_weight." + w.name, "it pulls nowhere; along_z is -1 unless given");
    }
  }

 private:
  void on_member(const std::string& name, const std::string& key) {
    if (name.empty() || std::find(members_.begin(), members_.end(), name) != members_.end()) return;
    out_.emplace_back(key + ".on", "there is no " + quoted(name) + " among `members:`" +
                                       did_you_mean(name, members_));
  }

  void force(const parts::PlainForce& f, const std::string& key) {
    if (all_zero(f.force) && all_zero(f.moment)) {
      out_.emplace_back(key, "it is 0; give a force or moment, e.g. force_z: -8 kN");
    }
    if (f.at.empty() && f.on.empty()) {
      out_.emplace_back(key,
                        "where it acts is missing: give `at` with a point, or `on` with a "
                        "member and `from_start`");
    } else if (!f.at.empty() && !f.on.empty()) {
      out_.emplace_back(key, "give either `at` or `on`, not both");
    } else if (!f.on.empty() && std::isnan(f.from_start)) {
      out_.emplace_back(key, "`from_start` is missing: how far along the member, e.g. 9 in");
    } else if (f.on.empty() && !std::isnan(f.from_start)) {
      out_.emplace_back(key + ".from_start", "it goes with `on`, the name of a member");
    }
    on_member(f.on, key);
  }

  void line(const parts::LineLoad& l, const std::string& key) {
    const auto nothing = [](double x) { return x == 0.0 || std::isnan(x); };
    if (all_zero(l.force) && std::all_of(l.end_force.begin(), l.end_force.end(), nothing)) {
      out_.emplace_back(key, "it is 0; give a force per length, e.g. force_z: -2 N/mm");
    }
    if (l.to <= l.from) out_.emplace_back(key + ".to", "it ends before it starts");
    on_member(l.on, key);
  }

  void strain(const parts::GivenStrain& s, const std::string& key) {
    if (s.warmer == 0.0 && s.warmer_on_top == 0.0 && s.too_long == 0.0) {
      out_.emplace_back(key, "it is 0; give `warmer`, e.g. 40 K, or `too_long`, e.g. 1 mm");
    }
    on_member(s.on, key);
  }

  void settlement(const parts::Settlement& s, const std::string& key) {
    constexpr std::array<std::string_view, 6> kKeys = {"along_x", "along_y", "along_z",
                                                       "about_x", "about_y", "about_z"};
    if (all_zero(s.along) && all_zero(s.about)) {
      out_.emplace_back(key, "it is 0; say how far it moves, e.g. along_z: -3 mm");
    }
    if (s.at.empty()) return;
    for (std::size_t i = 0; i < 6; ++i) {
      if ((i < 3 ? s.along[i] : s.about[i - 3]) == 0.0) continue;
      const bool held =
          std::any_of(design_.supports.begin(), design_.supports.end(), [&](const auto& support) {
            return support.value.at == s.at && support.value.held.freedoms[i];
          });
      if (held) continue;
      out_.emplace_back(key + "." + std::string(kKeys[i]),
                        "no support holds `" + s.at + "` in this direction");
    }
  }

  Problems& out_;
  const Design& design_;
  std::vector<std::string> members_;
};

}  // namespace

Problems plain_clashes(const Design& design) {
  Problems out;
  for (const auto& m : design.members) add_member(out, m.value, "members." + m.name);
  for (const auto& s : design.springs) add_spring(out, s.value, "springs." + s.name);
  add_rigid(out, design);
  add_on_bars(out, design);
  Loads(out, design).add_all();
  return out;
}

}  // namespace cases
