#include "report/slice.hpp"

#include <cmath>
#include <limits>

#include <nlohmann/json.hpp>

#include "base/input_error.hpp"
#include "report/json_parts.hpp"
#include "report/slice_designs.hpp"

namespace report {
namespace {

constexpr const char* kWhat = "linkmargin slice 1";

Json judged_json(const studies::Judged& j) {
  Json out;
  out["verdict"] = static_cast<int>(j.verdict);
  if (!std::isnan(j.utilization)) out["utilization"] = value_of(j.utilization);
  out["part"] = j.part;
  out["check"] = j.check;
  out["load_case"] = j.load_case;
  out["open"] = j.open;
  out["other_over"] = j.other_over;
  out["only_other_tube"] = j.only_other_tube;
  out["no_sense"] = j.no_sense;
  out["in_full"] = j.in_full;
  out["beware"] = strings(j.beware);
  return out;
}

studies::Judged judged_from(const Json& in) {
  studies::Judged j;
  const int verdict = in.at("verdict").get<int>();
  if (verdict < 0 || verdict > 2) throw base::InputError("verdict", "is none of 0, 1, 2");
  j.verdict = static_cast<studies::Verdict>(verdict);
  if (in.contains("utilization")) {
    const Json& u = in.at("utilization");
    j.utilization = u.is_string() ? std::numeric_limits<double>::infinity() : u.get<double>();
  }
  in.at("part").get_to(j.part);
  in.at("check").get_to(j.check);
  in.at("load_case").get_to(j.load_case);
  in.at("open").get_to(j.open);
  in.at("other_over").get_to(j.other_over);
  in.at("only_other_tube").get_to(j.only_other_tube);
  in.at("no_sense").get_to(j.no_sense);
  in.at("in_full").get_to(j.in_full);
  in.at("beware").get_to(j.beware);
  return j;
}

Json lane_json(const studies::GridLane& lane) {
  Json out;
  out["in_full"] = lane.in_full;
  out["in_part"] = lane.in_part;
  out["no_sense"] = lane.no_sense;
  out["kept"] = list_of(lane.kept, [](const studies::GridLane::Kept& kept) {
    Json one;
    one["design"] = kept.design;
    one["judged"] = judged_json(kept.judged);
    return one;
  });
  return out;
}

studies::GridLane lane_from(const Json& in) {
  studies::GridLane lane;
  in.at("in_full").get_to(lane.in_full);
  in.at("in_part").get_to(lane.in_part);
  in.at("no_sense").get_to(lane.no_sense);
  for (const Json& one : in.at("kept")) {
    lane.kept.push_back({one.at("design").get<std::size_t>(), judged_from(one.at("judged"))});
  }
  return lane;
}

Json named_json(const NamedText& file) {
  Json out;
  out["name"] = file.name;
  out["text"] = file.text;
  return out;
}

NamedText named_from(const Json& in) {
  return {in.at("name").get<std::string>(), in.at("text").get<std::string>()};
}

/// What a map of pieces holds, each with its number.
template <class Pieces, class Writer>
Json pieces_json(const Pieces& pieces, Writer write) {
  Json list = Json::array();
  for (const auto& [i, piece] : pieces) list.push_back(Json::array({i, write(piece)}));
  return list;
}

Slice slice_from(const Json& in) {
  Slice slice;
  in.at("program").get_to(slice.program);
  in.at("arguments").get_to(slice.arguments);
  slice.case_file = named_from(in.at("case"));
  slice.stock = named_from(in.at("stock"));
  in.at("share").get_to(slice.which);
  in.at("of").get_to(slice.of);
  in.at("pieces").get_to(slice.n_mine);
  for (const Json& one : in.at("sizes_or_samples")) {
    slice.judged.emplace(one.at(0).get<std::size_t>(), judged_from(one.at(1)));
  }
  for (const Json& one : in.at("lanes")) {
    slice.lanes.emplace(one.at(0).get<std::size_t>(), lane_from(one.at(1)));
  }
  for (const Json& one : in.at("rated")) {
    slice.rated.emplace(one.at(0).get<std::size_t>(), rated_from(one.at(1)));
  }
  for (const Json& one : in.at("compared")) {
    slice.compared.emplace(one.at(0).get<std::size_t>(), compared_from(one.at(1)));
  }
  return slice;
}

}  // namespace

std::string slice_text(const Slice& slice) {
  Json out;
  out["what"] = kWhat;
  out["cautions"] = strings(studies::cautions());
  out["program"] = slice.program;
  out["arguments"] = strings(slice.arguments);
  out["share"] = slice.which;
  out["of"] = slice.of;
  out["pieces"] = slice.n_mine;
  out["case"] = named_json(slice.case_file);
  out["stock"] = named_json(slice.stock);
  out["sizes_or_samples"] = pieces_json(slice.judged, judged_json);
  out["lanes"] = pieces_json(slice.lanes, lane_json);
  out["rated"] = pieces_json(slice.rated, rated_piece);
  out["compared"] = pieces_json(slice.compared, compared_piece);
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

Slice read_slice(const std::string& text, const std::string& file) {
  const auto fail = [&](const std::string& why) {
    return base::InputError(base::Where{file, 0, 0, {}},
                            "is no slice as `--share` writes it: " + why);
  };
  const Json in = Json::parse(text, nullptr, false);
  if (in.is_discarded() || !in.is_object()) throw fail("no JSON object, or not all of one");
  if (!in.contains("what") || in.at("what") != kWhat) throw fail("it does not say that it is one");
  try {
    return slice_from(in);
  } catch (const Json::exception& error) {
    throw fail(error.what());
  } catch (const base::InputError& error) {
    throw fail(error.what());
  }
}

}  // namespace report
