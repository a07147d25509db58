// Pieces of work that bring others with them: all are done, however they are spread. No outside
// source: a property of the library itself.

#include "studies/growing_work.hpp"

#include <functional>
#include <mutex>
#include <set>
#include <stdexcept>

#include <catch2/catch.hpp>

#include "tests/studies/two_threads.hpp"

namespace growing_work_test {

namespace {

/// Numbers 1 to 31, each of which brings its two halves of a tree with it.
std::multiset<int> done_by(const studies::Spread& spread) {
  constexpr int kMost = 31;
  studies::GrowingWork work;
  std::multiset<int> done;
  std::mutex of_done;
  std::function<void(int)> add = [&](int number) {
    work.add([&, number] {
      for (const int next : {2 * number, 2 * number + 1}) {
        if (next <= kMost) add(next);
      }
      const std::lock_guard lock(of_done);
      done.insert(number);
    });
  };
  add(1);
  work.do_all(spread);
  return done;
}

}  // namespace

TEST_CASE("work that grows as it is done is all done once, on any number of threads",
          "[studies][property]") {
  std::multiset<int> all;
  for (int i = 1; i <= 31; ++i) all.insert(i);
  CHECK(done_by({}) == all);
  for (int round = 0; round < 50; ++round) CHECK(done_by(studies_tests::on_two_threads) == all);
}

TEST_CASE("what a piece of growing work throws ends the rest and comes out", "[studies]") {
  studies::GrowingWork work;
  int begun = 0;
  work.add([&] {
    ++begun;
    throw std::runtime_error("a piece");
  });
  work.add([&] { ++begun; });
  CHECK_THROWS_AS(work.do_all({}), std::runtime_error);
  CHECK(begun == 1);
}

}  // namespace growing_work_test
