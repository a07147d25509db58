#include "report/csv.hpp"

#include <cstddef>
#include <utility>

#include <fmt/format.h>

#include "report/csv_rows.hpp"
#include "report/json_words.hpp"

namespace report {
namespace {

using studies::Answer;

CsvFile findings_csv(const Answer& answer) {
  CsvTable out("findings.csv",
               "part,check,where,load case,stiffness set,state,utilization,safety factor,asked,"
               "demand,capacity,unit,source,reason");
  for (const checks::Finding& f : answer.findings) {
    out.text(f.part).text(f.check).text(f.where).text(f.load_case).text(f.set);
    out.text(state_in_words(f.state)).number(f.utilization()).number(f.safety_factor);
    out.number(f.required).number(f.demand).number(f.capacity).text(unit_in_si(f.measure));
    out.text(f.source).text(f.reason).end_row();
  }
  return std::move(out).file();
}

CsvFile critical_csv(const Answer& answer) {
  CsvTable out("critical-factors.csv", "what,how,factor,load case,stiffness set");
  for (const auto* all : {&answer.critical, &answer.own}) {
    for (const studies::CriticalFactor& c : *all) {
      out.text(c.what).text(c.own ? "alone" : c.axle_tips ? "the whole axle" : "assembled");
      out.number(c.factor).text(c.load_case).text(c.set).end_row();
    }
  }
  return std::move(out).file();
}

CsvFile ends_csv(const Answer& answer) {
  CsvTable out("forces-on-ends.csv",
               "load case,stiffness set,part,piece,end,Fx [N],Fy [N],Fz [N],Mx [N m],My [N m],"
               "Mz [N m]");
  for (const studies::SolvedCase& s : answer.solved) {
    for (const studies::PieceEnds& piece : s.pieces) {
      for (std::size_t end = 0; end < 2; ++end) {
        out.text(s.load_case).text(s.set).text(piece.part).text(piece.piece);
        out.text(end == 0 ? "a" : "b");
        for (std::size_t i = 0; i < 6; ++i) out.number(piece.ends[6 * end + i]);
        out.end_row();
      }
    }
  }
  return std::move(out).file();
}

CsvFile masses_csv(const Answer& answer) {
  CsvTable out("masses.csv", "part,mass [kg]");
  for (const studies::PartMass& m : answer.masses) out.text(m.part).number(m.mass).end_row();
  return std::move(out).file();
}

CsvFile assumed_csv(const Answer& answer) {
  CsvTable out("assumed.csv", "key,value,basis");
  for (const parts::Assumption& a : answer.assumed) {
    out.text(a.key).text(a.value).text(a.basis).end_row();
  }
  return std::move(out).file();
}

}  // namespace

std::string csv_cell(std::string_view text) {
  // Spreadsheets run what starts so.
  constexpr std::string_view kFormula = "=+-@\t\r";
  std::string out;
  if (!text.empty() && kFormula.find(text.front()) != kFormula.npos) out += '\'';
  out += text;
  if (out.find_first_of(",\"\n\r#") == out.npos) return out;
  std::string quoted = "\"";
  for (const char c : out) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

std::vector<CsvFile> csv(const Answer& answer) {
  std::vector<CsvFile> files = {findings_csv(answer), critical_csv(answer), ends_csv(answer),
                                masses_csv(answer), assumed_csv(answer)};
  if (answer.comparison) files.push_back(csv(*answer.comparison).front());
  return files;
}

}  // namespace report
