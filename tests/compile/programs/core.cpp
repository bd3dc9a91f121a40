// SPDX-License-Identifier: MIT
// Quantities, counts and bands, and a formula of two speeds.
#include <layshaft/core/core.hpp>
#include <layshaft/gearing/speed.hpp>

using namespace layshaft;

int main() {
  const Band<Length> circumference{1.9_m, 2.0_m, 2.1_m};
  const Band<Speed> speed = over(circumference, [](Length at) { return road_speed(6000_rpm, 20.0, at); });
  return in(speed.nominal, units::kmh) > 30.0 && Teeth::make(14) ? 0 : 1;
}
