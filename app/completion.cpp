#include "app/completion.hpp"

#include <fmt/format.h>

#include "app/shell_word.hpp"

namespace app {
namespace {

std::string command_names(const CommandTree& tree, const char* separator) {
  std::string out;
  for (const OfferedCommand& command : tree.commands) {
    out += (out.empty() ? "" : separator) + command.name;
  }
  return out;
}

std::string words_of_options(const std::vector<OfferedOption>& options) {
  std::string out;
  for (const OfferedOption& option : options) {
    for (const std::string& name : option.names) out += " " + name;
  }
  return out;
}

std::string words_of(const std::vector<std::string>& words) {
  return fmt::format("{}", fmt::join(words, " "));
}

/// The values of options that have but a few, as branches of a `case`.
std::string bash_values(const std::vector<OfferedOption>& options) {
  std::string out;
  for (const OfferedOption& option : options) {
    if (option.values.empty()) continue;
    out += fmt::format("    {}) COMPREPLY=($(compgen -W \"{}\" -- \"$word\")); return ;;\n",
                       fmt::join(option.names, "|"), words_of(option.values));
  }
  return out;
}

std::string bash(const CommandTree& tree) {
  std::string values = bash_values(tree.options);
  std::string branches;
  for (const OfferedCommand& command : tree.commands) {
    values += bash_values(command.options);
    branches += fmt::format("    {}) options=\"{}\"; words=\"{}\" ;;\n", command.name,
                            words_of_options(command.options).substr(1), words_of(command.words));
  }
  return fmt::format(
      "# Completes linkmargin in bash: eval \"$(linkmargin completion bash)\"\n"
      "_linkmargin() {{\n"
      "  local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}}\n"
      "  local command= options= words= i\n"
      "  for ((i = 1; i < COMP_CWORD; ++i)); do\n"
      "    case ${{COMP_WORDS[i]}} in {0}) command=${{COMP_WORDS[i]}}; break ;; esac\n"
      "  done\n"
      "  case $before in\n{1}  esac\n"
      "  case $command in\n{2}"
      "    *) options=\"{3}\"; words=\"{4}\" ;;\n"
      "  esac\n"
      "  if [[ $word == -* ]]; then words=$options; fi\n"
      "  if [[ -n $words ]]; then COMPREPLY=($(compgen -W \"$words\" -- \"$word\")); fi\n"
      "}}\n"
      "complete -o default -F _linkmargin linkmargin\n",
      command_names(tree, "|"), values, branches, words_of_options(tree.options).substr(1),
      command_names(tree, " "));
}

/// Inside single quotes and brackets of zsh.
std::string zsh_text(const std::string& words) {
  std::string out;
  for (const char c : words) {
    if (c == '\'') {
      out += "'\\''";
      continue;
    }
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_option(const OfferedOption& option) {
  std::string out;
  for (const std::string& name : option.names) {
    const std::string value = !option.takes_value ? ""
                              : option.values.empty()
                                  ? ":value:_files"
                                  : fmt::format(":value:({})", words_of(option.values));
    out += fmt::format(" \\\n      '{}[{}]{}'", name, zsh_text(option.meaning), value);
  }
  return out;
}

std::string zsh(const CommandTree& tree) {
  std::string described;
  std::string branches;
  for (const OfferedCommand& command : tree.commands) {
    described += fmt::format(" '{}:{}'", command.name, zsh_text(command.meaning));
    std::string options;
    for (const OfferedOption& option : command.options) options += zsh_option(option);
    branches += fmt::format(
        "    {}) _arguments{} \\\n      '*:argument:{}' ;;\n", command.name, options,
        command.words.empty() ? "_files" : fmt::format("({})", words_of(command.words)));
  }
  return fmt::format(
      "#compdef linkmargin\n"
      "# Completes linkmargin in zsh: eval \"$(linkmargin completion zsh)\"\n"
      "_linkmargin() {{\n"
      "  local -a commands=({})\n"
      "  local command=${{words[2]}}\n"
      "  if (( CURRENT == 2 )); then _describe command commands; return; fi\n"
      "  words=(\"${{words[@]:1}}\"); (( CURRENT -= 1 ))\n"
      "  case $command in\n{}  esac\n"
      "}}\n"
      "if [[ $zsh_eval_context[-1] == loadautofunc ]]; then _linkmargin \"$@\"\n"
      "else compdef _linkmargin linkmargin\n"
      "fi\n",
      described, branches);
}

std::string fish_option(const std::string& condition, const OfferedOption& option) {
  std::string out = "complete -c linkmargin -n " + shell_word(condition);
  for (const std::string& name : option.names) {
    out += name.rfind("--", 0) == 0 ? " -l " + name.substr(2) : " -s " + name.substr(1);
  }
  if (option.takes_value) out += " -r";
  if (!option.values.empty()) out += " -f -a " + shell_word(words_of(option.values));
  return out + " -d " + shell_word(option.meaning) + "\n";
}

std::string fish(const CommandTree& tree) {
  std::string out = "# Completes linkmargin in fish: linkmargin completion fish | source\n";
  for (const OfferedOption& option : tree.options) {
    out += fish_option("__fish_use_subcommand", option);
  }
  for (const OfferedCommand& command : tree.commands) {
    out += fmt::format("complete -c linkmargin -n __fish_use_subcommand -f -a {} -d {}\n",
                       command.name, shell_word(command.meaning));
    const std::string seen = "__fish_seen_subcommand_from " + command.name;
    for (const OfferedOption& option : command.options) out += fish_option(seen, option);
    if (command.words.empty()) continue;
    out += fmt::format("complete -c linkmargin -n {} -f -a {}\n", shell_word(seen),
                       shell_word(words_of(command.words)));
  }
  return out;
}

}  // namespace

std::string completion_script(const std::string& shell, const CommandTree& tree) {
  if (shell == "zsh") return zsh(tree);
  return shell == "fish" ? fish(tree) : bash(tree);
}

}  // namespace app
