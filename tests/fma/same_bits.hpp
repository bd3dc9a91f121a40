// SPDX-License-Identifier: MIT
#pragma once

/// @file
/// Between the part that looks at the processor, which is built plainly, and the part that may be built for more.

/// Whether the calculations were built to fuse; asks nothing of the processor.
extern const bool built_to_fuse;

/// Draws set-ups, and compares what the plain functions and the recorded runs make of them.
/// @return how many numbers differ in a bit, or -1 where too few could be compared
int numbers_that_differ(int setups);
