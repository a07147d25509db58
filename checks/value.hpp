#pragma once

#include "checks/finding.hpp"

/// Numbers of a worked line, by what they measure; not for use outside this folder.
namespace checks {

inline Value ratio(double si) {
  return {si, Measure::ratio};
}
inline Value stress(double si) {
  return {si, Measure::stress};
}
inline Value force(double si) {
  return {si, Measure::force};
}
inline Value moment(double si) {
  return {si, Measure::moment};
}
inline Value length(double si) {
  return {si, Measure::length};
}
inline Value second_moment(double si) {
  return {si, Measure::second_moment};
}

}  // namespace checks
