// SPDX-License-Identifier: MIT
// Which of two bands is the smaller: they may overlap.
// PROMISE: compare corners: `a.high < b.low`
#include <layshaft/core/band.hpp>
#include <layshaft/core/units.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
bool asked = Band<Length>{1.9_m, 2.0_m, 2.1_m} < Band<Length>{2.0_m, 2.1_m, 2.2_m};
#else
bool asked = Band<Length>{1.9_m, 2.0_m, 2.1_m}.high < Band<Length>{2.0_m, 2.1_m, 2.2_m}.low;
#endif
