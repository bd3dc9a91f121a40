// SPDX-License-Identifier: MIT
// The calculations that can be watched, with nobody watching.
#include "kernels.hpp"

namespace unwatched {

[[gnu::flatten]] void road_speed_in_gear(const Gearbox& gearbox, const int* gear, const Teeth* front, const Teeth* rear,
                                         const AngularSpeed* engine_speed, const Length* circumference, Speed* out,
                                         int count) {
  const Unwatched watch;
  for (int i = 0; i < count; ++i)
    out[i] = detail::speed_at(watch, engine_speed[i],
                              detail::overall_ratio_in(watch, gearbox, gear[i], front[i], rear[i]), circumference[i]);
}

[[gnu::flatten]] void tyre_circumference(const TyreSize* tyre, const Corner* size, const Corner* rolling, Length* out,
                                         int count) {
  for (int i = 0; i < count; ++i)
    out[i] = detail::circumference_at(Unwatched(), "circumference", tyre[i], Length(), size[i], rolling[i]);
}

[[gnu::flatten]] void worn_circumference(const TyreSize* tyre, const Length* tread_worn, const Corner* size,
                                         const Corner* rolling, Length* out, int count) {
  for (int i = 0; i < count; ++i)
    out[i] = detail::circumference_at(Unwatched(), "circumference", tyre[i], tread_worn[i], size[i], rolling[i]);
}

[[gnu::flatten]] void links_with_slack(const ChainLoop* loop, const Length* centre, const Length* slack, double* out,
                                       int count) {
  const Unwatched watch;
  for (int i = 0; i < count; ++i) out[i] = detail::links_with_slack(watch, loop[i].drive(watch), centre[i], slack[i]);
}

[[gnu::flatten]] void thrust_change(const Setup* base, const Setup* trial, const ThrustCorners* at, double* out,
                                    int count) {
  for (int i = 0; i < count; ++i) out[i] = detail::thrust_change(Unwatched(), base[i], trial[i], at[i]);
}

[[gnu::flatten]] void tension_change(const ComparedSetups* setups, const WheelCorners* at, double* out, int count) {
  for (int i = 0; i < count; ++i) out[i] = detail::chain_tension_change(Unwatched(), setups[i], at[i]);
}

[[gnu::flatten]] void contributions(const Setup* base, const Setup* trial, const ThrustCorners* at, Points* out,
                                    int count) {
  for (int i = 0; i < count; ++i) {
    const auto all = detail::contributions_at(Unwatched(), Change::thrust, base[i], trial[i], at[i]);
    for (std::size_t j = 0; j < all.size(); ++j) out[i].of_cause[j] = all[j].points;
  }
}

}  // namespace unwatched
