#include "cases/document.hpp"

#include <optional>
#include <sstream>
#include <utility>

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include "cases/plain_text.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;

InputError problem_at(const Place& place, const std::string& problem) {
  return InputError(base::Where{{}, place.line, place.column, {}}, problem);
}

/// A text that starts with a quote has the other one too; others need none.
bool closes_quote(std::string_view text) {
  const char quote = text[0];
  if (quote != '"' && quote != '\'') return true;
  for (std::size_t i = 1; i < text.size(); ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (text[i] == quote) {
      return true;
    }
  }
  return false;
}

/// Builds the tree from the parser's events.
class TreeBuilder : public YAML::EventHandler {
 public:
  explicit TreeBuilder(std::string_view text) : text_(text) {}

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_anchor(mark, anchor);
    // The mark of a value that is missing is that of whatever follows; its key says more.
    const Place place = awaits_value() ? open_.back().key.place : place_at(mark);
    add(bare_value(Value::Kind::empty, place));
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override { refuse_reference(mark); }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_anchor(mark, anchor);
    refuse_tag(mark, tag);
    refuse_open_quote(mark, tag);
    if (awaits_key()) {
      open_.back().key = {value, place_at(mark), {}};
      open_.back().has_key = true;
      return;
    }
    add(bare_value(Value::Kind::scalar, place_at(mark), value));
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, Value::Kind::list);
  }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, Value::Kind::mapping);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapEnd() override { close(); }

  [[nodiscard]] std::optional<Value>& root() { return root_; }
  [[nodiscard]] std::vector<InputError>& problems() { return problems_; }

 private:
  struct Open {
    Value value;
    Entry key = {};
    bool has_key = false;
  };

  [[nodiscard]] bool in_mapping() const {
    return !open_.empty() && open_.back().value.kind == Value::Kind::mapping;
  }
  [[nodiscard]] bool awaits_key() const { return in_mapping() && !open_.back().has_key; }
  [[nodiscard]] bool awaits_value() const { return in_mapping() && open_.back().has_key; }

  /// The keys that lead here, "bracket.drop".
  [[nodiscard]] std::string path() const {
    std::string keys;
    for (const Open& open : open_) {
      if (!open.has_key) continue;
      keys += keys.empty() ? "" : ".";
      keys += open.key.key;
    }
    return keys;
  }

  [[nodiscard]] InputError problem(const Place& place, const std::string& what) const {
    return InputError(base::Where{{}, place.line, place.column, path()}, what);
  }

  [[nodiscard]] Place place_at(const YAML::Mark& mark) const {
    return place_of(text_, mark.line, mark.column);
  }

  void refuse_reference(const YAML::Mark& mark) const {
    throw problem(place_at(mark), "anchors (&) and aliases (*) are not taken; write the value out");
  }
  void refuse_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) const {
    if (anchor != 0) refuse_reference(mark);
  }
  void refuse_tag(const YAML::Mark& mark, const std::string& tag) const {
    // `?` and `!` are what the parser says of plain and of quoted text.
    if (tag.empty() || tag == "?" || tag == "!") return;
    throw problem(place_at(mark), "tags (!) are not taken; write the value alone");
  }

  /// The parser takes a quote that is never closed as closed at the end of the text.
  void refuse_open_quote(const YAML::Mark& mark, const std::string& tag) const {
    const auto start = static_cast<std::size_t>(mark.pos);
    if (tag != "!" || start >= text_.size() || closes_quote(text_.substr(start))) return;
    throw problem(place_at(mark), "the quote that opens here is never closed");
  }

  void open(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
            Value::Kind kind) {
    refuse_anchor(mark, anchor);
    refuse_tag(mark, tag);
    if (awaits_key()) throw problem(place_at(mark), "a key must be a plain word");
    if (open_.size() >= kDeepest) {
      throw problem(place_at(mark), too_deep());
    }
    open_.push_back({.value = bare_value(kind, place_at(mark))});
  }

  void close() {
    Value value = std::move(open_.back().value);
    open_.pop_back();
    add(std::move(value));
  }

  void add(Value value) {
    if (open_.empty()) {
      root_ = std::move(value);
      return;
    }
    Open& parent = open_.back();
    if (parent.value.kind == Value::Kind::list) {
      parent.value.items.push_back(std::move(value));
      return;
    }
    if (!parent.has_key) throw problem(value.place, "a key must be a plain word");
    parent.key.value = std::move(value);
    if (const Entry* first = parent.value.find(parent.key.key)) {
      problems_.push_back(
          problem(parent.key.place, fmt::format("{} is given twice, first in line {}",
                                                quoted(parent.key.key), first->place.line)));
      parent.has_key = false;
      return;
    }
    parent.has_key = false;
    parent.value.entries.push_back(std::move(parent.key));
  }

  std::string_view text_;
  std::vector<Open> open_;
  std::optional<Value> root_;
  std::vector<InputError> problems_;
};

void parse(std::string_view text, TreeBuilder& builder) {
  std::istringstream stream{std::string(text)};
  try {
    YAML::Parser parser(stream);
    if (!parser.HandleNextDocument(builder)) return;
    TreeBuilder second(text);
    if (parser.HandleNextDocument(second)) {
      const Place place = second.root() ? second.root()->place : Place{};
      throw problem_at(place, "a second document starts here (`---`); give each case its own file");
    }
  } catch (const YAML::Exception& error) {
    const Place place =
        error.mark.is_null() ? Place{} : place_of(text, error.mark.line, error.mark.column);
    throw problem_at(
        place, "this is not YAML (" + error.msg +
                   "); check the indent, the space after each colon (`key: value`) and the quotes");
  }
}

}  // namespace

Value bare_value(Value::Kind kind, const Place& place, std::string text) {
  Value out;
  out.kind = kind;
  out.place = place;
  out.text = std::move(text);
  return out;
}

const Entry* Value::find(std::string_view key) const {
  for (const Entry& entry : entries) {
    if (entry.key == key) return &entry;
  }
  return nullptr;
}

Document read_document(std::string_view text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) {
    text.remove_prefix(kByteOrderMark.size());
  }
  require_plain_text(text);
  TreeBuilder builder(text);
  parse(text, builder);
  if (!builder.root() || builder.root()->kind == Value::Kind::empty) {
    throw problem_at({1, 1}, "the case file is empty; `linkmargin new` prints one to start from");
  }
  if (builder.root()->kind != Value::Kind::mapping) {
    throw problem_at(builder.root()->place,
                     "a case file is a list of `key: value` lines; it starts with e.g. `title:`");
  }
  return {std::move(*builder.root()), std::move(builder.problems())};
}

}  // namespace cases
