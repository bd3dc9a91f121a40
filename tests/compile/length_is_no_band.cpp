// SPDX-License-Identifier: MIT
// A measured rollout as one length: how sure it is belongs to it.
// PROMISE: layshaft::Length.*layshaft::Band<|Band<.*layshaft::Length
#include <layshaft/core/band.hpp>
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
Band<Length> asked = 2.0_m;
#else
auto asked = Band<Length>::exactly(2.0_m);
#endif
