#pragma once

#include <vector>

#include <Eigen/Core>

namespace fea {

/// Numbers the unknowns in an order of elimination that leaves the factor sparse: approximate
/// minimum degree on groups of unknowns that always come together (the freedoms of a node).
/// @param unknowns  those of each block of the matrix
/// @param held      negative where an unknown is held, over all unknowns
/// @return the place of each unknown, -1 where it is held
[[nodiscard]] Eigen::VectorXi elimination_order(const std::vector<Eigen::VectorXi>& unknowns,
                                                const Eigen::VectorXi& held);

}  // namespace fea
