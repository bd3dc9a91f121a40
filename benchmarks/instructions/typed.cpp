// SPDX-License-Identifier: MIT
// The kernels in layshaft's types, as a user would write them.
#include "kernels.hpp"

#include <layshaft/chain/loop.hpp>
#include <layshaft/chain/sprocket.hpp>
#include <layshaft/gearing/change.hpp>
#include <layshaft/gearing/ratio.hpp>
#include <layshaft/gearing/speed.hpp>

namespace typed {

void one_setup(const Setups& in, Answer& out) {
  const double base = layshaft::overall_ratio(in.primary, in.gear, in.base_front, in.base_rear);
  const double trial = layshaft::overall_ratio(in.primary, in.gear, in.trial_front, in.trial_rear);
  const Length base_circumference = in.base_circumference;
  const Length trial_circumference = in.trial_circumference;
  const AngularSpeed engine_speed = in.engine_speed;
  out.base_speed = layshaft::road_speed(engine_speed, base, base_circumference);
  out.trial_speed = layshaft::road_speed(engine_speed, trial, trial_circumference);
  out.thrust_change = layshaft::thrust_change(base, base_circumference, trial, trial_circumference);
}

void one_setup_both_changes(const Setups& in, BothChanges& out) {
  const double base = layshaft::overall_ratio(in.primary, in.gear, in.base_front, in.base_rear);
  const double trial = layshaft::overall_ratio(in.primary, in.gear, in.trial_front, in.trial_rear);
  const Length base_circumference = in.base_circumference;
  const Length trial_circumference = in.trial_circumference;
  out.thrust_change = layshaft::thrust_change(base, base_circumference, trial, trial_circumference);
  out.speed_change = layshaft::speed_change(base, base_circumference, trial, trial_circumference);
}

void road_speed(const AngularSpeed* engine_speed, const double* overall_ratio, const Length* circumference, Speed* out,
                int count) {
  for (int i = 0; i < count; ++i) out[i] = layshaft::road_speed(engine_speed[i], overall_ratio[i], circumference[i]);
}

void road_speed_of_one_tyre(const AngularSpeed* engine_speed, const double* overall_ratio, const Length& circumference,
                            Speed* out, int count) {
  const Length length = circumference;  // or every store to `out` might change it
  for (int i = 0; i < count; ++i) out[i] = layshaft::road_speed(engine_speed[i], overall_ratio[i], length);
}

void overall_ratio(const double* primary, const double* gear, const Teeth* front, const Teeth* rear, double* out,
                   int count) {
  for (int i = 0; i < count; ++i) out[i] = layshaft::overall_ratio(primary[i], gear[i], front[i], rear[i]);
}

void thrust_change(const double* base_ratio, const Length* base_circumference, const double* trial_ratio,
                   const Length* trial_circumference, double* out, int count) {
  for (int i = 0; i < count; ++i)
    out[i] = layshaft::thrust_change(base_ratio[i], base_circumference[i], trial_ratio[i], trial_circumference[i]);
}

void pitch_diameter(const Length* pitch, const Teeth* teeth, Length* out, int count) {
  for (int i = 0; i < count; ++i) out[i] = layshaft::pitch_diameter(pitch[i], teeth[i]);
}

void chain_links(const Length* pitch, const Teeth* front, const Teeth* rear, const Length* centre, double* out,
                 int count) {
  for (int i = 0; i < count; ++i) out[i] = layshaft::chain_links(pitch[i], front[i], rear[i], centre[i]);
}

void chain_centre(const Length* pitch, const Teeth* front, const Teeth* rear, const double* links, Length* out,
                  int count) {
  for (int i = 0; i < count; ++i) out[i] = layshaft::chain_centre(pitch[i], front[i], rear[i], links[i]);
}

}  // namespace typed
