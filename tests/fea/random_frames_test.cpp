// Properties that every frame must have, on frames drawn by lot. No outside source.

#include <Eigen/Eigenvalues>
#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "fea/internal_force.hpp"
#include "fea/linear_motion.hpp"
#include "tests/fea/random_frame.hpp"

namespace random_frames_test {
using Catch::Matchers::WithinRel;
using fea::BeamId;
using fea::Matrix3;
using fea::Method;
using fea::NodeId;
using fea::Vector3;
using fea::Vector6;
using fea_test::Lot;
using fea_test::random_frame;
using fea_test::RandomFrame;

namespace {

constexpr std::uint32_t kFrames = 12;

fea::Solution solve(const fea::Model& model, const fea::Loads& loads,
                    Method method = Method::linear) {
  fea::Solution s = fea::solve(fea::factor(model), loads, {.method = method});
  REQUIRE(s.status() == fea::SolveStatus::converged);
  CHECK(s.residual() < 1e-9);
  return s;
}

int n_nodes(const fea::Model& model) {
  return static_cast<int>(model.nodes.size());
}
int n_beams(const fea::Model& model) {
  return static_cast<int>(model.beams.size());
}

/// What the forces of `loads` do along the motion of `s`; no line loads, strains or moves.
double work(const fea::Model& model, const fea::Loads& loads, const fea::Solution& s) {
  double sum = 0.0;
  for (const fea::NodeLoad& load : loads.nodes) {
    const Vector6 at = s.placement(load.node);
    const Vector3 moved = at.head<3>() + at.tail<3>().cross(load.offset_g);
    sum += load.force_g.dot(moved) + load.moment_g.dot(at.tail<3>());
  }
  for (const fea::BeamPointLoad& load : loads.points) {
    // The beam's own shape, and its give under loads of its own is not asked for here.
    const fea::Beam& beam = model[load.beam];
    const Matrix3 axes = fea::member_axes(model, beam);
    const double span = fea::length(model, beam);
    fea::Vector12 ends_l;
    for (const int end : {0, 1}) {
      const Vector6 at = s.end_placement(load.beam, end);
      ends_l.segment<3>(6 * end) = axes * at.head<3>();
      ends_l.segment<3>(6 * end + 3) = axes * at.tail<3>();
    }
    const Vector6 there =
        fea::beam_shape(fea::shear_flex(beam.section, beam.elastic, span), span, load.at) * ends_l;
    sum += (axes * load.force_g).dot(there.head<3>()) + (axes * load.moment_g).dot(there.tail<3>());
  }
  return sum;
}

/// The model and its loads moved as a whole.
RandomFrame turned(const RandomFrame& from, const Matrix3& turn, const Vector3& shift) {
  RandomFrame out = from;
  for (fea::Node& node : out.model.nodes) node.at_g = (turn * node.at_g + shift).eval();
  for (std::size_t i = 0; i < out.model.beams.size(); ++i) {
    fea::Beam& beam = out.model.beams[i];
    const Vector3 z = fea::member_axes(from.model, from.model.beams[i]).row(2);
    beam.z_toward_g = turn * z;
    for (fea::BeamEnd* end : {&beam.a, &beam.b}) {
      end->offset_g = (turn * end->offset_g).eval();
      if (end->joint) end->joint->axes_g = (turn * end->joint->axes_g).eval();
    }
  }
  for (fea::Spring& spring : out.model.springs) {
    spring.offset_a_g = (turn * spring.offset_a_g).eval();
    spring.offset_b_g = (turn * spring.offset_b_g).eval();
    spring.axes_g = (turn * spring.axes_g).eval();
  }
  for (fea::NodeLoad& load : out.loads.nodes) {
    load.offset_g = (turn * load.offset_g).eval();
    load.force_g = (turn * load.force_g).eval();
    load.moment_g = (turn * load.moment_g).eval();
  }
  for (fea::BeamPointLoad& load : out.loads.points) {
    load.force_g = (turn * load.force_g).eval();
    load.moment_g = (turn * load.moment_g).eval();
  }
  for (fea::BeamLineLoad& load : out.loads.lines) {
    load.at_from_g = (turn * load.at_from_g).eval();
    load.at_to_g = (turn * load.at_to_g).eval();
  }
  for (fea::SupportMove& move : out.loads.moves) {
    const Vector3 along = move.by_g.head<3>();
    const Vector3 about = move.by_g.tail<3>();
    move.by_g << turn * along, turn * about;
  }
  out.loads.gravity_g = (turn * out.loads.gravity_g).eval();
  return out;
}

/// The same frame with every beam cut in two at `part` of its length, its loads shared out.
RandomFrame cut(const RandomFrame& from, double part) {
  RandomFrame out = from;
  out.loads.points.clear();
  out.loads.lines.clear();
  out.loads.strains.clear();
  std::vector<BeamId> second;
  for (int i = 0; i < n_beams(from.model); ++i) {
    const fea::Beam whole = from.model[BeamId{i}];
    const Vector3 a = fea::end_a_g(from.model, whole);
    const Vector3 b = fea::end_b_g(from.model, whole);
    const Vector3 z = fea::member_axes(from.model, whole).row(2);
    const NodeId middle = out.model.add(fea::Node{.at_g = a + part * (b - a)});
    fea::Beam first = whole;
    first.z_toward_g = z;
    fea::Beam rest = first;
    first.b = {.node = middle};
    rest.a = {.node = middle};
    out.model.beams[static_cast<std::size_t>(i)] = first;
    second.push_back(out.model.add(rest));
  }
  const auto rest_of = [&](BeamId id) { return second[static_cast<std::size_t>(id.index)]; };
  const auto cut_at = [&](BeamId id) { return part * fea::length(from.model, from.model[id]); };
  for (fea::BeamPointLoad load : from.loads.points) {
    const double at = cut_at(load.beam);
    if (load.at > at) {
      load.at -= at;
      load.beam = rest_of(load.beam);
    }
    out.loads.points.push_back(load);
  }
  for (const fea::BeamLineLoad& load : from.loads.lines) {
    const double at = cut_at(load.beam);
    REQUIRE(load.from < at);
    REQUIRE(load.to > at);
    const Vector3 there_g =
        load.at_from_g + (at - load.from) / (load.to - load.from) * (load.at_to_g - load.at_from_g);
    out.loads.lines.push_back({.beam = load.beam,
                               .from = load.from,
                               .to = at,
                               .at_from_g = load.at_from_g,
                               .at_to_g = there_g});
    out.loads.lines.push_back({.beam = rest_of(load.beam),
                               .from = 0.0,
                               .to = load.to - at,
                               .at_from_g = there_g,
                               .at_to_g = load.at_to_g});
  }
  for (fea::BeamStrain strain : from.loads.strains) {
    out.loads.strains.push_back(strain);
    strain.beam = rest_of(strain.beam);
    out.loads.strains.push_back(strain);
  }
  return out;
}

double size_of(const fea::Model& model, const fea::Solution& s) {
  double size = 0.0;
  for (int i = 0; i < n_nodes(model); ++i) size = std::max(size, s.placement({i}).norm());
  return size;
}

}  // namespace

TEST_CASE("the stiffness of any frame is symmetric and none of it negative", "[fea][property]") {
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    const fea::System system(random_frame(seed).model);
    for (std::size_t b = 0; b < system.n_blocks(); ++b) {
      const Eigen::MatrixXd& block = system.stiffness(b);
      if (block.size() == 0) continue;
      CHECK((block - block.transpose()).cwiseAbs().maxCoeff() <=
            1e-12 * block.cwiseAbs().maxCoeff());
    }
    const Eigen::MatrixXd lower(system.scaled());
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> modes(lower, Eigen::EigenvaluesOnly);
    CHECK(modes.eigenvalues().minCoeff() > 0.0);
  }
}

TEST_CASE("forces beam by beam are the matrix times the motion", "[fea][property]") {
  for (const std::uint32_t seed : {3U, 8U, 21U}) {
    const RandomFrame frame = fea_test::random_frame(seed);
    const fea::System system(frame.model);
    const fea::LoadCase load_case = fea::prepare(system, frame.loads);
    Lot lot(seed + 50U);
    const auto any = [&] {
      Eigen::VectorXd out(system.n_unknowns());
      for (double& value : out) value = lot.between(-1.0e-3, 1.0e-3);
      return out;
    };
    const fea::StressState state = fea::stress_state(system, load_case, any());
    const fea::Blocks geometric = fea::geometric_stiffness(system, load_case, state);
    const Eigen::VectorXd motion = any();
    Eigen::VectorXd expected = Eigen::VectorXd::Zero(motion.size());
    for (std::size_t b = 0; b < system.n_blocks(); ++b) {
      const Eigen::VectorXi& unknowns = system.unknowns(b);
      if (system.stiffness(b).size() > 0) {
        expected(unknowns) += system.stiffness(b) * motion(unknowns);
      }
      if (geometric[b].size() > 0) expected(unknowns) += geometric[b] * motion(unknowns);
    }
    Eigen::VectorXd force = Eigen::VectorXd::Zero(motion.size());
    fea::add_internal_force(system, load_case, &state, motion, force);
    INFO(seed);
    CHECK((force - expected).norm() < 1.0e-12 * expected.norm());

    Eigen::VectorXd values;
    fea::scaled_geometric_stiffness(system, load_case, state, values);
    const fea::Sparse of_blocks = system.scaled_sum(geometric);
    CHECK((values - of_blocks.coeffs().matrix()).norm() < 1.0e-12 * values.norm());
  }
}

TEST_CASE("moving a frame as one rigid piece makes no force", "[fea][property]") {
  // Every support is moved by the same small rigid motion; springs to the ground are taken off.
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    RandomFrame frame = random_frame(seed);
    frame.model.springs.pop_back();
    fea_test::Lot lot(seed + 100);
    Vector6 body;
    body << lot.vector(1.0e-3), lot.vector(1.0e-3);
    fea::Loads loads;
    for (const fea::Support& support : frame.model.supports) {
      Vector6 by = fea::carried(frame.model[support.node].at_g) * body;
      for (std::size_t k = 0; k < 6; ++k) {
        if (!support.held[k]) by(static_cast<Eigen::Index>(k)) = 0.0;
      }
      loads.moves.push_back({.node = support.node, .by_g = by});
    }
    const fea::Solution s = fea_test::linear(frame.model, loads);
    for (int i = 0; i < n_nodes(frame.model); ++i) {
      const Vector6 expected = fea::carried(frame.model[NodeId{i}].at_g) * body;
      CHECK((s.placement({i}) - expected).norm() < 1e-8 * body.norm());
      CHECK(s.reaction({i}).norm() < 1e-2);
    }
    for (int b = 0; b < n_beams(frame.model); ++b) CHECK(s.end_forces({b}).norm() < 1e-2);
  }
}

TEST_CASE("answers to several loads add up", "[fea][property]") {
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    const RandomFrame frame = random_frame(seed);
    const fea::Solution sum = solve(frame.model, frame.loads * 2.5 + frame.other);
    const fea::Solution s = solve(frame.model, frame.loads);
    const fea::Solution t = solve(frame.model, frame.other);
    for (int i = 0; i < n_nodes(frame.model); ++i) {
      const Vector6 expected = 2.5 * s.placement({i}) + t.placement({i});
      CHECK((sum.placement({i}) - expected).norm() < 1e-9 * size_of(frame.model, sum));
    }
    for (int b = 0; b < n_beams(frame.model); ++b) {
      const fea::Vector12 expected = 2.5 * s.end_forces({b}) + t.end_forces({b});
      CHECK((sum.end_forces({b}) - expected).norm() < 1e-6 * (1.0 + expected.norm()));
    }
  }
}

TEST_CASE("two sets of forces do the same work along each other's motion", "[fea][property]") {
  // Maxwell and Betti.
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    const RandomFrame frame = random_frame(seed);
    fea::Loads forces;
    forces.nodes = frame.loads.nodes;
    forces.points = frame.loads.points;
    const double there = work(frame.model, forces, solve(frame.model, frame.other));
    const double back = work(frame.model, frame.other, solve(frame.model, forces));
    CHECK_THAT(there, WithinRel(back, 1e-8));
  }
}

TEST_CASE("forces do the work that the frame stores", "[fea][property]") {
  // Clapeyron: half of force times motion is the strain energy of beams, joints and springs.
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    RandomFrame frame = random_frame(seed);
    frame.other.points.clear();
    const fea::System system(frame.model);
    const fea::Solution s = solve(frame.model, frame.other);
    const Eigen::VectorXd motion = fea::linear_motion(system, fea::prepare(system, frame.other));
    double energy = 0.0;
    for (std::size_t b = 0; b < system.n_blocks(); ++b) {
      if (system.stiffness(b).size() == 0) continue;
      const Eigen::VectorXd q = motion(system.unknowns(b));
      energy += 0.5 * q.dot(system.stiffness(b) * q);
    }
    CHECK_THAT(0.5 * work(frame.model, frame.other, s), WithinRel(energy, 1e-8));
  }
}

TEST_CASE("turning the whole frame turns its answer", "[fea][property]") {
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    RandomFrame frame = random_frame(seed);
    // Held in all directions or in none, so that the supports can turn too.
    frame.model.supports.back().held = {true, true, true, true, true, true};
    const Matrix3 turn = fea_test::Lot(seed + 7).axes();
    const RandomFrame image = turned(frame, turn, {0.5, -2.0, 1.0});
    for (const Method method : {Method::linear, Method::second_order}) {
      const fea::Solution s = solve(frame.model, frame.loads, method);
      const fea::Solution t = solve(image.model, image.loads, method);
      for (int i = 0; i < n_nodes(frame.model); ++i) {
        Vector6 expected;
        expected << turn * s.placement({i}).head<3>(), turn * s.placement({i}).tail<3>();
        CHECK((t.placement({i}) - expected).norm() < 1e-8 * size_of(frame.model, s));
      }
      for (int b = 0; b < n_beams(frame.model); ++b) {
        CHECK((t.end_forces({b}) - s.end_forces({b})).norm() <
              1e-6 * (1.0 + s.end_forces({b}).norm()));
      }
    }
  }
}

TEST_CASE("cutting the beams of a frame changes no linear answer", "[fea][property]") {
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    const RandomFrame frame = random_frame(seed);
    const double part = 0.3;
    const RandomFrame pieces = cut(frame, part);
    const fea::Solution s = solve(frame.model, frame.loads);
    const fea::Solution t = solve(pieces.model, pieces.loads);
    for (int i = 0; i < n_nodes(frame.model); ++i) {
      CHECK((t.placement({i}) - s.placement({i})).norm() < 1e-8 * size_of(frame.model, s));
    }
    for (int b = 0; b < n_beams(frame.model); ++b) {
      // At the cut: what the whole beam says there.
      const double at = part * fea::length(frame.model, frame.model[BeamId{b}]);
      const sections::Resultants whole = s.forces_at({b}, at);
      const sections::Resultants cut_end = t.forces_at({b}, at);
      const double size = 1.0 + s.end_forces({b}).norm();
      CHECK(std::abs(whole.n - cut_end.n) < 1e-6 * size);
      CHECK(std::abs(whole.vz - cut_end.vz) < 1e-6 * size);
      CHECK(std::abs(whole.my - cut_end.my) < 1e-6 * size);
      CHECK(std::abs(whole.mz - cut_end.mz) < 1e-6 * size);
      CHECK(std::abs(whole.t - cut_end.t) < 1e-6 * size);
    }
  }
}

TEST_CASE("negative factors are those of the load reversed", "[fea][property][buckling]") {
  for (std::uint32_t seed = 1; seed <= 4; ++seed) {
    const RandomFrame frame = random_frame(seed);
    const fea::Factored factored = fea::factor(frame.model);
    const fea::BucklingResult both = fea::buckle(factored, frame.other, {.n_reversed = 2});
    const fea::BucklingResult back = fea::buckle(factored, frame.other * -1.0, {.n_modes = 2});
    REQUIRE(both.reversed.size() == back.modes.size());
    for (std::size_t i = 0; i < back.modes.size(); ++i) {
      CHECK_THAT(both.reversed[i].factor, WithinRel(-back.modes[i].factor, 1e-8));
    }
    CHECK(fea::buckle(factored, frame.other).reversed.empty());
  }
}

TEST_CASE("where the search starts has no say in a second-order answer", "[fea][second-order]") {
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    INFO("frame " << seed);
    const RandomFrame frame = random_frame(seed);
    const fea::Factored factored = fea::factor(frame.model);
    const fea::Solution plain = fea::solve(factored, frame.loads);
    REQUIRE(plain.status() == fea::SolveStatus::converged);
    fea::Workspace workspace;
    fea::SolveOptions options{.workspace = &workspace};
    const fea::Solution more = fea::solve(factored, frame.loads * 1.5, options);
    options.near = &more;
    options.near_factor = 1.0 / 1.5;
    const fea::Solution near = fea::solve(factored, frame.loads, options);
    REQUIRE(near.status() == fea::SolveStatus::converged);
    CHECK(near.residual() < 1e-9);
    for (int i = 0; i < n_beams(frame.model); ++i) {
      const fea::Vector12 expected = plain.end_forces(BeamId{i});
      CHECK((near.end_forces(BeamId{i}) - expected).norm() < 1e-8 * (1.0 + expected.norm()));
    }
  }
}

TEST_CASE("a beam or spring inside one rigid body changes nothing", "[fea][rigid]") {
  for (std::uint32_t seed = 1; seed <= kFrames; ++seed) {
    INFO("frame " << seed);
    const RandomFrame without = random_frame(seed);
    RandomFrame with = without;
    const fea::RigidBody& body = with.model.rigid.front();
    fea::Beam inside = with.model.beams.front();
    inside.a = {.node = body.carried.front()};
    inside.b = {.node = body.carried.back()};
    inside.density = 0.0;
    inside.b.joint = fea_test::joint({2.0e6, 3.0e6, 4.0e6, 500.0, 900.0, 700.0});
    inside.a.joint = inside.b.joint;
    with.model.add(inside);
    fea::Spring spring{.a = body.master, .b = body.carried.front()};
    spring.stiffness = 1.0e5 * fea::Matrix6::Identity();
    spring.offset_a_g = with.model[*spring.b].at_g - with.model[spring.a].at_g;
    with.model.add(spring);
    for (const Method method : {Method::linear, Method::second_order}) {
      const fea::Solution a = solve(without.model, without.loads, method);
      const fea::Solution b = solve(with.model, with.loads, method);
      for (int i = 0; i < n_nodes(without.model); ++i) {
        const Vector6 expected = a.placement(NodeId{i});
        CHECK((b.placement(NodeId{i}) - expected).norm() < 1e-7 * (1.0e-6 + expected.norm()));
      }
    }
    const auto first = [](const fea::Model& model, const fea::Loads& loads) {
      return fea::buckle(fea::factor(model), loads).modes.front().factor;
    };
    CHECK_THAT(first(with.model, with.loads), WithinRel(first(without.model, without.loads), 1e-6));
  }
}

}  // namespace random_frames_test
