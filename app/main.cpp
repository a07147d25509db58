#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <variant>

#include <fmt/format.h>
#include <unistd.h>

#include "app/command_line.hpp"
#include "app/commands.hpp"
#include "app/interrupt.hpp"
#include "app/program.hpp"
#include "app/screen.hpp"
#include "base/input_error.hpp"
#include "studies/watch.hpp"

namespace {

constexpr const char kOurFault[] =
    "linkmargin: this is a fault of the program, not of the case; no result is given\n";

/// A broken invariant aborts after it has said which: the exit status must still tell whose fault
/// it is. Only calls that a signal handler may make.
extern "C" void on_abort(int) {
  static_cast<void>(!::write(STDERR_FILENO, kOurFault, sizeof kOurFault - 1));
  std::_Exit(app::kExitFault);
}

struct Run {
  bool color = false;

  app::Output operator()(const app::Notice& notice) const {
    if (notice.status == app::kExitWithin) return {.text = notice.text, .status = notice.status};
    return {.text = {}, .messages = notice.text, .status = notice.status};
  }
  app::Output operator()(const app::CheckRequest& r) const { return check_command(r, color); }
  app::Output operator()(const app::ReportRequest& r) const { return report_command(r); }
  app::Output operator()(const app::CompareRequest& r) const { return compare_command(r, color); }
  app::Output operator()(const app::ExplainRequest& r) const { return explain_command(r, color); }
  app::Output operator()(const app::PickRequest& r) const { return pick_command(r, color); }
  app::Output operator()(const app::ScatterRequest& r) const { return scatter_command(r, color); }
  app::Output operator()(const app::GatherRequest& r) const { return gather_command(r, color); }
  app::Output operator()(const app::RateRequest& r) const { return rate_command(r, color); }
  app::Output operator()(const app::CasesRequest& r) const { return cases_command(r, color); }
  app::Output operator()(const app::NewRequest& r) const { return app::new_command(r); }
  app::Output operator()(const app::SchemaRequest&) const { return app::schema_command(); }
  app::Output operator()(const app::FormatRequest&) const { return app::format_command(); }
  app::Output operator()(const app::SectionsRequest& r) const { return sections_command(r, color); }
  app::Output operator()(const app::MaterialsRequest& r) const {
    return materials_command(r, color);
  }
};

app::Output output_of(int argc, const char* const* argv) {
  try {
    const app::Request request = app::parse_command_line(argc, argv);
    return std::visit(Run{app::use_color(request.color)}, request.what);
  } catch (const base::InputError& error) {
    return {.text = {}, .messages = fmt::format("{}\n", error.what()), .status = app::kExitInput};
  } catch (const studies::Stopped&) {
    return {.text = {},
            .messages = "linkmargin: interrupted before any part of the answer was complete\n",
            .status = app::kExitInterrupted};
  }
}

}  // namespace

int main(int argc, char** argv) {
  std::signal(SIGABRT, on_abort);
  app::remember_interrupts();
  std::signal(SIGPIPE, SIG_IGN);  // a closed pipe is an error of write(), with a message
  try {
    return app::write_out(output_of(argc, argv));
  } catch (const std::exception& error) {
    std::fprintf(stderr, "linkmargin: %s\n%s", error.what(), kOurFault);
  } catch (...) {
    std::fputs(kOurFault, stderr);
  }
  return app::kExitFault;
}
