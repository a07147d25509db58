#include "app/output.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <string_view>

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include "app/program.hpp"

namespace app {
namespace {

/// @return 0, or the error number of what went wrong
int write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t n = ::write(descriptor, text.data(), text.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(n));
  }
  return 0;
}

int write_file(const std::string& path, std::string_view text) {
  const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
  if (descriptor < 0) return errno;
  const int error = write_all(descriptor, text);
  // Some file systems tell of a full disk only here.
  const int closing = ::close(descriptor) == 0 ? 0 : errno;
  return error != 0 ? error : closing;
}

/// Says on standard error that something could not be written.
int not_written(const std::string& where, int error) {
  const std::string message =
      fmt::format("linkmargin: {} could not be written: {}\n", where, std::strerror(error));
  // When standard error is closed too, the exit status is all that can tell.
  static_cast<void>(write_all(STDERR_FILENO, message));
  return kExitInput;
}

}  // namespace

Output answer_output(const AnswerOptions& options, const std::function<std::string()>& text,
                     const std::function<std::string()>& json, int status) {
  if (options.json == "-") return {.text = json(), .status = status};
  if (options.json.empty()) return {.text = text(), .status = status};
  return {
      .text = text(), .messages = {}, .json_file = options.json, .json = json(), .status = status};
}

int write_out(const Output& output) {
  int status = output.status;
  if (!output.json_file.empty()) {
    if (const int error = write_file(output.json_file, output.json); error != 0) {
      status = not_written(output.json_file, error);
    }
  }
  if (const int error = write_all(STDOUT_FILENO, output.text); error != 0) {
    status = not_written("standard output", error);
  }
  if (write_all(STDERR_FILENO, output.messages) != 0) status = kExitInput;
  return status;
}

}  // namespace app
