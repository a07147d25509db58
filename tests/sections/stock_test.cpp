#include "sections/stock.hpp"

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

#include "base/input_error.hpp"

namespace stock_test {
using Catch::WithinRel;
using namespace sections;

namespace {

const StockItem& item(const std::vector<StockItem>& stock, const std::string& label) {
  const auto found = std::find_if(stock.begin(), stock.end(),
                                  [&](const StockItem& s) { return s.label == label; });
  REQUIRE(found != stock.end());
  return *found;
}

}  // namespace

TEST_CASE("inch stock holds tubes and bars by their shop names", "[sections][stock]") {
  const std::vector<StockItem> stock = round_stock(true);
  const StockItem& tube = item(stock, "1-1/2 x 0.250 in DOM tube");
  CHECK(tube.list == "round tube, inch");
  CHECK(tube.mark == "common practice");
  CHECK_THAT(std::get<RoundTube>(tube.shape).outside, WithinRel(0.0381, 1e-12));
  CHECK_THAT(std::get<RoundTube>(tube.shape).wall, WithinRel(0.00635, 1e-12));
  CHECK(item(stock, "2 x 0.120 in DOM tube").inches);
  CHECK_THAT(std::get<RoundBar>(item(stock, "11/16 in round bar").shape).diameter,
             WithinRel(11.0 / 16.0 * base::kInch, 1e-12));
  CHECK(item(stock, "1-1/2 in round bar").list == "round bar, inch");
  CHECK(stock.size() == 120 + 25);  // rows of tube_dom_inch.csv and inch rows of bar_round.csv
}

TEST_CASE("metric stock holds tubes and bars by their shop names", "[sections][stock]") {
  const std::vector<StockItem> stock = round_stock(false);
  const StockItem& tube = item(stock, "40 x 3 mm tube");
  CHECK(tube.list == "round tube, metric");
  CHECK(tube.mark == "from memory");
  CHECK_FALSE(tube.inches);
  CHECK_THAT(std::get<RoundTube>(tube.shape).wall, WithinRel(0.003, 1e-12));
  CHECK(item(stock, "40 mm round bar").list == "round bar, metric");
  CHECK(item(stock, "25 x 2.5 mm tube").mark == "from memory");
  CHECK(stock.size() == 91 + 29);  // rows of tube_dom_metric.csv and metric rows of bar_round.csv
}

TEST_CASE("every size in stock can exist and has a label of its own", "[sections][stock]") {
  for (const bool inches : {true, false}) {
    std::set<std::string> labels;
    for (const StockItem& s : round_stock(inches)) {
      INFO(s.label);
      CHECK_NOTHROW(require_valid(s.shape));
      CHECK(s.inches == inches);
      CHECK(labels.insert(s.label).second);
    }
  }
}

namespace {

std::string stock_problem(const std::string& text) {
  try {
    (void)read_stock(text, "own.csv");
  } catch (const base::InputError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("every built-in list has a source and sizes that can exist", "[sections][stock]") {
  CHECK(stock_lists().size() == 9);
  for (const StockList& list : stock_lists()) {
    INFO(list.name);
    CHECK(list.source.size() > 10);
    CHECK(list.items.size() > 20);
    std::set<std::string> labels;
    for (const StockItem& s : list.items) {
      INFO(s.label);
      CHECK_NOTHROW(require_valid(s.shape));
      CHECK(labels.insert(s.label).second);
      CHECK(s.list == list.name);
      CHECK_FALSE(s.mark.empty());
    }
  }
  for (const PlateList& list : plate_lists()) {
    INFO(list.name);
    CHECK(list.source.size() > 10);
    for (const PlateSize& size : list.sizes) CHECK(size.thickness > 0.0);
  }
}

// US Manufacturers' Standard Gauge (read): 16 gauge 0.0598 in, 10 gauge 0.1345 in.
TEST_CASE("sheet gauges have the standard's thickness", "[sections][stock][published]") {
  double sixteen = 0.0;
  double ten = 0.0;
  for (const PlateList& list : plate_lists()) {
    for (const PlateSize& size : list.sizes) {
      if (size.label.rfind("16 ga", 0) == 0) sixteen = size.thickness / base::kInch;
      if (size.label.rfind("10 ga", 0) == 0) ten = size.thickness / base::kInch;
    }
  }
  CHECK_THAT(sixteen, Catch::WithinAbs(0.0598, 6e-5));
  CHECK_THAT(ten, Catch::WithinAbs(0.1345, 6e-5));
}

TEST_CASE("a user's list gives sizes of every kind", "[sections][stock]") {
  const StockList own = read_stock(
      "# what the shop has\n"
      "shape, unit, depth, width, wall, corner, label\r\n"
      "round_tube,in,1.5,,0.25,,\n"
      "\n"
      "round_bar,mm,30,,,,thirty\n"
      "rectangular_tube,mm,60,40,3,,\n"
      "flat_bar,mm,60,10,,,\n"
      "channel,in,4,2,0.25,,\n"
      "angle,in,2,2,0.25,,",
      "own.csv");
  REQUIRE(own.items.size() == 6);
  CHECK(own.items[0].label == "1-1/2 x 0.250 in round tube");
  CHECK(own.items[0].inches);
  CHECK(own.items[1].label == "thirty");
  CHECK_THAT(std::get<RectangularTube>(own.items[2].shape).corner, WithinRel(0.006, 1e-12));
  CHECK(own.items[3].mark == "as entered");
  CHECK(own.items[4].label == "4 x 2 x 0.250 in channel");
  CHECK(own.items[5].list == "own.csv");
  const std::vector<StockItem> like = stock_like(Angle{0.05, 0.05, 0.005}, true, own.items);
  REQUIRE(like.size() == 1);
  CHECK(like[0].label == "2 x 2 x 0.250 in angle");
  CHECK(stock_like(RoundBar{0.03}, false, own.items).size() == round_stock(false).size() + 2);
}

TEST_CASE("what is wrong with a user's list is said with its line", "[sections][stock]") {
  const std::string head = "shape,unit,depth,width,wall\n";
  CHECK(stock_problem("") ==
        "own.csv: holds no sizes; it needs a line of headings (shape,unit,depth,width,wall) and a "
        "line for each size");
  CHECK(stock_problem("shape,unit,dept\n")
            .rfind("own.csv:1:1: unknown column `dept`; did you mean `depth`?", 0) == 0);
  CHECK(stock_problem("shape,unit\n") ==
        "own.csv:1:1: the column `depth` is missing among the headings");
  CHECK(stock_problem(head + "round_bar,in,1\n") ==
        "own.csv:2:1: 3 cells are given under 5 headings");
  CHECK(stock_problem(head + "round,in,1,,\n").rfind("own.csv:2:1: shape: `round` is none of", 0) ==
        0);
  CHECK(stock_problem(head + "round_bar,cm,1,,\n") ==
        "own.csv:2:1: unit: `cm` is neither in nor mm");
  CHECK(stock_problem(head + "round_bar,in,1-1/2,,\n") ==
        "own.csv:2:1: depth: `1-1/2` is no decimal number, e.g. 1.5");
  CHECK(stock_problem(head + "\nround_tube,in,1,,\n") ==
        "own.csv:3:1: wall: no value is given; this shape needs one");
  CHECK(stock_problem(head + "round_tube,in,1,,0.5\n")
            .rfind("own.csv:2:1: wall: 12.7 mm (0.5 in) "
                   "is half",
                   0) == 0);
  CHECK(stock_problem(head + "round_bar,in,nan,,\n").rfind("own.csv:2:1: depth: no value", 0) == 0);
}

}  // namespace stock_test
