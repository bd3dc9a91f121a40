// SPDX-License-Identifier: MIT
// The kernels in plain doubles and ints: the same arithmetic in the same order, with the same checks, and no types.
#include "kernels.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace {  // outside of `plain`, by which callgrind is told what to count

constexpr double pi = std::numbers::pi;
constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

bool finite(double x) { return x >= -std::numeric_limits<double>::max() && x <= std::numeric_limits<double>::max(); }
bool positive(double x) { return finite(x) && x > 0.0; }

double speed_of(double engine_speed, double overall_ratio, double circumference) {
  return engine_speed / (2.0 * pi) * circumference / overall_ratio;
}
double ratio_of(double primary, double gear, int front, int rear) { return double(rear) / front * gear * primary; }
double turns_of(double base, double base_circumference, double trial, double trial_circumference) {
  return trial / base * (base_circumference / trial_circumference);
}
double thrust_change_of(double base, double base_circumference, double trial, double trial_circumference) {
  return turns_of(base, base_circumference, trial, trial_circumference) - 1.0;
}
double speed_change_of(double base, double base_circumference, double trial, double trial_circumference) {
  return 1.0 / turns_of(base, base_circumference, trial, trial_circumference) - 1.0;
}
double diameter_of(double pitch, int teeth) { return pitch / std::sin(pi / teeth); }

double links_of(double pitch, int front, int rear, double centre) {
  if (!positive(pitch) || !finite(centre)) return nothing;
  const double front_diameter = diameter_of(pitch, front);
  const double rear_diameter = diameter_of(pitch, rear);
  if (!(2.0 * centre >= front_diameter + rear_diameter)) return nothing;
  const double angle = std::asin((rear_diameter - front_diameter) / (2.0 * centre));
  const double links = 2.0 * centre / pitch * std::cos(angle) + (front + rear) / 2.0 + angle / pi * (rear - front);
  return finite(links) ? links : nothing;
}

double centre_of(double pitch, int front, int rear, double links) {
  constexpr double epsilon = std::numeric_limits<double>::epsilon();
  if (!positive(pitch) || !finite(links)) return nothing;
  const double front_radius = 0.5 / std::sin(pi / front);
  const double rear_radius = 0.5 / std::sin(pi / rear);
  const double radii = rear_radius - front_radius;
  const double teeth = (rear - front) / pi;
  const double straight = links - (front + rear) / 2.0;
  if (!(straight > 0.0)) return nothing;

  double run = 0.25 * (straight + std::sqrt(std::max(0.0, straight * straight - 8.0 * teeth * radii)));
  constexpr int enough = 40;
  for (int i = 0; i < enough; ++i) {
    const double excess = (2.0 * run - straight) + teeth * std::atan(radii / run);
    const double slope = 2.0 - teeth * radii / (run * run + radii * radii);
    const double step = excess / slope;
    run -= step;
    if (!(run > 0.0 && slope > 0.0)) return nothing;
    if (std::fabs(step) <= 1e-9 * run) break;
  }
  const double centre = std::sqrt(run * run + radii * radii);
  if (!(centre >= (front_radius + rear_radius) * (1.0 - 8.0 * epsilon))) return nothing;
  const double length = centre * pitch;
  return finite(length) ? length : nothing;
}

}  // namespace

namespace plain {

void one_setup(const Setups& in, Answer& out) {
  const double base = ratio_of(in.primary, in.gear, in.base_front, in.base_rear);
  const double trial = ratio_of(in.primary, in.gear, in.trial_front, in.trial_rear);
  const double base_circumference = in.base_circumference;
  const double trial_circumference = in.trial_circumference;
  const double engine_speed = in.engine_speed;
  out.base_speed = speed_of(engine_speed, base, base_circumference);
  out.trial_speed = speed_of(engine_speed, trial, trial_circumference);
  out.thrust_change = thrust_change_of(base, base_circumference, trial, trial_circumference);
}

void one_setup_both_changes(const Setups& in, BothChanges& out) {
  const double base = ratio_of(in.primary, in.gear, in.base_front, in.base_rear);
  const double trial = ratio_of(in.primary, in.gear, in.trial_front, in.trial_rear);
  const double base_circumference = in.base_circumference;
  const double trial_circumference = in.trial_circumference;
  out.thrust_change = thrust_change_of(base, base_circumference, trial, trial_circumference);
  out.speed_change = speed_change_of(base, base_circumference, trial, trial_circumference);
}

void road_speed(const double* engine_speed, const double* overall_ratio, const double* circumference, double* out,
                int count) {
  for (int i = 0; i < count; ++i) out[i] = speed_of(engine_speed[i], overall_ratio[i], circumference[i]);
}

void road_speed_of_one_tyre(const double* engine_speed, const double* overall_ratio, const double& circumference,
                            double* out, int count) {
  const double length = circumference;
  for (int i = 0; i < count; ++i) out[i] = speed_of(engine_speed[i], overall_ratio[i], length);
}

void overall_ratio(const double* primary, const double* gear, const int* front, const int* rear, double* out,
                   int count) {
  for (int i = 0; i < count; ++i) out[i] = ratio_of(primary[i], gear[i], front[i], rear[i]);
}

void thrust_change(const double* base_ratio, const double* base_circumference, const double* trial_ratio,
                   const double* trial_circumference, double* out, int count) {
  for (int i = 0; i < count; ++i)
    out[i] = thrust_change_of(base_ratio[i], base_circumference[i], trial_ratio[i], trial_circumference[i]);
}

void pitch_diameter(const double* pitch, const int* teeth, double* out, int count) {
  for (int i = 0; i < count; ++i) out[i] = diameter_of(pitch[i], teeth[i]);
}

void chain_links(const double* pitch, const int* front, const int* rear, const double* centre, double* out, int count) {
  for (int i = 0; i < count; ++i) out[i] = links_of(pitch[i], front[i], rear[i], centre[i]);
}

void chain_centre(const double* pitch, const int* front, const int* rear, const double* links, double* out, int count) {
  for (int i = 0; i < count; ++i) out[i] = centre_of(pitch[i], front[i], rear[i], links[i]);
}

}  // namespace plain
