#include "sections/material.hpp"

#include <set>

#include <catch2/catch.hpp>

namespace material_test {
using Catch::Matchers::WithinRel;
using sections::find_material;
using sections::Material;
using sections::materials;
using sections::nearest_material;

namespace {

std::string id_of(std::string_view name) {
  const std::optional<Material> m = find_material(name);
  return m ? m->id : "";
}

}  // namespace

TEST_CASE("every built-in material is complete", "[sections][material]") {
  std::set<std::string> ids;
  for (const Material& m : materials()) {
    INFO(m.id);
    CHECK(ids.insert(m.id).second);
    CHECK(m.elastic > 190e9);
    CHECK(m.elastic < 215e9);
    CHECK(m.density == 7850.0);
    CHECK(m.yield > 0.0);
    CHECK(m.tensile > m.yield);
    CHECK(m.haz_yield > 0.0);
    CHECK(m.haz_yield <= m.yield);
    CHECK(m.haz_tensile <= m.tensile);
    CHECK(m.thickness_to > m.thickness_over);
    CHECK((m.mark == "read" || m.mark == "from memory"));
    CHECK_FALSE(m.description.empty());
    CHECK_FALSE(m.basis.empty());
    CHECK_FALSE(m.haz_basis.empty());
    CHECK_FALSE(m.source.empty());
    CHECK(find_material(m.id) == m);
  }
  CHECK(ids.size() == 43);  // rows of materials.csv
}

TEST_CASE("welding weakens what was strengthened cold, not what was rolled hot",
          "[sections][material]") {
  CHECK(find_material("1018_CD")->weakened_by_welding());
  CHECK(find_material("DOM1020_SR")->weakened_by_welding());
  CHECK_FALSE(find_material("A36")->weakened_by_welding());
  CHECK_FALSE(find_material("S355")->weakened_by_welding());
  CHECK_FALSE(find_material("4130_A513_N")->weakened_by_welding());
  Material unknown_zone;
  unknown_zone.yield = 250e6;
  CHECK_FALSE(unknown_zone.weakened_by_welding());
}

TEST_CASE("trade names find their steel", "[sections][material]") {
  CHECK(id_of("DOM") == "DOM1020_SR");
  CHECK(id_of("mild steel") == "A36");
  CHECK(id_of("1018") == "1018_CD");
  CHECK(id_of("1020") == "1020_CD");
  CHECK(id_of("1045") == "1045_CD");
  CHECK(id_of("4130") == "4130_A513_N");
  CHECK(id_of("A500") == "A500B_round");
  CHECK(id_of("A513") == "A513_1_1010");
  CHECK(id_of("S235") == "S235");
  CHECK(id_of("S275") == "S275");
  CHECK(id_of("S355") == "S355");
  CHECK(id_of("E235") == "E235_SR");
  CHECK(id_of("E355") == "E355_SR");
  CHECK(id_of("cold drawn bar") == "1018_CD");
  CHECK(id_of("hot rolled bar") == "1018_HR");
}

TEST_CASE("case, spaces, dashes and underscores in a name do not matter", "[sections][material]") {
  CHECK(id_of("dom-1020 sr") == "DOM1020_SR");
  CHECK(id_of("Mild Steel") == "A36");
  CHECK(id_of("a 36") == "A36");
  CHECK(id_of("Cold-Drawn_Bar") == "1018_CD");
}

TEST_CASE("an unknown name finds nothing but has a nearest one", "[sections][material]") {
  CHECK_FALSE(find_material("A37"));
  CHECK_FALSE(find_material(""));
  CHECK(nearest_material("A37") == "A36");
  CHECK(nearest_material("mild stel") == "mild steel");
  CHECK(nearest_material("s3555") == "S355");
}

TEST_CASE("a name that leaves the condition open says which was chosen", "[sections][material]") {
  CHECK_THAT(sections::condition_chosen("dom"), Catch::Contains("also as drawn"));
  CHECK_THAT(sections::condition_chosen("4130"), Catch::Contains("aircraft"));
  CHECK(sections::condition_chosen("DOM1020_SR").empty());
  CHECK(sections::condition_chosen("A36").empty());
  CHECK(sections::condition_chosen("S355").empty());
}

// EN 10025-2, table 7 (read, in a reproduction): S355 has 345 MPa over 16 mm.
TEST_CASE("a steel knows for which thickness its strength holds",
          "[sections][material][published]") {
  const Material s355 = find_material("S355").value();
  CHECK(s355.specified());
  CHECK(s355.covers(0.016));
  CHECK_FALSE(s355.covers(0.020));
  CHECK(s355.covers(base::kUnset));
  const Material* thicker = sections::same_steel_for(s355, 0.020);
  REQUIRE(thicker != nullptr);
  CHECK_THAT(thicker->yield, WithinRel(345e6, 1e-9));
  CHECK(sections::same_steel_for(s355, 0.5) == nullptr);
  CHECK_FALSE(find_material("1018_CD")->specified());
}

TEST_CASE("every steel of the list says who gives its sizes, or nobody", "[sections][material]") {
  const std::set<std::string> known = {"",     "a29",    "a108_low", "a108_medium",
                                       "a500", "a513_1", "a513_5",   "en10305"};
  for (const Material& m : materials()) {
    INFO(m.id);
    CHECK(known.count(m.sizes_by) == 1);
  }
}

}  // namespace material_test
