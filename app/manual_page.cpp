#include "app/manual_page.hpp"

#include <fmt/format.h>

#include "report/wrap.hpp"
#include "studies/answer.hpp"

namespace app {
namespace {

/// Text of the page: no escape of troff, no line of its own that is a request, no dash that is set
/// as a hyphen.
std::string troff(const std::string& words) {
  std::string out;
  for (const char c : words) {
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-') {
      out += "\\-";
    } else if ((c == '.' || c == '\'') && (out.empty() || out.back() == '\n')) {
      out += fmt::format("\\&{}", c);
    } else {
      out += c;
    }
  }
  return out;
}

std::string names_of(const OfferedOption& option) {
  std::string out;
  for (const std::string& name : option.names) {
    out += fmt::format("{}\\fB{}\\fR", out.empty() ? "" : ", ", troff(name));
  }
  return option.takes_value ? out + " \\fI" + troff(option.value_name) + "\\fR" : out;
}

std::string options_text(const std::vector<OfferedOption>& options) {
  std::string out;
  for (const OfferedOption& option : options) {
    out += fmt::format(".TP\n{}\n{}\n", names_of(option), troff(option.meaning));
  }
  return out;
}

std::string command_text(const OfferedCommand& command) {
  std::string usage = fmt::format("\\fBlinkmargin {}\\fR", troff(command.name));
  std::string arguments;
  for (const OfferedArgument& argument : command.arguments) {
    const std::string name = fmt::format("\\fI{}\\fR", troff(argument.name));
    usage += argument.required ? " " + name : " [" + name + "]";
    arguments +=
        fmt::format(".TP\n\\fI{}\\fR\n{}\n", troff(argument.name), troff(argument.meaning));
  }
  std::string out = fmt::format(".SS {}\n{} [options]\n.PP\n{}.\n", troff(command.name), usage,
                                troff(command.meaning));
  out += arguments + options_text(command.options);
  if (!command.examples.empty()) {
    out += fmt::format(".PP\nExample:\n.PP\n.nf\n{}.fi\n", troff(command.examples));
  }
  return out;
}

}  // namespace

std::string manual_page(const CommandTree& tree, const report::Program& program) {
  std::string out = fmt::format(
      ".TH LINKMARGIN 1 \"\" \"linkmargin {}\" \"User Commands\"\n"
      ".SH NAME\nlinkmargin \\- strength checks of fabricated suspension links and brackets\n"
      ".SH SYNOPSIS\n\\fBlinkmargin\\fR \\fICOMMAND\\fR [\\fIoptions\\fR]\n"
      ".SH DESCRIPTION\n"
      "Reads a case: what a tape measure and a scale give of links, brackets, braces, arms and "
      "steering on a beam axle. Builds the frame, pushes it with the loads the trade uses, and "
      "says "
      "which part governs, in which load case, by what margin.\n"
      ".SH OPTIONS\n{}.SH COMMANDS\n",
      troff(program.version), options_text(tree.options));
  for (const OfferedCommand& command : tree.commands) out += command_text(command);
  return out +
         fmt::format(
             ".SH EXIT STATUS\n0 within the limits checked; 1 over a limit, or not decided; "
             "2 the case or the command is wrong; 3 a fault of the program; 130 interrupted.\n"
             ".SH CAUTION\n{}\n",
             troff(report::joined(studies::cautions(), " ")));
}

}  // namespace app
