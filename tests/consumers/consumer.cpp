// SPDX-License-Identifier: MIT
#include <layshaft/layshaft.hpp>

#include <cstdio>

#ifdef CONSUMER_JSON
int members_of(const char* text);
#endif

int main() {
  using namespace layshaft::literals;
  const auto speed = layshaft::road_speed(6000_rpm, 20.0, 2.0_m);
  std::printf("%.1f km/h\n", speed / layshaft::units::kmh);
#ifdef CONSUMER_JSON
  if (members_of("{\"front\": 14, \"rear\": 40}") != 2) return 1;
#endif
  return speed / layshaft::units::kmh > 35.9 && speed / layshaft::units::kmh < 36.1 ? 0 : 1;
}
