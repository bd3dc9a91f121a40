// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

/// @file
/// A row of a table that has one for each value of an enumeration.
namespace layshaft::detail {

/// The row whose `kind` is this. A test looks up every kind of every such table; the first row stands for none.
template <class Row, std::size_t Size, class Kind>
[[nodiscard]] constexpr const Row& row_of(const Row (&table)[Size], Kind kind) noexcept {
  for (std::size_t i = 1; i < Size; ++i)
    if (table[i].kind == kind) return table[i];
  return table[0];
}

}  // namespace layshaft::detail
