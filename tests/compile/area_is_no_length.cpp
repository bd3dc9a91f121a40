// SPDX-License-Identifier: MIT
// A length times a length, where a diameter is wanted.
// PROMISE: static_rational<2
#include <layshaft/wear/tension.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = chain_tension(1_kN, 2.0_m, 0.1_m * 0.1_m);
#else
auto asked = chain_tension(1_kN, 2.0_m, 2.0 * 0.1_m);
#endif
