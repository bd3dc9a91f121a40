// SPDX-License-Identifier: MIT
#pragma once

#include <layshaft/road/road.hpp>

/// @file
/// An invented trail machine for the tests of the road, and others made of it by changing parts.
namespace layshaft_test {

using namespace layshaft;

inline EngineCurve trail_curve(MeasuredAt measured_at = MeasuredAt::crank) {
  return EngineCurve({2500_rpm, 4000_rpm, 6000_rpm, 7500_rpm, 9200_rpm}, {17_Nm, 21_Nm, 24_Nm, 23_Nm, 18_Nm},
                     EngineOrigin{measured_at});
}
inline Engine trail_engine() {
  const EngineCurve curve = trail_curve();
  return Engine(EngineParts{.curve = {curve, curve, curve},
                            .inertia = 0.011_kg_m2,
                            .braking = Band<Torque>{2_Nm, 3_Nm, 5_Nm},
                            .clutch_torque = 45_Nm});
}
/// Exact but for what a test makes a band of.
inline PowertrainParts trail_parts() {
  return {.engine = trail_engine(),
          .gearbox = Gearbox({.primary = 3.05,
                              .gears = {2.7, 1.85, 1.42, 1.15, 0.96, 0.83},
                              .idle = 1400_rpm,
                              .rev_limit = 9000_rpm,
                              .lowest_pull = 2700_rpm}),
          .loop = ChainLoop(ChainSeries("520"), 13_teeth, 48_teeth),
          .circumference = Band<Length>::exactly(2.02_m),
          .drive_efficiency = Band<double>::exactly(0.92),
          .body = Body({.mass = 225_kg,
                        .wheelbase = 1.43_m,
                        .centre_ahead = 0.67_m,
                        .centre_height = 0.84_m,
                        .wheel_inertia = 1.1_kg_m2})};
}
inline Powertrain trail_train() { return Powertrain::make(trail_parts()).value(); }
template <class Change>
Powertrain trail_train(Change change) {
  PowertrainParts parts = trail_parts();
  change(parts);
  return Powertrain::make(parts).value();
}
inline RoadLoad trail_road() {
  return RoadLoad(RoadCoefficients{.constant = 45_N, .linear = 0.2_N_per_mps, .quadratic = 0.33_kg_per_m});
}

}  // namespace layshaft_test
