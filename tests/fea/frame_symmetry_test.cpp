// Properties of a frame with one of everything (tests/fea/mixed_frame.hpp): no outside source.

#include <array>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "fea/buckling.hpp"
#include "fea/stress_state.hpp"
#include "tests/fea/dense_ends.hpp"
#include "tests/fea/mixed_frame.hpp"

namespace frame_symmetry_test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using fea::Matrix3;
using fea::Method;
using fea::NodeId;
using fea::Vector3;
using fea::Vector6;
using fea_test::Loaded;
using fea_test::mixed_frame;

namespace {

constexpr std::array kMethods = {Method::linear, Method::second_order};

Matrix3 some_turn() {
  return Eigen::AngleAxisd(1.1, Vector3(0.3, -0.8, 0.5).normalized()).toRotationMatrix();
}

fea::Solution solve(const Loaded& frame, Method method) {
  fea::Solution s = fea::solve(fea::factor(frame.model), frame.loads, {.method = method});
  REQUIRE(s.status() == fea::SolveStatus::converged);
  CHECK(s.residual() < 1e-9);
  return s;
}

int n_nodes(const Loaded& frame) {
  return static_cast<int>(frame.model.nodes.size());
}
int n_beams(const Loaded& frame) {
  return static_cast<int>(frame.model.beams.size());
}

/// Resultants as a vector, those that change sign in a mirror last.
Vector6 resultants(const fea::Solution& s, int beam, double x) {
  const sections::Resultants r = s.forces_at(fea::BeamId{beam}, x);
  return (Vector6() << r.n, r.vz, r.my, r.vy, r.t, r.mz).finished();
}

/// All results of `image` are those of `plain` moved by `turn`; `hand` -1 for a mirror.
void check_moved(const Loaded& plain, const Loaded& image, const Matrix3& turn, double hand,
                 Method method) {
  const fea::Solution s = solve(plain, method);
  const fea::Solution t = solve(image, method);
  double size = 0.0;
  for (int i = 0; i < n_nodes(plain); ++i) size = std::max(size, s.placement({i}).norm());
  for (int i = 0; i < n_nodes(plain); ++i) {
    Vector6 expected;
    expected << turn * s.placement({i}).head<3>(), hand * turn * s.placement({i}).tail<3>();
    CHECK((t.placement({i}) - expected).norm() < 1e-9 * size);
    expected << turn * s.reaction({i}).head<3>(), hand * turn * s.reaction({i}).tail<3>();
    CHECK((t.reaction({i}) - expected).norm() < 1e-6);  // of 1000 N
  }
  for (int b = 0; b < n_beams(plain); ++b) {
    for (const double part : {0.0, 0.3, 1.0}) {
      const double x = part * fea::length(plain.model, plain.model[fea::BeamId{b}]);
      Vector6 expected = resultants(s, b, x);
      // Mirrored: y = z x x is turned round, and so are moments; about y they are so twice.
      expected.tail<3>() *= hand;
      CHECK((resultants(t, b, x) - expected).norm() < 1e-6);
    }
  }
}

}  // namespace

TEST_CASE("turning and shifting the whole frame turns its answers", "[fea][property]") {
  const Loaded plain = mixed_frame();
  const Loaded image = fea_test::moved(plain, some_turn(), {12.0, -7.0, 3.0});
  for (const Method method : kMethods) check_moved(plain, image, some_turn(), 1.0, method);
}

TEST_CASE("the mirrored frame has the mirrored answers", "[fea][property]") {
  const Loaded plain = mixed_frame();
  const Matrix3 mirror = Vector3(1.0, -1.0, 1.0).asDiagonal();
  const Loaded image = fea_test::moved(plain, mirror, Vector3::Zero());
  for (const Method method : kMethods) check_moved(plain, image, mirror, -1.0, method);
}

TEST_CASE("critical factors do not depend on the axes or the hand", "[fea][property][buckling]") {
  const Loaded plain = mixed_frame();
  const Matrix3 mirror = Vector3(1.0, -1.0, 1.0).asDiagonal();
  const fea::BucklingResult s = fea::buckle(fea::factor(plain.model), plain.loads);
  REQUIRE(s.status == fea::BucklingStatus::found);
  for (const Matrix3& turn : {some_turn(), mirror}) {
    const Loaded image = fea_test::moved(plain, turn, {1.0, 2.0, -3.0});
    const fea::BucklingResult t = fea::buckle(fea::factor(image.model), image.loads);
    REQUIRE(t.modes.size() == s.modes.size());
    for (std::size_t i = 0; i < s.modes.size(); ++i) {
      CHECK_THAT(t.modes[i].factor, WithinRel(s.modes[i].factor, 1e-8));
      for (std::size_t b = 0; b < s.modes[i].beam_energy.size(); ++b) {
        CHECK_THAT(t.modes[i].beam_energy[b], WithinAbs(s.modes[i].beam_energy[b], 1e-7));
      }
    }
  }
}

TEST_CASE("reactions balance the loads", "[fea][property]") {
  const Loaded frame = mixed_frame();
  const fea::Solution s = solve(frame, Method::linear);
  Vector3 force = Vector3::Zero();
  Vector3 moment = Vector3::Zero();
  const auto add = [&](const Vector3& at, const Vector3& f, const Vector3& m) {
    force += f;
    moment += m + at.cross(f);
  };
  for (int i = 0; i < n_nodes(frame); ++i) {
    const Vector6 r = s.reaction({i});
    add(frame.model[NodeId{i}].at_g, r.head<3>(), r.tail<3>());
  }
  for (const fea::NodeLoad& load : frame.loads.nodes) {
    add(frame.model[load.node].at_g + load.offset_g, load.force_g, load.moment_g);
  }
  const auto on_beam = [&](fea::BeamId id, double at) -> Vector3 {
    const fea::Beam& beam = frame.model[id];
    return fea::end_a_g(frame.model, beam) +
           at * fea::member_axes(frame.model, beam).row(0).transpose();
  };
  for (const fea::BeamPointLoad& load : frame.loads.points) {
    add(on_beam(load.beam, load.at), load.force_g, load.moment_g);
  }
  for (const fea::BeamLineLoad& load : frame.loads.lines) {
    const double span = load.to - load.from;
    add(on_beam(load.beam, load.from + span / 3.0), 0.5 * span * load.at_from_g, Vector3::Zero());
    add(on_beam(load.beam, load.from + 2.0 * span / 3.0), 0.5 * span * load.at_to_g,
        Vector3::Zero());
  }
  CHECK(force.norm() < 1e-9 * 1000.0);
  CHECK(moment.norm() < 1e-9 * 1000.0);
}

TEST_CASE("what acts on the beams' ends balances at a node without load",
          "[fea][property][second-order]") {
  const Loaded frame = mixed_frame();
  for (const Method method : kMethods) {
    const fea::Solution s = solve(frame, method);
    const NodeId corner{3};  // where the post meets the arm
    Vector6 sum = Vector6::Zero();
    for (int b = 0; b < n_beams(frame); ++b) {
      const fea::Beam& beam = frame.model[fea::BeamId{b}];
      const Matrix3 axes_lg = fea::member_axes(frame.model, beam);
      const fea::Vector12 ends = s.end_forces({b});
      for (const Eigen::Index first : {0, 6}) {
        if ((first == 0 ? beam.a.node : beam.b.node) != corner) continue;
        sum.head<3>() += axes_lg.transpose() * ends.segment<3>(first);
        sum.tail<3>() += axes_lg.transpose() * ends.segment<3>(first + 3);
      }
    }
    CHECK(sum.norm() < 1e-7);
  }
}

TEST_CASE("loads add up and scale in a linear solution", "[fea][property]") {
  const Loaded frame = mixed_frame();
  const fea::Factored factored = fea::factor(frame.model);
  const fea::Loads other = fea_test::push(NodeId{4}, {100.0, 0.0, -50.0}, {0.0, 7.0, 0.0});
  const auto tip = [&](const fea::Loads& loads) {
    return fea::solve(factored, loads, {.method = Method::linear}).placement(NodeId{6});
  };
  const Vector6 sum = tip(frame.loads) * 2.5 + tip(other);
  CHECK((tip(frame.loads * 2.5 + other) - sum).norm() < 1e-12 * sum.norm());
}

TEST_CASE("cutting members into more pieces changes no linear answer", "[fea][property]") {
  const fea::Elastic elastic{.young = 2.0e5, .shear = 8.0e4};
  sections::AreaProps props = fea_test::section(3.0, 0.7, 0.2, 0.4);
  props.shear_y = 1.5;
  props.shear_z = 2.0;
  const Vector3 tip(3.0, 1.0, 2.0);
  std::vector<Vector6> answers;
  for (const int n : {1, 7}) {
    fea::Model model;
    const fea_test::Chain bar = fea_test::chain(model, Vector3::Zero(), tip, n, props, elastic);
    fea_test::clamp(model, bar.nodes.front());
    fea_test::hold(model, bar.nodes.back(), {true, false, true, false, false, false});
    fea::Loads loads = fea_test::push(bar.nodes.back(), {0.0, 3.0, 0.0}, {0.5, -0.4, 0.3});
    for (const fea::BeamId id : bar.beams) {
      loads.lines.push_back(
          {.beam = id, .at_from_g = {0.3, -0.2, 0.5}, .at_to_g = {0.3, -0.2, 0.5}});
    }
    answers.push_back(fea_test::linear(model, loads).placement(bar.nodes.back()));
  }
  CHECK((answers[1] - answers[0]).norm() < 1e-10 * answers[0].norm());
}

TEST_CASE("the geometric stiffness of a whole frame turns its forces with it",
          "[fea][property][stability]") {
  // As for one beam: for a rigid rotation t of the frame, (t x F, t x M / 2) at each node, where
  // F, M is what the node is given from outside, and nothing at the joints' own freedoms.
  Loaded frame = mixed_frame();
  frame.model.springs.pop_back();  // the ground does not turn
  frame.loads = fea_test::push(NodeId{6}, {-300.0, 500.0, 900.0}, {20.0, -10.0, 30.0});
  fea_test::clamp(frame.model, NodeId{frame.model.nodes.size() > 8 ? 8 : 7});
  const fea::System system(frame.model);
  const fea::LoadCase load_case = fea::prepare(system, frame.loads);
  const Eigen::VectorXd u =
      system.from_scaled_motion(system.factor().solve(system.to_scaled_force(load_case.vector)));
  const fea::Blocks geometric =
      fea::geometric_stiffness(system, load_case, fea::stress_state(system, load_case, u));

  const Vector3 turn(0.4, -0.7, 0.2);
  Vector6 body;
  body << Vector3::Zero(), turn;
  Eigen::VectorXd rigid = Eigen::VectorXd::Zero(system.n_unknowns());
  for (int i = 0; i < n_nodes(frame); ++i) {
    rigid.segment<6>(fea::first_unknown({i})) = fea::carried(frame.model[NodeId{i}].at_g) * body;
  }
  Eigen::VectorXd forces = Eigen::VectorXd::Zero(system.n_unknowns());
  Eigen::VectorXd turned = forces;
  for (std::size_t b = 0; b < geometric.size(); ++b) {
    const Eigen::VectorXi& unknowns = system.unknowns(b);
    if (system.stiffness(b).size() == 0) continue;
    forces(unknowns) += system.stiffness(b) * u(unknowns);
    Eigen::VectorXd q = rigid(unknowns);
    if (unknowns.size() > 12) {
      // The joints' own freedoms move along with the node.
      const fea::BeamPart& beam = system.beams()[b];
      for (const std::size_t end : {0U, 1U}) {
        const fea_test::Connection map = fea_test::connection_of(beam, end);
        for (Eigen::Index k = 12; k < unknowns.size(); ++k) {
          if (map.far_g.col(k).norm() > 0.0) q(k) = map.far_g.col(k).dot(map.near_g * q);
        }
      }
    }
    turned(unknowns) += geometric[b] * q;
  }
  for (int i = 0; i < n_nodes(frame); ++i) {
    const Vector3 f = forces.segment<3>(fea::first_unknown({i}));
    const Vector3 m = forces.segment<3>(fea::first_unknown({i}) + 3);
    CHECK((turned.segment<3>(fea::first_unknown({i})) - turn.cross(f)).norm() < 1e-7);
    CHECK((turned.segment<3>(fea::first_unknown({i}) + 3) - 0.5 * turn.cross(m)).norm() < 1e-7);
  }
  CHECK(turned.tail(system.n_unknowns() - fea::first_unknown({n_nodes(frame)})).norm() < 1e-7);
}

}  // namespace frame_symmetry_test
