#include "fea/condensation.hpp"

#include <algorithm>
#include <iterator>

#include <catch2/catch.hpp>

#include "fea/linear_motion.hpp"
#include "tests/fea/random_frame.hpp"

namespace condensation_test {
namespace {

using Blocks = std::vector<std::size_t>;

// Of random_frame: a bar between two bodies; two beams in line, a bar with joints and a coupled
// spring, with a node and the joints between them.
const Blocks kBar = {7};
const Blocks kGroup = {3, 4, 6, 9};

/// The same frame, other sections in the beams of these blocks.
fea::Model with_other_sections(fea::Model model, const Blocks& blocks, std::uint32_t seed) {
  fea_test::Lot lot(seed + 500U);
  for (const std::size_t block : blocks) {
    if (block >= model.beams.size()) continue;
    sections::AreaProps& props = model.beams[block].section;
    props.area *= lot.between(0.3, 4.0);
    props.iyy *= lot.between(0.3, 4.0);
    props.izz *= lot.between(0.3, 4.0);
    props.torsion *= lot.between(0.3, 4.0);
    props.shear_y = props.shear_z = 0.5 * props.area;
  }
  return model;
}

Blocks the_rest(const fea::System& system) {
  Blocks out;
  for (std::size_t block = 0; block < system.n_blocks(); ++block) {
    const auto in = [&](const Blocks& part) {
      return std::find(part.begin(), part.end(), block) != part.end();
    };
    if (!in(kBar) && !in(kGroup)) out.push_back(block);
  }
  return out;
}

/// A part with other sections, condensed onto its ends; of the loads there only what is new.
fea::Condensed part_of(const fea_test::RandomFrame& frame, const fea::System& before,
                       const Blocks& blocks, std::uint32_t seed) {
  const fea::System now(with_other_sections(frame.model, blocks, seed));
  const std::vector<int> ends = fea::shared_unknowns(now, blocks);
  Eigen::MatrixXd force = fea::prepare(now, frame.other).vector;
  force(ends, 0) -= fea::prepare(before, frame.other).vector(ends);
  return fea::condense(now, blocks, ends, force);
}

}  // namespace

// A property: no outside value.
TEST_CASE("a frame condensed onto the ends of some parts moves as all of it does",
          "[fea][condensation]") {
  for (std::uint32_t seed = 1; seed <= 12; ++seed) {
    INFO(seed);
    const fea_test::RandomFrame frame = fea_test::random_frame(seed);
    const fea::System before(frame.model);
    const fea::Condensed bar = part_of(frame, before, kBar, seed);
    const fea::Condensed group = part_of(frame, before, kGroup, seed);
    std::vector<int> ends;
    std::set_union(bar.kept.begin(), bar.kept.end(), group.kept.begin(), group.kept.end(),
                   std::back_inserter(ends));
    const fea::Condensed rest =
        fea::condense(before, the_rest(before), ends, fea::prepare(before, frame.other).vector);
    REQUIRE(rest.held);
    REQUIRE(group.held);
    CHECK(group.inside.size() > 6);

    const Eigen::MatrixXd moved = fea::motion_of(rest, {&bar, &group});
    REQUIRE(moved.rows() == static_cast<Eigen::Index>(ends.size()));
    const fea::System now(
        with_other_sections(with_other_sections(frame.model, kBar, seed), kGroup, seed));
    const Eigen::VectorXd full = fea::linear_motion(now, fea::prepare(now, frame.other));
    Eigen::VectorXd condensed = Eigen::VectorXd::Zero(full.size());
    fea::spread_motion(rest, bar, moved.col(0), 0, condensed);
    fea::spread_motion(rest, group, moved.col(0), 0, condensed);
    std::vector<int> all = ends;
    all.insert(all.end(), group.inside.begin(), group.inside.end());
    const Eigen::VectorXd difference = condensed(all) - full(all);
    CHECK(difference.cwiseAbs().maxCoeff() < 1.0e-9 * full(all).cwiseAbs().maxCoeff());
  }
}

TEST_CASE("what nothing holds is not condensed", "[fea][condensation]") {
  const fea_test::RandomFrame frame = fea_test::random_frame(3);
  const fea::System system(frame.model);
  const Eigen::MatrixXd none = Eigen::MatrixXd::Zero(system.n_unknowns(), 1);
  CHECK(!fea::condense(system, kBar, {}, none).held);
}

}  // namespace condensation_test
