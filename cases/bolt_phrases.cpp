#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/phrase.hpp"
#include "cases/sizes.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;
using parts::BoltSpec;
using sections::BoltThread;

constexpr double kSameSize = 1.0e-6;  // [m]

[[noreturn]] void refuse_bolt(std::string_view text, std::string_view why) {
  throw InputError(
      "", fmt::format("{} {}; e.g. {}", quoted(text), why, quoted(example_phrase(BoltSpec{}))));
}

/// Cuts a word off the end.
bool cut_end(std::string& text, std::string_view word) {
  if (text.size() <= word.size() || text.substr(text.size() - word.size()) != word) return false;
  text = squeeze(text.substr(0, text.size() - word.size()));
  return true;
}

std::optional<BoltThread> thread_of_size(double diameter, bool inch, bool coarse) {
  for (const BoltThread& thread : sections::bolt_threads()) {
    const bool same = std::abs(thread.diameter - diameter) < kSameSize;
    if (same && thread.inch == inch && thread.coarse == coarse) return thread;
  }
  return std::nullopt;
}

/// "M8", "M10" ...
std::vector<std::string> metric_sizes() {
  std::vector<std::string> sizes;
  for (const BoltThread& thread : sections::bolt_threads()) {
    if (!thread.inch && thread.coarse)
      sizes.push_back(thread.name.substr(0, thread.name.find(' ')));
  }
  return sizes;
}

/// A thread by its name, or by its size and series.
/// @param said  set to whether the pitch is said
BoltThread thread_named(std::string size, std::string_view text, bool& said) {
  for (const BoltThread& thread : sections::bolt_threads()) {
    if (packed(thread.name) == packed(size)) {
      said = true;
      return thread;
    }
  }
  const bool fine = cut_end(size, " fine");
  said = fine || cut_end(size, " coarse");
  std::optional<BoltThread> found;
  if (!size.empty() && size.front() == 'm' && size.find(' ') == std::string::npos) {
    for (const BoltThread& thread : sections::bolt_threads()) {
      const bool named = packed(thread.name).rfind(size + "x", 0) == 0;
      if (named && thread.coarse == !fine && !found) found = thread;
    }
  } else {
    const Sizes sizes = read_sizes(size, example_phrase(BoltSpec{}));
    if (sizes.si.size() == 1 && sizes.rest.empty()) {
      found = thread_of_size(sizes.si[0], true, !fine);
    }
  }
  if (!found) {
    refuse_bolt(text, "names no thread known here: 1/4 to 1-1/4 in, coarse or fine, or " +
                          join(metric_sizes(), ", "));
  }
  return *found;
}

/// "5/8 in grade 8" -> "5/8 in" and "grade 8".
struct SizeAndGrade {
  std::string size;
  std::string grade;
};

bool is_grade(std::string_view number) {
  const std::vector<sections::BoltGrade>& all = sections::bolt_grades();
  return std::any_of(all.begin(), all.end(), [&](const sections::BoltGrade& grade) {
    return grade.name == fmt::format("{} {}", grade.inch ? "grade" : "class", number);
  });
}

SizeAndGrade size_and_grade(std::string_view piece, std::string_view text) {
  const std::string words = lower(squeeze(piece));
  const std::size_t last = words.rfind(' ');
  if (last == std::string::npos) refuse_bolt(text, "does not say size and grade of the bolt");
  const std::string grade = words.substr(last + 1);
  if (!is_grade(grade)) {
    refuse_bolt(
        text,
        "does not end with a grade known here: grade 2, 5 or 8 of SAE J429, class 8.8, 10.9 "
        "or 12.9 of ISO 898-1");
  }
  std::string size = words.substr(0, last);
  if (!cut_end(size, " grade")) cut_end(size, " class");
  cut_end(size, " bolt");
  return {size, grade};
}

/// What is said after the first comma; each is said once at most.
struct BoltWords {
  std::optional<bool> double_shear;
  std::optional<bool> threads_in_plane;
  std::optional<bool> loose_stack;
  double spacer = 0.0;  // [m]
  bool must_not_slip = false;
};

double read_spacer(const std::string& size, std::string_view text) {
  const Sizes sizes = read_sizes(size, example_phrase(BoltSpec{}));
  if (sizes.si.size() != 1 || !sizes.rest.empty() || !(sizes.si[0] > 0.0)) {
    refuse_bolt(text, "does not say how wide one spacer is, as in `spacers of 1/4 in`");
  }
  return sizes.si[0];
}

BoltWords bolt_words(const std::vector<std::string>& pieces, std::string_view text) {
  BoltWords said;
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const std::string piece = lower(squeeze(pieces[i]));
    if (piece == "double shear" || piece == "single shear") {
      said.double_shear = piece == "double shear";
    } else if (piece == "threads in the shear plane" || piece == "threads out of the shear plane") {
      said.threads_in_plane = piece == "threads in the shear plane";
    } else if (piece == "clamped stack" || piece == "loose stack") {
      said.loose_stack = piece == "loose stack";
    } else if (piece == "held by friction") {
      said.must_not_slip = true;
    } else if (piece.rfind("spacers of ", 0) == 0) {
      said.spacer = read_spacer(piece.substr(11), text);
    } else {
      refuse_bolt(text, fmt::format("has {}, which is none of: double shear, single shear, threads "
                                    "in the shear plane, threads out of the shear plane, clamped "
                                    "stack, loose stack, spacers of 1/4 in (on each side), held by "
                                    "friction",
                                    quoted(piece)));
    }
  }
  return said;
}

std::string plane_words(bool in) {
  return in ? "threads in the shear plane" : "threads out of the shear plane";
}

}  // namespace

template <>
Phrase<BoltSpec> read_phrase(std::string_view raw, const parts::Design&) {
  const std::string text = squeeze(raw);
  const std::vector<std::string> pieces = split(text, ",");
  const SizeAndGrade first = size_and_grade(pieces[0], text);
  BoltSpec bolt;
  bool pitch_said = false;
  bolt.thread = thread_named(first.size, text, pitch_said);
  const sections::BoltGrade* grade = sections::find_bolt_grade(first.grade, bolt.thread);
  if (grade == nullptr) {
    refuse_bolt(text, fmt::format("has no grade known for {}: {}", bolt.thread.name,
                                  bolt.thread.inch ? "grade 2, 5 or 8 of SAE J429"
                                                   : "class 8.8, 10.9 or 12.9 of ISO 898-1"));
  }
  bolt.grade = *grade;
  const BoltWords said = bolt_words(pieces, text);
  bolt.double_shear = said.double_shear.value_or(true);
  bolt.threads_in_plane = said.threads_in_plane.value_or(true);
  bolt.loose_stack = said.loose_stack.value_or(false);
  bolt.clamp_assumed = !said.loose_stack && !said.must_not_slip;
  bolt.spacer = said.spacer;
  bolt.must_not_slip = said.must_not_slip;
  if (bolt.loose_stack && bolt.must_not_slip) {
    refuse_bolt(text, "is a loose stack, which friction cannot hold");
  }
  Phrase<BoltSpec> phrase{bolt};
  if (!pitch_said) {
    phrase.assumed.push_back({"thread", bolt.thread.name, "coarse, the weaker; say fine if it is"});
  }
  if (!said.double_shear) {
    phrase.assumed.push_back({"shear", "double shear", "between two plates; common practice"});
  }
  if (!said.threads_in_plane) {
    phrase.assumed.push_back({"threads", plane_words(true), "the weaker"});
  }
  if (bolt.clamp_assumed) {
    phrase.assumed.push_back({"stack", "clamped stack",
                              "a sleeve or eye drawn tight between the plates; common practice, no "
                              "source"});
  }
  return phrase;
}

std::string write_phrase(const BoltSpec& bolt, const parts::Design& names) {
  if (!bolt.given()) return {};
  const std::string spacers =
      bolt.spacer > 0.0 ? ", spacers of " + write_sizes({bolt.spacer}, names.inches) : "";
  // Nobody has said of an assumed clamp that it is one: a verdict may hang on that.
  const char* stack = bolt.clamp_assumed ? ""
                      : bolt.loose_stack ? ", loose stack"
                                         : ", clamped stack";
  return fmt::format("{} {}, {}, {}{}{}{}", bolt.thread.name, bolt.grade.name,
                     bolt.double_shear ? "double shear" : "single shear",
                     plane_words(bolt.threads_in_plane), stack, spacers,
                     bolt.must_not_slip ? ", held by friction" : "");
}

}  // namespace cases
