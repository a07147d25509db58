#include "sections/bolt.hpp"

#include <set>
#include <string>

#include <catch2/catch.hpp>

namespace bolt_test {
using Catch::Matchers::WithinRel;
using sections::BoltThread;

namespace {

BoltThread thread(const std::string& name) {
  for (const BoltThread& t : sections::bolt_threads()) {
    if (t.name == name) return t;
  }
  FAIL("no thread " << name);
  return {};
}

}  // namespace

TEST_CASE("every thread of the list is one of its size and series", "[sections][bolt]") {
  std::set<std::string> names;
  std::set<std::string> kinds;
  for (const BoltThread& t : sections::bolt_threads()) {
    CHECK(names.insert(t.name).second);
    CHECK(kinds.insert(std::to_string(t.diameter) + (t.coarse ? "c" : "f") + (t.inch ? "i" : "m"))
              .second);
    CHECK(t.tensile_area() < t.shank_area());
    CHECK(t.root_diameter() < t.diameter);
    CHECK(t.standard_hole() > t.diameter);
    CHECK((t.mark == "read" || t.mark == "from memory"));
  }
}

// AISC 360-22 table J3.3, from memory.
TEST_CASE("standard holes step with the size", "[sections][bolt]") {
  CHECK_THAT(thread("7/8-9").standard_hole(), WithinRel(15.0 / 16.0 * base::kInch, 1e-9));
  CHECK_THAT(thread("1-8").standard_hole(), WithinRel(1.125 * base::kInch, 1e-9));
  CHECK_THAT(thread("M20 x 2.5").standard_hole(), WithinRel(0.022, 1e-9));
  CHECK_THAT(thread("M24 x 3").standard_hole(), WithinRel(0.027, 1e-9));
}

TEST_CASE("a grade holds for the sizes and the system it is made in", "[sections][bolt]") {
  CHECK(sections::find_bolt_grade("grade 5", thread("1-8"))->tensile == Approx(827.4e6));
  CHECK(sections::find_bolt_grade("5", thread("1-1/4-7"))->tensile == Approx(723.9e6));
  CHECK(sections::find_bolt_grade("8.8", thread("M16 x 2"))->yield == Approx(640e6));
  CHECK(sections::find_bolt_grade("class 8.8", thread("M18 x 2.5"))->yield == Approx(660e6));
  CHECK(sections::find_bolt_grade("8.8", thread("1-8")) == nullptr);
  CHECK(sections::find_bolt_grade("grade 8", thread("M16 x 2")) == nullptr);
  CHECK(sections::find_bolt_grade("grade 7", thread("1-8")) == nullptr);
}

}  // namespace bolt_test
