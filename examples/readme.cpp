// SPDX-License-Identifier: MIT
// The README's C++ program, line for line, with its output as the README prints it; a test holds them together.
#include <layshaft/layshaft.hpp>

#include <cstdio>

int main() {
  using namespace layshaft;
  const TyreSize stock("120/80-18"), taller("120/90-18", TyreUse::special);
  const Band<Length> before = rolling_circumference(stock), after = rolling_circumference(taller);
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 50_teeth);
  std::printf("one turn rolls %.0f to %.0f mm\n", in(after.low, units::mm), in(after.high, units::mm));
  std::printf("thrust %+.1f %%\n", 100 * thrust_change(48.0 / 13, before.nominal, 50.0 / 13, after.nominal));
  std::printf("%.2f links at 615 mm\n", loop.links(615_mm));
  std::printf("axle at %.2f mm with 110 links\n", in(loop.centre(110_links), units::mm));
}
