#include "app/output.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <string_view>
#include <utility>

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
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

/// Writes and closes.
int write_and_close(int descriptor, std::string_view text) {
  const int error = write_all(descriptor, text);
  // Some file systems tell of a full disk only here.
  const int closing = ::close(descriptor) == 0 ? 0 : errno;
  return error != 0 ? error : closing;
}

constexpr mode_t kMode = 0666;
constexpr mode_t kFolderMode = 0777;

/// Into what is no regular file: a pipe, a terminal, a device.
int write_through(const std::string& path, std::string_view text) {
  const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, kMode);
  return descriptor < 0 ? errno : write_and_close(descriptor, text);
}

/// The file that a path leads to; the path itself where there is none yet.
std::string real_path(const std::string& path) {
  const std::unique_ptr<char, decltype(&std::free)> real(::realpath(path.c_str(), nullptr),
                                                         &std::free);
  return real ? std::string(real.get()) : path;
}

/// Beside the file, then in its place: what was there stays until all of the new one is.
int write_file(const std::string& path, std::string_view text) {
  struct stat old = {};
  const bool is_there = ::stat(path.c_str(), &old) == 0;
  if (is_there && !S_ISREG(old.st_mode)) return write_through(path, text);
  const std::string target = real_path(path);
  const std::string fresh = fmt::format("{}.{}.part", target, ::getpid());
  const int descriptor = ::open(fresh.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, kMode);
  if (descriptor < 0) return errno;
  if (is_there) static_cast<void>(::fchmod(descriptor, old.st_mode & 07777U));
  int error = write_and_close(descriptor, text);
  if (error == 0 && ::rename(fresh.c_str(), target.c_str()) != 0) error = errno;
  if (error != 0) static_cast<void>(::unlink(fresh.c_str()));
  return error;
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
  return {.text = text(), .messages = {}, .files = {{options.json, json()}}, .status = status};
}

void add_tables(Output& out, const std::string& folder, std::vector<report::CsvFile> tables) {
  if (folder.empty()) return;
  out.folders.push_back(folder);
  for (report::CsvFile& file : tables) {
    out.files.push_back({folder + "/" + file.name, std::move(file.content)});
  }
}

int write_out(const Output& output) {
  int status = output.status;
  for (const std::string& folder : output.folders) {
    if (::mkdir(folder.c_str(), kFolderMode) != 0 && errno != EEXIST) {
      return not_written(folder, errno);
    }
  }
  bool all_written = true;
  for (const OutputFile& file : output.files) {
    if (const int error = write_file(file.path, file.content); error != 0) {
      status = not_written(file.path, error);
      all_written = false;
    }
  }
  const std::string text = output.text + (all_written ? output.text_once_written : "");
  if (const int error = write_all(STDOUT_FILENO, text); error != 0) {
    status = not_written("standard output", error);
  }
  if (write_all(STDERR_FILENO, output.messages) != 0) status = kExitInput;
  return status;
}

}  // namespace app
