// SPDX-License-Identifier: MIT
// Centre distances of many drives, as bulk.py's layshaft.arrays.chain_centre_mm works them out, for a processor that
// works out two numbers at once and no more: what every x86-64 can. Built with LAYSHAFT_WIDE as nothing.
#include <layshaft/chain/loop_bulk.hpp>

#include <cstddef>

extern "C" void centres_two_at_once(double pitch_mm, const double* front, const double* rear, const double* links,
                                    double* centre_mm, std::size_t size) {
  if (layshaft::try_chain_centres_mm({&pitch_mm, 1}, {front, size}, {rear, size}, {links, size}, {centre_mm, size}))
    __builtin_trap();  // columns of one length are never refused
}
