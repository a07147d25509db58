#include "cases/trade_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/number.hpp"
#include "cases/words.hpp"

namespace cases {
namespace {

using base::InputError;

struct PipeSize {
  double nominal;  ///< NPS  [in]
  double outside;  ///< [in]
  double wall_40;  ///< schedule 40  [in]
  double wall_80;
};

constexpr std::array<PipeSize, 8> kPipes = {{{0.5, 0.840, 0.109, 0.147},
                                             {0.75, 1.050, 0.113, 0.154},
                                             {1.0, 1.315, 0.133, 0.179},
                                             {1.25, 1.660, 0.140, 0.191},
                                             {1.5, 1.900, 0.145, 0.200},
                                             {2.0, 2.375, 0.154, 0.218},
                                             {2.5, 2.875, 0.203, 0.276},
                                             {3.0, 3.500, 0.216, 0.300}}};
constexpr const char* kPipeExample = "`1-1/2 in sch 40 pipe A53B`";

std::string plain_word(std::string_view word) {
  std::string small = lower(word);
  small.erase(std::remove(small.begin(), small.end(), ','), small.end());
  small.erase(std::remove(small.begin(), small.end(), '.'), small.end());
  return small;
}

bool is_number(std::string_view word) {
  const auto number = number_at_start(word);
  return number && number->length == word.size();
}

bool is_inches(std::string_view word) {
  const std::string small = plain_word(word);
  return small == "in" || small == "inch" || small == "inches" || small == "\"";
}

bool is_length_unit(std::string_view word) {
  const std::string small = plain_word(word);
  return is_inches(word) || small == "mm" || small == "cm";
}

/// The schedule a word or two name, and how many words that takes; 0 = none.
struct Schedule {
  int number = 0;
  std::size_t words = 0;
};

Schedule schedule_at(const std::vector<std::string>& words, std::size_t i) {
  std::string text = plain_word(words[i]);
  std::size_t taken = 1;
  if ((text == "sch" || text == "sched" || text == "schedule") && i + 1 < words.size()) {
    text = "sch" + plain_word(words[i + 1]);
    taken = 2;
  }
  if (text.size() < 5 || text.rfind("sch", 0) != 0 || !is_number(text.substr(3))) return {};
  return {static_cast<int>(number_at_start(std::string_view(text).substr(3))->value), taken};
}

InFull pipe_in_full(const std::vector<std::string>& words, std::size_t at,
                    const Schedule& schedule) {
  const std::string size =
      join({words.begin(), words.begin() + static_cast<std::ptrdiff_t>(at)}, " ");
  const auto nominal = number_at_start(size);
  const std::string unit = nominal ? squeeze(std::string_view(size).substr(nominal->length)) : "";
  if (!nominal || (!unit.empty() && !is_inches(unit))) {
    throw InputError("",
                     fmt::format("{} does not start with a pipe's nominal size in inches; e.g. {}",
                                 quoted(join(words, " ")), kPipeExample));
  }
  const auto pipe = std::find_if(kPipes.begin(), kPipes.end(), [&](const PipeSize& p) {
    return std::abs(p.nominal - nominal->value) < 1.0e-6;
  });
  if (pipe == kPipes.end() || (schedule.number != 40 && schedule.number != 80)) {
    throw InputError("",
                     fmt::format("of pipe only schedules 40 and 80 of 1/2 to 3 in are known "
                                 "here, not {}; give outside x wall, e.g. `1.9 x 0.145 in A53B`",
                                 quoted(join(words, " "))));
  }
  std::vector<std::string> rest;
  for (std::size_t i = at + schedule.words; i < words.size(); ++i) {
    if (plain_word(words[i]) != "pipe") rest.push_back(words[i]);
  }
  const std::string sizes = fmt::format("{} x {} in", pipe->outside,
                                        schedule.number == 40 ? pipe->wall_40 : pipe->wall_80);
  return {squeeze(sizes + " " + join(rest, " ")),
          {{"size", sizes,
            fmt::format("NPS {} schedule {} pipe; ASME B36.10M, from memory",
                        size.substr(0, nominal->length), schedule.number)}}};
}

}  // namespace

InFull in_full(std::string_view raw) {
  const std::vector<std::string> words = words_of(squeeze(raw));
  std::vector<std::string> out;
  std::string unit;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const Schedule schedule = schedule_at(words, i);
    if (schedule.words > 0) return pipe_in_full(words, i, schedule);
    const std::string word = plain_word(words[i]);
    const bool after_size =
        !out.empty() && (number_at_start(out.back()) || is_length_unit(out.back()));
    const bool c_channel =
        word == "c" && i + 1 < words.size() && plain_word(words[i + 1]) == "channel";
    if (c_channel) continue;
    if (after_size && (word == "ga" || word == "gauge" || word == "gage")) {
      throw InputError("",
                       "a gauge number is no thickness here (gauges of tube, sheet and wire "
                       "differ): give the wall, e.g. 1-1/2 x 0.120 in DOM");
    }
    if (after_size && (word == "od" || word == "wall")) {
      if (word == "wall" && is_number(out.back()) && !unit.empty()) out.push_back(unit);
      continue;
    }
    if (is_length_unit(words[i])) unit = words[i];
    out.push_back(words[i]);
  }
  return {join(out, " ")};
}

std::string steel_meant(std::string_view name) {
  for (const std::string& raw : words_of(name)) {
    const std::string word = plain_word(raw);
    if (word == "erw" || word == "hrew" || word == "crew" || word == "hew") {
      return "; that says how a tube is welded, not of which steel: e.g. A513_1_1020 (as welded), "
             "A500C_round or A500C_rect";
    }
    if (word == "chromoly" || word == "chromemoly" || word == "cromoly" || word == "moly") {
      return "; that is 4130: say 4130, or its condition, e.g. 4130_A513_N";
    }
    if (word == "crs" || word == "hrs") {
      return "; that names no grade: e.g. 1018 (cold drawn bar), A36 (hot rolled plate and bar)";
    }
    if (word == "seamless" || word == "pipe") {
      return "; that names no grade: e.g. A53B for pipe, DOM for drawn tube";
    }
  }
  return {};
}

std::string shape_meant(std::string_view text) {
  const bool rolled = text.size() > 1 &&
                      std::string_view("CLWcw").find(text[0]) != std::string_view::npos &&
                      is_digit(text[1]);
  if (!rolled) return {};
  return "; a rolled shape is given by its sizes, depth x width x thickness, e.g. `4 x 1.58 x "
         "0.184 "
         "in channel A36`";
}

}  // namespace cases
