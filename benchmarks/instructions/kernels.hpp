// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// What the two sides of the comparison share: the kernels' names, and how their input lies in memory. Bulk input is
/// plain doubles on both sides, because a quantity is not trivially copyable; the typed side views them as quantities.

/// SIDE is `typed` or `plain`. The arrays have `count` elements; `out` overlaps none of the others.
#define KERNELS_OF(SIDE)                                                                                               \
  namespace SIDE {                                                                                                     \
  void road_speed(const double* engine_speed, const double* overall_ratio, const double* circumference, double* out,   \
                  int count);                                                                                          \
  void road_speed_of_one_tyre(const double* engine_speed, const double* overall_ratio, const double* circumference,    \
                              double* out, int count);                                                                 \
  void overall_ratio(const double* primary, const double* gear, const int* front, const int* rear, double* out,        \
                     int count);                                                                                       \
  void thrust_change(const double* base_ratio, const double* base_circumference, const double* trial_ratio,            \
                     const double* trial_circumference, double* out, int count);                                       \
  void one_setup(const OneSetup& in, OneAnswer& out);                                                                  \
  void pitch_diameter(const double* pitch, const int* teeth, double* out, int count);                                  \
  void chain_links(const double* pitch, const int* front, const int* rear, const double* centre, double* out,          \
                   int count);                                                                                         \
  void chain_centre(const double* pitch, const int* front, const int* rear, const double* links, double* out,          \
                    int count);                                                                                        \
  }

/// One set-up beside the one before it: gears in teeth and ratios, circumferences in metres, engine speed in rad/s.
struct OneSetup {
  double primary, gear;
  int base_front, base_rear, trial_front, trial_rear;
  double base_circumference, trial_circumference, engine_speed;
};
/// What follows from it; speeds in m/s.
struct OneAnswer {
  double base_speed, trial_speed, thrust_change, speed_change;
};

KERNELS_OF(typed)
KERNELS_OF(plain)

#undef KERNELS_OF
