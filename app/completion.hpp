#pragma once

#include <string>
#include <vector>

namespace app {

/// An option of a command, for shells to complete.
struct OfferedOption {
  std::vector<std::string> names;  ///< "--json", "-o"
  std::string meaning;
  bool takes_value = false;
  std::vector<std::string> values = {};  ///< the words it may have; empty = any, files are offered
  std::string value_name = {};           ///< "FILE"
};

/// An argument that stands by its place.
struct OfferedArgument {
  std::string name;
  std::string meaning;
  bool required = false;
};

/// A command and what stands after it.
struct OfferedCommand {
  std::string name;
  std::string meaning;
  std::vector<OfferedOption> options;
  std::vector<std::string> words = {};  ///< that its argument may be; empty = files are offered
  std::vector<OfferedArgument> arguments = {};
  std::string examples = {};  ///< lines to run, as `--help` shows them
};

/// The command line as it can be completed and looked up.
struct CommandTree {
  std::vector<OfferedOption> options;  ///< before any command
  std::vector<OfferedCommand> commands;
};

/// A script that completes the command line in "bash", "zsh" or "fish".
[[nodiscard]] std::string completion_script(const std::string& shell, const CommandTree& tree);

}  // namespace app
