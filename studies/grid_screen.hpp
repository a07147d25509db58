#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "fea/condensation.hpp"
#include "fea/solution.hpp"
#include "parts/assembly.hpp"
#include "parts/design_cases.hpp"
#include "parts/stiffness_set.hpp"
#include "studies/criterion.hpp"
#include "studies/run.hpp"
#include "studies/set_model.hpp"
#include "studies/sized_part.hpp"
#include "studies/spread.hpp"

namespace studies {

/// What a check of a part came to.
struct SeenCheck {
  std::string part;
  std::string check;
  std::string load_case;
  double utilization = base::kUnset;
};

/// Says no to most designs of a grid of sizes without building them: the frame is condensed onto
/// the ends of the parts picked, once; each size of each part likewise, by itself; a design is then
/// a dense solve of a few dozen equations, in the load cases and stiffness sets in which the parts
/// as drawn come nearest to their limits.
///
/// The condensed motion is exact in first order (fea/condensation.hpp), with the stops and straps
/// closed that carry as drawn: where a design would have others, it is not looked at. Second order
/// is not in it: what it says no to is over by more than that can make up for, by the margins in
/// grid_screen.cpp, or would be by what the design as drawn, or a design of the grid, came to with
/// it, changed as first order changes from there. What is left is solved in full; nothing is let
/// pass by this.
class GridScreen {
 public:
  /// @param sizes    of each part
  /// @param counted  where to look: Counted::look_first
  GridScreen(const parts::Design& design, const std::vector<std::string>& parts,
             const std::vector<std::vector<SizeChoice>>& sizes, const Counted& counted,
             const Spread& spread = {});

  /// The check that was over last: the next design like it is soon told by the same one. Saves
  /// time, and has no say in the answer.
  struct Hint {
    std::size_t look = 0;
    std::size_t load_case = 0;
    std::size_t part = 0;
    std::size_t criterion = 0;
  };

  /// What checks of the parts picked came to in designs that were solved: a check of a part of the
  /// same size comes to much the same beside other sizes of the others.
  class Seen {
   private:
    friend class GridScreen;
    struct One {
      std::size_t look;
      std::size_t load_case;
      std::size_t part;
      std::size_t size;
      std::size_t criterion;
      double first_order;  ///< demand over capacity at the multiple looked at
      double utilization;
    };
    std::vector<One> all_;
  };
  /// Adds what one came to.
  /// @param check  of a part picked
  void see(const std::vector<std::size_t>& choice, const SeenCheck& check, Seen& seen) const;

  /// Whether a check of the parts picked is over `most` for sure.
  /// @param choice  the size of each part
  [[nodiscard]] bool surely_over(const std::vector<std::size_t>& choice, double most, Hint& hint,
                                 const Seen& seen) const;
  [[nodiscard]] bool surely_over(const std::vector<std::size_t>& choice, double most) const;
  /// The worst utilization of the parts picked as first order has it, where it is looked at: what
  /// to solve first. Infinite where nothing is known.
  /// @param enough  no more is looked at once it is over this
  [[nodiscard]] double likely(const std::vector<std::size_t>& choice, double enough,
                              Hint& hint) const;

  /// How many load cases with a stiffness set it looks at; 0 = it never says no.
  [[nodiscard]] std::size_t n_looks() const;
  /// Equations that a design comes down to, at most.
  [[nodiscard]] std::size_t n_equations() const;

 private:
  /// What a check of a size asks by the forces that the design as drawn has where it was solved.
  struct Told {
    double multiple;     ///< of the load
    double there;        ///< demand over capacity at that
    double first_order;  ///< the same by first order
  };
  /// One size of one part in one stiffness set, all else as drawn.
  struct Size {
    parts::Assembly assembly = {};                     ///< its pieces alone
    std::vector<Criterion> criteria = {};              ///< of the part
    std::vector<bool> is_only = {};                    ///< no other check of the part has its name
    std::vector<fea::BeamAt> beams = {};               ///< of the part
    std::vector<std::vector<fea::MemberLoads>> loads;  ///< of those beams, in each load case
    fea::Condensed condensed = {};                     ///< not held = this size is not looked at
    std::vector<std::vector<std::vector<Told>>> told = {};  ///< in each load case, of each check
  };
  /// One stiffness set, with the same stops and straps closed in all its load cases.
  struct Look {
    parts::StiffnessSet set;
    Contacts closed = 0;  ///< by second order as drawn
    std::vector<parts::DesignCase> cases;
    std::shared_ptr<const fea::System> drawn = {};
    std::vector<std::vector<std::size_t>> changing = {};  ///< blocks, with each part
    fea::Condensed rest = {};
    std::vector<std::vector<Size>> sizes = {};  ///< of each part
  };
  struct Built;
  struct Moved;
  using Sizes = std::vector<std::vector<SizeChoice>>;

  [[nodiscard]] std::vector<Look> places(const Counted& counted) const;
  void prepare(Look& look, const Sizes& sizes, const KnownDesign* known,
               const Spread& spread) const;
  [[nodiscard]] std::optional<Built> built(const parts::Design& design, const Look& look) const;
  [[nodiscard]] bool find_changing(Look& look, const Sizes& sizes) const;
  [[nodiscard]] Size condensed(const Look& look, std::size_t part, const SizeChoice& size,
                               const Eigen::MatrixXd& force) const;
  [[nodiscard]] bool adds_up(const Look& look, const Sizes& sizes) const;
  void tell(Look& look, const Eigen::MatrixXd& force, const KnownDesign& known,
            const Spread& spread) const;
  enum class Margins { none, all };
  [[nodiscard]] double largest(const std::vector<std::size_t>& choice, Margins margins,
                               double enough, Hint& hint, const Seen& seen) const;
  [[nodiscard]] double utilization(const Moved& moved, const fea::Solution& at_load,
                                   std::size_t criterion, Margins margins, double most) const;
  [[nodiscard]] Eigen::MatrixXd motion(const Look& look,
                                       const std::vector<std::size_t>& choice) const;
  [[nodiscard]] AskedFactor asked(const Moved& moved, const fea::Solution& at_load,
                                  std::size_t criterion) const;
  [[nodiscard]] double told(const Moved& moved, const fea::Solution& at_load, std::size_t criterion,
                            const AskedFactor& asked, Margins margins) const;
  [[nodiscard]] double as_seen(const Moved& moved, const fea::Solution& at_load, const Hint& at,
                               std::size_t size, const Seen& seen) const;

  const parts::Design& design_;
  const std::vector<std::string>& parts_;
  double of_bolts_ = 0.0;  ///< utilization of bolts and joints as drawn
  std::vector<Look> looks_;
};

}  // namespace studies
