#include "app/progress_line.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>

#include <fmt/format.h>

#include "app/interrupt.hpp"
#include "app/screen.hpp"
#include "report/wrap.hpp"

namespace app {
namespace {

constexpr std::chrono::milliseconds kQuiet(1000);
constexpr std::chrono::milliseconds kBetween(100);

std::string spaces(int n) {
  return std::string(static_cast<std::size_t>(std::max(n, 0)), ' ');
}

/// As long for the rest as for what is done; nothing before that tells anything.
std::string time_left(double seconds, double fraction) {
  constexpr double kTells = 0.03;
  if (!(fraction > kTells) || !(fraction < 1.0)) return "";
  const double left = seconds * (1.0 - fraction) / fraction;
  if (left < 60.0) return fmt::format(", {:.0f} s left", std::ceil(left));
  if (left < 3600.0) return fmt::format(", {:.0f} min left", std::ceil(left / 60.0));
  return fmt::format(", {:.1f} h left", left / 3600.0);
}

}  // namespace

ProgressLine::ProgressLine() : columns_(message_columns()), next_(Clock::now() + kQuiet) {}

ProgressLine::~ProgressLine() {
  if (shown_ > 0) std::fputs(fmt::format("\r{}\r", spaces(shown_)).c_str(), stderr);
}

studies::Watch ProgressLine::watch() {
  return [this](const studies::Progress& progress) {
    if (columns_ > 0) {
      const std::lock_guard lock(mutex_);
      fraction_ = std::max(fraction_, progress.fraction);
      if (Clock::now() >= next_) show(progress);
    }
    return interrupted() ? studies::Go::stop : studies::Go::on;
  };
}

void ProgressLine::show(const studies::Progress& progress) {
  const double percent = std::clamp(100.0 * fraction_, 0.0, 100.0);
  const std::chrono::duration<double> taken = Clock::now() - start_;
  const std::string head =
      fmt::format("{:4.0f} %{}  ", percent, time_left(taken.count(), fraction_));
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
