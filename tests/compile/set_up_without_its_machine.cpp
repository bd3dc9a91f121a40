// SPDX-License-Identifier: MIT
// A set-up alone, without the machine that it goes on.
// PROMISE: appraise.const (layshaft::)?Machine& machine, const (layshaft::)?Setup& setup
#include <layshaft/setup/appraisal.hpp>

using namespace layshaft;

#if defined(LAYSHAFT_BAD)
auto asked(const Machine&, const Setup& setup) { return appraise(setup); }
#else
auto asked(const Machine& machine, const Setup& setup) { return appraise(machine, setup); }
#endif
