// SPDX-License-Identifier: MIT
#include "same_bits.hpp"

#include <cstdio>
#include <cstdlib>

// Usage: same_bits [SET-UPS], 100,000 unless told otherwise.
int main(int argc, char** argv) {
  constexpr int skipped = 77;
#if defined(__x86_64__)
  __builtin_cpu_init();
  if (built_to_fuse &&
      !(__builtin_cpu_supports("fma") && __builtin_cpu_supports("avx2") && __builtin_cpu_supports("bmi2"))) {
    std::puts("skipped: this processor does not multiply and add in one rounding (no FMA, AVX2 or BMI2)");
    return skipped;
  }
#endif
  const int setups = argc > 1 ? std::atoi(argv[1]) : 100000;
  return numbers_that_differ(setups) == 0 ? 0 : 1;
}
