#include "app/case_file.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include <fmt/format.h>

#include "app/program.hpp"

namespace app {
namespace {

constexpr std::size_t kLargest = std::size_t{16} << 20U;  // none comes near 16 MB

struct Close {
  void operator()(std::FILE* file) const {
    if (file != stdin) std::fclose(file);
  }
};

std::string read_all(const std::string& path, const std::string& name) {
  const std::unique_ptr<std::FILE, Close> file(path == "-" ? stdin
                                                           : std::fopen(path.c_str(), "rb"));
  if (!file) {
    throw base::InputError(base::Where{name, 0, 0, {}},
                           fmt::format("cannot be opened: {}", std::strerror(errno)));
  }
  std::string text;
  std::array<char, 65536> block = {};
  while (const std::size_t n = std::fread(block.data(), 1, block.size(), file.get())) {
    text.append(block.data(), n);
    if (text.size() > kLargest) {
      throw base::InputError(base::Where{name, 0, 0, {}},
                             "is over 16 MB: this is no file of cases or sizes");
    }
  }
  if (std::ferror(file.get()) != 0) {
    throw base::InputError(base::Where{name, 0, 0, {}},
                           fmt::format("cannot be read: {}", std::strerror(errno)));
  }
  return text;
}

Output refused(const std::string& messages) {
  return {.messages = messages, .status = kExitInput};
}

}  // namespace

std::string file_text(const std::string& path) {
  return read_all(path, path);
}

Output with_case(const std::string& path, const std::function<Output(const parts::Design&)>& run) {
  return with_case_text(path,
                        [&](const parts::Design& design, const CaseText&) { return run(design); });
}

parts::Design in_units(parts::Design design, const std::string& units) {
  design.inches = shown_in_inches(design.inches, units);
  return design;
}

bool shown_in_inches(bool inches_of_case, const std::string& units) {
  return units.empty() ? inches_of_case : units == "in";
}

CaseText case_text(const std::string& path) {
  const std::string name = path == "-" ? "standard input" : path;
  return {name, read_all(path, name)};
}

Output with_case_text(const std::string& path,
                      const std::function<Output(const parts::Design&, const CaseText&)>& run) {
  return with_text(case_text(path), run);
}

Output with_text(const CaseText& text,
                 const std::function<Output(const parts::Design&, const CaseText&)>& run) {
  const cases::Reading reading = cases::read(text.text, text.name);
  if (!reading.design) {
    std::string messages;
    for (const base::InputError& problem : reading.problems) {
      messages += fmt::format("{}\n", problem.what());
    }
    return refused(messages);
  }
  try {
    return run(*reading.design, text);
  } catch (const base::InputError& error) {
    return refused(fmt::format("{}\n", reading.locate(error).what()));
  }
}

}  // namespace app
