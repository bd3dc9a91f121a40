// SPDX-License-Identifier: MIT
// Everything but the opt-in headers, used for one answer of each kind.
#include <layshaft/layshaft.hpp>

using namespace layshaft;

int main() {
  const TyreSize stock("120/80-18"), taller("120/90-18", TyreUse::special);
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 50_teeth);
  const double change =
      thrust_change(48.0 / 13, rolling_circumference(stock).nominal, 50.0 / 13, rolling_circumference(taller).nominal);
  return change < 0.1 && hunting(13_teeth, 110_links).evenness > 0.0 && loop.links(615_mm) > 100.0 ? 0 : 1;
}
