// SPDX-License-Identifier: MIT
// A sum of bands, which would count shared causes twice.
// PROMISE: no arithmetic on bands: rerun it with `over`
#include <layshaft/core/band.hpp>
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked = Band<Length>{1.9_m, 2.0_m, 2.1_m} + Band<Length>{1.9_m, 2.0_m, 2.1_m};
#else
auto asked = over(Band<Length>{1.9_m, 2.0_m, 2.1_m}, [](Length one) { return one + one; });
#endif
