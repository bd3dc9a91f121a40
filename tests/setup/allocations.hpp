// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

namespace layshaft_test {

/// How often this program has asked for memory so far.
std::size_t allocations() noexcept;

}  // namespace layshaft_test
