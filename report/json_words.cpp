#include "report/json_words.hpp"

namespace report {

const char* unit_in_si(checks::Measure measure) {
  using checks::Measure;
  switch (measure) {
    case Measure::ratio:
      return "1";
    case Measure::stress:
      return "Pa";
    case Measure::force:
      return "N";
    case Measure::moment:
      return "N m";
    case Measure::length:
      return "m";
    case Measure::force_per_length:
      return "N/m";
    case Measure::angle:
      return "rad";
    case Measure::area:
      return "m^2";
    case Measure::section_modulus:
      return "m^3";
    case Measure::second_moment:
      return "m^4";
  }
  return "1";
}

const char* verdict_in_words(studies::Verdict verdict) {
  switch (verdict) {
    case studies::Verdict::within:
      return "within the limits checked";
    case studies::Verdict::over:
      return "over the limit";
    case studies::Verdict::not_decided:
      break;
  }
  return "not decided";
}

const char* state_in_words(checks::State state) {
  switch (state) {
    case checks::State::within:
      return verdict_in_words(studies::Verdict::within);
    case checks::State::over:
      return verdict_in_words(studies::Verdict::over);
    case checks::State::undecided:
      break;
  }
  return verdict_in_words(studies::Verdict::not_decided);
}

}  // namespace report
