// SPDX-License-Identifier: MIT
#pragma once

#include <cstdio>
#include <cstdlib>

/// @file
/// What a fuzzer's function asks for: an abort is what every fuzzer sees.
namespace layshaft_test {

inline void must(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %s\n", what);
  std::abort();
}

}  // namespace layshaft_test

#define MUST(...) layshaft_test::must(__VA_ARGS__, #__VA_ARGS__)
