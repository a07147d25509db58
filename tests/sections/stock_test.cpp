#include "sections/stock.hpp"

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

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
