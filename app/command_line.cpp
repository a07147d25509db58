#include "app/command_line.hpp"

#include <algorithm>
#include <memory>
#include <vector>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "app/completion.hpp"
#include "app/manual_page.hpp"
#include "app/program.hpp"
#include "cases/starters.hpp"
#include "report/text_style.hpp"

namespace app {
namespace {

constexpr const char* kExitStatuses =
    "linkmargin COMMAND --help: what a command can be asked, with an example.\n"
    "Exit status: 0 within the limits checked; 1 over a limit, or not decided;\n"
    "2 the case or the command is wrong; 3 a fault of the program; 130 interrupted.\n";

constexpr const char* kStockColumns =
    "FILE.csv: lines that start with # are remarks; then a line of headings, any of\n"
    "shape,unit,depth,width,wall,corner,label,price_per_ft in any order; then a line\n"
    "a size: shape round_bar, round_tube, rectangular_tube, flat_bar, channel or\n"
    "angle; unit in or mm; depth is the diameter of what is round; corner may be\n"
    "empty (2 walls); prices per ft or per m (price_per_m), in your own money.\n"
    "  round_tube,in,1.5,,0.25,,,7.20\n";

constexpr const char* kCommands =
    "check, report, explain, compare, pick, rate, scatter, gather, cases, new, format, schema, "
    "completion, man, sections and materials";

/// A command and what it is for, in lines that a shell can run one after the other.
struct Example {
  const char* command;
  const char* lines;
};

constexpr Example kExamples[] = {
    {"new",
     "  linkmargin new > mine.yaml              # a link on a bracket with its brace\n"
     "  linkmargin new --layout steering        # drag link and tie rod as well\n"},
    {"check",
     "  linkmargin check mine.yaml              # does it hold, what goes first\n"
     "  linkmargin check mine.yaml --all --units mm\n"},
    {"report",
     "  linkmargin report mine.yaml -o sheet.html\n"
     "  linkmargin report mine.yaml -o sheet.html --pick lateral_link\n"},
    {"explain", "  linkmargin explain mine.yaml lateral_link column\n"},
    {"compare",
     "  linkmargin compare mine.yaml --set \"bracket.drop=7 in\" --set \"no brace\"\n"
     "  linkmargin compare mine.yaml --usual\n"},
    {"pick",
     "  linkmargin pick mine.yaml --part lateral_link --od-to \"1-1/2 in\"\n"
     "  linkmargin pick mine.yaml --part brace --kind tube --wall-from \"0.188 in\"\n"},
    {"rate", "  linkmargin rate mine.yaml --over vehicle.axle_weight --for \"drop = 7, 9 in\"\n"},
    {"scatter", "  linkmargin scatter mine.yaml --samples 20 --vary \"load = normal 1.0 0.1\"\n"},
    {"gather",
     "  linkmargin scatter mine.yaml --samples 6 --share 1/2 > slice-1.json\n"
     "  linkmargin scatter mine.yaml --samples 6 --share 2/2 > slice-2.json\n"
     "  linkmargin gather slice-1.json slice-2.json\n"},
    {"cases", "  linkmargin cases mine.yaml              # with the truck's numbers\n"},
    {"format", "  linkmargin format > format.md           # to read, with its sketches\n"},
    {"schema", "  linkmargin schema > linkmargin.schema.json\n"},
    {"completion", "  eval \"$(linkmargin completion bash)\"   # in the start-up file of bash\n"},
    {"man", "  linkmargin man > linkmargin.1           # then: man ./linkmargin.1\n"},
    {"sections", "  linkmargin sections \"flat bar\"\n"},
    {"materials", "  linkmargin materials --metric\n"}};

std::string example_lines(const std::string& command) {
  for (const Example& example : kExamples) {
    if (command == example.command) return example.lines;
  }
  return "";
}

const std::vector<std::string> kColors = {"auto", "always", "never"};
const std::vector<std::string> kBy = {"mass", "cost", "od"};
const std::vector<std::string> kShells = {"bash", "zsh", "fish"};
const std::vector<std::string> kUnits = {"in", "mm"};

/// What is wrong with a word; empty when it is one of them.
std::string one_of(const std::string& word, const std::vector<std::string>& words) {
  if (std::find(words.begin(), words.end(), word) != words.end()) return "";
  return fmt::format("`{}` is none of {}", word, fmt::join(words, ", "));
}

void add_json(CLI::App& command, AnswerOptions& options) {
  command.add_option("--json", options.json, "write JSON to FILE, or - for JSON alone")
      ->option_text("FILE|-");
}

void add_units(CLI::App& command, AnswerOptions& options) {
  command.add_option("--units", options.units, "show the answer in in or mm; else as the case")
      ->option_text("in|mm")
      ->check(CLI::Validator([](const std::string& word) { return one_of(word, kUnits); }, ""));
}

CLI::Option* add_case_file(CLI::App& command, AnswerOptions& options) {
  CLI::Option* file =
      command.add_option("CASE", options.case_file, "case file, or - for standard input");
  file->option_text(" ");
  return file;
}

CLI::Option* add_case_options(CLI::App& command, AnswerOptions& options) {
  CLI::Option* file = add_case_file(command, options);
  add_json(command, options);
  add_units(command, options);
  return file;
}

void add_jobs(CLI::App& command, AnswerOptions& options) {
  command.add_option("--jobs", options.jobs, "designs at once; left out, one a processor")
      ->option_text("N")
      ->check(CLI::Range(1, 1024));
}

/// The layout of the help texts, within 80 columns.
std::shared_ptr<CLI::Formatter> formatter() {
  auto made = std::make_shared<CLI::Formatter>();
  made->column_width(22);
  made->label("SUBCOMMAND", "COMMAND");
  made->label("OPTIONS", "options");
  made->label("Positionals", "Arguments");
  return made;
}

Notice wrong_command(const std::string& problem) {
  return {fmt::format("linkmargin: {}\nlinkmargin --help says what can be asked.\n", problem),
          kExitInput};
}

/// What is wrong when none of the commands was found among the arguments.
Notice no_command(int argc, const char* const* argv) {
  for (int i = 1; i < argc; ++i) {
    if (argv[i][0] == '-') continue;
    return wrong_command(fmt::format("there is no command `{}`; there is {}", argv[i], kCommands));
  }
  return wrong_command(fmt::format("a command is missing; there is {}", kCommands));
}

/// The parser with the places its answers go to, which must not move once it is built.
class CommandLine {
 public:
  CommandLine() {
    app_.name("linkmargin");
    app_.formatter(formatter());
    app_.require_subcommand(1);
    app_.fallthrough();  // lets --color stand after the command too
    app_.set_help_flag("-h,--help", "this text");
    app_.footer(kExitStatuses + report::caution_lines({}));
    app_.add_flag("--version", version_, "name, version and commit");
    app_.add_option("--color", color_, "auto, always or never")
        ->option_text("WHEN")
        ->check(CLI::Validator([](const std::string& word) { return one_of(word, kColors); }, ""));
    check_ = add_command("check", "does it hold, what goes first, by what margin");
    add_case_options(*check_, answer_)->required();
    add_jobs(*check_, answer_);
    check_->add_flag("--all", answer_.all, "every check with its worked lines, every assumption");
    add_beside();
    report_ = add_command("report", "one HTML sheet of the answer, to read, print and send");
    add_case_file(*report_, answer_)->required();
    add_jobs(*report_, answer_);
    report_->add_option("-o,--output", out_, "where to write it, or - for standard output")
        ->option_text("FILE|-")
        ->required();
    report_->add_option("--date", date_, "date on the sheet; left out, today's")
        ->option_text("TEXT");
    report_
        ->add_option("--pick", chart_, "with a chart of the stock sizes of a part, such as brace")
        ->option_text("PART");
    add_units(*report_, answer_);
    explain_ = add_command("explain", "where the numbers of one part come from, line by line");
    add_case_options(*explain_, answer_)->required();
    explain_->add_option("PART", part_, "as `check` names it; left out: which there are")
        ->option_text(" ");
    explain_->add_option("CHECK", check_words_, "one of its checks, such as yield; all without it")
        ->option_text(" ");
    compare_ = add_command("compare", "variants of a case side by side");
    add_case_options(*compare_, answer_)->required();
    add_jobs(*compare_, answer_);
    compare_
        ->add_option("--set", changes_, "a variant, such as bracket.drop=\"7 in\"; may be repeated")
        ->option_text("PATH=VALUE")
        ->allow_extra_args(false);
    compare_->add_flag("--usual", usual_,
                       "the ready-made ones: no brace, bar or tube, bend, drops");
    add_csv(*compare_);
    add_share(*compare_);
    add_pick();
    rate_ = add_command("rate", "up to which axle weight (or other number) all of it holds");
    add_case_options(*rate_, answer_)->required();
    add_jobs(*rate_, answer_);
    rate_->add_option("--over", over_, "the number to vary, such as vehicle.axle_weight")
        ->required()
        ->option_text("PATH");
    rate_
        ->add_option("--for", alternatives_,
                     "variants, such as \"drop = 4, 6 in\"; repeated: combined")
        ->option_text("WORDS")
        ->allow_extra_args(false);
    rate_->add_option("--from", from_, "where the search starts, such as \"2000 lb\"")
        ->option_text("VALUE");
    rate_->add_option("--to", to_, "where it ends")->option_text("VALUE");
    rate_->add_flag("--all", answer_.all, "every value that was tried");
    add_csv(*rate_);
    add_share(*rate_);
    add_scatter();
    cases_ = add_command("cases", "the load cases; with a case file, their numbers in it");
    add_case_options(*cases_, answer_);
    new_ = add_command("new", "a case file to start from, on standard output");
    new_->add_option("--layout", layout_, "link, radius-arms, parallel-arms or steering")
        ->option_text("NAME")
        ->check(CLI::Validator(
            [](const std::string& name) { return one_of(name, cases::layouts()); }, ""));
    format_ = add_command("format", "what a case file may say, key by key, with sketches");
    schema_ = add_command("schema", "JSON Schema of a case file, for editors to complete from");
    completion_ = add_command("completion", "a script that completes commands in your shell");
    completion_->add_option("SHELL", shell_, "bash, zsh or fish")
        ->required()
        ->option_text(" ")
        ->check(CLI::Validator([](const std::string& name) { return one_of(name, kShells); }, ""));
    man_ = add_command("man", "the manual page of all commands, for man");
    sections_ = add_command("sections", "the bars, tubes and plates in stock, with their sources");
    sections_->add_option("LIST", list_, "part of a list's name, such as \"flat bar\"")
        ->option_text(" ");
    add_json(*sections_, answer_);
    sections_->add_flag("--all", answer_.all, "the properties of every size");
    add_stock(*sections_);
    materials_ = add_command("materials", "the steels, with their strengths and sources");
    add_json(*materials_, answer_);
    materials_->add_flag("--all", answer_.all, "what each strength is and where it comes from");
    materials_->add_flag("--metric", metric_, "MPa and mm instead of ksi and in");
  }

  Request parse(int argc, const char* const* argv) {
    arguments_ = without_share(argc, argv);
    try {
      app_.parse(argc, argv);
    } catch (const CLI::CallForHelp&) {
      return {Notice{app_.help(), kExitWithin}};
    } catch (const CLI::ParseError& error) {
      if (app_.get_subcommands().empty() && !version_) return {no_command(argc, argv)};
      // --version needs no command.
      if (!version_) return {wrong_command(error.what())};
    }
    if (!share_.empty() && !answer_.csv.empty()) {
      return {wrong_command("--share writes a slice and no tables: give --csv to `gather`")};
    }
    return {request(), color()};
  }

 private:
  void add_csv(CLI::App& command) {
    command.add_option("--csv", answer_.csv, "also write tables for a spreadsheet into a folder")
        ->option_text("DIR");
  }

  void add_share(CLI::App& command) {
    command.add_option("--share", share_, "share I of N alone, as a slice for `gather`")
        ->option_text("I/N");
  }

  void add_pick() {
    pick_ = add_command("pick", "the lightest bar or tube in stock that passes");
    add_case_options(*pick_, answer_)->required();
    add_jobs(*pick_, answer_);
    pick_->add_option("--part", parts_, "such as lateral_link or brace; two or three: together")
        ->required()
        ->option_text("NAME")
        ->allow_extra_args(false);
    const auto add = [&](const char* option, std::vector<std::string>& words, const char* meaning,
                         const char* text) {
      pick_->add_option(option, words, meaning)->option_text(text)->allow_extra_args(false);
    };
    add("--od-from", limits_.outside_from, "least outside; `brace=1 in` for one part alone",
        "LENGTH");
    add("--od-to", limits_.outside_to, "most outside, for clearance or a bung", "LENGTH");
    add("--wall-from", limits_.wall_from, "least wall of tubes", "LENGTH");
    add("--wall-to", limits_.wall_to, "most wall of tubes", "LENGTH");
    add("--kind", limits_.kinds, "tube or bar alone", "tube|bar");
    add("--steel", limits_.steels, "the steel to take; repeated, each is tried", "NAME");
    pick_->add_option("--by", by_, "mass, cost (prices by --stock) or od")
        ->option_text("WHAT")
        ->check(CLI::Validator([](const std::string& word) { return one_of(word, kBy); }, ""));
    pick_->add_flag("--all", answer_.all, "every size; of several parts each best combination");
    add_csv(*pick_);
    add_share(*pick_);
    add_stock(*pick_);
    pick_->add_flag("--only-stock", limits_.own_alone, "no sizes but those of --stock")
        ->needs("--stock");
  }

  void add_scatter() {
    scatter_ = add_command("scatter", "how often it stays within, when sizes and loads scatter");
    add_case_options(*scatter_, answer_)->required();
    add_jobs(*scatter_, answer_);
    scatter_->add_option("--samples", samples_, "how many designs are drawn; 100 without it")
        ->option_text("N")
        ->check(CLI::Range(2, 1000000));
    scatter_->add_option("--seed", seed_, "the same seed draws the same designs; 1 without it")
        ->option_text("N");
    scatter_->add_option("--vary", vary_, "a distribution, such as \"wall = normal 1.0 0.03\"")
        ->option_text("WORDS")
        ->allow_extra_args(false);
    scatter_->add_flag("--all", answer_.all, "every sample");
    add_csv(*scatter_);
    add_share(*scatter_);
    gather_ = add_command("gather", "slices of a sweep (--share) put together to its answer");
    gather_->add_option("SLICE", slices_, "files that a command with --share wrote")
        ->required()
        ->option_text(" ");
    add_json(*gather_, answer_);
    gather_->add_flag("--all", answer_.all, "all of the answer");
    add_csv(*gather_);
  }

  /// What a slice remembers of the command line.
  [[nodiscard]] static std::vector<std::string> without_share(int argc, const char* const* argv) {
    std::vector<std::string> out;
    for (int i = 1; i < argc; ++i) {
      const std::string word = argv[i];
      if (word == "--share") {
        ++i;
      } else if (word.rfind("--share=", 0) != 0) {
        out.push_back(word);
      }
    }
    return out;
  }

  void add_beside() {
    check_->add_option("--svg", beside_.svg, "also write a drawing, parts by their utilization")
        ->option_text("FILE");
    check_
        ->add_option("--vtu", beside_.vtu, "also write the deformed frame for viewers of VTK files")
        ->option_text("FILE");
    check_->add_option("--csv", beside_.csv, "also write tables for a spreadsheet into a folder")
        ->option_text("DIR");
    check_->add_option("--md", beside_.md, "also write the answer in short as Markdown")
        ->option_text("FILE");
  }

  void add_stock(CLI::App& command) {
    command.add_option("--stock", stock_, "your own sizes beside the built-in ones")
        ->option_text("FILE.csv");
    command.footer(command.get_footer() + "\n" + kStockColumns);
  }

  CLI::App* add_command(const std::string& name, const std::string& meaning) {
    CLI::App* command = app_.add_subcommand(name, meaning);
    command->group("Commands");
    command->footer("Example:\n" + example_lines(name));
    command->set_help_flag("-h,--help", "this text");
    return command;
  }

  /// The words that an option or an argument may have, where they are few.
  [[nodiscard]] static std::vector<std::string> values_of(const std::string& name) {
    if (name == "--color") return kColors;
    if (name == "--by") return kBy;
    if (name == "--kind") return {"tube", "bar"};
    if (name == "--layout") return cases::layouts();
    if (name == "--units") return kUnits;
    return name == "SHELL" ? kShells : std::vector<std::string>();
  }

  [[nodiscard]] static std::vector<OfferedOption> offered_options(const CLI::App& app) {
    std::vector<OfferedOption> all;
    for (const CLI::Option* option : app.get_options()) {
      if (option->get_positional()) continue;
      OfferedOption& offered = all.emplace_back();
      for (const std::string& name : option->get_snames()) offered.names.push_back("-" + name);
      for (const std::string& name : option->get_lnames()) offered.names.push_back("--" + name);
      offered.meaning = option->get_description();
      offered.takes_value = option->get_items_expected_max() > 0;
      offered.value_name = option->get_option_text();
      offered.values = values_of(offered.names.back());
    }
    return all;
  }

  /// As it is parsed, for a shell to complete.
  [[nodiscard]] CommandTree tree() const {
    CommandTree out{offered_options(app_), {}};
    for (const CLI::App* command : app_.get_subcommands([](const CLI::App*) { return true; })) {
      out.commands.push_back(
          {command->get_name(), command->get_description(), offered_options(*command)});
      OfferedCommand& offered = out.commands.back();
      for (const CLI::Option* option : command->get_options()) {
        if (!option->get_positional()) continue;
        offered.words = values_of(option->get_name());
        offered.arguments.push_back(
            {option->get_name(), option->get_description(), option->get_required()});
      }
      offered.examples = example_lines(offered.name);
    }
    return out;
  }

  [[nodiscard]] ColorChoice color() const {
    if (color_ == "always") return ColorChoice::always;
    return color_ == "never" ? ColorChoice::never : ColorChoice::automatic;
  }

  [[nodiscard]] decltype(Request::what) request() const {
    if (version_) return Notice{program_line() + "\n", kExitWithin};
    if (check_->parsed()) return CheckRequest{answer_, beside_};
    if (report_->parsed()) return ReportRequest{answer_, out_, date_, chart_};
    if (compare_->parsed()) {
      return CompareRequest{answer_, changes_, usual_, {share_, arguments_}};
    }
    if (explain_->parsed())
      return ExplainRequest{answer_, part_, fmt::format("{}", fmt::join(check_words_, " "))};
    if (pick_->parsed()) {
      return PickRequest{answer_, parts_, limits_, by_, stock_, {share_, arguments_}};
    }
    if (scatter_->parsed()) {
      return ScatterRequest{answer_, samples_, seed_, vary_, {share_, arguments_}};
    }
    if (gather_->parsed()) return GatherRequest{answer_, slices_};
    if (rate_->parsed()) {
      return RateRequest{answer_, over_, alternatives_, from_, to_, {share_, arguments_}};
    }
    if (cases_->parsed()) return CasesRequest{answer_};
    if (format_->parsed()) return FormatRequest{};
    if (schema_->parsed()) return SchemaRequest{};
    if (completion_->parsed()) return Notice{completion_script(shell_, tree()), kExitWithin};
    if (man_->parsed()) return Notice{manual_page(tree(), program()), kExitWithin};
    if (sections_->parsed()) return SectionsRequest{answer_, list_, stock_};
    if (materials_->parsed()) return MaterialsRequest{answer_, metric_};
    return NewRequest{layout_};
  }

  CLI::App app_{"linkmargin checks the strength of fabricated suspension links and brackets."};
  CLI::App* check_ = nullptr;
  CLI::App* report_ = nullptr;
  CLI::App* explain_ = nullptr;
  CLI::App* compare_ = nullptr;
  CLI::App* pick_ = nullptr;
  CLI::App* rate_ = nullptr;
  CLI::App* scatter_ = nullptr;
  CLI::App* gather_ = nullptr;
  CLI::App* cases_ = nullptr;
  CLI::App* new_ = nullptr;
  CLI::App* format_ = nullptr;
  CLI::App* schema_ = nullptr;
  CLI::App* completion_ = nullptr;
  CLI::App* man_ = nullptr;
  CLI::App* sections_ = nullptr;
  CLI::App* materials_ = nullptr;
  bool version_ = false;
  std::string color_ = "auto";
  AnswerOptions answer_;
  std::vector<std::string> changes_;
  std::string part_;
  std::string over_;
  std::vector<std::string> alternatives_;
  std::string from_;
  std::string to_;
  std::vector<std::string> check_words_;
  BesideFiles beside_;
  std::string layout_ = "link";
  std::string shell_;
  std::string out_;
  std::string date_;
  std::string chart_;
  std::string list_;
  std::string stock_;
  bool metric_ = false;
  bool usual_ = false;
  std::vector<std::string> parts_;
  LimitWords limits_;
  std::string by_ = "mass";
  int samples_ = 100;
  std::uint64_t seed_ = 1;
  std::vector<std::string> vary_;
  std::string share_;
  std::vector<std::string> slices_;
  std::vector<std::string> arguments_;
};

}  // namespace

Request parse_command_line(int argc, const char* const* argv) {
  CommandLine line;
  return line.parse(argc, argv);
}

}  // namespace app
