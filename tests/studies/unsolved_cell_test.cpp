// Where findings alone are asked for, cells that cannot be the worst of a check are not solved:
// what is found must be what solving every one of them finds. Invented numbers.
#include <algorithm>
#include <map>
#include <string>
#include <tuple>
#include <vector>

#include <catch2/catch.hpp>

#include "studies/run.hpp"
#include "tests/studies/read_case.hpp"
#include "tests/studies/truck_by_lot.hpp"

namespace unsolved_cell_test {
namespace {

using Place = std::tuple<std::string, std::string, std::string>;  // part, check, where

// Of a utilization: the search for a limit is good to 1e-6, forces settle to 1e-7.
constexpr double kSame = 5.0e-6;
// Below it a check is far within its limit and not followed: the largest demand of those looked at,
// and sets of bounds that nearly come to the same are not told apart.
constexpr double kFollowed = 0.5;
constexpr double kSameWhereFar = 0.05;
// Where the frame gives way there may be two equilibria near the edge: which one is found hangs on
// where it was looked for from.
constexpr double kSameAtEdge = 0.1;

bool gives_way(const checks::Finding& f) {
  return std::any_of(f.notes.begin(), f.notes.end(), [](const std::string& note) {
    return note.find("the frame gives way at") != std::string::npos;
  });
}

struct Worst {
  double utilization = 0.0;
  std::string in;  ///< load case and stiffness set
  bool gives_way = false;
};

/// By place, the worst of those that share one.
std::map<Place, Worst> by_place(const std::vector<checks::Finding>& findings) {
  std::map<Place, Worst> out;
  for (const checks::Finding& f : findings) {
    if (f.state == checks::State::undecided) continue;
    Worst& worst = out[{f.part, f.check, f.where}];
    if (f.utilization() < worst.utilization) continue;
    worst = {f.utilization(), f.load_case + ", " + f.set, gives_way(f)};
  }
  return out;
}

double largest(const std::vector<checks::Finding>& findings, const studies::Counted& counted) {
  double most = 0.0;
  for (const checks::Finding& f : findings) {
    if (counted.is_asked(f.part) && f.state != checks::State::undecided) {
      most = std::max(most, f.utilization());
    }
  }
  return most;
}

std::vector<checks::Finding> of_asked(std::vector<checks::Finding> findings,
                                      const studies::Counted& counted) {
  const auto others =
      std::remove_if(findings.begin(), findings.end(),
                     [&](const checks::Finding& f) { return !counted.is_asked(f.part); });
  findings.erase(others, findings.end());
  return findings;
}

std::vector<std::string> parts_over(const std::vector<checks::Finding>& findings) {
  std::vector<std::string> out;
  for (const checks::Finding& f : findings) {
    if (f.state != checks::State::within) out.push_back(f.part);
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

/// @param some  may lack places
void compare(const std::map<Place, Worst>& some, const std::map<Place, Worst>& all) {
  for (const auto& [place, worst] : some) {
    REQUIRE(all.count(place) == 1);
    const Worst& other = all.at(place);
    INFO(std::get<0>(place) << ", " << std::get<1>(place) << ", " << std::get<2>(place) << ": "
                            << worst.in << "; " << other.in);
    const bool far = worst.utilization < kFollowed && other.utilization < kFollowed;
    const bool edge = worst.gives_way || other.gives_way;
    CHECK(worst.utilization == Approx(other.utilization)
                                   .epsilon(edge  ? kSameAtEdge
                                            : far ? kSameWhereFar
                                                  : kSame));
  }
}

}  // namespace

TEST_CASE("findings alone are those of every cell solved", "[studies][property]") {
  int n_over = 0;
  for (const std::string layout : {"radius-arms", "parallel-arms", "steering"}) {
    for (const std::uint32_t seed : {1U, 2U}) {
      const std::string text = studies_tests::truck_by_lot(layout, seed);
      INFO(layout << ", " << seed);
      const parts::Design design = studies_tests::read_case(text);
      const std::vector<checks::Finding> all = studies::run(design, "", {}).answer.findings;
      const std::vector<checks::Finding> alone =
          studies::run(design, "", {}, {}, studies::Extras::none).answer.findings;
      const std::map<Place, Worst> places = by_place(all);
      CHECK(by_place(alone).size() == places.size());
      compare(by_place(alone), places);
      CHECK(parts_over(alone) == parts_over(all));
      n_over += parts_over(all).empty() ? 0 : 1;
    }
  }
  CHECK(n_over >= 2);
  CHECK(n_over < 9);
}

TEST_CASE("the worst of the parts asked for is that of every cell solved", "[studies][property]") {
  int n_compared = 0;
  for (const std::string layout : {"radius-arms", "steering"}) {
    for (const std::uint32_t seed : {1U, 2U}) {
      const std::string text = studies_tests::truck_by_lot(layout, seed);
      const parts::Design design = studies_tests::read_case(text);
      const std::vector<checks::Finding> all = studies::run(design, "", {}).answer.findings;
      for (const std::string part : {"lateral_link", "arm.lower", "bracket"}) {
        INFO(layout << ", " << seed << ", " << part);
        const studies::Counted counted{.asked = {part}, .others = true};
        const std::vector<checks::Finding> asked = of_asked(all, counted);
        ++n_compared;
        const double most = largest(all, counted);
        const bool edge = std::any_of(asked.begin(), asked.end(), gives_way);
        const std::vector<checks::Finding> worst =
            studies::run_for_worst(design, counted, {}).answer.findings;
        CHECK(largest(worst, counted) == Approx(most).epsilon(edge               ? kSameAtEdge
                                                              : most < kFollowed ? kSameWhereFar
                                                                                 : kSame));
        const std::vector<checks::Finding> beside =
            studies::run_as_drawn(design, counted, {}).answer.findings;
        compare(by_place(of_asked(beside, counted)), by_place(all));
        CHECK(parts_over(beside) == parts_over(all));
        if (most <= 1.0) CHECK(parts_over(worst) == parts_over(all));
      }
    }
  }
  CHECK(n_compared >= 4);
}

}  // namespace unsolved_cell_test
