#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

/// The command line: the only folder with files, a terminal and an environment.
namespace app {

enum class ColorChoice { automatic, always, never };

/// Where an answer comes from and in which form it is wanted.
struct AnswerOptions {
  std::string case_file;   ///< "-" = standard input
  std::string json;        ///< file, "-" = standard output instead of text, empty = none
  bool all = false;        ///< everything that is known, instead of a screen
  int jobs = 0;            ///< designs at once; 0 = as many as there are processors
  std::string csv = {};    ///< folder for tables; empty = none
  std::string units = {};  ///< "in" or "mm", to show the answer in; empty = those of the case
};

/// Files that are written beside the answer to `check`; empty = none.
struct BesideFiles {
  std::string svg;  ///< one drawing
  std::string vtu;  ///< deformed frame and utilization
  std::string csv;  ///< folder, which is made where there is none
  std::string md;
};

struct CheckRequest {
  AnswerOptions options;
  BesideFiles beside;
};

/// The answer to `check` as a sheet to read, print and send.
struct ReportRequest {
  AnswerOptions options;
  std::string out;        ///< file, or "-" = standard output
  std::string date;       ///< as it is to stand on the sheet; empty = today's
  std::string pick = {};  ///< part whose stock sizes are charted; empty = none
};

/// Limits on the sizes to pick from, as typed: "1-3/4 in", or "brace=2 in" for one part alone.
struct LimitWords {
  std::vector<std::string> outside_from;
  std::vector<std::string> outside_to;
  std::vector<std::string> wall_from;
  std::vector<std::string> wall_to;
  std::vector<std::string> kinds;   ///< "tube", "bar", "brace=tube"
  std::vector<std::string> steels;  ///< "DOM", "brace=4130"
  bool own_alone = false;           ///< no sizes but those of the user's own list
};

/// Which slice of a sweep is computed, "2/8"; empty = all of it.
struct ShareWords {
  std::string share;
  std::vector<std::string> arguments;  ///< the command line without it
};

struct CompareRequest {
  AnswerOptions options;
  std::vector<std::string> changes;  ///< "path=value", each a variant or several
  bool usual = false;                ///< the ready-made comparisons that the case allows
  ShareWords share;
};

struct PickRequest {
  AnswerOptions options;
  std::vector<std::string> parts;
  LimitWords limits;
  std::string by = "mass";
  std::string stock;  ///< file with the user's own list of sizes; empty = none
  ShareWords share;
};

struct ScatterRequest {
  AnswerOptions options;
  int samples = 100;
  std::uint64_t seed = 1;
  std::vector<std::string> changes;  ///< "lateral_link.wall = normal 1.0 0.03", "load = fixed"
  ShareWords share;
};

/// Slices of one sweep put together.
struct GatherRequest {
  AnswerOptions options;  ///< names no case
  std::vector<std::string> slices;
};

struct RateRequest {
  AnswerOptions options;
  std::string over;                       ///< path of the number that is varied
  std::vector<std::string> alternatives;  ///< lists of variants, combined with one another
  std::string from;                       ///< empty = as studies::Span says
  std::string to;
  ShareWords share;
};

/// The worked lines of one part.
struct ExplainRequest {
  AnswerOptions options;
  std::string part;
  std::string check;  ///< empty = all of them
};

/// Sizes in stock; its options name no case.
struct SectionsRequest {
  AnswerOptions options;
  std::string list;   ///< part of the name of the lists wanted; empty = all
  std::string stock;  ///< file with the user's own list of sizes; empty = none
};

/// Steels; its options name no case.
struct MaterialsRequest {
  AnswerOptions options;
  bool metric = false;
};

/// The load cases: of the library, or with a case file what becomes of them in it.
struct CasesRequest {
  AnswerOptions options;  ///< case_file may be empty
};

struct NewRequest {
  std::string layout;  ///< one of cases::layouts()
};

/// The JSON Schema of a case file.
struct SchemaRequest {};

/// What a case file may say.
struct FormatRequest {};

/// Text that the command line itself asks for (help, version), or what is wrong with it.
struct Notice {
  std::string text;
  int status = 0;  ///< 0 goes to standard output, others to standard error
};

struct Request {
  std::variant<Notice, CheckRequest, ReportRequest, CompareRequest, ExplainRequest, PickRequest,
               RateRequest, ScatterRequest, GatherRequest, CasesRequest, NewRequest, SchemaRequest,
               FormatRequest, SectionsRequest, MaterialsRequest>
      what;
  ColorChoice color = ColorChoice::automatic;
};

}  // namespace app
