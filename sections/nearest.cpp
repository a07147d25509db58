#include "sections/nearest.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>

namespace sections {
namespace {

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool same(char a, char b) {
  return lower(a) == lower(b);
}

}  // namespace

int edit_distance(std::string_view a, std::string_view b) {
  // Rows of the usual table: two back (for the swap), one back, and the present one.
  std::vector<int> before(b.size() + 1);
  std::vector<int> above(b.size() + 1);
  std::vector<int> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    before.swap(above);
    above.swap(row);
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int replaced = above[j - 1] + (same(a[i - 1], b[j - 1]) ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, replaced});
      if (i > 1 && j > 1 && same(a[i - 1], b[j - 2]) && same(a[i - 2], b[j - 1])) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
    }
  }
  return row[b.size()];
}

std::string nearest(std::string_view name, const std::vector<std::string>& candidates) {
  int least = std::numeric_limits<int>::max();
  std::string found;
  for (const std::string& candidate : candidates) {
    const int distance = edit_distance(name, candidate);
    if (distance < least) {
      least = distance;
      found = candidate;
    }
  }
  return found;
}

}  // namespace sections
