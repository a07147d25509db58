#pragma once

#include <cstddef>
#include <vector>

#include "fea/system.hpp"

namespace fea {

/// Some blocks of a frame (its beams and springs) reduced exactly onto the unknowns that they share
/// with the others: K_kk - K_ki K_ii^-1 K_ik, and the loads likewise. Linear equilibrium in the
/// undeformed position; geometric stiffness is not in it.
/// Source: static condensation, e.g. Cook et al., Concepts and Applications of Finite Element
/// Analysis, 4th ed. (2002), ch. 6 (from memory).
struct Condensed {
  bool held = false;          ///< what is inside is held by what is kept; else there is no more
  std::vector<int> kept;      ///< unknowns of the whole model, ascending
  std::vector<int> inside;    ///< those eliminated, likewise
  Eigen::MatrixXd stiffness;  ///< over `kept`
  Eigen::MatrixXd loads;      ///< on `kept`, a column a load case
  Eigen::MatrixXd follow;     ///< the motion of `inside` is follow * (that of kept) + alone
  Eigen::MatrixXd alone;      ///< a column a load case
};

/// Of the free unknowns of some blocks those that other blocks have too, ascending.
[[nodiscard]] std::vector<int> shared_unknowns(const System& system,
                                               const std::vector<std::size_t>& blocks);

/// @param blocks  numbers in System::stiffness
/// @param kept    free, ascending; all that these blocks share with others, and perhaps more
/// @param loads   on all unknowns of the model, a column a load case
[[nodiscard]] Condensed condense(const System& system, const std::vector<std::size_t>& blocks,
                                 const std::vector<int>& kept, const Eigen::MatrixXd& loads);

/// The motion of what the rest keeps when some condensed parts are put in: a dense solve of that
/// size.
/// @param parts  each with unknowns that the rest keeps too
/// @return a column a load case; empty when the whole is not held
[[nodiscard]] Eigen::MatrixXd motion_of(const Condensed& rest,
                                        const std::vector<const Condensed*>& parts);

/// Puts the motion of one load case of a part's unknowns, kept and inside, where it belongs.
/// @param moved  of what the rest keeps
/// @param full   of the whole model; the other unknowns stay as they are
void spread_motion(const Condensed& rest, const Condensed& part, const Eigen::VectorXd& moved,
                   Eigen::Index load_case, Eigen::VectorXd& full);

}  // namespace fea
