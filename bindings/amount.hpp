// SPDX-License-Identifier: MIT
#pragma once

#include "band.hpp"

#include <layshaft/core/amount.hpp>

/// @file
/// Quantities whose kind is known only at run time, as Python has them.
namespace layshaft::python {

/// The Python class of what has this dimension; null of numbers and counts.
[[nodiscard]] const Kind* kind_of(Dimension dimension);

/// An amount as Python has it: a quantity, an int for a count, a float; None where there is none.
[[nodiscard]] py::object give_amount(const Amount& amount);

}  // namespace layshaft::python
