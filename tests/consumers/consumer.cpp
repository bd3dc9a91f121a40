// SPDX-License-Identifier: MIT
#include <layshaft/layshaft.hpp>

#include <cstdio>

#ifdef CONSUMER_JSON
int members_of(const char* text);
#endif

int main() {
  using namespace layshaft::literals;
  const double kmh = layshaft::in(layshaft::road_speed(6000_rpm, 20.0, 2.0_m), layshaft::units::kmh);
  std::printf("%.1f km/h\n", kmh);
#ifdef CONSUMER_JSON
  if (members_of("{\"front\": 14, \"rear\": 40}") != 2) return 1;
#endif
  return kmh > 35.9 && kmh < 36.1 ? 0 : 1;
}
