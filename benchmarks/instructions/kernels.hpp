// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/setup/comparison.hpp>

/// @file
/// The kernels that are written twice: with layshaft's types and with plain numbers, and the types of either side; and
/// as calculations that can be watched, which nobody does, and as plain calls of the same formulas.

namespace typed {
using Teeth = layshaft::Teeth;
using Length = layshaft::Length;
using Speed = layshaft::Speed;
using AngularSpeed = layshaft::AngularSpeed;
}  // namespace typed

namespace plain {
using Teeth = int;
using Length = double;        // m
using Speed = double;         // m/s
using AngularSpeed = double;  // rad/s
}  // namespace plain

/// SIDE is `typed` or `plain`. Arrays have `count` elements, and `out` overlaps none of the others.
#define KERNELS(SIDE)                                                                                               \
  namespace SIDE {                                                                                                  \
  /* one set-up, and the one before it */                                                                           \
  struct Setups {                                                                                                   \
    double primary, gear;                                                                                           \
    Teeth base_front, base_rear, trial_front, trial_rear;                                                           \
    Length base_circumference, trial_circumference;                                                                 \
    AngularSpeed engine_speed;                                                                                      \
  };                                                                                                                \
  struct Answer {                                                                                                   \
    Speed base_speed, trial_speed;                                                                                  \
    double thrust_change;                                                                                           \
  };                                                                                                                \
  struct BothChanges {                                                                                              \
    double thrust_change, speed_change;                                                                             \
  };                                                                                                                \
  void one_setup(const Setups& in, Answer& out);                                                                    \
  void one_setup_both_changes(const Setups& in, BothChanges& out);                                                  \
  void road_speed(const AngularSpeed* engine_speed, const double* overall_ratio, const Length* circumference,       \
                  Speed* out, int count);                                                                           \
  void road_speed_of_one_tyre(const AngularSpeed* engine_speed, const double* overall_ratio,                        \
                              const Length& circumference, Speed* out, int count);                                  \
  void overall_ratio(const double* primary, const double* gear, const Teeth* front, const Teeth* rear, double* out, \
                     int count);                                                                                    \
  void thrust_change(const double* base_ratio, const Length* base_circumference, const double* trial_ratio,         \
                     const Length* trial_circumference, double* out, int count);                                    \
  void pitch_diameter(const Length* pitch, const Teeth* teeth, Length* out, int count);                             \
  void chain_links(const Length* pitch, const Teeth* front, const Teeth* rear, const Length* centre, double* out,   \
                   int count);                                                                                      \
  void chain_centre(const Length* pitch, const Teeth* front, const Teeth* rear, const double* links, Length* out,   \
                    int count);                                                                                     \
  }

KERNELS(typed)
KERNELS(plain)

#undef KERNELS

/// SIDE is `unwatched` or `direct`; both take the same types.
#define CALCULATIONS(SIDE)                                                                                           \
  namespace SIDE {                                                                                                   \
  using namespace layshaft;                                                                                          \
  void road_speed_in_gear(const Gearbox& gearbox, const int* gear, const Teeth* front, const Teeth* rear,            \
                          const AngularSpeed* engine_speed, const Length* circumference, Speed* out, int count);     \
  void tyre_circumference(const TyreSize* tyre, const Corner* size, const Corner* rolling, Length* out, int count);  \
  void worn_circumference(const TyreSize* tyre, const Length* tread_worn, const Corner* size, const Corner* rolling, \
                          Length* out, int count);                                                                   \
  void links_with_slack(const ChainLoop* loop, const Length* centre, const Length* slack, double* out, int count);   \
  void thrust_change(const Setup* base, const Setup* trial, const ThrustCorners* at, double* out, int count);        \
  void tension_change(const ComparedSetups* setups, const WheelCorners* at, double* out, int count);                 \
  struct Points {                                                                                                    \
    double of_cause[5]; /* in the order of their cause   */                                                          \
  };                                                                                                                 \
  void contributions(const Setup* base, const Setup* trial, const ThrustCorners* at, Points* out, int count);        \
  }

CALCULATIONS(unwatched)
CALCULATIONS(direct)

#undef CALCULATIONS
