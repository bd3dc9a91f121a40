// SPDX-License-Identifier: MIT
// A chain round two sprockets, and where its axle stands.
#include <layshaft/chain/chain.hpp>

using namespace layshaft;

int main() {
  const ChainLoop loop(ChainSeries("520"), 13_teeth, 50_teeth);
  const auto stand = try_fit_links(loop, 110_links, Adjuster(602_mm, 640_mm, 30_mm));
  return stand && stand->fits && loop.centre(110_links) > 0.6_m ? 0 : 1;
}
