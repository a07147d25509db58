#include "studies/run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "base/input_error.hpp"
#include "checks/bolt_shear.hpp"
#include "checks/caveat.hpp"
#include "checks/column.hpp"
#include "checks/frame_stability.hpp"
#include "fea/condition.hpp"
#include "loads/case_library.hpp"
#include "sections/area_props.hpp"
#include "studies/assumptions.hpp"
#include "studies/balance.hpp"
#include "studies/beyond_travel.hpp"
#include "studies/combined_criterion.hpp"
#include "studies/criterion.hpp"
#include "studies/drawing_of.hpp"
#include "studies/droop.hpp"
#include "studies/failure_order.hpp"
#include "studies/give_way.hpp"
#include "studies/joint_criterion.hpp"
#include "studies/life.hpp"
#include "studies/like_cells.hpp"
#include "studies/origin.hpp"
#include "studies/piece_places.hpp"
#include "studies/seen_buckling.hpp"
#include "studies/set_model.hpp"
#include "studies/solved_case.hpp"
#include "studies/stability.hpp"
#include "studies/trouble.hpp"
#include "studies/unsolved_cell.hpp"
#include "studies/worst_case.hpp"

namespace studies {
namespace {

// Of a critical factor. Nearer to it deflections have grown more than tenfold, small rotations no
// longer hold, and second order says no more than that factor.
constexpr double kWellBefore = 0.9;
// Of the required factor. A frame that carries so much in second order is far from the limit.
constexpr double kFollowed = 4.0;

// Of the lowest critical factor of a load case in another set: where none is lower than that, the
// frame is taken to grow no softer than there.
constexpr double kNearlyAsLow = 0.9;
// The same of one that is solved: what its checks may come to hangs on it.
constexpr double kSolvedAsLow = 0.98;

// Of a capacity: so much is looked at where designs of another size are told by it, of the checks
// that this size changes and of the others.
constexpr double kKnownOfSized = 0.2;
constexpr double kKnownOfOthers = 0.8;

// Effective length over its own; beyond, a mode is one of bending, not of a column.
constexpr double kLongest = 3.0;

/// Which findings are told.
enum class Told {
  all,
  over_and_worst,  ///< all over 1, and of the parts asked for what came over all before it
  worst,           ///< of the parts asked for what came over all before it, of the others over 1
};

class Runner {
 public:
  Runner(const parts::Design& design, std::string name, const Watch& watch, Counted counted,
         Extras extras, Told told = Told::all)
      : design_(design),
        name_(std::move(name)),
        watch_(watch),
        counted_(std::move(counted)),
        extras_(extras),
        told_(told),
        cases_(parts::design_cases(design)) {
    keep_named(cases_, counted_.load_cases);
    if (counted_.known != nullptr) built_ = counted_.known->built();
    if (cases_.empty()) refuse_without_cases();
  }

  Run result() {
    solve_all();
    check_all();
    finish();
    return std::move(out_);
  }

  /// What is known then of the design goes there; may be null.
  void keep_known(KnownDesign* found) { found_ = found; }

  /// Nothing when it was left early, yet the search for the limit finds that the parts just hold.
  std::optional<Run> until_over(double most) {
    leave_over_ = most;
    Run found = result();
    const auto holds = [this](const checks::Finding& f) {
      return !wanted(f.part) || (f.state == checks::State::within && !(is_past(f)));
    };
    const std::vector<checks::Finding>& all = found.answer.findings;
    if (left_early_ && std::all_of(all.begin(), all.end(), holds)) return std::nullopt;
    return found;
  }

 private:
  /// Those of the names given; all where none is given, or none is there.
  template <class Named>
  static void keep_named(std::vector<Named>& all, const std::vector<std::string>& names) {
    const auto kept = std::stable_partition(all.begin(), all.end(), [&](const Named& one) {
      return std::find(names.begin(), names.end(), one.name) != names.end();
    });
    if (kept != all.begin()) all.erase(kept, all.end());
  }

  [[noreturn]] void refuse_without_cases() const {
    if (!design_.vehicle) {
      throw base::InputError("", "there is no load: add `vehicle:`, `forces:` or another load");
    }
    std::string reasons;
    for (const parts::CaseNotRun& c : parts::cases_not_run(design_)) {
      const auto& asked = design_.load_cases;
      const bool is_asked = std::any_of(asked.begin(), asked.end(), [&](const std::string& kind) {
        return loads::case_words(kind) == c.name;
      });
      if (is_asked) reasons += fmt::format("; {}: {}", c.name, c.reason);
    }
    throw base::InputError("load_cases", "none of these can be solved for this design" + reasons);
  }

  void tell(double fraction, const std::string& what) const {
    if (watch_ && watch_({fraction, what}) == Go::stop) throw Stopped{};
  }

  [[nodiscard]] bool wanted(const std::string& part) const { return counted_.has(part); }

  [[nodiscard]] bool has_numbers() const {
    return extras_ != Extras::none && extras_ != Extras::short_answer;
  }

  /// The utilization at which a run that is to be left early is left.
  [[nodiscard]] double most(const std::string& part) const {
    return counted_.is_asked(part) ? *leave_over_ : 1.0;
  }

  [[nodiscard]] bool is_past(const checks::Finding& f) const {
    return wanted(f.part) && f.state != checks::State::undecided && f.utilization() > most(f.part);
  }

  void solve_all() {
    std::vector<parts::StiffnessSet> sets = parts::stiffness_sets(design_);
    keep_named(sets, counted_.sets);
    cells_.reserve(sets.size() * cases_.size());  // they point at each other
    buckled_.reserve(cells_.capacity());
    for (std::size_t s = 0; s < sets.size(); ++s) {
      models_.push_back(std::make_unique<SetModel>(design_, sets[s], &built_));
      out_.answer.sets.push_back(sets[s].name);
      like_.begin_set(*models_.back());
      const std::size_t near = findings_alone() ? 0 : nearest_before(sets, s);
      for (std::size_t c = 0; c < cases_.size(); ++c) {
        tell(0.7 * static_cast<double>(s * cases_.size() + c) /
                 static_cast<double>(sets.size() * cases_.size()),
             fmt::format("load case {} of {}, {}", c + 1, cases_.size(), sets[s].name));
        const Cell* beside = s > 0 ? &cells_[near * cases_.size() + c] : nullptr;
        cells_.emplace_back(*models_.back(), cases_[c], beside);
        buckled_.emplace_back();
        Cell& cell = cells_.back();
        like_.add(cell);
        if (findings_alone() && !is_alone() && stays_unsolved(cell)) continue;
        solve_one(cell, beside);
        if (leave_over_ && fails_in(cell)) {
          left_early_ = true;
          cells_.erase(cells_.begin(), cells_.end() - 1);
          not_buckled_.clear();
          return;
        }
      }
      models_.back()->give_memory_back();
    }
  }

  /// Whether a check that counts is past what it may be or cannot be decided, or stability is past
  /// it so far.
  [[nodiscard]] bool fails_in(const Cell& cell) {
    const auto past = [this](const checks::Finding& f) { return is_past(f); };
    if (std::any_of(stability_.begin(), stability_.end(), past)) return true;
    const std::vector<Criterion> all = criteria(cell.assembly());
    const auto failing = std::find_if(all.begin(), all.end(), [&](const Criterion& criterion) {
      const std::string& part = part_judged(criterion, cell.assembly());
      if (!wanted(part)) return false;
      if (cell.trouble_for(part) != nullptr) return true;
      const AskedFactor asked = asked_in(criterion, cell);
      if (clamp_is_assumed(criterion, cell.assembly()) && if_slipped(criterion, cell) > 1.0) {
        return true;
      }
      const Cell* other = cell.at_ride();
      return is_over_in(criterion, cell, asked, most(part)) ||
             (other != nullptr && is_over_in(criterion, *other, asked, most(part)));
    });
    if (failing != all.end()) failing_ = *failing;
    return failing != all.end();
  }

  /// Whether a check comes to more than `most` in one cell, in the place reached or at ride height.
  static bool is_over_in(const Criterion& criterion, const Cell& cell, const AskedFactor& asked,
                         double most) {
    if (holds_by_far(criterion, {&cell, asked}, most)) return false;
    const double looked_at = asked.looked_at() / most;
    const double value = asked.value / most;
    if (cell.ratio_kept(criterion, looked_at) <= 1.0) return false;
    return !(value < looked_at && cell.ratio_kept(criterion, value) <= 1.0);
  }

  /// Of the sets before one the first of those that differ from it least; the first has none.
  static std::size_t nearest_before(const std::vector<parts::StiffnessSet>& sets, std::size_t s) {
    const auto differs_less = [&](const parts::StiffnessSet& a, const parts::StiffnessSet& b) {
      return parts::n_different(a, sets[s]) < parts::n_different(b, sets[s]);
    };
    const auto end = sets.begin() + static_cast<std::ptrdiff_t>(s);
    return static_cast<std::size_t>(std::min_element(sets.begin(), end, differs_less) -
                                    sets.begin());
  }

  /// Whether nothing is told of a cell but findings: those that cannot be the worst of any check
  /// need not be solved then.
  [[nodiscard]] bool findings_alone() const { return extras_ == Extras::none; }

  /// Where one cell is asked for, it is to be solved.
  [[nodiscard]] bool is_alone() const { return cells_.capacity() == 1; }

  [[nodiscard]] fea::BucklingResult& buckled(const Cell& cell) {
    return buckled_[static_cast<std::size_t>(&cell - cells_.data())];
  }

  /// @param beside  the same load case in the set that is nearest; may be null
  void solve_one(Cell& cell, const Cell* beside) {
    cell.trouble = trouble_by_part(cell.model(), cell.kept(1.0));
    if (told_ != Told::worst) note_condition(cell);
    take_off_not_buckled(cell);
    if (beside != nullptr && buckles_no_lower(cell, *beside)) {
      not_buckled_.push_back(&cell);
    } else {
      buckle(cell, beside);
    }
  }

  void buckle(Cell& cell, const Cell* beside) {
    SeenBuckling buckling = seen_buckling(cell, has_numbers() ? 1 : 0, start_of(beside));
    take_critical(cell, buckling);
    add_stability(cell, buckling);
    if (!findings_alone()) show(cell, buckling);
    buckled(cell) = std::move(buckling.result);
  }

  /// Whether a solved cell is proved to buckle at no lower a factor than another one, or hardly:
  /// how it does is looked for where that comes to matter.
  bool buckles_no_lower(Cell& cell, const Cell& beside) {
    if (told_ == Told::all || leave_over_ || !carried(cell.kept(1.0))) return false;
    const double as_low = kSolvedAsLow * beside.lowest_critical_factor;
    if (!std::isfinite(as_low) || !(as_low > kFarFromCritical)) return false;
    if (!cell.model().none_below(cell.load_case(), cell.kept(1.0), as_low)) return false;
    cell.lowest_critical_factor = as_low;
    return true;
  }

  /// Looks for how a solved cell buckles, where only a bound of it is known.
  void buckle_now(Cell& cell) {
    if (take_off_not_buckled(cell)) buckle(cell, &like_.same_in_first_set(cell));
  }

  /// @return whether it was among them
  bool take_off_not_buckled(const Cell& cell) {
    const auto last = std::remove(not_buckled_.begin(), not_buckled_.end(), &cell);
    const bool was_there = last != not_buckled_.end();
    not_buckled_.erase(last, not_buckled_.end());
    return was_there;
  }

  static void take_critical(Cell& cell, const SeenBuckling& buckling) {
    if (!buckling.modes.empty()) {
      cell.followed_to = asked_of_stability(cell, buckling.modes.front());
      cell.lowest_critical_factor = buckling.modes.front().critical.factor;
    }
    if (buckling.result.status == fea::BucklingStatus::no_compression) {
      cell.lowest_critical_factor = std::numeric_limits<double>::infinity();
    }
  }

  /// The modes of another cell, which are a start for those of one like it; null where there are
  /// none.
  [[nodiscard]] const fea::BucklingResult* start_of(const Cell* beside) const {
    if (beside == nullptr) return nullptr;
    const fea::BucklingResult& there = buckled_[static_cast<std::size_t>(beside - cells_.data())];
    return there.modes.empty() ? nullptr : &there;
  }

  /// Whether a cell need not be solved for itself: what its checks may come to is told beside one
  /// that is (worst_case), and its stability is that of first order and not the worst.
  bool stays_unsolved(Cell& cell) {
    if (told_ != Told::all) {
      const std::optional<double> critical = like_.tell(cell);
      if (critical) {
        cell.lowest_critical_factor = *critical;
        not_buckled_.push_back(&cell);
        return true;
      }
    }
    return goes_on_unsolved(cell);
  }

  /// The same by first order in it.
  bool goes_on_unsolved(Cell& cell) {
    const std::optional<KnownCell> known = like_.known_beside(cell);
    if (!known) return false;
    const double as_low = kNearlyAsLow * known->lowest_critical_factor;
    if (told_ != Told::all && std::isfinite(as_low) &&
        cell.model().none_below(cell.load_case(), cell.first_order(), as_low)) {
      cell.lowest_critical_factor = as_low;
      not_buckled_.push_back(&cell);
      return goes_on_as(*known, cell);
    }
    return buckles_no_worse(cell) && goes_on_as(*known, cell);
  }

  /// Whether what is told of its stability by first order is not the worst of a part.
  bool buckles_no_worse(Cell& cell) {
    std::optional<SeenBuckling> buckling =
        buckling_by_first_order(cell, start_of(&like_.same_in_first_set(cell)));
    if (!buckling || buckling->result.status == fea::BucklingStatus::failed) return false;
    take_critical(cell, *buckling);
    for (const Lowest& lowest : lowest_of(cell, *buckling)) {
      const std::optional<checks::Finding> found = stability_finding(lowest);
      if (found && would_keep(*found)) return false;
    }
    buckled(cell) = std::move(buckling->result);
    return true;
  }

  /// Once it is known what the checks come to: the cells of which it is only known that they do not
  /// buckle below some multiple, solved or not, where that may come to more.
  void buckle_the_rest() {
    for (Cell* cell : std::vector<Cell*>(not_buckled_)) {
      const double required =
          most_asked_of(cell->assembly(), design_.factors, cell->load_case().abuse);
      if (required <= worst_that_matters() * cell->lowest_critical_factor) continue;
      if (!cell->is_solved()) {
        if (buckles_no_worse(*cell)) continue;
        solve_one(*cell, &like_.same_in_first_set(*cell));
      }
      buckle_now(*cell);
    }
  }

  /// What is told of a cell beside its findings.
  void show(const Cell& cell, const SeenBuckling& buckling) {
    const SetModel& model = cell.model();
    const parts::DesignCase& load_case = cell.load_case();
    const CaseSolution& solved = cell.kept(1.0);
    SolvedCase shown = solved_case(model, solved);
    if (has_numbers()) add_numbers(shown, model, load_case, solved);
    shown.load_case = load_case.name;
    shown.set = model.set().name;
    shown.posture = loads::posture_word(load_case.posture);
    shown.place = axle_place(model, load_case, solved);
    if (!cell.trouble.empty()) shown.trouble = cell.trouble.begin()->second;
    if (solved.solution.status() == fea::SolveStatus::unstable) {
      shown.trouble = "the load is at or above a critical one: the frame cannot carry it";
    }
    for (const ModeOf& mode : buckling.modes) {
      CriticalFactor critical = mode.critical;
      critical.load_case = shown.load_case;
      critical.set = shown.set;
      shown.critical.push_back(critical);
      out_.answer.critical.push_back(critical);
    }
    for (const fea::BucklingMode& mode : buckling.result.reversed) {
      shown.reversed.push_back(mode.factor);
    }
    shown.cannot_buckle = buckling.result.status == fea::BucklingStatus::no_compression;
    for (CriticalFactor own : own_factors(model.assembly(), solved.solution)) {
      own.load_case = shown.load_case;
      own.set = shown.set;
      out_.answer.own.push_back(own);
    }
    if (has_numbers()) measure(cell);
    if (has_numbers() && models_.size() == 1) {
      out_.answer.balances.push_back(balance_of(model, load_case, solved));
    }
    out_.answer.solved.push_back(std::move(shown));
  }

  static double asked_of_stability(const Cell& cell, const ModeOf& mode) {
    return asked_of(mode, cell.assembly(), cell.model().design().factors, cell.load_case().abuse);
  }

  /// Said once, with the first set in which it is so.
  void note_condition(const Cell& cell) {
    if (!ill_conditioned_.empty()) return;
    const fea::Condition& known = cell.model().condition(cell.kept(1.0).closed_stops);
    if (!(known.number > fea::kIllConditioned)) return;
    ill_conditioned_ = fmt::format("ill-conditioned: up to {:.0f} of 16 digits are lost ({})",
                                   std::log10(known.number), known.cause);
  }

  /// The two ways a frame loses its stiffness are asked different factors: each gets its lowest.
  void add_stability(const Cell& cell, const SeenBuckling& buckling) {
    const std::vector<ModeOf>& modes = buckling.modes;
    const bool failed = buckling.result.status == fea::BucklingStatus::failed;
    const bool abuse = cell.load_case().abuse;
    const bool gives_way = cell.kept(1.0).solution.status() == fea::SolveStatus::unstable;
    const bool said = !modes.empty() && modes.front().critical.factor <= 1.0;
    if (failed || (gives_way && !said)) {
      keep_stability(
          cell,
          checks::frame_stability(
              {.outcome = checks::StabilityOutcome::failed,
               .critical_factor = base::kUnset,
               .part_that_goes = {},
               .share = base::kUnset,
               .problem = gives_way ? "the frame gives way under the load itself, in the "
                                      "deformed position"
                                    : "the critical factors could not be proved complete",
               .required = checks::required(design_.factors, checks::Item::buckling, abuse)}));
      if (failed) return;
    }
    const std::vector<Lowest> all = lowest_of(cell, buckling);
    for (const Lowest& lowest : all) keep_stability(cell, stability_finding(lowest));
    if (!all.empty() && wanted(all.front().part)) lowest_.push_back(all.front());
  }

  /// The lowest critical factor of a cell, and the part that goes.
  struct Lowest {
    checks::FrameStabilityInput input;
    std::string part;
    std::string what;
    std::map<std::string, double> shares;  ///< of the mode's strain energy, by part
    double passed;                         ///< highest critical factor that is none; may be unset
    const SetModel* model;
    const parts::DesignCase* load_case;
    [[nodiscard]] double utilization() const { return input.required / input.critical_factor; }
  };

  /// Of tipping and of all else, in the order of their factors.
  static std::vector<Lowest> lowest_of(const Cell& cell, const SeenBuckling& buckling) {
    std::vector<Lowest> out;
    for (const ModeOf* mode : first_of_each_way(buckling.modes)) {
      out.push_back({{.outcome = checks::StabilityOutcome::found,
                      .critical_factor = mode->critical.factor,
                      .second_order_factor = base::kUnset,
                      .part_that_goes = mode->energy_in,
                      .share = mode->share,
                      .problem = {},
                      .required = asked_of_stability(cell, *mode)},
                     mode->part,
                     mode->critical.what,
                     mode->shares,
                     buckling.passed,
                     &cell.model(),
                     &cell.load_case()});
    }
    return out;
  }

  static std::optional<checks::Finding> stability_finding(const Lowest& lowest) {
    std::optional<checks::Finding> found = checks::frame_stability(lowest.input);
    if (found) {
      found->part = lowest.part;
      if (lowest.what != lowest.part) found->where = lowest.what;
      if (!std::isnan(lowest.passed)) {
        found->notes.push_back(
            fmt::format("linear theory has critical factors up to {:.3g} that are none: a bar that "
                        "spins about the line between its joints; the frame was solved beyond "
                        "them, in the deformed position, and stands there",
                        lowest.passed));
      }
    }
    return found;
  }

  /// Second order may lose the frame before its lowest critical factor: looked for in the cells in
  /// which that would come nearer to the limit than what was found so far, up to kFollowed. Where
  /// the set with the lowest factor of a load case is far from it, the other sets are taken to be
  /// too.
  void follow_stability() {
    constexpr double kSpare = 1.25;
    std::map<std::pair<std::string, const parts::DesignCase*>, bool> alike;
    std::stable_sort(lowest_.begin(), lowest_.end(), [](const Lowest& a, const Lowest& b) {
      return a.utilization() > b.utilization();
    });
    for (std::size_t i = 0; i < lowest_.size(); ++i) {
      tell(0.9 + 0.1 * static_cast<double>(i) / static_cast<double>(lowest_.size()), "stability");
      Lowest& lowest = lowest_[i];
      const auto cell = cell_in(*lowest.model, *lowest.load_case);
      const auto worst =
          std::find_if(stability_.begin(), stability_.end(),
                       [&](const checks::Finding& f) { return f.part == lowest.part; });
      if (cell == cells_.end() || worst == stability_.end()) continue;
      if (worst->state == checks::State::undecided) continue;
      const auto [known, first] = alike.try_emplace({lowest.part, lowest.load_case}, false);
      if (known->second) continue;
      const double highest =
          std::min(kWellBefore * lowest.input.critical_factor, kFollowed * lowest.input.required);
      const double known_worst = std::max(worst->utilization(), floor_of(lowest.part));
      const double as_bad = lowest.input.required / known_worst;
      if (first && carries(*cell, std::min(highest, kSpare * as_bad))) {
        known->second = true;
        continue;
      }
      const std::optional<GivesWay> found = gives_way(*cell, std::min(highest, as_bad));
      if (!found) continue;
      lowest.input.second_order_factor = found->carried;
      keep_stability(*cell, stability_finding(lowest));
    }
  }

  /// Of each part that can go, the case and set that come nearest to the limit.
  void keep_stability(const Cell& cell, std::optional<checks::Finding> finding) {
    if (!finding) return;
    place(*finding, cell);
    finding->origin = {.method = "buckling of the frame under the forces of this load case",
                       .multiple = 1.0};
    if (finding->part.empty()) finding->part = "assembly";
    if (!would_keep(*finding)) return;
    const auto same = stability_of(finding->part);
    if (same == stability_.end()) {
      stability_.push_back(std::move(*finding));
    } else {
      *same = std::move(*finding);
    }
  }

  std::vector<checks::Finding>::iterator stability_of(const std::string& part) {
    return std::find_if(stability_.begin(), stability_.end(),
                        [&](const checks::Finding& other) { return other.part == part; });
  }

  bool would_keep(const checks::Finding& finding) {
    if (!wanted(finding.part) && finding.part != "assembly") return false;
    const auto same = stability_of(finding.part);
    return same == stability_.end() || finding.state == checks::State::undecided ||
           finding.utilization() > same->utilization();
  }

  void place(checks::Finding& finding, const Cell& cell) const {
    finding.load_case = cell.load_case().name;
    finding.set = cell.model().set().name;
  }

  /// The figures that `compare` shows.
  void measure(const Cell& cell) {
    const parts::Assembly& assembly = cell.assembly();
    const fea::Solution& solution = cell.kept(1.0).solution;
    if (solution.status() != fea::SolveStatus::converged) return;
    if (assembly.root) {
      PerSet& per_set = per_set_[cell.model().set().name];
      per_set.deflection =
          std::max(per_set.deflection, std::abs(solution.placement(*assembly.bracket_bolt)[1]));
      per_set.moment = std::max({per_set.moment, std::abs(parts::root_load(assembly, solution)[3]),
                                 std::abs(parts::root_load(assembly, cell.kept(1.0).linear())[3])});
      add_root_moment(cell.model().set().rail, per_set.moment);
    }
    for (const parts::Piece& piece : assembly.pieces) {
      const double stress = worst_stress(piece, solution).von_mises;
      if (!(stress <= out_.figures.worst_stress)) {
        out_.figures.worst_stress = stress;
        out_.figures.worst_stress_part = piece.part;
      }
    }
  }

  void add_root_moment(parts::Bound bound, double moment) {
    const std::string rail = bound == parts::Bound::low    ? "soft rail"
                             : bound == parts::Bound::high ? "stiff rail"
                                                           : "rail";
    std::vector<RootMoment>& all = out_.figures.root_moments;
    const auto same = std::find_if(all.begin(), all.end(),
                                   [&](const RootMoment& known) { return known.rail == rail; });
    if (same == all.end())
      all.push_back({rail, moment});
    else
      same->moment = std::max(same->moment, moment);
  }

  void check_all() {
    if (is_left_for_sure()) return;
    std::vector<Criterion> all = criteria(models_.front()->assembly());
    if (told_ != Told::all) put_worst_first(all);
    for (std::size_t i = 0; i < all.size(); ++i) {
      tell(0.7 + 0.2 * static_cast<double>(i) / static_cast<double>(all.size()), "checks");
      check_one(all[i]);
      // Another check mostly solves in other frames.
      for (const auto& model : models_) model->give_memory_back();
    }
    if (wanted("limit_strap")) {
      for (checks::Finding& f : strap_findings(design_)) {
        out_.answer.findings.push_back(std::move(f));
      }
    }
    if (found_ != nullptr) tell_known(all);
    buckle_the_rest();
    follow_stability();
    if (extras_ != Extras::none && extras_ != Extras::figures) {
      order_failures();
      out_.answer.life = life_of(design_, cells_);
    }
    std::vector<checks::Finding> told;
    std::copy_if(stability_.begin(), stability_.end(), std::back_inserter(told),
                 [this](const checks::Finding& f) { return is_worst_known(f); });
    std::move(told.begin(), told.end(), std::back_inserter(out_.answer.findings));
    if (extras_ == Extras::order_life_and_drawing) {
      out_.answer.drawing = drawing_of(cells_, out_.answer.solved, out_.answer.findings);
    }
  }

  /// Whether the search for the limit finds past what it may be what the run was left early for:
  /// nothing else need be looked at then.
  bool is_left_for_sure() {
    if (!left_early_) return false;
    if (failing_) check_one(*failing_);
    const auto past = [this](const checks::Finding& f) { return is_past(f); };
    std::vector<checks::Finding>& found = out_.answer.findings;
    if (std::any_of(found.begin(), found.end(), past)) return true;
    found.clear();
    return false;
  }

  void tell_known(const std::vector<Criterion>& all) {
    const parts::Assembly& assembly = models_.front()->assembly();
    std::vector<Criterion> counted;
    std::copy_if(all.begin(), all.end(), std::back_inserter(counted),
                 [&](const Criterion& one) { return wanted(part_judged(one, assembly)); });
    const auto at_most = [&](const Criterion& one, const Cell& cell,
                             bool ride) -> std::optional<double> {
      const double* most = at_most_[&cell][ride ? 1 : 0].find(one);
      return most == nullptr || std::isnan(*most) ? std::nullopt : std::optional(*most);
    };
    for (const Cell& cell : cells_) {
      const Cell& first = like_.same_in_first_set(cell);
      found_->add(cell, counted, at_most, first.is_solved() && first.at_ride() != nullptr);
    }
  }

  /// Whether no cell that was not buckled may come to more: those that matter all were.
  [[nodiscard]] bool is_worst_known(const checks::Finding& f) const {
    return not_buckled_.empty() || f.state != checks::State::within ||
           f.utilization() >= floor_of(f.part);
  }

  /// Of each load case: in the stiffness set in which it tells most.
  void order_failures() {
    std::map<const SetModel*, parts::Assembly> strong;
    for (const auto& model : models_) {
      strong.emplace(model.get(), with_overstrength(model->assembly()));
    }
    const auto order_of = [&](std::size_t i, double second) {
      return failure_order(cells_[i], strong.at(&cells_[i].model()), out_.answer.solved[i].critical,
                           second);
    };
    for (const parts::DesignCase& load_case : cases_) {
      std::optional<FailureOrder> telling;
      std::size_t in = 0;
      for (std::size_t i = 0; i < cells_.size(); ++i) {
        if (&cells_[i].load_case() != &load_case || !carried(cells_[i].kept(1.0))) continue;
        FailureOrder order = order_of(i, 1.0);
        if (telling && !tells_less(*telling, order)) continue;
        telling = std::move(order);
        in = i;
      }
      if (!telling) continue;
      out_.answer.failure_orders.push_back(order_of(in, second_multiple(*telling)));
    }
  }

  void check_one(const Criterion& criterion) {
    const std::string& part = part_judged(criterion, models_.front()->assembly());
    if (!wanted(part)) return;
    // Of a size that does not hold itself, what it does to others does not matter.
    if (told_ == Told::worst && !counted_.is_asked(part) && worst_asked() > 1.0) return;
    std::vector<Asked> asked;
    bool left_undecided = false;
    for (Cell& solved : cells_) {
      if (!solved.is_solved()) {
        for (const bool at_ride : {false, true}) {
          const auto unsolved = like_.asked(criterion, solved, at_ride);
          if (unsolved) asked.push_back(*unsolved);
          if (found_ == nullptr) continue;
          at_most_[&solved][at_ride ? 1 : 0].put(criterion,
                                                 unsolved ? *unsolved->at_most : base::kUnset);
        }
        continue;
      }
      if (const std::string* reason = solved.trouble_for(part)) {
        if (!left_undecided) undecided(criterion, solved, *reason);
        left_undecided = true;
        continue;
      }
      follow_joint(criterion, part, solved);
      for (const bool at_ride : {false, true}) {
        const Cell* cell = solved.in_place(at_ride);
        if (cell == nullptr || says_nothing(criterion, *cell)) continue;
        const AskedFactor factor = asked_in(criterion, *cell);
        if (std::isnan(cell->ratio_kept(criterion, 1.0))) {
          report(criterion, *cell, {&cell->kept(1.0).solution, nullptr, base::kUnset, factor});
          return;
        }
        asked.push_back({.cell = cell, .factor = factor, .at_ride = at_ride});
      }
    }
    const auto solve = [&](const Asked& unsolved) -> std::optional<Asked> {
      Cell& cell = cells_[static_cast<std::size_t>(unsolved.cell - cells_.data())];
      if (like_.is_told(cell)) {
        like_.look_closer(cell);
        if (goes_on_unsolved(cell)) return like_.asked(criterion, cell, unsolved.at_ride);
      } else {
        const auto closer = like_.asked_beside_all(criterion, cell, unsolved.at_ride);
        if (closer && *closer->at_most < *unsolved.at_most) return closer;
      }
      const bool ride_is_asked = like_.asked(criterion, cell, true).has_value();
      if (!cell.is_solved()) solve_one(cell, &like_.same_in_first_set(cell));
      follow_joint(criterion, part, cell);
      if (const std::string* reason = cell.trouble_for(part)) {
        if (!left_undecided) undecided(criterion, cell, *reason);
        left_undecided = true;
        return std::nullopt;
      }
      const Cell* asking = cell.in_place(unsolved.at_ride);
      // Where only this set goes far from ride height, that is not asked by itself.
      if (!ride_is_asked) asking = &cell.asking_most(criterion);
      if (asking == nullptr || says_nothing(criterion, *asking)) return std::nullopt;
      return Asked{
          .cell = asking, .factor = asked_in(criterion, *asking), .at_ride = asking != &cell};
    };
    double floor = floor_of(part);
    if (floor > 0.0 && hangs_on_an_assumed_clamp(criterion)) floor = 0.0;
    if (counted_.is_asked(part)) floor = std::min(floor, decided_by_length_below(criterion));
    std::vector<LookedAt> looked_at;
    const bool is_sized =
        counted_.is_asked(part) && rests_on_piece(criterion, models_.front()->assembly());
    const Keep keep{.in = found_ != nullptr ? &looked_at : nullptr,
                    .from = is_sized ? kKnownOfSized : kKnownOfOthers};
    const auto worst = worst_case(criterion, asked, floor, solve, like_.looked_at(criterion), keep);
    if (found_ != nullptr) {
      found_->add(criterion, part, looked_at);
      look_closer_for_known(criterion, asked);
    }
    if (!worst) return;
    // At ride height it is another one.
    buckle_now(*cell_in(worst->asked.cell->model(), worst->asked.cell->load_case()));
    report_worst(criterion, *worst);
  }

  [[nodiscard]] std::vector<Cell>::iterator cell_in(const SetModel& model,
                                                    const parts::DesignCase& load_case) {
    return std::find_if(cells_.begin(), cells_.end(), [&](const Cell& one) {
      return &one.model() == &model && &one.load_case() == &load_case;
    });
  }

  /// Finds how far the load on a joint is followed in a solved cell, where that may come to matter.
  void follow_joint(const Criterion& criterion, const std::string& part, Cell& cell) {
    constexpr double kMatters = 0.5;
    if (criterion.kind != Criterion::Kind::joint || not_buckled_.empty()) return;
    const bool holds = holds_by_far(criterion, {&cell, asked_in(criterion, cell)}, kMatters);
    if (counted_.is_asked(part) || !holds) buckle_now(cell);
  }

  /// What the cells that stay unsolved may come to, by all sets that are solved by now: the less
  /// that is, the more it tells of another size. Of those far within it tells enough.
  void look_closer_for_known(const Criterion& criterion, const std::vector<Asked>& asked) {
    constexpr double kNotFarWithin = 0.3;
    for (const Asked& a : asked) {
      if (a.is_solved() || a.cell->is_solved()) continue;
      if (*a.at_most * a.factor.value < kNotFarWithin) continue;
      const auto closer = like_.asked_beside_all(criterion, *a.cell, a.at_ride);
      if (closer) at_most_[a.cell][a.at_ride ? 1 : 0].put(criterion, *closer->at_most);
    }
  }

  /// Whether a bolt's check is not decided, however far within it may be: the load slips its stack,
  /// which is only assumed to be clamped, and bending would be over.
  [[nodiscard]] bool hangs_on_an_assumed_clamp(const Criterion& criterion) const {
    return clamp_is_assumed(criterion, models_.front()->assembly()) &&
           most_if_slipped(criterion).utilization > 1.0;
  }

  /// The utilization up to which a column's check, or that of combined forces, holds whatever its
  /// length in the frame's own mode: see judge_by_length. Infinite where that has no say in it.
  [[nodiscard]] double decided_by_length_below(const Criterion& criterion) const {
    constexpr double kInfinite = std::numeric_limits<double>::infinity();
    const bool presses =
        criterion.kind == Criterion::Kind::column || criterion.kind == Criterion::Kind::combined;
    if (!presses) return kInfinite;
    const parts::Assembly& assembly = models_.front()->assembly();
    const std::optional<double> weaker =
        weaker_at(assembly.model, assembly.pieces[criterion.index], 1.0, kLongest);
    return weaker.value_or(kInfinite);
  }

  /// The utilization from which on a check of a part matters to the worst.
  [[nodiscard]] double floor_of(const std::string& part) const {
    if (told_ == Told::all) return 0.0;
    if (!counted_.is_asked(part)) return 1.0;
    return worst_that_matters();
  }

  /// Of the parts asked for, a check with less need not be told.
  [[nodiscard]] double worst_that_matters() const {
    const double worst = worst_asked();
    if (!std::isfinite(worst)) return 0.0;
    return told_ == Told::over_and_worst ? std::min(worst, 1.0) : worst;
  }

  /// The largest utilization of the parts asked for, so far.
  [[nodiscard]] double worst_asked() const {
    double worst = 0.0;
    for (const auto* all : {&out_.answer.findings, &stability_}) {
      for (const checks::Finding& f : *all) {
        const bool counts = f.state != checks::State::undecided && counted_.is_asked(f.part);
        if (counts) worst = std::max(worst, f.utilization());
      }
    }
    return worst;
  }

  /// The parts asked for before the others, by the demand at the load itself.
  void put_worst_first(std::vector<Criterion>& all) const {
    std::vector<std::pair<double, Criterion>> ranked;
    for (const Criterion& criterion : all) {
      double most = 0.0;
      for (const Cell& cell : cells_) {
        if (!cell.is_solved()) {
          if (&cell != &like_.same_in_first_set(cell)) continue;
          const auto unsolved = like_.asked(criterion, cell, false);
          if (unsolved) most = std::max(most, *unsolved->at_most * unsolved->factor.value);
          continue;
        }
        if (!carried(cell.kept(1.0))) continue;
        const double demand = cell.asking_most(criterion).ratio_kept(criterion, 1.0) *
                              asked_in(criterion, cell).value;
        if (demand > most) most = demand;
      }
      ranked.emplace_back(most, criterion);
    }
    const parts::Assembly& assembly = models_.front()->assembly();
    const auto is_asked = [&](const Criterion& criterion) {
      return counted_.is_asked(part_judged(criterion, assembly));
    };
    std::stable_sort(ranked.begin(), ranked.end(), [&](const auto& a, const auto& b) {
      const bool a_asked = is_asked(a.second);
      return a_asked == is_asked(b.second) ? a.first > b.first : a_asked;
    });
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = ranked[i].second;
  }

  void report_worst(const Criterion& criterion, const WorstCase& worst) {
    const Cell& cell = *worst.asked.cell;
    const LoadLimit& limit = worst.limit;
    const fea::Solution& at_load = cell.judged_by(criterion, cell.kept(1.0));
    const bool carries = at_load.status() == fea::SolveStatus::converged;
    std::optional<CaseSolution> reached;
    if ((limit.ends == LoadLimit::Ends::at_limit && !cell.in_proportion()) || !carries) {
      reached = cell.at(limit.reached);
      if (!carried(*reached)) reached.reset();
    }
    if (!carries && !reached) {
      undecided(criterion, cell, "the frame gives way under far less than the load");
      return;
    }
    const fea::Solution* at_limit = reached ? &cell.judged_by(criterion, *reached) : nullptr;
    const std::size_t before = out_.answer.findings.size();
    report(criterion, cell,
           {carries ? &at_load : at_limit, at_limit, limit.factor, worst.asked.factor});
    if (out_.answer.findings.size() == before) return;
    out_.answer.findings.back().origin =
        carries ? origin_of(cell.assembly(), part_judged(criterion, cell.assembly()),
                            cell.kept(1.0), at_load, 1.0)
                : origin_of(cell.assembly(), part_judged(criterion, cell.assembly()), *reached,
                            *at_limit, limit.reached);
    if (carries) {
      compare_orders(criterion, cell, out_.answer.findings.back());
      compare_places(criterion, cell, out_.answer.findings.back());
    }
    if (criterion.kind == Criterion::Kind::column) {
      add_length_of_mode(cell, cell.assembly().pieces[criterion.index],
                         out_.answer.findings.back());
    }
    if (criterion.kind == Criterion::Kind::combined && carries) {
      add_length_to_combined(cell, cell.assembly().pieces[criterion.index], at_load,
                             worst.asked.factor, out_.answer.findings.back());
    }
    std::vector<std::string>& notes = out_.answer.findings.back().notes;
    if (criterion.kind == Criterion::Kind::joint && limit.factor > cell.followed_to) {
      notes.push_back(
          fmt::format("its load is followed up to {:.3g} times the load, the factor asked of the "
                      "frame's stability here, beyond it in proportion: the factor of a rating "
                      "stands for what the rating does not know (proposal)",
                      cell.followed_to));
      return;
    }
    if (limit.ends == LoadLimit::Ends::far_within) {
      notes.emplace_back(
          "far within: followed to the required multiple of the load, beyond it in proportion; "
          "another stiffness set may come to a twentieth more");
    } else if (limit.ends == LoadLimit::Ends::gives_way) {
      notes.push_back(fmt::format(
          "the frame gives way at {:.3g} times the load (see frame stability); from "
          "2 % below that on the demand is taken in proportion to the load{}",
          limit.edge,
          carries ? "" : fmt::format("; the numbers below are at {:.3g} times", limit.reached)));
    }
  }

  /// A member in the lowest mode of a cell.
  struct InMode {
    double share;            ///< of the mode's strain energy
    double critical_factor;  ///< of the mode
    double k;                ///< effective length, pi sqrt(E I / (critical factor x compression)),
                             ///< over its own
  };
  /// Nothing where it has no part in that.
  [[nodiscard]] std::optional<InMode> in_mode(const Cell& cell, const parts::Piece& piece,
                                              double pressing) const {
    const auto mode = std::find_if(lowest_.begin(), lowest_.end(), [&](const Lowest& l) {
      return l.model == &cell.model() && l.load_case == &cell.load_case();
    });
    if (mode == lowest_.end() || !(pressing > 0.0)) return std::nullopt;
    const auto share = mode->shares.find(piece.part);
    if (share == mode->shares.end()) return std::nullopt;
    const sections::AreaProps props = sections::area_props(weaker_end(piece));
    const double bending = piece.material.elastic * std::min(props.iyy, props.izz);
    const double length = base::kPi * std::sqrt(bending / (mode->input.critical_factor * pressing));
    return InMode{share->second, mode->input.critical_factor, length / piece.length};
  }

  /// The effective length by the frame's own buckling mode, where that mode is the member's: where
  /// it holds most of the strain energy.
  void add_length_of_mode(const Cell& cell, const parts::Piece& piece,
                          checks::Finding& finding) const {
    constexpr double kMost = 0.5;
    const std::optional<InMode> mode = in_mode(cell, piece, finding.demand);
    if (!mode) return;
    if (mode->share > kMost) {
      finding.notes.push_back(fmt::format(
          "beside it, by the frame's own buckling mode ({:.0f} % of its strain energy is here, at "
          "{:.3g} times the load): an effective length of {:.2f} times its length; frame stability "
          "judges it",
          100.0 * mode->share, mode->critical_factor, mode->k));
    }
    const std::optional<double> weaker = weaker_by(cell, piece, finding.demand, *mode);
    if (weaker) judge_by_length(piece, mode->k, finding.utilization() / *weaker, finding);
  }

  /// Its compression is that of a longer column in combined forces too.
  void add_length_to_combined(const Cell& cell, const parts::Piece& piece,
                              const fea::Solution& at_load, const AskedFactor& asked,
                              checks::Finding& finding) const {
    const double pressing = compression(piece, at_load);
    const std::optional<InMode> mode = in_mode(cell, piece, pressing);
    if (!mode) return;
    const std::optional<double> weaker = weaker_by(cell, piece, pressing, *mode);
    if (!weaker) return;
    const double alone = pressing / checks::column_capacity(column_input(piece, pressing));
    const double rest = std::max(0.0, combined_used(piece, at_load) - alone);
    judge_by_length(piece, mode->k, asked.of_compression * alone / *weaker + asked.of_rest * rest,
                    finding);
  }

  /// What is left of a column's strength by its effective length in a mode, where it is not held
  /// between joints and has a part in the mode; else nothing.
  static std::optional<double> weaker_by(const Cell& cell, const parts::Piece& piece,
                                         double pressing, const InMode& mode) {
    constexpr double kTakesPart = 0.1;
    constexpr double kLonger = 1.05;
    if (mode.share < kTakesPart || mode.k < kLonger || mode.k > kLongest) return std::nullopt;
    return weaker_at(cell.assembly().model, piece, pressing, mode.k);
  }

  /// The same with an effective length.
  /// @param k  of its own length
  static std::optional<double> weaker_at(const fea::Model& model, const parts::Piece& piece,
                                         double pressing, double k) {
    const bool between_joints = model[piece.beams.front().beam].a.joint.has_value() &&
                                model[piece.beams.back().beam].b.joint.has_value();
    if (between_joints) return std::nullopt;
    checks::ColumnInput input = column_input(piece, pressing);
    const double alone = checks::column_capacity(input);
    input.k = k;
    if (input.welds) input.welds->farthest = base::kUnset;
    const double so_long = checks::column_capacity(input);
    if (std::isnan(so_long) || !(so_long < alone)) return std::nullopt;
    return so_long / alone;
  }

  /// A member that is held at an end and moves aside at the other buckles over more than its
  /// length, and bends most where it is held and welded.
  /// @param longer  utilization by that length
  static void judge_by_length(const parts::Piece& piece, double k, double longer,
                              checks::Finding& finding) {
    constexpr double kMatters = 0.8;
    if (finding.state == checks::State::undecided || !(longer > finding.utilization())) return;
    const std::string counted = fmt::format(
        "an end of it moves aside as it buckles: with the effective length of {:.2f} times its "
        "length{} about {:.0f} %, not {:.0f} %",
        k, !piece.weld_zones.empty() ? " and its weld zone's strength" : "", 100.0 * longer,
        100.0 * finding.utilization());
    if (longer > 1.0 && finding.state == checks::State::within) {
      checks::leave_undecided(finding, counted);
    } else {
      finding.notes.push_back((longer > kMatters ? checks::kCaveat : "") + counted);
    }
  }

  /// First order beside second order, at the load itself.
  static void compare_orders(const Criterion& criterion, const Cell& cell,
                             checks::Finding& finding) {
    constexpr double kMatters = 0.1;
    const CaseSolution& solved = cell.kept(1.0);
    const double first = demand_over_capacity(criterion, cell.assembly(), solved.linear());
    const double second = demand_over_capacity(criterion, cell.assembly(), solved.solution);
    if (!std::isfinite(first) || !std::isfinite(second) || !(second > 0.0)) return;
    finding.first_order =
        finding.demand * first /
        demand_over_capacity(criterion, cell.assembly(), cell.judged_by(criterion, solved));
    if (std::abs(second - first) <= kMatters * second) return;
    const bool used = &cell.judged_by(criterion, solved) == &solved.solution;
    const bool moved = cell.second_order() != nullptr;
    finding.notes.push_back(fmt::format("{} makes the demand {} than first order does; {} is used",
                                        moved
                                            ? "equilibrium in the place reached"
                                            : "second order (equilibrium in the deformed position)",
                                        by_how_much(second, first),
                                        !used   ? "first order, which asks more of a bracket,"
                                        : moved ? "the former"
                                                : "second order"));
  }

  /// Second order at ride height beside the place reached, at the load itself.
  static void compare_places(const Criterion& criterion, const Cell& cell,
                             checks::Finding& finding) {
    constexpr double kMatters = 0.1;
    const double reached = cell.ratio_reached(criterion);
    if (!std::isnan(reached)) {
      const double most = cell.ratio_kept(criterion, 1.0);
      finding.notes.push_back(fmt::format(
          "{}: it asks {} than the place reached, where a link or arm turns more than 3 degrees, "
          "or a "
          "bracket more than 10",
          kAtRideHeight, most > (1.0 + kMatters) * reached ? by_how_much(most, reached) : "more"));
      return;
    }
    if (cell.second_order() == nullptr) return;
    finding.notes.emplace_back(
        cell.in_proportion()
            ? "solved with large displacements, in its posture, at the load itself; the travel is "
              "no load: multiples of the demand there are taken in proportion"
            : "solved with large displacements, in the place reached: at ride height a link or arm "
              "turns more than 3 degrees, or a bracket more than 10");
    if (!carried(*cell.second_order())) return;
    const double there = demand_over_capacity(criterion, cell.assembly(), cell.kept(1.0).solution);
    const double at_ride =
        demand_over_capacity(criterion, cell.assembly(), cell.second_order()->solution);
    if (!std::isfinite(there) || !std::isfinite(at_ride) || !(there > 0.0)) return;
    if (std::abs(at_ride - there) <= kMatters * there) return;
    finding.notes.push_back(
        fmt::format("second order at ride height asks {}", by_how_much(at_ride, there)));
  }

  /// "12 % more"; "far more" where the other is next to nothing.
  static std::string by_how_much(double one, double other) {
    constexpr double kFar = 10.0;
    if (one > kFar * other) return "far more";
    return fmt::format("{:.0f} % {}", 100.0 * std::abs(one / other - 1.0),
                       one > other ? "more" : "less");
  }

  void report(const Criterion& criterion, const Cell& cell, Outcome outcome) {
    const Slipped slipped = most_if_slipped(criterion);
    outcome.if_slipped = slipped.utilization;
    if (slipped.in != nullptr) {
      outcome.slipped_in = slipped.in->load_case().name + "; " + slipped.in->model().set().name;
    }
    std::optional<checks::Finding> found = finding(criterion, cell.assembly(), outcome);
    if (!found) return;
    place(*found, cell);
    out_.answer.findings.push_back(std::move(*found));
  }

  /// Whether a bolt is not loose only because nobody says that it is.
  static bool clamp_is_assumed(const Criterion& criterion, const parts::Assembly& assembly) {
    if (criterion.kind != Criterion::Kind::bolt) return false;
    const parts::BoltedJoint& bolt = assembly.bolts[criterion.index];
    return bolt.bolt.clamp_assumed && !(bolt.stack && bolt.stack->loose);
  }

  /// The utilization of a bolt with its bending counted, where the load of a cell slips its clamped
  /// stack; else unset.
  static double if_slipped(const Criterion& criterion, const Cell& cell) {
    const CaseSolution& solved = cell.is_solved() ? cell.kept(1.0) : cell.first_order();
    if (!carried(solved)) return base::kUnset;
    const AskedFactor asked =
        cell.is_solved() ? asked_in(criterion, cell) : asked_by_first_order(criterion, cell);
    checks::BoltInput input = bolt_input(cell.assembly().bolts, criterion.index, solved.solution);
    input.required = asked.value;
    return asked.value * checks::demand_if_slipped(input).value_or(base::kUnset);
  }

  struct Slipped {
    double utilization = base::kUnset;
    const Cell* in = nullptr;
  };

  /// The largest of all cells: not that of the cell in which it is sheared most, as a rule. One
  /// that is told by the first set differs little from that, and is looked at where that is near.
  [[nodiscard]] Slipped most_if_slipped(const Criterion& criterion) const {
    constexpr double kLooksNear = 0.9;
    Slipped most;
    if (criterion.kind != Criterion::Kind::bolt) return most;
    const auto look_at = [&](bool told) {
      for (const Cell& cell : cells_) {
        if (like_.is_told(cell) != told) continue;
        const double here = if_slipped(criterion, cell);
        if (std::isnan(here) || here <= most.utilization) continue;
        most = {here, &cell};
      }
    };
    look_at(false);
    if (most.utilization > kLooksNear) look_at(true);
    return most;
  }

  void undecided(const Criterion& criterion, const Cell& cell, const std::string& reason) {
    checks::Finding left;
    left.part = part_judged(criterion, cell.assembly());
    left.check = check_name(criterion.kind);
    left.required = asked_in(criterion, cell).value;
    checks::leave_undecided(left, reason);
    place(left, cell);
    out_.answer.findings.push_back(std::move(left));
  }

  void finish();

  struct PerSet {
    double deflection = 0.0;
    double moment = 0.0;
  };

  const parts::Design& design_;
  std::string name_;
  const Watch& watch_;
  Counted counted_;
  Extras extras_;
  Told told_;
  std::optional<double> leave_over_;
  bool left_early_ = false;
  std::optional<Criterion> failing_;  ///< that it was left for
  std::vector<parts::DesignCase> cases_;
  BuiltFrames built_;
  std::vector<std::unique_ptr<SetModel>> models_;
  std::vector<Cell> cells_;
  LikeCells like_{counted_, cells_, cases_};
  std::vector<fea::BucklingResult> buckled_;  // of each of them
  std::vector<Cell*> not_buckled_;
  KnownDesign* found_ = nullptr;
  std::map<const Cell*, std::array<KnownRatios, 2>> at_most_;  // of those not solved, for found_
  std::map<std::string, PerSet> per_set_;
  std::vector<checks::Finding> stability_;
  std::vector<Lowest> lowest_;
  std::string ill_conditioned_;
  Run out_;
};

bool worse(const checks::Finding& a, const checks::Finding& b) {
  const bool a_undecided = a.state == checks::State::undecided;
  const bool b_undecided = b.state == checks::State::undecided;
  if (a_undecided != b_undecided) return a_undecided;
  if (a_undecided) return false;
  return a.utilization() > b.utilization();
}

/// Keeps the lowest factor of each thing that can go, ascending.
std::vector<CriticalFactor> lowest_of_each(std::vector<CriticalFactor> all) {
  std::stable_sort(all.begin(), all.end(), [](const CriticalFactor& a, const CriticalFactor& b) {
    return a.factor < b.factor;
  });
  std::vector<CriticalFactor> kept;
  for (CriticalFactor& c : all) {
    const bool seen = std::any_of(kept.begin(), kept.end(),
                                  [&](const CriticalFactor& k) { return k.what == c.what; });
    if (!seen) kept.push_back(std::move(c));
  }
  return kept;
}

/// The worst of each part, in the order of `findings`: worst first, undecided ones before all. What
/// is over says more than what is not decided.
std::vector<PartUtilization> parts_of(const std::vector<checks::Finding>& findings) {
  std::vector<PartUtilization> all;
  for (const checks::Finding& f : findings) {
    const auto seen = std::find_if(all.begin(), all.end(),
                                   [&](const PartUtilization& p) { return p.part == f.part; });
    if (seen == all.end()) {
      all.push_back({f.part, f.utilization(), f.check});
    } else if (std::isnan(seen->utilization) && f.state == checks::State::over) {
      *seen = {f.part, f.utilization(), f.check};
    }
  }
  return all;
}

void Runner::finish() {
  Answer& answer = out_.answer;
  Figures& figures = out_.figures;
  answer.title = design_.title;
  answer.inches = design_.inches;
  std::stable_sort(answer.findings.begin(), answer.findings.end(), worse);
  answer.verdict = verdict_of(answer.findings);
  if (told_ == Told::worst) return;
  answer.critical = lowest_of_each(std::move(answer.critical));
  if (answer.critical.size() > 3) answer.critical.resize(3);
  answer.own = lowest_of_each(std::move(answer.own));
  for (const parts::DesignCase& c : cases_) answer.load_cases.push_back(c.name + ": " + c.basis);
  const parts::Assembly& assembly = models_.front()->assembly();
  figures.mass = 0.0;
  for (const parts::Piece& piece : assembly.pieces) {
    const auto same = std::find_if(answer.masses.begin(), answer.masses.end(),
                                   [&](const PartMass& m) { return m.part == piece.part; });
    if (same == answer.masses.end()) {
      answer.masses.push_back({piece.part, piece.mass});
    } else {
      same->mass += piece.mass;
    }
    // The truck's own rails and cross members are not what is made.
    if (piece.part != "frame") figures.mass += piece.mass;
  }
  answer.droop = droop_of(design_);
  answer.postures = extremes_of(answer.solved);
  if (answer.droop) take_solved(*answer.droop, answer.postures);
  answer.bump = bump_of(design_);
  if (answer.bump) take_solved(*answer.bump, answer.postures);
  answer.beyond_travel = beyond_travel(design_, answer);
  answer.assumed = all_assumptions(design_, assembly);
  if (!ill_conditioned_.empty()) {
    answer.assumed.push_back({"model", ill_conditioned_, "estimate of the condition number"});
  }
  answer.not_checked = left_out(design_);
  answer.scope = scope_of(design_);
  answer.not_offered = checks_not_offered();

  figures.name = name_;
  figures.verdict = answer.verdict;
  if (!answer.findings.empty()) {
    // What is over says more than what is not decided.
    const auto over =
        std::find_if(answer.findings.begin(), answer.findings.end(),
                     [](const checks::Finding& f) { return f.state == checks::State::over; });
    const checks::Finding& worst = over == answer.findings.end() ? answer.findings.front() : *over;
    figures.worst = worst.part + ", " + worst.check;
    figures.worst_utilization = worst.utilization();
  }
  figures.parts = parts_of(answer.findings);
  for (const checks::Finding& f : answer.findings) {
    if (f.check == "weld") figures.weld_utilization = f.utilization();
  }
  if (!answer.critical.empty()) figures.critical_factor = answer.critical.front().factor;
  for (const auto& [set, value] : per_set_) {
    figures.tip_deflection.low = std::fmin(figures.tip_deflection.low, value.deflection);
    figures.tip_deflection.high = std::fmax(figures.tip_deflection.high, value.deflection);
  }
  // The largest at either end of the rail's stiffness, as the conclusions compare them.
  for (const RootMoment& at : figures.root_moments) {
    figures.root_moment.low = std::fmin(figures.root_moment.low, at.moment);
    figures.root_moment.high = std::fmax(figures.root_moment.high, at.moment);
  }
}

}  // namespace

bool Counted::is_asked(const std::string& part) const {
  return asked.empty() || std::any_of(asked.begin(), asked.end(),
                                      [&](const std::string& one) { return belongs(part, one); });
}

bool Counted::has(const std::string& part) const {
  return is_asked(part) ||
         (others && std::find(left_out.begin(), left_out.end(), part) == left_out.end());
}

Run run(const parts::Design& design, const std::string& name, const Watch& watch,
        const Counted& counted, Extras extras) {
  return Runner(design, name, watch, counted, extras).result();
}

Run run_until_over(const parts::Design& design, const std::string& name, const Counted& counted,
                   double most, const Watch& watch) {
  std::optional<Run> found =
      Runner(design, name, watch, counted, Extras::none, Told::worst).until_over(most);
  return found ? *std::move(found) : run_for_worst(design, counted, watch);
}

Run run_as_drawn(const parts::Design& design, const Counted& counted, const Watch& watch,
                 KnownDesign* found) {
  Runner runner(design, "as drawn", watch, counted, Extras::none, Told::over_and_worst);
  runner.keep_known(found);
  return runner.result();
}

Run run_for_worst(const parts::Design& design, const Counted& counted, const Watch& watch) {
  return Runner(design, "", watch, counted, Extras::none, Told::worst).result();
}

bool belongs(const std::string& part, const std::string& asked) {
  if (asked.empty()) return true;
  // Steering has parts of its own: steering.tie_rod is the part tie_rod.
  constexpr std::string_view kSteering = "steering.";
  const std::string stem = asked.rfind(kSteering, 0) == 0 ? asked.substr(kSteering.size())
                                                          : asked.substr(0, asked.find('.'));
  return part == stem || part.rfind(stem + ", ", 0) == 0;
}

Watch part_of(const Watch& watch, double from, double to, const std::string& what) {
  if (!watch) return {};
  return [&watch, from, to, what](const Progress& progress) {
    return watch({from + (to - from) * progress.fraction,
                  what.empty() ? progress.what : what + ": " + progress.what});
  };
}

}  // namespace studies
