// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>  // says which C library there is

/// @file
/// Loops over plain numbers, for processors that work out several at once.
///
/// A compiler that can is asked to make a function marked LAYSHAFT_WIDE three times, for processors that work out two,
/// four or eight numbers at once; which of them runs is decided when a program starts. No product is fused with a sum
/// in any, so that all give the same. A build that defines LAYSHAFT_WIDE itself, as nothing, has them made once.
#if defined(LAYSHAFT_WIDE)
#elif defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && defined(__GLIBC__) && \
    defined(__OPTIMIZE__) && !defined(__SANITIZE_THREAD__) && !defined(__SANITIZE_ADDRESS__)
#define LAYSHAFT_WIDE \
  __attribute__((target_clones("arch=x86-64-v4", "avx2", "default"), optimize("O3", "fp-contract=off")))
#else
#define LAYSHAFT_WIDE
#endif
