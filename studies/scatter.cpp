#include "studies/scatter.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "cases/number.hpp"
#include "cases/words.hpp"
#include "studies/design_number.hpp"

namespace studies {
namespace {

constexpr const char* kLoad = "load";
constexpr const char* kExample =
    "`normal 1.0 0.05` (mean, coefficient of variation), `lognormal "
    "1.1 0.07`, `uniform 0.9 1.05` (least, most) or `fixed`";
constexpr const char* kProposal = "proposal, no source";

bool ends_with(const std::string& text, std::string_view end) {
  return text.size() >= end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

ScatterInput usual_input(const std::string& path) {
  using Kind = Distribution::Kind;
  if (ends_with(path, ".wall")) return {path, {Kind::normal, 1.0, 0.03}, kProposal};
  if (ends_with(path, ".outside")) return {path, {Kind::normal, 1.0, 0.002}, kProposal};
  if (ends_with(path, ".yield")) {
    return {path,
            {Kind::lognormal, 1.10, 0.07},
            "coefficient of variation 0.07 by the JCSS Probabilistic Model Code, part 3.02 (from "
            "memory); mean over the least strength: proposal, no source"};
  }
  if (ends_with(path, ".off_straight")) return {path, {Kind::normal, 1.0, 0.05}, kProposal};
  return {path, {Kind::normal, 1.0, 0.10}, kProposal};
}

/// With the factor on the load.
Judged loaded(Judged judged, double factor) {
  if (std::isnan(judged.utilization)) return judged;
  judged.utilization *= factor;
  judged.verdict = judged.utilization > 1.0 ? Verdict::over
                   : judged.open.empty()    ? Verdict::within
                                            : Verdict::not_decided;
  return judged;
}

struct Drawn {
  std::vector<double> factors;
  double load = 1.0;
};

std::vector<Drawn> drawn(const ScatterOptions& options) {
  std::vector<Drawn> out;
  for (const std::vector<double>& at :
       latin_hypercube(options.n_samples, options.inputs.size(), options.seed)) {
    Drawn& one = out.emplace_back();
    for (std::size_t i = 0; i < options.inputs.size(); ++i) {
      one.factors.push_back(options.inputs[i].factor.quantile(at[i]));
      if (options.inputs[i].path == kLoad) one.load = one.factors.back();
    }
  }
  return out;
}

parts::Design with_factors(const parts::Design& design, const std::vector<ScatterInput>& inputs,
                           const std::vector<double>& factors) {
  parts::Design changed = design;
  changed.variants.clear();
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    if (inputs[i].path == kLoad || inputs[i].factor.kind == Distribution::Kind::fixed) continue;
    const double now = number_of(design, inputs[i].path).si;
    changed = with_number(changed, inputs[i].path, now * factors[i]);
  }
  return changed;
}

/// A design whose numbers do not go together is not decided.
Judged judged_sample(const parts::Design& design, const std::vector<ScatterInput>& inputs,
                     const std::vector<double>& factors, const Watch& watch) {
  try {
    return judged(with_factors(design, inputs, factors), {}, watch);
  } catch (const base::InputError& error) {
    return {.open = error.what(), .no_sense = true};
  }
}

void refuse_useless(const parts::Design& design, const ScatterOptions& options) {
  if (options.n_samples < 2) throw base::InputError("--samples", "at least 2 are needed");
  bool any = false;
  for (const ScatterInput& input : options.inputs) {
    if (input.path != kLoad) (void)number_of(design, input.path);
    any = any || input.factor.kind != Distribution::Kind::fixed;
  }
  if (!any) throw base::InputError("--vary", "nothing scatters: every input is fixed");
}

std::vector<InputRank> ranked_inputs(const Scattered& s) {
  std::vector<double> utilizations;
  std::vector<std::vector<double>> factors(s.inputs.size());
  for (const Sample& sample : s.samples) {
    if (std::isnan(sample.judged.utilization)) continue;
    utilizations.push_back(sample.judged.utilization);
    for (std::size_t i = 0; i < factors.size(); ++i) factors[i].push_back(sample.factors[i]);
  }
  std::vector<InputRank> out;
  for (std::size_t i = 0; i < s.inputs.size(); ++i) {
    if (s.inputs[i].factor.kind == Distribution::Kind::fixed) continue;
    out.push_back({s.inputs[i].path, rank_correlation(factors[i], utilizations)});
  }
  std::stable_sort(out.begin(), out.end(), [](const InputRank& a, const InputRank& b) {
    const auto size = [](const InputRank& r) {
      return std::isnan(r.correlation) ? -1.0 : std::abs(r.correlation);
    };
    return size(a) > size(b);
  });
  return out;
}

}  // namespace

double Distribution::quantile(double p) const {
  switch (kind) {
    case Kind::normal:
      return a * (1.0 + b * normal_quantile(p));
    case Kind::lognormal: {
      const double spread = std::sqrt(std::log1p(b * b));
      return a * std::exp(spread * normal_quantile(p) - 0.5 * spread * spread);
    }
    case Kind::uniform:
      return a + p * (b - a);
    case Kind::fixed:
      break;
  }
  return a;
}

Distribution read_distribution(std::string_view text) {
  using Kind = Distribution::Kind;
  const auto fail = [&]() -> base::InputError {
    return {"", fmt::format("{} is no distribution; would do: {}", cases::quoted(text), kExample)};
  };
  const std::vector<std::string> words = cases::split(cases::squeeze(text), " ");
  if (words.size() == 1 && words[0] == "fixed") return {};
  if (words.size() != 3) throw fail();
  const auto number = [&](const std::string& word) {
    const auto read = cases::number_at_start(word);
    if (!read || read->length != word.size()) throw fail();
    return read->value;
  };
  Distribution out{.kind = words[0] == "normal"      ? Kind::normal
                           : words[0] == "lognormal" ? Kind::lognormal
                                                     : Kind::uniform,
                   .a = number(words[1]),
                   .b = number(words[2])};
  if (out.kind == Kind::uniform && words[0] != "uniform") throw fail();
  const bool makes_sense = out.kind == Kind::uniform
                               ? out.a > 0.0 && out.b > out.a && out.b <= 10.0
                               : out.a > 0.0 && out.a <= 10.0 && out.b > 0.0 && out.b <= 0.5;
  if (!makes_sense) {
    throw base::InputError(
        "", fmt::format("{}: least under most, or a mean over 0 and a coefficient of variation "
                        "over 0 up to 0.5",
                        cases::quoted(text)));
  }
  return out;
}

std::string words_of(const Distribution& d) {
  using Kind = Distribution::Kind;
  if (d.kind == Kind::fixed) return "fixed";
  if (d.kind == Kind::uniform) return fmt::format("uniform {:g} to {:g}", d.a, d.b);
  return fmt::format("{} mean {:g}, coefficient of variation {:g}",
                     d.kind == Kind::normal ? "normal" : "lognormal", d.a, d.b);
}

std::vector<ScatterInput> usual_scatter(const parts::Design& design) {
  std::vector<ScatterInput> all;
  for (const std::string& path : numbers_inside_parts(design)) all.push_back(usual_input(path));
  all.push_back({kLoad, {Distribution::Kind::lognormal, 1.0, 0.15}, kProposal});
  return all;
}

Scattered scatter(const parts::Design& design, const ScatterOptions& options, const Watch& watch,
                  const Spread& spread, Share<Judged>* share) {
  refuse_useless(design, options);
  Scattered out{.title = design.title,
                .inches = design.inches,
                .scope = scope_of(design),
                .seed = options.seed,
                .inputs = options.inputs,
                .samples = {},
                .n_samples = options.n_samples,
                .share_over = {},
                .ranks = {},
                .as_drawn = judged(design, {}, part_of(watch, 0.0, 0.0, "as drawn")),
                .assumed = {}};
  std::vector<Drawn> all = drawn(options);
  std::vector<std::optional<Judged>> results(all.size());
  std::atomic<std::size_t> n_done = 0;
  std::atomic<bool> stopped = false;
  spread_out(spread, all.size(), [&](std::size_t i) {
    if (const Judged* known = share == nullptr ? nullptr : share->find(i)) {
      results[i] = *known;
    } else if (!stopped && (share == nullptr || share->is_mine(i))) {
      const double done = static_cast<double>(n_done) / static_cast<double>(all.size());
      const Watch seen = part_of(watch, done, done, fmt::format("sample {}", i + 1));
      try {
        results[i] =
            loaded(judged_sample(design, options.inputs, all[i].factors, seen), all[i].load);
      } catch (const Stopped&) {
        stopped = true;
      }
    }
    ++n_done;
  });
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!results[i]) continue;
    if (share != nullptr) share->known.emplace(i, *results[i]);
    if (results[i]->verdict == Verdict::over) ++out.n_over;
    if (results[i]->verdict == Verdict::not_decided) ++out.n_undecided;
    out.samples.push_back({std::move(all[i].factors), *std::move(results[i])});
  }
  out.share_over = share_interval(out.n_over + out.n_undecided, out.samples.size());
  out.ranks = ranked_inputs(out);
  return out;
}

}  // namespace studies
