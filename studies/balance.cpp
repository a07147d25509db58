#include "studies/balance.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

#include <Eigen/Geometry>

namespace studies {
namespace {

using fea::Vector3;

class BalanceWriter {
 public:
  BalanceWriter(const SetModel& model, const parts::DesignCase& load_case,
                const CaseSolution& solved)
      : assembly_(model.assembly()),
        solution_(solved.linear()),
        closed_(solved.closed_stops),
        let_go_(solved.linear.let_go()),
        ground_(ground_hold(assembly_, load_case.place, closed_, solution_)) {
    out_.load_case = load_case.name;
    out_.set = model.set().name;
    about_ = assembly_.axle ? assembly_.model[*assembly_.axle].at_g : Vector3(0.0, 0.0, 0.0);
    out_.about = assembly_.axle ? "the middle of the axle, at hub height" : "the origin";
  }

  Balance result(const std::vector<parts::NamedLoad>& loads) {
    for (const parts::NamedLoad& load : loads) add_load(load);
    for (const parts::NamedNode& held : assembly_.held) add_held(held);
    for (const fea::Spring& spring : assembly_.model.springs) add_spring(spring);
    for (std::size_t i = 0; i < let_go_.size(); ++i) {
      const parts::CoilSeat& seat = assembly_.coil_seats[i];
      add(out_.holds, seat.name, assembly_.model[seat.node].at_g + seat.offset_g,
          {0.0, 0.0, -let_go_[i]}, {0.0, 0.0, 0.0});
    }
    for (std::size_t i = 0; i < assembly_.stops.size(); ++i) {
      if ((closed_ & (1U << i)) != 0) add_stop(assembly_.stops[i]);
    }
    if (ground_.force != 0.0 || ground_.moment != 0.0) {
      add(out_.holds, "ground, for the place of the axle", about_, {0.0, 0.0, ground_.force},
          {ground_.moment, 0.0, 0.0});
    }
    out_.open = open();
    return std::move(out_);
  }

 private:
  /// Rows of the same name are one.
  void add(std::vector<BalanceRow>& rows, const std::string& what, const Vector3& at,
           const Vector3& force, const Vector3& moment) const {
    const Vector3 whole = (at - about_).cross(force) + moment;
    auto row =
        std::find_if(rows.begin(), rows.end(), [&](const BalanceRow& r) { return r.what == what; });
    if (row == rows.end()) row = rows.insert(rows.end(), BalanceRow{.what = what});
    for (int i = 0; i < 3; ++i) {
      row->force[static_cast<std::size_t>(i)] += force[i];
      row->moment[static_cast<std::size_t>(i)] += whole[i];
    }
  }

  void add_load(const parts::NamedLoad& load) {
    const parts::Resultant sum = parts::resultant_of(load, assembly_.model);
    if (sum.force_g.isZero(0.0) && sum.moment_g.isZero(0.0)) return;
    add(load.coil_at_rest ? out_.holds : out_.acts, load.what, Vector3::Zero(), sum.force_g,
        sum.moment_g);
  }

  /// Coils and bump stops, which hold the axle, have rows of their own.
  [[nodiscard]] bool is_axle(fea::NodeId node) const {
    const auto is = [&](const std::optional<fea::NodeId>& one) { return one && *one == node; };
    return is(assembly_.axle) || is(assembly_.axle_sides[0]) || is(assembly_.axle_sides[1]);
  }

  void add_held(const parts::NamedNode& held) {
    if (is_axle(held.node)) return;
    const fea::Vector6 reaction = solution_.reaction(held.node);
    add(out_.holds, held.name, assembly_.model[held.node].at_g, reaction.head<3>(),
        reaction.tail<3>());
  }

  [[nodiscard]] bool is_held(fea::NodeId node) const {
    return std::any_of(assembly_.held.begin(), assembly_.held.end(),
                       [&](const parts::NamedNode& held) { return held.node == node; });
  }

  /// Springs to the ground; those on a held node are in its reaction.
  void add_spring(const fea::Spring& spring) {
    if (spring.b || (is_held(spring.a) && !is_axle(spring.a))) return;
    const auto index = &spring - assembly_.model.springs.data();
    const fea::Vector6 on_ground = solution_.spring_force(fea::SpringId{static_cast<int>(index)});
    add(out_.holds, spring.name, assembly_.model[spring.a].at_g + spring.offset_a_g,
        -(spring.axes_g * on_ground.head<3>()), -(spring.axes_g * on_ground.tail<3>()));
  }

  void add_stop(const parts::TravelStop& stop) {
    const double force = -stop.sense() * stop.rate * overlap_of(stop, solution_);
    add(out_.holds, stop.name, assembly_.model[stop.node].at_g + stop.offset_g, {0.0, 0.0, force},
        {0.0, 0.0, 0.0});
  }

  [[nodiscard]] double open() const {
    std::array<double, 6> sum = {};
    double largest_force = 0.0;
    double largest_moment = 0.0;
    for (const std::vector<BalanceRow>* rows : {&out_.acts, &out_.holds}) {
      for (const BalanceRow& row : *rows) {
        for (std::size_t i = 0; i < 3; ++i) {
          sum[i] += row.force[i];
          sum[i + 3] += row.moment[i];
          largest_force = std::max(largest_force, std::abs(row.force[i]));
          largest_moment = std::max(largest_moment, std::abs(row.moment[i]));
        }
      }
    }
    double worst = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
      if (largest_force > 0.0) worst = std::max(worst, std::abs(sum[i]) / largest_force);
      if (largest_moment > 0.0) worst = std::max(worst, std::abs(sum[i + 3]) / largest_moment);
    }
    return worst;
  }

  const parts::Assembly& assembly_;
  const fea::Solution& solution_;
  Contacts closed_;
  const std::vector<double>& let_go_;
  GroundHold ground_;
  Vector3 about_;
  Balance out_;
};

}  // namespace

Balance balance_of(const SetModel& model, const parts::DesignCase& load_case,
                   const CaseSolution& solved) {
  return BalanceWriter(model, load_case, solved)
      .result(parts::named_loads(model.assembly(), model.design(), load_case));
}

}  // namespace studies
