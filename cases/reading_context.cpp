#include "cases/reading_context.hpp"

namespace cases {

Place Places::find(std::string path) const {
  while (true) {
    const auto found = places_.find(path);
    if (found != places_.end()) return found->second;
    const std::size_t dot = path.rfind('.');
    if (dot == std::string::npos) return {};
    path.resize(dot);
  }
}

void ReadingContext::problem(const Place& place, const std::string& key, const std::string& what) {
  problems.emplace_back(base::Where{file_, place.line, place.column, key}, what);
}

void ReadingContext::assume(const std::string& key, const std::string& value,
                            std::string_view basis) {
  design.assumed.push_back({key, value, std::string(basis)});
}

void ReadingContext::note_weight(const std::string& unit) {
  if (weight_noted_ || unit.empty()) return;
  weight_noted_ = true;
  assume("weights", unit + " read as the force of its weight", "how a scale is read in a shop");
}

}  // namespace cases
