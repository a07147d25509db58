#include "cases/format_examples.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "base/invariant.hpp"
#include "cases/case_text.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

/// A value as it stands between brackets.
std::string as_written(const Value& value) {
  if (value.kind != Value::Kind::list) return value.text;
  std::vector<std::string> items;
  for (const Value& item : value.items) items.push_back(as_written(item));
  return fmt::format("[{}]", join(items, ", "));
}

/// What holds the fields of a part: the value itself, or each thing of a list or by name.
std::vector<const Value*> holders(const Value& value) {
  std::vector<const Value*> all;
  for (const Value& item : value.items) {
    if (item.kind == Value::Kind::mapping) all.push_back(&item);
  }
  for (const Entry& entry : value.entries) {
    if (entry.value.kind == Value::Kind::mapping) all.push_back(&entry.value);
  }
  if (all.empty()) all.push_back(&value);
  return all;
}

bool is_shape(const Value& section, std::string_view shape) {
  const Entry* word = section.find("shape");
  return shape.empty() || (word != nullptr && word->value.text == shape);
}

std::string_view text_of(std::string_view file) {
  if (file == "braced-link") return data::braced_link();
  if (file == "whole-axle") return data::whole_axle();
  if (file == "four-links") return data::four_links();
  INVARIANT(file == "any-frame");
  return data::any_frame();
}

}  // namespace

FormatExamples::FormatExamples()
    : documents_{read_document(data::braced_link()), read_document(data::whole_axle()),
                 read_document(data::four_links()), read_document(data::any_frame())} {}

std::vector<std::string> FormatExamples::of(std::string_view part,
                                            const parts::FieldInfo& info) const {
  const std::vector<std::string> path = split(part, ".");
  const std::string_view shape = path.size() > 1 ? std::string_view(path[1]) : "";
  std::vector<std::string> found;
  for (const Document& document : documents_) {
    const Entry* group = document.root.find(path[0]);
    if (group == nullptr) continue;
    for (const Value* holder : holders(group->value)) {
      const Entry* entry = holder->find(info.key);
      if (entry == nullptr) entry = holder->find(info.other_key);
      if (entry == nullptr || !is_shape(*holder, shape)) continue;
      const std::string text = as_written(entry->value);
      if (std::find(found.begin(), found.end(), text) == found.end()) found.push_back(text);
    }
  }
  constexpr std::size_t kMost = 2;
  if (found.size() > kMost) found.resize(kMost);
  return found;
}

std::string FormatExamples::block(std::string_view file, std::string_view key) {
  const std::string text = "\n" + std::string(text_of(file));
  std::size_t begin = text.find(fmt::format("\n{}:", key));
  INVARIANT(begin != std::string::npos);
  ++begin;
  // Up to the next key or remark at the left margin.
  std::size_t end = text.find('\n', begin);
  while (end + 1 < text.size() && (text[end + 1] == ' ' || text[end + 1] == '\n')) {
    end = text.find('\n', end + 1);
  }
  std::string lines = text.substr(begin, end - begin);
  while (lines.back() == '\n') lines.pop_back();
  return lines + "\n";
}

}  // namespace cases
