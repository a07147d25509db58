#include "app/progress_line.hpp"

#include <algorithm>
#include <cstdio>
#include <string>

#include <fmt/format.h>

#include "app/screen.hpp"
#include "report/wrap.hpp"

namespace app {
namespace {

constexpr std::chrono::milliseconds kQuiet(1000);
constexpr std::chrono::milliseconds kBetween(100);

std::string spaces(int n) {
  return std::string(static_cast<std::size_t>(std::max(n, 0)), ' ');
}

}  // namespace

ProgressLine::ProgressLine() : columns_(message_columns()), next_(Clock::now() + kQuiet) {}

ProgressLine::~ProgressLine() {
  if (shown_ > 0) std::fputs(fmt::format("\r{}\r", spaces(shown_)).c_str(), stderr);
}

studies::Watch ProgressLine::watch() {
  if (columns_ == 0) return {};
  return [this](const studies::Progress& progress) {
    const std::lock_guard lock(mutex_);
    if (Clock::now() >= next_) show(progress);
    return studies::Go::on;
  };
}

void ProgressLine::show(const studies::Progress& progress) {
  const double percent = std::clamp(100.0 * progress.fraction, 0.0, 100.0);
  const std::string head = fmt::format("{:4.0f} %  ", percent);
  // The last column stays free: a terminal may wrap when it is written to.
  const int room = columns_ - 1 - report::display_width(head);
  const std::string line = head + report::wrapped_lines(progress.what, room).front();
  const int width = report::display_width(line);
  std::fputs(fmt::format("\r{}{}", line, spaces(shown_ - width)).c_str(), stderr);
  std::fflush(stderr);
  shown_ = width;
  next_ = Clock::now() + kBetween;
}

}  // namespace app
