// SPDX-License-Identifier: MIT
// The same calculations as one would write them if nobody could watch: plain calls of the formulas.
#include "kernels.hpp"

namespace {  // outside of `direct`, by which callgrind is told what to count

using namespace layshaft;

double ratio_in(const Gearbox& gearbox, int gear, Teeth front, Teeth rear) {
  const GearRatio& primary = gearbox.primary();
  const GearRatio& ratio = gearbox.gears()[static_cast<std::size_t>(gear - 1)];
  return overall_ratio(primary.ratio(), ratio.ratio(), front, rear);
}

/// Of the other notations, which no kernel is given.
[[gnu::noinline]] Length listed_diameter_of(const TyreSize& tyre, Corner size) {
  return tyre.overall_diameter().at(size);
}
Length diameter_of(const TyreSize& tyre, Corner size) {
  if (tyre.notation() != TyreNotation::metric) return listed_diameter_of(tyre, size);
  const double factor = size == Corner::low    ? least_height_factor
                        : size == Corner::high ? greatest_height_factor(tyre.use())
                                               : 1.0;
  return overall_diameter_limit(tyre.rim_diameter(), section_height(tyre.section_width(), *tyre.aspect_ratio()),
                                factor);
}
Length circumference_of(const TyreSize& tyre, Length tread_worn, Corner size, Corner rolling) {
  const double factor = rolling_factor(tyre.construction()).at(rolling);
  const Length diameter = diameter_of(tyre, size);
  return rolling_circumference(tread_worn == Length() ? diameter : worn_diameter(diameter, tread_worn), factor);
}
Length circumference_of(const Setup& setup, Corner size, Corner rolling) {
  if (setup.circumference()) return setup.circumference()->at(size);
  return circumference_of(*setup.tyre(), setup.tread_worn(), size, rolling);
}

struct Share {
  ContributionCause cause{};
  double points = 0.0;
};

Length rear_diameter_of(const Setup& setup, ChainSeries machines) {
  return pitch_diameter(setup.chain().value_or(machines).pitch(), setup.rear());
}

}  // namespace

namespace direct {

[[gnu::flatten]] void road_speed_in_gear(const Gearbox& gearbox, const int* gear, const Teeth* front, const Teeth* rear,
                                         const AngularSpeed* engine_speed, const Length* circumference, Speed* out,
                                         int count) {
  for (int i = 0; i < count; ++i)
    out[i] = road_speed(engine_speed[i], ratio_in(gearbox, gear[i], front[i], rear[i]), circumference[i]);
}

[[gnu::flatten]] void tyre_circumference(const TyreSize* tyre, const Corner* size, const Corner* rolling, Length* out,
                                         int count) {
  for (int i = 0; i < count; ++i)
    out[i] =
        rolling_circumference(diameter_of(tyre[i], size[i]), rolling_factor(tyre[i].construction()).at(rolling[i]));
}

[[gnu::flatten]] void worn_circumference(const TyreSize* tyre, const Length* tread_worn, const Corner* size,
                                         const Corner* rolling, Length* out, int count) {
  for (int i = 0; i < count; ++i) out[i] = circumference_of(tyre[i], tread_worn[i], size[i], rolling[i]);
}

[[gnu::flatten]] void links_with_slack(const ChainLoop* loop, const Length* centre, const Length* slack, double* out,
                                       int count) {
  for (int i = 0; i < count; ++i) {
    const Length pitch = loop[i].series().pitch();
    const Teeth front = loop[i].front(), rear = loop[i].rear();
    const Angle angle = run_angle(pitch_diameter(pitch, front), pitch_diameter(pitch, rear), centre[i]);
    const double taut = loop_links(pitch, front, rear, centre[i], angle);
    out[i] = layshaft::links_with_slack(taut, spare_length(slack[i], run_length(centre[i], angle)), pitch);
  }
}

[[gnu::flatten]] void thrust_change(const Setup* base, const Setup* trial, const ThrustCorners* at, double* out,
                                    int count) {
  for (int i = 0; i < count; ++i) {
    const Setup &before = base[i], &after = trial[i];
    const double base_ratio = final_ratio(before.front(), before.rear());
    const double trial_ratio = final_ratio(after.front(), after.rear());
    const Length base_circumference = circumference_of(before, at[i].base_size, at[i].base_rolling);
    const Length trial_circumference = circumference_of(after, at[i].trial_size, at[i].trial_rolling);
    out[i] = loss_counts(before, after)
                 ? thrust_change_with_loss(base_ratio, base_circumference, trial_ratio, trial_circumference,
                                           before.drive_efficiency()->at(at[i].base_drive),
                                           after.drive_efficiency()->at(at[i].trial_drive))
                 : layshaft::thrust_change(base_ratio, base_circumference, trial_ratio, trial_circumference);
  }
}

[[gnu::flatten]] void tension_change(const ComparedSetups* setups, const WheelCorners* at, double* out, int count) {
  for (int i = 0; i < count; ++i) {
    const Setup &base = setups[i].base, &trial = setups[i].trial;
    out[i] = chain_tension_change(
        circumference_of(base, at[i].base_size, at[i].base_rolling), rear_diameter_of(base, setups[i].chain),
        circumference_of(trial, at[i].trial_size, at[i].trial_rolling), rear_diameter_of(trial, setups[i].chain));
  }
}

[[gnu::flatten]] void contributions(const Setup* base, const Setup* trial, const ThrustCorners* at, Points* out,
                                    int count) {
  for (int i = 0; i < count; ++i) {
    const Setup &before = base[i], &after = trial[i];
    const Length base_circumference = circumference_of(before, at[i].base_size, at[i].base_rolling);
    const Length trial_circumference = circumference_of(after, at[i].trial_size, at[i].trial_rolling);
    double ratio = turns_ratio(final_ratio(before.front(), before.rear()), base_circumference,
                               final_ratio(after.front(), after.rear()), trial_circumference);
    const bool worn = before.tread_worn() != Length() || after.tread_worn() != Length();
    Length base_new = base_circumference, trial_new = trial_circumference;
    if (before.tread_worn() != Length())
      base_new = circumference_of(*before.tyre(), Length(), at[i].base_size, at[i].base_rolling);
    if (after.tread_worn() != Length())
      trial_new = circumference_of(*after.tyre(), Length(), at[i].trial_size, at[i].trial_rolling);
    double loss = 1.0;
    if (loss_counts(before, after)) {
      loss =
          loss_factor(before.drive_efficiency()->at(at[i].base_drive), after.drive_efficiency()->at(at[i].trial_drive));
      ratio = thrust_ratio(ratio, loss);
    }
    using enum ContributionCause;
    FixedList<Share, 5> all;
    all.push_back({tyre, contribution(ratio, tyre_factor(base_new, trial_new))});
    all.push_back({front_sprocket, contribution(ratio, front_factor(before.front(), after.front()))});
    all.push_back({rear_sprocket, contribution(ratio, rear_factor(before.rear(), after.rear()))});
    if (worn)
      all.push_back(
          {wear, contribution(ratio, wear_factor(base_circumference, base_new, trial_circumference, trial_new))});
    if (loss_counts(before, after)) all.push_back({drive_loss, contribution(ratio, loss)});
    for (std::size_t j = 0; j < all.size(); ++j) out[i].of_cause[j] = all[j].points;
  }
}

}  // namespace direct
