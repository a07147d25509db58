#include "tests/published/solid_body.hpp"

#include <string>
#include <vector>

#include <getfem/getfem_generic_assembly.h>
#include <getfem/getfem_model_solvers.h>
#include <getfem/getfem_models.h>

#include "base/invariant.hpp"

namespace published {
namespace {

constexpr std::size_t kClamped = 1;
constexpr std::size_t kLoaded = 2;

bgeot::base_node node(const Eigen::Vector3d& v) {
  return {v.x(), v.y(), v.z()};
}
Eigen::Vector3d vector(const bgeot::base_node& p) {
  return {p[0], p[1], p[2]};
}

}  // namespace

struct SolidBody::Data {
  struct Cell {
    std::size_t convex;
    Eigen::Vector3d corner;  // grid coordinates
  };

  getfem::mesh mesh;
  std::vector<Cell> cells;
  std::unique_ptr<getfem::mesh_fem> displacement;
  std::unique_ptr<getfem::mesh_im> integration;
  getfem::model_real_plain_vector motion;
  double lambda = 0.0;
  double mu = 0.0;

  /// Of an expression of the displacement `u`, over the loaded cells.
  [[nodiscard]] double integral(const std::string& expression) const {
    getfem::ga_workspace workspace;
    workspace.add_fem_constant("u", *displacement, motion);
    workspace.add_expression(expression, *integration, mesh.region(kLoaded));
    workspace.assembly(0);
    return workspace.assembled_potential();
  }
};

SolidBody::SolidBody(const SolidGrid& grid, double young, double poisson)
    : data_(std::make_unique<Data>()) {
  Data& d = *data_;
  d.mu = young / (2.0 * (1.0 + poisson));
  d.lambda = young * poisson / ((1.0 + poisson) * (1.0 - 2.0 * poisson));
  const auto transformation = bgeot::parallelepiped_geotrans(3, 2);
  const auto& nodes = transformation->geometric_nodes();
  for (int i = 0; i < grid.cells[0]; ++i) {
    for (int j = 0; j < grid.cells[1]; ++j) {
      for (int k = 0; k < grid.cells[2]; ++k) {
        const Eigen::Vector3d corner(i, j, k);
        if (!grid.filled(corner + Eigen::Vector3d::Constant(0.5))) continue;
        std::vector<bgeot::base_node> points;
        for (const auto& n : nodes) points.push_back(node(grid.place(corner + vector(n))));
        d.cells.push_back({d.mesh.add_convex_by_points(transformation, points.begin()), corner});
      }
    }
  }
  d.displacement = std::make_unique<getfem::mesh_fem>(d.mesh, 3);
  d.displacement->set_finite_element(getfem::fem_descriptor("FEM_QK(3,2)"));
  d.integration = std::make_unique<getfem::mesh_im>(d.mesh);
  d.integration->set_integration_method(
      getfem::int_method_descriptor("IM_GAUSS_PARALLELEPIPED(3,5)"));
}

SolidBody::~SolidBody() = default;

void SolidBody::solve(const std::function<bool(const Eigen::Vector3d&)>& clamped,
                      const std::function<bool(const Eigen::Vector3d&)>& loaded,
                      const Eigen::Vector3d& force) {
  Data& d = *data_;
  getfem::mesh_region outside;
  getfem::outer_faces_of_mesh(d.mesh, outside);
  d.mesh.region(kClamped).clear();
  for (getfem::mr_visitor face(outside); !face.finished(); ++face) {
    Eigen::Vector3d middle = Eigen::Vector3d::Zero();
    const auto points = d.mesh.points_of_face_of_convex(face.cv(), face.f());
    for (const auto& p : points) middle += vector(p);
    if (clamped(middle / static_cast<double>(points.size()))) {
      d.mesh.region(kClamped).add(face.cv(), face.f());
    }
  }
  d.mesh.region(kLoaded).clear();
  for (const Data::Cell& cell : d.cells) {
    if (loaded(cell.corner + Eigen::Vector3d::Constant(0.5))) {
      d.mesh.region(kLoaded).add(cell.convex);
    }
  }
  d.motion.assign(d.displacement->nb_dof(), 0.0);
  const Eigen::Vector3d density = force / d.integral("1");

  getfem::model model;
  model.add_fem_variable("u", *d.displacement);
  model.add_initialized_scalar_data("lambda", d.lambda);
  model.add_initialized_scalar_data("mu", d.mu);
  model.add_initialized_fixed_size_data(
      "force", getfem::model_real_plain_vector{density.x(), density.y(), density.z()});
  getfem::add_isotropic_linearized_elasticity_brick(model, *d.integration, "u", "lambda", "mu");
  getfem::add_source_term_brick(model, *d.integration, "u", "force", kLoaded);
  getfem::add_Dirichlet_condition_with_simplification(model, "u", kClamped);
  gmm::set_traces_level(1);  // says nothing of its own accord but warnings
  gmm::iteration iteration(1e-8);
  getfem::standard_solve(model, iteration);
  INVARIANT(iteration.converged());
  d.motion = model.real_variable("u");
}

Eigen::Vector3d SolidBody::mean_displacement() const {
  const Eigen::Vector3d sum(data_->integral("u(1)"), data_->integral("u(2)"),
                            data_->integral("u(3)"));
  return sum / data_->integral("1");
}

Eigen::Matrix3d SolidBody::stress(const Eigen::Vector3d& at) const {
  const Data& d = *data_;
  Eigen::Matrix3d sum = Eigen::Matrix3d::Zero();
  int cells = 0;
  for (const Data::Cell& cell : d.cells) {
    const Eigen::Vector3d inside = at - cell.corner;
    if (inside.minCoeff() < -1e-9 || inside.maxCoeff() > 1.0 + 1e-9) continue;
    const auto element = d.displacement->fem_of_element(cell.convex);
    bgeot::base_matrix points;
    bgeot::vectors_to_base_matrix(points, d.mesh.points_of_convex(cell.convex));
    getfem::fem_interpolation_context context(d.mesh.trans_of_convex(cell.convex), element,
                                              node(inside), points, cell.convex);
    getfem::base_vector coefficients;
    getfem::slice_vector_on_basic_dof_of_element(*d.displacement, d.motion, cell.convex,
                                                 coefficients);
    getfem::base_matrix gradient(3, 3);
    element->interpolation_grad(context, coefficients, gradient, 3);
    Eigen::Matrix3d g;
    for (Eigen::Index i = 0; i < 3; ++i) {
      for (Eigen::Index j = 0; j < 3; ++j) {
        g(i, j) = gradient(static_cast<std::size_t>(i), static_cast<std::size_t>(j));
      }
    }
    sum += d.lambda * g.trace() * Eigen::Matrix3d::Identity() + d.mu * (g + g.transpose());
    ++cells;
  }
  INVARIANT(cells > 0);
  return sum / cells;
}

int SolidBody::n_unknowns() const {
  return static_cast<int>(data_->displacement->nb_dof());
}

}  // namespace published
